//! Why a handbook could not be written, in words for the volunteer who reads them.
//!
//! In: a path and what happened there. Out: a value with what is wrong and what to do. Whoever prints it adds no more.

use super::address::Clash;
use super::system::{self, Family};
use crate::source::in_words;
use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// The handbook was not written; what stood in the folder before still does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PressFailed {
    /// The file or folder it is about.
    pub path: PathBuf,
    /// What is wrong with it.
    pub why: Why,
}

/// What can keep a handbook from being written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// The output folder has no name that something could be built beside: `/`.
    NoName,
    /// The output folder is a file.
    OutIsFile,
    /// The output folder is a link to another place.
    OutIsLink,
    /// The output folder holds things, and no list of ours.
    NotOurs {
        /// Some of what it holds, sorted.
        holds: Vec<PathBuf>,
    },
    /// A file stands where a single file of ours has to go, and it is not from us.
    FileNotOurs,
    /// Files that we did not write stand where pages have to go.
    InTheWay {
        /// Their paths in the folder, sorted.
        strangers: Vec<PathBuf>,
    },
    /// The list of what we wrote cannot be read.
    DamagedContents,
    /// The list of what we wrote has a form of a later program.
    NewerContents,
    /// Another run is writing the same handbook.
    Busy,
    /// Another program has the file open.
    Locked,
    /// The system does not let us.
    Denied,
    /// The disk or the quota is full.
    DiskFull,
    /// The disk can only be read.
    ReadOnly,
    /// The output folder is a disk of its own.
    OtherDisk,
    /// The folder beside, where we build, holds something that is not ours or cannot be understood.
    Leftovers,
    /// Two pages cannot stand in one folder on every system.
    Clash(Clash),
    /// Anything else, in the system's words.
    System(String),
}

impl PressFailed {
    pub(super) fn new(path: &Path, why: Why) -> PressFailed {
        let path = path.to_path_buf();
        PressFailed { path, why }
    }

    /// What the system said about this path.
    pub fn of_system(path: &Path, error: &io::Error) -> PressFailed {
        PressFailed::new(path, of_error(error, Family::HERE))
    }

    /// What to do about it, as one or two sentences.
    pub fn help(&self) -> String {
        let beside = |what: &str| format!("{what}, or choose another folder with --out.");
        match &self.why {
            Why::NoName => "Give a folder with a name, such as --out site.".into(),
            Why::OutIsFile => beside("Move that file away"),
            Why::OutIsLink => "Give the folder it leads to instead: a link is never followed.".into(),
            Why::NotOurs { .. } => "Choose an empty folder with --out. With --force the handbook goes in beside what is there; nothing is lost.".into(),
            Why::FileNotOurs => "Move it away, or choose another name with --out. With --force it is kept, with .kept at the end of its name.".into(),
            Why::InTheWay { .. } => "Move them away. With --force each is kept, with .kept at the end of its name.".into(),
            Why::DamagedContents => "If nothing in that folder is yours, delete it and bind again. With --force the handbook is written anew; nothing is lost.".into(),
            Why::NewerContents => beside("Use the newer Coquille that wrote it"),
            Why::Busy => "Wait until the other run has ended, then try again.".into(),
            Why::Locked => "Close the program that has it open (a viewer, a synchroniser), then bind again.".into(),
            Why::Denied => beside("Ask whoever owns it for leave to write there"),
            Why::DiskFull => "Make room on the disk, then bind again. The old handbook is as it was.".into(),
            Why::ReadOnly => beside("Take off the write protection"),
            Why::OtherDisk => "Give a folder inside that disk, such as its subfolder site.".into(),
            Why::Leftovers => "Look inside: if nothing in it is yours, delete it, then bind again.".into(),
            Why::Clash(_) => "Rename one of the two guides or pictures.".into(),
            Why::System(_) => "See that the folder can be reached and written, then bind again.".into(),
        }
    }
}

