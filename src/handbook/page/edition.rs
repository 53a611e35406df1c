//! Editions and prints: what changed, whether a print is current, what was withdrawn.

use super::{Address, Link};
use crate::model::Paper;
use serde::Serialize;

/// *What changed*.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Changes {
    /// The steps from edition to edition, the newest first.
    pub steps: Vec<StepRow>,
}

/// What changed from one edition to the next.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepRow {
    /// The edition before.
    pub since: String,
    /// The edition after.
    pub edition: String,
    /// The pages.
    pub rows: Vec<ChangeRow>,
    /// The sheets to print again.
    pub sheets: Vec<ChangeRow>,
}

/// A page that changed, came or went.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChangeRow {
    /// Its id on the page.
    pub anchor: String,
    /// Its name; empty for a page that no guide names.
    pub title: String,
    /// Its kind: a message id.
    pub kind: &'static str,
    /// Where it is, if it still is.
    pub address: Option<Address>,
    /// Whether it is new.
    pub came: bool,
    /// Whether it is gone.
    pub went: bool,
    /// The code it had.
    pub was: Option<String>,
    /// The code it has.
    pub now: Option<String>,
    /// What it said and says.
    pub differences: Vec<DifferenceSaid>,
}

/// Lines that were replaced.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DifferenceSaid {
    /// What it said.
    pub was: Vec<SaidLine>,
    /// What it says now.
    pub now: Vec<SaidLine>,
}

/// A line that was or is said: plain text.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SaidLine {
    /// For a bare number what it is: a message id.
    pub figure: Option<&'static str>,
    /// The words.
    pub text: String,
}

/// *Is my print current?*
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Prints {
    /// Every code that there is or was, sorted.
    pub rows: Vec<CodeRow>,
    /// Whether former codes are known.
    pub remembers: bool,
}

/// A code.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CodeRow {
    /// The code.
    pub code: String,
    /// `current`, `older` or `withdrawn`.
    pub state: &'static str,
    /// What it stands or stood on; pages that say the same share a code.
    pub of: Vec<PrintOf>,
    /// Why it was withdrawn.
    pub because: Option<String>,
    /// What to use instead.
    pub instead: Option<Link>,
    /// For an older one: the editions that changed it, with where that is told.
    pub since: Vec<Link>,
    /// What it said and says.
    pub differences: Vec<DifferenceSaid>,
    /// Whether the page is no longer there.
    pub gone: bool,
}

/// What a print is of.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PrintOf {
    /// Its name; empty for a page that no guide names.
    pub title: String,
    /// Its kind: a message id.
    pub kind: &'static str,
    /// Where it is, if it still is.
    pub address: Option<Address>,
}

/// The notice to hang on the wall.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Notice {
    /// The paper.
    pub paper: Paper,
    /// What was withdrawn.
    pub withdrawn: Vec<Withdrawn>,
}

/// A withdrawn sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Withdrawn {
    /// The code printed on it.
    pub code: String,
    /// What it stood on, where that is known.
    pub of: Option<PrintOf>,
    /// Why.
    pub because: String,
    /// What to use instead.
    pub instead: Option<Link>,
}
