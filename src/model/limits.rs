//! `limits:` rule limits and shop limits, each with its source.

use super::common::Waiver;
use super::value::{Line, Many, Named, Prose};
use crate::source::Tolerant;
use schemars::JsonSchema;
use serde::Deserialize;

/// Limits from one source.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Limits {
    /// Its id.
    pub limits: Named,
    /// What they are, in words.
    pub title: Line,
    /// The rule book or standard that they are from, or `shop` for the club's own.
    pub source: Option<Line>,
    /// Its edition.
    pub edition: Option<Line>,
    /// The day on which they were looked up: `2026-11-25`.
    #[serde(rename = "looked up")]
    pub looked_up: Option<Line>,
    /// A word on them all.
    pub says: Option<Prose>,
    /// The limits.
    pub entries: Many<Tolerant<Limit>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// A limit. Exactly one of the bounds.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Limit {
    /// Its id.
    pub limit: Named,
    /// What is limited.
    pub title: Line,
    /// The item it is for.
    pub kit: Option<Named>,
    /// The most that it may be: `2 Ω`.
    #[serde(rename = "at most")]
    pub at_most: Option<Line>,
    /// It must be less than this.
    #[serde(rename = "less than")]
    pub less_than: Option<Line>,
    /// The least that it may be.
    #[serde(rename = "at least")]
    pub at_least: Option<Line>,
    /// It must be more than this.
    #[serde(rename = "more than")]
    pub more_than: Option<Line>,
    /// It must lie between two values: `5.5 .. 9.5 cm`.
    pub between: Option<Line>,
    /// This gauge or weight must register: `500 g`.
    #[serde(rename = "must register")]
    pub must_register: Option<Line>,
    /// This gauge or weight must not register.
    #[serde(rename = "must not register")]
    pub must_not_register: Option<Line>,
    /// The tip must lift this weight.
    #[serde(rename = "must lift")]
    pub must_lift: Option<Line>,
    /// This gauge must pass.
    #[serde(rename = "must pass")]
    pub must_pass: Option<Line>,
    /// Where and in what state it holds: `at the socket, points clean`.
    pub at: Option<Line>,
    /// The article of the source.
    pub article: Option<Line>,
    /// Another source than the file's, or `shop`.
    pub source: Option<Line>,
    /// How it is measured.
    pub how: Option<Prose>,
    /// Other names, for the search.
    #[serde(default)]
    pub also: Many<Line>,
}

/// The kind of a bound.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum BoundKind {
    /// Not above.
    AtMost,
    /// Below.
    LessThan,
    /// Not below.
    AtLeast,
    /// Above.
    MoreThan,
    /// From one to the other.
    Between,
    /// A gauge or weight that must register.
    MustRegister,
    /// A gauge or weight that must not.
    MustNotRegister,
    /// A weight that must be lifted.
    MustLift,
    /// A gauge that must pass.
    MustPass,
}

impl Limit {
    /// All bounds given: one is right.
    pub fn bounds(&self) -> Vec<(BoundKind, &Line)> {
        let all = [
            (BoundKind::AtMost, &self.at_most),
            (BoundKind::LessThan, &self.less_than),
            (BoundKind::AtLeast, &self.at_least),
            (BoundKind::MoreThan, &self.more_than),
            (BoundKind::Between, &self.between),
            (BoundKind::MustRegister, &self.must_register),
            (BoundKind::MustNotRegister, &self.must_not_register),
            (BoundKind::MustLift, &self.must_lift),
            (BoundKind::MustPass, &self.must_pass),
        ];
        all.into_iter().filter_map(|(kind, text)| text.as_ref().map(|text| (kind, text))).collect()
    }
}
