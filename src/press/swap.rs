//! The exchange way: a whole new folder is built beside the old one, and the two change places in one step.
//!
//! In: a plan. Out: the handbook's folder is the new one; the old one stands in the folder beside, to be cleared.
//! What stays the same is not written again: it gets a second name (a hard link) in the new folder.

use super::Progress;
use super::failure::PressFailed;
use super::manifest;
use super::plan::{Fate, Item, Plan, Stranger};
use super::survey::Kind;
use super::system;
use super::work::{Work, make_parent};
use rayon::prelude::*;
use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

/// Builds the new folder and gives it the handbook's name, for a handbook that has no folder yet.
pub(super) fn place(work: &Work, plan: &Plan, progress: &dyn Progress) -> Result<(), PressFailed> {
    let whole = build(work, plan, progress)?;
    let out = &work.place.out;
    system::rename_patiently(&whole, out).map_err(|error| PressFailed::of_system(out, &error))
}

/// Builds the new folder and exchanges it with the old one.
pub(super) fn exchange(work: &Work, plan: &Plan, progress: &dyn Progress) -> Result<(), PressFailed> {
    let whole = build(work, plan, progress)?;
    let out = &work.place.out;
    // People set permissions on the folder (a group that shares it): the new one has to have them too.
    let exchanged = fs::metadata(out)
        .and_then(|old| fs::set_permissions(&whole, old.permissions()))
        .and_then(|()| system::exchange(&whole, out));
    exchanged.map_err(|error| {
        // Nothing in it is the only one of its kind: under this name it may be deleted unseen.
        let _ = fs::rename(&whole, work.new_tree());
        PressFailed::of_system(out, &error)
    })
}

fn build(work: &Work, plan: &Plan, progress: &dyn Progress) -> Result<PathBuf, PressFailed> {
    let (new, whole) = (work.new_tree(), work.whole());
    make_folders(&new, plan)?;
    plan.items.par_iter().try_for_each(|item| {
        let made = match item.fate {
            Fate::Same => link_or_write(&work.place.out, &new, item),
            Fate::Change | Fate::Add => fs::write(item.address.within(&new), item.bytes),
        };
        progress.step();
        made.map_err(|error| PressFailed::of_system(&item.address.within(&new), &error))
    })?;
    let strangers = plan.strangers.par_iter();
    strangers.try_for_each(|stranger| link_stranger(&work.place.out, &new, plan, stranger))?;
    // The one file that a later run has to be able to read is on the disk before it counts. The pages are not waited
    // for: the promise is about a killed program; after a power cut the next bind compares every byte and mends.
    let list = new.join(manifest::NAME);
    let synced = File::open(&list).and_then(|file| file.sync_all());
    synced
        .and_then(|()| work.write_aside(&plan.aside))
        .and_then(|()| fs::rename(&new, &whole))
        .map_err(|error| PressFailed::of_system(&list, &error))?;
    Ok(whole)
}

fn make_folders(new: &Path, plan: &Plan) -> Result<(), PressFailed> {
    let files = plan.items.iter().filter_map(|item| {
        let path = item.address.to_path();
        path.parent().map(Path::to_path_buf)
    });
    let strange = plan.strangers.iter();
    let strange = strange.filter(|stranger| stranger.kind == Kind::Folder);
    let folders: BTreeSet<PathBuf> = files.chain(strange.map(|stranger| plan.aside.moved(&stranger.path))).collect();
    folders.iter().try_for_each(|folder| {
        let path = new.join(folder);
        fs::create_dir_all(&path).map_err(|error| PressFailed::of_system(&path, &error))
    })
}

fn link_or_write(out: &Path, new: &Path, item: &Item) -> io::Result<()> {
    let to = item.address.within(new);
    fs::hard_link(item.address.within(out), &to).or_else(|_| fs::write(&to, item.bytes))
}

/// Gives a file that is not ours its second name, or a copy where the disk gives none. What can be neither linked nor
/// read (somebody else's private file, a socket) stays in the old folder and is brought over after the exchange.
fn link_stranger(out: &Path, new: &Path, plan: &Plan, stranger: &Stranger) -> Result<(), PressFailed> {
    if stranger.kind == Kind::Folder {
        return Ok(());
    }
    let (from, moved) = (out.join(&stranger.path), plan.aside.moved(&stranger.path));
    let to = new.join(&moved);
    let linked = make_parent(&to).and_then(|()| fs::hard_link(&from, &to));
    let kept = linked.or_else(|refused| match stranger.kind {
        Kind::File => copy(&from, &to),
        _ => Err(refused),
    });
    match kept {
        // At a page's address it could later not be told from a page: then the bind fails instead.
        Err(error) if moved != stranger.path || error.kind() != io::ErrorKind::PermissionDenied => {
            Err(PressFailed::of_system(&from, &error))
        }
        _ => Ok(()),
    }
}

/// A copy that is on the disk before the original goes: nobody could make this file again.
fn copy(from: &Path, to: &Path) -> io::Result<()> {
    fs::copy(from, to)?;
    File::open(to)?.sync_all()
}
