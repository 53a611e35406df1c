//! A circuit as it is drawn in one position: which points and pieces, what is live, where the fault is.
//!
//! In: a circuit as a network, the places of its item. Out: a [`CircuitFigure`], from which `render` draws.
//! Leaves to others: where lines run, and symbols (`render::figures::circuit`). Only what belongs to the item and its pins is
//! drawn: of a weapon at the apparatus the weapon.

use super::page::{CircuitFigure, DrawnPiece, DrawnPoint};
use crate::proof::network::{Label, Wired};
use crate::reckoning::circuit::{
    Answer, Carrier, Change, FaultId, Link, Measure, Network, Pair, PointId, PositionId, Reading,
};
use std::collections::{BTreeMap, BTreeSet};

/// How many points without a place a drawing takes along: the pins of a tester, not a whole bout.
const MOST_PINS: usize = 8;

/// What is drawn of a circuit.
pub struct Sketch<'a> {
    wired: &'a Wired,
    /// The places, tip first, and the instrument's last.
    places: Vec<String>,
    /// The points that are drawn, with the index of their place.
    points: Vec<(PointId, usize)>,
    /// The column of each.
    ways: BTreeMap<PointId, usize>,
    /// What the loop runs between.
    pair: Pair,
}

impl<'a> Sketch<'a> {
    /// The sketch of a circuit of an item with these places; nothing if too little of it can be drawn or there is no loop.
    /// `item` is the circuit of the item by itself, if there is one: of other circuits only its points have places here. Where
    /// the circuit has sides, it is the first side's item.
    pub fn of(wired: &'a Wired, item: Option<&Wired>, side: Option<&str>, places: &[&str]) -> Option<Sketch<'a>> {
        let network = &wired.network;
        let own = |name: &str| {
            let bare = side.and_then(|side| name.strip_prefix(side)?.strip_prefix('-')).unwrap_or(name);
            item.is_none_or(|item| item.network.find_point(bare).is_some())
        };
        let all = all_points(network);
        let place_of = |point: &PointId| {
            let label = wired.labels.points.get(network.point_name(*point))?;
            let place = label.place.as_ref().filter(|_| own(network.point_name(*point)))?;
            places.iter().position(|known| *known == place.as_str())
        };
        let placed: Vec<(PointId, usize)> = all.iter().filter_map(|point| Some((*point, place_of(point)?))).collect();
        let unplaced = |point: &&PointId| wired.labels.points.get(network.point_name(**point)).is_some_and(no_place);
        let pins: Vec<PointId> = all.iter().filter(unplaced).copied().collect();
        let pins = if all.len() == placed.len() + pins.len() && pins.len() <= MOST_PINS { pins } else { Vec::new() };
        let mut points = placed;
        points.extend(pins.iter().map(|pin| (*pin, places.len())));
        let pair = loop_of(network)?;
        let ways = ways(network, &points);
        (points.len() > 2).then_some(Sketch {
            wired,
            places: places.iter().map(|place| (*place).to_owned()).collect(),
            points,
            ways,
            pair,
        })
    }

    /// The drawing in a position, with a fault or without one, with the loop that the first lamp looks at.
    pub fn drawn(&self, position: PositionId, fault: Option<FaultId>) -> Option<CircuitFigure> {
        self.drawn_between(self.pair, position, fault)
    }

    /// The same with the current between two other points.
    pub fn drawn_between(&self, pair: Pair, position: PositionId, fault: Option<FaultId>) -> Option<CircuitFigure> {
        let network = &self.wired.network;
        let now: BTreeMap<Carrier, Link> = by_carrier(network.links(position, fault).ok()?);
        let mut all: BTreeMap<Carrier, Link> = by_carrier(network.links(Network::REST, None).ok()?);
        all.extend(by_carrier(network.links(position, None).ok()?));
        all.extend(now.clone());
        let live: BTreeSet<Carrier> = network.live_loop(pair, position, fault).ok()?.into_iter().collect();
        let changes = fault.and_then(|fault| network.fault_of(fault)).map_or(&[][..], |fault| fault.changes.as_slice());
        let pieces = all.values().filter_map(|link| {
            let (from, to) = (self.index(link.from)?, self.index(link.to)?);
            let (label, faulty) = (self.label(link.carrier), is_changed(link.carrier, changes));
            Some(DrawnPiece {
                from,
                to,
                place: self.place_index(label, from, to),
                kind: kind(link.carrier, now.contains_key(&link.carrier), faulty, label),
                // The places name the rest; more words than these do not fit beside one another.
                label: label
                    .filter(|_| faulty || matches!(link.carrier, Carrier::Touching(_)) && self.is_across(from, to))
                    .map(in_short),
                value: None,
                live: live.contains(&link.carrier),
                faulty,
            })
        });
        let (ends, stubs) = self.stubs(now.values(), changes, &live);
        let position_name = network.position_name(position);
        let points = self.points.iter().map(|(point, place)| self.point(*point, *place));
        Some(CircuitFigure {
            position: words(&self.wired.labels.positions, position_name),
            at_rest: position == Network::REST,
            fault: fault.and_then(|fault| words(&self.wired.labels.faults, network.fault_name(fault))),
            between: (pair != self.pair).then(|| self.ends(pair)).flatten(),
            closed: !live.is_empty(),
            places: self.places.iter().map(|place| (*place).to_owned()).collect(),
            points: points.chain(ends).collect(),
            pieces: pieces.chain(self.lamp(position, fault)).chain(stubs).collect(),
        })
    }

    fn ends(&self, pair: Pair) -> Option<[String; 2]> {
        let name = |point| words(&self.wired.labels.points, self.wired.network.point_name(point));
        Some([name(pair.one)?, name(pair.other)?])
    }

    /// What touches something that is not drawn, such as the other's jacket: each a contact with a free end.
    fn stubs<'l>(
        &self,
        links: impl Iterator<Item = &'l Link>,
        changes: &[Change],
        live: &BTreeSet<Carrier>,
    ) -> (Vec<DrawnPoint>, Vec<DrawnPiece>) {
        let (first, last) = (self.ways.values().min().copied(), self.ways.values().max().map_or(0, |last| last + 1));
        let touching = links.filter(|link| !matches!(link.carrier, Carrier::Piece(_)));
        let inner = touching.filter_map(|link| match (self.index(link.from), self.index(link.to)) {
            (Some(here), None) | (None, Some(here)) => Some((link.carrier, here)),
            _ => None,
        });
        let stub = |(number, (carrier, here)): (usize, (Carrier, usize))| {
            let place = self.points.get(here).map_or(0, |(_, place)| *place);
            let piece = DrawnPiece {
                from: here,
                to: self.points.len() + number,
                place,
                kind: "contact-closed",
                label: self.label(carrier).map(in_short),
                value: None,
                live: live.contains(&carrier),
                faulty: is_changed(carrier, changes),
            };
            // Beside the column that it touches, on the outside; what hangs free, like the tip of an epee, is at the left.
            let touched = self.points.get(here).and_then(|(point, _)| self.ways.get(point).copied());
            let way = if touched.is_none() || touched == first { 0 } else { last + 1 };
            (DrawnPoint { place, way, label: None }, piece)
        };
        inner.enumerate().map(stub).unzip()
    }

