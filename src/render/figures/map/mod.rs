//! The map of questions: a whole decision tree in one look, its order, its cost and what each answer settles.
//!
//! In: the tree with its words, minutes and shares. Out: one SVG, 360 units wide and as high as it needs. Time runs down along
//! every stream: below a question's cross line there is one tick a minute that it takes. A stream is as wide as the share
//! of cases that is not yet explained; each answer's cases leave it on the right, those that are settled into a thick bar.
//! The branch that carries most goes straight on and is drawn last, so no stream crosses another, and each row of words has
//! its own height, so no words meet. Left to others: the same in words, as the drawing is read out by its title alone.

mod fold;
mod place;

use super::svg::{self, Element, Trace};
use place::{Arrival, Placed, Row};

/// The whole map.
#[derive(Clone, Copy)]
pub struct Map<'a> {
    /// Starts the ids; unique in the file.
    pub prefix: &'a str,
    /// Read out in place of the drawing.
    pub title: &'a str,
    /// Head of the column of minutes: "minutes".
    pub minutes: &'a str,
    /// Head of the column of shares: "in 100".
    pub shares: &'a str,
    /// A share in 100 as it is printed: "12".
    pub figure: &'a dyn Fn(f64) -> String,
    /// Names this many endings that the map has no room for: "4 others".
    pub others: &'a dyn Fn(usize) -> String,
    /// The first question.
    pub first: &'a Question,
}

/// A question and where its answers lead.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// What pages call it: "3".
    pub number: String,
    /// In a few words.
    pub label: String,
    /// Minutes from asking to answer, what has to be opened for it included.
    pub minutes: f64,
    /// One for each answer, in the author's order.
    pub branches: Vec<Branch>,
}

/// Where an answer leads.
#[derive(Clone, Debug, PartialEq)]
pub enum Branch {
    /// To another question.
    Ask(Question),
    /// To an ending.
    End(Ending),
}

/// A cause, or several that one remedy mends, or not on this list.
#[derive(Clone, Debug, PartialEq)]
pub struct Ending {
    /// In a few words.
    pub label: String,
    /// Cases in 100 that end here; less than 0 or not finite counts as 0.
    pub share: f64,
}

impl Question {
    /// Cases in 100 that come this way.
    fn cases(&self) -> f64 {
        self.branches.iter().map(Branch::cases).sum()
    }
}

impl Branch {
    fn cases(&self) -> f64 {
        match self {
            Branch::Ask(question) => question.cases(),
            Branch::End(ending) => ending.cases(),
        }
    }
}

impl Ending {
    fn cases(&self) -> f64 {
        if self.share.is_finite() {
            self.share.max(0.0)
        } else {
            0.0
        }
    }
}

const WIDTH: f64 = 360.0;
const SIZE: f64 = 14.0;
/// From one base line to the next.
const LEADING: f64 = 17.0;
/// Where the first stream starts; the minutes stand left of it.
const SOURCE: f64 = 48.0;
/// How wide a stream of all cases is.
const FULL: f64 = 62.0;
/// Words end here.
const RIGHT: f64 = 356.0;
/// How far a stream that is set aside stands from the one it leaves.
const APART: f64 = 16.0;

/// The map of the tree.
///
/// More than 26 questions and endings are folded, the rarest first, into endings that count what they stand for.
pub fn map(map: &Map<'_>) -> String {
    let tree = fold::folded(map.first, map.others);
    let placed = place::placed(&tree, map.figure);
    let heads = [
        svg::words(
            "t2",
            2.0,
            18.0,
            &place::one_line(map.minutes, placed.bars - 12.0),
        ),
        svg::words(
            "t2",
            placed.bars + 10.0,
            18.0,
            &place::one_line(map.shares, RIGHT - placed.bars - 10.0),
        ),
    ];
    svg::drawing(WIDTH, placed.height)
        .with("direction", "ltr")
        .all(heads)
        .all(placed.rows.iter().map(|row| stream(row, &placed)))
        .all(placed.rows.iter().map(|row| marks(row, &placed)))
        .titled(map.prefix, map.title)
        .print()
}

/// The water of a row: how its cases get from the question above to it.
fn stream(row: &Row, placed: &Placed) -> Element {
    let (left, right) = (row.x, row.x + row.width);
    match row.arrival {
        Arrival::Source => svg::element("g"),
        Arrival::StraightOn => {
            let side = |x: f64| Trace::from(x, row.from).line(x, row.y).open();
            banked(
                Trace::from(left, row.from)
                    .line(right, row.from)
                    .line(right, row.y)
                    .line(left, row.y)
                    .close(),
                [side(left), side(right)],
            )
        }
        Arrival::SetAside => {
            let old = row.x - APART;
            let sides = [set_aside(old, row), set_aside(old + row.width, row)];
            let area = step_back(sides[1].clone().line(left, row.y), old, row).line(old, row.from);
            banked(area.close(), sides.map(Trace::open))
        }
        Arrival::Ending => turned(row, placed.bars),
    }
}

