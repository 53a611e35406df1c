//! Guides from elsewhere: which guide belongs to which pack, what a pack needs that is not here, and where packs disagree.
//!
//! In: the guides, what references did not find. Out: one finding a pack with the entries to add, and the same as files for
//! `proof --mend`. A limit is never proposed: its figure must come from the rule book, not from a program.

use super::finding::Finding;
use super::findings::packs as words;
use super::index::{Thing, why_no_id};
use crate::model::{Guides, Id, Kind, Pack, folder_of};
use crate::source::{FileId, Place, Texts};
use serde::Serialize;
use std::collections::BTreeMap;

/// A file that would give a pack what it needs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mend {
    /// Its name inside the guides' folder.
    pub file: String,
    /// What would stand in it.
    pub text: String,
}

/// The packs of a handbook by their folders.
#[derive(Debug)]
pub struct Packs<'g> {
    folders: Vec<(String, &'g Pack)>,
    texts: &'g Texts,
}

/// What packs need that is not here: by the pack's id, each thing with the place that asks for it first.
pub type Lacking = BTreeMap<String, BTreeMap<(Thing, String), Place>>;

impl<'g> Packs<'g> {
    /// The packs among these guides.
    pub fn of(guides: &'g Guides, texts: &'g Texts) -> Packs<'g> {
        let name = |file: &FileId| texts.get(*file).map_or("", |text| text.name.as_str());
        let folders = guides.packs.iter().filter_map(|(file, pack)| Some((folder_of(name(file))?.to_owned(), pack)));
        Packs { folders: folders.collect(), texts }
    }

    /// The pack that a file belongs to: the one of the innermost folder.
    pub fn of_file(&self, file: FileId) -> Option<&'g Pack> {
        let name = &self.texts.get(file)?.name;
        let holding = self.folders.iter().filter(|(folder, _)| name.starts_with(folder.as_str()));
        holding.max_by_key(|(folder, _)| folder.len()).map(|(_, pack)| *pack)
    }

    /// The pack with this id.
    fn pack(&self, id: &str) -> Option<&'g Pack> {
        self.folders.iter().map(|(_, pack)| *pack).find(|pack| pack.pack.value.as_str() == id)
    }
}

/// Whether a pack may leave a thing to the club: what stands in its lists.
pub fn is_left_to_the_club(thing: Thing) -> bool {
    use Thing::{Consumable, Guide, Limit, Part, Tool, Word};
    matches!(thing, Part | Tool | Consumable | Limit | Word | Guide(Kind::Circuit))
}

/// One finding for all that a pack needs, and the files that would mend it.
pub fn needs(packs: &Packs<'_>, lacking: &Lacking, findings: &mut Vec<Finding>) -> Vec<Mend> {
    let mut mends = Vec::new();
    for (id, things) in lacking {
        let Some(pack) = packs.pack(id) else { continue };
        // An id that cannot be one is no name for a file either: it could lead out of the folder.
        let files = if why_no_id(id).is_none() { files(pack, things) } else { Vec::new() };
        let by_hand: Vec<&(Thing, String)> =
            things.keys().filter(|(thing, _)| matches!(thing, Thing::Limit | Thing::Guide(_))).collect();
        findings.push(words::needs(pack, things, &files, &by_hand));
        mends.extend(files);
    }
    mends
}

/// A pack's `pack.yaml` at the top would make everything a pack.
pub fn at_the_top(guides: &Guides, texts: &Texts, findings: &mut Vec<Finding>) {
    for (file, pack) in &guides.packs {
        if texts.get(*file).is_some_and(|text| folder_of(&text.name).is_none()) {
            findings.push(words::at_the_top(&pack.pack));
        }
    }
}

