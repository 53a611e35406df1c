//! Which pieces carry the current between two points: those that lie on some way from one to the other that meets no point twice.

use super::neighbours::Neighbours;
use super::{Carrier, FaultId, Flaw, Network, Pair, PositionId};

impl Network {
    /// What carries the current between two probed points, in the order in which the links stand; nothing if they have no connection.
    /// Judged by the way the links hang together, not by their ohms: a balanced bridge counts as carrying.
    ///
    /// # Errors
    /// [`Flaw::Unknown`].
    pub fn live_loop(&self, pair: Pair, position: PositionId, fault: Option<FaultId>) -> Result<Vec<Carrier>, Flaw> {
        self.known_pair(pair)?;
        let links = self.links(position, fault)?;
        let ends: Vec<(usize, usize)> = links.iter().map(|link| (link.from.0, link.to.0)).collect();
        let on_the_way = on_the_way(&ends, self.root(pair.one).0, self.root(pair.other).0);
        Ok(on_the_way.iter().filter_map(|&index| links.get(index)).map(|link| link.carrier).collect())
    }
}

/// The indices, rising, of the edges on some simple path between two points: the block that an edge between the two would
/// belong to, by depth-first search from one of them (Hopcroft and Tarjan 1973).
pub(super) fn on_the_way(ends: &[(usize, usize)], one: usize, other: usize) -> Vec<usize> {
    if one == other {
        return Vec::new();
    }
    let neighbours = Neighbours::of(ends);
    // The search begins as if it had come to `other` from `one` along the edge that is thought between them.
    let mut found = vec![None; neighbours.points().max(one + 1).max(other + 1)];
    if let Some(first) = found.get_mut(one) {
        *first = Some(0);
    }
    let mut search = Search { neighbours: &neighbours, found, so_far: 1, stack: Vec::new() };
    search.visit(other, None);
    search.stack.sort_unstable();
    search.stack
}

/// Which way the simple ways between two points run through an edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Run {
    /// None runs through it.
    Not,
    /// From its first end to its second.
    Along,
    /// From its second end to its first.
    Against,
    /// Some this way, some that; or the ways were too many to look at.
    Both,
}

/// With so many steps looked at nothing is known any more.
const MOST_STEPS: usize = 20_000;

/// For each edge, which way all simple ways from one point to another run through it.
pub(super) fn runs(ends: &[(usize, usize)], one: usize, other: usize) -> Vec<Run> {
    let mut walk = Walk { ends, other, runs: vec![Run::Not; ends.len()], way: Vec::new(), been: vec![one], steps: 0 };
    walk.on(one);
    if walk.steps >= MOST_STEPS { vec![Run::Both; ends.len()] } else { walk.runs }
}

/// A walk along all simple ways to a point.
struct Walk<'e> {
    ends: &'e [(usize, usize)],
    other: usize,
    runs: Vec<Run>,
    /// The edges behind, each with the way that it was gone.
    way: Vec<(usize, Run)>,
    been: Vec<usize>,
    steps: usize,
}

impl Walk<'_> {
    fn on(&mut self, point: usize) {
        if point == self.other {
            for (edge, run) in &self.way {
                if let Some(known) = self.runs.get_mut(*edge) {
                    *known = if *known == Run::Not || known == run { *run } else { Run::Both };
                }
            }
            return;
        }
        for (edge, &(from, to)) in self.ends.iter().enumerate() {
            let (next, run) = match point {
                here if here == from => (to, Run::Along),
                here if here == to => (from, Run::Against),
                _ => continue,
            };
            if self.been.contains(&next) || self.steps >= MOST_STEPS {
                continue;
            }
            self.steps += 1;
            self.been.push(next);
            self.way.push((edge, run));
            self.on(next);
            self.way.pop();
            self.been.pop();
        }
    }
}

struct Search<'n> {
    neighbours: &'n Neighbours,
    /// When each point was found, if it was.
    found: Vec<Option<usize>>,
    /// How many were.
    so_far: usize,
    /// The edges of blocks not yet closed.
    stack: Vec<usize>,
}

impl Search<'_> {
    /// Visits a point and gives the earliest found that it and all beyond it lead back to. No deeper than there are points.
    fn visit(&mut self, point: usize, came_by: Option<usize>) -> usize {
        let when = self.so_far;
        self.so_far += 1;
        if let Some(found) = self.found.get_mut(point) {
            *found = Some(when);
        }
        let mut back_to = when;
        let neighbours = self.neighbours;
        for &(edge, next) in neighbours.at(point) {
            if Some(edge) == came_by {
                continue;
            }
            match self.found.get(next).copied().flatten() {
                Some(earlier) if earlier < when => {
                    self.stack.push(edge);
                    back_to = back_to.min(earlier);
                }
                Some(_) => {}
                None => {
                    let height = self.stack.len();
                    self.stack.push(edge);
                    let beyond = self.visit(next, Some(edge));
                    back_to = back_to.min(beyond);
                    if beyond >= when {
                        self.stack.truncate(height);
                    }
                }
            }
        }
        back_to
    }
}
