//! What is printed for the bench.

use super::{Checklist, First, InHundred, JobLine, LampShown, Link, Markdown, Procedure, SafetyNote, ShareRow, Worded};
use crate::model::{Paper, Who};
use serde::Serialize;

/// A printable sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// The guide's page.
    pub guide: Link,
    /// The paper.
    pub paper: Paper,
    /// What it is a sheet of.
    pub of: SheetOf,
}

/// What a sheet is of.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum SheetOf {
    /// A job.
    Procedure(Box<Procedure>),
    /// A checklist.
    Checklist(Box<Checklist>),
    /// A fault-finding guide as a list.
    Symptom(SymptomSheet),
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
    /// The causes it speaks for; empty for *go on*.
    pub means: Vec<String>,
    /// Their remedies.
    pub remedies: Vec<Link>,
}
