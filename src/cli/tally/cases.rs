//! The cases of a table: which guide, which cause, how long.
//!
//! In: rows of cells, the handbook's guides. Out: the cases that can be counted, and what is wrong with the other rows, each with its place.

use super::table::Cell;
use crate::handbook::plain_words;
use crate::model::{Cause, Symptom};
use crate::proof::cases::sound;
use crate::proof::{Proofed, did_you_mean, nearest};

/// A case that can be counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Case {
    /// The guide's id.
    pub guide: String,
    /// What it was.
    pub what: What,
    /// How long it took, in tenths of a minute, if it was written down.
    pub minutes: Option<u64>,
    /// The whole row as text, to see rows that stand twice.
    pub row: Vec<String>,
}

/// What it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// A cause of the guide, by its number.
    Cause(usize),
    /// Not on the list.
    Rest,
    /// Not on the list, and named by hand.
    ByHand(String),
}

/// Why a row was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bad {
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// What is wrong, and what to do.
    pub why: String,
}

/// The columns that a table must have, in the order of [`Columns`].
const COLUMNS: [&str; 5] = ["date", "item number", "guide", "cause", "minutes"];

/// Where each column stands.
struct Columns([usize; 5]);

/// Reads the cases. Errors: why the table as a whole cannot be read.
pub fn cases(rows: &[Vec<Cell>], proofed: &Proofed) -> Result<(Vec<Case>, Vec<Bad>), String> {
    let (head, rows) = rows.split_first().ok_or("it is empty")?;
    let columns = Columns::of(head)?;
    let (mut good, mut bad) = (Vec::new(), Vec::new());
    for row in rows {
        match case(row, &columns, proofed) {
            Ok(case) => good.push(case),
            Err(why) => bad.push(why),
        }
    }
    Ok((good, bad))
}

impl Columns {
    fn of(head: &[Cell]) -> Result<Columns, String> {
        let names: Vec<String> = head.iter().map(|cell| plain_words(&cell.text)).collect();
        let mut at = [0; 5];
        for (place, wanted) in at.iter_mut().zip(COLUMNS) {
            *place = names.iter().position(|name| name == wanted).ok_or_else(|| {
                format!("its first line names no column `{wanted}`; it must name: {}", COLUMNS.join(", "))
            })?;
        }
        Ok(Columns(at))
    }
}

fn case(row: &[Cell], columns: &Columns, proofed: &Proofed) -> Result<Case, Bad> {
    let at = |cell: &Cell, why: String| Bad { line: cell.line, column: cell.column, why };
    if let Some(cell) = row.iter().find(|cell| cell.is_formula()) {
        return Err(at(cell, "this is a formula; write the words or the number itself".to_owned()));
    }
    let [date, _, guide, cause, minutes] = columns.0.map(|index| row.get(index));
    let first = row.first().map_or((1, 1), |cell| (cell.line, cell.column));
    let there = |cell: Option<&Cell>, name: &str| -> Result<Cell, Bad> {
        let why = || format!("`{name}` is empty");
        match cell {
            Some(cell) if !cell.text.is_empty() => Ok(cell.clone()),
            Some(cell) => Err(at(cell, why())),
            None => Err(Bad { line: first.0, column: first.1, why: why() }),
        }
    };
    let date = there(date, "date")?;
    if !is_date(&date.text) {
        return Err(at(&date, "this is no date; write it as 2026-11-25 or 25.11.2026".to_owned()));
    }
    let guide = there(guide, "guide")?;
    let symptom = sought(&guide.text, proofed).map_err(|why| at(&guide, why))?;
    let cause = there(cause, "cause")?;
    let what = what(&cause.text, symptom).map_err(|why| at(&cause, why))?;
    let minutes = minutes.filter(|cell| !cell.text.is_empty());
    let took = minutes.map(|cell| tenths(&cell.text).ok_or_else(|| at(cell, NO_MINUTES.to_owned()))).transpose()?;
    Ok(Case {
        guide: symptom.symptom.value.0.clone(),
        what,
        minutes: took,
        row: row.iter().map(|cell| cell.text.clone()).collect(),
    })
}

