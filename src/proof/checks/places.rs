//! Places on an item: only those that its rail shows.

use crate::model::{Circuit, Guides, Named};
use crate::proof::finding::Finding;
use crate::proof::findings::ids;
use crate::proof::index::Index;
use crate::source::Tolerant;

/// Checks every place.
pub fn check(guides: &Guides, index: &Index, findings: &mut Vec<Finding>) {
    for (_, guide) in &guides.symptoms {
        let causes = guide.causes.iter().filter_map(Tolerant::sound).filter_map(|cause| cause.place.as_ref());
        let probes = guide.probes.iter().filter_map(Tolerant::sound).filter_map(|probe| probe.place.as_ref());
        findings.extend(causes.chain(probes).filter_map(|place| unknown(index, &guide.kit, place)));
    }
    for (_, guide) in &guides.procedures {
        let pair = guide.kit.as_ref().zip(guide.place.as_ref());
        findings.extend(pair.and_then(|(kit, place)| unknown(index, kit, place)));
    }
    for (_, guide) in &guides.checklists {
        let Some(kit) = &guide.kit else { continue };
        let places = guide.items.iter().filter_map(Tolerant::sound).filter_map(|item| item.place.as_ref());
        findings.extend(places.filter_map(|place| unknown(index, kit, place)));
    }
    for (_, guide) in &guides.circuits {
        let Some(kit) = &guide.kit else { continue };
        findings.extend(of_circuit(guide).filter_map(|place| unknown(index, kit, place)));
    }
}

fn of_circuit(guide: &Circuit) -> impl Iterator<Item = &Named> {
    let points = guide.points.iter().filter_map(Tolerant::sound).filter_map(|point| point.place.as_ref());
    let pieces = guide.pieces.iter().filter_map(Tolerant::sound).filter_map(|piece| piece.place.as_ref());
    let touching = guide.touching.iter().filter_map(Tolerant::sound).filter_map(|touching| touching.place.as_ref());
    let faults = guide.faults.iter().filter_map(Tolerant::sound).filter_map(|fault| fault.place.as_ref());
    points.chain(pieces).chain(touching).chain(faults)
}

fn unknown(index: &Index, kit: &Named, place: &Named) -> Option<Finding> {
    let places = index.places(kit.value.as_str());
    let known = places.is_empty() || places.contains(&place.value.as_str());
    (!known).then(|| ids::unknown_place(place, &kit.value, &places))
}
