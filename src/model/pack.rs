//! `pack:` guides from elsewhere: a folder inside the guides' folder, with a `pack.yaml` that says where it came from.
//!
//! Leaves to others: what a pack needs that is not here (`proof`).

use super::common::Waiver;
use super::value::{Line, Many, Named};
use crate::source::{FileId, Folder, Node, NodeKind, Tolerant};
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

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

/// The trees of a folder without what a pack brings along word for word: two packs may come with the same spring.
pub fn without_repeats(folder: &Folder) -> Vec<(FileId, Node)> {
    let name = |file: &FileId| folder.texts.get(*file).map_or("", |text| text.name.as_str());
    let packs: Vec<&str> =
        folder.trees.iter().filter(|(_, tree)| is_pack(tree)).filter_map(|(file, _)| folder_of(name(file))).collect();
    let packed = |file: &FileId| packs.iter().any(|pack| name(file).starts_with(pack));
    let mut known = BTreeMap::new();
    folder.trees.iter().filter(|(file, _)| !packed(file)).for_each(|(_, tree)| note(tree, &mut known));
    let mut trees = Vec::new();
    for (file, tree) in &folder.trees {
        match packed(file) {
            true => trees.extend(fresh(tree, &mut known).map(|tree| (*file, tree))),
            false => trees.push((*file, tree.clone())),
        }
    }
    trees
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
