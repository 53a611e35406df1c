//! The front page, the pages of the items of kit, and the page *By what the lamp does*.

use super::laying::{Laying, markdown};
use super::page::{
    Body, ChainPlace, Front, Kit, KitRows, LampDoors, LampGroup, LampShown, Lamps, LimitRow, Link, Page, SymptomRow,
};
use super::{addresses, frame, lessons, places};
use crate::model::{self, LampState, Named};
use crate::proof::Thing;
use crate::proof::cases::sound;

/// How many jobs the front page names; the rest stand on their own page.
const JOBS_IN_FRONT: usize = 6;

/// The items that the handbook keeps, in its order.
pub fn items<'a>(laying: &Laying<'a>) -> Vec<&'a str> {
    let handbook = laying.proofed.guides.handbook.as_ref();
    handbook
        .map_or_else(Vec::new, |(_, file)| sound(&file.kit).into_iter().map(|item| item.item.value.as_str()).collect())
}

/// The fault-finding guides with their rows, in their order.
pub type Faults<'a> = [(&'a model::Symptom, SymptomRow)];

/// The front page.
pub fn front_page(laying: &Laying<'_>, faults: &Faults<'_>, doors: &[LampDoors]) -> Page {
    let guides = &laying.proofed.guides;
    let handbook = guides.handbook.as_ref().map(|(_, file)| file);
    let front = Front {
        says: handbook.and_then(|file| markdown(file.says.as_ref())),
        chain: chain(laying),
        kits: items(laying)
            .into_iter()
            .map(|item| kit_rows(laying, faults, item))
            .filter(|kit| !kit.symptoms.is_empty())
            .collect(),
        lamps: lamp_groups(faults),
        doors: doors.to_vec(),
        jobs: guides.procedures.iter().take(JOBS_IN_FRONT).map(|(_, guide)| laying.job_row(guide)).collect(),
        checks: guides.checklists.iter().map(|(_, guide)| laying.check_row(guide)).collect(),
    };
    frame::page(addresses::FRONT, "kind-front", "", Body::Front(front))
}

/// The places of the chain drawing, in the order of the line, with what leads there.
fn chain(laying: &Laying<'_>) -> Vec<ChainPlace> {
    const PLACES: [(&str, &[&str]); 9] = [
        ("weapon", &["foil", "epee", "sabre"]),
        ("body-cord", &["body-cord"]),
        ("jacket", &["jacket"]),
        ("mask", &["mask", "mask-cord"]),
        ("reel", &["reel"]),
        ("floor-cable", &["floor-cable", "reel"]),
        ("apparatus", &["apparatus"]),
        ("tester", &["tester"]),
        ("meter", &["meter", "tester"]),
    ];
    let kept = items(laying);
    let leads = |wanted: &[&str]| wanted.iter().find(|item| kept.contains(item)).map(|item| addresses::kit(item));
    PLACES.map(|(place, wanted)| ChainPlace { place, address: leads(wanted) }).into()
}

fn kit_rows(laying: &Laying<'_>, faults: &Faults<'_>, item: &str) -> KitRows {
    KitRows {
        item: item.to_owned(),
        title: laying.item_title(item),
        address: addresses::kit(item),
        symptoms: symptoms(faults, item),
    }
}

fn symptoms(faults: &Faults<'_>, item: &str) -> Vec<SymptomRow> {
    let of_item = faults.iter().filter(|(guide, _)| guide.kit.value.as_str() == item);
    of_item.map(|(_, row)| row.clone()).collect()
}

fn lamp_groups(faults: &Faults<'_>) -> Vec<LampGroup> {
    let groups = [
        ("always-lit", Some(LampState::Lit)),
        ("never-lit", Some(LampState::Dark)),
        ("comes-and-goes", Some(LampState::ComesAndGoes)),
        ("other", None),
    ];
    let rows = || faults.iter().map(|(_, row)| row);
    groups
        .into_iter()
        .map(|(group, lamp)| LampGroup {
            group,
            lamp,
            address: format!("{}#{group}", addresses::LAMPS),
            symptoms: rows().filter(|row| group_of(&row.lamps) == group).cloned().collect(),
        })
        .filter(|group| !group.symptoms.is_empty())
        .collect()
}

/// What all the lamps of a symptom have in common.
fn group_of(lamps: &[LampShown]) -> &'static str {
    let all = |state| !lamps.is_empty() && lamps.iter().all(|lamp| lamp.state == state);
    // A lamp that burns at a certain hit does not burn always.
    let at_a_hit = lamps.iter().any(|lamp| lamp.when == "in-position");
    match () {
        () if lamps.iter().any(|lamp| lamp.state == LampState::ComesAndGoes) => "comes-and-goes",
        () if all(LampState::Lit) && !at_a_hit => "always-lit",
        () if all(LampState::Dark) => "never-lit",
        () => "other",
    }
}

/// By what the lamp does.
pub fn lamps_page(laying: &Laying<'_>, faults: &Faults<'_>, doors: &[LampDoors]) -> Page {
    let how = items(laying).into_iter().flat_map(|item| lessons::links(laying, item)).collect();
    frame::page(
        addresses::LAMPS,
        "kind-lamps",
        "",
        Body::Lamps(Lamps { groups: lamp_groups(faults), how, doors: doors.to_vec() }),
    )
}

/// The pages of the items of kit.
pub fn kit_pages(laying: &Laying<'_>, faults: &Faults<'_>) -> Vec<Page> {
    items(laying).into_iter().map(|item| kit_page(laying, faults, item)).collect()
}

fn kit_page(laying: &Laying<'_>, faults: &Faults<'_>, item: &str) -> Page {
    let guides = &laying.proofed.guides;
    let here = |kit: &Option<Named>| kit.as_ref().is_some_and(|kit| kit.value.as_str() == item);
    let circuits = guides.circuits.iter().filter(|(_, guide)| here(&guide.kit));
    let limits = guides.limits.iter().flat_map(|(_, list)| sound(&list.entries)).filter(|limit| here(&limit.kit));
    let kit = Kit {
        item: item.to_owned(),
        symptoms: symptoms(faults, item),
        jobs: guides.procedures.iter().filter(|(_, g)| here(&g.kit)).map(|(_, g)| laying.job_row(g)).collect(),
        checks: guides.checklists.iter().filter(|(_, g)| here(&g.kit)).map(|(_, g)| laying.check_row(g)).collect(),
        how: lessons::links(laying, item),
        circuits: circuits.map(|(_, g)| circuit_link(laying, g)).collect(),
        limits: limits
            .filter_map(|limit| laying.limit(limit.limit.value.as_str()))
            // The limit itself stands on the page of limits: here its id is another, so that one file can hold both.
            .map(|limit| LimitRow { id: format!("kit-{item}-{}", limit.id), ..limit })
            .collect(),
        places: places::places(laying, item),
    };
    let mut page = frame::page(&addresses::kit(item), "kind-kit", &laying.item_title(item), Body::Kit(kit));
    page.rail = Some(laying.rail(item, |place| ("plain", None, Some(places::address(item, place)))))
        .filter(|rail| !rail.places.is_empty());
    page
}

fn circuit_link(laying: &Laying<'_>, guide: &model::Circuit) -> Link {
    laying.link(Thing::Guide(model::Kind::Circuit), guide.circuit.value.as_str())
}
