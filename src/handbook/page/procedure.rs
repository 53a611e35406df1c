//! Jobs and checklists: steps, torque, what is checked, and against which limit.

use super::{Address, Link, Markdown, Picture, SafetyNote, Worded};
use crate::model::{ThreadState, Who};
use serde::Serialize;

/// A job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Procedure {
    /// What it is for: *Markdown*.
    pub purpose: Markdown,
    /// When not to do it: *Markdown* each.
    pub not_when: Vec<Markdown>,
    /// Who may do it.
    pub who: Option<Who>,
    /// Minutes at the bench, whole.
    pub minutes: u32,
    /// Minutes of waiting, whole.
    pub waiting: u32,
    /// What the waiting is for.
    pub waiting_for: Vec<String>,
    /// For a stop-gap: how long it holds.
    pub holds: Option<String>,
    /// The lasting remedy.
    pub lasting: Option<Link>,
    /// What proves it done.
    pub prove: Vec<Check>,
    /// What to lay out.
    pub needs: Needs,
    /// Safety notes for the whole job.
    pub safety: Vec<SafetyNote>,
    /// The steps.
    pub steps: Vec<Step>,
    /// What to do next: *Markdown*.
    pub next: Option<Markdown>,
    /// The symptoms that it mends.
    pub mends: Vec<Link>,
}

/// What to lay out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Needs {
    /// Parts.
    pub parts: Vec<Need>,
    /// Tools.
    pub tools: Vec<Need>,
    /// Consumables.
    pub consumables: Vec<Need>,
}

/// Something to lay out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Need {
    /// What it is.
    pub link: Link,
    /// How many, or how much.
    pub quantity: Option<String>,
    /// Which, or what for: *Markdown*.
    pub note: Option<Markdown>,
    /// What it can do to people.
    pub hazards: Vec<String>,
}

/// A step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Its number.
    pub number: usize,
    /// What to do.
    pub what: Worded,
    /// Why, for the learner: *Markdown*.
    pub learner: Option<Markdown>,
    /// Single instructions.
    pub subs: Vec<Worded>,
    /// Caution before it.
    pub safety: Vec<SafetyNote>,
    /// A picture.
    pub picture: Option<Picture>,
    /// How tight.
    pub torque: Option<Torque>,
    /// Minutes to wait after it, whole.
    pub wait: Option<u32>,
    /// What for.
    pub wait_for: Option<String>,
}

/// How tight.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Torque {
    /// The value in the handbook's unit, with the other in brackets: `3 N·m (27 lbf·in)`.
    pub value: String,
    /// How far it may be off.
    pub tolerance: Option<String>,
    /// The fastener in words: thread, class or material.
    pub fastener: Vec<String>,
    /// Dry or oiled.
    pub state: ThreadState,
    /// Whether there is no published proof load to hold it against: another material than steel of a listed class.
    pub unjudged: bool,
    /// How it feels: *Markdown*.
    pub by_feel: Option<Markdown>,
    /// Where the figure comes from; `shop` for the club's own.
    pub source: Option<String>,
}

/// A check: something to do and see, or something to read against a limit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// A name for its reading field, unique over the handbook.
    pub id: String,
    /// What to do and see.
    pub what: Option<Worded>,
    /// What to read.
    pub read: Option<String>,
    /// Its limit.
    pub limit: Option<LimitRow>,
}

/// A limit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitRow {
    /// Its id in the limits.
    pub id: String,
    /// What is limited.
    pub title: String,
    /// The kind of bound: a message id after `bound-`, such as `at-most`.
    pub bound: &'static str,
    /// The value in the handbook's unit, with the other in brackets where there is one: `500 g (17.6 oz)`.
    pub value: String,
    /// For reading fields: the unit to read in.
    pub unit: String,
    /// For reading fields: the least that is inside, as a plain number in `unit`; nothing if there is none.
    pub least: Option<String>,
    /// The most that is inside.
    pub most: Option<String>,
    /// Whether the bound itself is outside (`less than`, `more than`).
    pub open: bool,
    /// For reading fields: how far the instrument may be off.
    pub doubt: Option<Doubt>,
    /// For reading fields: the unit of what the meter's own leads read, where they stand in the reading.
    pub leads: Option<String>,
    /// Where and in what state it holds.
    pub at: Option<String>,
    /// Where it comes from, in short: `m.5.4`, or the shop.
    pub source: String,
    /// Whether it is the club's own.
    pub shop: bool,
    /// How it is measured: *Markdown*.
    pub how: Option<Markdown>,
    /// Where it stands.
    pub address: Address,
}

/// How far an instrument may be off.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Doubt {
    /// So many percent of the reading, as a plain number.
    pub percent: String,
    /// So much besides, as a plain number in the unit of the field.
    pub amount: String,
    /// The same as its maker says it.
    pub words: String,
    /// The instrument.
    pub tool: Link,
}

/// A checklist.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Checklist {
    /// What it is for: *Markdown*.
    pub purpose: Markdown,
    /// How long it takes, whole minutes.
    pub minutes: u32,
    /// What to lay out.
    pub needs: Needs,
    /// Safety notes for the whole list.
    pub safety: Vec<SafetyNote>,
    /// The items.
    pub groups: Vec<CheckGroup>,
    /// What is said when the list is complete: *Markdown*.
    pub done: Option<Markdown>,
}

/// Items under one heading.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckGroup {
    /// The heading; empty for items without one.
    pub heading: String,
    /// The items.
    pub items: Vec<CheckItem>,
}

/// An item of a checklist.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckItem {
    /// A name for its boxes and fields, unique over the handbook.
    pub id: String,
    /// Its number.
    pub number: usize,
    /// What to do, and what is wanted.
    pub what: Worded,
    /// The id of the place.
    pub place: Option<String>,
    /// The tool that it takes.
    pub with: Option<Link>,
    /// How many pieces of it each fencer brings, in a queue.
    pub pieces: u8,
    /// What to read.
    pub read: Option<String>,
    /// Its limit.
    pub limit: Option<LimitRow>,
    /// Caution before it.
    pub safety: Vec<SafetyNote>,
    /// A picture.
    pub picture: Option<Picture>,
    /// The guide that mends it.
    pub if_not: Option<Link>,
}
