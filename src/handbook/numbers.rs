//! Numbers for lay people: shares in 100, whole minutes.
//!
//! In: exact figures. Out: rounded ones that never claim more than is known.

use super::page::InHundred;
use crate::model::Time;
use crate::reckoning::diagnosis::Fraction;

/// A share in 100: "under 1" for what is possible but rarer, "over 99" for what is not sure.
pub fn in_hundred(share: Fraction) -> InHundred {
    let (over, under) = (share.numerator(), share.denominator().max(1));
    let fine = rounded(over * 10_000, under);
    let n = rounded(over * 100, under);
    match n {
        0 if over > 0 => InHundred { n: 1, sign: "under", fine },
        100 if over < under => InHundred { n: 99, sign: "over", fine },
        n => InHundred { n, sign: "about", fine },
    }
}

fn rounded(over: u128, under: u128) -> u32 {
    u32::try_from((over + under / 2) / under).unwrap_or(u32::MAX)
}

/// Tenths of a minute as whole minutes, half up.
pub fn whole(tenths: u64) -> u32 {
    u32::try_from((tenths + 5) / 10).unwrap_or(u32::MAX)
}

/// Tenths of a minute as minutes with their tenth, if there is one: what is added up on paper has to add up.
pub fn exact(tenths: u64) -> String {
    match tenths % 10 {
        0 => (tenths / 10).to_string(),
        tenth => format!("{}.{tenth}", tenths / 10),
    }
}

/// Expected minutes in tenths, half up.
pub fn tenths(minutes: Fraction) -> u64 {
    u64::from(rounded(minutes.numerator() * 10, minutes.denominator().max(1)))
}

/// A guide's time in tenths of a minute; 0 for one that could not be read.
pub fn told(time: &Time) -> u64 {
    u64::from(time.value.value().map_or(0, |minutes| minutes.tenths))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_never_nought_when_possible_nor_a_hundred_when_unsure() {
        let shown = |over, under| {
            let share = in_hundred(Fraction::new(over, under));
            (share.sign, share.n)
        };
        assert_eq!(shown(27, 100), ("about", 27));
        assert_eq!(shown(1, 1000), ("under", 1));
        assert_eq!(shown(999, 1000), ("over", 99));
        assert_eq!(shown(1, 1), ("about", 100));
        assert_eq!(shown(0, 1), ("about", 0));
    }

    #[test]
    fn minutes_that_are_added_up_keep_their_tenths() {
        assert_eq!([exact(0), exact(5), exact(20), exact(125)], ["0", "0.5", "2", "12.5"]);
    }

    #[test]
    fn minutes_are_rounded_half_up() {
        assert_eq!([whole(0), whole(4), whole(5), whole(14), whole(15)], [0, 0, 1, 1, 2]);
    }
}
