//! `coquille tally`: cases that were written down at the bench, as updated counts to look at and paste. No guide is changed.
//!
//! In: a table as a spreadsheet saves it. Out: YAML a guide, with comments. A cell that a spreadsheet would run never comes out again.

mod cases;
mod counted;
mod table;

use super::args::TallyJob;
use super::proof::opened;
use super::report::count;
use super::terminal::{Outcome, Terminal};
use crate::proof::{Proofed, proof};
use crate::source::{Folder, in_words, read_table};
use cases::{Bad, Case};
use counted::Counted;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{ErrorKind, Write};
use std::path::Path;

/// Runs it.
pub fn run(job: &TallyJob, terminal: &mut Terminal) -> Outcome {
    let shown = job.table.display();
    let rows = match read_table(&job.table) {
        Ok(text) => table::rows(&text),
        Err(why) => {
            terminal.tell(format!("`{shown}` cannot be read: {why}"));
            return Outcome::CouldNotRun;
        }
    };
    let Some(folder) = opened(&job.guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    let (good, bad) = match cases::cases(&rows, &proofed) {
        Ok(read) => read,
        Err(why) => {
            terminal.tell(format!("`{shown}` cannot be tallied: {why}."));
            return Outcome::CouldNotRun;
        }
    };
    bad.iter().for_each(|bad| terminal.tell(left_out(&job.table, bad)));
    if good.is_empty() {
        terminal.tell("No row can be counted, so there are no counts to write.");
        return Outcome::Faulty;
    }
    let text = tallied(&good, &proofed, &folder, &job.table);
    if let Err(why) = given(job, text, terminal) {
        terminal.tell(why);
        return Outcome::CouldNotRun;
    }
    summary(&good, &bad, terminal);
    if bad.is_empty() { Outcome::Good } else { Outcome::Faulty }
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

/// Prints the counts, or writes them into a file that is not there yet. Errors: why that failed, in words.
fn given(job: &TallyJob, text: String, terminal: &mut Terminal) -> Result<(), String> {
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
    terminal.say(format!("Wrote {shown}: read it, then paste what you agree with into the guides."));
    Ok(())
}

fn summary(good: &[Case], bad: &[Bad], terminal: &mut Terminal) {
    let guides: BTreeSet<&str> = good.iter().map(|case| case.guide.as_str()).collect();
    let mut rows: BTreeMap<&[String], usize> = BTreeMap::new();
    good.iter().for_each(|case| *rows.entry(&case.row).or_default() += 1);
    let twice = rows.values().filter(|times| **times > 1).count();
    if twice > 0 {
        terminal.tell(format!(
            "{} more than once, word for word. If they are one case, take the others out.",
            count(twice, "row stands", "rows stand")
        ));
    }
    let left_out = match bad.len() {
        0 => String::new(),
        number => format!(", {} left out", count(number, "row", "rows")),
    };
    terminal.tell(format!(
        "Counted {} in {}{left_out}. No guide was changed.",
        count(good.len(), "case", "cases"),
        count(guides.len(), "guide", "guides")
    ));
}
