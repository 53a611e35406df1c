//! What a reading can answer, over the whole range of every resistance.

use super::{Flaw, SLACK};

/// One answer that a person can give who takes a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Answer {
    /// The lamp is lit, the buzzer sounds.
    Lit,
    /// The lamp is dark, the buzzer is silent.
    Dark,
    /// The meter shows a figure within the limit, or any figure where no limit is set.
    In,
    /// The meter shows a figure over the limit.
    Over,
    /// The meter shows no figure: no connection, or beyond its range.
    Open,
    /// It comes and goes.
    Flickers,
}

const ALL: [Answer; 6] = [Answer::Lit, Answer::Dark, Answer::In, Answer::Over, Answer::Open, Answer::Flickers];

/// A set of answers: one if it is sure, more if it may go either way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Answers(u8);

impl Answers {
    /// Just these.
    pub fn of(answers: &[Answer]) -> Answers {
        answers.iter().fold(Answers::default(), |set, answer| Answers(set.0 | answer.bit()))
    }

    /// Whether this answer is among them.
    pub fn contains(self, answer: Answer) -> bool {
        self.0 & answer.bit() != 0
    }

    /// Those of either set.
    pub fn or(self, other: Answers) -> Answers {
        Answers(self.0 | other.0)
    }

    /// Whether the two sets have no answer in common.
    pub fn contradicts(self, other: Answers) -> bool {
        self.0 & other.0 == 0
    }

    /// The only answer there is, if there is only one.
    pub fn sure(self) -> Option<Answer> {
        let mut answers = self.iter();
        answers.next().filter(|_| answers.next().is_none())
    }

    /// The answers, in a fixed order.
    pub fn iter(self) -> impl Iterator<Item = Answer> {
        ALL.into_iter().filter(move |answer| self.contains(*answer))
    }
}

impl Answer {
    fn bit(self) -> u8 {
        1 << self as u8
    }
}

/// What a meter would show over the whole range: ohms for resistances and their differences, amperes for a tester's lamp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Span {
    /// From the least to the most; the usual value is for showing only.
    Within {
        /// The least.
        least: f64,
        /// With every piece at its usual value.
        usual: f64,
        /// The most.
        most: f64,
    },
    /// No connection; of a difference, the first only.
    Open,
    /// Of a difference: the second has no connection, the first has.
    FarUnder,
    /// Of a difference: neither has a connection.
    Undefined,
    /// Too many pieces take part for the range to be computed: nothing is known.
    NotComputed,
}

/// Whether something holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Truth {
    /// For certain.
    Yes,
    /// For certain not.
    No,
    /// It may go either way.
    May,
}

impl std::ops::Not for Truth {
    type Output = Truth;

    fn not(self) -> Truth {
        match self {
            Truth::Yes => Truth::No,
            Truth::No => Truth::Yes,
            Truth::May => Truth::May,
        }
    }
}

/// On which side of its figures a threshold holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Holds up to the first figure, never from the second.
    Under,
    /// Never holds up to the first figure, holds from the second.
    Over,
}

/// A limit with an uncertain zone between two figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Threshold {
    way: Way,
    first: f64,
    second: f64,
}

impl Threshold {
    /// Between `first` and `second` it may go either way. The same figure twice leaves no such zone.
    ///
    /// # Errors
    /// [`Flaw::Figure`] if a figure is no number or the first is the larger.
    pub fn new(way: Way, first: f64, second: f64) -> Result<Threshold, Flaw> {
        if !first.is_finite() || !second.is_finite() || first > second {
            return Err(Flaw::Figure(format!("the first figure must not be the larger: {first} and {second}")));
        }
        Ok(Threshold { way, first, second })
    }

    /// Whether it holds over a whole range.
    pub fn judge(self, span: Span) -> Truth {
        let under = match span {
            Span::Within { most, .. } if most <= with_slack(self.first, 1.0) => Truth::Yes,
            Span::Within { least, .. } if least >= with_slack(self.second, -1.0) => Truth::No,
            Span::Within { .. } | Span::Undefined | Span::NotComputed => Truth::May,
            Span::Open => Truth::No,
            Span::FarUnder => Truth::Yes,
        };
        match self.way {
            Way::Under => under,
            Way::Over => !under,
        }
    }
}

/// A limit, more lenient by the slack in the direction of `sign`.
pub(super) fn with_slack(limit: f64, sign: f64) -> f64 {
    limit + sign * SLACK * limit.abs()
}
