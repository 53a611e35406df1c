//! Numbers with the digits they were written with: `3.10` is not `3.1`.
//!
//! In: digits and where the point stands. Out: the exact value, and the digits again. Leaves reading from text to `text`.

use super::ratio::Ratio;
use std::fmt;

/// The most digits a number may be written with; what a bench needs is three or four.
pub const MOST_DIGITS: usize = 12;
/// The most digits after the point.
pub const MOST_PLACES: u32 = 9;

/// A decimal number as written: its digits, and how many of them stand after the point.
///
/// Equality is of the digits; compare [`Decimal::exact`] to compare values.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Decimal {
    digits: i128,
    places: u32,
}

/// Which way a figure that has too many digits is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest; exactly half way to the even digit (NIST SP 811, B.7.1).
    Nearest,
    /// Towards less: for what a value may reach at most.
    Down,
    /// Towards more: for what a value must reach at least.
    Up,
}

impl Decimal {
    /// `digits` with the last `places` of them after the point: `new(310, 2)` is `3.10`.
    #[must_use]
    pub const fn new(digits: i64, places: u8) -> Decimal {
        let places = if places as u32 > MOST_PLACES { MOST_PLACES } else { places as u32 };
        Decimal { digits: digits as i128, places }
    }

    /// Reads plain digits with a point at most, `12` or `0.50`; `None` if they are not that, or too many.
    #[must_use]
    pub fn plainly(text: &str) -> Option<Decimal> {
        let (whole, after) = text.split_once('.').map_or((text, None), |(whole, after)| (whole, Some(after)));
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        let sound = digits(whole) && after.is_none_or(digits);
        if sound { Decimal::of_digits(whole, after.unwrap_or_default()) } else { None }
    }

    /// The value with no more digits than it needs; `None` if no number of them gives it exactly.
    #[must_use]
    pub fn shortest(exact: Ratio) -> Option<Decimal> {
        let places = i32::try_from(MOST_PLACES).ok()?;
        let cut = (0..=places).filter_map(|places| Decimal::to_places(exact, places, Rounding::Nearest));
        cut.into_iter().find(|cut| cut.exact() == exact)
    }

    /// Reads plain digits, `12` or `0.50`, without a sign; `None` if they are not that, or too many.
    pub(super) fn of_digits(whole: &str, after: &str) -> Option<Decimal> {
        let all = format!("{whole}{after}");
        let significant = all.trim_start_matches('0').len();
        if significant > MOST_DIGITS || after.len() > MOST_PLACES as usize {
            return None;
        }
        Some(Decimal { digits: all.parse().ok()?, places: u32::try_from(after.len()).ok()? })
    }

    /// The same with the other sign.
    #[must_use]
    pub fn negative(self) -> Decimal {
        Decimal { digits: -self.digits, ..self }
    }

    /// The exact value.
    #[must_use]
    pub fn exact(self) -> Ratio {
        let tens = 10_i128.pow(self.places.min(MOST_PLACES));
        Ratio::new(self.digits, tens).unwrap_or(Ratio::ZERO)
    }

    /// How many digits stand after the point.
    #[must_use]
    pub fn places(self) -> u32 {
        self.places
    }

    /// How many digits it is given to. Zeros at the end count: who writes `500 g` means 500, not 5 hundreds.
    #[must_use]
    pub fn significant(self) -> u32 {
        self.digits.unsigned_abs().checked_ilog10().map_or(1, |more| more + 1)
    }

    /// The first digit that is not a zero, or zero.
    #[must_use]
    pub fn leading(self) -> u32 {
        let size = self.digits.unsigned_abs();
        let below = 10_u128.pow(self.significant() - 1);
        u32::try_from(size / below).unwrap_or(0)
    }

    /// The same value with at least `places` digits after the point.
    #[must_use]
    pub fn with_places(self, places: u32) -> Decimal {
        let more = places.min(MOST_PLACES).saturating_sub(self.places);
        match self.digits.checked_mul(10_i128.pow(more)) {
            Some(digits) => Decimal { digits, places: self.places + more },
            None => self,
        }
    }

    /// `exact` cut to `places` digits after the point; fewer than none cuts tens and hundreds. `None` if it does not fit.
    #[must_use]
    pub fn to_places(exact: Ratio, places: i32, rounding: Rounding) -> Option<Decimal> {
        let tens = Ratio::new(10_i128.checked_pow(places.unsigned_abs())?, 1)?;
        let scaled = if places < 0 { exact.over(tens)? } else { exact.times(tens)? };
        let whole = whole(scaled, rounding);
        if places < 0 {
            return Some(Decimal { digits: whole.checked_mul(tens.top())?, places: 0 });
        }
        let cut = Decimal { digits: whole, places: places.unsigned_abs() };
        (cut.places <= MOST_PLACES).then_some(cut)
    }

    /// `exact` cut to so many `significant` digits, at least one. `None` if it does not fit.
    #[must_use]
    pub fn to_digits(exact: Ratio, significant: u32, rounding: Rounding) -> Option<Decimal> {
        let order = order(exact)?;
        let places = i32::try_from(significant.max(1)).ok()? - 1 - order;
        let fits = i32::try_from(MOST_PLACES).ok()?;
        let cut = Decimal::to_places(exact, places.min(fits), rounding)?;
        // 9.96 to two digits is 10, not 10.0: the carry gave a digit that nobody wrote.
        if places <= fits && cut.exact().size() >= power(order + 1)? {
            return Decimal::to_places(exact, (places - 1).min(fits), rounding);
        }
        Some(cut)
    }

    /// The digits with a plain hyphen for a minus, for scripts and JSON.
    #[must_use]
    pub fn plain(self) -> String {
        let sign = if self.digits < 0 { "-" } else { "" };
        let places = self.places as usize;
        let digits = format!("{:0>width$}", self.digits.unsigned_abs(), width = places + 1);
        let (whole, after) = digits.split_at(digits.len() - places);
        if places == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{after}") }
    }
}

impl fmt::Display for Decimal {
    /// The digits as written, with a true minus.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.plain().replace('-', "−"))
    }
}

/// The power of ten of the first digit that is not a zero: 0 for 3, −2 for 0.05. Zero counts as 0.
pub(super) fn order(exact: Ratio) -> Option<i32> {
    let size = exact.size();
    let mut order = 0;
    while size >= power(order + 1)? {
        order += 1;
    }
    while size != Ratio::ZERO && size < power(order)? {
        order -= 1;
    }
    Some(order)
}

/// Ten to that power.
pub(super) fn power(order: i32) -> Option<Ratio> {
    let tens = 10_i128.checked_pow(order.unsigned_abs())?;
    if order < 0 { Ratio::new(1, tens) } else { Ratio::new(tens, 1) }
}

/// The whole number that `exact` is cut to.
fn whole(exact: Ratio, rounding: Rounding) -> i128 {
    let below = exact.top().div_euclid(exact.bottom());
    let rest = exact.top().rem_euclid(exact.bottom());
    let up = match rounding {
        Rounding::Down => false,
        Rounding::Up => rest > 0,
        // Half is compared as rest against bottom − rest: twice the rest might not fit.
        Rounding::Nearest => match rest.cmp(&(exact.bottom() - rest)) {
            std::cmp::Ordering::Less => false,
            std::cmp::Ordering::Equal => below % 2 != 0,
            std::cmp::Ordering::Greater => true,
        },
    };
    below + i128::from(up)
}
