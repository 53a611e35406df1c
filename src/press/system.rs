//! Everything that differs from one operating system to another.
//!
//! In: names, errors and folders. Out: the rule for the system at hand, or the one system call it has for the job.
//! Leaves to others: what to do about it. Each rule is a pure function of its arguments, so that the rules of Windows
//! are tested on Linux too; a test finds any use of a system-only interface outside this file.
//! Not promised: Windows and macOS were never run on the machines this was written on.

use std::fs::{self, File, OpenOptions};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// The systems whose rules for open files differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// A file that another program has open can be neither replaced nor removed.
    Windows,
    /// An open file may be replaced: who has it open keeps the old one.
    Other,
}

impl Family {
    /// The family of the system this program was built for.
    pub const HERE: Family = if cfg!(windows) { Family::Windows } else { Family::Other };
}

/// Whether two names that differ in case only name the same file, as they usually do on this system.
pub const FOLDS_CASE: bool = cfg!(any(windows, target_os = "macos"));

/// Whether the program, started without a command by a person, has a console that closes with it: what it said would be gone
/// before anybody could read it.
///
/// Windows opens one for a program that is clicked in its folder. A command prompt has set `PROMPT` for the programs that it starts,
/// so that is how we know one (from memory, not tried); from other shells there is a wait too many, which Enter ends. Elsewhere a
/// click opens no console, or one that stays.
pub fn closes_at_once(family: Family, prompt_is_set: bool, is_watched: bool) -> bool {
    family == Family::Windows && !prompt_is_set && is_watched
}

/// The longest path, in characters, that every program on Windows opens (`MAX_PATH` less the closing zero).
pub const LONGEST_ON_WINDOWS: usize = 259;

/// Whether Windows keeps this file name for a device: `con`, `NUL.html`, `com1`, with or without an ending.
///
/// The list is that of Microsoft's "Naming Files, Paths, and Namespaces" (from memory).
pub fn is_reserved_on_windows(name: &str) -> bool {
    let stem = name.split('.').next().unwrap_or(name).trim_end();
    let stem = stem.to_ascii_lowercase();
    let numbered = |device| stem.strip_prefix(device).is_some_and(is_device_number);
    matches!(stem.as_str(), "con" | "prn" | "aux" | "nul" | "conin$" | "conout$") || numbered("com") || numbered("lpt")
}

/// One digit; the raised one, two and three count as digits here.
fn is_device_number(text: &str) -> bool {
    let mut characters = text.chars();
    matches!(characters.next(), Some('0'..='9' | '¹' | '²' | '³')) && characters.next().is_none()
}

/// Whether a page of so many characters in a folder of so many is past what every program on Windows opens.
pub fn is_long_on_windows(folder: usize, address: usize) -> bool {
    folder + 1 + address > LONGEST_ON_WINDOWS
}

/// How many of these pages some program on Windows may fail to open. Writing them works: Rust's library asks Windows for long paths.
pub fn too_long_to_open<'a>(family: Family, folder: &Path, addresses: impl IntoIterator<Item = &'a str>) -> usize {
    let folder = folder.to_string_lossy().chars().count();
    let long = addresses.into_iter().filter(|address| is_long_on_windows(folder, address.len()));
    if family == Family::Windows { long.count() } else { 0 }
}

/// Whether an error says that another program holds the file: then it is worth waiting a moment, and saying so.
///
/// On Windows 5 is "access denied", which is also what a rename of an open file gets; 32 and 33 are the sharing and
/// lock violations.
pub fn means_locked(error: &io::Error, family: Family) -> bool {
    match family {
        Family::Windows => matches!(error.raw_os_error(), Some(5 | 32 | 33)),
        Family::Other => matches!(error.kind(), io::ErrorKind::ResourceBusy | io::ErrorKind::ExecutableFileBusy),
    }
}

/// Whether a file is the system's own litter, which no person put there and nobody wants reported.
pub fn is_litter(name: &str) -> bool {
    let known = [".ds_store", "thumbs.db", "desktop.ini", ".directory"];
    known.contains(&name.to_ascii_lowercase().as_str())
}

/// Renames, with up to a second of patience for a file that a virus scanner or a synchroniser holds for a moment.
///
/// # Errors
/// The last error, when patience is at its end or would not help.
pub fn rename_patiently(from: &Path, to: &Path) -> io::Result<()> {
    for wait in [10, 40, 150, 300, 500] {
        match fs::rename(from, to) {
            Err(error) if means_locked(&error, Family::HERE) => {
                std::thread::sleep(Duration::from_millis(wait));
            }
            done => return done,
        }
    }
    fs::rename(from, to)
}

/// Exchanges two folders of one file system in one step: at no moment is either name without a whole folder.
///
/// # Errors
/// `Unsupported` where the system or the file system has no such step; else what the system says.
#[cfg(target_os = "linux")]
pub fn exchange(one: &Path, other: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    use rustix::io::Errno;
    renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE).map_err(|error| match error {
        Errno::INVAL | Errno::NOSYS | Errno::NOTSUP => io::ErrorKind::Unsupported.into(),
        error => error.into(),
    })
}

