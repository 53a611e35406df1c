//! `coquille reckon`: the orders, minutes and shares of a fault-finding guide.
//!
//! In: a guide by its id or file. Out: a report for people or programs. Leaves to others: every figure (`reckoning::diagnosis`).
//! An unsound guide is not reckoned; its findings are said instead.

mod asked;
mod human;
mod json;
mod sought;
mod sums;

use super::args::{ReckonJob, Reckoned};
use super::proof::{findings, opened};
use super::report;
use super::terminal::{Outcome, Terminal};
use crate::proof::{Proofed, proof};
use crate::source::Folder;
use sought::{Missed, Sought};
use std::path::Path;

/// Runs it.
pub fn run(job: &ReckonJob, terminal: &mut Terminal) -> Outcome {
    let guides = sought::handbook(job);
    let Some(folder) = opened(&guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    match sought::guide(&job.guide, &guides, &folder, &proofed) {
        Ok(sought) => reckoned(job, &sought, terminal),
        Err(Missed::Unsound) => {
            unsound(job, &proofed, &folder, &guides, terminal);
            Outcome::Faulty
        }
        Err(Missed::Unknown(why)) => {
            terminal.tell(why);
            Outcome::CouldNotRun
        }
    }
}

fn reckoned(job: &ReckonJob, sought: &Sought<'_>, terminal: &mut Terminal) -> Outcome {
    match asked::asked(job, sought) {
        Ok(asked) => {
            let sums = sums::sums(sought, asked);
            terminal.say(match job.format {
                Reckoned::Human => human::report(&sums),
                Reckoned::Json => format!("{:#}", json::report(&sums)),
            });
            Outcome::Good
        }
        Err(why) => {
            terminal.tell(why);
            Outcome::CouldNotRun
        }
    }
}

/// Says what is wrong with the handbook of a guide that cannot be reckoned.
fn unsound(job: &ReckonJob, proofed: &Proofed, folder: &Folder, guides: &Path, terminal: &mut Terminal) {
    match job.format {
        Reckoned::Human => {
            findings(proofed, folder, guides, terminal);
            let summary = report::human::summary(proofed, folder.trees.len());
            terminal.say(format!("{summary}\n`{}` has errors, so nothing was reckoned.", job.guide));
        }
        Reckoned::Json => terminal.say(format!("{:#}", report::json::report(proofed, &folder.texts))),
    }
}
