//! Writes a bound handbook into its folder: what changed, and nothing else.
//!
//! In: a folder and the handbook's files, by address. Out: the folder holds them, and everything in it that no bind
//! wrote. A program killed at any moment leaves the old handbook or the new one. Leaves to others: what the files say,
//! and every word on the terminal: this stage prints nothing. Not promised: wholeness after a power cut (the next bind
//! compares every byte and mends); a file that a person puts at a new page's address in the moment of binding.
//!
//! Two ways lead there. The exchange builds a whole folder beside and exchanges the two in one system call. Where
//! there is no such call, the journal way changes page by page with every step written down first, and the next
//! bind finishes or undoes what was cut short: it begins with [`recover`], also of the folder that it compares with.

mod address;
mod aside;
mod beside;
#[cfg(test)]
mod cuts;
mod failure;
mod journal;
mod manifest;
mod packed;
mod plan;
mod survey;
mod swap;
pub mod system;
mod work;

pub use address::{Address, AddressRefused, Clash, Flaw, clash};
pub use beside::{Placed, may_place, place};
pub use failure::{PressFailed, Why};
pub use manifest::{Contents, Hash, NAME as CONTENTS};
pub use packed::pack;

use plan::{Fate, Plan, Standing};
use std::collections::BTreeMap;
use std::path::{Component, Path, PathBuf};
use work::{Place, Work};

/// How the new handbook takes the old one's place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Way {
    /// In one step, if the system and the disk have it; else as [`Way::Journal`].
    #[default]
    Exchange,
    /// Page by page, with a journal.
    Journal,
}

/// What becomes of a folder, or of files in it, that no bind wrote.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Strangers {
    /// A folder that holds things but no list of ours is refused, and so is a handbook with a file that is not ours at
    /// an address where a page has to go. All other files stay and are reported.
    #[default]
    Refuse,
    /// All files stay; one that is in a page's way is renamed to `NAME.kept`.
    Keep,
}

/// How to press.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Manner {
    /// How the new handbook takes the old one's place.
    pub way: Way,
    /// What becomes of files that no bind wrote.
    pub strangers: Strangers,
}

/// Somebody who wants to know how far the writing is. Called from several threads.
pub trait Progress: Sync {
    /// So many files will be looked at and, if need be, written.
    fn begin(&self, files: usize);
    /// One more is done.
    fn step(&self);
}

/// Nobody wants to know.
impl Progress for () {
    fn begin(&self, _files: usize) {}
    fn step(&self) {}
}

/// What was done.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pressed {
    /// Files that were not there before; the list of contents is not counted here or below.
    pub added: usize,
    /// Files with other bytes than before.
    pub changed: usize,
    /// Files that were left as they were.
    pub same: usize,
    /// Files of the former handbook that the new one has no more.
    pub removed: usize,
    /// Addresses at which somebody else had changed or removed what we wrote; written anew. Sorted.
    pub restored: Vec<Address>,
    /// Files and folders that are not ours and stayed, relative to the folder, sorted; of a folder only the folder itself.
    pub kept: Vec<PathBuf>,
    /// Files and folders that are not ours and made room for a page: from where, to where. Sorted.
    pub set_aside: Vec<(Address, Address)>,
    /// What an interrupted run had left.
    pub recovered: Recovered,
    /// The way that was gone; `None` if there was nothing to do or no folder before.
    pub way: Option<Way>,
    /// The folder beside, if not all of it could be removed; the next run tries again.
    pub left_over: Option<PathBuf>,
}

/// What an interrupted run had left, and what became of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Recovered {
    /// It left nothing.
    #[default]
    Nothing,
    /// It left the folder beside, which is removed; the handbook was whole.
    Cleared,
    /// It left a handbook half changed; now it is the new one.
    Finished,
    /// It left a handbook half changed; now it is the old one again.
    Undone,
    /// It is not interrupted: another run is writing this handbook right now.
    AtWork,
}

/// Writes a handbook's files into a folder, so that it holds these and every file that no bind wrote.
///
/// The result does not depend on the way, on the number of threads or on what stood there before.
///
/// # Errors
/// [`PressFailed`]; the folder then holds what it held before.
pub fn press(
    out: &Path,
    files: &BTreeMap<Address, Vec<u8>>,
    manner: Manner,
    progress: &dyn Progress,
) -> Result<Pressed, PressFailed> {
    let place = Place::of(out)?;
    place.is_taken()?;
    let list = list_address(out)?;
    if let Some(clash) = clash(files.keys().chain([&list])) {
        return Err(PressFailed::new(out, Why::Clash(clash)));
    }
    let left = place.beside.exists();
    let work = Work::claim(&place)?;
    let done = recovered(&work, left).and_then(|recovered| {
        let pressed = write(&work, files, &list, manner, progress)?;
        Ok(Pressed { recovered, ..pressed })
    });
    let left_over = work.close();
    done.map(|pressed| Pressed { left_over, ..pressed })
}

