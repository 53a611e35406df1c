//! Reads the numbers and units in a text, and says where what cannot be read stands.
//!
//! In: a text, and what is expected at its place. Out: numbers with their units, or an [`Unreadable`] with bytes in that text.
//! Leaves what the numbers mean together to `range`, `tolerance` and `bound`.

use super::decimal::{Decimal, MOST_DIGITS};
use super::unit::{Dimension, Unit};
use super::value::Quantity;
use std::fmt;
use std::ops::Range as Bytes;

/// What may stand at a place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Expect {
    /// The only dimension allowed; any if none is given.
    pub dimension: Option<Dimension>,
    /// The unit of a number that stands alone; a bare number is refused if none is given.
    pub bare: Option<Unit>,
}

impl Expect {
    /// Any value that has a unit.
    pub const ANY: Expect = Expect { dimension: None, bare: None };

    /// A value of this dimension, with its unit.
    #[must_use]
    pub fn of(dimension: Dimension) -> Expect {
        Expect { dimension: Some(dimension), bare: None }
    }

    /// A value of this unit's dimension; a bare number is in this unit.
    #[must_use]
    pub fn or_bare(unit: Unit) -> Expect {
        Expect { dimension: Some(unit.dimension()), bare: Some(unit) }
    }
}

/// A text that cannot be read: what is wrong, and which bytes of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// What is wrong.
    pub flaw: Flaw,
    /// The bytes of the text in question; they begin and end between characters.
    pub at: Bytes<usize>,
}

/// What can be wrong with a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Flaw {
    /// A number was to stand here.
    NoNumber,
    /// Two dots, a point without digits, or other things that are almost a number.
    BadNumber,
    /// `0,5`: a comma could mean either thing.
    Comma,
    /// More digits than anything at a bench has.
    TooManyDigits,
    /// A unit that is not known.
    UnknownUnit {
        /// The symbol of the nearest one that is.
        nearest: Option<&'static str>,
    },
    /// A number without the unit it needs here.
    NoUnit,
    /// A unit of another kind than this place is for.
    WrongDimension {
        /// What it measures.
        found: Dimension,
        /// What was wanted.
        wanted: Dimension,
    },
    /// A range whose figures do not rise, or whose figures cannot be compared.
    NotRising,
    /// More than least, usual and most.
    TooManyFigures,
    /// A tolerance below zero, or none after its sign.
    BadTolerance,
    /// A limit that does not say on which side it limits.
    NoDirection,
    /// A time that is not whole tenths of a minute, or below zero, or over four hundred million minutes.
    NotMinutes,
}

impl fmt::Display for Flaw {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Flaw::NoNumber => "no number here",
            Flaw::BadNumber => "not a number",
            Flaw::Comma => "a comma in a number",
            Flaw::TooManyDigits => "too many digits",
            Flaw::UnknownUnit { .. } => "unknown unit",
            Flaw::NoUnit => "a number without its unit",
            Flaw::WrongDimension { .. } => "a unit of another kind",
            Flaw::NotRising => "a range that does not rise",
            Flaw::TooManyFigures => "too many figures in a range",
            Flaw::BadTolerance => "not a tolerance",
            Flaw::NoDirection => "a limit without a direction",
            Flaw::NotMinutes => "not whole tenths of a minute",
        })
    }
}

impl Flaw {
    /// What to write instead.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Flaw::NoNumber => "write a number and its unit, such as `3 N·m`".to_owned(),
            Flaw::BadNumber => "write digits with at most one point, such as `0.5`".to_owned(),
            Flaw::Comma => "write a point for the decimals and nothing between thousands".to_owned(),
            Flaw::TooManyDigits => format!("write at most {MOST_DIGITS} digits"),
            Flaw::UnknownUnit { nearest: Some(unit) } => format!("the nearest unit is `{unit}`"),
            Flaw::UnknownUnit { nearest: None } => {
                format!("the units are {}", Unit::ALL.map(Unit::symbol).join(", "))
            }
            Flaw::NoUnit => "write the unit after the number".to_owned(),
            Flaw::WrongDimension { wanted, .. } => {
                format!("a {wanted} is written in {}", units_of(*wanted).join(", "))
            }
            Flaw::NotRising => "write the least first and the most last".to_owned(),
            Flaw::TooManyFigures => "write `least .. most` or `least .. usual .. most`".to_owned(),
            Flaw::BadTolerance => "write `± 0.5 N·m` or `± 10 %`".to_owned(),
            Flaw::NoDirection => "write `at most`, `less than`, `at least`, `more than` or `2 to 3`".to_owned(),
            Flaw::NotMinutes => "write minutes with at most one decimal, or multiples of 6 s".to_owned(),
        }
    }
}

