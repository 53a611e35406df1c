//! Counted cases: how far a share that was counted may be off.
//!
//! In: how often each cause was seen. Out: for each the range that holds its true share nine times in ten. The counts are taken as
//! drawn from one multinomial whose shares have a Dirichlet prior of a half each (Jeffreys); a share's margin is then a beta
//! distribution, and the range runs from its 5th to its 95th percentile.
//! Leaves to others: words. Not promised: anything about counts of which one case made the next likelier.

use libm::{exp, fabs, lgamma, log, log1p};

/// Below so many cases the range of a share is wide enough that a reader must be told.
pub const FEW: u32 = 30;
/// What each cause has before the first case is counted.
const PRIOR: f64 = 0.5;
/// How much lies below and above the range.
const TAIL: f64 = 0.05;

/// A range of a share, both between 0 and 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Between {
    /// In 19 cases of 20 it is not less.
    pub low: f64,
    /// In 19 cases of 20 it is not more.
    pub high: f64,
}

/// The range of each share, in the order of the counts. A single count has nothing to be shared with: its range is 1 to 1.
pub fn ranges(seen: &[u32]) -> Vec<Between> {
    let all: f64 = seen.iter().map(|seen| f64::from(*seen) + PRIOR).sum();
    let range = |seen: &u32| {
        let mine = f64::from(*seen) + PRIOR;
        let others = all - mine;
        match others > 0.0 {
            true => Between { low: quantile(mine, others, TAIL), high: quantile(mine, others, 1.0 - TAIL) },
            false => Between { low: 1.0, high: 1.0 },
        }
    };
    seen.iter().map(range).collect()
}

/// The point of the beta distribution with so much below it, by halving.
fn quantile(a: f64, b: f64, below: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if beta_below(a, b, middle) < below {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low + high) / 2.0
}

/// The regularised incomplete beta function I_x(a, b): how much of the distribution lies below `x`.
fn beta_below(a: f64, b: f64, x: f64) -> f64 {
    if x <= 0.0 || x >= 1.0 {
        return if x <= 0.0 { 0.0 } else { 1.0 };
    }
    let front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log1p(-x));
    // The fraction converges quickly on this side of the mean; DLMF 8.17.4 gives the other.
    if x < (a + 1.0) / (a + b + 2.0) {
        front * fraction(a, b, x) / a
    } else {
        1.0 - front * fraction(b, a, 1.0 - x) / b
    }
}

/// The continued fraction of DLMF 8.17.22, from its first part on, by the modified Lentz method.
fn fraction(a: f64, b: f64, x: f64) -> f64 {
    const LEAST: f64 = 1e-300;
    let kept = |value: f64| if fabs(value) < LEAST { LEAST } else { value };
    let mut c = 1.0;
    let mut d = 1.0 / kept(1.0 - (a + b) * x / (a + 1.0));
    let mut value = d;
    for step in 1..=400_u32 {
        let m = f64::from(step);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        let mut last = 1.0;
        for part in [even, odd] {
            d = 1.0 / kept(1.0 + part * d);
            c = kept(1.0 + part / c);
            last = c * d;
            value *= last;
        }
        if fabs(last - 1.0) < 1e-15 {
            break;
        }
    }
    value
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_flat_distribution_has_its_percentiles_where_they_stand() {
        // Beta(1, 1) is flat; Beta(2, 1) has x² below x: both from their definition.
        assert!(fabs(quantile(1.0, 1.0, 0.05) - 0.05) < 1e-12);
        assert!(fabs(quantile(2.0, 1.0, 0.25) - 0.5) < 1e-12);
    }

    #[test]
    fn more_cases_make_the_range_narrower() {
        let wide = |seen: &[u32]| ranges(seen)[0].high - ranges(seen)[0].low;
        assert!(wide(&[3, 3, 3]) > wide(&[30, 30, 30]));
        assert_eq!(ranges(&[7]), [Between { low: 1.0, high: 1.0 }]);
    }
}
