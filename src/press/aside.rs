//! Files that are not ours and stand in a page's way: where each goes.
//!
//! In: what stands in a folder, whose it is, and the addresses of the new files. Out: renames, all to free names. They are
//! written down beside before the exchange, because after it only they tell that a file of the old folder lives on under
//! another name.

use super::address::Address;
use super::plan::Stranger;
use super::survey::{Kind, Survey};
use super::work::address_of;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{MAIN_SEPARATOR_STR, Path, PathBuf};

/// From where to where files, links and folders make room. None of them stands in another.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Aside {
    pub(super) moves: Vec<(Address, Address)>,
}

impl Aside {
    /// The strangers that stand at a new file's address, in the place of a folder it needs, or in a folder of its name;
    /// with the free name that each moves to. Names that differ in case only count as the same, on every system.
    pub(super) fn choose<'a>(
        survey: &Survey,
        addresses: impl Iterator<Item = &'a Address> + Clone,
        strangers: &[Stranger],
    ) -> Aside {
        let taken = taken(strangers);
        let mut used = used(survey);
        used.extend(addresses.clone().map(Address::folded));
        let mut moves = BTreeMap::new();
        for from in addresses.flat_map(|address| obstacles(&taken, address)) {
            let free = || free_name(&from, &mut used);
            moves.entry(from.clone()).or_insert_with(free);
        }
        Aside { moves: moves.into_iter().collect() }
    }

    /// Where a stranger stands when all is done.
    pub(super) fn moved(&self, path: &Path) -> PathBuf {
        let moves = self.moves.iter();
        let mut moves = moves.filter_map(|(from, to)| {
            let rest = path.strip_prefix(from.to_path()).ok()?;
            Some(to.to_path().iter().chain(rest.iter()).collect())
        });
        moves.next().unwrap_or_else(|| path.to_path_buf())
    }

    /// Whether this is where a stranger has been moved to.
    pub(super) fn is_new_name(&self, path: &Path) -> bool {
        let mut moves = self.moves.iter();
        moves.any(|(_, to)| path.starts_with(to.to_path()))
    }

    /// A line a move.
    pub(super) fn to_text(&self) -> String {
        let moves = self.moves.iter();
        moves.map(|(from, to)| format!("{from} {to}\n")).collect()
    }

    /// The moves in such a text; lines that are none are passed over.
    pub(super) fn parse(text: &str) -> Aside {
        let address = |text| Address::parse_of_any_length(text).ok();
        let moves = text.lines().filter_map(|line| {
            let (from, to) = line.split_once(' ')?;
            Some((address(from)?, address(to)?))
        });
        Aside { moves: moves.collect() }
    }
}

/// Spellings of a name, by its lower case.
type Taken = BTreeMap<String, BTreeMap<Address, Kind>>;

/// Strangers, and the folders that hold them.
fn taken(strangers: &[Stranger]) -> Taken {
    let mut taken = Taken::new();
    for stranger in strangers {
        for (depth, path) in stranger.path.ancestors().enumerate() {
            let kind = match depth {
                0 => stranger.kind,
                _ => Kind::Folder,
            };
            if let Some(address) = address_of(path) {
                let spellings = taken.entry(address.folded()).or_default();
                spellings.entry(address).or_insert(kind);
            }
        }
    }
    taken
}

fn obstacles(taken: &Taken, address: &Address) -> Vec<Address> {
    let spellings = |name: &str| taken.get(&name.to_ascii_lowercase()).into_iter().flatten();
    let at_folders = address.folders().flat_map(spellings);
    let at_folders = at_folders.filter(|(_, kind)| **kind != Kind::Folder);
    let at_itself = spellings(address.as_str());
    let found = at_folders.chain(at_itself);
    found.map(|(address, _)| address.clone()).collect()
}

/// All names in the folder, in lower case.
fn used(survey: &Survey) -> BTreeSet<String> {
    let names = survey.entries.keys().filter_map(|path| path.to_str());
    let names = names.map(|name| name.replace(MAIN_SEPARATOR_STR, "/"));
    names.map(|name| name.to_ascii_lowercase()).collect()
}

/// `NAME.kept`, or `NAME.kept-2` and so on if that is taken.
fn free_name(from: &Address, used: &mut BTreeSet<String>) -> Address {
    let mut name = format!("{from}.kept");
    for number in 2.. {
        if used.insert(name.to_ascii_lowercase()) {
            break;
        }
        name = format!("{from}.kept-{number}");
    }
    Address::parse_of_any_length(&name).expect("an address with letters at its end is one")
}
