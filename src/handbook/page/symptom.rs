//! A fault-finding guide on its own page: what is seen, the first question, shares, minutes, the map of questions.

use super::{Address, CircuitFigure, Ending, InHundred, LampShown, Link, Markdown, Question, SafetyNote, Worded};
use crate::model::Shares;
use serde::Serialize;

/// A fault-finding guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Symptom {
    /// On what it is seen: a message id.
    pub seen_on: &'static str,
    /// What the lamp does.
    pub lamps: Vec<LampShown>,
    /// *Markdown*.
    pub says: Markdown,
    /// Guides that are taken for this one.
    pub unlike: Vec<Unlike>,
    /// Steps that isolate the fault to this item.
    pub first: Vec<First>,
    /// The first question, if there is any to ask.
    pub question: Option<Question>,
    /// The ending, if no question is needed.
    pub ending: Option<Ending>,
    /// The causes, in the author's order, *not on this list* last.
    pub shares: Vec<ShareRow>,
    /// The causes of the list together.
    pub listed: InHundred,
    /// Where the shares come from.
    pub shares_from: Shares,
    /// How many cases were counted.
    pub counted: u32,
    /// With few cases: how far each share may be off.
    pub few: Vec<FewRow>,
    /// The map of the questions.
    pub map: MapNode,
    /// The same in words.
    pub words: Vec<MapWords>,
    /// What the orders cost.
    pub orders: Orders,
    /// Why the author's order is what it is: *Markdown*.
    pub why: Option<Markdown>,
    /// Causes that no probe tells apart, though their remedies differ.
    pub groups: Vec<Vec<String>>,
    /// Probes that tell nothing.
    pub dead: Vec<String>,
    /// Whether a cause may answer a probe in more than one way.
    pub comes_and_goes: bool,
    /// The circuit behind it.
    pub circuit: Option<Link>,
    /// The page that teaches how sound kit works.
    pub how: Option<Link>,
    /// The circuit drawn sound, held as it is when the symptom is seen.
    pub figure: Option<CircuitFigure>,
}

/// How far a share that was counted from few cases may be off.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FewRow {
    /// What is wrong; empty for *not on this list*.
    pub title: String,
    /// How many cases it was.
    pub seen: u32,
    /// Nine times in ten the share in 100 is not under this; whole, rounded down.
    pub low: u32,
    /// Nor over this; whole, rounded up.
    pub high: u32,
}

/// A guide that is taken for this one.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Unlike {
    /// The question that tells them apart.
    pub ask: String,
    /// The other guide.
    pub link: Link,
}

/// A step that isolates the fault.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct First {
    /// The question.
    pub ask: String,
    /// How to answer it.
    pub how: Option<Worded>,
    /// Whole minutes; 0 is less than one.
    pub minutes: u32,
    /// Caution before it.
    pub safety: Vec<SafetyNote>,
    /// The answers.
    pub answers: Vec<FirstAnswer>,
}

/// An answer to an isolating step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FirstAnswer {
    /// The answer.
    pub title: String,
    /// What it means: *Markdown*.
    pub says: Option<Markdown>,
    /// The guide it leads to; nothing to go on here.
    pub link: Option<Link>,
}

/// A cause with its share.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShareRow {
    /// What is wrong; empty for *not on this list*.
    pub title: String,
    /// Whether this is *not on this list*.
    pub rest: bool,
    /// The id of the place.
    pub place: Option<String>,
    /// The share now.
    pub share: InHundred,
    /// Where the cause is told in full.
    pub address: Option<Address>,
    /// Why it does what is seen: *Markdown*.
    pub says: Option<Markdown>,
    /// The id of the row on its symptom's page.
    pub anchor: String,
    /// The remedies, where the page names them.
    pub lasting: Option<Link>,
    /// The stop-gap.
    pub stop_gap: Option<Link>,
}

/// What the orders cost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Orders {
    /// The order of the pages: `as-written` or `quickest`.
    pub used: &'static str,
    /// The author's order.
    pub as_written: OrderCost,
    /// The least-cost way of asking.
    pub quickest: OrderCost,
    /// Whether the quickest is proved to be.
    pub proved: bool,
    /// Whole minutes between the two; 0 if they round to the same.
    pub saves: u32,
    /// The questions of the quickest way, as far as one branch goes.
    pub quickest_first: Option<String>,
}

/// What an order costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OrderCost {
    /// On average, whole minutes.
    pub average: u32,
    /// At most, whole minutes.
    pub most: u32,
}

/// A node of the map of questions: drawn by the function `map`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapNode {
    /// The question's or ending's words.
    pub title: String,
    /// Where it leads.
    pub address: Option<Address>,
    /// The share of all cases that come here, in hundredths of a percent.
    pub share: u32,
    /// Tenths of a minute spent when one comes here.
    pub so_far: u64,
    /// For a question: tenths of a minute that asking it costs, opening included. For an ending nothing.
    pub minutes: Option<u64>,
    /// For an ending: whether it may be *not on this list* besides.
    pub rest: bool,
    /// The answers.
    pub branches: Vec<MapBranch>,
}

/// An answer on the map.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapBranch {
    /// The answer's words.
    pub answer: String,
    /// Where it leads.
    pub node: MapNode,
}

/// A question of the map in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapWords {
    /// Its number.
    pub number: usize,
    /// The question.
    pub ask: Link,
    /// What each answer leads to.
    pub answers: Vec<MapAnswer>,
}

/// An answer of the map in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapAnswer {
    /// The answer.
    pub title: String,
    /// The question that follows, by its number.
    pub question: Option<usize>,
    /// Or the ending.
    pub ending: Option<Link>,
    /// Whole minutes spent then.
    pub minutes: u32,
}
