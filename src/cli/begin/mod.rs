//! `coquille begin`: a small handbook to start from, the whole trade's, or one guide to fill in.
//!
//! In: a folder that is new or empty. Out: the files of `club/`, written by hand and embedded, comments and all; or those of `whole`.
//! Leaves to others: whether they are sound (`tests/sessions` binds them with `--strict`).

mod whole;

pub use whole::Trade;

use super::args::{BeginJob, KindName};
use super::report::typed;
use super::terminal::{Outcome, Terminal};
use crate::model::blank;
use crate::source::in_words;
use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};

macro_rules! club {
    ($($name:literal)*) => { [$(($name, include_str!(concat!("club/", $name)))),*] };
}

/// The handbook of an invented club: path inside the folder, and text.
const CLUB: [(&str, &str); 11] = club! {
    "handbook.yaml"
    "faults/cord-flickers.yaml"
    "jobs/refit-plug.yaml"
    "jobs/splint-cord.yaml"
    "jobs/spread-pins.yaml"
    "checks/cords-before-training.yaml"
    "stores/bench.yaml"
    "limits/rules.yaml"
    "limits/shop.yaml"
    "words/ours.yaml"
    "pictures/plug-open.svg"
};

/// Runs it.
pub fn run(job: &BeginJob, trade: &Trade, terminal: &mut Terminal) -> Outcome {
    if let Some(KindName(kind)) = job.guide {
        terminal.say(blank(kind).trim_end());
        return Outcome::Good;
    }
    let Some(folder) = &job.folder else { return Outcome::CouldNotRun };
    match begun(job, folder, trade, terminal) {
        Ok(files) => {
            terminal.say(next(folder, files));
            if job.whole {
                terminal.say(WHOLE);
            }
            Outcome::Good
        }
        Err(why) => {
            terminal.tell(why);
            Outcome::CouldNotRun
        }
    }
}

const WHOLE: &str = "\
The guides that came with the program are in its folder `whole`. Yours go
beside it; one with the same id as one of theirs stands in its place.";

/// Writes the files into an empty folder and says how many; otherwise why not, in words.
fn begun(job: &BeginJob, folder: &Path, trade: &Trade, terminal: &mut Terminal) -> Result<usize, String> {
    let shown = folder.display();
    if taken(folder).map_err(|error| format!("The folder `{shown}` cannot be used: {}", in_words(&error)))? {
        return Err(format!(
            "The folder `{shown}` is not empty, so nothing was written.\nName a new folder, or empty it first."
        ));
    }
    let files = match job.whole {
        true => whole::files(trade, &whole::club(job, terminal)?)?,
        false => CLUB.into_iter().map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec())).collect(),
    };
    written(folder, &files)
        .map_err(|error| format!("The handbook cannot be written into `{shown}`: {}", in_words(&error)))?;
    Ok(files.len())
}

/// Whether something stands in the folder already. One that does not exist is free.
fn taken(folder: &Path) -> io::Result<bool> {
    match std::fs::read_dir(folder) {
        Ok(mut inside) => Ok(inside.next().is_some()),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

fn written(folder: &Path, files: &BTreeMap<String, Vec<u8>>) -> io::Result<()> {
    for (name, text) in files {
        let path = folder.join(name);
        if let Some(above) = path.parent() {
            std::fs::create_dir_all(above)?;
        }
        std::fs::write(path, text)?;
    }
    Ok(())
}

/// What to do now.
fn next(folder: &Path, files: usize) -> String {
    let (guides, out) = (typed(folder), beside(folder));
    format!(
        "Wrote {files} files. Three things to do now:\n  \
         1. coquille bind {guides} --out {}\n  \
         2. Open {} in a browser.\n  \
         3. Read and change {}; then bind again.",
        typed(&out),
        typed(&out.join("index.html")),
        typed(&folder.join("handbook.yaml")),
    )
}

/// A folder `site` beside the guides' folder, never inside it.
fn beside(folder: &Path) -> PathBuf {
    match folder.file_name() {
        Some(_) => folder.with_file_name("site"),
        None => folder.join("..").join("site"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Kind;
    use crate::proof::{Code, Severity, proof};
    use crate::source::read_texts;

    #[test]
    fn every_blank_guide_fits_into_the_club_with_no_error_but_that_it_is_not_filled_in() {
        assert_eq!(proof(&read_texts(CLUB)).findings, []);
        for kind in Kind::ALL {
            let name = match kind {
                Kind::Pack => "theirs/pack.yaml",
                Kind::Handbook => "handbook.yaml",
                _ => "new.yaml",
            };
            let others = CLUB.into_iter().filter(|(other, _)| *other != name);
            let texts = others.chain([(name, blank(kind))]);
            let proofed = proof(&read_texts(texts));
            let errors = proofed.findings.iter().filter(|finding| finding.severity() == Severity::Error);
            let codes: Vec<Code> = errors.map(|finding| finding.code).collect();
            assert_eq!(codes, [Code::Unfilled], "{kind:?}: {:#?}", proofed.findings);
        }
    }

    #[test]
    fn the_next_step_never_binds_into_the_guides_own_folder() {
        assert_eq!(beside(Path::new("guides")), Path::new("site"));
        assert_eq!(beside(Path::new("club/guides")), Path::new("club/site"));
        assert_eq!(beside(Path::new(".")), Path::new("./../site"));
    }
}