impl fmt::Display for Dimension {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Dimension::Torque => "torque",
            Dimension::Force => "force",
            Dimension::Mass => "weight",
            Dimension::Length => "length",
            Dimension::Resistance => "resistance",
            Dimension::Voltage => "voltage",
            Dimension::Current => "current",
            Dimension::Temperature => "temperature",
            Dimension::Time => "time",
            Dimension::Share => "share",
            Dimension::Stress => "stress",
        })
    }
}

fn units_of(dimension: Dimension) -> Vec<&'static str> {
    Unit::ALL.into_iter().filter(|unit| unit.dimension() == dimension).map(Unit::symbol).collect()
}

/// A part of the text, with where it stands in the whole.
#[derive(Clone, Copy, Debug)]
pub(super) struct Part<'a> {
    whole: &'a str,
    start: usize,
    end: usize,
}

/// A number that may still lack its unit.
#[derive(Clone, Debug)]
pub(super) struct Loose<'a> {
    pub number: Decimal,
    pub unit: Option<Unit>,
    pub part: Part<'a>,
    unit_at: Bytes<usize>,
}

impl<'a> Part<'a> {
    /// The whole text, without the spaces around it.
    pub fn all(text: &'a str) -> Part<'a> {
        Part { whole: text, start: 0, end: text.len() }.trimmed()
    }

    pub fn text(self) -> &'a str {
        self.whole.get(self.start..self.end).unwrap_or("")
    }

    pub fn flawed(self, flaw: Flaw) -> Unreadable {
        Unreadable { flaw, at: self.start..self.end }
    }