impl fmt::Display for PressFailed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let path = self.path.display();
        match &self.why {
            Why::NoName => write!(f, "`{path}` cannot be the handbook's folder"),
            Why::OutIsFile => write!(f, "`{path}` is a file, not a folder"),
            Why::OutIsLink => write!(f, "`{path}` is a link to another place"),
            Why::NotOurs { holds } => {
                write!(f, "`{path}` was not made by Coquille and is not empty: it holds {}", some(holds))
            }
            Why::FileNotOurs => write!(f, "`{path}` was not made by Coquille"),
            Why::InTheWay { strangers } => write!(
                f,
                "`{path}` holds files that Coquille did not write where pages have to go: {}",
                some(strangers)
            ),
            Why::DamagedContents => write!(f, "the list of contents in `{path}` is damaged"),
            Why::NewerContents => write!(f, "`{path}` was written by a newer Coquille"),
            Why::Busy => write!(f, "another run is writing `{path}` right now"),
            Why::Locked => write!(f, "another program has `{path}` open"),
            Why::Denied => write!(f, "no permission to read or write `{path}`"),
            Why::DiskFull => write!(f, "the disk is full: no room for `{path}`"),
            Why::ReadOnly => write!(f, "`{path}` is on a disk that can only be read"),
            Why::OtherDisk => write!(f, "`{path}` is a disk of its own"),
            Why::Leftovers => write!(f, "`{path}` is in the way and not known to Coquille"),
            Why::Clash(clash) => {
                write!(f, "`{}` and `{}` would be the same file on some computers", clash.first, clash.second)
            }
            Why::System(said) => write!(f, "`{path}` could not be read or written: {said}"),
        }
    }
}

impl std::error::Error for PressFailed {}

fn of_error(error: &io::Error, family: Family) -> Why {
    use io::ErrorKind::{CrossesDevices, PermissionDenied, QuotaExceeded, ReadOnlyFilesystem, StorageFull};
    match error.kind() {
        StorageFull | QuotaExceeded => Why::DiskFull,
        ReadOnlyFilesystem => Why::ReadOnly,
        CrossesDevices => Why::OtherDisk,
        _ if system::means_locked(error, family) => Why::Locked,
        PermissionDenied => Why::Denied,
        _ => Why::System(in_words(error)),
    }
}

/// The first three, and how many more.
fn some(paths: &[PathBuf]) -> String {
    let named = paths.iter().take(3);
    let named: Vec<_> = named.map(|path| format!("`{}`", path.display())).collect();
    match paths.len().saturating_sub(named.len()) {
        0 => named.join(", "),
        more => format!("{} and {more} more", named.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_systems_errors_become_plain_reasons() {
        let why = |kind: io::ErrorKind| of_error(&kind.into(), Family::Other);
        assert_eq!(why(io::ErrorKind::StorageFull), Why::DiskFull);
        assert_eq!(why(io::ErrorKind::QuotaExceeded), Why::DiskFull);
        assert_eq!(why(io::ErrorKind::PermissionDenied), Why::Denied);
        assert_eq!(why(io::ErrorKind::ReadOnlyFilesystem), Why::ReadOnly);
        assert_eq!(why(io::ErrorKind::CrossesDevices), Why::OtherDisk);
        assert_eq!(why(io::ErrorKind::ResourceBusy), Why::Locked);
        let sharing = io::Error::from_raw_os_error(32);
        assert_eq!(of_error(&sharing, Family::Windows), Why::Locked);
    }

    #[test]
    fn a_message_names_the_path_and_the_help_says_what_to_do() {
        let holds = ["a", "b", "c", "d", "e"].map(PathBuf::from).to_vec();
        let failed = PressFailed::new(Path::new("site"), Why::NotOurs { holds });
        assert_eq!(
            failed.to_string(),
            "`site` was not made by Coquille and is not empty: it holds `a`, `b`, `c` and 2 more"
        );
        assert!(failed.help().contains("--force"));
    }
}