const NO_MINUTES: &str = "these are no minutes; write a number such as 7 or 7.5, or leave the cell empty";

fn sought<'p>(text: &str, proofed: &'p Proofed) -> Result<&'p Symptom, String> {
    let guides = || proofed.guides.symptoms.iter().map(|(_, guide)| guide);
    let wanted = plain_words(text);
    let is = |guide: &&Symptom| {
        plain_words(guide.symptom.value.as_str()) == wanted || plain_words(&guide.title.value) == wanted
    };
    guides().find(is).ok_or_else(|| {
        let known = guides().map(|guide| guide.symptom.value.as_str());
        let help = did_you_mean(text, known, "write the id or the title of a fault-finding guide");
        format!("there is no such fault-finding guide: {help}")
    })
}

/// A cause by its id or title; everything else was written in by hand, but for one word that is nearly an id: that is a slip of the
/// pen, and counting it as not on the list would move the guide's shares the wrong way.
fn what(text: &str, guide: &Symptom) -> Result<What, String> {
    let wanted = plain_words(text);
    let causes = sound(&guide.causes);
    let found = causes.iter().position(|cause| {
        plain_words(cause.cause.value.as_str()) == wanted || plain_words(&cause.title.value) == wanted
    });
    match (found, wanted.as_str()) {
        (Some(index), _) => Ok(What::Cause(index)),
        (None, "rest" | "not on this list" | "") => Ok(What::Rest),
        (None, words) => match meant(text, &causes) {
            Some(id) => Err(format!(
                "`{text}` is no cause of `{}`: did you mean `{id}`? If it is something else, say it in several words",
                guide.symptom.value
            )),
            None => Ok(What::ByHand(words.to_owned())),
        },
    }
}

/// The id that one word without gaps is near.
fn meant<'g>(text: &str, causes: &[&'g Cause]) -> Option<&'g str> {
    let word = !text.contains(char::is_whitespace);
    let ids = causes.iter().map(|cause| cause.cause.value.as_str());
    if word { nearest(text, ids) } else { None }
}

/// Minutes with one decimal at most, `7 min` too, in tenths.
fn tenths(text: &str) -> Option<u64> {
    let number = text.trim_end_matches(|letter: char| letter.is_alphabetic() || letter == '.').trim_end();
    let (whole, part) = number.split_once(['.', ',']).unwrap_or((number, "0"));
    let digits = |text: &str| !text.is_empty() && text.len() <= 4 && text.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || !digits(part) {
        return None;
    }
    let first = part.bytes().next().map_or(0, |digit| u64::from(digit - b'0'));
    whole.parse::<u64>().ok().map(|whole| whole * 10 + first)
}

/// A day as `2026-11-25`, `25.11.2026` or `25/11/2026`.
fn is_date(text: &str) -> bool {
    let parts: Vec<&str> = text.split(['-', '.', '/']).collect();
    let [first, month, last] = parts.as_slice() else { return false };
    let (year, day) = if first.len() == 4 { (first, last) } else { (last, first) };
    let number = |text: &str| text.parse::<u32>().ok().filter(|_| text.bytes().all(|byte| byte.is_ascii_digit()));
    let (Some(year), Some(month), Some(day)) = (number(year), number(month), number(day)) else { return false };
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let longest = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => return false,
    };
    (1900..2200).contains(&year) && (1..=longest).contains(&day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_and_days_are_read_as_people_write_them() {
        assert_eq!(["7", "7.5", "7,5", "7 min", "12 min."].map(tenths), [70, 75, 75, 70, 120].map(Some));
        assert_eq!(["", "x", "1e3", "7:30"].map(tenths), [None; 4]);
        for day in ["2026-11-25", "25.11.2026", "29/2/2028"] {
            assert!(is_date(day), "{day}");
        }
        for none in ["29.2.2026", "2026-13-01", "yesterday", "2026-11", "+1.1.2026"] {
            assert!(!is_date(none), "{none}");
        }
    }
}