    /// The bytes from `from` to `to` within this part, without the spaces around them.
    pub fn cut(self, from: usize, to: usize) -> Part<'a> {
        Part { start: (self.start + from).min(self.end), end: (self.start + to).min(self.end), ..self }.trimmed()
    }

    /// What stands before and after the first `mark`.
    pub fn split(self, mark: &str) -> Option<(Part<'a>, Part<'a>)> {
        let at = self.text().find(mark)?;
        Some((self.cut(0, at), self.cut(at + mark.len(), usize::MAX - self.start)))
    }

    /// What is left after `word` at the start, whatever its case; a word must end there.
    pub fn after(self, word: &str) -> Option<Part<'a>> {
        let head = self.text().get(..word.len())?;
        let rest = self.cut(word.len(), usize::MAX - self.start);
        let goes_on = self.text().get(word.len()..)?.starts_with(char::is_alphabetic);
        (head.eq_ignore_ascii_case(word) && !(goes_on && word.ends_with(char::is_alphabetic))).then_some(rest)
    }

    /// What is left before `word` at the end; a space must stand before it.
    pub fn before(self, word: &str) -> Option<Part<'a>> {
        let at = self.text().len().checked_sub(word.len())?;
        let (head, tail) = (self.text().get(..at)?, self.text().get(at..)?);
        (tail.eq_ignore_ascii_case(word) && head.ends_with(char::is_whitespace)).then(|| self.cut(0, at))
    }

    /// The parts between the marks of a range: `..`, `…`, a dash, `to`, or a hyphen between two numbers.
    pub fn figures(self) -> Vec<Part<'a>> {
        let (mut parts, mut from) = (Vec::new(), 0);
        let mut at = 0;
        while let Some(next) = self.text().get(at..).and_then(|rest| rest.chars().next()) {
            match mark_at(self.text(), at) {
                Some(length) => {
                    parts.push(self.cut(from, at));
                    at += length;
                    from = at;
                }
                None => at += next.len_utf8(),
            }
        }
        parts.push(self.cut(from, usize::MAX - self.start));
        parts
    }

    /// The number here and the unit after it, if one is.
    pub fn loose(self) -> Result<Loose<'a>, Unreadable> {
        let text = self.text();
        let unsigned = text.trim_start_matches(['-', '−', '+']);
        let sign = text.len() - unsigned.len();
        let whole = unsigned.len() - unsigned.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let after = digits_after_point(&unsigned[whole..]);
        let length = sign + whole + after.map_or(0, |digits| digits.len() + 1);
        self.sound_number(sign, whole, length)?;
        let number = Decimal::of_digits(&unsigned[..whole], after.unwrap_or(""))
            .ok_or_else(|| self.cut(0, length).flawed(Flaw::TooManyDigits))?;
        let number = if text.starts_with(['-', '−']) { number.negative() } else { number };
        let rest = self.cut(length, usize::MAX - self.start);
        Ok(Loose { number, unit: rest.unit()?, part: self, unit_at: rest.start..rest.end })
    }

    /// Refuses what is almost a number: `.5`, `1.2.3`, `0,5`, `--1`.
    fn sound_number(self, sign: usize, whole: usize, length: usize) -> Result<(), Unreadable> {
        let text = self.text();
        let rest = text.get(length..).unwrap_or("");
        let point = rest.starts_with('.') && rest[1..].starts_with(|c: char| c.is_ascii_digit());
        if text.get(..sign).unwrap_or("").chars().count() > 1 || point {
            return Err(self.flawed(Flaw::BadNumber));
        }
        if whole == 0 {
            return Err(self.flawed(Flaw::NoNumber));
        }
        if rest.starts_with(',') {
            return Err(self.cut(0, length + 1).flawed(Flaw::Comma));
        }
        Ok(())
    }

    fn unit(self) -> Result<Option<Unit>, Unreadable> {
        if self.text().is_empty() {
            return Ok(None);
        }
        Unit::named(self.text()).map(Some).map_err(|nearest| self.flawed(Flaw::UnknownUnit { nearest }))
    }

    fn trimmed(self) -> Part<'a> {
        let text = self.text();
        let start = self.start + (text.len() - text.trim_start().len());
        Part { start, end: start + text.trim().len(), ..self }
    }
}

impl Loose<'_> {
    /// The value, with `lent` as its unit if it has none of its own.
    pub fn settled(&self, lent: Option<Unit>, expect: Expect) -> Result<Quantity, Unreadable> {
        let unit = self.unit.or(lent).or(expect.bare).ok_or_else(|| self.part.flawed(Flaw::NoUnit))?;
        let found = unit.dimension();
        match expect.dimension {
            Some(wanted) if wanted != found => {
                let at = if self.unit.is_some() { self.unit_at.clone() } else { self.part.start..self.part.end };
                Err(Unreadable { flaw: Flaw::WrongDimension { found, wanted }, at })
            }
            _ => Ok(Quantity::new(self.number, unit)),
        }
    }
}

/// How many bytes the mark of a range takes that stands at `at`, if one does.
fn mark_at(text: &str, at: usize) -> Option<usize> {
    let (before, here) = (text.get(..at)?, text.get(at..)?);
    let fixed = ["..", "…", "–", "—"].into_iter().find(|mark| here.starts_with(mark));
    let word =
        here.starts_with("to") && before.ends_with(char::is_whitespace) && here[2..].starts_with(char::is_whitespace);
    let number_next = || here[1..].trim_start().starts_with(|c: char| c.is_ascii_digit());
    // After one of these a hyphen is a sign of its number, or the end of `+/-`.
    let ends_a_figure = !before.trim().is_empty() && !before.trim_end().ends_with(['±', '+', '-', '/']);
    let hyphen = here.starts_with('-') && ends_a_figure && number_next();
    match fixed {
        Some(mark) => Some(mark.len()),
        None if word => Some(2),
        None => hyphen.then_some(1),
    }
}

/// The digits after a point at the start of `text`.
fn digits_after_point(text: &str) -> Option<&str> {
    let rest = text.strip_prefix('.')?;
    let length = rest.len() - rest.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    (length > 0).then(|| &rest[..length])
}
