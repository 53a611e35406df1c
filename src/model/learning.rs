//! `learning:` a way through the handbook for somebody new, stop by stop.

use super::common::Waiver;
use super::value::{Line, Many, Named, Prose};
use crate::source::Tolerant;
use schemars::JsonSchema;
use serde::Deserialize;

/// A way to learn.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Learning {
    /// Its id.
    pub learning: Named,
    /// What it is, in words: `From newcomer to bench hand`.
    pub title: Line,
    /// Who it is for, and what they can do at its end.
    #[serde(rename = "for")]
    pub purpose: Prose,
    /// Other words for it, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// The stops, in the order that builds up.
    pub stops: Many<Tolerant<LearningStop>>,
    /// What to do after the last stop.
    pub done: Option<Prose>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// A stop on the way: one evening, more or less.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct LearningStop {
    /// Its id, unique on this way.
    pub stop: Named,
    /// What it is about.
    pub title: Line,
    /// What is told before reading, in a few sentences.
    pub says: Option<Prose>,
    /// How long it takes.
    pub minutes: Option<super::common::Time>,
    /// The guides to read, in this order. The self-check asks about these and about what is practised.
    #[serde(default)]
    pub read: Many<Named>,
    /// What you can do afterwards, one line each.
    #[serde(rename = "you can", default)]
    pub can: Many<Line>,
    /// The guides to practise on: a fault-finding guide leads to the practice bench too.
    #[serde(default)]
    pub practise: Many<Named>,
}
