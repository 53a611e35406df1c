//! What several kinds of page say in the same way.

use super::{Address, Markdown};
use crate::model::Signal;
use serde::Serialize;

/// Words in two lengths. Either serves both if the other is missing: then `full` has it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Worded {
    /// The full wording: *Markdown*.
    pub full: Markdown,
    /// The short one: *Markdown*.
    pub short: Option<Markdown>,
}

/// A safety note.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SafetyNote {
    /// The signal word: a message id after `signal-`.
    pub signal: Signal,
    /// *Markdown*.
    pub says: Markdown,
}

/// A picture on a page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Picture {
    /// Where it lies.
    pub address: Address,
    /// What it tells somebody who cannot see it.
    pub alt: String,
    /// A line under it: *Markdown*.
    pub caption: Option<Markdown>,
}
