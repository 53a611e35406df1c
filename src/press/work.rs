//! The folder beside the handbook in which it is built: `.NAME.binding`.
//!
//! In: the handbook's folder. Out: a place on the same disk that only this run uses, with nothing of an interrupted run
//! left in it. What may stand there:
//!
//! | name | is |
//! |---|---|
//! | `lock` | held by the run at work; also the sign that the folder is ours |
//! | `new/` | a handbook (or its changed pages) being written; worth nothing unless a journal says so |
//! | `whole/` | a finished handbook: before the exchange the new one, after it the old one |
//! | `aside` | which files that are not ours got another name in `whole/`, to be read after the exchange |
//! | `former/` | pages that the journal way took out of the handbook |
//! | `journal` | the steps of the journal way, while they are being done; `journal.draft` before it counts |
//!
//! Invariant: what people put into the handbook's folder is in `new/` only as a second link. It can be in `whole/` alone,
//! if it could not be linked or came while we were building: so `whole/` is never deleted unseen.

use super::address::Address;
use super::aside::Aside;
use super::failure::{PressFailed, Why};
use super::manifest::{self, Contents};
use super::survey::{Kind, Survey};
use super::system::{self, Claim};
use rayon::prelude::*;
use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

const SIGN: &[u8] = b"Coquille builds a handbook here and removes this folder when it is done.\n\
    If it was interrupted, the next run tidies up.\n";

/// The handbook's folder and the one beside it.
#[derive(Clone, Debug)]
pub(super) struct Place {
    pub(super) out: PathBuf,
    pub(super) beside: PathBuf,
}

impl Place {
    /// Where a handbook in this folder is built.
    pub(super) fn of(out: &Path) -> Result<Place, PressFailed> {
        let out = match out.file_name() {
            Some(_) => out.to_path_buf(),
            // `.` and `..` have a name only once they are resolved.
            None => fs::canonicalize(out).map_err(|error| PressFailed::of_system(out, &error))?,
        };
        let Some(name) = out.file_name() else {
            return Err(PressFailed::new(&out, Why::NoName));
        };
        let mut hidden = OsString::from(".");
        hidden.push(name);
        hidden.push(".binding");
        let beside = out.with_file_name(hidden);
        Ok(Place { out, beside })
    }

    /// Whether there is a folder already; anything else in its place is refused.
    pub(super) fn is_taken(&self) -> Result<bool, PressFailed> {
        match fs::symlink_metadata(&self.out) {
            Ok(found) if found.is_dir() => Ok(true),
            Ok(found) if found.is_symlink() => Err(PressFailed::new(&self.out, Why::OutIsLink)),
            Ok(_) => Err(PressFailed::new(&self.out, Why::OutIsFile)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
            Err(error) => Err(PressFailed::of_system(&self.out, &error)),
        }
    }
}

/// The folder beside, held by this run.
#[derive(Debug)]
pub(super) struct Work {
    pub(super) place: Place,
    claim: Claim,
}

impl Work {
    /// Makes the folder beside and takes its lock.
    pub(super) fn claim(place: &Place) -> Result<Work, PressFailed> {
        let failed = |error: io::Error| PressFailed::of_system(&place.beside, &error);
        // A run that ends just now may remove the folder under us: then it is made again.
        for _ in 0..20 {
            fs::create_dir_all(&place.beside).map_err(failed)?;
            is_ours(&place.beside)?;
            match Claim::take(&place.beside.join("lock")) {
                Ok(Some(mut claim)) => {
                    // The sign is for people; without it nothing is lost.
                    let _ = claim.file().write_all(SIGN);
                    let place = place.clone();
                    return Ok(Work { place, claim });
                }
                Ok(None) => return Err(PressFailed::new(&place.out, Why::Busy)),
                Err(error) if error.kind() == io::ErrorKind::NotFound => {}
                Err(error) => return Err(failed(error)),
            }
        }
        Err(PressFailed::new(&place.out, Why::Busy))
    }

    pub(super) fn new_tree(&self) -> PathBuf {
        self.place.beside.join("new")
    }

    pub(super) fn whole(&self) -> PathBuf {
        self.place.beside.join("whole")
    }

    pub(super) fn former(&self) -> PathBuf {
        self.place.beside.join("former")
    }

    pub(super) fn journal(&self) -> PathBuf {
        self.place.beside.join("journal")
    }

    pub(super) fn journal_draft(&self) -> PathBuf {
        self.place.beside.join("journal.draft")
    }

    fn aside(&self) -> PathBuf {
        self.place.beside.join("aside")
    }

    /// Writes down which strangers make room, on the disk before the exchange.
    pub(super) fn write_aside(&self, aside: &Aside) -> io::Result<()> {
        if aside.moves.is_empty() {
            return Ok(());
        }
        let mut file = File::create(self.aside())?;
        file.write_all(aside.to_text().as_bytes())?;
        file.sync_all()
    }

    fn read_aside(&self) -> Aside {
        let text = fs::read_to_string(self.aside()).unwrap_or_default();
        Aside::parse(&text)
    }

