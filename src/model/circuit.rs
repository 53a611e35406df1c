//! `circuit:` an electrical model of a set-up.

use super::common::Waiver;
use super::value::{Line, Many, Named, Prose};
use crate::source::Tolerant;
use schemars::JsonSchema;
use serde::Deserialize;

/// An electrical model of a set-up.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Circuit {
    /// Its id.
    pub circuit: Named,
    /// What it is, in words.
    pub title: Line,
    /// The item it is about.
    pub kit: Option<Named>,
    /// How to read it.
    pub says: Option<Prose>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}