/// Exchanges two folders in one step: not on this system.
///
/// # Errors
/// Always `Unsupported`.
#[cfg(not(target_os = "linux"))]
pub fn exchange(_one: &Path, _other: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

/// A lock file that this run holds. The system lets go of it when the program ends, however it ends.
#[derive(Debug)]
pub struct Claim {
    file: File,
    path: PathBuf,
}

impl Claim {
    /// Takes the lock file at this path, makes it if need be; `None` if another run holds it.
    ///
    /// # Errors
    /// `NotFound` if the folder went away meanwhile, else what the system says.
    pub fn take(path: &Path) -> io::Result<Option<Claim>> {
        take(path).map(|file| {
            let path = path.to_path_buf();
            file.map(|file| Claim { file, path })
        })
    }

    /// The open lock file.
    pub fn file(&mut self) -> &mut File {
        &mut self.file
    }

    /// Removes the lock file and lets go.
    ///
    /// # Errors
    /// What the system says; the lock is gone all the same.
    #[cfg(not(windows))]
    pub fn release(self) -> io::Result<()> {
        // Removed while it is still held: a run that opened it before sees that the name is gone and tries again.
        fs::remove_file(&self.path)
    }

    /// Lets go and removes the lock file, unless another run has taken it since: then Windows refuses, rightly.
    ///
    /// # Errors
    /// None that matters.
    #[cfg(windows)]
    pub fn release(self) -> io::Result<()> {
        drop(self.file);
        let _ = fs::remove_file(&self.path);
        Ok(())
    }
}

#[cfg(not(windows))]
fn take(path: &Path) -> io::Result<Option<File>> {
    let file = OpenOptions::new().create(true).truncate(false).write(true).open(path)?;
    match file.try_lock() {
        Ok(()) if is_at(&file, path) => Ok(Some(file)),
        // Another run removed this very file between our two steps: its name is free again.
        Ok(()) => Err(io::ErrorKind::NotFound.into()),
        Err(fs::TryLockError::WouldBlock) => Ok(None),
        // A file system without locks: better unguarded than not at all.
        Err(fs::TryLockError::Error(error)) if error.kind() == io::ErrorKind::Unsupported => Ok(Some(file)),
        Err(fs::TryLockError::Error(error)) => Err(error),
    }
}

/// Opened so that nobody else can open it: on Windows that is the lock.
#[cfg(windows)]
fn take(path: &Path) -> io::Result<Option<File>> {
    use std::os::windows::fs::OpenOptionsExt;
    let opened = OpenOptions::new().create(true).truncate(false).write(true).share_mode(0).open(path);
    match opened {
        Ok(file) => Ok(Some(file)),
        Err(error) if error.raw_os_error() == Some(32) => Ok(None),
        Err(error) => Err(error),
    }
}

#[cfg(unix)]
fn is_at(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    match (file.metadata(), fs::symlink_metadata(path)) {
        (Ok(held), Ok(named)) => held.dev() == named.dev() && held.ino() == named.ino(),
        _ => false,
    }
}

#[cfg(not(any(unix, windows)))]
fn is_at(_file: &File, path: &Path) -> bool {
    path.exists()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn windows_keeps_device_names_with_any_ending_and_any_case() {
        for name in ["con", "NUL.html", "Com1", "lpt9.tar.gz", "aux .txt", "COM¹"] {
            assert!(is_reserved_on_windows(name), "{name}");
        }
        for name in ["cone", "com10", "com", "null.html", "a.con", "lpt-1"] {
            assert!(!is_reserved_on_windows(name), "{name}");
        }
    }

    #[test]
    fn a_sharing_violation_is_a_locked_file_on_windows_only() {
        let sharing = io::Error::from_raw_os_error(32);
        assert!(means_locked(&sharing, Family::Windows));
        assert!(!means_locked(&sharing, Family::Other));
        let busy = io::Error::from(io::ErrorKind::ResourceBusy);
        assert!(means_locked(&busy, Family::Other));
    }

    #[test]
    fn only_a_console_that_windows_opened_for_the_program_closes_at_once() {
        assert!(closes_at_once(Family::Windows, false, true));
        assert!(!closes_at_once(Family::Windows, true, true), "a command prompt stays");
        assert!(!closes_at_once(Family::Windows, false, false), "nobody waits at a pipe");
        assert!(!closes_at_once(Family::Other, false, true));
    }

    #[test]
    fn two_hundred_and_fifty_nine_characters_still_open_on_windows() {
        assert!(!is_long_on_windows(200, 58));
        assert!(is_long_on_windows(200, 59));
    }

    #[test]
    fn pages_too_long_to_open_are_counted_where_that_matters() {
        let folder = PathBuf::from("x".repeat(231));
        let pages = ["index.html", "symptoms/foil-stays-lit.html"];
        assert_eq!(too_long_to_open(Family::Windows, &folder, pages), 1);
        assert_eq!(too_long_to_open(Family::Other, &folder, pages), 0);
    }

    #[test]
    fn the_lock_is_held_once_and_free_again_after_release() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("lock");
        let held = Claim::take(&path).unwrap().expect("nobody else is here");
        assert!(Claim::take(&path).unwrap().is_none());
        held.release().unwrap();
        assert!(!path.exists());
        assert!(Claim::take(&path).unwrap().is_some());
    }
}