    /// The lamp of a tester between two pins, as it burns.
    fn lamp(&self, position: PositionId, fault: Option<FaultId>) -> Option<DrawnPiece> {
        let network = &self.wired.network;
        let (reading, pair) = network.readings().find_map(|id| match network.reading_of(id)? {
            Reading::Lamp { between, .. } => Some((id, *between)),
            _ => None,
        })?;
        let answers = network.seen(reading, position, fault).ok()?.answers();
        let (kind, value) = match answers.sure() {
            Some(Answer::Lit) => ("lamp-lit", "lamp-lit"),
            Some(Answer::Dark) => ("lamp-dark", "lamp-dark"),
            _ => ("lamp-comes-and-goes", "lamp-comes-and-goes"),
        };
        let (from, to) = (self.index(pair.one)?, self.index(pair.other)?);
        let live = self.pair == pair && !network.live_loop(pair, position, fault).ok()?.is_empty();
        let place = self.places.len();
        Some(DrawnPiece { from, to, place, kind, label: None, value: Some(value), live, faulty: false })
    }

    fn point(&self, point: PointId, place: usize) -> DrawnPoint {
        let name = self.wired.network.point_name(point);
        DrawnPoint {
            place,
            way: self.ways.get(&point).map_or(1, |way| way + 1),
            label: pin(name).filter(|_| is_end(name)),
        }
    }

    /// The drawn point that stands for this one.
    fn index(&self, point: PointId) -> Option<usize> {
        let network = &self.wired.network;
        let root = network.stands_for(point);
        self.points.iter().position(|(known, _)| network.stands_for(*known) == root)
    }

    fn label(&self, carrier: Carrier) -> Option<&'a Label> {
        let (network, labels) = (&self.wired.network, &self.wired.labels);
        match carrier {
            Carrier::Piece(piece) => labels.pieces.get(network.piece_name(piece)),
            Carrier::Touching(touching) => labels.touchings.get(network.touching_name(touching)),
            Carrier::Joined(_) => None,
        }
    }

    /// Whether two points stand in different columns, with room for words between them.
    fn is_across(&self, from: usize, to: usize) -> bool {
        let way = |index: usize| self.points.get(index).and_then(|(point, _)| self.ways.get(point));
        way(from).is_some() && way(to).is_some() && way(from) != way(to)
    }

    fn place_index(&self, label: Option<&Label>, from: usize, to: usize) -> usize {
        let own = label.and_then(|label| label.place.as_ref());
        let own = own.and_then(|place| self.places.iter().position(|known| known == place.as_str()));
        let of = |index: usize| self.points.get(index).map_or(0, |(_, place)| *place);
        // A symbol stands between its ends.
        let (first, last) = (of(from).min(of(to)), of(from).max(of(to)));
        own.unwrap_or(last).clamp(first, last)
    }
}

