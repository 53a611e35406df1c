//! Where words go: the only place that prints.

use std::io::Write;

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

    /// Says a line to people.
    pub fn tell(&mut self, line: impl AsRef<str>) {
        let _ = writeln!(self.err, "{}", line.as_ref());
    }
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
}

/// 0 the guides are good, 1 they are not, 2 it could not run. The only place that maps.
impl From<Outcome> for std::process::ExitCode {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Good => 0.into(),
            Outcome::Faulty => 1.into(),
            Outcome::CouldNotRun => 2.into(),
        }
    }
}
