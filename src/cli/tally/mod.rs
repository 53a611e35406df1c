//! `coquille tally`: cases that were written down at the bench, as updated counts to look at and paste; or what failed at an event, by
//! the guide that mends it. No guide is changed.
//!
//! In: a table as a spreadsheet saves it; its first line says which of the two it is. Out: YAML a guide, with comments, or an index as
//! text. A cell that a spreadsheet would run never comes out again.

mod cases;
mod counted;
mod failures;
mod row;
mod table;

use super::args::TallyJob;
use super::proof::opened;
use super::report::count;
use super::terminal::{Outcome, Terminal};
use crate::proof::{Proofed, proof};
use crate::source::{Folder, in_words, read_table};
use cases::Case;
use counted::Counted;
use row::Bad;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{ErrorKind, Write};
use std::path::Path;
use table::Cell;

/// What a table gives, read and counted.
struct Tallied {
    /// What to print.
    text: String,
    /// What to do with it once it is a file.
    use_of_file: &'static str,
    /// How much was counted.
    counted: String,
    /// The good rows as texts.
    rows: Vec<Vec<String>>,
    bad: Vec<Bad>,
}

/// Runs it.
pub fn run(job: &TallyJob, terminal: &mut Terminal) -> Outcome {
    let shown = job.table.display();
    let rows = read_table(&job.table).and_then(|text| {
        table::rows(&text).map_err(|line| {
            format!("the quote that opens in line {line} is never closed. Take it out, or close it, and save again.")
        })
    });
    let rows = match rows {
        Ok(rows) => rows,
        Err(why) => {
            terminal.tell(format!("`{shown}` cannot be read: {why}"));
            return Outcome::CouldNotRun;
        }
    };
    let Some(folder) = opened(&job.guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    let at_an_event = rows.first().is_some_and(|head| row::has_column(head, failures::OWN_COLUMN));
    let tallied = match at_an_event {
        true => of_failures(&rows, &proofed, &job.table),
        false => of_cases(&rows, &proofed, &folder, &job.table),
    };
    match tallied {
        Ok(tallied) => told(job, tallied, terminal),
        Err(why) => {
            terminal.tell(format!("`{shown}` cannot be tallied: {why}."));
            Outcome::CouldNotRun
        }
    }
}

fn of_cases(rows: &[Vec<Cell>], proofed: &Proofed, folder: &Folder, table: &Path) -> Result<Tallied, String> {
    let (good, bad) = cases::cases(rows, proofed)?;
    let guides: BTreeSet<&str> = good.iter().map(|case| case.guide.as_str()).collect();
    Ok(Tallied {
        text: tallied(&good, proofed, folder, table),
        use_of_file: "read it, then paste what you agree with into the guides",
        counted: format!("{} in {}", count(good.len(), "case", "cases"), count(guides.len(), "guide", "guides")),
        rows: good.into_iter().map(|case| case.row).collect(),
        bad,
    })
}

fn of_failures(rows: &[Vec<Cell>], proofed: &Proofed, table: &Path) -> Result<Tallied, String> {
    let (good, bad) = failures::failures(rows, proofed)?;
    Ok(Tallied {
        text: failures::index(&good, &name(table), proofed),
        use_of_file: "it says what to teach next",
        counted: count(good.len(), "failure", "failures"),
        rows: good.into_iter().map(|failure| failure.row).collect(),
        bad,
    })
}

fn told(job: &TallyJob, tallied: Tallied, terminal: &mut Terminal) -> Outcome {
    tallied.bad.iter().for_each(|bad| terminal.tell(left_out(&job.table, bad)));
    if tallied.rows.is_empty() {
        terminal.tell("No row can be counted, so there is nothing to write.");
        return Outcome::Faulty;
    }
    if let Err(why) = given(job, &tallied, terminal) {
        terminal.tell(why);
        return Outcome::CouldNotRun;
    }
    summary(&tallied, terminal);
    if tallied.bad.is_empty() { Outcome::Good } else { Outcome::Faulty }
}

fn left_out(table: &Path, bad: &Bad) -> String {
    format!("{}:{}:{}: left out: {}", table.display(), bad.line, bad.column, bad.why)
}

/// The counts of every guide that has a case, in the order of the handbook.
fn tallied(good: &[Case], proofed: &Proofed, folder: &Folder, table: &Path) -> String {
    let mut by_guide: BTreeMap<&str, Vec<&Case>> = BTreeMap::new();
    good.iter().for_each(|case| by_guide.entry(case.guide.as_str()).or_default().push(case));
    let mut texts = vec![format!("# From {}. Tally a table once only: every row counts as a case.\n", name(table))];
    for (file, guide) in &proofed.guides.symptoms {
        let id = guide.symptom.value.as_str();
        let Some(cases) = by_guide.get(id) else { continue };
        let file = folder.texts.get(*file).map_or(id, |text| text.name.as_str());
        texts.push(Counted::of(guide, proofed.cases.get(id), &proofed.guides, cases).text(file));
    }
    texts.join("\n")
}

/// The table's name without anything that could end a comment.
fn name(table: &Path) -> String {
    let name = table.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
    name.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).collect()
}

/// Prints what was counted, or writes it into a file that is not there yet. Errors: why that failed, in words.
fn given(job: &TallyJob, tallied: &Tallied, terminal: &mut Terminal) -> Result<(), String> {
    let Tallied { text, use_of_file, .. } = tallied;
    let Some(out) = &job.output else {
        terminal.say(text.trim_end());
        return Ok(());
    };
    let shown = out.display();
    let written = std::fs::File::create_new(out).and_then(|mut file| file.write_all(text.as_bytes()));
    written.map_err(|error| match error.kind() {
        ErrorKind::AlreadyExists => format!("`{shown}` is there already and was left as it is.\nName another file."),
        _ => format!("`{shown}` cannot be written: {}", in_words(&error)),
    })?;
    terminal.say(format!("Wrote {shown}: {use_of_file}."));
    Ok(())
}

fn summary(tallied: &Tallied, terminal: &mut Terminal) {
    let mut rows: BTreeMap<&[String], usize> = BTreeMap::new();
    tallied.rows.iter().for_each(|row| *rows.entry(row).or_default() += 1);
    let twice = rows.values().filter(|times| **times > 1).count();
    if twice > 0 {
        terminal.tell(format!(
            "{} more than once, word for word. If they are one case, take the others out.",
            count(twice, "row stands", "rows stand")
        ));
    }
    let left_out = match tallied.bad.len() {
        0 => String::new(),
        number => format!(", {} left out", count(number, "row", "rows")),
    };
    terminal.tell(format!("Counted {}{left_out}. No guide was changed.", tallied.counted));
}
