//! A circuit: its figures, and its tables of readings.

use super::{LampShown, Link, Markdown};
use serde::Serialize;

/// A circuit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Circuit {
    /// How to read it: *Markdown*.
    pub says: Option<Markdown>,
    /// The guides that it proofs.
    pub guides: Vec<Link>,
    /// The page that teaches it.
    pub how: Option<Link>,
    /// Its drawing in each position.
    pub drawings: Vec<DrawnPosition>,
    /// What each of its lamps shows, and what that means.
    pub lamps: Vec<Patterns>,
    /// Where its figures come from that name no source of their own.
    pub source: Option<String>,
    /// What it is made of: the pieces and touchings of its own file.
    pub parts: Vec<CircuitPart>,
    /// Its faults, in words.
    pub faults: Vec<CircuitPart>,
    /// Its positions, in words.
    pub positions: Vec<CircuitPart>,
}

/// A circuit drawn in a position, with what its guide says to it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnPosition {
    /// The drawing.
    pub figure: CircuitFigure,
    /// What each lamp shows.
    pub shows: Vec<LampSaid>,
    /// *Markdown*.
    pub says: Option<Markdown>,
}

/// *How it works*: a circuit taught position by position.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct How {
    /// The idea of it: *Markdown*.
    pub says: Option<Markdown>,
    /// What is looked at, one after the other.
    pub lessons: Vec<TaughtPosition>,
    /// The circuit.
    pub circuit: Link,
    /// The guides that rest on it.
    pub guides: Vec<Link>,
}

/// A position to learn from.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TaughtPosition {
    /// Its id on the page.
    pub anchor: String,
    /// The heading.
    pub title: String,
    /// What to see in it: *Markdown*.
    pub says: Markdown,
    /// The drawing, if it can be drawn.
    pub figure: Option<CircuitFigure>,
    /// What each lamp shows.
    pub shows: Vec<LampSaid>,
}

/// What a lamp shows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampSaid {
    /// The lamp.
    pub title: String,
    /// `lamp-lit`, `lamp-dark`, `lamp-may`: a message id.
    pub state: &'static str,
}

/// A circuit in one position: drawn by the function `circuit_drawing`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CircuitFigure {
    /// The position in words; nothing where `at_rest` says it and the guide has no words for it.
    pub position: Option<String>,
    /// Whether nothing is pressed or touched.
    pub at_rest: bool,
    /// The fault in words, if one is drawn.
    pub fault: Option<String>,
    /// Between which two points the current is looked for; none for the loop that the first lamp looks at.
    pub between: Option<[String; 2]>,
    /// Whether the loop is closed.
    pub closed: bool,
    /// Names of the places, tip first.
    pub places: Vec<String>,
    /// The points.
    pub points: Vec<DrawnPoint>,
    /// What joins them, or should.
    pub pieces: Vec<DrawnPiece>,
}

/// A point of a drawn circuit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnPoint {
    /// Index of its place; past the last name for the instrument's pins.
    pub place: usize,
    /// Its column from the left.
    pub way: usize,
    /// The letter of its line, where something is plugged in.
    pub label: Option<String>,
}

/// A piece of a drawn circuit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnPiece {
    /// Index of one point.
    pub from: usize,
    /// Index of the other point.
    pub to: usize,
    /// Index of the place where its symbol stands.
    pub place: usize,
    /// `wire`, `resistor`, `broken`, `push-closed`, `push-open`, `contact-closed`, `contact-open`, `lamp-lit`, `lamp-dark`,
    /// `lamp-comes-and-goes`.
    pub kind: &'static str,
    /// What it does: a message id, for lamps.
    pub value: Option<&'static str>,
    /// What it is.
    pub label: Option<String>,
    /// Whether the loop runs through it.
    pub live: bool,
    /// Whether the fault is here.
    pub faulty: bool,
}

/// A lamp of a circuit with everything that it can show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Patterns {
    /// Its id, unique across the handbook.
    pub anchor: String,
    /// The lamp.
    pub title: String,
    /// On what: a message id, such as `seen-on-tester`.
    pub seen_on: &'static str,
    /// The circuit.
    pub circuit: Link,
    /// What it can show.
    pub rows: Vec<PatternRow>,
}

/// Something that a lamp can show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PatternRow {
    /// What the lamp does in each position.
    pub lamps: Vec<LampShown>,
    /// Whether sound kit shows this.
    pub sound: bool,
    /// The faults that show this, surely or possibly.
    pub faults: Vec<Link>,
    /// The guides that fit.
    pub guides: Vec<Link>,
}

/// All the lamps of one instrument, and everything that they can show together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Together {
    /// Its id, unique across the handbook.
    pub anchor: String,
    /// On what: a message id, such as `seen-on-tester`.
    pub seen_on: &'static str,
    /// The circuit.
    pub circuit: Link,
    /// What they can show: sound kit first.
    pub rows: Vec<TogetherRow>,
}

/// Something that all the lamps can show together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TogetherRow {
    /// What lamps do: with faulty kit only those that do something else than with sound kit.
    pub lamps: Vec<LampDoing>,
    /// How many other lamps there are, which do what they do with sound kit.
    pub others: usize,
    /// Whether sound kit shows this.
    pub sound: bool,
    /// The faults that show this, surely or possibly.
    pub faults: Vec<Link>,
    /// The guides that fit.
    pub guides: Vec<Link>,
}

/// One of several lamps, and what it does in each position.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampDoing {
    /// The lamp.
    pub title: String,
    /// What it does.
    pub shown: Vec<LampShown>,
}

/// A point, piece, fault or position of a circuit in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CircuitPart {
    /// Its id on the page.
    pub anchor: String,
    /// What it is.
    pub title: String,
    /// Its value, if it has one: `0.15 to 0.4 Ω`.
    pub value: Option<String>,
    /// The id of the place.
    pub place: Option<String>,
    /// Where its figure comes from.
    pub source: Option<String>,
}
