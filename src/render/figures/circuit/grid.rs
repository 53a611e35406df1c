//! The rows of a circuit, before they have heights: who stands in which row of which place.

use super::place::Row;
use super::{Circuit, Condition, Kind, Piece};
use std::collections::BTreeMap;

/// Rows and columns.
pub(super) struct Grid {
    /// How many columns there are.
    pub(super) columns: usize,
    /// Column and row of each point.
    pub(super) points: Vec<(usize, Row)>,
    /// The row of the symbol of an upright piece, by its index; a plain conductor has none.
    pub(super) slots: BTreeMap<usize, Row>,
    /// The pieces that run along a column, from one point to the next.
    pub(super) along: Vec<usize>,
    /// The points of each column, from above to below.
    pub(super) orders: Vec<Vec<usize>>,
}

/// What stands in a column.
#[derive(Clone, Copy)]
enum Item {
    Point(usize),
    Slot(usize),
}

struct Standing {
    column: usize,
    place: usize,
    item: Item,
}

impl Grid {
    /// The rows of a circuit.
    pub(super) fn of(circuit: &Circuit) -> Self {
        let orders = orders(circuit);
        let (standing, along) = standing(circuit, &orders);
        let levels = levels(circuit, &standing);
        let mut grid = Grid {
            columns: orders.len(),
            points: vec![(0, (0, 0, 0)); circuit.points.len()],
            slots: BTreeMap::new(),
            along,
            orders,
        };
        for (standing, level) in standing.iter().zip(levels) {
            let row = (standing.place, level, 0);
            match standing.item {
                Item::Point(point) => grid.points[point] = (standing.column, row),
                Item::Slot(piece) => {
                    grid.slots.insert(piece, row);
                }
            }
        }
        grid
    }
}

/// The points of each column in their order: by place, then as given.
fn orders(circuit: &Circuit) -> Vec<Vec<usize>> {
    let mut by_way: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (index, point) in circuit.points.iter().enumerate() {
        by_way.entry(point.way).or_default().push(index);
    }
    let place = |index: &usize| circuit.points.get(*index).map_or(0, |point| point.place);
    let mut orders: Vec<Vec<usize>> = by_way.into_values().collect();
    for order in &mut orders {
        order.sort_by_key(place);
    }
    orders
}

/// Everything that takes up a row, column by column, and the pieces that run along one.
fn standing(circuit: &Circuit, orders: &[Vec<usize>]) -> (Vec<Standing>, Vec<usize>) {
    let (mut all, mut along) = (Vec::new(), Vec::new());
    let place = |index: usize| circuit.points.get(index).map_or(0, |point| point.place);
    for (column, order) in orders.iter().enumerate() {
        for (position, point) in order.iter().enumerate() {
            all.push(Standing { column, place: place(*point), item: Item::Point(*point) });
            let Some(next) = order.get(position + 1) else {
                continue;
            };
            let Some((index, piece)) = joining(circuit, *point, *next) else {
                continue;
            };
            along.push(index);
            if has_symbol(piece) {
                let place = piece.place.clamp(place(*point), place(*next));
                all.push(Standing { column, place, item: Item::Slot(index) });
            }
        }
    }
    (all, along)
}

/// The first piece between two points.
fn joining(circuit: &Circuit, one: usize, other: usize) -> Option<(usize, &Piece)> {
    let joins = |piece: &Piece| (piece.from, piece.to) == (one, other) || (piece.from, piece.to) == (other, one);
    circuit.pieces.iter().enumerate().find(|(_, piece)| joins(piece))
}

fn has_symbol(piece: &Piece) -> bool {
    piece.kind != Kind::Wire || piece.condition == Condition::Faulty || piece.value.is_some() || piece.label.is_some()
}

/// The row of each item within its place: below the one before, level with what it is joined to across.
fn levels(circuit: &Circuit, standing: &[Standing]) -> Vec<usize> {
    let pairs = level_pairs(circuit, standing);
    let mut levels = vec![0; standing.len()];
    // With no contradiction each round settles at least one item more. With one, such a piece does not find its points level
    // and is drawn some other way; but order always holds, so that comes last.
    for _ in 0..=standing.len() {
        let before = levels.clone();
        for (one, other) in &pairs {
            let lower = levels[*one].max(levels[*other]);
            (levels[*one], levels[*other]) = (lower, lower);
        }
        keep_order(&mut levels, standing);
        if levels == before {
            break;
        }
    }
    levels
}

fn keep_order(levels: &mut [usize], standing: &[Standing]) {
    for (index, pair) in standing.windows(2).enumerate() {
        if pair[0].column == pair[1].column && pair[0].place == pair[1].place {
            levels[index + 1] = levels[index + 1].max(levels[index] + 1);
        }
    }
}

/// The items whose points a piece joins across, in the same place.
fn level_pairs(circuit: &Circuit, standing: &[Standing]) -> Vec<(usize, usize)> {
    let find =
        |point: usize| standing.iter().position(|item| matches!(item.item, Item::Point(index) if index == point));
    let joined = circuit.pieces.iter().filter_map(|piece| Some((find(piece.from)?, find(piece.to)?)));
    joined
        .filter(|(one, other)| {
            standing[*one].column != standing[*other].column && standing[*one].place == standing[*other].place
        })
        .collect()
}
