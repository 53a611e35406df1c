//! The figures that must not be mixed: minutes, weights, indices, and exact fractions of them.
//!
//! In: whole numbers. Out: whole numbers and reduced fractions, so that two machines never differ in the last bit.
//! Leaves wording and rounding for readers to the pages. Not promised: arithmetic beyond what `Diagnosis::of` has let through.

use std::cmp::Ordering;
use std::fmt;
use std::ops::{Add, Mul};

/// A time in whole tenths of a minute: a sum over a way through a tree, wider than one time that a guide states
/// (`quantity::Minutes`), and without texts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Minutes(pub u64);

impl Minutes {
    /// So many whole minutes.
    pub const fn whole(minutes: u32) -> Self {
        Minutes(minutes as u64 * 10)
    }

    /// The time in minutes, for charts and text.
    pub fn as_f64(self) -> f64 {
        self.0 as f64 / 10.0
    }

    /// The time in minutes, exactly.
    pub fn exact(self) -> Fraction {
        Fraction::new(self.0, 10)
    }
}

/// How much of the symptom's cases something accounts for, in whole hundredths of a percent. Only ratios count, so any common unit
/// (a count of cases, say) serves as well.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Weight(pub u32);

macro_rules! index {
    ($(#[$doc:meta] $name:ident)*) => {$(
        #[$doc]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub usize);
    )*};
}

index! {
    /// A place in `Case::causes`.
    CauseIndex
    /// A place in `Case::remedies`.
    RemedyIndex
    /// A place in `Case::jobs`.
    JobIndex
    /// A place in `Case::probes`.
    ProbeIndex
    /// A place in `Probe::answers`.
    AnswerIndex
}

/// What may be behind the symptom: a listed cause, or what is *not on this list*.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Suspect {
    /// A listed cause.
    Cause(CauseIndex),
    /// Not on this list.
    Rest,
}

/// An exact, reduced, non-negative fraction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Fraction {
    over: u128,
    under: u128,
}

impl Fraction {
    /// Nothing.
    pub const ZERO: Fraction = Fraction { over: 0, under: 1 };
    /// All of it.
    pub const ONE: Fraction = Fraction { over: 1, under: 1 };

    /// `over / under`, reduced. A fraction over nothing counts as nothing: no share of an empty set is asked for.
    pub fn new(over: u64, under: u64) -> Self {
        Self::reduced(over.into(), under.into())
    }

    pub(super) fn reduced(over: u128, under: u128) -> Self {
        if under == 0 {
            return Self::ZERO;
        }
        let common = gcd(over, under);
        Fraction { over: over / common, under: under / common }
    }

    /// What stands above the line.
    pub fn numerator(self) -> u128 {
        self.over
    }

    /// What stands below the line, never 0.
    pub fn denominator(self) -> u128 {
        self.under
    }

    /// The nearest float, for charts and text; decisions compare the fractions.
    pub fn as_f64(self) -> f64 {
        self.over as f64 / self.under as f64
    }
}

/// Over the least common denominator. Shares of one case all have denominators that divide its total weight, so sums do too.
impl Add for Fraction {
    type Output = Fraction;

    fn add(self, other: Fraction) -> Fraction {
        let common = gcd(self.under, other.under);
        let (own, others) = (other.under / common, self.under / common);
        Self::reduced(self.over * own + other.over * others, self.under * own)
    }
}

/// Common factors go out first, so that a product is never written larger than it is.
impl Mul for Fraction {
    type Output = Fraction;

    fn mul(self, other: Fraction) -> Fraction {
        let (one, two) = (gcd(self.over, other.under).max(1), gcd(other.over, self.under).max(1));
        Self::reduced((self.over / one) * (other.over / two), (self.under / two) * (other.under / one))
    }
}

impl Ord for Fraction {
    fn cmp(&self, other: &Self) -> Ordering {
        let (left, right) = (self.over.checked_mul(other.under), other.over.checked_mul(self.under));
        match (left, right) {
            (Some(left), Some(right)) => left.cmp(&right),
            _ => by_continued_fraction(*self, *other),
        }
    }
}

impl PartialOrd for Fraction {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl fmt::Display for Fraction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.under {
            1 => write!(f, "{}", self.over),
            under => write!(f, "{}/{under}", self.over),
        }
    }
}

/// Compares by whole parts and then by the turned remainders, which cannot overflow.
fn by_continued_fraction(left: Fraction, right: Fraction) -> Ordering {
    let whole = (left.over / left.under).cmp(&(right.over / right.under));
    let (l, r) = (left.over % left.under, right.over % right.under);
    match (whole, l, r) {
        (Ordering::Equal, 0, 0) => Ordering::Equal,
        (Ordering::Equal, 0, _) => Ordering::Less,
        (Ordering::Equal, _, 0) => Ordering::Greater,
        (Ordering::Equal, l, r) => {
            by_continued_fraction(Fraction { over: right.under, under: r }, Fraction { over: left.under, under: l })
        }
        (different, ..) => different,
    }
}

pub(super) fn gcd(mut a: u128, mut b: u128) -> u128 {
    while b > 0 {
        (a, b) = (b, a % b);
    }
    a.max(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_are_reduced_and_print_as_people_write_them() {
        assert_eq!(Fraction::new(218, 100).to_string(), "109/50");
        assert_eq!(Fraction::new(40, 20).to_string(), "2");
        assert_eq!(Fraction::new(3, 0), Fraction::ZERO);
    }

    #[test]
    fn fractions_compare_exactly_even_where_products_overflow() {
        let near = Fraction::reduced(u128::MAX / 3, u128::MAX / 3 - 1);
        let nearer = Fraction::reduced(u128::MAX / 3 + 1, u128::MAX / 3);
        assert!(nearer < near, "1 + 1/(n - 1) is more than 1 + 1/n");
        assert!(Fraction::new(1, 3) < Fraction::new(334, 1000));
    }
}
