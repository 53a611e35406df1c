//! `pack:` guides from elsewhere: a folder inside the guides' folder, with a `pack.yaml` that says where it came from.
//!
//! Leaves to others: what a pack needs that is not here (`proof`).

use super::common::Waiver;
use super::translation::is_translation;
use super::value::{Line, Many, Named};
use crate::source::{FileId, Folder, Node, NodeKind, Tolerant};
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};

/// A folder of guides from elsewhere: everything in the folder of this file, and in the folders inside it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Pack {
    /// Its id.
    pub pack: Named,
    /// What it is, in words: `Epee guides of the Ninebarrow club`.
    pub title: Line,
    /// Who wrote it.
    pub by: Line,
    /// Under which licence it may be used, such as `CC BY 4.0`.
    pub licence: Line,
    /// Where it was got from: an address on the net, or words such as `by mail, May 2026`.
    pub from: Option<Line>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// The folder of a file, with `/` at its end; nothing for a file at the top.
pub fn folder_of(name: &str) -> Option<&str> {
    name.rfind('/').map(|at| &name[..=at])
}

/// A guide of a pack that is left out because the club has one of its own.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Replaced {
    /// The id that both have.
    pub id: String,
    /// Where the pack's stands.
    pub file: FileId,
}

/// The trees that count.
#[derive(Debug, Default)]
pub struct Standing {
    /// The trees with their files, in the order of the files' names.
    pub trees: Vec<(FileId, Node)>,
    /// What the club's own guides stand in place of.
    pub replaced: BTreeSet<Replaced>,
}

/// The trees of a folder without what a pack brings along word for word (two packs may come with the same spring), and without
/// a pack's guides, and their translations, where the club has a guide of that kind and id of its own.
///
/// A pack's pictures are looked for in its own folder first.
pub fn standing(folder: &Folder) -> Standing {
    let name = |file: &FileId| folder.texts.get(*file).map_or("", |text| text.name.as_str());
    let packs: Vec<&str> =
        folder.trees.iter().filter(|(_, tree)| is_pack(tree)).filter_map(|(file, _)| folder_of(name(file))).collect();
    let pack_of = |file: &FileId| {
        let holding = packs.iter().filter(|pack| name(file).starts_with(**pack));
        holding.max_by_key(|pack| pack.len()).copied()
    };
    let mut known = BTreeMap::new();
    folder.trees.iter().filter(|(file, _)| pack_of(file).is_none()).for_each(|(_, tree)| note(tree, &mut known));
    let replaced: BTreeSet<Replaced> = folder
        .trees
        .iter()
        .filter(|(file, tree)| pack_of(file).is_some() && own_in_place_of(tree, &known))
        .filter_map(|(file, tree)| Some(Replaced { id: named(tree)?.1, file: *file }))
        .collect();
    let left_out = |file: FileId, tree: &Node| match is_translation(tree) {
        true => named(tree).is_some_and(|(_, id)| replaced.iter().any(|other| other.id == id)),
        false => replaced.iter().any(|other| other.file == file),
    };
    let mut trees = Vec::new();
    for (file, tree) in &folder.trees {
        match pack_of(file) {
            None => trees.push((*file, tree.clone())),
            Some(_) if left_out(*file, tree) => {}
            Some(pack) => trees.extend(fresh(tree, &mut known).map(|tree| (*file, at_home(tree, pack, folder)))),
        }
    }
    Standing { trees, replaced }
}

/// Whether the club has a guide of this kind and id that says something else.
fn own_in_place_of(tree: &Node, own: &Known) -> bool {
    let name = named(tree).filter(|(kind, _)| REPLACEABLE.contains(&kind.as_str()));
    name.and_then(|name| own.get(&name)).is_some_and(|other| !same(other, tree))
}

/// The kinds of which the club's own may stand in place of a pack's: those with a page of their own. A part or a limit that a
/// pack has otherwise is for a person to judge.
const REPLACEABLE: [&str; 5] = ["symptom", "procedure", "checklist", "circuit", "learning"];

