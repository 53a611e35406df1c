//! What failed at an event, by the guide that mends it: which of them to teach next.
//!
//! In: a table with a row for each tick on a slip, the handbook's guides. Out: the failures that can be counted, and their index as
//! text. Leaves to others: the same on paper (`handbook::sheets`).

use super::row::{Bad, Columns, Row};
use super::table::Cell;
use crate::cli::report::count;
use crate::cli::terminal::wrapped;
use crate::handbook::plain_words;
use crate::model::prose::plain;
use crate::model::{CheckItem, Checklist, Learning, LearningStop};
use crate::proof::cases::sound;
use crate::proof::{Proofed, did_you_mean};
use std::collections::{BTreeMap, BTreeSet};

/// An item of a checklist that did not pass.
#[derive(Debug, Clone)]
pub struct Failure<'p> {
    /// The day, and the fencer's number in the queue if it was written down.
    pub fencer: (String, Option<String>),
    /// The item.
    pub item: &'p CheckItem,
    /// The line of why, as words alone.
    pub why: Option<String>,
    /// The whole row as text, to see rows that stand twice.
    pub row: Vec<String>,
}

/// The columns that a table of failures must have.
pub const COLUMNS: [&str; 5] = ["date", "number", "check", "item", "why"];

/// The column that no table of cases has.
pub const OWN_COLUMN: &str = "check";

/// Reads the failures. Errors: why the table as a whole cannot be read.
pub fn failures<'p>(rows: &[Vec<Cell>], proofed: &'p Proofed) -> Result<(Vec<Failure<'p>>, Vec<Bad>), String> {
    let (head, rows) = rows.split_first().ok_or("it is empty")?;
    let columns = Columns::of(head, COLUMNS)?;
    let (mut good, mut bad) = (Vec::new(), Vec::new());
    for row in rows {
        match columns.row(row).and_then(|row| failure(row, proofed)) {
            Ok(failure) => good.push(failure),
            Err(why) => bad.push(why),
        }
    }
    Ok((good, bad))
}

fn failure<'p>(row: Row<'_, 5>, proofed: &'p Proofed) -> Result<Failure<'p>, Bad> {
    let [date, number, check, item, why] = [0, 1, 2, 3, 4];
    let day = row.day(date)?;
    let check = row.there(check)?;
    let list = checklist(&check.text, proofed).map_err(|why| Bad::at(check, why))?;
    let item = row.there(item)?;
    Ok(Failure {
        fencer: (day.text.clone(), row.maybe(number).map(|number| plain_words(&number.text))),
        item: item_of(&item.text, list).map_err(|why| Bad::at(item, why))?,
        why: row.maybe(why).map(|why| plain_words(&why.text)),
        row: row.texts(),
    })
}

/// A checklist by its id or title.
fn checklist<'p>(text: &str, proofed: &'p Proofed) -> Result<&'p Checklist, String> {
    let lists = || proofed.guides.checklists.iter().map(|(_, list)| list);
    let wanted = plain_words(text);
    let is = |list: &&Checklist| [list.checklist.value.as_str(), &list.title.value].map(plain_words).contains(&wanted);
    lists().find(is).ok_or_else(|| {
        let known = lists().map(|list| list.checklist.value.as_str());
        format!("there is no such checklist: {}", did_you_mean(text, known, "write the id or the title of a checklist"))
    })
}

/// An item by its number on the sheet, its id or its words.
fn item_of<'p>(text: &str, list: &'p Checklist) -> Result<&'p CheckItem, String> {
    let items = list.numbered();
    let wanted = plain_words(text);
    let words = |item: &CheckItem| {
        let said = [Some(&item.full), item.short.as_ref()].into_iter().flatten().map(|said| plain(&said.value.0));
        said.chain([item.item.value.0.clone()]).any(|words| plain_words(&words) == wanted)
    };
    let by_number = wanted.parse::<usize>().ok().and_then(|number| items.get(number.checked_sub(1)?));
    by_number.or_else(|| items.iter().find(|item| words(item))).copied().ok_or_else(|| {
        let known = items.iter().map(|item| item.item.value.as_str());
        let otherwise = format!("write its number on the sheet, 1 to {}", items.len());
        let help = did_you_mean(text, known, &otherwise);
        format!("`{}` has no such item: {help}", list.checklist.value)
    })
}

