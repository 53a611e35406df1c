//! Parts of a circuit that do nothing: faults that no reading betrays, points that nothing leads to, touchings that never close.
//!
//! A part counts as used if it does something in its own circuit or in any that is made of it.
//! Leaves to others: what readings show (`reckoning::circuit`).

use crate::model::{Circuit, Guides, Named};
use crate::proof::finding::Finding;
use crate::proof::findings::circuit as words;
use crate::proof::network::{Circuits, Wired};
use crate::reckoning::circuit::{Carrier, FaultId, Grade, Network, TouchingId};
use crate::source::Tolerant;
use std::collections::{BTreeMap, BTreeSet};

/// In so many circuits a part is looked for at most; circuits in circuits multiply.
const MOST_SEATS: usize = 32;

/// Checks every circuit that is whole, unless one that is made of it is not.
pub fn check(guides: &Guides, circuits: &BTreeMap<String, Wired>, findings: &mut Vec<Finding>) {
    let by_id: Circuits<'_> = guides.circuits.iter().map(|(_, c)| (c.circuit.value.as_str(), c)).collect();
    for circuit in by_id.values() {
        let seats = seats(circuit, &by_id);
        let wired: Option<Vec<Seat<'_>>> =
            seats.iter().map(|(circuit, prefix)| seat(circuit, prefix, circuits)).collect();
        let Some(seats) = wired else { continue };
        findings.extend(sound(&circuit.faults).filter_map(|fault| shows_nothing(&fault.fault, &seats)));
        findings.extend(sound(&circuit.touching).filter_map(|touching| never_closes(&touching.touching, &seats)));
        let points = sound(&circuit.points).map(|point| &point.point);
        findings.extend(points.filter(|point| !is_joined(point, &seats)).map(words::joined_to_nothing));
    }
}

/// A circuit in which the parts of another are, with what their names begin with there.
struct Seat<'a> {
    circuit: &'a Circuit,
    prefix: &'a str,
    network: &'a Network,
}

fn seat<'a>(circuit: &'a Circuit, prefix: &'a str, wired: &'a BTreeMap<String, Wired>) -> Option<Seat<'a>> {
    let wired = wired.get(circuit.circuit.value.as_str()).filter(|wired| wired.is_whole())?;
    Some(Seat { circuit, prefix, network: &wired.network })
}

/// Itself, and all circuits that are made of it.
fn seats<'c>(circuit: &'c Circuit, by_id: &Circuits<'c>) -> Vec<(&'c Circuit, String)> {
    let mut seats = vec![(circuit, String::new())];
    let mut next = 0;
    while let Some((inner, prefix)) = seats.get(next).cloned() {
        next += 1;
        for (outer, used) in by_id.values().flat_map(|outer| sound(&outer.uses).map(move |used| (*outer, used))) {
            if used.circuit.value == inner.circuit.value && seats.len() < MOST_SEATS {
                let before = used.prefix.as_ref().map_or(String::new(), |prefix| format!("{}-", prefix.value));
                seats.push((outer, format!("{before}{prefix}")));
            }
        }
    }
    seats
}

fn sound<T>(items: &[Tolerant<T>]) -> impl Iterator<Item = &T> {
    items.iter().filter_map(Tolerant::sound)
}

fn shows_nothing(fault: &Named, seats: &[Seat<'_>]) -> Option<Finding> {
    let named = |seat: &Seat<'_>| seat.network.find_fault(&format!("{}{}", seat.prefix, fault.value));
    let read = |seat: &&Seat<'_>| seat.network.readings().next().is_some() && named(seat).is_some();
    let looked_at: Vec<&Seat<'_>> = seats.iter().filter(read).collect();
    let betrayed = looked_at.iter().any(|seat| named(seat).is_some_and(|fault| is_read(seat.network, fault)));
    let ids: Vec<&str> = looked_at.iter().map(|seat| seat.circuit.circuit.value.as_str()).collect();
    // A circuit that nothing is read on, by itself or in another, is still being written.
    (!betrayed && !ids.is_empty()).then(|| words::shows_nothing(fault, &ids))
}

/// Whether a reading can answer otherwise with a fault than without it.
fn is_read(network: &Network, fault: FaultId) -> bool {
    let parts = |reading, position| network.parts(None, Some(fault), reading, position) != Ok(Grade::Never);
    network.positions().any(|position| network.readings().any(|reading| parts(reading, position)))
}

fn never_closes(touching: &Named, seats: &[Seat<'_>]) -> Option<Finding> {
    let closes = |seat: &Seat<'_>| {
        let id = seat.network.find_touching(&format!("{}{}", seat.prefix, touching.value));
        id.is_some_and(|id| is_closed_once(seat.network, id))
    };
    (!seats.iter().any(closes)).then(|| words::never_closes(touching))
}

fn is_closed_once(network: &Network, touching: TouchingId) -> bool {
    let closed = |position, fault| {
        let links = network.links(position, fault).unwrap_or_default();
        links.iter().any(|link| link.carrier == Carrier::Touching(touching))
    };
    let faults: Vec<Option<FaultId>> = [None].into_iter().chain(network.faults().map(Some)).collect();
    network.positions().any(|position| faults.iter().any(|fault| closed(position, *fault)))
}

/// Whether anything is written that leads to a point. What is only read there leads nowhere.
fn is_joined(point: &Named, seats: &[Seat<'_>]) -> bool {
    seats.iter().any(|seat| ends(seat.circuit).contains(format!("{}{}", seat.prefix, point.value).as_str()))
}

/// The points that something in a circuit's own file leads to.
fn ends(circuit: &Circuit) -> BTreeSet<&str> {
    let pieces = sound(&circuit.pieces).flat_map(|piece| [&piece.from, &piece.to]);
    let touching = sound(&circuit.touching).flat_map(|touching| [&touching.from, &touching.to]);
    let joins = sound(&circuit.joins).flat_map(|join| &*join.join);
    let faults = sound(&circuit.faults).flat_map(|fault| fault.touches.iter().chain(&*fault.at));
    pieces.chain(touching).chain(joins).chain(faults).map(|named| named.value.as_str()).collect()
}
