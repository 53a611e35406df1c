//! A circuit's page: its drawing in each position, what each lamp shows and means, its faults, what it is made of.
//!
//! Leaves to others: the drawing's data (`circuit_drawing`), what lamps mean (`patterns`).

use super::circuit_drawing::{Sketch, words};
use super::laying::{Laying, markdown};
use super::lists::used_in;
use super::page::{Body, Circuit, CircuitFigure, CircuitPart, DrawnPosition, Page};
use super::{addresses, frame, lessons, patterns};
use crate::model::{self, Kind, ResistanceRange};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::proof::network::{Label, Wired};
use crate::proof::shown;
use crate::proof::sights::Sight;
use crate::reckoning::circuit::{FaultId, Network, PositionId};
use std::collections::BTreeMap;

/// The page.
pub fn page(laying: &Laying<'_>, guide: &model::Circuit) -> Page {
    let id = guide.circuit.value.as_str();
    let key = addresses::key(&addresses::guide(Kind::Circuit, id));
    let wired = laying.proofed.circuits.get(id).filter(|wired| wired.is_whole());
    let body = Circuit {
        says: markdown(guide.says.as_ref()),
        guides: used_in(laying, Thing::Guide(Kind::Circuit), id),
        how: wired.and_then(|wired| lessons::link(guide, wired)),
        drawings: wired.map_or_else(Vec::new, |wired| drawings(laying, guide, wired)),
        lamps: wired.map_or_else(Vec::new, |wired| patterns::patterns(laying, guide, wired)),
        source: guide.source.as_ref().map(|source| source.value.clone()),
        parts: parts(guide, &key),
        faults: wired.map_or_else(Vec::new, |wired| faults(guide, wired, &key)),
        positions: wired.map_or_else(Vec::new, |wired| labelled(&wired.labels.positions, &key, "position")),
    };
    let address = addresses::guide(Kind::Circuit, id);
    let mut page = frame::page(&address, "kind-circuit", &guide.title.value, Body::Circuit(Box::new(body)));
    page.trail = frame::trail_to_kit(laying, guide.kit.as_ref());
    page.rail = laying.rail_at(guide.kit.as_ref(), None);
    page
}

/// One drawing for each position, with the words of the guide.
fn drawings(laying: &Laying<'_>, guide: &model::Circuit, wired: &Wired) -> Vec<DrawnPosition> {
    let Some(sketch) = sketch(laying, guide, wired) else { return Vec::new() };
    let drawn = patterns::positions(guide, wired).into_iter().filter_map(|(position, written)| {
        let figure = sketch.drawn(position, None)?;
        let shows = patterns::shows(guide, wired, position);
        Some(DrawnPosition { figure, shows, says: written.and_then(|written| markdown(written.says.as_ref())) })
    });
    drawn.collect()
}

/// The sketch of a circuit along its item; nothing for a circuit of no item.
pub fn sketch<'a>(laying: &Laying<'_>, guide: &model::Circuit, wired: &'a Wired) -> Option<Sketch<'a>> {
    let kit = guide.kit.as_ref()?;
    let item = laying.proofed.circuits.get(kit.value.as_str());
    let side = guide.sides.first().map(|side| side.value.as_str());
    Sketch::of(wired, item, side, &laying.proofed.index.places(kit.value.as_str()))
}

/// The drawing for a fault-finding guide: its circuit as it is held when the symptom is seen, with a cause's fault or sound.
pub fn figure(laying: &Laying<'_>, guide: &model::Symptom, cause: Option<&model::Cause>) -> Option<CircuitFigure> {
    let sight = laying.proofed.sights.get(guide.symptom.value.as_str())?;
    let wired = laying.proofed.circuits.get(&sight.circuit)?;
    let circuits = laying.proofed.guides.circuits.iter().map(|(_, circuit)| circuit);
    let circuit = circuits.into_iter().find(|circuit| circuit.circuit.value.as_str() == sight.circuit)?;
    let fault = match cause {
        Some(cause) => Some(fault_of(sight, cause)?),
        None => None,
    };
    sketch(laying, circuit, wired)?.drawn(held(sight), fault)
}

