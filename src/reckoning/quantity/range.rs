//! Least, usual and most of a value that is not one figure.
//!
//! In: `0.15 .. 0.25 .. 0.4 Ω`, `5.5 to 9.5 cm`, or one figure. Out: rising figures. Leaves judging to `bound`.

use super::decimal::Rounding;
use super::text::{Expect, Flaw, Loose, Part, Unreadable};
use super::unit::System;
use super::value::{Quantity, beside};
use std::cmp::Ordering;
use std::fmt;

/// A value that lies between two figures, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// The least.
    pub least: Quantity,
    /// The usual one, if it was given.
    pub usual: Option<Quantity>,
    /// The most; the same as the least where one figure was given.
    pub most: Quantity,
}

impl Range {
    /// Reads `least .. most`, `least .. usual .. most`, `5.5 to 9.5 cm`, or one figure. A unit may stand once for all.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`.
    pub fn parse(text: &str, expect: Expect) -> Result<Range, Unreadable> {
        Range::of(Part::all(text), expect)
    }

    pub(super) fn of(part: Part<'_>, expect: Expect) -> Result<Range, Unreadable> {
        Range::between(part, &part.figures(), expect)
    }

    /// The range of these figures, in order; `part` is the text to point at if they do not rise.
    pub(super) fn between(part: Part<'_>, figures: &[Part<'_>], expect: Expect) -> Result<Range, Unreadable> {
        let loose = figures.iter().map(|figure| figure.loose()).collect::<Result<Vec<_>, _>>()?;
        let figures = settled(&loose, expect)?;
        let range = match *figures.as_slice() {
            [only] => Range { least: only, usual: Some(only), most: only },
            [least, most] => Range { least, usual: None, most },
            [least, usual, most] => Range { least, usual: Some(usual), most },
            _ => return Err(part.flawed(Flaw::TooManyFigures)),
        };
        let rises = figures.windows(2).all(|pair| matches!(pair, &[a, b] if rises(a, b)));
        if rises { Ok(range) } else { Err(part.flawed(Flaw::NotRising)) }
    }

    /// The range with the preferred unit first: `5.5 to 9.5 cm (2.2 to 3.7 in)`.
    #[must_use]
    pub fn show(&self, system: System) -> String {
        self.show_cut(system, Rounding::Nearest, Rounding::Nearest)
    }

    /// As [`Range::show`]; the ends that were not written are cut as told.
    #[must_use]
    pub fn show_cut(&self, system: System, least: Rounding, most: Rounding) -> String {
        beside(self.most.unit, system, self.to_string(), |unit| {
            let least = self.least.converted(unit, least).ok()?;
            let usual = self.usual.map(|usual| usual.converted(unit, Rounding::Nearest)).transpose().ok()?;
            Some(Range { least, usual, most: self.most.converted(unit, most).ok()? }.to_string())
        })
    }
}

impl fmt::Display for Range {
    /// `5.5 to 9.5 cm`, `0.15 to 0.4 Ω (usually 0.25 Ω)`, or the one figure.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.least == self.most {
            return self.most.fmt(f);
        }
        if self.least.unit == self.most.unit {
            write!(f, "{} to {}", self.least.number, self.most)?;
        } else {
            write!(f, "{} to {}", self.least, self.most)?;
        }
        self.usual.map_or(Ok(()), |usual| write!(f, ", usually {usual}"))
    }
}

/// The figures with their units: one that has none takes the next one's that has, or else the last one's.
fn settled(figures: &[Loose<'_>], expect: Expect) -> Result<Vec<Quantity>, Unreadable> {
    let last = figures.iter().rev().find_map(|figure| figure.unit);
    let lent = |at: usize| figures.iter().skip(at).find_map(|figure| figure.unit).or(last);
    figures.iter().enumerate().map(|(at, figure)| figure.settled(lent(at), expect)).collect()
}

fn rises(a: Quantity, b: Quantity) -> bool {
    matches!(a.compare(b), Ok(Ordering::Less | Ordering::Equal))
}
