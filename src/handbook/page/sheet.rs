//! What is printed for the bench.

use super::{
    Address, Checklist, First, InHundred, JobLine, LampShown, Link, Markdown, Procedure, SafetyNote, ShareRow, Worded,
};
use crate::model::{Paper, Who};
use serde::Serialize;

/// A printable sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// The guide's page.
    pub guide: Link,
    /// The paper.
    pub paper: Paper,
    /// The same as a file for printing, where the handbook is bound with such files.
    pub pdf: Option<Address>,
    /// What it is a sheet of.
    pub of: SheetOf,
}

/// What a sheet is of.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum SheetOf {
    /// A job.
    Procedure(Box<Procedure>),
    /// A checklist for one piece.
    Checklist(Box<Checklist>),
    /// A checklist with a row for each piece.
    Rows(Box<Checklist>),
    /// A checklist for each fencer in a queue, by instrument.
    Queue(Box<Queue>),
    /// A fault-finding guide as a list.
    Symptom(SymptomSheet),
    /// What to fetch.
    Kit(Box<KitList>),
}

/// What is controlled at an event.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Queue {
    /// The checklist, by instrument.
    #[serde(flatten)]
    pub list: Checklist,
    /// The index of what failed, on a page of its own: once for all fencers.
    pub failures: Vec<Failures>,
}

/// A row of the index of what failed: a guide, with what leads to it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Failures {
    /// The job, or the fault-finding guide; nothing for items that name none.
    pub guide: Option<Link>,
    /// The items of the checklist that lead to it.
    pub items: Vec<Failed>,
}

/// An item of a checklist that may fail.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Failed {
    /// Its number on the sheet.
    pub number: usize,
    /// What to do, and what is wanted.
    pub what: Worded,
}

/// What to fetch for one guide or several, and how long they take.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KitList {
    /// For how many pieces.
    pub pieces: u32,
    /// Parts, summed.
    pub parts: Vec<KitLine>,
    /// Tools, each once.
    pub tools: Vec<KitLine>,
    /// Consumables, summed.
    pub consumables: Vec<KitLine>,
    /// The guides.
    pub guides: Vec<KitTime>,
    /// Minutes at the bench for all of them and all pieces.
    pub minutes: u32,
    /// The longest waiting.
    pub waiting: u32,
    /// Both together: one pair of hands, waiting beside the work.
    pub total: u32,
    /// All cautions, the most serious first.
    pub safety: Vec<SafetyNote>,
}

/// Something to fetch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KitLine {
    /// What it is.
    pub link: Link,
    /// How much, for all guides and pieces.
    pub quantity: Option<String>,
    /// What it can do to people.
    pub hazards: Vec<String>,
}

/// A guide with its times for one piece.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KitTime {
    /// The guide.
    pub link: Link,
    /// Whole minutes at the bench.
    pub minutes: u32,
    /// Whole minutes of waiting.
    pub waiting: u32,
}

/// What to fetch for every guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Fetch {
    /// For how many pieces the times are said.
    pub pieces: Vec<u32>,
    /// The guides.
    pub rows: Vec<KitTimes>,
}

/// A guide with what to fetch and the times for several pieces.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KitTimes {
    /// The guide.
    pub link: Link,
    /// Whole minutes at the bench for one piece.
    pub minutes: u32,
    /// Whole minutes of waiting.
    pub waiting: u32,
    /// Whole minutes in all, for as many pieces as `pieces` says.
    pub totals: Vec<u32>,
    /// What to fetch for one piece.
    pub list: KitList,
}

/// A fault-finding guide as a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SymptomSheet {
    /// On what it is seen: a message id.
    pub seen_on: &'static str,
    /// What the lamp does.
    pub lamps: Vec<LampShown>,
    /// *Markdown*.
    pub says: Markdown,
    /// Steps that isolate the fault.
    pub first: Vec<First>,
    /// The probes, in the order of the guide.
    pub probes: Vec<SheetProbe>,
    /// What to do when it is not on the list: *Markdown*.
    pub rest_says: Option<Markdown>,
    /// The causes, to tick what it was.
    pub causes: Vec<ShareRow>,
}

/// A probe on a sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetProbe {
    /// Its number.
    pub number: usize,
    /// The question.
    pub ask: String,
    /// Who may do it.
    pub who: Option<Who>,
    /// How to answer it.
    pub how: Option<Worded>,
    /// Caution before it, with that of the jobs to open.
    pub safety: Vec<SafetyNote>,
    /// What to open before it, the first time.
    pub open: Vec<JobLine>,
    /// Whole minutes; 0 is less than one.
    pub minutes: u32,
    /// The answers, with what each means.
    pub answers: Vec<SheetAnswer>,
    /// The share of all cases found when this probe is done.
    pub found: InHundred,
}

/// An answer on a sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetAnswer {
    /// Its words; empty with a `message`.
    pub title: String,
    /// `answer-works` or `answer-no-change`.
    pub message: Option<&'static str>,
    /// The number of the question to go on with.
    pub next: Option<usize>,
    /// The causes that are left where it ends; with `next` too where one must go on if it was none of them.
    pub means: Vec<String>,
    /// Their remedies.
    pub remedies: Vec<Link>,
}

/// All sheets.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheets {
    /// By item; those of no one item first.
    pub groups: Vec<SheetGroup>,
}

/// The sheets of an item.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetGroup {
    /// The item; empty for any item.
    pub title: String,
    /// Checklists.
    pub checks: Vec<Link>,
    /// Jobs.
    pub jobs: Vec<Link>,
    /// Fault finding.
    pub faults: Vec<Link>,
}
