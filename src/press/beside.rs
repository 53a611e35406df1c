//! A single file that stands beside the handbook's folder: written as a whole or not at all.
//!
//! In: a path, bytes, and how to know a file of ours. Out: the file. It is written under another name and then renamed, so that a
//! program killed at any moment leaves the old file or the new one. A file that is not ours is refused, or kept under another name.

use super::Strangers;
use super::failure::{PressFailed, Why};
use super::system;
use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// What was done with a single file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Placed {
    /// The file holds these bytes already.
    Same,
    /// It is new or changed.
    Written,
    /// It is new, and somebody's file that was in the way now has this name.
    SetAside(PathBuf),
}

/// Whether a single file may be written here. For several, ask for all before the first is written.
///
/// # Errors
/// [`Why::FileNotOurs`] if a file is in the way that `is_ours` does not know; [`Why::OutIsLink`] and the like.
pub fn may_place(path: &Path, is_ours: &dyn Fn(&[u8]) -> bool, strangers: Strangers) -> Result<(), PressFailed> {
    match standing(path, is_ours)? {
        Standing::Stranger if strangers == Strangers::Refuse => Err(PressFailed::new(path, Why::FileNotOurs)),
        _ => Ok(()),
    }
}

/// Writes a single file.
///
/// # Errors
/// As [`may_place`], and what the system says; what stood there before still does.
pub fn place(
    path: &Path,
    bytes: &[u8],
    is_ours: &dyn Fn(&[u8]) -> bool,
    strangers: Strangers,
) -> Result<Placed, PressFailed> {
    may_place(path, is_ours, strangers)?;
    let aside = match standing(path, is_ours)? {
        Standing::Ours(old) if old == bytes => return Ok(Placed::Same),
        Standing::Stranger => Some(free_name(path)),
        Standing::Ours(_) | Standing::Nothing => None,
    };
    let draft = hidden(path);
    let failed = |error: io::Error| PressFailed::of_system(path, &error);
    let written = write(&draft, bytes).and_then(|()| match &aside {
        Some(aside) => system::rename_patiently(path, aside),
        None => Ok(()),
    });
    if let Err(error) = written.and_then(|()| system::rename_patiently(&draft, path)) {
        // Half of a file under a name of ours is worth nothing.
        let _ = fs::remove_file(&draft);
        return Err(failed(error));
    }
    Ok(aside.map_or(Placed::Written, Placed::SetAside))
}

enum Standing {
    Nothing,
    Ours(Vec<u8>),
    Stranger,
}

fn standing(path: &Path, is_ours: &dyn Fn(&[u8]) -> bool) -> Result<Standing, PressFailed> {
    let failed = |error: io::Error| PressFailed::of_system(path, &error);
    match fs::symlink_metadata(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(Standing::Nothing),
        Err(error) => Err(failed(error)),
        Ok(found) if found.is_symlink() => Err(PressFailed::new(path, Why::OutIsLink)),
        Ok(found) if !found.is_file() => Ok(Standing::Stranger),
        Ok(_) => {
            let bytes = fs::read(path).map_err(failed)?;
            Ok(if is_ours(&bytes) { Standing::Ours(bytes) } else { Standing::Stranger })
        }
    }
}

fn write(draft: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Some(parent) = draft.parent().filter(|parent| !parent.as_os_str().is_empty()) {
        fs::create_dir_all(parent)?;
    }
    let mut file = File::create(draft)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// The name under which a file is written: hidden, beside its own.
fn hidden(path: &Path) -> PathBuf {
    let mut name = OsString::from(".");
    name.push(path.file_name().unwrap_or_default());
    name.push(".binding");
    path.with_file_name(name)
}

/// `NAME.kept`, or the first of `NAME.kept-2`, … that is free.
fn free_name(path: &Path) -> PathBuf {
    let named = |ending: String| {
        let mut name = path.file_name().unwrap_or_default().to_owned();
        name.push(ending);
        path.with_file_name(name)
    };
    let first = named(".kept".to_owned());
    let others = (2_u32..).map(|number| named(format!(".kept-{number}")));
    std::iter::once(first).chain(others).find(|path| !path.exists()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ours(bytes: &[u8]) -> bool {
        bytes.starts_with(b"ours")
    }

    #[test]
    fn ours_is_written_again_and_left_when_it_is_the_same() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("new/site.zip");
        let put = |text: &[u8]| place(&path, text, &ours, Strangers::Refuse);
        assert_eq!(put(b"ours 1"), Ok(Placed::Written));
        assert_eq!(put(b"ours 1"), Ok(Placed::Same));
        assert_eq!(put(b"ours 2"), Ok(Placed::Written));
        assert_eq!(fs::read(&path).unwrap(), b"ours 2");
        assert_eq!(fs::read_dir(path.parent().unwrap()).unwrap().count(), 1, "no draft is left");
    }

    #[test]
    fn somebody_elses_file_is_refused_or_kept_under_another_name() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("site.zip");
        for (text, kept) in [("theirs", "site.zip.kept"), ("theirs too", "site.zip.kept-2")] {
            fs::write(&path, text).unwrap();
            let refused = place(&path, b"ours", &ours, Strangers::Refuse).unwrap_err();
            assert_eq!(refused.why, Why::FileNotOurs);
            assert_eq!(fs::read_to_string(&path).unwrap(), text);
            let kept = folder.path().join(kept);
            assert_eq!(place(&path, b"ours", &ours, Strangers::Keep), Ok(Placed::SetAside(kept.clone())));
            assert_eq!(fs::read_to_string(kept).unwrap(), text);
            assert_eq!(fs::read(&path).unwrap(), b"ours");
        }
    }

    #[test]
    fn a_file_that_cannot_be_written_leaves_the_old_one() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("site.zip");
        fs::write(&path, b"ours 1").unwrap();
        fs::create_dir(folder.path().join(".site.zip.binding")).unwrap();
        assert!(place(&path, b"ours 2", &ours, Strangers::Refuse).is_err());
        assert_eq!(fs::read(&path).unwrap(), b"ours 1");
    }
}
