//! `--since` of `coquille bind`: the earlier handbook, and which sheets must be printed again.
//!
//! In: a folder with a bound handbook. Out: its record, and what to say in the terminal. Leaves to others: the comparison (`handbook`).

use super::args::BindJob;
use super::report::count;
use crate::handbook::Handbook;
use crate::handbook::page::Body;
use crate::handbook::record::{Change, NAME, Record};
use crate::source::{in_words, read_record};
use std::collections::BTreeSet;
use std::io::ErrorKind;
use std::path::Path;

/// Reads what a bound handbook remembers. Errors: why it cannot be compared with, in words.
pub fn record(old: &Path) -> Result<Record, String> {
    let shown = old.display();
    let bytes = read_record(old, NAME).map_err(|error| match error.kind() {
        ErrorKind::NotFound if !old.exists() => {
            format!("There is no folder `{shown}` to compare with.\nName an earlier bound handbook after `--since`.")
        }
        ErrorKind::NotFound => format!(
            "There is no `{NAME}` in `{shown}`, so nothing can be compared with it.\n\
             Name a folder that `coquille bind` wrote; one from an older version has to be bound again."
        ),
        ErrorKind::NotADirectory => format!(
            "`{shown}` is a file, not a folder with a bound handbook.\n\
             Name a folder that `coquille bind` wrote after `--since`."
        ),
        _ => format!("`{NAME}` in `{shown}` cannot be read: {}", in_words(&error)),
    })?;
    Record::read(&bytes).map_err(|why| format!("`{NAME}` in `{shown}` {why}.\nName another earlier handbook."))
}

/// What to say about prints that hang somewhere: what to print again, what to take down, what still carries a withdrawn code.
pub fn report(job: &BindJob, handbook: &Handbook, earlier: Option<&Record>) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(earlier) = earlier {
        let changes = handbook.recast.as_ref().map_or(&[][..], |recast| &recast.changes);
        let sheets: Vec<&Change> = changes.iter().filter(|change| change.kind == "kind-sheet").collect();
        let (again, rest): (Vec<&Change>, Vec<&Change>) =
            sheets.into_iter().partition(|change| change.was.is_some() && change.now.is_some());
        let gone: Vec<&Change> = rest.into_iter().filter(|change| change.now.is_none()).collect();
        lines.push(match again.len() {
            0 => format!("No sheet has to be printed again since {}.", earlier.edition),
            number => format!("Print again, {} changed since {}:", count(number, "sheet", "sheets"), earlier.edition),
        });
        lines.extend(again.iter().map(|change| sheet(job, change, change.now.as_ref())));
        if !gone.is_empty() {
            lines.push("Take down, no longer in the handbook:".to_owned());
            lines.extend(gone.iter().map(|change| format!("  {} ({})", change.title, spaced(change.was.as_ref()))));
        }
    }
    lines.extend(still_withdrawn(handbook));
    lines
}

fn sheet(job: &BindJob, change: &Change, code: Option<&String>) -> String {
    format!("  {} ({})\n    {}", change.title, spaced(code), job.out.join(&change.address).display())
}

fn spaced(code: Option<&String>) -> String {
    let code = code.map_or("", String::as_str);
    code.split_at_checked(4).map_or_else(|| code.to_owned(), |(first, last)| format!("{first} {last}"))
}

/// Pages that say what was withdrawn, word for word.
fn still_withdrawn(handbook: &Handbook) -> Vec<String> {
    let withdrawn = handbook.pages.iter().filter_map(|page| match &page.body {
        Body::About(about) => Some(about.withdrawn.iter().map(|sheet| sheet.code.as_str())),
        _ => None,
    });
    let withdrawn: BTreeSet<&str> = withdrawn.flatten().collect();
    let still = handbook.pages.iter().filter(|page| withdrawn.contains(page.code.as_str()));
    let still = still.map(|page| {
        format!("`{}` still says what was withdrawn as {}: correct its guide.", page.address, spaced(Some(&page.code)))
    });
    still.collect()
}
