//! What has to happen in a folder so that it holds the new handbook, and every file that is not ours.
//!
//! In: what stands there, the list of what an earlier bind wrote, the new files. Out: for each file whether it is the
//! same, changed or added; what goes; whose files stay, and which of those have to step aside. Reads files, changes none.

use super::Strangers;
use super::address::Address;
use super::aside::Aside;
use super::failure::{PressFailed, Why};
use super::manifest::{self, Contents, Hash};
use super::survey::{Kind, Survey, is_litter};
use super::work::address_of;
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// What has to happen to one file of the new handbook.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fate {
    /// The very bytes stand there.
    Same,
    /// A file of ours with other bytes stands there.
    Change,
    /// Nothing of ours stands there.
    Add,
}

/// One file of the new handbook.
#[derive(Clone, Debug)]
pub(super) struct Item<'a> {
    pub(super) address: Address,
    pub(super) bytes: &'a [u8],
    pub(super) hash: Hash,
    pub(super) fate: Fate,
}

/// A file, link or folder that no bind wrote.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stranger {
    pub(super) path: PathBuf,
    pub(super) kind: Kind,
}

/// All that has to happen.
#[derive(Debug)]
pub(super) struct Plan<'a> {
    /// In the order of addresses; the list of contents is the last.
    pub(super) items: Vec<Item<'a>>,
    /// Addresses of ours that the new handbook has no more, bytes as we wrote them.
    pub(super) dropped: Vec<Address>,
    /// Sorted by path.
    pub(super) strangers: Vec<Stranger>,
    /// Strangers in a page's way, and where they go.
    pub(super) aside: Aside,
    /// Addresses of ours where somebody else changed or removed the file.
    pub(super) restored: Vec<Address>,
}

/// What an earlier bind left and what stands there now.
pub(super) struct Standing {
    folder: PathBuf,
    survey: Survey,
    contents: Option<Contents>,
}

impl Standing {
    /// Looks at a folder and decides whether it is one that we may write into.
    pub(super) fn of(folder: &Path, strangers: Strangers) -> Result<Standing, PressFailed> {
        let survey = Survey::of(folder)?;
        let contents = match (Contents::read(folder), strangers) {
            (Ok(Some(contents)), _) => Some(contents),
            (Ok(None), Strangers::Refuse) if !survey.is_bare() => {
                let holds = survey.entries.into_keys();
                let holds = holds.filter(|path| path.components().count() == 1).collect();
                return Err(PressFailed::new(folder, Why::NotOurs { holds }));
            }
            (Err(failed), Strangers::Refuse) => return Err(failed),
            (Ok(None) | Err(_), _) => None,
        };
        let folder = folder.to_path_buf();
        Ok(Standing { folder, survey, contents })
    }

    /// Nothing: where the first handbook goes.
    pub(super) fn nothing(folder: &Path) -> Standing {
        Standing { folder: folder.to_path_buf(), survey: Survey::default(), contents: None }
    }

    fn kind(&self, address: &Address) -> Option<Kind> {
        self.survey.kind(&address.to_path())
    }

    fn read(&self, address: &Address) -> Result<Vec<u8>, PressFailed> {
        let path = address.within(&self.folder);
        fs::read(&path).map_err(|error| PressFailed::of_system(&path, &error))
    }

    /// All that an earlier bind wrote, but the list.
    fn wrote(&self) -> impl Iterator<Item = (&Address, &Hash)> {
        self.contents.iter().flat_map(Contents::iter)
    }

    /// The hash of what an earlier bind wrote here.
    fn hash(&self, address: &Address) -> Option<&Hash> {
        self.contents.as_ref()?.hash(address)
    }

    /// Whether an earlier bind wrote a file here, whatever became of it.
    fn is_listed(&self, address: &Address) -> bool {
        let is_list = self.contents.is_some() && address.as_str() == manifest::NAME;
        is_list || self.hash(address).is_some()
    }
}

impl<'a> Plan<'a> {
    /// Decides what has to happen; `list` is the list of these files, as text.
    pub(super) fn make(
        standing: &Standing,
        files: &'a BTreeMap<Address, Vec<u8>>,
        contents: &Contents,
        list: (&Address, &'a [u8]),
        strangers: Strangers,
    ) -> Result<Plan<'a>, PressFailed> {
        let files = files.iter().map(|(address, bytes)| (address, bytes.as_slice()));
        let files: Vec<_> = files.chain([list]).collect();
        let judged: Vec<Judged> = files
            .par_iter()
            .map(|(address, bytes)| judge(standing, contents, address, bytes))
            .collect::<Result<_, _>>()?;
        let (dropped, edited) = leaving(standing, contents)?;
        let kept = kept(standing, &judged, &edited);
        let addresses = judged.iter().map(|judged| &judged.item.address);
        let aside = Aside::choose(&standing.survey, addresses, &kept);
        if let (Strangers::Refuse, false) = (strangers, aside.moves.is_empty()) {
            let strangers = aside.moves.iter();
            let strangers = strangers.map(|(from, _)| from.to_path()).collect();
            return Err(PressFailed::new(&standing.folder, Why::InTheWay { strangers }));
        }
        let restored = judged.iter().filter(|judged| judged.meddled == Meddled::Yes);
        let restored = restored.map(|judged| judged.item.address.clone()).collect();
        Ok(Plan {
            items: judged.into_iter().map(|judged| judged.item).collect(),
            dropped,
            strangers: kept,
            aside,
            restored,
        })
    }

