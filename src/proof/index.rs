//! What there is to point at: every guide, part, tool, consumable, limit, word and picture by its id.
//!
//! In: [`Guides`]. Out: [`Index`], with the findings about ids that cannot be or that are taken.
//! Guides share one namespace over all kinds; parts, tools, consumables, limits, words and pictures have one each.

use super::finding::Finding;
use super::findings::ids;
use crate::model::prose::LinkKind;
use crate::model::{Guides, Kind, Named, built_in_places};
use crate::source::{FileId, Place, Tolerant};
use std::collections::{BTreeMap, BTreeSet};

/// A kind of thing that has an id.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thing {
    /// A guide.
    Guide(Kind),
    /// A part.
    Part,
    /// A tool.
    Tool,
    /// A consumable.
    Consumable,
    /// A limit.
    Limit,
    /// A word.
    Word,
    /// A picture.
    Picture,
    /// An item of kit.
    Item,
}

/// What may be pointed at in some place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wanted {
    /// One kind of thing.
    One(Thing),
    /// Any guide with a page of its own.
    AnyGuide,
}

impl Thing {
    /// The thing as a noun.
    pub fn noun(self) -> &'static str {
        match self {
            Thing::Guide(Kind::Symptom) => "fault-finding guide",
            Thing::Guide(Kind::Procedure) => "job",
            Thing::Guide(Kind::Checklist) => "checklist",
            Thing::Guide(Kind::Circuit) => "circuit",
            Thing::Guide(Kind::Handbook) => "handbook",
            Thing::Guide(Kind::Stores) => "stores list",
            Thing::Guide(Kind::Limits) => "limits list",
            Thing::Guide(Kind::Words) => "words list",
            Thing::Guide(Kind::Pack) => "pack",
            Thing::Guide(Kind::Learning) => "way to learn",
            Thing::Part => "part",
            Thing::Tool => "tool",
            Thing::Consumable => "consumable",
            Thing::Limit => "limit",
            Thing::Word => "word",
            Thing::Picture => "picture",
            Thing::Item => "item of kit",
        }
    }
}

impl Wanted {
    /// As a noun.
    pub fn noun(self) -> &'static str {
        match self {
            Wanted::One(thing) => thing.noun(),
            Wanted::AnyGuide => "guide",
        }
    }

    /// With its article.
    pub fn words(self) -> String {
        let noun = self.noun();
        let article = if noun.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
        format!("{article} {noun}")
    }

    /// Whether a thing will do.
    pub fn takes(self, thing: Thing) -> bool {
        match self {
            Wanted::One(one) => one == thing,
            Wanted::AnyGuide => {
                matches!(thing, Thing::Guide(Kind::Symptom | Kind::Procedure | Kind::Checklist | Kind::Circuit))
            }
        }
    }
}

impl From<LinkKind> for Thing {
    fn from(kind: LinkKind) -> Thing {
        match kind {
            LinkKind::Guide(kind) => Thing::Guide(kind),
            LinkKind::Part => Thing::Part,
            LinkKind::Tool => Thing::Tool,
            LinkKind::Consumable => Thing::Consumable,
            LinkKind::Limit => Thing::Limit,
            LinkKind::Word => Thing::Word,
        }
    }
}

/// Something with an id.
#[derive(Debug, Clone)]
pub struct Entry {
    /// The id where it is given.
    pub named: Named,
    /// What people call it.
    pub title: String,
    /// The file.
    pub file: FileId,
}

/// Everything that has an id.
#[derive(Debug, Clone, Default)]
pub struct Index {
    entries: BTreeMap<Thing, BTreeMap<String, Entry>>,
    places: BTreeMap<String, Vec<String>>,
    broken: BTreeSet<String>,
    kit_is_read: bool,
}

impl Index {
    /// The entry of a thing.
    pub fn get(&self, thing: Thing, id: &str) -> Option<&Entry> {
        self.entries.get(&thing)?.get(id)
    }

    /// Whether an id belongs to something that is there but could not be read.
    pub fn is_broken(&self, id: &str) -> bool {
        self.broken.contains(id)
    }

    /// Whether there is a list of the club's items at all: without one no item can be called unknown.
    pub fn knows_kit(&self) -> bool {
        self.kit_is_read
    }

    /// What has this id, whatever it is; guides first.
    pub fn anything(&self, id: &str) -> Option<(Thing, &Entry)> {
        self.entries.iter().find_map(|(thing, entries)| entries.get(id).map(|entry| (*thing, entry)))
    }

