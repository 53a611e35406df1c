//! Minutes at the bench: whole tenths inside, whole minutes for people.
//!
//! In: `2`, `2 min`, `30 s`, `1.5 h`, `2 days`. Out: tenths of a minute; hours and days where people would say them.
//! Leaves sums over a tree to `diagnosis`, and words in other languages to its callers.

use super::ratio::Ratio;
use super::text::{Expect, Flaw, Part, Unreadable};
use super::unit::Unit;
use super::value::Quantity;
use std::fmt;

/// A length of time in whole tenths of a minute.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Minutes {
    /// Tenths of a minute.
    pub tenths: u32,
}

/// A length of time as people say it. Hours and minutes are left out where they are none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spell {
    /// Whole days.
    pub days: u32,
    /// Hours beyond them, under 24.
    pub hours: u32,
    /// Minutes beyond them, under 60.
    pub minutes: u32,
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

    /// The time as people say it, in whole minutes. Half a minute counts up, and something is never nothing: who waits too
    /// short spoils the job.
    #[must_use]
    pub fn spell(self) -> Spell {
        let half_up = self.tenths / 10 + u32::from(self.tenths % 10 >= 5);
        let minutes = half_up.max(u32::from(self.tenths > 0));
        Spell { days: minutes / 1440, hours: minutes / 60 % 24, minutes: minutes % 60 }
    }
}

impl fmt::Display for Minutes {
    /// `45 min`, `1 h 30 min`, `8 h`, `2 days`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Spell { days, hours, minutes } = self.spell();
        let day = if days == 1 { "day" } else { "days" };
        let said = [(days, day), (hours, "h"), (minutes, "min")].into_iter().filter(|&(count, _)| count > 0);
        let said: Vec<String> = said.map(|(count, unit)| format!("{count}\u{a0}{unit}")).collect();
        if said.is_empty() { f.write_str("0\u{a0}min") } else { f.write_str(&said.join(" ")) }
    }
}
