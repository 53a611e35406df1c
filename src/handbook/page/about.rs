//! *About this edition* and *Writing guides*.

use super::{LimitGroup, Link, Markdown, Origin, Withdrawn};
use serde::Serialize;

/// *About this edition*.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct About {
    /// How many guides of each kind: message id and number.
    pub counts: Vec<(&'static str, usize)>,
    /// The code of the whole handbook.
    pub code: String,
    /// Open advice, in words.
    pub open: Vec<OpenFinding>,
    /// Findings that were accepted.
    pub accepted: Vec<AcceptedFinding>,
    /// The sources of the limits.
    pub sources: Vec<LimitGroup>,
    /// Guides whose shares are estimates.
    pub estimated: Vec<Link>,
    /// Guides whose shares were counted.
    pub counted: Vec<Link>,
    /// Guides from elsewhere.
    pub packs: Vec<Origin>,
    /// Withdrawn sheets.
    pub withdrawn: Vec<Withdrawn>,
}

/// Open advice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OpenFinding {
    /// Its code.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
    /// The guide's file and line.
    pub place: String,
}

/// A finding that was accepted.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AcceptedFinding {
    /// The finding.
    pub finding: OpenFinding,
    /// The reason.
    pub because: String,
}

/// *Writing guides*.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Writing {
    /// One section a kind of guide.
    pub kinds: Vec<WritingKind>,
    /// Every finding.
    pub findings: Vec<FindingPage>,
}

/// A kind of guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WritingKind {
    /// The kind's key: a message id after `writing-`.
    pub kind: &'static str,
    /// Its keys with what they are for.
    pub keys: Vec<WritingKey>,
    /// The file that the example is from.
    pub file: String,
    /// The example's source: printed with the filter `yaml`.
    pub source: String,
}

/// A key.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WritingKey {
    /// The key.
    pub key: String,
    /// What it is for: *Markdown*.
    pub says: Markdown,
    /// Whether it must be there.
    pub must: bool,
}

/// What a finding's code means.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingPage {
    /// The code.
    pub code: &'static str,
    /// `error` or `advice`.
    pub severity: &'static str,
    /// What is found: *Markdown*.
    pub what: &'static str,
    /// Why it matters: *Markdown*.
    pub why: &'static str,
    /// How to mend it: *Markdown*.
    pub mend: &'static str,
}
