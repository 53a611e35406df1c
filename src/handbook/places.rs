//! What there is at each place of an item: the index behind the drawing on the item's page.
//!
//! In: the guides of an item. Out: one section a place, in the order of the rail, with the causes, the jobs and the parts there.

use super::addresses;
use super::laying::Laying;
use super::page::{KitPlace, Link, PlaceCause};
use crate::model::{self, Kind, Named};
use crate::proof::Thing;
use crate::proof::cases::sound;

/// Where a place stands on its item's page.
pub fn anchor(item: &str, place: &str) -> String {
    format!("kit-{item}-at-{place}")
}

/// The address of a place on its item's page.
pub fn address(item: &str, place: &str) -> String {
    format!("{}#{}", addresses::kit(item), anchor(item, place))
}

/// A section for every place of the item.
pub fn places(laying: &Laying<'_>, item: &str) -> Vec<KitPlace> {
    let of = |place: &str| KitPlace {
        anchor: anchor(item, place),
        title: place.to_owned(),
        causes: causes(laying, item, place),
        jobs: jobs(laying, item, place)
            .map(|job| laying.link(Thing::Guide(Kind::Procedure), job.procedure.value.as_str()))
            .collect(),
        parts: parts(laying, item, place),
    };
    laying.proofed.index.places(item).into_iter().map(of).collect()
}

fn at(named: Option<&Named>, place: &str) -> bool {
    named.is_some_and(|named| named.value.as_str() == place)
}

/// The causes there, of every fault-finding guide of the item.
fn causes(laying: &Laying<'_>, item: &str, place: &str) -> Vec<PlaceCause> {
    let guides = laying.proofed.guides.symptoms.iter().map(|(_, guide)| guide);
    let guides = guides.filter(|guide| guide.kit.value.as_str() == item);
    let of = |guide: &model::Symptom| {
        let page = addresses::guide(Kind::Symptom, guide.symptom.value.as_str());
        let here = sound(&guide.causes).into_iter().filter(|cause| at(cause.place.as_ref(), place));
        let cause = here.map(|cause| PlaceCause {
            cause: Link {
                title: cause.title.value.clone(),
                address: format!("{page}#{}-cause-{}", addresses::key(&page), cause.cause.value),
            },
            symptom: guide.title.value.clone(),
        });
        cause.collect::<Vec<_>>()
    };
    guides.flat_map(of).collect()
}

fn jobs<'a>(laying: &Laying<'a>, item: &'a str, place: &'a str) -> impl Iterator<Item = &'a model::Procedure> {
    let all = laying.proofed.guides.procedures.iter().map(|(_, job)| job);
    all.filter(move |job| at(job.kit.as_ref(), item) && at(job.place.as_ref(), place))
}

/// The parts that jobs there fit, and what the item's own circuit has there; each once.
fn parts(laying: &Laying<'_>, item: &str, place: &str) -> Vec<Link> {
    let needs = jobs(laying, item, place).flat_map(|job| sound(&job.needs.parts));
    let mut links: Vec<Link> = needs.map(|need| laying.link(Thing::Part, need.id.value.as_str())).collect();
    links.sort();
    links.dedup();
    let page = addresses::guide(Kind::Circuit, item);
    let circuits = laying.proofed.guides.circuits.iter().map(|(_, circuit)| circuit);
    let own = circuits.filter(|circuit| circuit.circuit.value.as_str() == item).flat_map(|c| sound(&c.pieces));
    let pieces = own.filter(|piece| at(piece.place.as_ref(), place)).map(|piece| Link {
        title: piece.title.value.clone(),
        address: format!("{page}#{}-piece-{}", addresses::key(&page), piece.piece.value),
    });
    links.extend(pieces);
    links
}
