//! From a circuit guide to a network that can be computed.
//!
//! In: a [`Circuit`] and the others that it may use. Out: [`Wired`]: the network, the words for its parts, what sound kit must show,
//! and a finding for every name that is not there and every figure that makes no sense.
//! Leaves to others: what the network shows (`reckoning::circuit`), whether that agrees with the guides (`proof::checks`).
//! Promise: a broken part is left out with its finding, and what points at it is not called unknown.

mod faults;
mod readings;
mod uses;

use super::code::Code;
use super::finding::{Finding, did_you_mean};
use super::findings::{ids, shape};
use super::index::why_no_id;
use crate::model::circuit::{Circuit, Piece, Point, Position, Shows, TouchesAtRest, Touching};
use crate::model::{Id, Line, Many, Named, ResistanceRange, Told};
use crate::reckoning::circuit::{
    AtRest, Flaw, Network, Ohms, PointId, PositionId, ReadingId, TouchingId, Wiring as Ends,
};
use crate::source::{Place, Placed, Tolerant};
use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};

/// All circuit guides of a handbook, by id.
pub type Circuits<'c> = BTreeMap<&'c str, &'c Circuit>;

/// A circuit that can be computed.
#[derive(Debug, Clone)]
pub struct Wired {
    /// The network.
    pub network: Network,
    /// The words for its parts.
    pub labels: Labels,
    /// What sound kit must show.
    pub healthy: Vec<Expected>,
    /// What it teaches, lesson by lesson.
    pub lessons: Vec<Taught>,
    /// What is wrong in this circuit's own file.
    pub findings: Vec<Finding>,
    /// Names that are there but could not be taken in, here or in a circuit that this one uses.
    pub missing: BTreeSet<String>,
}

impl Wired {
    /// Whether everything that was written got in: only then may anything be concluded from what the network shows.
    pub fn is_whole(&self) -> bool {
        self.findings.is_empty() && self.missing.is_empty()
    }
}

/// The words for the parts of a network, by their names in it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Labels {
    /// Points.
    pub points: BTreeMap<String, Label>,
    /// Pieces.
    pub pieces: BTreeMap<String, Label>,
    /// Touchings.
    pub touchings: BTreeMap<String, Label>,
    /// Positions; `rest` only if the guide has words for it.
    pub positions: BTreeMap<String, Label>,
    /// Faults.
    pub faults: BTreeMap<String, Label>,
    /// Readings, lamps of the apparatus among them.
    pub readings: BTreeMap<String, Label>,
}

/// The words for one part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// What it is.
    pub title: String,
    /// The same in a word or two, for the drawing.
    pub short: Option<String>,
    /// The place on the item.
    pub place: Option<Id>,
    /// Where it stands in its file.
    pub at: Place,
}

/// What sound kit must show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Expected {
    /// On which reading.
    pub reading: ReadingId,
    /// In which position.
    pub position: PositionId,
    /// What it shows.
    pub shows: Shows,
    /// Where that stands.
    pub at: Place,
}

/// A lesson of a circuit, found in its network.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Taught {
    /// Which of the sound lessons, from 0.
    pub lesson: usize,
    /// The position to look at.
    pub position: PositionId,
    /// Between which points the current is looked for; nothing for those that the first lamp looks at.
    pub between: Option<[PointId; 2]>,
}

/// Makes the network of a circuit.
pub fn network(circuit: &Circuit, circuits: &Circuits) -> Wired {
    within(circuit, circuits, &[], &Cell::new(0))
}

/// The same for a circuit that is used by these others. `made` counts the circuits that were made for the outermost one.
fn within(circuit: &Circuit, circuits: &Circuits, users: &[&str], made: &Cell<usize>) -> Wired {
    made.set(made.get() + 1);
    let mut wiring = Wiring {
        network: Network::new(),
        labels: Labels::default(),
        findings: Vec::new(),
        missing: BTreeSet::new(),
        healthy: Vec::new(),
        lessons: Vec::new(),
    };
    wiring.uses(circuit, circuits, users, made);
    wiring.parts(circuit);
    wiring.joins(circuit);
    wiring.faults(circuit);
    wiring.readings(circuit);
    wiring.lessons(circuit);
    let Wiring { network, labels, findings, missing, healthy, lessons } = wiring;
    Wired { network, labels, healthy, lessons, findings, missing }
}

/// A network in the making.
struct Wiring {
    network: Network,
    labels: Labels,
    healthy: Vec<Expected>,
    lessons: Vec<Taught>,
    findings: Vec<Finding>,
    missing: BTreeSet<String>,
}

