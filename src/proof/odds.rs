//! How often a cause that may answer a probe in several ways gives each answer.
//!
//! In: for each answer that names the cause, the odds that stand there, if any. Out: whole parts, and what is left for the unremarkable
//! answer. Leaves to others: which answers name a cause (`cases`), and what is said when the odds do not add up (`findings`).

use crate::model::Odds;
use crate::reckoning::diagnosis::most;

/// The parts of a cause's weight.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parts {
    /// For each answer that names it, in their order; never nothing.
    pub named: Vec<u32>,
    /// What is left.
    pub left: u32,
}

/// `1 in 2` here and `1 in 4` there are 2 and 1 of 4 parts, and 1 is left. Answers without odds share what the others leave; without any
/// odds all are as likely.
///
/// Nothing if the odds come to more than every time, if they leave nothing for an answer that has none, or if there are too many parts.
pub fn parts(odds: &[Option<Odds>]) -> Option<Parts> {
    let told: Vec<Odds> = odds.iter().flatten().copied().collect();
    let without = u64::try_from(odds.len() - told.len()).ok()?;
    if told.is_empty() {
        return Some(Parts { named: vec![1; odds.len()], left: 0 });
    }
    let whole = told.iter().try_fold(1, |whole, odds| least_common(whole, u64::from(odds.of)))?;
    let of_whole = |odds: &Odds| whole / u64::from(odds.of) * u64::from(odds.times);
    let left = whole.checked_sub(told.iter().map(of_whole).sum())?;
    if without > 0 && left == 0 {
        return None;
    }
    // Each answer without odds gets the same share of what is left: so many parts more, to keep them whole.
    let finer = without.max(1);
    let named = odds.iter().map(|odds| odds.as_ref().map_or(left, |odds| of_whole(odds) * finer));
    let few = |parts: u64| u32::try_from(parts).ok().filter(|parts| *parts <= most::PARTS);
    let named: Option<Vec<u32>> = named.map(few).collect();
    Some(Parts { named: named?, left: if without > 0 { 0 } else { few(left)? } })
}

fn least_common(one: u64, other: u64) -> Option<u64> {
    (one / greatest_common(one, other)).checked_mul(other).filter(|common| *common <= u64::from(u32::MAX))
}

fn greatest_common(one: u64, other: u64) -> u64 {
    if other == 0 { one } else { greatest_common(other, one % other) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(odds: &[(u32, u32)]) -> Option<(Vec<u32>, u32)> {
        let odds: Vec<Option<Odds>> = odds.iter().map(|&(times, of)| (of > 0).then_some(Odds { times, of })).collect();
        parts(&odds).map(|parts| (parts.named, parts.left))
    }

    #[test]
    fn odds_of_several_denominators_are_brought_to_one() {
        assert_eq!(of(&[(1, 2), (2, 4)]), Some((vec![2, 2], 0)));
        assert_eq!(of(&[(1, 2), (1, 3)]), Some((vec![3, 2], 1)));
        assert_eq!(of(&[(2, 3)]), Some((vec![2], 1)));
    }

    #[test]
    fn answers_without_odds_share_what_is_left() {
        assert_eq!(of(&[(0, 0), (0, 0)]), Some((vec![1, 1], 0)));
        assert_eq!(of(&[(1, 4), (0, 0)]), Some((vec![1, 3], 0)));
        assert_eq!(of(&[(1, 2), (0, 0), (0, 0)]), Some((vec![2, 1, 1], 0)));
    }

    #[test]
    fn odds_over_every_time_are_none() {
        assert_eq!(of(&[(2, 3), (1, 2)]), None);
        assert_eq!(of(&[(1, 1), (0, 0)]), None);
        assert_eq!(of(&[(1, 997), (1, 991), (1, 983), (1, 977), (1, 971), (1, 967), (1, 953)]), None);
    }
}
