//! Which row every point and every symbol of a circuit stands in, and how high the rows are.
//!
//! Rows belong to places. In a column, order is kept; points that are joined across share a row where the order allows it. What
//! cannot be drawn straight gets rows of its own, so that it never runs through a point that it is not joined to.

use super::route::Way;
use super::symbol::{self, ZIGZAG};
use super::{Circuit, Condition, Kind, LEADING, Piece, SIZE, WIDTH};
use crate::render::figures::words::{Weight, width, wrap};
use std::collections::{BTreeMap, BTreeSet};

/// A band of the drawing: one place that has something in it.
pub(super) struct Band {
    /// Index of the place.
    pub(super) place: usize,
    /// Its upper edge.
    pub(super) top: f64,
}

/// A line of words: its class and itself.
pub(super) type Line = (&'static str, String);

/// A row's key: place, row in the place, and row of its own below that one (0 is the row itself).
pub(super) type Row = (usize, usize, usize);

/// Where everything stands.
pub(super) struct Layout {
    /// From above to below.
    pub(super) bands: Vec<Band>,
    /// Height of the drawing.
    pub(super) height: f64,
    /// How each piece runs, by its index.
    pub(super) ways: BTreeMap<usize, Way>,
    /// The words at each piece.
    words: BTreeMap<usize, Vec<Line>>,
    /// Where the symbols of upright pieces stand, by the piece's index.
    slots: BTreeMap<usize, Row>,
    heights: BTreeMap<Row, f64>,
    points: Vec<(usize, Row)>,
    columns: Vec<f64>,
    reserve: f64,
}

/// Where the words beside a column go.
pub(super) struct Side {
    pub(super) offset: f64,
    pub(super) room: f64,
    pub(super) anchor: &'static str,
}

impl Layout {
    /// Lays a circuit out.
    pub(super) fn of(circuit: &Circuit) -> Self {
        let grid = super::grid::Grid::of(circuit);
        let ways = super::route::ways(circuit, &grid);
        let lanes = ways.values().filter(|way| matches!(way, Way::Lane(_))).count();
        let faulty = ways.iter().any(|(index, way)| {
            matches!(way, Way::Lane(_))
                && circuit.pieces.get(*index).is_some_and(|piece| piece.condition == Condition::Faulty)
        });
        let reserve = 22.0 * lanes as f64 + if faulty { 50.0 } else { 0.0 };
        let reserve = reserve.min(110.0);
        let mut layout = Layout {
            bands: Vec::new(),
            height: 0.0,
            columns: columns(grid.columns, reserve),
            words: BTreeMap::new(),
            slots: grid.slots,
            heights: BTreeMap::new(),
            points: grid.points,
            ways,
            reserve,
        };
        for (index, piece) in circuit.pieces.iter().enumerate() {
            let lines = layout.set(index, piece, circuit);
            layout.words.insert(index, lines);
        }
        layout.stack(circuit);
        layout
    }

    /// Where a point is.
    pub(super) fn at(&self, point: usize) -> Option<(f64, f64)> {
        let (column, row) = self.points.get(point)?;
        Some((self.x(*column), self.y(*row)))
    }

    /// The row of a point.
    pub(super) fn row(&self, point: usize) -> Option<Row> {
        self.points.get(point).map(|(_, row)| *row)
    }

    /// The column of a point, from the left.
    pub(super) fn column(&self, point: usize) -> usize {
        self.points.get(point).map_or(0, |(column, _)| *column)
    }

    /// The height of a row.
    pub(super) fn y(&self, row: Row) -> f64 {
        self.heights.get(&row).copied().unwrap_or_default()
    }

    /// Where the symbol of an upright piece stands, if it has one.
    pub(super) fn slot(&self, piece: usize) -> Option<f64> {
        self.slots.get(&piece).map(|row| self.y(*row))
    }

    /// The words at a piece.
    pub(super) fn lines(&self, piece: usize) -> &[Line] {
        self.words.get(&piece).map_or(&[], Vec::as_slice)
    }

    /// Whether a conductor runs across in the row of this point.
    pub(super) fn is_crossed(&self, point: usize) -> bool {
        let Some(row) = self.row(point) else {
            return false;
        };
        self.ways.values().any(|way| matches!(way, Way::Across(across) if *across == row))
    }

    /// Where lane number `lane` runs: right of all columns, however many lanes there are.
    pub(super) fn lane(&self, lane: usize) -> f64 {
        let count = self.ways.values().filter(|way| matches!(way, Way::Lane(_))).count();
        let edge = WIDTH - 14.0;
        let last = self.columns.last().copied().unwrap_or_default() + 10.0;
        edge - lane as f64 * f64::min(22.0, (edge - last) / count.max(1) as f64)
    }

    /// How wide the names of the places may be.
    pub(super) fn names(&self) -> f64 {
        self.x(0) - 20.0
    }

    /// Where words go that stand `gap` from the middle of a column.
    pub(super) fn side(&self, column: usize, gap: f64) -> Side {
        let x = self.x(column);
        let inwards = self.columns.len() == 2 && column == 1;
        let end = match self.columns.get(column + 1) {
            Some(next) if self.columns.len() == 2 => (x + next) / 2.0 - 1.0,
            Some(next) => next - 12.0,
            None if inwards => WIDTH,
            None => WIDTH - 4.0 - self.reserve,
        };
        if inwards {
            let room = (x - self.x(0)) / 2.0 - gap - 1.0;
            Side { offset: -gap, room, anchor: "end" }
        } else {
            Side { offset: gap, room: (end - x - gap).max(0.0), anchor: "start" }
        }
    }

    /// How far the word at a zigzag arrow may go from `x`, towards 1 right or -1 left.
    pub(super) fn clear(&self, x: f64, towards: f64) -> f64 {
        let ahead = self.columns.iter().map(|column| (column - x) * towards - 5.0).filter(|room| *room > 0.0);
        let edge = if towards > 0.0 { WIDTH - 4.0 - x } else { x - 4.0 };
        ahead.fold(edge, f64::min)
    }

    fn x(&self, column: usize) -> f64 {
        self.columns.get(column).copied().unwrap_or(WIDTH / 2.0)
    }

    /// The lines of words at a piece.
    fn set(&self, index: usize, piece: &Piece, circuit: &Circuit) -> Vec<Line> {
        let room = match self.ways.get(&index) {
            Some(Way::Along) => self.room_beside(index, piece, circuit),
            Some(Way::Across(_)) => (self.x(self.column(piece.from)) - self.x(self.column(piece.to))).abs() - 22.0,
            _ => return Vec::new(),
        };
        if room < 20.0 {
            return Vec::new();
        }
        let strong = matches!(piece.kind, Kind::Lamp(_) | Kind::Meter);
        let (class, weight) = if strong { ("tb", Weight::Bold) } else { ("", Weight::Plain) };
        let value = piece.value.iter().filter(|value| width(value, weight, SIZE) <= room);
        let value = value.map(|value| (class, value.clone()));
        let label = piece.label.iter().flat_map(|label| wrap(label, Weight::Plain, SIZE, room, 2));
        value.chain(label.map(|line| ("t2", line))).collect()
    }

    /// The room beside an upright piece: to the middle between two columns, or all of it if the other has nothing in this row.
    fn room_beside(&self, index: usize, piece: &Piece, circuit: &Circuit) -> f64 {
        let gap = symbol::half_width(piece.kind) + 6.0;
        let half = self.side(self.column(piece.from), gap).room;
        let row = self.slots.get(&index);
        let labelled = |point: &super::Point| point.label.is_some();
        let labels = circuit.points.iter().zip(&self.points).any(|(point, (_, at))| labelled(point) && Some(at) == row);
        let alone = !labels && self.slots.values().filter(|at| Some(*at) == row).count() == 1;
        if alone && self.columns.len() == 2 { self.x(1) - self.x(0) - gap - 12.0 } else { half }
    }

    /// Gives every row its height, band by band.
    fn stack(&mut self, circuit: &Circuit) {
        let sizes = self.sizes(circuit);
        let mut cursor = 2.0;
        let places: BTreeSet<usize> = sizes.keys().map(|(place, _, _)| *place).collect();
        for place in places {
            let top = cursor;
            self.bands.push(Band { place, top });
            cursor += 8.0;
            for (row, (above, below)) in sizes.range((place, 0, 0)..=(place, usize::MAX, usize::MAX)) {
                cursor += above;
                self.heights.insert(*row, cursor);
                cursor += below;
            }
            let name = circuit.places.get(place).map_or("", String::as_str);
            let lines = wrap(name, Weight::Plain, SIZE, self.names(), 2).len().max(1);
            cursor = (cursor + 8.0).max(top + 14.0 + LEADING * lines as f64);
        }
        self.height = cursor + 2.0;
    }

    /// How far each row reaches above and below its line.
    fn sizes(&self, circuit: &Circuit) -> BTreeMap<Row, (f64, f64)> {
        let mut sizes: BTreeMap<Row, (f64, f64)> = BTreeMap::new();
        let mut need = |row: Row, above: f64, below: f64| {
            let size = sizes.entry(row).or_insert((9.0, 9.0));
            *size = (size.0.max(above), size.1.max(below));
        };
        for (index, (_, row)) in self.points.iter().enumerate() {
            let labelled = circuit.points.get(index).is_some_and(|point| point.label.is_some());
            need(*row, 9.0, if labelled && self.is_crossed(index) { 24.0 } else { 9.0 });
        }
        for (index, piece) in circuit.pieces.iter().enumerate() {
            let words = LEADING * self.lines(index).len() as f64;
            let cry = if piece.condition == Condition::Faulty { ZIGZAG } else { 0.0 };
            match self.ways.get(&index) {
                Some(Way::Along) => {
                    let Some(row) = self.slots.get(&index) else {
                        continue;
                    };
                    let symbol = symbol::half_length(piece.kind).max(8.0) + 5.0;
                    if piece.condition == Condition::Faulty {
                        need(*row, symbol.max(ZIGZAG + 6.0), symbol.max(words + 6.0));
                    } else {
                        need(*row, symbol.max(words / 2.0 + 3.0), symbol.max(words / 2.0 + 3.0));
                    }
                }
                Some(Way::Across(row)) => {
                    let below = if words > 0.0 {
                        self.below(index, circuit) + words - 8.0
                    } else {
                        symbol::half_width(piece.kind)
                    };
                    need(*row, symbol::height(piece.kind) + 3.0 + cry, below.max(9.0));
                }
                Some(Way::Lane([from, to])) => {
                    need(*from, 9.0, 9.0);
                    need(*to, 9.0, 9.0);
                }
                None => {}
            }
        }
        sizes
    }

    /// How far below its line the first words of a piece that runs across stand.
    pub(super) fn below(&self, index: usize, circuit: &Circuit) -> f64 {
        let Some(Way::Across(row)) = self.ways.get(&index) else {
            return 0.0;
        };
        let labels = circuit.points.iter().zip(&self.points).any(|(point, (_, at))| at == row && point.label.is_some());
        let kind = circuit.pieces.get(index).map_or(Kind::Wire, |piece| piece.kind);
        if labels { 34.0 } else { symbol::half_width(kind) + 15.0 }
    }
}

/// The middles of the columns; lanes at the right edge need some of the width.
fn columns(count: usize, reserve: f64) -> Vec<f64> {
    let (first, last, least): (f64, f64, f64) = match count {
        0 | 1 => (170.0, 170.0, 170.0),
        2 => (104.0, 240.0, 200.0),
        3 if reserve > 0.0 => (84.0, 254.0, 214.0),
        3 => (98.0, 254.0, 254.0),
        4 => (74.0, 278.0, 260.0),
        _ => (70.0, 306.0, 290.0),
    };
    let last = f64::min(last, WIDTH - 24.0 - reserve).max(least);
    let step = (last - first) / count.saturating_sub(1).max(1) as f64;
    (0..count.max(1)).map(|column| first + step * column as f64).collect()
}
