//! A way to learn: its own page, a page a stop, and the questions with which a reader checks what stuck.

use super::{Address, LampShown, LimitRow, Link, Markdown};
use serde::Serialize;

/// A way to learn.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Way {
    /// Who it is for: *Markdown*.
    pub purpose: Markdown,
    /// The stops.
    pub stops: Vec<WayStop>,
    /// Whole minutes of all stops that say how long they take.
    pub minutes: u32,
    /// What to do after the last stop: *Markdown*.
    pub done: Option<Markdown>,
}

/// A stop in the list of a way.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WayStop {
    /// Its number, from 1.
    pub number: usize,
    /// Its page.
    pub link: Link,
    /// Whole minutes, if it says so.
    pub minutes: Option<u32>,
    /// What one can do afterwards.
    pub can: Vec<String>,
}

/// A stop.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LearningStop {
    /// The way.
    pub way: Link,
    /// Its number, from 1.
    pub number: usize,
    /// How many stops there are.
    pub of: usize,
    /// What is told before reading: *Markdown*.
    pub says: Option<Markdown>,
    /// Whole minutes, if it says so.
    pub minutes: Option<u32>,
    /// What to read.
    pub read: Vec<Link>,
    /// What one can do afterwards.
    pub can: Vec<String>,
    /// What to practise on.
    pub practise: Vec<Practised>,
    /// The questions.
    pub check: Vec<CheckQuestion>,
    /// The stop before.
    pub before: Option<Link>,
    /// The stop after.
    pub after: Option<Link>,
}

/// A guide to practise on.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Practised {
    /// The guide.
    pub link: Link,
    /// Its practice bench, if it is for fault finding.
    pub bench: Option<Address>,
}

/// A question of a self-check.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckQuestion {
    /// What is asked: a message id that takes `about` and `of`.
    pub ask: &'static str,
    /// What it is about, in the guides' words.
    pub about: String,
    /// The guide or lamp it is about.
    pub of: String,
    /// On which instrument: a message id, for a lamp.
    pub seen_on: Option<&'static str>,
    /// The choices; exactly one is right.
    pub choices: Vec<Choice>,
    /// Where the answer stands.
    pub told: Link,
}

/// A choice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Choice {
    /// What it says.
    pub says: Said,
    /// Whether it is right.
    pub right: bool,
}

/// What a choice says.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Said {
    /// Words of a guide: *Markdown*.
    Text {
        /// The words.
        text: Markdown,
    },
    /// A bound.
    Bound {
        /// The kind of bound: a message id after `bound-`.
        bound: &'static str,
        /// The value with its unit.
        value: String,
    },
    /// What a lamp does.
    Lamps {
        /// In each state looked at.
        lamps: Vec<LampShown>,
    },
}

impl Said {
    /// The bound of a limit with the value of perhaps another one.
    pub fn bound(of: &LimitRow, value: &LimitRow) -> Said {
        Said::Bound { bound: of.bound, value: value.value.clone() }
    }
}
