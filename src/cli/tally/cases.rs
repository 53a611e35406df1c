//! The cases of a table: which guide, which cause, how long.
//!
//! In: rows of cells, the handbook's guides. Out: the cases that can be counted, and what is wrong with the other rows, each with its place.

use super::failures;
use super::row::{Bad, Columns, Row};
use super::table::Cell;
use crate::handbook::plain_words;
use crate::model::{Cause, Symptom};
use crate::proof::cases::sound;
use crate::proof::{Proofed, did_you_mean, nearest};
use crate::reckoning::quantity::Minutes;

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

/// The columns that a table of cases must have.
const COLUMNS: [&str; 5] = ["date", "item number", "guide", "cause", "minutes"];

/// Reads the cases. Errors: why the table as a whole cannot be read.
pub fn cases(rows: &[Vec<Cell>], proofed: &Proofed) -> Result<(Vec<Case>, Vec<Bad>), String> {
    let (head, rows) = rows.split_first().ok_or("it is empty")?;
    let or = |why| format!("{why}; or, for what failed at an event: {}", failures::COLUMNS.join(", "));
    let columns = Columns::of(head, COLUMNS).map_err(or)?;
    let (mut good, mut bad) = (Vec::new(), Vec::new());
    for row in rows {
        match columns.row(row).and_then(|row| case(row, proofed)) {
            Ok(case) => good.push(case),
            Err(why) => bad.push(why),
        }
    }
    Ok((good, bad))
}

fn case(row: Row<'_, 5>, proofed: &Proofed) -> Result<Case, Bad> {
    let [date, _, guide, cause, minutes] = [0, 1, 2, 3, 4];
    row.day(date)?;
    let guide = row.there(guide)?;
    let symptom = sought(&guide.text, proofed).map_err(|why| Bad::at(guide, why))?;
    let cause = row.there(cause)?;
    let what = what(&cause.text, symptom).map_err(|why| Bad::at(cause, why))?;
    let took = row.maybe(minutes).map(|cell| tenths(&cell.text).ok_or_else(|| Bad::at(cell, NO_MINUTES)));
    Ok(Case { guide: symptom.symptom.value.0.clone(), what, minutes: took.transpose()?, row: row.texts() })
}

const NO_MINUTES: &str = "this is no time; write minutes such as 7 or 7.5, a time such as 1 h, or leave the cell empty";

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

/// Longest time that a case may have taken: a working week, in tenths of a minute. What is more is a slip of the pen.
const LONGEST: u32 = 40 * 600;

/// A time in tenths of a minute, as guides write it and as spreadsheets do: `7`, `7,5`, `12 min.`, `1 h`.
fn tenths(text: &str) -> Option<u64> {
    let written = text.trim().trim_end_matches('.').replacen(',', ".", 1);
    let minutes = Minutes::parse(&written).ok().filter(|minutes| minutes.tenths <= LONGEST)?;
    Some(u64::from(minutes.tenths))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_are_read_as_people_write_them() {
        assert_eq!(["7", "7.5", "7,5", "7 min", "12 min."].map(tenths), [70, 75, 75, 70, 120].map(Some));
        assert_eq!(["2 h", "30 s", "1,5 h"].map(tenths), [1200, 5, 900].map(Some));
        assert_eq!(["", "x", "1e3", "7:30", "7.99", "7 kg", "-3", "99999"].map(tenths), [None; 8]);
    }
}