impl Wiring {
    fn parts(&mut self, circuit: &Circuit) {
        for point in self.sound(&circuit.points) {
            self.point(point);
        }
        for piece in self.sound(&circuit.pieces) {
            self.piece(piece);
        }
        for touching in self.sound(&circuit.touching) {
            self.touching(touching);
        }
        for position in self.sound(&circuit.positions) {
            self.position(position);
        }
    }

    fn point(&mut self, point: &Point) {
        let made = self.network.point(point.point.value.as_str());
        if self.entered(&point.point, made).is_some() {
            self.labels.points.insert(name(&point.point), label(&point.point, &point.title, point.place.as_ref()));
        }
    }

    fn piece(&mut self, piece: &Piece) {
        let ends = self.ends(&piece.from, &piece.to, &piece.ohms);
        let made = ends.map(|ends| self.network.piece(piece.piece.value.as_str(), ends));
        if self.maybe_entered(&piece.piece, made).is_some() {
            let label = label(&piece.piece, &piece.title, piece.place.as_ref());
            self.labels.pieces.insert(name(&piece.piece), label.or_short(piece.short.as_ref()));
        }
    }

    fn touching(&mut self, touching: &Touching) {
        let ends = self.ends(&touching.from, &touching.to, &touching.ohms);
        let at_rest = match touching.at_rest {
            TouchesAtRest::Apart => AtRest::Apart,
            TouchesAtRest::Touching => AtRest::Touching,
        };
        let made = ends.map(|ends| self.network.touching(touching.touching.value.as_str(), ends, at_rest));
        if self.maybe_entered(&touching.touching, made).is_some() {
            let label = label(&touching.touching, &touching.title, touching.place.as_ref());
            self.labels.touchings.insert(name(&touching.touching), label.or_short(touching.short.as_ref()));
        }
    }

    fn position(&mut self, position: &Position) {
        let only_words =
            position.position.value.as_str() == "rest" && position.meets.is_empty() && position.parts.is_empty();
        if !only_words {
            let (meets, parts) = (self.touchings(&position.meets), self.touchings(&position.parts));
            let made = self.network.position(position.position.value.as_str(), &meets, &parts);
            if self.entered(&position.position, made).is_none() {
                return;
            }
        }
        self.labels.positions.insert(name(&position.position), label(&position.position, &position.title, None));
    }

    fn lessons(&mut self, circuit: &Circuit) {
        let told = circuit.teaches.as_ref().map_or_else(Vec::new, |teaches| self.sound(&teaches.lessons));
        for (lesson, told) in told.into_iter().enumerate() {
            let position = self.find_position(&told.lesson);
            let between = match told.between.is_empty() {
                true => None,
                false => match self.two_points(&told.between, told.lesson.place, "loop") {
                    None => continue,
                    points => points,
                },
            };
            self.lessons.extend(position.map(|position| Taught { lesson, position, between }));
        }
    }

    fn ends(&mut self, from: &Named, to: &Named, ohms: &Placed<Told<ResistanceRange>>) -> Option<Ends> {
        let (from, to, ohms) = (self.find_point(from), self.find_point(to), self.ohms(ohms));
        Some(Ends { from: from?, to: to?, ohms: ohms? })
    }

    /// A range of ohms that makes sense.
    fn ohms(&mut self, told: &Placed<Told<ResistanceRange>>) -> Option<Ohms> {
        let range = self.value(told)?;
        let figures: Vec<f64> = range.0.iter().map(|figure| figure.ohms()).collect();
        let made = match figures.as_slice() {
            [exact] => Ohms::exactly(*exact),
            [least, most] => Ohms::between(*least, *most),
            [least, usual, most] => Ohms::range(*least, *usual, *most),
            _ => return None,
        };
        match made {
            Ok(ohms) => Some(ohms),
            Err(flaw) => {
                self.senseless(told.place, &flaw, None);
                None
            }
        }
    }

