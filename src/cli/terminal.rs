//! Where words go: the only place that prints.

use std::io::Write;

/// Widest line, in letters: that of a plain terminal.
pub const WIDTH: usize = 80;

/// The two streams, and whether they may be coloured.
pub struct Terminal {
    /// For what was asked for: reports, schemas, tables.
    pub out: Box<dyn Write + Send>,
    /// For people: progress, notes, what went wrong.
    pub err: Box<dyn Write + Send>,
    /// Whether colour is wanted. The streams drop it where it is not.
    pub colour: Colour,
}

/// Whether colour is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Colour {
    /// It is.
    Coloured,
    /// It is not.
    Plain,
}

impl Terminal {
    /// The real streams. Colour only on a terminal, and never with `NO_COLOR`.
    pub fn real() -> Self {
        Terminal { out: Box::new(anstream::stdout()), err: Box::new(anstream::stderr()), colour: Colour::Coloured }
    }

    /// Says a line of what was asked for. A reader that went away is no fault of ours.
    pub fn say(&mut self, line: impl AsRef<str>) {
        let _ = writeln!(self.out, "{}", line.as_ref());
    }

    /// Says something to people, in lines that fit.
    pub fn tell(&mut self, words: impl AsRef<str>) {
        for line in words.as_ref().lines() {
            let indent = &line[..line.len() - line.trim_start().len()];
            let fits = seen(line) <= WIDTH;
            let lines = if fits { vec![line.to_owned()] } else { wrapped(indent, line) };
            let _ = writeln!(self.err, "{}", lines.join("\n"));
        }
    }
}

/// Words in lines that fit, each after an indent. A word that is longer than a line stays whole.
pub fn wrapped(indent: &str, words: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        match lines.last_mut() {
            Some(line) if seen(line) + 1 + seen(word) <= WIDTH => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(format!("{indent}{word}")),
        }
    }
    lines
}

/// How many letters are seen: what stands from an escape to its `m` is colour.
fn seen(words: &str) -> usize {
    let mut colour = false;
    let letter = |letter: &char| {
        let was = colour || *letter == '\u{1b}';
        colour = was && *letter != 'm';
        !was
    };
    words.chars().filter(letter).count()
}

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// The guides are good: 0.
    Good,
    /// They are not: 1.
    Faulty,
    /// It could not run: 2.
    CouldNotRun,
    /// Somebody ended it: 130.
    Interrupted,
}

/// 0 the guides are good, 1 they are not, 2 it could not run, 130 it was interrupted. The only place that maps.
impl From<Outcome> for std::process::ExitCode {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Good => 0.into(),
            Outcome::Faulty => 1.into(),
            Outcome::CouldNotRun => 2.into(),
            Outcome::Interrupted => 130.into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_fit_and_words_stay_whole() {
        let lines = wrapped("  ", &"seventeen letters ".repeat(20));
        assert!(lines.iter().all(|line| line.starts_with("  s") || line.starts_with("  l")));
        assert!(lines.iter().all(|line| line.chars().count() <= WIDTH), "{lines:#?}");
        assert_eq!(lines.concat().matches("seventeen").count(), 20);
    }

    #[test]
    fn colour_takes_no_room() {
        assert_eq!(seen("\u{1b}[1mtip\u{1b}[0m: moment"), seen("tip: moment"));
    }
}
