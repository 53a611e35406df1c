//! Days of the calendar, as guides and tables name them.
//!
//! In: numbers or a text. Out: whether there is such a day. Knows nothing of today: no clock is asked.

/// Whether there is such a day, by the Gregorian calendar.
pub fn is_day(year: u32, month: u32, day: u32) -> bool {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let longest = match month {
        2 => 28 + u32::from(leap),
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    };
    (1..=longest).contains(&day)
}

/// Whether a text is a day as ISO 8601 writes it: `2026-11-25`.
pub fn is_iso_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let number = |text: &str, digits: usize| {
        let sound = text.len() == digits && text.bytes().all(|byte| byte.is_ascii_digit());
        text.parse::<u32>().ok().filter(|_| sound)
    };
    match parts[..] {
        [year, month, day] => match (number(year, 4), number(month, 2), number(day, 2)) {
            (Some(year), Some(month), Some(day)) => is_day(year, month, day),
            _ => false,
        },
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::is_iso_day;

    #[test]
    fn a_day_is_one_of_the_calendar() {
        for day in ["2026-11-25", "2024-02-29", "2000-02-29"] {
            assert!(is_iso_day(day), "{day}");
        }
        let none = ["yesterday", "2026-13-45", "3.4.2026", "2026-02-29", "1900-02-29", "2026-1-5", "2026-00-10"];
        for text in none.into_iter().chain(["2026-04-31"]) {
            assert!(!is_iso_day(text), "{text}");
        }
    }
}
