//! A value: a number as written and its unit; compared exactly, shown in the system that a handbook prefers.
//!
//! In: text, or a number and a unit. Out: exact values, and figures for people. Leaves limits to `bound`.

use super::decimal::{Decimal, Rounding};
use super::ratio::Ratio;
use super::text::{Expect, Part, Unreadable};
use super::unit::{Dimension, System, Unit};
use std::cmp::Ordering;
use std::fmt;

/// A number and its unit, as written. Equality is of what was written; [`Quantity::compare`] compares values.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Quantity {
    /// The number with its digits.
    pub number: Decimal,
    /// Its unit.
    pub unit: Unit,
}

/// Two values that cannot be held against one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Incomparable {
    /// They measure different things.
    Dimensions(Dimension, Dimension),
    /// An exact result would not fit 128 bits; no value that a bench knows comes near.
    TooManyDigits,
}

impl fmt::Display for Incomparable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Incomparable::Dimensions(one, two) => {
                write!(f, "a {one} cannot be compared with a {two}")
            }
            Incomparable::TooManyDigits => f.write_str("too many digits to compare exactly"),
        }
    }
}

impl Quantity {
    /// This number of this unit.
    #[must_use]
    pub const fn new(number: Decimal, unit: Unit) -> Quantity {
        Quantity { number, unit }
    }

    /// Reads `3 N·m`, `0.5 mm`, or a bare number where `expect` lends it a unit.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`.
    pub fn parse(text: &str, expect: Expect) -> Result<Quantity, Unreadable> {
        Part::all(text).loose()?.settled(None, expect)
    }

    /// The exact value in the unit that its dimension is kept in (newton metres, grams, ohms, seconds …).
    ///
    /// # Errors
    /// [`Incomparable::TooManyDigits`].
    pub fn kept(self) -> Result<Ratio, Incomparable> {
        let kept = self.number.exact().minus(self.unit.offset()).and_then(|value| value.times(self.unit.factor()));
        kept.ok_or(Incomparable::TooManyDigits)
    }

    /// The exact value in another unit of the same dimension.
    ///
    /// # Errors
    /// Another dimension, or too many digits.
    pub fn exact_in(self, unit: Unit) -> Result<Ratio, Incomparable> {
        same(self.unit, unit)?;
        let there = self.unit.factor().over(unit.factor());
        let value =
            self.number.exact().minus(self.unit.offset()).zip(there).and_then(|(value, factor)| value.times(factor));
        value.and_then(|value| value.plus(unit.offset())).ok_or(Incomparable::TooManyDigits)
    }

    /// The value in another unit as a machine number, for networks that are solved in machine numbers.
    ///
    /// # Errors
    /// As [`Quantity::exact_in`].
    pub fn nearly_in(self, unit: Unit) -> Result<f64, Incomparable> {
        Ok(self.exact_in(unit)?.nearly())
    }

    /// Which of the two is more, exactly, whatever their units.
    ///
    /// # Errors
    /// Another dimension, or too many digits.
    pub fn compare(self, other: Quantity) -> Result<Ordering, Incomparable> {
        same(self.unit, other.unit)?;
        Ok(self.kept()?.cmp(&other.kept()?))
    }

    /// The value in another unit, to the precision that this one is given to.
    ///
    /// As many digits as were written; one more only where the first digit gets smaller, as from 36 ft to 11.0 m, because
    /// else the figure would be coarser than what was written (NIST SP 811, B.7.2). A temperature keeps its decimals.
    ///
    /// # Errors
    /// Another dimension, or too many digits.
    pub fn converted(self, unit: Unit, rounding: Rounding) -> Result<Quantity, Incomparable> {
        let exact = self.exact_in(unit)?;
        let places = i32::try_from(self.number.places()).unwrap_or(0);
        let number = match unit.dimension() {
            Dimension::Temperature => Decimal::to_places(exact, places, rounding),
            _ => self.number.likewise(exact, rounding),
        };
        Ok(Quantity::new(number.ok_or(Incomparable::TooManyDigits)?, unit))
    }

    /// The value with the preferred unit first and the other in brackets: `3 N·m (27 lbf·in)`.
    #[must_use]
    pub fn show(self, system: System) -> String {
        self.show_cut(system, Rounding::Nearest)
    }

    /// As [`Quantity::show`], with the figure that was not written cut as `rounding` says.
    #[must_use]
    pub fn show_cut(self, system: System, rounding: Rounding) -> String {
        beside(self.unit, system, self.to_string(), |unit| {
            self.converted(unit, rounding).ok().map(|other| other.to_string())
        })
    }
}

impl fmt::Display for Quantity {
    /// As written, with a no-break space before the unit; days are a word.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = match self.unit {
            Unit::Day if self.number.exact() == Decimal::new(1, 0).exact() => "day",
            Unit::Day => "days",
            unit => unit.symbol(),
        };
        write!(f, "{}\u{a0}{unit}", self.number)
    }
}

impl Decimal {
    /// `exact`, which is this number in another unit, to digits that say neither more nor less than this one's.
    pub(super) fn likewise(self, exact: Ratio, rounding: Rounding) -> Option<Decimal> {
        if exact == Ratio::ZERO {
            return Some(self);
        }
        let one_more = u32::from(leading(exact)? < self.leading());
        Decimal::to_digits(exact, self.significant() + one_more, rounding)
    }
}

/// The first digit that is not a zero.
fn leading(exact: Ratio) -> Option<u32> {
    let order = super::decimal::order(exact)?;
    let digit = exact.size().over(super::decimal::power(order)?)?;
    u32::try_from(digit.top() / digit.bottom()).ok()
}

/// `written` and what `other` says in the counterpart of `unit`, the preferred one first.
pub(super) fn beside(
    unit: Unit,
    system: System,
    written: String,
    other: impl FnOnce(Unit) -> Option<String>,
) -> String {
    match unit.counterpart(system).and_then(other) {
        None => written,
        Some(other) if unit.comes_first_in(system) => format!("{written} ({other})"),
        Some(other) => format!("{other} ({written})"),
    }
}

/// Refuses two units of different dimensions.
pub(super) fn same(one: Unit, two: Unit) -> Result<(), Incomparable> {
    match (one.dimension(), two.dimension()) {
        (one, two) if one == two => Ok(()),
        (one, two) => Err(Incomparable::Dimensions(one, two)),
    }
}
