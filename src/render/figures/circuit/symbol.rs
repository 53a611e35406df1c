//! The symbols, after IEC 60617, drawn lying: the conductor comes in at the left and goes out at the right.
//!
//! Centre at 0, 0. An upright conductor turns its symbol by 90 degrees, so what lies above is then on the right.

use super::{Contact, Kind};
use crate::render::figures::lamp::Lamp;
use crate::render::figures::svg::{self, Element, Trace};

/// Half of the length that the symbol takes out of its conductor.
pub(super) fn half_length(kind: Kind) -> f64 {
    match kind {
        Kind::Wire => 0.0,
        Kind::Resistor => 23.0,
        Kind::Contact(_) | Kind::Push(_) => 24.0,
        Kind::Lamp(_) | Kind::Meter => 13.0,
        Kind::Cell => 6.0,
        Kind::Plug => 8.0,
        Kind::Broken => 10.0,
    }
}

/// How far the symbol reaches above its conductor.
pub(super) fn height(kind: Kind) -> f64 {
    match kind {
        Kind::Push(_) => 32.0,
        Kind::Contact(Contact::Open) => 24.0,
        Kind::Cell => 16.0,
        _ => half_width(kind),
    }
}

/// How far the symbol reaches below its conductor.
pub(super) fn half_width(kind: Kind) -> f64 {
    match kind {
        Kind::Wire => 2.0,
        Kind::Resistor | Kind::Plug => 9.0,
        Kind::Contact(_) | Kind::Push(_) => 5.0,
        Kind::Lamp(_) | Kind::Meter => 13.0,
        Kind::Cell => 16.0,
        Kind::Broken => 6.0,
    }
}

/// The symbol; a plain conductor has none.
pub(super) fn symbol(kind: Kind) -> Option<Element> {
    let group = svg::element("g");
    Some(match kind {
        Kind::Wire => return None,
        Kind::Resistor => group.add(svg::rect("res", -23.0, -9.0, 46.0, 18.0)),
        Kind::Contact(state) => group.all(contact(state)),
        Kind::Push(state) => group.all(contact(state)).all(actuator(state)),
        Kind::Lamp(state) => group.all(lamp(state)),
        Kind::Meter => group.add(svg::circle("lampc", 0.0, 0.0, 13.0)),
        Kind::Cell => group.add(svg::path("wire", "M-5-16V16")).add(svg::path("wire thickcell", "M5-8V8")),
        Kind::Plug => group.add(svg::path("wire", "M0-8a8 8 0 0 0 0 16M4 0H8")).add(svg::circle("pin", 1.0, 0.0, 3.5)),
        Kind::Broken => group.add(svg::path("wire", "M-13-6l6 12M7-6l6 12")),
    })
}

/// An arm that turns about the left terminal, on the right one or off it.
fn contact(state: Contact) -> [Element; 3] {
    let arm = match state {
        Contact::Closed => "M-21-1L27-5",
        Contact::Open => "M-21-2L26-24",
    };
    [svg::circle("term", -24.0, 0.0, 3.0), svg::path("wire", arm), svg::path("wire", "M24 0V-9")]
}

/// The press that works the arm: a dashed link and a cap.
fn actuator(state: Contact) -> [Element; 2] {
    let arm = match state {
        Contact::Closed => -3.0,
        Contact::Open => -13.0,
    };
    let link = svg::path("d-t", Trace::from(0.0, arm).line(0.0, -30.0).open()).with("stroke-dasharray", "4 3");
    [link, svg::path("wire", "M-10-24v-6h20v6")]
}

fn lamp(state: Lamp) -> Vec<Element> {
    let cross = "M-9.2-9.2l18.4 18.4M9.2-9.2l-18.4 18.4";
    let rim = |class| svg::circle(class, 0.0, 0.0, 13.0);
    match state {
        Lamp::Dark => vec![rim("lampc"), svg::path("lampx", cross)],
        Lamp::Lit => vec![rim("lampc lit"), svg::path("lampx lit", cross)],
        Lamp::ComesAndGoes => {
            let half = svg::path("lampc lit", "M0-13a13 13 0 0 1 0 26z");
            vec![rim("lampc"), half, svg::path("lampx", cross)]
        }
    }
}

/// Where a zigzag arrow strikes, and from which side.
#[derive(Clone, Copy)]
pub(super) struct Strike {
    /// The arrow's point.
    pub(super) x: f64,
    /// The arrow's point.
    pub(super) y: f64,
    /// 1 from the right, -1 from the left.
    pub(super) from: f64,
}

/// How high a zigzag arrow stands.
pub(super) const ZIGZAG: f64 = 40.0;

impl Strike {
    /// Where the word beside the arrow starts, and its anchor.
    pub(super) fn word(self) -> (f64, f64, &'static str) {
        let anchor = if self.from > 0.0 { "start" } else { "end" };
        (self.x + 23.0 * self.from, self.y - 12.0, anchor)
    }
}

/// The zigzag arrow of a fault.
pub(super) fn zigzag(strike: Strike) -> [Element; 2] {
    let at = |x: f64, y: f64| (strike.x + x * strike.from, strike.y + y);
    let trace = |points: &[(f64, f64)]| {
        let mut points = points.iter().map(|(x, y)| at(*x, *y));
        let start = points.next().unwrap_or_default();
        points.fold(Trace::from(start.0, start.1), |trace, (x, y)| trace.line(x, y))
    };
    let flash = trace(&[(25.0, -37.0), (5.0, -22.0), (14.0, -18.0), (5.0, -8.0)]);
    [svg::path("flash", flash.open()), svg::path("flashhead", trace(&[(0.0, 0.0), (1.0, -12.0), (10.0, -5.0)]).close())]
}
