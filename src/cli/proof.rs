//! `coquille proof`: check only.

use super::args::{Format, ProofJob};
use super::report::{human, json, sarif, typed};
use super::terminal::{Outcome, Terminal};
use crate::proof::{Proofed, proof};
use crate::source::{Folder, in_words, read};
use std::io::{ErrorKind, Write};
use std::path::Path;

/// Runs it.
pub fn run(job: &ProofJob, terminal: &mut Terminal) -> Outcome {
    let Some(folder) = opened(&job.guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    match job.format {
        Format::Human => {
            findings(&proofed, &folder, &job.guides, terminal);
            terminal.say(human::summary(&proofed, folder.trees.len()));
        }
        Format::Json => terminal.say(format!("{:#}", json::report(&proofed, &folder.texts))),
        Format::Sarif => terminal.say(format!("{:#}", sarif::log(&proofed, &folder.texts))),
    }
    if job.mend {
        return mend(&proofed, job, terminal);
    }
    outcome(&proofed, job.strict)
}

/// Shows what would be written, asks, and writes it: each file anew, none over another.
fn mend(proofed: &Proofed, job: &ProofJob, terminal: &mut Terminal) -> Outcome {
    if proofed.mends.is_empty() {
        terminal.tell("There is nothing that could be written: no pack needs an entry of the stores or a word.");
        return outcome(proofed, job.strict);
    }
    for file in &proofed.mends {
        terminal.say(format!("\n{} would be:\n{}", job.guides.join(&file.file).display(), file.text.trim_end()));
    }
    terminal.tell("Write this? Type `yes` and press Enter.");
    let mut answer = String::new();
    let said = std::io::stdin().read_line(&mut answer).is_ok() && matches!(answer.trim(), "yes" | "y");
    if !said {
        terminal.tell("Nothing was written.");
        return outcome(proofed, job.strict);
    }
    for file in &proofed.mends {
        let path = job.guides.join(&file.file);
        let shown = path.display();
        let written = std::fs::File::create_new(&path).and_then(|mut new| new.write_all(file.text.as_bytes()));
        if let Err(error) = written {
            terminal.tell(format!(
                "`{shown}` cannot be written: {}\nMove the file that is in the way, if there is one.",
                in_words(&error)
            ));
            return Outcome::CouldNotRun;
        }
        terminal.tell(format!("Wrote {shown}"));
    }
    terminal.tell(format!("Proof again: coquille proof {}", typed(&job.guides)));
    Outcome::Good
}

/// Good when there is no error, and with `--strict` no advice either.
pub(super) fn outcome(proofed: &Proofed, strict: bool) -> Outcome {
    let faulty = proofed.errors() > 0 || (strict && proofed.advice() > 0);
    if faulty { Outcome::Faulty } else { Outcome::Good }
}

/// Reads the guides, or says why they cannot be read.
pub(super) fn opened(guides: &Path, terminal: &mut Terminal) -> Option<Folder> {
    if let Some(above) = handbook_above(guides).filter(|_| guides.is_dir() && !guides.join(HANDBOOK).is_file()) {
        let shown = guides.display();
        terminal.tell(format!("`{shown}` is a part of a handbook.\nName the folder of the whole: {}", typed(above)));
        return None;
    }
    match read(guides) {
        Ok(folder) => Some(folder),
        Err(error) => {
            terminal.tell(not_opened(guides, &error));
            None
        }
    }
}

/// Why the guides cannot be read, and what to do.
pub(super) fn not_opened(guides: &Path, error: &std::io::Error) -> String {
    let shown = guides.display();
    match (error.kind(), handbook_above(guides)) {
        (ErrorKind::NotADirectory, Some(above)) => {
            format!("`{shown}` is no folder.\nName the folder of its handbook: {}", typed(above))
        }
        (ErrorKind::NotADirectory, None) => {
            format!("`{shown}` is a file, not a folder with guides.\n{NAME_A_FOLDER}")
        }
        (ErrorKind::NotFound, _) => format!("There is no folder `{shown}`.\n{NAME_A_FOLDER}"),
        _ => format!("The guides' folder `{shown}` cannot be read: {}.\n{NAME_A_FOLDER}", in_words(error)),
    }
}

/// The file that makes a folder a handbook.
const HANDBOOK: &str = "handbook.yaml";

/// The handbook's folder that this file or folder is in.
fn handbook_above(guides: &Path) -> Option<&Path> {
    let above = guides.ancestors().skip(1).find(|folder| folder.join(HANDBOOK).is_file())?;
    Some(if above.as_os_str().is_empty() { Path::new(".") } else { above })
}

const NAME_A_FOLDER: &str = "Name the folder with the guides, or make a new handbook: coquille begin DIR";

/// Says every finding.
pub(super) fn findings(proofed: &Proofed, folder: &Folder, guides: &Path, terminal: &mut Terminal) {
    let colour = terminal.colour;
    for found in &proofed.findings {
        terminal.say(human::finding(found, &folder.texts, guides, colour));
        terminal.say("");
    }
}