/// Finishes or undoes what an interrupted run left of this handbook. Every bind begins with it; without leftovers it
/// only looks for them, and it never waits for another run.
///
/// # Errors
/// [`PressFailed`] if the leftovers cannot be read, moved or removed.
pub fn recover(out: &Path) -> Result<Recovered, PressFailed> {
    let Ok(place) = Place::of(out) else {
        return Ok(Recovered::Nothing);
    };
    if !place.beside.exists() {
        return Ok(Recovered::Nothing);
    }
    place.is_taken()?;
    let work = match Work::claim(&place) {
        Err(failed) if failed.why == Why::Busy => return Ok(Recovered::AtWork),
        claimed => claimed?,
    };
    let done = recovered(&work, true);
    work.close();
    done
}

/// Whether one folder is the other or stands in it, by their names alone: `a/../b` is `b`, links are not looked up, so
/// give both as absolute, resolved paths. Letter case counts only where this system's disks usually see it.
pub fn stands_inside(inner: &Path, outer: &Path) -> bool {
    let (inner, outer) = (plain(inner), plain(outer));
    inner.starts_with(outer.as_slice())
}

fn plain(path: &Path) -> Vec<String> {
    let mut parts = Vec::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir => {
                parts.pop();
            }
            part => {
                let text = part.as_os_str().to_string_lossy();
                parts.push(match system::FOLDS_CASE {
                    true => text.to_lowercase(),
                    false => text.into_owned(),
                });
            }
        }
    }
    parts
}

fn list_address(out: &Path) -> Result<Address, PressFailed> {
    Address::parse(CONTENTS).map_err(|refused| PressFailed::new(out, Why::System(refused.to_string())))
}

fn recovered(work: &Work, left: bool) -> Result<Recovered, PressFailed> {
    let settled = journal::settle(work, &system::rename_patiently)?;
    work.clear()?;
    Ok(match settled {
        journal::Settled::Finished => Recovered::Finished,
        journal::Settled::Undone => Recovered::Undone,
        journal::Settled::NoJournal if left => Recovered::Cleared,
        journal::Settled::NoJournal => Recovered::Nothing,
    })
}

fn write(
    work: &Work,
    files: &BTreeMap<Address, Vec<u8>>,
    list: &Address,
    manner: Manner,
    progress: &dyn Progress,
) -> Result<Pressed, PressFailed> {
    let out = &work.place.out;
    let is_taken = work.place.is_taken()?;
    let standing = match is_taken {
        true => Standing::of(out, manner.strangers)?,
        false => Standing::nothing(out),
    };
    let contents = Contents::of(files);
    let text = contents.to_text();
    let listed = (list, text.as_bytes());
    let plan = Plan::make(&standing, files, &contents, listed, manner.strangers)?;
    let way = match manner.way {
        _ if !is_taken || plan.is_idle() => None,
        Way::Exchange if work.can_exchange() => Some(Way::Exchange),
        Way::Exchange | Way::Journal => Some(Way::Journal),
    };
    progress.begin(plan.items.len());
    match way {
        Some(Way::Exchange) => swap::exchange(work, &plan, progress)?,
        Some(Way::Journal) => {
            journal::exchange(work, &plan, progress, &system::rename_patiently)?;
        }
        None if is_taken => plan.items.iter().for_each(|_| progress.step()),
        None => swap::place(work, &plan, progress)?,
    }
    Ok(report(plan, list, way))
}

fn report(plan: Plan, list: &Address, way: Option<Way>) -> Pressed {
    let kept = plan.named_strangers();
    let pages = plan.items.iter().filter(|item| item.address != *list);
    let count = |fate| pages.clone().filter(|item| item.fate == fate).count();
    Pressed {
        added: count(Fate::Add),
        changed: count(Fate::Change),
        same: count(Fate::Same),
        removed: plan.dropped.len(),
        restored: plan.restored,
        kept,
        set_aside: plan.aside.moves,
        way,
        ..Pressed::default()
    }
}
