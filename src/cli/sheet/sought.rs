//! Which guides are meant: by id or by file.

use crate::cli::args::SheetJob;
use crate::proof::{Proofed, did_you_mean};
use crate::source::Folder;
use std::path::{Path, PathBuf};

/// The handbook that is meant: the one named, the one that the first file belongs to, or `guides`.
pub fn handbook(job: &SheetJob) -> PathBuf {
    if let Some(named) = &job.folder {
        return named.clone();
    }
    let files = job.guides.iter().map(Path::new).filter(|file| file.is_file());
    let above = files.flat_map(|file| file.ancestors().skip(1)).find(|folder| folder.join("handbook.yaml").is_file());
    above.map_or_else(|| PathBuf::from("guides"), |above| Path::new(".").join(above).components().collect())
}

/// The id of a guide that has a sheet.
pub fn id(typed: &str, guides: &Path, folder: &Folder, proofed: &Proofed) -> Result<String, String> {
    let known = known(proofed, folder);
    let real = |path: &Path| std::fs::canonicalize(path).ok();
    let file = real(Path::new(typed)).filter(|path| path.is_file());
    let is =
        |id: &str, name: &str| id == typed || name == typed || (file.is_some() && real(&guides.join(name)) == file);
    if let Some((id, _)) = known.iter().find(|(id, name)| is(id, name)) {
        return Ok((*id).to_owned());
    }
    if proofed.index.guide(typed).is_some() || file.is_some() {
        return Err(format!("`{typed}` has no sheet. Fault finding, jobs and checklists have one."));
    }
    let ids: Vec<&str> = known.iter().map(|(id, _)| *id).collect();
    let help = did_you_mean(typed, ids.iter().copied(), &format!("it has: {}", ids.join(", ")));
    Err(format!("There is no guide `{typed}` in `{}`: {help}", guides.display()))
}

/// All guides with a sheet: id and the name of the file.
fn known<'a>(proofed: &'a Proofed, folder: &'a Folder) -> Vec<(&'a str, &'a str)> {
    let guides = &proofed.guides;
    let mut known: Vec<_> = guides.symptoms.iter().map(|(at, guide)| (guide.symptom.value.as_str(), *at)).collect();
    known.extend(guides.procedures.iter().map(|(at, guide)| (guide.procedure.value.as_str(), *at)));
    known.extend(guides.checklists.iter().map(|(at, guide)| (guide.checklist.value.as_str(), *at)));
    let name = |at| folder.texts.iter().find(|(file, _)| *file == at).map_or("", |(_, text)| text.name.as_str());
    known.into_iter().map(|(id, at)| (id, name(at))).collect()
}
