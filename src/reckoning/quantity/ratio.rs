//! Exact fractions, so that no comparison hangs on a rounding.
//!
//! In: whole numbers. Out: sums, products and an order that are exact, or `None` where a result would not fit 128 bits.
//! Leaves digits and how they are shown to `decimal`.

use std::cmp::Ordering;
use std::fmt;

/// An exact fraction in lowest terms, with a denominator above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Ratio {
    top: i128,
    bottom: i128,
}

impl Ratio {
    /// Nothing at all.
    pub const ZERO: Ratio = Ratio { top: 0, bottom: 1 };

    /// `top / bottom` in lowest terms; `None` if `bottom` is zero or a part is the one number that has no opposite.
    #[must_use]
    pub fn new(top: i128, bottom: i128) -> Option<Ratio> {
        if bottom == 0 || top == i128::MIN || bottom == i128::MIN {
            return None;
        }
        let shared = common(top, bottom) * bottom.signum();
        Some(Ratio { top: top / shared, bottom: bottom / shared })
    }

    /// The number above the line; it carries the sign.
    #[must_use]
    pub fn top(self) -> i128 {
        self.top
    }

    /// The number below the line, above zero.
    #[must_use]
    pub fn bottom(self) -> i128 {
        self.bottom
    }

    /// The sum.
    #[must_use]
    pub fn plus(self, other: Ratio) -> Option<Ratio> {
        let shared = common(self.bottom, other.bottom);
        let (left, right) = (other.bottom / shared, self.bottom / shared);
        let top = self.top.checked_mul(left)?.checked_add(other.top.checked_mul(right)?)?;
        Ratio::new(top, self.bottom.checked_mul(left)?)
    }

    /// The difference.
    #[must_use]
    pub fn minus(self, other: Ratio) -> Option<Ratio> {
        self.plus(Ratio { top: -other.top, bottom: other.bottom })
    }

    /// The product. Common factors go first, so that only a product that truly does not fit is `None`.
    #[must_use]
    pub fn times(self, other: Ratio) -> Option<Ratio> {
        let (one, two) = (common(self.top, other.bottom), common(other.top, self.bottom));
        let top = (self.top / one).checked_mul(other.top / two)?;
        Ratio::new(top, (self.bottom / two).checked_mul(other.bottom / one)?)
    }

    /// The quotient; `None` also for division by zero.
    #[must_use]
    pub fn over(self, other: Ratio) -> Option<Ratio> {
        self.times(Ratio::new(other.bottom, other.top)?)
    }

    /// The same without its sign.
    #[must_use]
    pub fn size(self) -> Ratio {
        Ratio { top: self.top.abs(), bottom: self.bottom }
    }

    /// The nearest machine number, or one beside it: for networks that are solved in machine numbers, never for a comparison.
    #[must_use]
    pub fn nearly(self) -> f64 {
        self.top as f64 / self.bottom as f64
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Ratio) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Ratio {
    /// Compares whole parts, then the remainders turned over, as Euclid does: nothing is multiplied, so nothing overflows.
    fn cmp(&self, other: &Ratio) -> Ordering {
        let (mut a, mut b) = (*self, *other);
        loop {
            let (whole, against) = (a.top.div_euclid(a.bottom), b.top.div_euclid(b.bottom));
            let (left, right) = (a.top.rem_euclid(a.bottom), b.top.rem_euclid(b.bottom));
            if whole != against || left == 0 || right == 0 {
                return whole.cmp(&against).then(left.signum().cmp(&right.signum()));
            }
            // left/a.bottom < right/b.bottom exactly when a.bottom/left > b.bottom/right: the sides change places.
            (a, b) = (Ratio { top: b.bottom, bottom: right }, Ratio { top: a.bottom, bottom: left });
        }
    }
}

impl fmt::Display for Ratio {
    /// `7/4`, or `2` where nothing is left below the line.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.bottom {
            1 => write!(f, "{}", self.top),
            bottom => write!(f, "{}/{bottom}", self.top),
        }
    }
}

/// The greatest common divisor, at least 1.
fn common(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a.abs(), b.abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.max(1)
}
