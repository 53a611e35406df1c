//! The scoring apparatus's lamps: conditions over facts about pairs of lines, in three-valued logic.
//!
//! Each fact keeps its own range, so facts that hang together can say *may* where corners would decide: safe, never wrong.

use super::{Flaw, Measure, Threshold, Truth};

/// Something that the apparatus looks at: a resistance between two of its lines, and from where on it holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fact {
    /// What it looks at.
    pub measure: Measure,
    /// When it holds.
    pub holds: Threshold,
}

/// When a lamp of the apparatus is lit.
#[derive(Debug, Clone, PartialEq)]
pub enum Condition {
    /// The fact of this number, from 0, holds.
    Fact(usize),
    /// It does not hold.
    Not(Box<Condition>),
    /// All of them hold.
    All(Vec<Condition>),
    /// At least one of them holds.
    Any(Vec<Condition>),
    /// Where machines differ: certain only if all of them agree, otherwise it may go either way.
    Machines(Vec<Condition>),
}

/// How deep conditions may be nested.
const DEEPEST: usize = 8;

impl Condition {
    /// Whether it holds, given what is known of the facts.
    pub(super) fn judge(&self, facts: &[Truth]) -> Truth {
        match self {
            Condition::Fact(number) => facts.get(*number).copied().unwrap_or(Truth::May),
            Condition::Not(condition) => !condition.judge(facts),
            Condition::All(conditions) => all(conditions.iter().map(|condition| condition.judge(facts))),
            Condition::Any(conditions) => !all(conditions.iter().map(|condition| !condition.judge(facts))),
            Condition::Machines(conditions) => {
                let judged: Vec<Truth> = conditions.iter().map(|condition| condition.judge(facts)).collect();
                match judged.first() {
                    Some(first) if judged.iter().all(|truth| truth == first) => *first,
                    _ => Truth::May,
                }
            }
        }
    }

    /// # Errors
    /// [`Flaw::Unknown`] for a fact that is not there, [`Flaw::TooMany`] if it is nested too deep.
    pub(super) fn check(&self, facts: usize) -> Result<(), Flaw> {
        self.check_to(facts, DEEPEST)
    }

    fn check_to(&self, facts: usize, deeper: usize) -> Result<(), Flaw> {
        let Some(deeper) = deeper.checked_sub(1) else {
            return Err(Flaw::TooMany("conditions within each other", DEEPEST));
        };
        match self {
            Condition::Fact(number) if *number < facts => Ok(()),
            Condition::Fact(number) => Err(Flaw::Unknown(format!("fact {number}"))),
            Condition::Not(condition) => condition.check_to(facts, deeper),
            Condition::All(conditions) | Condition::Any(conditions) | Condition::Machines(conditions) => {
                conditions.iter().try_for_each(|condition| condition.check_to(facts, deeper))
            }
        }
    }
}

/// Kleene's strong *and*: one certain *no* decides, whatever the others.
fn all(truths: impl Iterator<Item = Truth>) -> Truth {
    truths.fold(Truth::Yes, |so_far, truth| match (so_far, truth) {
        (Truth::No, _) | (_, Truth::No) => Truth::No,
        (Truth::May, _) | (_, Truth::May) => Truth::May,
        (Truth::Yes, Truth::Yes) => Truth::Yes,
    })
}