    /// The guide with this id.
    pub fn guide(&self, id: &str) -> Option<(Kind, &Entry)> {
        Kind::ALL.into_iter().find_map(|kind| self.get(Thing::Guide(kind), id).map(|entry| (kind, entry)))
    }

    /// All ids that will do for what is wanted.
    pub fn ids(&self, wanted: Wanted) -> Vec<&str> {
        let fitting = self.entries.iter().filter(|(thing, _)| wanted.takes(**thing));
        fitting.flat_map(|(_, entries)| entries.keys().map(String::as_str)).collect()
    }

    /// Every entry of one kind of thing, by id.
    pub fn all(&self, thing: Thing) -> impl Iterator<Item = &Entry> {
        self.entries.get(&thing).into_iter().flat_map(|entries| entries.values())
    }

    /// The places of an item of kit; empty for an item that nobody described.
    pub fn places(&self, item: &str) -> Vec<&str> {
        match self.places.get(item) {
            Some(places) => places.iter().map(String::as_str).collect(),
            None => built_in_places(item).unwrap_or(&[]).to_vec(),
        }
    }
}

/// Makes the index.
pub fn index(guides: &Guides, findings: &mut Vec<Finding>) -> Index {
    let mut making = Making { index: Index { broken: guides.broken.clone(), ..Index::default() }, findings };
    making.guides(guides);
    making.stores(guides);
    making.rest(guides);
    making.index
}

struct Making<'f> {
    index: Index,
    findings: &'f mut Vec<Finding>,
}

impl Making<'_> {
    fn guides(&mut self, guides: &Guides) {
        for (file, guide) in &guides.symptoms {
            self.guide(Kind::Symptom, *file, &guide.symptom, &guide.title.value);
        }
        for (file, guide) in &guides.procedures {
            self.guide(Kind::Procedure, *file, &guide.procedure, &guide.title.value);
        }
        for (file, guide) in &guides.checklists {
            self.guide(Kind::Checklist, *file, &guide.checklist, &guide.title.value);
        }
        for (file, guide) in &guides.circuits {
            self.guide(Kind::Circuit, *file, &guide.circuit, &guide.title.value);
        }
        for (file, guide) in &guides.stores {
            self.guide(Kind::Stores, *file, &guide.stores, &guide.title.value);
        }
        for (file, guide) in &guides.limits {
            self.guide(Kind::Limits, *file, &guide.limits, &guide.title.value);
        }
        for (file, guide) in &guides.words {
            self.guide(Kind::Words, *file, &guide.words, &guide.title.value);
        }
        for (file, guide) in &guides.packs {
            self.guide(Kind::Pack, *file, &guide.pack, &guide.title.value);
        }
        for (file, guide) in &guides.learning {
            self.guide(Kind::Learning, *file, &guide.learning, &guide.title.value);
        }
    }

    fn stores(&mut self, guides: &Guides) {
        for (file, stores) in &guides.stores {
            for part in self.sound(&stores.parts) {
                self.enter(Thing::Part, *file, &part.part, &part.title.value);
            }
            for tool in self.sound(&stores.tools) {
                self.enter(Thing::Tool, *file, &tool.tool, &tool.title.value);
            }
            for consumable in self.sound(&stores.consumables) {
                self.enter(Thing::Consumable, *file, &consumable.consumable, &consumable.title.value);
            }
        }
    }

    fn rest(&mut self, guides: &Guides) {
        for (file, limits) in &guides.limits {
            for limit in self.sound(&limits.entries) {
                self.enter(Thing::Limit, *file, &limit.limit, &limit.title.value);
            }
        }
        for (file, words) in &guides.words {
            for word in self.sound(&words.entries) {
                let title =
                    word.title.as_ref().map_or_else(|| word.word.value.0.replace('-', " "), |t| t.value.clone());
                self.enter(Thing::Word, *file, &word.word, &title);
            }
        }
        for (file, pictures) in super::walk::pictures(guides) {
            for picture in self.sound(pictures) {
                let title = picture.alt.as_ref().map_or("", |alt| alt.value.as_str());
                self.enter(Thing::Picture, file, &picture.picture, title);
            }
        }
        self.kit(guides);
    }

    fn kit(&mut self, guides: &Guides) {
        let Some((file, handbook)) = &guides.handbook else { return };
        self.index.kit_is_read = true;
        for item in self.sound(&handbook.kit) {
            let title = item.title.as_ref().map_or_else(|| item.item.value.spoken(), |title| title.value.clone());
            self.enter(Thing::Item, *file, &item.item, &title);
            if !item.places.is_empty() {
                let places = item.places.iter().map(|place| place.value.0.clone()).collect();
                self.index.places.insert(item.item.value.0.clone(), places);
            }
        }
    }

    /// The sound items of a list; the names of the broken ones are kept, so that what points at them is not called unknown.
    fn sound<'a, T>(&mut self, items: &'a [Tolerant<T>]) -> Vec<&'a T> {
        self.index.broken.extend(items.iter().filter_map(Tolerant::broken).map(str::to_owned));
        items.iter().filter_map(Tolerant::sound).collect()
    }

    fn guide(&mut self, kind: Kind, file: FileId, named: &Named, title: &str) {
        let lower = named.value.0.to_lowercase();
        let taken = Kind::ALL.into_iter().filter(|other| *other != kind).find_map(|other| {
            let others = self.index.entries.get(&Thing::Guide(other))?;
            others.values().find(|entry| entry.named.value.0.to_lowercase() == lower).map(|entry| entry.named.place)
        });
        match taken {
            Some(first) => self.findings.push(ids::duplicate_id(named, first)),
            None => self.enter(Thing::Guide(kind), file, named, title),
        }
    }

    fn enter(&mut self, thing: Thing, file: FileId, named: &Named, title: &str) {
        if let Some(why) = why_no_id(named.value.as_str()) {
            self.findings.push(ids::bad_id(named, why));
        }
        let entries = self.index.entries.entry(thing).or_default();
        match taken(entries, named.value.as_str()) {
            Some(first) => self.findings.push(ids::duplicate_id(named, first)),
            None => {
                let entry = Entry { named: named.clone(), title: title.to_owned(), file };
                entries.insert(named.value.0.clone(), entry);
            }
        }
    }
}

