//! The journal way: page by page, with every step written down first, so that any later run can finish or undo them.
//!
//! In: a plan. Out: the handbook's folder holds the new pages; what they replaced is in the folder beside, to be cleared.
//! Files that are not ours are not touched. While it goes on the folder holds pages of both; if it is cut short, the
//! next command calls [`settle`] and the folder is whole again.
//!
//! Invariant: every step can be done, done again, undone and undone again, from whatever state a cut left it in; which
//! of its moves have happened is read off the names that exist. Removing the journal is the moment at which it is over.

use super::Progress;
use super::address::Address;
use super::failure::PressFailed;
use super::manifest::Hash;
use super::plan::{Fate, Plan};
use super::work::{Work, make_parent};
use rayon::prelude::*;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// One step: a few renames on the same disk.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Step {
    /// A page of ours that the new handbook has no more leaves the folder.
    Drop(Address),
    /// A file that is not ours makes room.
    Aside(Address, Address),
    /// A page comes where nothing of ours stood.
    Add(Address, Hash),
    /// A page takes the place of an older one.
    Change(Address, Hash),
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Direction {
    Forward,
    Back,
}

#[derive(Clone, Debug, PartialEq, Eq)]
struct Journal {
    direction: Direction,
    steps: Vec<Step>,
}

/// What an interrupted run's journal came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Settled {
    /// There was none.
    NoJournal,
    /// The new handbook stands.
    Finished,
    /// The old handbook stands.
    Undone,
}

/// Renames a file or folder. A parameter, so that tests can cut the work short at every single move.
pub(super) type Rename<'a> = &'a dyn Fn(&Path, &Path) -> io::Result<()>;

/// Writes the new pages beside, then the journal, then takes the steps. If one fails, all are undone.
pub(super) fn exchange(work: &Work, plan: &Plan, progress: &dyn Progress, rename: Rename) -> Result<(), PressFailed> {
    write_pages(work, plan, progress)?;
    let journal = Journal { direction: Direction::Forward, steps: steps(plan) };
    journal.write(work)?;
    journal.run(work, rename)
}

/// Finishes what a journal says, or undoes it if a page to come is not what the journal promised.
pub(super) fn settle(work: &Work, rename: Rename) -> Result<Settled, PressFailed> {
    let path = work.journal();
    let text = match fs::read_to_string(&path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Settled::NoJournal),
        read => read.map_err(|error| PressFailed::of_system(&path, &error))?,
    };
    // It is on the disk before the first step is taken: one that is cut short stands for no step at all.
    let Some(mut journal) = Journal::parse(&text) else {
        remove(&path)?;
        return Ok(Settled::NoJournal);
    };
    if !journal.is_promised(work) {
        journal.direction = Direction::Back;
        journal.write(work)?;
    }
    journal.run(work, rename)?;
    Ok(match journal.direction {
        Direction::Forward => Settled::Finished,
        Direction::Back => Settled::Undone,
    })
}

impl Journal {
    /// Takes all steps in the journal's direction. Forward turns back at the first that fails.
    fn run(&self, work: &Work, rename: Rename) -> Result<(), PressFailed> {
        let taken = match self.direction {
            Direction::Forward => self.steps.iter().try_for_each(|s| s.take(work, rename)),
            Direction::Back => self.steps.iter().rev().try_for_each(|s| s.undo(work, rename)),
        };
        match (taken, self.direction) {
            (Ok(()), _) => remove(&work.journal()),
            (Err(failed), Direction::Back) => Err(failed),
            (Err(failed), Direction::Forward) => {
                let direction = Direction::Back;
                let steps = self.steps.clone();
                let back = Journal { direction, steps };
                // If even that fails the journal stays, and a later run tries again.
                let _ = back.write(work).and_then(|()| back.run(work, rename));
                Err(failed)
            }
        }
    }

    /// Whether every page to come, or come already, has the bytes it was written with: a power cut may have lost them.
    fn is_promised(&self, work: &Work) -> bool {
        self.steps.par_iter().all(|step| match step {
            Step::Drop(_) | Step::Aside(..) => true,
            Step::Add(address, hash) | Step::Change(address, hash) => {
                let waiting = fs::read(address.within(&work.new_tree()));
                let bytes = waiting.or_else(|_| fs::read(address.within(&work.place.out)));
                bytes.is_ok_and(|bytes| blake3::hash(&bytes) == *hash)
            }
        })
    }

    /// Puts the journal on the disk, all of it or nothing. This is the one wait for the disk of the journal way.
    fn write(&self, work: &Work) -> Result<(), PressFailed> {
        let (path, draft) = (work.journal(), work.journal_draft());
        File::create(&draft)
            .and_then(|mut file| {
                file.write_all(self.to_text().as_bytes())?;
                file.sync_all()
            })
            .and_then(|()| fs::rename(&draft, &path))
            .map_err(|error| PressFailed::of_system(&path, &error))
    }

    fn to_text(&self) -> String {
        let direction = match self.direction {
            Direction::Forward => "forward",
            Direction::Back => "back",
        };
        let head = format!("coquille journal 1 {direction} {}\n", self.steps.len());
        let lines = self.steps.iter().map(|step| match step {
            Step::Drop(address) => format!("drop {address}\n"),
            Step::Aside(from, to) => format!("aside {from} {to}\n"),
            Step::Add(address, hash) => format!("add {address} {hash}\n"),
            Step::Change(address, hash) => format!("change {address} {hash}\n"),
        });
        std::iter::once(head).chain(lines).collect()
    }

