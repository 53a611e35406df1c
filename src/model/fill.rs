//! From trees to typed guides.
//!
//! In: [`Folder`]. Out: [`Guides`] and the flaws of their shape. The first key of a file says which kind it is.
//! Leaves to others: everything that concerns more than one value (`proof`).

use super::translation::{self, Outdated, Translation, Untranslated, guide_id, is_translation};
use super::{Guides, Kind, pack};
use crate::source::{FileId, Flaw, Folder, Node, Place, What, typed};
use serde::de::DeserializeOwned;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// All guides with the words of another language, as far as there are any.
#[derive(Debug, Clone, Default)]
pub struct InLanguage {
    /// The guides.
    pub guides: Guides,
    /// The ids of those that have a translation.
    pub translated: BTreeSet<String>,
    /// For each of these: where its translation begins, and what that lacks.
    pub untranslated: BTreeMap<String, (Place, Vec<Untranslated>)>,
    /// Translations of words that a guide no longer has.
    pub outdated: Vec<Outdated>,
}

/// Fills all guides of a folder.
pub fn fill(folder: &Folder) -> (Guides, Vec<Flaw>) {
    let mut filling = Filling::default();
    let pack::Standing { trees, replaced } = pack::standing(folder);
    filling.guides.replaced = replaced;
    filling.guides.trees = Arc::new(trees);
    let trees = Arc::clone(&filling.guides.trees);
    let (translations, guides): (Vec<_>, Vec<_>) = trees.iter().partition(|(_, tree)| is_translation(tree));
    for (file, tree) in guides {
        filling.take(*file, tree);
    }
    filling.translations(folder, translations.into_iter().map(|(file, tree)| (*file, tree)));
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

/// Fills the guides again with the words of one language. Flaws are those of the translations alone.
pub fn translated(own: &Guides, language: &str) -> (InLanguage, Vec<Flaw>) {
    let translations = &own.translations;
    let mut filling = Filling::default();
    let mut spoken = InLanguage::default();
    let mut flaws = Vec::new();
    for (file, tree) in own.trees.iter().filter(|(_, tree)| !is_translation(tree)) {
        let of = |one: &&Translation| one.language == language && Some(one.of.as_str()) == guide_id(tree);
        let Some(translation) = translations.iter().find(of) else {
            filling.take(*file, tree);
            continue;
        };
        spoken.outdated.extend(translation::outdated(tree, translation));
        let (tree, laid) = translation::overlaid(tree, translation);
        filling.take(*file, &tree);
        flaws.extend(laid.flaws);
        spoken.translated.insert(translation.of.clone());
        spoken.untranslated.insert(translation.of.clone(), (translation.place, laid.untranslated));
    }
    let files: BTreeSet<FileId> = translations.iter().map(|translation| translation.file).collect();
    flaws.extend(filling.flaws.into_iter().filter(|flaw| files.contains(&flaw.place.file)));
    spoken.guides = filling.guides;
    spoken.guides.others = own.others.clone();
    (spoken, flaws)
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
            let what = What::WrongType { wanted: "a guide".into(), found: tree.described().into() };
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

    /// Translations of guides that are there, each language once.
    fn translations<'t>(&mut self, folder: &Folder, trees: impl Iterator<Item = (FileId, &'t Node)>) {
        let known: Vec<String> =
            folder.trees.iter().filter_map(|(_, tree)| guide_id(tree).map(str::to_owned)).collect();
        for (file, tree) in trees {
            let Some(read) = translation::translation(file, tree, &mut self.flaws) else { continue };
            let first = self.guides.translations.iter().find(|one| one.of == read.of && one.language == read.language);
            if let Some(first) = first {
                self.flaws.push(Flaw::new(read.place, What::SecondTranslation(first.place)));
            } else if known.contains(&read.of) {
                self.guides.translations.push(read);
            } else {
                let what = What::TranslationOfNothing { named: read.of, known: known.clone() };
                self.flaws.push(Flaw::new(read.place, what));
            }
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
            Kind::Learning => push(&mut guides.learning, file, filled(tree, flaws)),
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
