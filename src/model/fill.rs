//! From trees to typed guides.
//!
//! In: [`Folder`]. Out: [`Guides`] and the flaws of their shape. The first key of a file says which kind it is.
//! Leaves to others: everything that concerns more than one value (`proof`).

use super::{Guides, Kind, pack};
use crate::source::{FileId, Flaw, Folder, Node, Place, What, typed};
use serde::de::DeserializeOwned;
use std::collections::BTreeSet;

/// Fills all guides of a folder.
pub fn fill(folder: &Folder) -> (Guides, Vec<Flaw>) {
    let mut filling = Filling::default();
    for (file, tree) in &pack::without_repeats(folder) {
        filling.take(*file, tree);
    }
    filling.unread(folder);
    for name in folder.others.keys() {
        filling.guides.others.insert(name.clone());
    }
    let missing = filling.guides.handbook.is_none() && !filling.handbook_broken;
    if missing {
        let first = folder.texts.iter().next().map_or(FileId(0), |(file, _)| file);
        filling.flaws.push(Flaw::new(Place::top(first), What::NoHandbook));
    }
    (filling.guides, filling.flaws)
}

#[derive(Default)]
struct Filling {
    guides: Guides,
    flaws: Vec<Flaw>,
    handbook_broken: bool,
}

impl Filling {
    fn take(&mut self, file: FileId, tree: &Node) {
        let Some((key, value)) = tree.first_entry() else {
            let what = What::WrongType { wanted: "a guide with keys".into(), found: tree.described().into() };
            return self.flaws.push(Flaw::new(tree.place, what));
        };
        let Some(kind) = Kind::of(&key.text) else {
            return self.flaws.push(Flaw::new(key.place, What::UnknownKind(key.text.clone())));
        };
        if !self.fill_kind(kind, file, tree) {
            self.guides.broken.extend(value.text().map(str::to_owned));
            self.handbook_broken |= kind == Kind::Handbook;
        }
    }

    /// Guides without a tree: what points at them is not called unknown. Their ids stand in their first lines or in their names.
    fn unread(&mut self, folder: &Folder) {
        let trees: BTreeSet<FileId> = folder.trees.iter().map(|(file, _)| *file).collect();
        for (_, text) in folder.texts.iter().filter(|(file, _)| !trees.contains(file)) {
            let stem = text.name.rsplit('/').next().and_then(|name| name.rsplit_once('.')).map(|(stem, _)| stem);
            self.guides.broken.extend(stem.map(str::to_owned));
            let first = text.text.lines().find_map(|line| {
                let (key, id) = line.split_once(':')?;
                Kind::of(key.trim()).map(|kind| (kind, id.trim().to_owned()))
            });
            self.handbook_broken |= stem == Some("handbook") || matches!(first, Some((Kind::Handbook, _)));
            self.guides.broken.extend(first.map(|(_, id)| id));
        }
    }

    fn fill_kind(&mut self, kind: Kind, file: FileId, tree: &Node) -> bool {
        let Filling { guides, flaws, .. } = self;
        match kind {
            Kind::Handbook if guides.handbook.is_none() => {
                guides.handbook = filled(tree, flaws).map(|guide| (file, guide));
                guides.handbook.is_some()
            }
            Kind::Handbook => {
                let first = guides.handbook.as_ref().map(|(_, first)| first.handbook.place);
                let at = tree.first_entry().map_or(tree.place, |(_, id)| id.place);
                flaws.extend(first.map(|first| Flaw::new(at, What::SecondHandbook(first))));
                true
            }
            Kind::Symptom => push(&mut guides.symptoms, file, filled(tree, flaws)),
            Kind::Procedure => push(&mut guides.procedures, file, filled(tree, flaws)),
            Kind::Checklist => push(&mut guides.checklists, file, filled(tree, flaws)),
            Kind::Circuit => push(&mut guides.circuits, file, filled(tree, flaws)),
            Kind::Stores => push(&mut guides.stores, file, filled(tree, flaws)),
            Kind::Limits => push(&mut guides.limits, file, filled(tree, flaws)),
            Kind::Words => push(&mut guides.words, file, filled(tree, flaws)),
            Kind::Pack => push(&mut guides.packs, file, filled(tree, flaws)),
        }
    }
}

fn filled<T: DeserializeOwned>(tree: &Node, flaws: &mut Vec<Flaw>) -> Option<T> {
    let (guide, more) = typed(tree);
    flaws.extend(more);
    guide
}

fn push<T>(list: &mut Vec<(FileId, T)>, file: FileId, guide: Option<T>) -> bool {
    let sound = guide.is_some();
    list.extend(guide.map(|guide| (file, guide)));
    sound
}
