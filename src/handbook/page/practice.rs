//! The practice bench: a faulty item to find the fault of, the cards that say the same on paper, and where to choose.

use super::{Address, LampShown, Link, Markdown, Worded};
use crate::model::{LampState, Paper};
use serde::Serialize;

/// Where an exercise is chosen.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Practices {
    /// The items, each with its exercises.
    pub kits: Vec<PracticeKit>,
}

/// The exercises of an item.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeKit {
    /// The item.
    pub title: String,
    /// Its exercises.
    pub rows: Vec<PracticeRow>,
}

/// An exercise in a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeRow {
    /// What is seen.
    pub title: String,
    /// The bench at each level.
    pub levels: Vec<Address>,
    /// The cards.
    pub cards: Address,
    /// How many cards there are.
    pub count: usize,
}

/// The bench of a fault-finding guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Practice {
    /// The guide.
    pub guide: Link,
    /// The cards.
    pub cards: Address,
    /// Where all exercises are.
    pub all: Address,
    /// On what it is seen: a message id.
    pub seen_on: &'static str,
    /// What the lamp does.
    pub lamps: Vec<LampShown>,
    /// *Markdown*.
    pub says: Markdown,
    /// Whether steps that isolate the item come before.
    pub isolated: bool,
    /// What can be done.
    pub probes: Vec<PracticeProbe>,
    /// The opening jobs.
    pub jobs: Vec<PracticeJob>,
    /// What can be read off the circuit besides.
    pub readings: Vec<PracticeReading>,
    /// The causes that can be named, *not on this list* last with an empty title.
    pub causes: Vec<String>,
    /// The jobs that can be named, those of the guide first.
    pub remedies: Vec<PracticeRemedy>,
    /// What the bench looks its answers up in: JSON without `<`, `>` and `&`.
    pub data: String,
}

/// An opening job on the bench.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeJob {
    /// What to do.
    pub title: String,
    /// Minutes to open, with the tenth if there is one.
    pub open: String,
    /// Minutes to close again.
    pub close: String,
}

/// A probe on the bench.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeProbe {
    /// The question.
    pub ask: String,
    /// How to answer it.
    pub how: Option<Worded>,
    /// Minutes, with the tenth if there is one.
    pub minutes: String,
    /// What must be open for it.
    pub open: Vec<String>,
    /// Whether it is a trial fix.
    pub trial: bool,
    /// The answers: words, or a message id where the guide has none.
    pub answers: Vec<PracticeAnswer>,
}

/// An answer that can come.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeAnswer {
    /// Its words.
    pub title: String,
    /// `answer-works` or `answer-no-change`.
    pub message: Option<&'static str>,
    /// The lamp on it.
    pub lamp: Option<LampState>,
}

/// A reading of the circuit in one position.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeReading {
    /// What is read.
    pub title: String,
    /// How the item is held.
    pub position: String,
    /// `lamp`, `buzzer` or `meter`.
    pub on: &'static str,
}

/// A job that can be named as the remedy.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeRemedy {
    /// The job.
    pub link: Link,
    /// Whether the guide names it; the others are only offered at the highest level.
    pub own: bool,
}

/// The cards of a fault-finding guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cards {
    /// The guide.
    pub guide: Link,
    /// The bench.
    pub bench: Address,
    /// The paper that they are printed on.
    pub paper: Paper,
    /// On what it is seen: a message id.
    pub seen_on: &'static str,
    /// What the lamp does.
    pub lamps: Vec<LampShown>,
    /// What can be done.
    pub probes: Vec<PracticeProbe>,
    /// The opening jobs.
    pub jobs: Vec<PracticeJob>,
    /// The cards.
    pub cards: Vec<Card>,
}

/// A card.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Card {
    /// Its number, from 1.
    pub number: usize,
    /// The cause; empty for *not on this list*.
    pub cause: String,
    /// Whether this is *not on this list*.
    pub rest: bool,
    /// What mends it for good.
    pub lasting: Option<Link>,
    /// What buys time.
    pub stop_gap: Option<Link>,
    /// What to do when it is not on the list: *Markdown*.
    pub rest_says: Option<Markdown>,
    /// The answer to each probe, in the order of the probes.
    pub answers: Vec<PracticeAnswer>,
    /// The way with the least expected minutes, as it goes with this cause.
    pub way: Vec<CardStep>,
    /// What that way leaves beside the cause, empty for *not on this list*: one remedy mends them all.
    pub beside: Vec<String>,
    /// Minutes for closing up after it, with the tenth if there is one.
    pub closing: String,
    /// Minutes of that way, closed up again.
    pub minutes: String,
}

/// A step of the least-cost way.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CardStep {
    /// The question.
    pub ask: String,
    /// The answer.
    pub answer: PracticeAnswer,
    /// Minutes spent after it, with the tenth if there is one.
    pub so_far: String,
}
