//! How each piece runs from point to point.

use super::grid::Grid;
use super::place::{Layout, Row};
use super::symbol::{self, Strike};
use super::{Circuit, Piece};
use crate::render::figures::svg::Trace;
use std::collections::BTreeMap;

/// The way a piece takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    /// Down its column, to the next point.
    Along,
    /// Across in this row.
    Across(Row),
    /// Across in a row of its own to a lane at the right edge, and back in another.
    Lane([Row; 2]),
}

/// A piece with its line.
pub(super) struct Route<'a> {
    pub(super) piece: &'a Piece,
    /// Index of the piece.
    pub(super) index: usize,
    pub(super) way: Way,
    /// The corners, ends included.
    corners: Vec<(f64, f64)>,
    /// The symbol stands between this corner and the next.
    leg: usize,
    middle: (f64, f64),
}

/// Decides how each piece runs.
pub(super) fn ways(circuit: &Circuit, grid: &Grid) -> BTreeMap<usize, Way> {
    let mut ways = BTreeMap::new();
    let mut taken: Vec<Reach> = Vec::new();
    let mut own = 0;
    for (index, piece) in circuit.pieces.iter().enumerate() {
        let (Some((_, from)), Some((_, to))) = (grid.points.get(piece.from), grid.points.get(piece.to)) else {
            continue;
        };
        if piece.from == piece.to {
            continue;
        }
        let way = if grid.along.contains(&index) {
            Way::Along
        } else if let Some(reach) = straight(grid, piece).filter(|reach| !taken.iter().any(|other| reach.meets(other)))
        {
            taken.push(reach);
            Way::Across(reach.row)
        } else {
            own += 2;
            Way::Lane([(from.0, from.1, own - 1), (to.0, to.1, own)])
        };
        ways.insert(index, way);
    }
    ways
}

/// What a piece takes up that runs across: a row, from one column to another.
#[derive(Clone, Copy)]
struct Reach {
    row: Row,
    left: usize,
    right: usize,
}

impl Reach {
    fn meets(&self, other: &Reach) -> bool {
        self.row == other.row && self.left < other.right && other.left < self.right
    }
}

/// The row in which a piece can run straight across, with one bend at most, and meet nothing that it is not joined to.
fn straight(grid: &Grid, piece: &Piece) -> Option<Reach> {
    let ((one, high), (other, low)) = (*grid.points.get(piece.from)?, *grid.points.get(piece.to)?);
    let (left, right) = (one.min(other), one.max(other));
    let clear = |row: Row| {
        let point = grid.points.iter().any(|(column, at)| *at == row && left < *column && *column < right);
        let slot = right > left + 1 && grid.slots.values().any(|at| *at == row);
        !point && !slot
    };
    // The other end is reached along its own column, so the point must be the last one on that side.
    let reached = |point: usize, at: Row, column: usize, row: Row| {
        let order = grid.orders.get(column).map_or(&[][..], Vec::as_slice);
        at == row || (order.first() == Some(&point) && at > row) || (order.last() == Some(&point) && at < row)
    };
    let tries = [(high, piece.to, low, other), (low, piece.from, high, one)];
    let row = tries.into_iter().find(|(row, point, at, column)| clear(*row) && reached(*point, *at, *column, *row));
    row.filter(|_| left < right).map(|(row, ..)| Reach { row, left, right })
}

/// Every piece with its line, in the order given.
pub(super) fn routes<'a>(circuit: &'a Circuit, layout: &Layout) -> Vec<Route<'a>> {
    let mut lane = 0;
    let mut routes = Vec::new();
    for (index, way) in &layout.ways {
        let Some(piece) = circuit.pieces.get(*index) else {
            continue;
        };
        let (Some(from), Some(to)) = (layout.at(piece.from), layout.at(piece.to)) else {
            continue;
        };
        let (corners, leg) = match *way {
            Way::Along => (vec![from, to], 0),
            Way::Across(row) => {
                let y = layout.y(row);
                (vec![from, (from.0, y), (to.0, y), to], 1)
            }
            Way::Lane([out, back]) => {
                let x = layout.lane(lane);
                lane += 1;
                let (out, back) = (layout.y(out), layout.y(back));
                (vec![from, (from.0, out), (x, out), (x, back), (to.0, back), to], 2)
            }
        };
        let (one, other) = (corners[leg], corners[leg + 1]);
        let half = ((one.0 + other.0) / 2.0, (one.1 + other.1) / 2.0);
        let middle = if *way == Way::Along { (half.0, layout.slot(*index).unwrap_or(half.1)) } else { half };
        routes.push(Route { piece, index: *index, way: *way, corners, leg, middle });
    }
    routes
}

impl Route<'_> {
    /// Where the symbol stands.
    pub(super) fn middle(&self) -> (f64, f64) {
        self.middle
    }

    /// Whether the conductor stands upright where the symbol is.
    pub(super) fn upright(&self) -> bool {
        !matches!(self.way, Way::Across(_))
    }

    /// The whole line.
    pub(super) fn line(&self) -> String {
        line(&self.corners)
    }

    #[cfg(test)]
    pub(super) fn corners(&self) -> &[(f64, f64)] {
        &self.corners
    }

    /// The conductors on both sides of the symbol.
    pub(super) fn leads(&self) -> Vec<String> {
        let half = symbol::half_length(self.piece.kind);
        let [start, end] = [self.corners[self.leg], self.corners[self.leg + 1]];
        let towards = |one: f64, other: f64| if other < one { -1.0 } else { 1.0 };
        let (dx, dy) =
            if self.upright() { (0.0, half * towards(start.1, end.1)) } else { (half * towards(start.0, end.0), 0.0) };
        let (x, y) = self.middle;
        let before: Vec<(f64, f64)> = self.corners[..=self.leg].iter().copied().chain([(x - dx, y - dy)]).collect();
        let after: Vec<(f64, f64)> =
            std::iter::once((x + dx, y + dy)).chain(self.corners[self.leg + 1..].iter().copied()).collect();
        vec![line(&before), line(&after)]
    }

    /// Where the zigzag arrow strikes; in a lane and across the way, the side is fixed.
    pub(super) fn struck_from_the_right(&self) -> Strike {
        let (x, y) = self.middle;
        match self.way {
            Way::Across(_) => {
                // Left of the middle, so that the word beside the arrow has room before the next column.
                let half = self.corners.get(self.leg).map_or(0.0, |corner| (corner.0 - x).abs());
                let left = if half < 50.0 { half - 10.0 } else { 18.0 };
                Strike { x: x - left, y: y - symbol::height(self.piece.kind) - 2.0, from: 1.0 }
            }
            Way::Along => Strike { x: x + self.beside(), y: y - 6.0, from: 1.0 },
            Way::Lane(_) => self.struck_from_the_left(),
        }
    }

    /// The same for words that stand left of their column.
    pub(super) fn struck_from_the_left(&self) -> Strike {
        let (x, y) = self.middle;
        match self.way {
            Way::Across(_) => self.struck_from_the_right(),
            Way::Along | Way::Lane(_) => Strike { x: x - self.beside(), y: y - 6.0, from: -1.0 },
        }
    }

    fn beside(&self) -> f64 {
        symbol::half_width(self.piece.kind).min(9.0) + 2.0
    }
}

fn line(corners: &[(f64, f64)]) -> String {
    let mut corners = corners.iter();
    let Some((x, y)) = corners.next() else {
        return String::new();
    };
    corners.fold(Trace::from(*x, *y), |trace, (x, y)| trace.line(*x, *y)).open()
}