/// Lets a pack's pictures point at files of its own folder, so that it can be unpacked anywhere.
fn at_home(mut tree: Node, pack: &str, folder: &Folder) -> Node {
    let NodeKind::Map(entries) = &mut tree.kind else { return tree };
    let pictures = entries.iter_mut().filter(|(key, _)| key.text == "pictures").map(|(_, value)| value);
    for picture in pictures.flat_map(items) {
        let NodeKind::Map(keys) = &mut picture.kind else { continue };
        for (_, file) in keys.iter_mut().filter(|(key, _)| key.text == "file") {
            let inside = file.text().map(|path| format!("{pack}{path}"));
            if let Some(inside) = inside.filter(|inside| folder.others.contains_key(inside)) {
                file.kind = NodeKind::Scalar(inside);
            }
        }
    }
    tree
}

/// The items of a list; a single value is a list of one.
fn items(node: &mut Node) -> Vec<&mut Node> {
    if matches!(node.kind, NodeKind::Map(_)) {
        return vec![node];
    }
    match &mut node.kind {
        NodeKind::List(items) => items.iter_mut().collect(),
        _ => Vec::new(),
    }
}

fn is_pack(tree: &Node) -> bool {
    tree.first_entry().is_some_and(|(key, _)| key.text == "pack")
}

/// What is defined, by the word before its id and the id.
type Known = BTreeMap<(String, String), Node>;

fn named(node: &Node) -> Option<(String, String)> {
    let (key, id) = node.first_entry()?;
    Some((key.text.clone(), id.text()?.to_owned()))
}

fn note(node: &Node, known: &mut Known) {
    if let Some(name) = named(node) {
        known.entry(name).or_insert_with(|| node.clone());
    }
    for items in lists(node) {
        items.iter().for_each(|item| note(item, known));
    }
}

/// The lists of a guide in which things with ids are defined.
fn lists(node: &Node) -> impl Iterator<Item = &Vec<Node>> {
    let entries = match &node.kind {
        NodeKind::Map(entries) => entries.as_slice(),
        _ => &[],
    };
    entries.iter().filter(|(key, _)| DEFINING.contains(&key.text.as_str())).filter_map(|(_, value)| match &value.kind {
        NodeKind::List(items) => Some(items),
        _ => None,
    })
}

const DEFINING: [&str; 4] = ["parts", "tools", "consumables", "entries"];

/// The tree without what is known word for word; nothing if all of it is.
fn fresh(tree: &Node, known: &mut Known) -> Option<Node> {
    let mut tree = tree.clone();
    if named(&tree).and_then(|name| known.get(&name)).is_some_and(|other| same(other, &tree)) {
        return None;
    }
    if let NodeKind::Map(entries) = &mut tree.kind {
        for (_, value) in entries.iter_mut().filter(|(key, _)| DEFINING.contains(&key.text.as_str())) {
            if let NodeKind::List(items) = &mut value.kind {
                let repeats =
                    |item: &Node| named(item).and_then(|name| known.get(&name)).is_some_and(|other| same(other, item));
                items.retain(|item| !repeats(item));
            }
        }
    }
    note(&tree, known);
    Some(tree)
}

/// Whether two values say the same, wherever they stand.
fn same(one: &Node, other: &Node) -> bool {
    match (&one.kind, &other.kind) {
        (NodeKind::Nothing, NodeKind::Nothing) => true,
        (NodeKind::Scalar(one), NodeKind::Scalar(other)) => one == other,
        (NodeKind::List(one), NodeKind::List(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
        }
        (NodeKind::Map(one), NodeKind::Map(other)) => {
            one.len() == other.len()
                && one
                    .iter()
                    .all(|(key, value)| other.iter().any(|(known, other)| known.text == key.text && same(value, other)))
        }
        _ => false,
    }
}