    /// Whether this disk exchanges two folders in one step and gives a file two names: tried on the spot, with nothing
    /// at stake.
    pub(super) fn can_exchange(&self) -> bool {
        let (one, other) = (self.new_tree(), self.former());
        let (name, link) = (one.join("name"), one.join("link"));
        let tried = fs::create_dir_all(&one)
            .and_then(|()| fs::write(&name, SIGN))
            .and_then(|()| fs::hard_link(&name, &link))
            .and_then(|()| fs::create_dir_all(&other))
            .and_then(|()| system::exchange(&one, &other));
        remove_tree(&one).is_ok() && remove_tree(&other).is_ok() && tried.is_ok()
    }

    /// Removes what stands in the folder, after bringing back what is not ours. Not to be called while a journal stands.
    pub(super) fn clear(&self) -> Result<(), PressFailed> {
        bring_back(&self.whole(), &self.place.out, &self.read_aside())?;
        for tree in [self.new_tree(), self.former(), self.whole()] {
            remove_tree(&tree).map_err(|error| PressFailed::of_system(&tree, &error))?;
        }
        for file in [self.journal_draft(), self.aside()] {
            // Mostly there is none; one that stays keeps the folder, and the next run tries again.
            let _ = fs::remove_file(file);
        }
        Ok(())
    }

    /// Clears, unless a journal is left to finish, and lets go. What could not be removed is given back.
    pub(super) fn close(self) -> Option<PathBuf> {
        let beside = self.place.beside.clone();
        let unfinished = self.journal().exists() || self.clear().is_err();
        if unfinished {
            return Some(beside);
        }
        let released = self.claim.release();
        // Not empty if another run came in meanwhile: then it is that one's.
        let _ = fs::remove_dir(&beside);
        released.err().map(|_| beside)
    }
}

/// Refuses a folder of our name that is not ours: it is neither empty nor has the lock.
fn is_ours(beside: &Path) -> Result<(), PressFailed> {
    let failed = |error: io::Error| PressFailed::of_system(beside, &error);
    let stranger = || Err(PressFailed::new(beside, Why::Leftovers));
    match fs::symlink_metadata(beside) {
        Ok(found) if !found.is_dir() => return stranger(),
        Err(error) if manifest::is_absent(&error) => return Ok(()),
        Err(error) => return Err(failed(error)),
        Ok(_) => {}
    }
    if fs::symlink_metadata(beside.join("lock")).is_ok_and(|found| found.is_file()) {
        return Ok(());
    }
    // A run that started just now may have put its lock there since we looked.
    let mut others = fs::read_dir(beside).into_iter().flatten().flatten();
    match others.any(|entry| entry.file_name() != "lock") {
        true => stranger(),
        false => Ok(()),
    }
}

pub(super) fn remove_tree(tree: &Path) -> io::Result<()> {
    match fs::remove_dir_all(tree) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        done => done,
    }
}

/// Empties a finished tree of its files: ours are deleted, all others are moved to the handbook if it has them not.
fn bring_back(whole: &Path, out: &Path, aside: &Aside) -> Result<(), PressFailed> {
    // Without a handbook there is nothing to bring anything back to: somebody has deleted it since.
    if !whole.is_dir() || !out.is_dir() {
        return Ok(());
    }
    let listed = |folder: &Path| match Contents::read(folder) {
        // Without a list nothing counts as ours: that can bring too much over, never too little.
        Err(failed) if failed.why == Why::DamagedContents => Ok(Contents::default()),
        read => read.map(Option::unwrap_or_default),
    };
    let (own, current) = (listed(whole)?, listed(out)?);
    let is_listed = |path: &Path| {
        let address = address_of(path);
        address.is_some_and(|a| own.hash(&a).is_some() || current.hash(&a).is_some())
    };
    let take_out = |path: &Path| {
        let (from, to) = (whole.join(path), out.join(aside.moved(path)));
        // A stranger at a page's address is listed too; but it has its new name, or the bind would have failed.
        let ours = is_listed(path) || aside.is_new_name(path);
        let done = if ours || is_current(&from, &to) {
            fs::remove_file(&from)
        } else {
            make_parent(&to).and_then(|()| fs::rename(&from, &to))
        };
        done.map_err(|error| PressFailed::of_system(&from, &error))
    };
    let list = Path::new(manifest::NAME);
    let survey = Survey::of(whole)?;
    let entries = survey.entries.into_iter();
    let entries = entries.filter(|(path, kind)| *kind != Kind::Folder && path != list);
    let files: Vec<_> = entries.map(|(path, _)| path).collect();
    files.par_iter().try_for_each(|path| take_out(path))
    // The list stays to the last, and goes with the folders: a run that is cut short here leaves pages that only the
    // list tells from other people's files.
}

/// Whether the handbook already has this file, or a later one. One saved while we were building is the later, or, within
/// one tick of the disk's clock, of another length.
fn is_current(left: &Path, kept: &Path) -> bool {
    let (Ok(left), Ok(kept)) = (fs::symlink_metadata(left), fs::symlink_metadata(kept)) else {
        return false;
    };
    match (left.modified(), kept.modified()) {
        (Ok(before), Ok(after)) if before == after => left.len() == kept.len(),
        (Ok(before), Ok(after)) => before < after,
        _ => true,
    }
}

pub(super) fn make_parent(path: &Path) -> io::Result<()> {
    path.parent().map_or(Ok(()), fs::create_dir_all)
}

/// The address that this relative path spells, if it spells one.
pub(super) fn address_of(path: &Path) -> Option<Address> {
    let parts: Option<Vec<_>> = path.iter().map(|part| part.to_str()).collect();
    Address::parse(&parts?.join("/")).ok()
}
