//! `stores:` parts, tools and consumables.

use super::common::{Signal, Waiver, Who};
use super::value::{Line, Many, Named, Prose};
use crate::source::{Placed, Tolerant};
use schemars::JsonSchema;
use serde::Deserialize;

/// What is in the drawers.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Stores {
    /// Its id.
    pub stores: Named,
    /// What it is, in words.
    pub title: Line,
    /// Parts that stay in or on the kit.
    #[serde(default)]
    pub parts: Many<Tolerant<Part>>,
    /// Tools.
    #[serde(default)]
    pub tools: Many<Tolerant<Tool>>,
    /// What is used up.
    #[serde(default)]
    pub consumables: Many<Tolerant<Consumable>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// A part.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Part {
    /// Its id.
    pub part: Named,
    /// What people call it.
    pub title: Line,
    /// What to know about it.
    pub says: Option<Prose>,
    /// Other names, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// What does instead.
    pub substitute: Option<Prose>,
}

/// A tool.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Tool {
    /// Its id.
    pub tool: Named,
    /// What people call it.
    pub title: Line,
    /// What to know about it.
    pub says: Option<Prose>,
    /// Other names, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// For an instrument: how far its readings may be off, as its maker says: `± 1 % ± 0.1 Ω`. Reading fields in such a unit
    /// then say when a reading is too close to its limit to call.
    pub uncertainty: Option<Line>,
    /// What does instead.
    pub substitute: Option<Prose>,
    /// Who may use it: a job with it must not say less.
    pub who: Option<Placed<Who>>,
}

/// Something that is used up.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Consumable {
    /// Its id.
    pub consumable: Named,
    /// What people call it.
    pub title: Line,
    /// What to know about it.
    pub says: Option<Prose>,
    /// Other names, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// What does instead.
    pub substitute: Option<Prose>,
    /// What it can do to people: `catches fire easily`. A step that uses it must have a safety note before it.
    #[serde(default)]
    pub hazards: Many<Line>,
    /// The signal word that a step with it needs at least.
    pub signal: Option<Placed<Signal>>,
    /// Who may use it, if its signal word says too much or too little: DANGER asks for an adult, WARNING and CAUTION for
    /// somebody beside.
    pub who: Option<Placed<Who>>,
}