fn taken(entries: &BTreeMap<String, Entry>, id: &str) -> Option<Place> {
    let exact = entries.get(id).map(|entry| entry.named.place);
    let lower = id.to_lowercase();
    exact.or_else(|| {
        let odd = |entry: &&Entry| entry.named.value.0.to_lowercase() == lower;
        lower.bytes().any(|b| b.is_ascii_alphabetic()).then(|| entries.values().find(odd))?.map(|e| e.named.place)
    })
}

/// Most letters of an id. `pt-BR/faults/GUIDE/PROBE-12345678.html` with two of them still is an address that every system opens.
const LONGEST_ID: usize = 60;

/// Why a text cannot be an id; `None` when it can.
pub fn why_no_id(id: &str) -> Option<&'static str> {
    let sound = |letter: char| letter.is_ascii_alphanumeric() || letter == '-';
    match id {
        "" => Some("it is empty"),
        _ if id.len() > LONGEST_ID => Some("it is longer than 60 letters"),
        _ if !id.chars().all(sound) => Some("only letters, digits, hyphens"),
        _ if id.starts_with('-') || id.ends_with('-') || id.contains("--") => Some("a hyphen stands alone"),
        _ if reserved(id) => Some("Windows keeps that name"),
        "index" | "otherwise" => Some("the program uses that name"),
        _ => None,
    }
}

/// Names that Windows gives to devices, whatever their case.
pub fn reserved(id: &str) -> bool {
    let lower = id.to_ascii_lowercase();
    let numbered = |stem: &str| {
        lower.strip_prefix(stem).is_some_and(|rest| rest.len() == 1 && rest.bytes().all(|b| b.is_ascii_digit()))
    };
    matches!(lower.as_str(), "con" | "prn" | "aux" | "nul") || numbered("com") || numbered("lpt")
}

#[cfg(test)]
mod tests {
    use super::why_no_id;

    #[test]
    fn ids_are_safe_as_file_names_everywhere() {
        for good in ["foil-stays-lit", "M6", "con-tact", "com10", "a"] {
            assert_eq!(why_no_id(good), None, "{good}");
        }
        for bad in ["", "-a", "a-", "a--b", "a b", "a/b", "..", "NUL", "com0", "com1", "LPT9", "é", "a.b"] {
            assert!(why_no_id(bad).is_some(), "{bad}");
        }
    }
}