/// What stands beside a symbol: there is little room.
fn in_short(label: &Label) -> String {
    label.short.clone().unwrap_or_else(|| label.title.clone())
}

fn no_place(label: &Label) -> bool {
    label.place.is_none()
}

fn all_points(network: &Network) -> Vec<PointId> {
    network.points_by_name().filter_map(|name| network.find_point(name)).collect()
}

fn by_carrier(links: Vec<Link>) -> BTreeMap<Carrier, Link> {
    links.into_iter().map(|link| (link.carrier, link)).collect()
}

/// What the first lamp looks at, a tester's or the apparatus's; without one, the two contacts of the socket; else the first meter.
fn loop_of(network: &Network) -> Option<Pair> {
    let looked_at = network.readings().find_map(|reading| match network.reading_of(reading)? {
        Reading::Lamp { between, .. } => Some(*between),
        Reading::ApparatusLamp { facts, .. } => facts.iter().find_map(|fact| match fact.measure {
            Measure::Between(pair) => Some(pair),
            Measure::Less { .. } => None,
        }),
        _ => None,
    });
    let socket = |one: &str, other: &str| {
        let (one, other) = (format!("socket-{one}"), format!("socket-{other}"));
        Some(Pair { one: network.find_point(&one)?, other: network.find_point(&other)? })
    };
    let tip_wires = network.find_point("a-contact").and(socket("a", "b"));
    let metered = network.readings().find_map(|reading| match network.reading_of(reading)? {
        Reading::Ohmmeter { measure: Measure::Between(pair), .. } => Some(*pair),
        _ => None,
    });
    looked_at.or(tip_wires).or_else(|| socket("b", "c")).or(metered)
}

/// Columns: A, B, C from the left as far as they are there; a point without a letter stands in that of the wire it hangs on.
fn ways(network: &Network, points: &[(PointId, usize)]) -> BTreeMap<PointId, usize> {
    let letters: BTreeSet<String> = points.iter().filter_map(|(point, _)| pin(network.point_name(*point))).collect();
    let column = |letter: &str| letters.iter().position(|known| known == letter);
    let mut ways: BTreeMap<PointId, usize> = BTreeMap::new();
    for (point, _) in points {
        ways.extend(pin(network.point_name(*point)).and_then(|letter| Some((*point, column(&letter)?))));
    }
    let pieces: Vec<(PointId, PointId)> = network.links(Network::REST, None).map_or_else(
        |_| Vec::new(),
        |links| links.iter().filter(|link| matches!(link.carrier, Carrier::Piece(_))).map(|l| (l.from, l.to)).collect(),
    );
    // As often as there are points, so that the farthest is reached.
    for _ in points {
        for (from, to) in &pieces {
            match (ways.get(from).copied(), ways.get(to).copied()) {
                (Some(way), None) => drop(ways.insert(*to, way)),
                (None, Some(way)) => drop(ways.insert(*from, way)),
                _ => {}
            }
        }
    }
    ways
}

/// The letter in a point's name: `B` of `socket-b`.
fn pin(name: &str) -> Option<String> {
    let letter = name.split('-').find(|part| matches!(*part, "a" | "b" | "c"))?;
    Some(letter.to_uppercase())
}

/// Whether a point is where something is plugged in.
fn is_end(name: &str) -> bool {
    name.split('-').any(|part| matches!(part, "pin" | "socket"))
}

fn kind(carrier: Carrier, there: bool, faulty: bool, label: Option<&Label>) -> &'static str {
    let at_tip = label.and_then(|label| label.place.as_ref()).is_some_and(|place| place.as_str() == "tip");
    match (carrier, there) {
        (Carrier::Piece(_), false) => "broken",
        (Carrier::Piece(_), true) if faulty => "resistor",
        (Carrier::Piece(_) | Carrier::Joined(_), _) => "wire",
        (Carrier::Touching(_), true) if at_tip => "push-closed",
        (Carrier::Touching(_), false) if at_tip => "push-open",
        (Carrier::Touching(_), true) => "contact-closed",
        (Carrier::Touching(_), false) => "contact-open",
    }
}

fn is_changed(carrier: Carrier, changes: &[Change]) -> bool {
    changes.iter().any(|change| match (carrier, change) {
        (Carrier::Joined(_), Change::Touches(..)) => true,
        (Carrier::Piece(piece), Change::Lost(of) | Change::MoreOhms(of, _)) => piece == *of,
        (Carrier::Piece(piece), Change::ChangedOver { pieces, .. }) => pieces.contains(&piece),
        (
            Carrier::Touching(touching),
            Change::LostTouching(of)
            | Change::MoreOhmsTouching(of, _)
            | Change::NeverTouches(of)
            | Change::AlwaysTouches(of),
        ) => touching == *of,
        _ => false,
    })
}

/// The words for a part, if its guide has some.
pub fn words(labels: &BTreeMap<String, Label>, id: &str) -> Option<String> {
    labels.get(id).map(|label| label.title.clone())
}
