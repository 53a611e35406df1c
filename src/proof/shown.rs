//! What a reading shows, in the trade's words, for findings and the terminal.
//!
//! In: what the network shows. Out: words such as `lit or dark`, and figures of at most three digits.
//! Leaves to others: the words on pages, which come from message files (`render`).

use crate::reckoning::circuit::{Answer, Answers, Reading, Seen, Span};

/// A reading's answers in words: `lit`, `lit or dark`, `comes and goes: lit or dark`.
pub fn seen(seen: &Seen) -> String {
    match seen.away {
        Some(away) if away.answers != seen.faulty.answers => {
            format!("now {}, now {}", answers(seen.faulty.answers), answers(away.answers))
        }
        _ => answers(seen.faulty.answers),
    }
}

/// The same with the ohms behind it, if it rests on ohms: `over (5.41 to 302 Ω)`.
pub fn seen_with_figure(shown: &Seen, reading: Option<&Reading>) -> String {
    let in_ohms = matches!(reading, Some(Reading::Lamp { .. } | Reading::Ohmmeter { .. }));
    match shown.faulty.figure.filter(|_| in_ohms).and_then(ohms) {
        Some(figure) => format!("{} ({figure})", seen(shown)),
        None => seen(shown),
    }
}

/// Answers in words.
pub fn answers(answers: Answers) -> String {
    let words: Vec<&str> = answers.iter().map(answer).collect();
    words.join(" or ")
}

/// An answer in a word.
pub fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::Lit => "lit",
        Answer::Dark => "dark",
        Answer::In => "in",
        Answer::Over => "over",
        Answer::Open => "open",
        Answer::Flickers => "comes and goes",
    }
}

/// A range of ohms; nothing where there is no figure to show.
pub fn ohms(span: Span) -> Option<String> {
    match span {
        Span::Within { least, most, .. } => {
            let ((small, small_scale), (unit, scale)) = (unit(least), unit(most));
            let (first, last) = (digits(least / small_scale), digits(most / scale));
            Some(match (first == last, small == unit) {
                (true, true) => format!("{last} {unit}"),
                (false, true) => format!("{first} to {last} {unit}"),
                // In the other's unit the digits that count would be lost.
                (_, false) => format!("{first} {small} to {last} {unit}"),
            })
        }
        _ => None,
    }
}

fn unit(figure: f64) -> (&'static str, f64) {
    match figure.abs() {
        big if big >= 1e6 => ("MΩ", 1e6),
        big if big >= 1e3 => ("kΩ", 1e3),
        _ => ("Ω", 1.0),
    }
}

/// A figure with at most three digits that count, and none under a hundredth.
pub fn digits(figure: f64) -> String {
    let rounded = if figure.abs() < 1.0 { format!("{figure:.2}") } else { format!("{figure:.2e}") };
    let value = rounded.parse::<f64>().unwrap_or(figure);
    format!("{value}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_have_three_digits_that_count_at_most() {
        assert_eq!(digits(0.405), "0.41");
        assert_eq!(digits(0.0049), "0");
        assert_eq!(digits(1.236), "1.24");
        assert_eq!(digits(302.04), "302");
        assert_eq!(digits(2.0), "2");
        let span = Span::Within { least: 0.41, usual: 1.0, most: 1034.0 };
        assert_eq!(ohms(span), Some("0.41 Ω to 1.03 kΩ".to_owned()));
        assert_eq!(ohms(Span::Open), None);
    }
}
