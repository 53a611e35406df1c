//! The extremes of something that rises or falls with each resistance alone: they lie where every resistance is at an end.

use std::collections::BTreeMap;

use super::Ohms;
use super::answer::Span;
use super::solve::Wire;

/// A link between two numbered points, as far as computing goes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Edge {
    pub from: usize,
    pub to: usize,
    pub ohms: Ohms,
}

/// With so many pieces of uncertain resistance the corners are tried (2 to this power); with more the range is not computed.
const MOST_UNCERTAIN: usize = 16;

/// The range of `value`, which must be monotone in each resistance alone, over all corners. `kept` are the points that it looks at.
///
/// Pieces in series or side by side count as one, which changes nothing: the whole takes every value between its ends.
pub(super) fn corners(edges: &[Edge], kept: &[usize], value: impl Fn(&[Wire]) -> f64) -> Span {
    let edges = merged(edges.to_vec(), kept);
    let uncertain: Vec<usize> = (0..edges.len()).filter(|&index| edges.get(index).is_some_and(is_uncertain)).collect();
    if uncertain.len() > MOST_UNCERTAIN {
        return Span::NotComputed;
    }
    let mut wires: Vec<Wire> = wires(&edges, Ohms::usual);
    let usual = value(&wires);
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    for corner in 0..1_usize << uncertain.len() {
        for (bit, &index) in uncertain.iter().enumerate() {
            if let (Some(wire), Some(edge)) = (wires.get_mut(index), edges.get(index)) {
                wire.ohms = if corner >> bit & 1 == 0 { edge.ohms.least() } else { edge.ohms.most() };
            }
        }
        let at_corner = value(&wires);
        least = least.min(at_corner);
        most = most.max(at_corner);
    }
    Span::Within { least, usual, most }
}

/// The edges with one figure each.
pub(super) fn wires(edges: &[Edge], figure: impl Fn(Ohms) -> f64) -> Vec<Wire> {
    edges.iter().map(|edge| Wire { from: edge.from, to: edge.to, ohms: figure(edge.ohms) }).collect()
}

fn is_uncertain(edge: &Edge) -> bool {
    edge.ohms.least() < edge.ohms.most()
}

/// Dead ends dropped, parallel pieces and pieces in series made one, until nothing more can be.
fn merged(mut edges: Vec<Edge>, kept: &[usize]) -> Vec<Edge> {
    loop {
        edges = side_by_side(edges);
        let mut at: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for (index, edge) in edges.iter().enumerate() {
            at.entry(edge.from).or_default().push(index);
            at.entry(edge.to).or_default().push(index);
        }
        let shortening = at.into_iter().find(|(point, ends)| ends.len() < 3 && !kept.contains(point));
        match shortening.as_ref().map(|(point, ends)| (*point, ends.as_slice())) {
            None => return edges,
            Some((point, &[one, other])) => join_in_series(&mut edges, point, one, other),
            Some((_, ends)) => {
                for &dead in ends {
                    edges.swap_remove(dead);
                }
            }
        }
    }
}

/// Puts two edges that meet at a point, and nothing else does, into one. Parallel ones are merged already, so its ends differ.
fn join_in_series(edges: &mut Vec<Edge>, point: usize, one: usize, other: usize) {
    let later = edges.remove(one.max(other));
    if let Some(first) = edges.get_mut(one.min(other)) {
        let far_end = |edge: &Edge| {
            if edge.from == point { edge.to } else { edge.from }
        };
        *first = Edge { from: far_end(first), to: far_end(&later), ohms: first.ohms.in_series(later.ohms) };
    }
}

fn side_by_side(edges: Vec<Edge>) -> Vec<Edge> {
    let mut whole: BTreeMap<(usize, usize), Ohms> = BTreeMap::new();
    for edge in edges.into_iter().filter(|edge| edge.from != edge.to) {
        let ends = (edge.from.min(edge.to), edge.from.max(edge.to));
        whole.entry(ends).and_modify(|ohms| *ohms = ohms.in_parallel(edge.ohms)).or_insert(edge.ohms);
    }
    whole.into_iter().map(|((from, to), ohms)| Edge { from, to, ohms }).collect()
}
