//! The extremes of something that rises or falls with each resistance alone: they lie where every resistance is at an end.
//!
//! Where it is known from how the pieces hang together that something only rises, or only falls, with a resistance, that one is
//! set to its end; only the others are tried both ways. So a bench or a bout needs a few solves, not thousands, and stays exact.

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

/// With so many pieces of which it is not known which way they turn the corners are tried (2 to this power); with more the
/// range is not computed.
const MOST_UNCERTAIN: usize = 16;

/// Which way a value goes when a resistance rises.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Turn {
    /// Up, or it stays.
    Rises,
    /// Down, or it stays.
    Falls,
    /// It depends on the other resistances.
    Either,
}

/// The range of `value`, which must be monotone in each resistance alone, over all corners. `kept` are the points that it looks at.
/// `turns` says for each of the edges which way the value goes with it.
///
/// Pieces in series or side by side count as one, which changes nothing: the whole takes every value between its ends.
pub(super) fn corners(
    edges: &[Edge],
    kept: &[usize],
    turns: impl Fn(&[Edge]) -> Vec<Turn>,
    value: impl Fn(&[Wire]) -> f64,
) -> Span {
    let edges = merged(edges.to_vec(), kept);
    let turns = turns(&edges);
    let turn = |index: &usize| turns.get(*index).copied().unwrap_or(Turn::Either);
    let uncertain: Vec<usize> = (0..edges.len()).filter(|&index| edges.get(index).is_some_and(is_uncertain)).collect();
    let tried: Vec<usize> = uncertain.iter().copied().filter(|index| turn(index) == Turn::Either).collect();
    if tried.len() > MOST_UNCERTAIN {
        return Span::NotComputed;
    }
    let usual = value(&wires(&edges, Ohms::usual));
    let at_end = |rising: fn(Ohms) -> f64, falling: fn(Ohms) -> f64| {
        let mut wires: Vec<Wire> = wires(&edges, Ohms::least);
        for &index in &uncertain {
            if let (Some(wire), Some(edge)) = (wires.get_mut(index), edges.get(index)) {
                wire.ohms = if turn(&index) == Turn::Falls { falling(edge.ohms) } else { rising(edge.ohms) };
            }
        }
        at_corners(wires, &edges, &tried, &value)
    };
    let least = at_end(Ohms::least, Ohms::most).fold(f64::INFINITY, f64::min);
    let most = at_end(Ohms::most, Ohms::least).fold(f64::NEG_INFINITY, f64::max);
    Span::Within { least, usual, most }
}

/// The values with the tried edges at every choice of their ends, the other wires as they are.
fn at_corners<'v>(
    mut wires: Vec<Wire>,
    edges: &'v [Edge],
    tried: &'v [usize],
    value: &'v impl Fn(&[Wire]) -> f64,
) -> impl Iterator<Item = f64> + 'v {
    (0..1_usize << tried.len()).map(move |corner| {
        for (bit, &index) in tried.iter().enumerate() {
            if let (Some(wire), Some(edge)) = (wires.get_mut(index), edges.get(index)) {
                wire.ohms = if corner >> bit & 1 == 0 { edge.ohms.least() } else { edge.ohms.most() };
            }
        }
        value(&wires)
    })
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
