//! What stands in a folder, to any depth. Links are named, never followed.

use super::failure::PressFailed;
use super::system;
use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};
use walkdir::WalkDir;

/// What a name in a folder stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    File,
    Folder,
    /// A link, a socket and the like: never opened.
    Other,
}

/// All names in a folder, as relative paths.
#[derive(Clone, Debug, Default)]
pub(super) struct Survey {
    pub(super) entries: BTreeMap<PathBuf, Kind>,
}

impl Survey {
    pub(super) fn of(folder: &Path) -> Result<Survey, PressFailed> {
        let mut entries = BTreeMap::new();
        for entry in WalkDir::new(folder).min_depth(1).follow_links(false) {
            let entry = entry.map_err(|error| refused(folder, error))?;
            let kind = match entry.file_type() {
                kind if kind.is_dir() => Kind::Folder,
                kind if kind.is_file() => Kind::File,
                _ => Kind::Other,
            };
            if let Ok(path) = entry.path().strip_prefix(folder) {
                entries.insert(path.to_path_buf(), kind);
            }
        }
        Ok(Survey { entries })
    }

    pub(super) fn kind(&self, path: &Path) -> Option<Kind> {
        self.entries.get(path).copied()
    }

    /// Whether there is nothing in it that a person put there.
    pub(super) fn is_bare(&self) -> bool {
        self.entries.keys().all(|path| is_litter(path))
    }
}

/// Whether the last part of the path is the system's own litter.
pub(super) fn is_litter(path: &Path) -> bool {
    let name = path.file_name().and_then(|name| name.to_str());
    name.is_some_and(system::is_litter)
}

fn refused(folder: &Path, error: walkdir::Error) -> PressFailed {
    let path = error.path().unwrap_or(folder).to_path_buf();
    let error = error.into_io_error().unwrap_or_else(|| io::ErrorKind::Other.into());
    PressFailed::of_system(&path, &error)
}
