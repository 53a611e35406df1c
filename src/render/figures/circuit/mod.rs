//! The circuit of a set-up, drawn along the item: tip above, tester below, one column for each way of the current.
//!
//! In: points with their place and way, and pieces between them with their state. Out: one SVG, 340 units wide and as high as
//! it needs. Symbols are after IEC 60617, drawn in the state shown; the live loop is a wide band under the conductors, the fault
//! is marked with a zigzag arrow. Conductors that cross are not joined; a dot says that they are.
//! Left to others: what is live and what reads what, and the caption that says which state this is.
//! Not promised: words for a piece that runs in a lane at the edge, and values where there are more than four ways.

mod grid;
mod place;
mod route;
mod symbol;

use super::lamp::Lamp;
use super::svg::{self, Element};
use super::words::{Weight, fitted, wrap};
use place::Layout;
use route::{Route, Way};

/// What is drawn.
#[derive(Clone, Debug, Default)]
pub struct Circuit {
    /// Starts the ids; unique in the file.
    pub prefix: String,
    /// Read out in place of the drawing: what it shows, and which lamps burn.
    pub title: String,
    /// The word at the zigzag arrow: "fault".
    pub fault: String,
    /// Names of the places, tip first.
    pub places: Vec<String>,
    /// Points, in each way from tip to tester.
    pub points: Vec<Point>,
    /// What joins them. A piece that names no point is passed over.
    pub pieces: Vec<Piece>,
}

/// A point that pieces meet in.
#[derive(Clone, Debug, Default)]
pub struct Point {
    /// Index of its place.
    pub place: usize,
    /// Its column from the left: B left, C right; with three pins A, B, C.
    pub way: usize,
    /// A letter or a word beside it.
    pub label: Option<String>,
}

/// A piece between two points.
#[derive(Clone, Debug)]
pub struct Piece {
    /// Index of one point.
    pub from: usize,
    /// Index of the other point.
    pub to: usize,
    /// Index of the place where its symbol stands, if its points are in different places.
    pub place: usize,
    /// What it is.
    pub kind: Kind,
    /// What it reads or does, in bold at lamps and meters: "0.4 Ω", "lit". Never shortened.
    pub value: Option<String>,
    /// What it is called; wrapped, and shortened where it does not fit.
    pub label: Option<String>,
    /// Whether the loop runs through it.
    pub current: Current,
    /// Whether the fault is here.
    pub condition: Condition,
}

/// What a piece is, in the state shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A conductor of no account.
    Wire,
    /// A conductor with a resistance that is.
    Resistor,
    /// Two things that touch or not.
    Contact(Contact),
    /// A contact that is worked by pressing: a tip, a button.
    Push(Contact),
    /// A lamp.
    Lamp(Lamp),
    /// An ohmmeter.
    Meter,
    /// A battery.
    Cell,
    /// Plug and socket.
    Plug,
    /// A conductor that is broken, or a part that is not there.
    Broken,
}

/// The state of a contact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contact {
    /// Current can pass.
    Closed,
    /// It cannot.
    Open,
}

/// Whether current runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Current {
    /// None.
    #[default]
    None,
    /// The live loop.
    Live,
}

/// Whether a piece is as it should be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Condition {
    /// It is.
    #[default]
    Sound,
    /// It is the fault.
    Faulty,
}

const WIDTH: f64 = 340.0;
const SIZE: f64 = 14.0;
const LEADING: f64 = 16.0;

/// The drawing of a circuit.
pub fn circuit(circuit: &Circuit) -> String {
    let layout = Layout::of(circuit);
    let routes = route::routes(circuit, &layout);
    let live = routes.iter().filter(|route| route.piece.current == Current::Live);
    svg::drawing(WIDTH, layout.height)
        .with("direction", "ltr")
        .all(bands(circuit, &layout))
        .all(live.map(|route| svg::path("live", route.line()).with("stroke-linecap", "round")))
        .all(routes.iter().flat_map(|route| drawn(&layout, route)))
        .all(circuit.points.iter().enumerate().filter_map(|(index, point)| joint(circuit, &layout, index, point)))
        .all(routes.iter().flat_map(|route| worded(circuit, &layout, route)))
        .titled(&circuit.prefix, &circuit.title)
        .print()
}

