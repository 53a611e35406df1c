//! What nothing leads to: guides, stores and pictures that nobody would miss, or would never find.

use super::references::Reference;
use crate::model::{Guides, Kind, Named};
use crate::proof::finding::Finding;
use crate::proof::findings::{ids, pictures, stores};
use crate::proof::index::{Index, Thing};
use crate::proof::packs::Packs;
use crate::proof::walk::{self, GuideRef};
use crate::source::{Texts, Tolerant};
use std::collections::BTreeSet;

/// Checks that everything is reached.
pub fn check(guides: &Guides, index: &Index, texts: &Texts, references: &[Reference], findings: &mut Vec<Finding>) {
    let used: BTreeSet<(Thing, &str)> = references
        .iter()
        .filter(|reference| reference.from.1 != reference.to.1)
        .map(|reference| (reference.to.0, reference.to.1.as_str()))
        .collect();
    let with_kit = with_kit(guides, index);
    for guide in walk::guides(guides) {
        let id = guide.id.value.as_str();
        let listed = !matches!(guide.kind, Kind::Procedure | Kind::Checklist | Kind::Circuit) || with_kit.contains(id);
        if !listed && !used.contains(&(Thing::Guide(guide.kind), id)) {
            findings.push(ids::unreachable(guide.id));
        }
        findings.extend(misnamed(guide, texts));
    }
    // What a pack brings along is not the club's to tidy up.
    let packs = Packs::of(guides, texts);
    for thing in [Thing::Part, Thing::Tool, Thing::Consumable] {
        let idle = index.all(thing).filter(|entry| !used.contains(&(thing, entry.named.value.as_str())));
        let idle = idle.filter(|entry| packs.of_file(entry.file).is_none());
        findings.extend(idle.map(|entry| stores::unused(&entry.named, thing.noun())));
    }
    let idle = index.all(Thing::Picture).filter(|entry| !used.contains(&(Thing::Picture, entry.named.value.as_str())));
    findings.extend(idle.map(|entry| pictures::unused(&entry.named)));
}

/// Guides of an item of the club's; of any item where the list of items could not be read.
fn with_kit<'g>(guides: &'g Guides, index: &Index) -> BTreeSet<&'g str> {
    let known: BTreeSet<&str> = guides
        .handbook
        .iter()
        .flat_map(|(_, handbook)| handbook.kit.iter().filter_map(Tolerant::sound).map(|item| item.item.value.as_str()))
        .collect();
    let listed =
        |kit: &Option<Named>| kit.as_ref().is_some_and(|kit| !index.knows_kit() || known.contains(kit.value.as_str()));
    let procedures = guides.procedures.iter().filter(|(_, g)| listed(&g.kit)).map(|(_, g)| g.procedure.value.as_str());
    let checklists = guides.checklists.iter().filter(|(_, g)| listed(&g.kit)).map(|(_, g)| g.checklist.value.as_str());
    let circuits = guides.circuits.iter().filter(|(_, g)| listed(&g.kit)).map(|(_, g)| g.circuit.value.as_str());
    procedures.chain(checklists).chain(circuits).collect()
}

fn misnamed(guide: GuideRef<'_>, texts: &Texts) -> Option<Finding> {
    let name = &texts.get(guide.file)?.name;
    let stem = name.rsplit('/').next().unwrap_or(name).rsplit_once('.').map_or(name.as_str(), |(stem, _)| stem);
    let fits = matches!(guide.kind, Kind::Handbook | Kind::Pack) || stem == guide.id.value.as_str();
    (!fits).then(|| ids::file_name(guide.id, name))
}