fn fault_of(sight: &Sight, cause: &model::Cause) -> Option<FaultId> {
    sight.faults.get(cause.cause.value.as_str())?.first().copied()
}

/// The last position that the guide tells of.
fn held(sight: &Sight) -> PositionId {
    sight.signs.iter().flatten().last().map_or(Network::REST, |(sign, _)| sign.position)
}

/// The pieces and touchings of the circuit's own file.
fn parts(guide: &model::Circuit, key: &str) -> Vec<CircuitPart> {
    let pieces = sound(&guide.pieces).into_iter().map(|piece| CircuitPart {
        anchor: format!("{key}-piece-{}", piece.piece.value),
        title: piece.title.value.clone(),
        value: piece.ohms.value.value().map(range),
        place: piece.place.as_ref().map(|place| place.value.0.clone()),
        source: piece.source.as_ref().map(|source| source.value.clone()),
    });
    let touchings = sound(&guide.touching).into_iter().map(|touching| CircuitPart {
        anchor: format!("{key}-touching-{}", touching.touching.value),
        title: touching.title.value.clone(),
        value: touching.ohms.value.value().map(range),
        place: touching.place.as_ref().map(|place| place.value.0.clone()),
        source: touching.source.as_ref().map(|source| source.value.clone()),
    });
    pieces.chain(touchings).collect()
}

fn range(ohms: &ResistanceRange) -> String {
    let figures: Vec<f64> = ohms.0.iter().map(|figure| figure.ohms()).collect();
    match figures.as_slice() {
        [least, .., most] => format!("{least} … {most} Ω"),
        [exact] => format!("{exact} Ω"),
        [] => String::new(),
    }
}

/// The faults that can be seen here, with what is read in place of what sound kit reads, where they differ most plainly.
fn faults(guide: &model::Circuit, wired: &Wired, key: &str) -> Vec<CircuitPart> {
    let sources: BTreeMap<&str, &str> = sound(&guide.faults)
        .into_iter()
        .filter_map(|fault| Some((fault.fault.value.as_str(), fault.source.as_ref()?.value.as_str())))
        .collect();
    let network = &wired.network;
    let part = |fault: FaultId| {
        let id = network.fault_name(fault);
        let label = wired.labels.faults.get(id);
        CircuitPart {
            anchor: format!("{key}-fault-{id}"),
            title: words(&wired.labels.faults, id).unwrap_or_else(|| id.to_owned()),
            value: ohms_that_tell(wired, fault),
            place: label.and_then(|label| label.place.as_ref()).map(|place| place.0.clone()),
            source: sources.get(id).map(|source| (*source).to_owned()),
        }
    };
    network.faults().map(part).collect()
}

/// The first meter reading at rest that a fault surely changes: its name and figure.
fn ohms_that_tell(wired: &Wired, fault: FaultId) -> Option<String> {
    use crate::reckoning::circuit::{Grade, Reading};
    let network = &wired.network;
    let meters = network.readings().filter(|id| matches!(network.reading_of(*id), Some(Reading::Ohmmeter { .. })));
    let mut telling = meters.filter(|id| network.parts(None, Some(fault), *id, Network::REST) == Ok(Grade::Surely));
    let reading = telling.next()?;
    let seen = network.seen(reading, Network::REST, Some(fault)).ok()?;
    let figure = seen.faulty.figure.and_then(shown::ohms).unwrap_or_else(|| "∞".to_owned());
    let title = words(&wired.labels.readings, network.reading_name(reading))?;
    Some(format!("{title}: {figure}"))
}

fn labelled(labels: &BTreeMap<String, Label>, key: &str, kind: &str) -> Vec<CircuitPart> {
    let part = |(id, label): (&String, &Label)| CircuitPart {
        anchor: format!("{key}-{kind}-{id}"),
        title: label.title.clone(),
        value: None,
        place: None,
        source: None,
    };
    labels.iter().map(part).collect()
}
