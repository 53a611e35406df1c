//! Which guide is meant: by its id, or by its file.
//!
//! In: what was typed. Out: the guide with its case, or why there is none.

use crate::cli::args::ReckonJob;
use crate::model::{Guides, Kind, Symptom};
use crate::proof::cases::{Case, NO_CHANGE, WORKS, sound};
use crate::proof::{Proofed, Severity, Thing, Wanted, did_you_mean};
use crate::reckoning::diagnosis::{AnswerIndex, CauseIndex, ProbeIndex, Suspect};
use crate::source::{FileId, Folder};
use std::path::{Path, PathBuf};

/// A sound guide that can be reckoned.
pub struct Sought<'a> {
    /// The guide.
    pub guide: &'a Symptom,
    /// The same as the reckoning sees it.
    pub case: &'a Case,
}

/// Why there is no guide to reckon.
pub enum Missed {
    /// It is there, but it has errors.
    Unsound,
    /// There is no such guide; what to say.
    Unknown(String),
}

/// What stands for *not on this list* on the command line and in JSON.
pub const REST: &str = "rest";

impl<'a> Sought<'a> {
    /// The id of a probe.
    pub fn probe(&self, index: ProbeIndex) -> &'a str {
        sound(&self.guide.probes).get(index.0).map_or("", |probe| probe.probe.value.as_str())
    }

    /// The id of an answer; those of a trial fix are `works` and `no-change`.
    pub fn answer(&self, probe: ProbeIndex, answer: AnswerIndex) -> &'a str {
        let probes = sound(&self.guide.probes);
        let Some(probe) = probes.get(probe.0) else { return "" };
        match (probe.mends.is_empty(), answer.0) {
            (false, 0) => WORKS,
            (false, _) => NO_CHANGE,
            (true, at) => sound(&probe.answers).get(at).map_or("", |answer| answer.answer.value.as_str()),
        }
    }

    /// The id of a cause, or `rest`.
    pub fn suspect(&self, suspect: Suspect) -> &'a str {
        self.cause(suspect).map_or(REST, |cause| cause.cause.value.as_str())
    }

    /// The words for a cause, or for what is not on the list.
    pub fn title(&self, suspect: Suspect) -> &'a str {
        self.cause(suspect).map_or("Not on this list", |cause| cause.title.value.as_str())
    }

    /// The id of the lasting job for a suspect, if there is one.
    pub fn remedy(&self, suspect: Suspect) -> Option<&'a str> {
        let case = self.case.diagnosis.case();
        let remedy = match suspect {
            Suspect::Cause(CauseIndex(index)) => case.causes.get(index).map(|cause| cause.remedy),
            Suspect::Rest => case.rest.and_then(|rest| rest.remedy),
        };
        remedy.and_then(|remedy| self.case.remedies.get(remedy.0)).map(String::as_str)
    }

    fn cause(&self, suspect: Suspect) -> Option<&'a crate::model::Cause> {
        match suspect {
            Suspect::Cause(CauseIndex(index)) => sound(&self.guide.causes).get(index).copied(),
            Suspect::Rest => None,
        }
    }
}

/// The handbook that is meant: the one named, the one that the file belongs to, or `guides`.
pub fn handbook(job: &ReckonJob) -> PathBuf {
    let file = Path::new(&job.guide);
    let above = file.ancestors().skip(1).find(|folder| folder.join("handbook.yaml").is_file());
    match (&job.guides, above) {
        (Some(named), _) => named.clone(),
        (None, Some(above)) if file.is_file() => Path::new(".").join(above).components().collect(),
        _ => PathBuf::from("guides"),
    }
}

/// Finds the guide.
pub fn guide<'a>(typed: &str, guides: &Path, folder: &Folder, proofed: &'a Proofed) -> Result<Sought<'a>, Missed> {
    let file = file(typed, guides, folder);
    let symptoms = &proofed.guides.symptoms;
    let found = symptoms.iter().find(|(at, guide)| guide.symptom.value.as_str() == typed || Some(*at) == file);
    let faulty = |at: FileId| {
        proofed.findings.iter().any(|finding| finding.place.file == at && finding.severity() == Severity::Error)
    };
    match (found, file) {
        (Some((at, _)), _) if faulty(*at) => Err(Missed::Unsound),
        (Some((_, guide)), _) => {
            let case = proofed.cases.get(guide.symptom.value.as_str()).ok_or(Missed::Unsound)?;
            Ok(Sought { guide, case })
        }
        (None, Some(at)) if faulty(at) => Err(Missed::Unsound),
        (None, _) if proofed.guides.broken.contains(typed) => Err(Missed::Unsound),
        (None, Some(at)) => Err(Missed::Unknown(other_kind(typed, kind(at, folder)))),
        (None, None) => Err(Missed::Unknown(unknown(typed, guides, proofed))),
    }
}

/// The guide's file, if a file was named: by its path, or by its path inside the handbook.
fn file(typed: &str, guides: &Path, folder: &Folder) -> Option<FileId> {
    let real = |path: &Path| std::fs::canonicalize(path).ok();
    let typed_file = real(Path::new(typed)).filter(|path| path.is_file());
    let is = |name: &str| name == typed || (typed_file.is_some() && real(&guides.join(name)) == typed_file);
    folder.texts.iter().find(|(_, text)| is(&text.name)).map(|(file, _)| file)
}

fn kind(file: FileId, folder: &Folder) -> Option<Kind> {
    let tree = folder.trees.iter().find(|(at, _)| *at == file);
    tree.and_then(|(_, tree)| tree.first_entry()).and_then(|(key, _)| Kind::of(&key.text))
}

fn other_kind(typed: &str, kind: Option<Kind>) -> String {
    let is = kind.map_or_else(|| "no guide".to_owned(), |kind| Wanted::One(Thing::Guide(kind)).words());
    format!("`{typed}` is {is}. Only fault-finding guides can be reckoned.")
}

fn unknown(typed: &str, guides: &Path, proofed: &Proofed) -> String {
    if let Some((kind, _)) = proofed.index.guide(typed) {
        return other_kind(typed, Some(kind));
    }
    let known = ids(&proofed.guides);
    let help = did_you_mean(typed, known.iter().copied(), &format!("it has: {}", known.join(", ")));
    let of = guides.display();
    match known.as_slice() {
        [] => format!(
            "The handbook `{of}` has no fault-finding guide yet.\nPrint one to fill in: coquille begin --guide symptom"
        ),
        _ => format!("There is no fault-finding guide `{typed}` in `{of}`: {help}"),
    }
}

fn ids(guides: &Guides) -> Vec<&str> {
    guides.symptoms.iter().map(|(_, guide)| guide.symptom.value.as_str()).collect()
}
