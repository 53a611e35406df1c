//! `coquille sheet`: bench sheets of guides as one file, PDF or HTML.
//!
//! In: guides by id or file, numbers to print in, a paper. Out: a file. Leaves to others: what sheets say (`handbook`), how they look
//! (`render`). A file that is not one of ours is never written over.

mod made;
mod numbers;
mod sought;
mod written;

use super::args::{PaperName, SheetJob};
use super::proof::{findings, opened, outcome};
use super::report::human;
use super::terminal::{Outcome, Terminal};
use crate::handbook::page::{Body, Page};
use crate::handbook::{Handbook, kit_sheet, lay_out};
use crate::model::Paper;
use crate::proof::{Proofed, proof};
use crate::source::Folder;
pub(super) use made::NO_PDF;
use made::{Form, Made};
use std::path::PathBuf;

/// What was asked for, understood.
struct Asked {
    ids: Vec<String>,
    numbers: Vec<String>,
    out: PathBuf,
    form: Form,
}

/// Runs it.
pub fn run(job: &SheetJob, terminal: &mut Terminal) -> Outcome {
    let guides = sought::handbook(job);
    let form = match made::form(job) {
        Ok(form) => form,
        Err(why) => return refused(&why, terminal),
    };
    let Some(folder) = opened(&guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    if outcome(&proofed, false) == Outcome::Faulty {
        findings(&proofed, &folder, &guides, terminal);
        terminal.say(format!("{} No sheet was made.", human::summary(&proofed, folder.trees.len())));
        return Outcome::Faulty;
    }
    let done = asked(job, form, &guides, &folder, &proofed)
        .and_then(|asked| written(job, &asked, &guides, &folder, &proofed, terminal));
    match done {
        Ok(()) => Outcome::Good,
        Err(why) => refused(&why, terminal),
    }
}

fn refused(why: &str, terminal: &mut Terminal) -> Outcome {
    terminal.tell(why);
    Outcome::CouldNotRun
}

fn asked(
    job: &SheetJob,
    form: Form,
    guides: &std::path::Path,
    folder: &Folder,
    proofed: &Proofed,
) -> Result<Asked, String> {
    let ids: Result<Vec<String>, String> =
        job.guides.iter().map(|typed| sought::id(typed, guides, folder, proofed)).collect();
    let ids = ids?;
    let numbers = job.numbers.as_deref().map_or(Ok(Vec::new()), numbers::read)?;
    let first = ids.first().map_or("sheet", String::as_str);
    let kit = if job.kit { "-kit" } else { "" };
    let out = job.out.clone().unwrap_or_else(|| PathBuf::from(format!("{first}{kit}.{}", form.ending())));
    Ok(Asked { ids, numbers, out, form })
}

fn written(
    job: &SheetJob,
    asked: &Asked,
    guides: &std::path::Path,
    folder: &Folder,
    proofed: &Proofed,
    terminal: &mut Terminal,
) -> Result<(), String> {
    let handbook = lay_out(proofed, folder);
    let kit = job.kit.then(|| kit_of(asked, proofed, folder));
    let pages = match &kit {
        Some(page) => vec![page],
        None => sheets(&handbook, &asked.ids),
    };
    let paper = job.paper.map_or_else(|| paper_of(&pages), paper);
    let Made { bytes, without_letter } = made::made(asked.form, &handbook, guides, &pages, paper, &asked.numbers)?;
    written::write(&asked.out, asked.form, &bytes)?;
    if !without_letter.is_empty() {
        let letters: Vec<String> = without_letter.iter().map(|letter| format!("`{letter}`")).collect();
        terminal.tell(format!("No face has {}: an empty square stands there.", letters.join(", ")));
    }
    terminal.say(format!("Wrote {}", asked.out.display()));
    Ok(())
}

fn kit_of(asked: &Asked, proofed: &Proofed, folder: &Folder) -> Page {
    let ids: Vec<&str> = asked.ids.iter().map(String::as_str).collect();
    let pieces = u32::try_from(asked.numbers.len().max(1)).unwrap_or(1);
    kit_sheet(proofed, folder, &ids, pieces)
}

/// The sheets of these guides, in the order in which they were asked for.
fn sheets<'h>(handbook: &'h Handbook, ids: &[String]) -> Vec<&'h Page> {
    let is =
        |page: &&Page, id: &str| matches!(page.body, Body::Sheet(_)) && page.address == format!("sheets/{id}.html");
    ids.iter().filter_map(|id| handbook.pages.iter().find(|page| is(page, id))).collect()
}

fn paper(name: PaperName) -> Paper {
    match name {
        PaperName::A4 => Paper::A4,
        PaperName::Letter => Paper::Letter,
    }
}

/// The paper that the handbook is for.
fn paper_of(pages: &[&Page]) -> Paper {
    let first = pages.first().map(|page| &page.body);
    first.map_or(Paper::A4, |body| if let Body::Sheet(sheet) = body { sheet.paper } else { Paper::A4 })
}