/// The index: the guide with the most failures first, then what to teach next.
pub fn index(failures: &[Failure<'_>], table: &str, proofed: &Proofed) -> String {
    let mut by_guide: BTreeMap<Option<&str>, Vec<&Failure<'_>>> = BTreeMap::new();
    for failure in failures {
        by_guide.entry(failure.item.if_not.as_ref().map(|guide| guide.value.as_str())).or_default().push(failure);
    }
    let mut rows: Vec<(Option<&str>, Vec<&Failure<'_>>)> = by_guide.into_iter().collect();
    rows.sort_by_key(|(guide, failed)| (std::cmp::Reverse(failed.len()), guide.is_none()));
    let mut text = format!("What failed, by guide, from {table}: {}.\n", summed(failures));
    for (guide, failed) in &rows {
        text.push_str(&row(*guide, failed, proofed));
    }
    text + &next(&rows, proofed)
}

fn summed(failures: &[Failure<'_>]) -> String {
    let all = count(failures.len(), "failure", "failures");
    let fencers: BTreeSet<_> = failures.iter().filter(|one| one.fencer.1.is_some()).map(|one| &one.fencer).collect();
    // Where some have no number, nobody knows how many fencers they were.
    let numbered = failures.iter().all(|one| one.fencer.1.is_some());
    if numbered { format!("{all} of {}", count(fencers.len(), "fencer", "fencers")) } else { all }
}

/// A guide with its items and the reasons that were written down, each with how often.
fn row(guide: Option<&str>, failed: &[&Failure<'_>], proofed: &Proofed) -> String {
    let title = guide.map_or_else(
        || "No guide yet: write one, and name it under `if not:`".to_owned(),
        |guide| format!("{} ({guide})", title(guide, proofed)),
    );
    let items = counted(failed.iter().map(|one| {
        let item = one.item;
        plain(&item.short.as_ref().unwrap_or(&item.full).value.0).trim_end_matches('.').to_owned()
    }));
    let why = counted(failed.iter().filter_map(|one| one.why.clone()));
    let mut lines = vec![format!("\n{:>3}  {title}", failed.len())];
    lines.extend(wrapped(INDENT, &format!("did not pass: {items}")));
    if !why.is_empty() {
        lines.extend(wrapped(INDENT, &format!("why: {why}")));
    }
    lines.join("\n") + "\n"
}

/// Below the title of a guide.
const INDENT: &str = "     ";

/// Texts with how often they stand, the most frequent first.
fn counted(texts: impl Iterator<Item = String>) -> String {
    let mut times: BTreeMap<String, usize> = BTreeMap::new();
    texts.for_each(|text| *times.entry(text).or_default() += 1);
    let mut times: Vec<(String, usize)> = times.into_iter().collect();
    times.sort_by_key(|(_, times)| std::cmp::Reverse(*times));
    let said = times.into_iter().map(|(text, times)| if times == 1 { text } else { format!("{text} ({times} times)") });
    said.collect::<Vec<_>>().join("; ")
}

fn title<'p>(guide: &'p str, proofed: &'p Proofed) -> &'p str {
    proofed.index.guide(guide).map_or(guide, |(_, entry)| entry.title.as_str())
}

/// What to teach next: the guides with the most failures, and where a way to learn has them.
fn next(rows: &[(Option<&str>, Vec<&Failure<'_>>)], proofed: &Proofed) -> String {
    let named = || rows.iter().filter_map(|(guide, failed)| Some(((*guide)?, failed.len())));
    let most = named().map(|(_, times)| times).max();
    let mut text = String::new();
    for (guide, _) in named().filter(|(_, times)| Some(*times) == most) {
        let also = if text.is_empty() { "\nTeach next:" } else { "Or:" };
        text.push_str(&format!("{also} {}.\n", title(guide, proofed)));
        for (way, stop) in stops(guide, proofed) {
            let stands = format!("It stands in “{}”, at the stop “{}”.", way.title.value, stop.title.value);
            text.push_str(&(wrapped("  ", &stands).join("\n") + "\n"));
        }
    }
    text
}

/// Where a guide is read or practised.
fn stops<'p>(guide: &'p str, proofed: &'p Proofed) -> impl Iterator<Item = (&'p Learning, &'p LearningStop)> {
    let ways = proofed.guides.learning.iter().map(|(_, way)| way);
    let stops = ways.flat_map(|way| sound(&way.stops).into_iter().map(move |stop| (way, stop)));
    stops.filter(move |(_, stop)| stop.read.iter().chain(&*stop.practise).any(|named| named.value.as_str() == guide))
}