    /// Whether the folder holds the handbook already, to the byte.
    pub(super) fn is_idle(&self) -> bool {
        self.dropped.is_empty() && self.aside.moves.is_empty() && self.items.iter().all(|item| item.fate == Fate::Same)
    }

    /// The strangers to name to people, where they will stand: a folder once, not all that is in it; no litter.
    pub(super) fn named_strangers(&self) -> Vec<PathBuf> {
        let folders = self.strangers.iter();
        let folders = folders.filter(|stranger| stranger.kind == Kind::Folder);
        let folders: BTreeSet<&Path> = folders.map(|stranger| stranger.path.as_path()).collect();
        let in_another = |path: &Path| path.ancestors().skip(1).any(|a| folders.contains(a));
        let paths = self.strangers.iter().map(|stranger| &stranger.path);
        let paths = paths.filter(|path| !in_another(path) && !is_litter(path));
        paths.map(|path| self.aside.moved(path)).collect()
    }
}

/// Whether somebody else changed or removed a file that we wrote.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Meddled {
    No,
    Yes,
}

struct Judged<'a> {
    item: Item<'a>,
    meddled: Meddled,
}

/// Compares the bytes themselves, not the listed hash: so a bind also mends what a power cut or a person spoilt.
fn judge<'a>(
    standing: &Standing,
    contents: &Contents,
    address: &Address,
    bytes: &'a [u8],
) -> Result<Judged<'a>, PressFailed> {
    let hash = contents.hash(address).copied();
    let hash = hash.unwrap_or_else(|| blake3::hash(bytes));
    let listed = standing.is_listed(address);
    let (fate, meddled) = match standing.kind(address) {
        Some(Kind::File) => {
            let found = standing.read(address)?;
            let wrote = standing.hash(address);
            let spoilt = || wrote.is_some_and(|wrote| *wrote != blake3::hash(&found));
            match (found == bytes, listed) {
                (true, _) => (Fate::Same, Meddled::No),
                (false, true) if spoilt() => (Fate::Change, Meddled::Yes),
                (false, true) => (Fate::Change, Meddled::No),
                (false, false) => (Fate::Add, Meddled::No),
            }
        }
        _ if listed => (Fate::Add, Meddled::Yes),
        _ => (Fate::Add, Meddled::No),
    };
    let address = address.clone();
    Ok(Judged { item: Item { address, bytes, hash, fate }, meddled })
}

/// The files of ours that the new handbook has no more; and those among them that somebody has written to since, which
/// are ours no longer.
fn leaving(standing: &Standing, contents: &Contents) -> Result<(Vec<Address>, BTreeSet<Address>), PressFailed> {
    let old: Vec<_> = standing.wrote().collect();
    let gone = old
        .par_iter()
        .filter(|(address, _)| contents.hash(address).is_none() && standing.kind(address) == Some(Kind::File));
    let checked: Vec<_> = gone
        .map(|(address, hash)| {
            let found = standing.read(address)?;
            Ok(((*address).clone(), blake3::hash(&found) == **hash))
        })
        .collect::<Result<_, PressFailed>>()?;
    let (dropped, edited): (Vec<_>, Vec<_>) = checked.into_iter().partition(|(_, same)| *same);
    let addresses = |list: Vec<(Address, bool)>| list.into_iter().map(|(address, _)| address);
    Ok((addresses(dropped).collect(), addresses(edited).collect()))
}

/// All that is neither ours nor the same as a new file, nor a folder that holds ours.
fn kept(standing: &Standing, judged: &[Judged], edited: &BTreeSet<Address>) -> Vec<Stranger> {
    let items = judged.iter().map(|judged| &judged.item);
    let same = items.clone().filter(|item| item.fate == Fate::Same);
    let same: BTreeSet<&Address> = same.map(|item| &item.address).collect();
    let old = standing.wrote().map(|(address, _)| address);
    let addresses = old.chain(items.map(|item| &item.address));
    let folders: BTreeSet<&str> = addresses.flat_map(Address::folders).collect();
    let is_ours = |path: &Path, kind: Kind| {
        let Some(address) = address_of(path) else {
            return false;
        };
        match kind {
            Kind::Folder => folders.contains(address.as_str()),
            Kind::File if edited.contains(&address) => false,
            Kind::File => standing.is_listed(&address) || same.contains(&address),
            Kind::Other => false,
        }
    };
    let entries = standing.survey.entries.iter();
    let entries = entries.filter(|(path, kind)| !is_ours(path, **kind));
    let stranger = |(path, kind): (&PathBuf, &Kind)| Stranger { path: path.clone(), kind: *kind };
    entries.map(stranger).collect()
}