fn banked(area: String, banks: [String; 2]) -> Element {
    svg::element("g")
        .add(svg::path("flow", area))
        .add(svg::path("bank", banks.concat()))
}

/// One bank of a stream that steps aside to the right just above its question.
fn set_aside(x: f64, row: &Row) -> Trace {
    let [top, half, end] = [row.y - 26.0, row.y - 14.0, row.y - 2.0];
    let down = Trace::from(x, row.from).line(x, top);
    down.curve([(x, half), (x + APART, half)], (x + APART, end))
        .line(x + APART, row.y)
}

/// The same bank from below upwards.
fn step_back(area: Trace, x: f64, row: &Row) -> Trace {
    let [top, half, end] = [row.y - 26.0, row.y - 14.0, row.y - 2.0];
    area.line(x + APART, end)
        .curve([(x + APART, half), (x, half)], (x, top))
}

/// A stream that turns right, to the bar of its ending.
fn turned(row: &Row, bars: f64) -> Element {
    let (left, right) = (row.x, row.x + row.width);
    let (top, bottom) = (row.y - row.width / 2.0, row.y + row.width / 2.0);
    let (inner, outer) = (10.0, row.width + 10.0);
    let high = Trace::from(right, row.from)
        .line(right, top - inner)
        .bend(right, top, right + inner, top)
        .line(bars, top);
    let low = Trace::from(bars, bottom)
        .line(left + outer, bottom)
        .bend(left, bottom, left, bottom - outer)
        .line(left, row.from);
    let area = high
        .clone()
        .line(bars, bottom)
        .line(left + outer, bottom)
        .bend(left, bottom, left, bottom - outer)
        .line(left, row.from);
    banked(area.close(), [high.open(), low.open()])
}

/// What is drawn and written over the water of a row.
fn marks(row: &Row, placed: &Placed) -> Element {
    let said = (!row.minute.is_empty()).then(|| svg::words("t2", 36.0, row.y + 5.0, &row.minute));
    let group = svg::element("g").all(said.map(|minute| minute.with("text-anchor", "end")));
    match row.arrival {
        Arrival::Ending => {
            let half = (row.width / 2.0).max(4.0) + 2.0;
            let bar = Trace::from(placed.bars, row.y - half)
                .line(placed.bars, row.y + half)
                .open();
            let above = LEADING / 2.0 * (row.lines.len() as f64 - 1.0).max(0.0);
            let words = written(
                row,
                placed.bars + 10.0 + placed.figures,
                [row.y + 5.0, row.y + 5.0 - above],
            );
            group.add(svg::path("end", bar)).all(words)
        }
        _ => {
            let right = row.x + row.width;
            let cross = Trace::from(row.x - 5.0, row.y)
                .line(right + 8.0, row.y)
                .open();
            let words = written(row, right + 13.0 + row.figure_width, [row.y + 5.0; 2]);
            group
                .all(ticks(row, placed.minute))
                .add(svg::path("ask", cross))
                .all(words)
        }
    }
}

/// One tick for each minute that the question takes, or for each five where they would run together.
fn ticks(row: &Row, minute: f64) -> Vec<Element> {
    let each = if minute < 4.0 { 5.0 } else { 1.0 };
    let count = (row.minutes / each).floor() as u32;
    let tick = |index: u32| {
        let y = row.y + f64::from(index) * each * minute;
        svg::path("tick", Trace::from(row.x - 5.0, y).line(row.x, y).open())
    };
    (1..=count).map(tick).collect()
}

/// The figure in bold, ending at `x`, and the label beside it; `y` has the base lines of the figure and of the first line.
fn written(row: &Row, x: f64, y: [f64; 2]) -> Vec<Element> {
    let [figure_y, first_y] = y;
    let figure = svg::words("tb", x, figure_y, &row.figure).with("text-anchor", "end");
    let line = |(index, line): (usize, &String)| {
        svg::words("q", x + 7.0, first_y + LEADING * index as f64, line)
    };
    std::iter::once(figure)
        .chain(row.lines.iter().enumerate().map(line))
        .collect()
}

#[cfg(test)]
mod tests;
