//! From trees to typed guides.
//!
//! In: [`Folder`]. Out: [`Guides`] and the flaws of their shape. The first key of a file says which kind it is.
//! Leaves to others: everything that concerns more than one value (`proof`).

use super::{Guides, Kind};
use crate::source::{FileId, Flaw, Folder, Node, Place, What, typed};
use serde::de::DeserializeOwned;

/// Fills all guides of a folder.
pub fn fill(folder: &Folder) -> (Guides, Vec<Flaw>) {
    let mut filling = Filling::default();
    for (file, tree) in &folder.trees {
        filling.take(*file, tree);
    }
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
            let what = What::WrongType { wanted: "a guide: keys with values".into(), found: tree.described().into() };
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

    fn fill_kind(&mut self, kind: Kind, file: FileId, tree: &Node) -> bool {
        let Filling { guides, flaws, .. } = self;
        match kind {
            Kind::Handbook if guides.handbook.is_none() => {
                guides.handbook = filled(tree, flaws).map(|guide| (file, guide));
                guides.handbook.is_some()
            }
            Kind::Handbook => {
                let what = What::BadValue("there is a handbook file already".into());
                flaws.push(Flaw::new(tree.place, what));
                true
            }
            Kind::Symptom => push(&mut guides.symptoms, file, filled(tree, flaws)),
            Kind::Procedure => push(&mut guides.procedures, file, filled(tree, flaws)),
            Kind::Checklist => push(&mut guides.checklists, file, filled(tree, flaws)),
            Kind::Circuit => push(&mut guides.circuits, file, filled(tree, flaws)),
            Kind::Stores => push(&mut guides.stores, file, filled(tree, flaws)),
            Kind::Limits => push(&mut guides.limits, file, filled(tree, flaws)),
            Kind::Words => push(&mut guides.words, file, filled(tree, flaws)),
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
