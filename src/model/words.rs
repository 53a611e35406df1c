//! `words:` the glossary.

use super::common::Waiver;
use super::value::{Line, Many, Named, Prose};
use crate::source::Tolerant;
use schemars::JsonSchema;
use serde::Deserialize;

/// Words of the trade.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Glossary {
    /// Its id.
    pub words: Named,
    /// What it is, in words.
    pub title: Line,
    /// The words.
    pub entries: Many<Tolerant<Word>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// A word.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Word {
    /// Its id.
    pub word: Named,
    /// The word as people write it, if it is not the id.
    pub title: Option<Line>,
    /// What it means.
    pub says: Prose,
    /// What else people say for it, here and elsewhere: the search finds the word by these too.
    #[serde(default)]
    pub also: Many<Line>,
}