/// The names of the places, with chain lines between them.
fn bands(circuit: &Circuit, layout: &Layout) -> Vec<Element> {
    let used = layout.bands.iter().enumerate();
    used.flat_map(|(index, band)| {
        let name = circuit.places.get(band.place).map_or("", String::as_str);
        let lines = wrap(name, Weight::Plain, SIZE, layout.names(), 2);
        let line = |(row, line): (usize, &String)| svg::words("t2", 4.0, band.top + 19.0 + LEADING * row as f64, line);
        let words: Vec<Element> = lines.iter().enumerate().map(line).collect();
        let parted = (index > 0).then(|| svg::path("d-c", format!("M4 {}H336", svg::number(band.top))));
        parted.into_iter().chain(words)
    })
    .collect()
}

/// The conductor of a piece and its symbol.
fn drawn(layout: &Layout, route: &Route<'_>) -> Vec<Element> {
    let (x, y) = route.middle();
    let turn = match route.way {
        Way::Across(_) => "",
        Way::Along => " rotate(90)",
        // In the lane at the right edge what lies above its conductor turns inwards.
        Way::Lane(_) => " rotate(-90)",
    };
    let place = format!("translate({} {}){turn}", svg::number(x), svg::number(y));
    let symbol = symbol::symbol(route.piece.kind);
    let mut parts: Vec<Element> = route.leads().into_iter().map(|lead| svg::path("wire", lead)).collect();
    parts.extend(symbol.map(|symbol| symbol.with("transform", place)));
    if route.piece.kind == Kind::Meter {
        parts.push(svg::words("tb", x, y + 5.0, "Ω").with("text-anchor", "middle"));
    }
    if route.piece.condition == Condition::Faulty {
        parts.extend(symbol::zigzag(strike(layout, route)));
    }
    parts
}

/// The dot of a point where three or more meet, or the ring of one that ends; and its label.
fn joint(circuit: &Circuit, layout: &Layout, index: usize, point: &Point) -> Option<Element> {
    let (x, y) = layout.at(index)?;
    let meets = circuit.pieces.iter().filter(|piece| piece.from == index || piece.to == index).count();
    let mark = match meets {
        0 | 1 => Some(svg::circle("term", x, y, 3.0)),
        2 => None,
        _ => Some(svg::circle("node", x, y, 4.0)),
    };
    let label = point.label.as_deref().and_then(|label| named(layout, index, label));
    Some(svg::element("g").all(mark).all(label))
}

/// The label of a point, under the line if one runs across there.
fn named(layout: &Layout, index: usize, label: &str) -> Option<Element> {
    let (x, y) = layout.at(index)?;
    let side = layout.side(layout.column(index), 10.0);
    let line = fitted(label, Weight::Bold, SIZE, side.room)?;
    let below = if layout.is_crossed(index) { 18.0 } else { 5.0 };
    Some(svg::words("tb", x + side.offset, y + below, &line).with("text-anchor", side.anchor))
}

/// The words at a piece: what it reads, what it is called, and that it is the fault.
fn worded(circuit: &Circuit, layout: &Layout, route: &Route<'_>) -> Vec<Element> {
    let lines = layout.lines(route.index);
    let (x, y) = route.middle();
    let (x, first, anchor) = match route.way {
        Way::Across(_) => (x, y + layout.below(route.index, circuit), "middle"),
        Way::Along | Way::Lane(_) => {
            let side = layout.side(layout.column(route.piece.from), symbol::half_width(route.piece.kind) + 6.0);
            (x + side.offset, y + 5.0 - LEADING / 2.0 * (lines.len() as f64 - 1.0).max(0.0), side.anchor)
        }
    };
    let line = |(row, (class, line)): (usize, &place::Line)| {
        svg::words(class, x, first + LEADING * row as f64, line).with("text-anchor", anchor)
    };
    let cry = (route.piece.condition == Condition::Faulty).then(|| cry(&circuit.fault, layout, route));
    lines.iter().enumerate().map(line).chain(cry.flatten()).collect()
}

/// The word at the zigzag arrow.
fn cry(word: &str, layout: &Layout, route: &Route<'_>) -> Option<Element> {
    let strike = strike(layout, route);
    let (x, y, anchor) = strike.word();
    let line = fitted(word, Weight::Bold, SIZE, layout.clear(x, strike.from))?;
    Some(svg::words("tb", x, y, &line).with("text-anchor", anchor))
}

/// Where the arrow strikes: from the side where the words of the column stand.
fn strike(layout: &Layout, route: &Route<'_>) -> symbol::Strike {
    match layout.side(layout.column(route.piece.from), 0.0).anchor {
        "end" => route.struck_from_the_left(),
        _ => route.struck_from_the_right(),
    }
}

#[cfg(test)]
mod tests;
