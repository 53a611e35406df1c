//! Minutes at the bench as a guide states them, in whole tenths.
//!
//! In: `2`, `2 min`, `30 s`, `1.5 h`, `2 days`. Out: tenths of a minute, of one time that was written down.
//! Leaves sums over a tree to `diagnosis`, which has a wider type for them, and how a time is said to its callers.

use super::ratio::Ratio;
use super::text::{Expect, Flaw, Part, Unreadable};
use super::unit::Unit;
use super::value::Quantity;

/// A length of time in whole tenths of a minute.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Minutes {
    /// Tenths of a minute.
    pub tenths: u32,
}

impl Minutes {
    /// Reads a time; a bare number is minutes.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`; also a time that is not whole tenths of a minute.
    pub fn parse(text: &str) -> Result<Minutes, Unreadable> {
        let value = Quantity::parse(text, Expect::or_bare(Unit::Minute))?;
        Minutes::of(value).ok_or_else(|| Part::all(text).flawed(Flaw::NotMinutes))
    }

    /// A time as minutes; `None` if it is no time, below zero, or not whole tenths of a minute.
    #[must_use]
    pub fn of(value: Quantity) -> Option<Minutes> {
        let tenths = value.exact_in(Unit::Minute).ok()?.times(Ratio::new(10, 1)?)?;
        let whole = (tenths.bottom() == 1).then(|| tenths.top())?;
        Some(Minutes { tenths: u32::try_from(whole).ok()? })
    }
}
