//! Numbers to print in: `F1..F12,F20` is F1, F2 … F12 and F20; `F1-F12` is the same range.

/// As many sheets as one file may have: a club's whole stock, many times over.
const MOST: usize = 500;
/// The longest number that its field holds.
const LONGEST: usize = 12;

/// Reads the list.
pub fn read(text: &str) -> Result<Vec<String>, String> {
    let mut numbers = Vec::new();
    for part in text.split(',').map(str::trim).filter(|part| !part.is_empty()) {
        match part.split_once("..") {
            Some((first, last)) => numbers.extend(range(part, first.trim(), last.trim())?),
            None => match hyphened(part) {
                Some((first, last)) => numbers.extend(range(part, first, last)?),
                None => numbers.push(part.to_owned()),
            },
        }
        if numbers.len() > MOST {
            return Err(format!("`--for {text}` asks for more than {MOST} sheets. Make several files."));
        }
    }
    if let Some(long) = numbers.iter().find(|number| number.chars().count() > LONGEST) {
        return Err(format!("The number `{long}` is longer than its field: {LONGEST} letters at most."));
    }
    if numbers.is_empty() {
        return Err("`--for` names no number. Write it as F1..F12,F20.".to_owned());
    }
    Ok(numbers)
}

/// The ends of `C1-C8`, as people write a range. `2024-11` or `A-7` may be the number of one item and stay whole: both ends must begin
/// with the same letters, end in figures and rise.
fn hyphened(part: &str) -> Option<(&str, &str)> {
    let (first, last) = part.split_once(['-', '\u{2013}'])?;
    let (first, last) = (first.trim(), last.trim());
    let ((letters, from), (other, to)) = (parted(first), parted(last));
    let rises = from.parse::<u32>().ok()? < to.parse::<u32>().ok()?;
    (!letters.is_empty() && letters == other && rises).then_some((first, last))
}

fn range(part: &str, first: &str, last: &str) -> Result<Vec<String>, String> {
    let bad = || format!("`{part}` is no range of numbers. Write it as F1..F12: the same letters, then two numbers.");
    let ((letters, from), (other, to)) = (parted(first), parted(last));
    // `F1..12` is as good as `F1..F12`.
    let same = letters == other || other.is_empty();
    let (low, high): (u32, u32) = match (from.parse(), to.parse()) {
        (Ok(low), Ok(high)) if same && low <= high => (low, high),
        _ => return Err(bad()),
    };
    if usize::try_from(high - low).is_ok_and(|many| many >= MOST) {
        return Err(format!("`{part}` asks for more than {MOST} sheets. Make several files."));
    }
    let width = if from.starts_with('0') { from.len() } else { 0 };
    Ok((low..=high).map(|number| format!("{letters}{number:0width$}")).collect())
}

/// The letters before the number at the end, and the number.
fn parted(text: &str) -> (&str, &str) {
    let figures = text.bytes().rev().take_while(u8::is_ascii_digit).count();
    text.split_at(text.len() - figures)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> String {
        read(text).map_or_else(|why| why, |numbers| numbers.join(" "))
    }

    #[test]
    fn ranges_and_single_numbers_may_be_mixed() {
        assert_eq!(said("F1..F4,F20"), "F1 F2 F3 F4 F20");
        assert_eq!(said("F09..F11, club spare"), "F09 F10 F11 club spare");
        assert_eq!(said("3..5"), "3 4 5");
        assert_eq!(said("F8..10"), "F8 F9 F10");
    }

    #[test]
    fn a_hyphen_between_two_rising_numbers_makes_a_range_and_any_other_is_part_of_a_number() {
        assert_eq!(said("C1-C8"), "C1 C2 C3 C4 C5 C6 C7 C8");
        assert_eq!(said("C1 \u{2013} C3, C9"), "C1 C2 C3 C9");
        assert_eq!(said("A-7, 2024-11, C8-C1, C1-E4, spare-cord"), "A-7 2024-11 C8-C1 C1-E4 spare-cord");
        assert!(said("F1-F600").contains("more than 500"));
    }

    #[test]
    fn what_is_no_range_is_refused() {
        for bad in ["F5..F1", "F1..E4", "F..G", "F1..", "..F3", "F1..F4000000000", "F1..F99999999999"] {
            assert!(read(bad).is_err(), "{bad}");
        }
        assert!(said("F1..F600").contains("more than 500"));
        assert!(said("F1..F300,E1..E300").contains("more than 500"));
        assert!(said(" , ").contains("names no number"));
        assert!(said("a number that no field holds").contains("longer than its field"));
    }
}