    fn parse(text: &str) -> Option<Journal> {
        let mut lines = text.lines();
        let head: Vec<_> = lines.next()?.split(' ').collect();
        let (direction, count) = match head.as_slice() {
            ["coquille", "journal", "1", "forward", count] => (Direction::Forward, *count),
            ["coquille", "journal", "1", "back", count] => (Direction::Back, *count),
            _ => return None,
        };
        let steps: Vec<Step> = lines.map(step).collect::<Option<_>>()?;
        let complete = text.ends_with('\n') && steps.len().to_string() == count;
        complete.then_some(Journal { direction, steps })
    }
}

impl Step {
    fn take(&self, work: &Work, rename: Rename) -> Result<(), PressFailed> {
        let named = |error| PressFailed::of_system(&self.names(&work.place.out), &error);
        self.try_take(work, rename).map_err(named)
    }

    fn undo(&self, work: &Work, rename: Rename) -> Result<(), PressFailed> {
        let named = |error| PressFailed::of_system(&self.names(&work.place.out), &error);
        self.try_undo(work, rename).map_err(named)
    }

    /// The file in the handbook's folder that the step is about: the one to name to people.
    fn names(&self, out: &Path) -> PathBuf {
        match self {
            Step::Drop(address) | Step::Aside(address, _) => address.within(out),
            Step::Add(address, _) | Step::Change(address, _) => address.within(out),
        }
    }

    fn try_take(&self, work: &Work, rename: Rename) -> io::Result<()> {
        let out = &work.place.out;
        match self {
            Step::Drop(address) => {
                move_if_free(address.within(out), address.within(&work.former()), rename)?;
                prune(address, out);
            }
            Step::Aside(from, to) => move_if_free(from.within(out), to.within(out), rename)?,
            Step::Add(address, _) | Step::Change(address, _) => {
                let (new, page) = (address.within(&work.new_tree()), address.within(out));
                if exists(&new) {
                    if matches!(self, Step::Change(..)) {
                        move_if_free(page.clone(), address.within(&work.former()), rename)?;
                    }
                    move_over(&new, &page, rename)?;
                }
            }
        }
        Ok(())
    }

    fn try_undo(&self, work: &Work, rename: Rename) -> io::Result<()> {
        let out = &work.place.out;
        match self {
            Step::Drop(address) => move_if_free(address.within(&work.former()), address.within(out), rename),
            Step::Aside(from, to) => move_if_free(to.within(out), from.within(out), rename),
            Step::Add(address, _) => {
                move_if_free(address.within(out), address.within(&work.new_tree()), rename)?;
                prune(address, out);
                Ok(())
            }
            Step::Change(address, _) => {
                let (former, page) = (address.within(&work.former()), address.within(out));
                if exists(&former) {
                    move_if_free(page.clone(), address.within(&work.new_tree()), rename)?;
                    move_over(&former, &page, rename)?;
                }
                Ok(())
            }
        }
    }
}

/// Files leave before others come: a page may need the name of a former page's folder. The list comes last.
fn steps(plan: &Plan) -> Vec<Step> {
    let drops = plan.dropped.iter().cloned().map(Step::Drop);
    let asides = plan.aside.moves.iter().cloned();
    let asides = asides.map(|(from, to)| Step::Aside(from, to));
    let pages = plan.items.iter().filter_map(|item| match item.fate {
        Fate::Same => None,
        Fate::Add => Some(Step::Add(item.address.clone(), item.hash)),
        Fate::Change => Some(Step::Change(item.address.clone(), item.hash)),
    });
    drops.chain(asides).chain(pages).collect()
}

fn step(line: &str) -> Option<Step> {
    let words: Vec<_> = line.split(' ').collect();
    let address = |text| Address::parse_of_any_length(text).ok();
    Some(match words.as_slice() {
        ["drop", at] => Step::Drop(address(at)?),
        ["aside", from, to] => Step::Aside(address(from)?, address(to)?),
        ["add", at, hash] => Step::Add(address(at)?, Hash::from_hex(hash).ok()?),
        ["change", at, hash] => Step::Change(address(at)?, Hash::from_hex(hash).ok()?),
        _ => return None,
    })
}

fn write_pages(work: &Work, plan: &Plan, progress: &dyn Progress) -> Result<(), PressFailed> {
    let new = work.new_tree();
    plan.items.par_iter().try_for_each(|item| {
        let path = item.address.within(&new);
        let written = match item.fate {
            Fate::Same => Ok(()),
            Fate::Change | Fate::Add => make_parent(&path).and_then(|()| fs::write(&path, item.bytes)),
        };
        progress.step();
        written.map_err(|error| PressFailed::of_system(&path, &error))
    })
}

/// Moves what stands at one name to another that is free; if either is not so, it has been moved before.
fn move_if_free(from: impl AsRef<Path>, to: impl AsRef<Path>, rename: Rename) -> io::Result<()> {
    let (from, to) = (from.as_ref(), to.as_ref());
    match exists(from) && !exists(to) {
        true => move_over(from, to, rename),
        false => Ok(()),
    }
}

fn move_over(from: &Path, to: &Path, rename: Rename) -> io::Result<()> {
    make_parent(to)?;
    rename(from, to)
}

/// Removes the folders that a page leaves empty. A folder that is not ours is no page's folder, so it is never met.
fn prune(address: &Address, out: &Path) {
    for folder in address.folders().rev() {
        if fs::remove_dir(out.join(folder)).is_err() {
            return;
        }
    }
}

fn exists(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok()
}

fn remove(path: &Path) -> Result<(), PressFailed> {
    fs::remove_file(path).map_err(|error| PressFailed::of_system(path, &error))
}