    /// A value, or the finding that it is none.
    fn value<'t, T>(&mut self, told: &'t Placed<Told<T>>) -> Option<&'t T> {
        match &told.value.means {
            Ok(value) => Some(value),
            Err(why) => {
                self.findings.push(shape::misread(told.place, &told.value.text, why));
                None
            }
        }
    }

    fn touchings(&mut self, named: &Many<Named>) -> Vec<TouchingId> {
        named.iter().filter_map(|named| self.find_touching(named)).collect()
    }

    fn find_point(&mut self, named: &Named) -> Option<PointId> {
        let found = self.network.find_point(named.value.as_str());
        if found.is_none() {
            self.unknown(named, "point", |network| network.points_by_name().map(str::to_owned).collect());
        }
        found
    }

    fn find_touching(&mut self, named: &Named) -> Option<TouchingId> {
        let found = self.network.find_touching(named.value.as_str());
        if found.is_none() {
            self.unknown(named, "touching", |network| network.touchings_by_name().map(str::to_owned).collect());
        }
        found
    }

    fn find_position(&mut self, named: &Named) -> Option<PositionId> {
        let found = self.network.find_position(named.value.as_str());
        if found.is_none() {
            self.unknown(named, "position", |network| network.positions_by_name().map(str::to_owned).collect());
        }
        found
    }

    /// Exactly two points, or the finding that there are not two.
    fn two_points(&mut self, points: &Many<Named>, at: Place, key: &str) -> Option<[PointId; 2]> {
        match &**points {
            [one, other] => {
                let (one, other) = (self.find_point(one), self.find_point(other));
                Some([one?, other?])
            }
            _ => {
                self.bad(
                    at,
                    format!("`{key}` wants two points, not {}", points.len()),
                    "name two points of this circuit",
                );
                None
            }
        }
    }

    fn unknown(&mut self, named: &Named, noun: &str, known: impl Fn(&Network) -> Vec<String>) {
        if self.missing.contains(named.value.as_str()) {
            return;
        }
        let known = known(&self.network);
        let help = did_you_mean(
            named.value.as_str(),
            known.iter().map(String::as_str),
            "write it as it is named in this circuit",
        );
        let message = format!("no {noun} `{}` in this circuit", named.value);
        self.findings.push(Finding::new(Code::UnknownReference, named.place, message, help).of(named.value.0.clone()));
    }

    fn bad(&mut self, at: Place, message: String, help: &str) {
        self.findings.push(Finding::new(Code::BadValue, at, message, help));
    }

    fn senseless(&mut self, at: Place, flaw: &Flaw, of: Option<&Named>) {
        let mut finding = Finding::new(Code::BadValue, at, flaw.to_string(), help_for(flaw));
        finding.of = of.map(name);
        self.findings.push(finding);
    }

    /// What was made, or the finding why it was not.
    fn entered<T>(&mut self, named: &Named, made: Result<T, Flaw>) -> Option<T> {
        if let Some(why) = why_no_id(named.value.as_str()) {
            self.findings.push(ids::bad_id(named, why));
        }
        match made {
            Ok(made) => Some(made),
            Err(flaw) => {
                self.senseless(named.place, &flaw, Some(named));
                self.missing.insert(name(named));
                None
            }
        }
    }

    /// The same; `None` if a part of it has a finding already.
    fn maybe_entered<T>(&mut self, named: &Named, made: Option<Result<T, Flaw>>) -> Option<T> {
        match made {
            Some(made) => self.entered(named, made),
            None => {
                self.missing.insert(name(named));
                None
            }
        }
    }

    /// The sound items of a list; the names of the broken ones are kept.
    fn sound<'a, T>(&mut self, items: &'a [Tolerant<T>]) -> Vec<&'a T> {
        self.missing.extend(items.iter().filter_map(Tolerant::broken).map(str::to_owned));
        items.iter().filter_map(Tolerant::sound).collect()
    }
}

fn name(named: &Named) -> String {
    named.value.0.clone()
}

fn label(named: &Named, title: &Line, place: Option<&Named>) -> Label {
    Label { title: title.value.clone(), short: None, place: place.map(|place| place.value.clone()), at: named.place }
}

impl Label {
    fn or_short(self, short: Option<&Line>) -> Label {
        Label { short: short.map(|short| short.value.clone()), ..self }
    }
}

fn help_for(flaw: &Flaw) -> &'static str {
    match flaw {
        Flaw::Ohms(_) => "write the least, the usual and the most, such as `0.02 .. 0.1 .. 0.25`",
        Flaw::Taken(_) => "give it another name",
        Flaw::Unknown(_) => "write it as it is named in this circuit",
        Flaw::TooMany(..) => "split the circuit in two",
        Flaw::SamePoint(_) => "a piece leads from one point to another",
        Flaw::NotOneEach(..) => "name the two points at which the ends of these two pieces are exchanged",
        Flaw::Figure(_) => "write the smaller figure first",
        Flaw::MeetsAndParts(_) => "say one of the two",
    }
}
