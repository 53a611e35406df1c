//! How far a value may be off: tolerances of figures, and uncertainties of instruments.
//!
//! In: `± 10 %`, `± 0.05 mm`, `8 mm ± 0.05`, `± 1 % ± 0.1 Ω`. Out: exact half widths. Leaves verdicts to `bound`.

use super::decimal::{Decimal, Rounding};
use super::ratio::Ratio;
use super::text::{Expect, Flaw, Loose, Part, Unreadable};
use super::unit::{System, Unit};
use super::value::{Incomparable, Quantity, beside, same};
use std::fmt;

/// How far a value may lie to either side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tolerance {
    /// So many percent of the value.
    Share(Decimal),
    /// So much, in a unit of its own.
    Amount(Quantity),
}

/// A value, and how far it may be off if that was said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Figure {
    /// The value.
    pub value: Quantity,
    /// How far it may be off.
    pub tolerance: Option<Tolerance>,
}

/// What an instrument's maker says it may be off: the parts add up, as `± 1 % ± 0.1 Ω` does. None at all: taken to be exact.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Uncertainty {
    /// The parts that add up.
    pub parts: Vec<Tolerance>,
}

/// The ways to write plus or minus.
const SIGNS: [&str; 3] = ["±", "+/-", "+-"];

impl Tolerance {
    /// Reads `± 10 %` or `± 0.05 mm`; the sign may be left out.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`.
    pub fn parse(text: &str, expect: Expect) -> Result<Tolerance, Unreadable> {
        Tolerance::of(Part::all(text), None, expect)
    }

    /// How far to either side of `value`, in the unit its dimension is kept in.
    ///
    /// # Errors
    /// Another dimension than the value's, or too many digits.
    pub fn half_width(self, value: Quantity) -> Result<Ratio, Incomparable> {
        let factor = value.unit.factor();
        let wide = match self {
            Tolerance::Share(percent) => {
                let share = Ratio::new(1, 100).and_then(|hundredth| percent.exact().times(hundredth));
                share.and_then(|share| share.times(value.number.exact().size())).and_then(|wide| wide.times(factor))
            }
            Tolerance::Amount(amount) => {
                same(value.unit, amount.unit)?;
                amount.number.exact().times(amount.unit.factor())
            }
        };
        wide.ok_or(Incomparable::TooManyDigits)
    }

    fn of(part: Part<'_>, lent: Option<Unit>, expect: Expect) -> Result<Tolerance, Unreadable> {
        let figure = SIGNS.iter().find_map(|sign| part.after(sign)).unwrap_or(part);
        Tolerance::settled(&figure.loose()?, lent, expect)
    }

    fn settled(figure: &Loose<'_>, lent: Option<Unit>, expect: Expect) -> Result<Tolerance, Unreadable> {
        if figure.number.exact() < Ratio::ZERO {
            return Err(figure.part.flawed(Flaw::BadTolerance));
        }
        match figure.unit {
            Some(Unit::Percent) => Ok(Tolerance::Share(figure.number)),
            _ => figure.settled(lent, expect).map(Tolerance::Amount),
        }
    }

    /// The same in another unit. An amount is a difference, so that no scale's zero plays a part.
    fn converted(self, unit: Unit) -> Option<Tolerance> {
        let Tolerance::Amount(amount) = self else {
            return Some(self);
        };
        let there = amount.unit.factor().over(unit.factor())?;
        let exact = amount.number.exact().times(there)?;
        Some(Tolerance::Amount(Quantity::new(amount.number.likewise(exact, Rounding::Nearest)?, unit)))
    }
}

impl fmt::Display for Tolerance {
    /// `± 10 %` or `± 0.05 mm`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Tolerance::Share(percent) => {
                write!(f, "±\u{a0}{}", Quantity::new(*percent, Unit::Percent))
            }
            Tolerance::Amount(amount) => write!(f, "±\u{a0}{amount}"),
        }
    }
}