/// Where one of two things with the same id comes from a pack, the finding shows both.
pub fn disagree(packs: &Packs<'_>, findings: &mut [Finding]) {
    for finding in findings.iter_mut().filter(|finding| finding.code == super::Code::DuplicateId) {
        let Some((first, _)) = finding.also.first().cloned() else { continue };
        let name = |place: Place| packs.of_file(place.file).map(|pack| pack.title.value.as_str());
        if name(finding.place).is_some() || name(first).is_some() {
            let shown = |place: Place| (name(place).unwrap_or("your own guides"), definition(packs.texts, place));
            let id = packs.texts.at(finding.place).to_owned();
            *finding = words::disagree(&id, finding.place, first, shown(finding.place), shown(first));
        }
    }
}

/// Most lines of a definition that are shown.
const SHOWN: usize = 8;

/// What stands at an id in the file: its line and those that belong to it.
fn definition(texts: &Texts, place: Place) -> String {
    let Some(text) = texts.get(place.file) else { return String::new() };
    let mut lines = text.text.lines().skip((place.line as usize).saturating_sub(1));
    let first = lines.next().unwrap_or("");
    let indent = |line: &str| line.len() - line.trim_start().len();
    let own = indent(first);
    let more = lines.take_while(|line| !line.trim().is_empty() && indent(line) > own).take(SHOWN - 1);
    let cut = |line: &str| line.get(own..).unwrap_or(line).trim_end().to_owned();
    std::iter::once(cut(first)).chain(more.map(cut)).collect::<Vec<_>>().join("\n")
}

#[derive(Serialize)]
struct StoresFile {
    stores: String,
    title: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    parts: Vec<BTreeMap<&'static str, String>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    tools: Vec<BTreeMap<&'static str, String>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    consumables: Vec<BTreeMap<&'static str, String>>,
}

#[derive(Serialize)]
struct WordsFile {
    words: String,
    title: String,
    entries: Vec<BTreeMap<&'static str, String>>,
}

fn files(pack: &Pack, things: &BTreeMap<(Thing, String), Place>) -> Vec<Mend> {
    let name = format!("needed-by-{}", pack.pack.value);
    let title = format!("Needed by: {}", pack.title.value);
    let of = |wanted: Thing, key: &'static str| -> Vec<BTreeMap<&'static str, String>> {
        let ids = things.keys().filter(|(thing, _)| *thing == wanted).map(|(_, id)| id);
        ids.map(|id| entry(key, id, pack)).collect()
    };
    let stores = StoresFile {
        stores: name.clone(),
        title: title.clone(),
        parts: of(Thing::Part, "part"),
        tools: of(Thing::Tool, "tool"),
        consumables: of(Thing::Consumable, "consumable"),
    };
    let words = WordsFile { words: format!("{name}-words"), title, entries: of(Thing::Word, "word") };
    let mut files = Vec::new();
    if !(stores.parts.is_empty() && stores.tools.is_empty() && stores.consumables.is_empty()) {
        files.push(Mend { file: format!("{name}.yaml"), text: yaml(&stores) });
    }
    if !words.entries.is_empty() {
        files.push(Mend { file: format!("{name}-words.yaml"), text: yaml(&words) });
    }
    files
}

/// An entry that says honestly that nobody has looked it up yet.
fn entry(key: &'static str, id: &str, pack: &Pack) -> BTreeMap<&'static str, String> {
    let says = match key {
        "word" => format!("Used by “{}”; not explained here yet", pack.title.value),
        _ => format!("Needed by “{}”; not looked up here yet", pack.title.value),
    };
    let mut entry = BTreeMap::from([(key, id.to_owned()), ("title", Id(id.to_owned()).spoken()), ("says", says)]);
    if key == "consumable" {
        // As long as nobody has read the bottle's label, a step that uses it needs a warning.
        entry.insert("hazards", "not looked up yet".to_owned());
        entry.insert("signal", "warning".to_owned());
    }
    entry
}

fn yaml(file: &impl Serialize) -> String {
    // Texts under fixed keys: they always serialise.
    serde_yaml::to_string(file).unwrap_or_default()
}
