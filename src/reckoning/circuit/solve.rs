//! Resistances and conductances between a few points of a network, by elimination in a fixed order.
//!
//! A point is eliminated by the star-mesh rule: its neighbours get g_i·g_j/Σg between them. That is a step of the LDLᵀ
//! factorisation of the nodal matrix, written so that nothing is ever subtracted; so no cancellation can spoil a network
//! that has thousandths of an ohm beside megohms, and points without connection stay at exactly nothing.

use super::neighbours::Neighbours;

/// A resistance between two numbered points.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wire {
    pub from: usize,
    pub to: usize,
    pub ohms: f64,
}

/// The resistance between two points in ohms; nothing if they have no connection.
pub(super) fn resistance(wires: &[Wire], one: usize, other: usize) -> Option<f64> {
    if one == other {
        return Some(0.0);
    }
    let reached = reached_from(wires, one);
    let is_reached = |point: usize| reached.get(point).is_some_and(|reached| *reached);
    if !is_reached(other) {
        return None;
    }
    let wires: Vec<Wire> = wires.iter().copied().filter(|wire| is_reached(wire.from)).collect();
    Some(resistance_of(&wires, one, other))
}

/// The same of wires that all lie on some way between two different points, as is known already.
pub(super) fn resistance_of(wires: &[Wire], one: usize, other: usize) -> f64 {
    1.0 / Mesh::of(wires, &[one, other]).between(0, 1)
}

/// For each point whether it has a connection with this one.
fn reached_from(wires: &[Wire], start: usize) -> Vec<bool> {
    let ends: Vec<(usize, usize)> = wires.iter().map(|wire| (wire.from, wire.to)).collect();
    let neighbours = Neighbours::of(&ends);
    let mut reached = vec![false; neighbours.points()];
    let mut open = vec![start];
    while let Some(point) = open.pop() {
        if let Some(new) = reached.get_mut(point).filter(|reached| !**reached) {
            *new = true;
            open.extend(neighbours.at(point).iter().map(|(_, next)| *next));
        }
    }
    reached
}

/// The conductances between the points that were kept, everything else eliminated.
pub(super) struct Mesh {
    size: usize,
    siemens: Vec<f64>,
}

impl Mesh {
    /// Keeps `kept` (no point twice), in that order, and eliminates every other point, lowest number first.
    pub(super) fn of(wires: &[Wire], kept: &[usize]) -> Mesh {
        let points = wires.iter().map(|wire| wire.from.max(wire.to) + 1).max().unwrap_or(0);
        let mut rows: Vec<Option<usize>> = vec![None; points];
        let used = wires.iter().flat_map(|wire| [wire.from, wire.to]);
        for point in used {
            if let Some(row) = rows.get_mut(point) {
                *row = Some(usize::MAX);
            }
        }
        for (place, point) in kept.iter().enumerate() {
            if let Some(row) = rows.get_mut(*point) {
                *row = Some(place);
            }
        }
        let mut size = kept.len();
        for row in rows.iter_mut().flatten().filter(|row| **row == usize::MAX) {
            *row = size;
            size += 1;
        }
        let mut mesh = Mesh { size, siemens: vec![0.0; size * size] };
        let row = |point: usize| rows.get(point).copied().flatten();
        for wire in wires {
            if let (Some(from), Some(to)) = (row(wire.from), row(wire.to)) {
                mesh.add(from, to, 1.0 / wire.ohms);
            }
        }
        (kept.len()..size).for_each(|row| mesh.eliminate(row));
        mesh
    }

    /// The conductance between the kept points at two places of `kept`, siemens.
    pub(super) fn between(&self, one: usize, other: usize) -> f64 {
        self.siemens.get(one * self.size + other).copied().unwrap_or(0.0)
    }

    /// Adds a conductance; one from a point to itself carries nothing.
    fn add(&mut self, one: usize, other: usize, siemens: f64) {
        if one == other {
            return;
        }
        for place in [one * self.size + other, other * self.size + one] {
            if let Some(sum) = self.siemens.get_mut(place) {
                *sum += siemens;
            }
        }
    }

    /// Star-mesh: spreads the conductances of a point over its neighbours that are left, and cuts it off.
    fn eliminate(&mut self, row: usize) {
        let star: Vec<(usize, f64)> = (0..self.size)
            .map(|other| (other, self.between(row, other)))
            .filter(|(_, siemens)| *siemens > 0.0)
            .collect();
        let sum: f64 = star.iter().map(|(_, siemens)| siemens).sum();
        for (place, &(one, to_one)) in star.iter().enumerate() {
            for &(other, to_other) in star.iter().skip(place + 1) {
                self.add(one, other, to_one * to_other / sum);
            }
            for cut in [row * self.size + one, one * self.size + row] {
                if let Some(siemens) = self.siemens.get_mut(cut) {
                    *siemens = 0.0;
                }
            }
        }
    }
}