impl Figure {
    /// Reads `3 N·m`, `3 N·m ± 10 %`, `8 mm ± 0.05` or `14 ± 1 ms`.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`.
    pub fn parse(text: &str, expect: Expect) -> Result<Figure, Unreadable> {
        Figure::of(Part::all(text), expect)
    }

    pub(super) fn of(part: Part<'_>, expect: Expect) -> Result<Figure, Unreadable> {
        let Some((value, tolerance)) = SIGNS.iter().find_map(|sign| part.split(sign)) else {
            return Ok(Figure { value: part.loose()?.settled(None, expect)?, tolerance: None });
        };
        let (value, around) = (value.loose()?, tolerance.loose()?);
        let lent = around.unit.filter(|&unit| unit != Unit::Percent);
        let value = value.settled(lent, expect)?;
        let own = Expect { dimension: Some(value.unit.dimension()), bare: Some(value.unit) };
        Ok(Figure { value, tolerance: Some(Tolerance::settled(&around, Some(value.unit), own)?) })
    }

    /// The least and the most that it may be, in the unit its dimension is kept in.
    ///
    /// # Errors
    /// Too many digits.
    pub fn ends(self) -> Result<(Ratio, Ratio), Incomparable> {
        let (kept, tolerance) = (self.value.kept()?, self.tolerance);
        let wide = tolerance.map_or(Ok(Ratio::ZERO), |tolerance| tolerance.half_width(self.value))?;
        kept.minus(wide).zip(kept.plus(wide)).ok_or(Incomparable::TooManyDigits)
    }

    /// The figure with the preferred unit first: `8 mm ± 0.05 mm (0.3150 in ± 0.0020 in)`.
    #[must_use]
    pub fn show(self, system: System) -> String {
        beside(self.value.unit, system, self.to_string(), |unit| {
            let value = self.to_its_tolerance().converted(unit, Rounding::Nearest).ok()?;
            let tolerance = match self.tolerance {
                Some(tolerance) => Some(tolerance.converted(unit)?),
                None => None,
            };
            Some(Figure { value, tolerance }.to_string())
        })
    }

    /// The value to as many decimals as its tolerance has: `8 mm ± 0.05 mm` speaks of 8.00 mm.
    fn to_its_tolerance(self) -> Quantity {
        match self.tolerance {
            Some(Tolerance::Amount(amount)) if amount.unit == self.value.unit => {
                Quantity::new(self.value.number.with_places(amount.number.places()), self.value.unit)
            }
            _ => self.value,
        }
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.tolerance {
            None => self.value.fmt(f),
            Some(tolerance) => write!(f, "{} {tolerance}", self.value),
        }
    }
}

impl Uncertainty {
    /// Reads `± 1 %`, `0.1 Ω`, or parts that add up: `± 1 % ± 0.1 Ω`, `1 % + 0.1 Ω`.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`.
    pub fn parse(text: &str, expect: Expect) -> Result<Uncertainty, Unreadable> {
        let mut parts = Vec::new();
        let whole = Part::all(text);
        let mut rest = SIGNS.iter().find_map(|sign| whole.after(sign)).unwrap_or(whole);
        while let Some((first, more)) = SIGNS.iter().chain(&["+"]).find_map(|sign| rest.split(sign)) {
            parts.push(Tolerance::of(first, None, expect)?);
            rest = more;
        }
        parts.push(Tolerance::of(rest, None, expect)?);
        Ok(Uncertainty { parts })
    }

    /// How far a reading of `value` may be off, in the unit its dimension is kept in.
    ///
    /// # Errors
    /// Another dimension than the value's, or too many digits.
    pub fn half_width(&self, value: Quantity) -> Result<Ratio, Incomparable> {
        self.parts
            .iter()
            .try_fold(Ratio::ZERO, |sum, part| sum.plus(part.half_width(value)?).ok_or(Incomparable::TooManyDigits))
    }
}
