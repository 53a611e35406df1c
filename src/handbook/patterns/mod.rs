//! What a lamp shows and what that means: every pattern of a lamp that the circuit can show, with the faults and guides that fit.
//!
//! In: a circuit as a network. Out: [`Patterns`] for each of its lamps, for its page and for *By what the lamp does*.

mod fitting;
mod together;

pub use together::together_of_item;

use super::addresses;
use super::circuit_drawing::words;
use super::laying::{Laying, light_of, seen_on};
use super::page::{LampSaid, LampShown, Link, PatternRow, Patterns};
use crate::model::{self, Kind, LampState, SeenOn};
use crate::proof::cases::sound;
use crate::proof::network::Wired;
use crate::proof::sights::{Sight, lamps, shown};
use crate::reckoning::circuit::{Answer, FaultId, Network, PositionId, ReadingId};
use std::collections::{BTreeMap, BTreeSet};

/// How many positions a lamp is looked at in, rest aside.
const MOST_POSITIONS: usize = 3;

/// The lamps of a circuit, each with its patterns at rest and pressed.
pub fn patterns(laying: &Laying<'_>, guide: &model::Circuit, wired: &Wired) -> Vec<Patterns> {
    let looking = Looking { laying, guide, wired };
    INSTRUMENTS
        .into_iter()
        .flat_map(|on| looking.readings(on).filter_map(move |reading| looking.patterns(on, reading)))
        .collect()
}

/// The instruments with lamps.
const INSTRUMENTS: [SeenOn; 2] = [SeenOn::Tester, SeenOn::Apparatus];

#[derive(Clone, Copy)]
struct Looking<'a> {
    laying: &'a Laying<'a>,
    guide: &'a model::Circuit,
    wired: &'a Wired,
}

/// Whether sound kit shows a pattern.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kit {
    /// It does, or may.
    Sound,
    /// Only faulty kit does.
    Faulty,
}

/// What the lamp does in each position looked at.
type States = Vec<LampState>;

/// A position, with everything that the lamp can do in it: of sound kit first, then with each fault.
struct Column {
    position: PositionId,
    states: Vec<Vec<LampState>>,
}

/// A lamp, and what it does in each position looked at.
struct Doing<'a> {
    reading: ReadingId,
    positions: &'a [PositionId],
    states: &'a [LampState],
}

impl Looking<'_> {
    /// The lamps on an instrument, in the order written.
    fn readings(self, on: SeenOn) -> impl Iterator<Item = ReadingId> {
        lamps(self.guide, on).into_iter().filter_map(move |name| self.wired.network.find_reading(&name))
    }

    fn patterns(self, on: SeenOn, reading: ReadingId) -> Option<Patterns> {
        let columns = self.columns(reading);
        let positions: Vec<PositionId> = columns.iter().map(|column| column.position).collect();
        let rows: Vec<PatternRow> = self
            .by_what_shows(|fault| states(&columns, fault))
            .iter()
            .map(|(states, (kit, faults))| {
                let doing = Doing { reading, positions: &positions, states };
                PatternRow {
                    lamps: self.shown(&doing),
                    sound: *kit == Kit::Sound,
                    faults: self.named(faults),
                    guides: self.guides(&[doing], faults, *kit),
                }
            })
            .collect();
        let name = self.wired.network.reading_name(reading);
        // A lamp that always does the same tells nothing.
        (rows.len() > 1).then(|| Patterns {
            anchor: format!("{}-lamp-{name}", addresses::key(&self.address())),
            title: self.title(reading),
            seen_on: seen_on(on),
            circuit: self.circuit(),
            rows,
        })
    }

    /// Everything that can show, with the kit that shows it and the faults that do. `ways` is what can show with sound kit (0) and with each
    /// fault (from 1).
    fn by_what_shows<W: Ord>(self, ways: impl Fn(usize) -> Vec<W>) -> BTreeMap<W, (Kit, Vec<FaultId>)> {
        let sound = ways(0).into_iter().map(|way| (way, (Kit::Sound, Vec::new())));
        let mut shown: BTreeMap<W, (Kit, Vec<FaultId>)> = sound.collect();
        for (at, fault) in self.wired.network.faults().enumerate() {
            for way in ways(at + 1) {
                shown.entry(way).or_insert((Kit::Faulty, Vec::new())).1.push(fault);
            }
        }
        shown
    }

    fn address(self) -> String {
        addresses::guide(Kind::Circuit, self.guide.circuit.value.as_str())
    }

    fn circuit(self) -> Link {
        Link { title: self.guide.title.value.clone(), address: self.address() }
    }

    fn title(self, reading: ReadingId) -> String {
        let name = self.wired.network.reading_name(reading);
        words(&self.wired.labels.readings, name).unwrap_or_else(|| name.to_owned())
    }

    /// At rest; pressed, where the tip can be pressed; and what guides tell of this lamp. Only where it can differ from rest.
    fn columns(self, reading: ReadingId) -> Vec<Column> {
        let network = &self.wired.network;
        let rest = self.column(reading, Network::REST);
        let side = network.reading_name(reading).split('-').next().unwrap_or("").to_owned();
        let pressed =
            ["pressed".to_owned(), format!("{side}-pressed")].iter().find_map(|name| network.find_position(name));
        let mut seen = BTreeSet::from([Network::REST]);
        let asked = pressed.into_iter().chain(self.told(reading)).filter(|position| seen.insert(*position));
        let differs = |column: &Column| column.states != rest.states;
        let mut others: Vec<Column> =
            asked.map(|position| self.column(reading, position)).filter(differs).take(MOST_POSITIONS).collect();
        if others.is_empty() {
            others.extend(network.positions().skip(1).map(|position| self.column(reading, position)).find(differs));
        }
        [rest].into_iter().chain(others).collect()
    }

    /// The positions in which guides tell of this lamp.
    fn told(self, of: ReadingId) -> Vec<PositionId> {
        let sights = self.laying.proofed.sights.values();
        let here: Vec<&Sight> = sights.filter(|sight| sight.circuit == self.guide.circuit.value.as_str()).collect();
        let signs = here.iter().flat_map(|sight| sight.signs.iter().flatten());
        let signs = signs.map(|(sign, _)| (sign.reading, sign.position));
        let one_of = here.iter().flat_map(|sight| sight.one_of.iter().flatten());
        let all = signs.chain(one_of.map(|sign| (sign.reading, sign.position)));
        all.filter(|(reading, _)| *reading == of).map(|(_, position)| position).collect()
    }

    fn column(self, reading: ReadingId, position: PositionId) -> Column {
        let faults = [None].into_iter().chain(self.wired.network.faults().map(Some));
        Column { position, states: faults.map(|fault| self.state(reading, position, fault)).collect() }
    }

    fn state(self, reading: ReadingId, position: PositionId, fault: Option<FaultId>) -> Vec<LampState> {
        let Ok(seen) = self.wired.network.seen(reading, position, fault) else { return Vec::new() };
        let answers = seen.answers();
        if answers.contains(Answer::Flickers) {
            return vec![LampState::ComesAndGoes];
        }
        [LampState::Lit, LampState::Dark].into_iter().filter(|state| answers.contains(shown(*state))).collect()
    }

    fn shown(self, doing: &Doing<'_>) -> Vec<LampShown> {
        let (network, labels) = (&self.wired.network, &self.wired.labels);
        let name = |position: &PositionId| network.position_name(*position);
        let lamps = doing.positions.iter().zip(doing.states).map(|(position, state)| {
            let when = match name(position) {
                "rest" => "at-rest",
                pressed if pressed == "pressed" || pressed.ends_with("-pressed") => "pressed",
                _ => "in-position",
            };
            let position = (when == "in-position").then(|| words(&labels.positions, name(position))).flatten();
            LampShown { when, position, state: *state, light: light_of(network.reading_name(doing.reading)) }
        });
        lamps.collect()
    }

    fn named(self, faults: &[FaultId]) -> Vec<Link> {
        let own = self.address();
        let named = faults.iter().map(|fault| {
            let id = self.wired.network.fault_name(*fault);
            let title = words(&self.wired.labels.faults, id).unwrap_or_else(|| id.to_owned());
            Link { title, address: format!("{own}#{}-fault-{id}", addresses::key(&own)) }
        });
        named.collect()
    }
}

/// Every row of states that the lamp can show with one fault: more than one where it may go either way.
fn states(columns: &[Column], fault: usize) -> Vec<States> {
    columns.iter().fold(vec![Vec::new()], |rows, column| {
        let here = column.states.get(fault).map_or(&[][..], Vec::as_slice);
        let with = |row: &States| here.iter().map(|state| [row.as_slice(), &[*state]].concat()).collect::<Vec<_>>();
        rows.iter().flat_map(with).collect()
    })
}

/// The lamps of all circuits of an item, in the order of the guides.
pub fn of_item(laying: &Laying<'_>, item: &str) -> Vec<Patterns> {
    circuits(laying, item).flat_map(|(guide, wired)| patterns(laying, guide, wired)).collect()
}

/// The whole circuits of an item, in the order of the guides. One fencer at the apparatus is plainer than two.
fn circuits<'a>(laying: &'a Laying<'a>, item: &str) -> impl Iterator<Item = (&'a model::Circuit, &'a Wired)> {
    let circuits = laying.proofed.guides.circuits.iter().map(|(_, guide)| guide);
    let here = circuits.filter(|guide| guide.kit.as_ref().is_some_and(|kit| kit.value.as_str() == item));
    let here: Vec<&model::Circuit> = here.collect();
    let alone = here.iter().any(|guide| guide.sides.is_empty() && !guide.lamps.is_empty());
    let here = here.into_iter().filter(move |guide| guide.sides.is_empty() || !alone);
    let wired = here.filter_map(|guide| Some((guide, laying.proofed.circuits.get(guide.circuit.value.as_str())?)));
    wired.filter(|(_, wired)| wired.is_whole())
}

/// What every lamp of a circuit shows in a position, with sound kit.
pub fn shows(guide: &model::Circuit, wired: &Wired, position: PositionId) -> Vec<LampSaid> {
    let network = &wired.network;
    let names = [SeenOn::Tester, SeenOn::Apparatus].into_iter().flat_map(|on| lamps(guide, on));
    let said = names.filter_map(|name| {
        let answers = network.seen(network.find_reading(&name)?, position, None).ok()?.answers();
        let state = match answers.sure() {
            Some(Answer::Lit) => "lamp-lit",
            Some(Answer::Dark) => "lamp-dark",
            _ => "lamp-may",
        };
        Some(LampSaid { title: words(&wired.labels.readings, &name)?, state })
    });
    said.collect()
}

/// The same for one fencer: where the circuit has two sides, the first.
pub fn shows_of_own_side(guide: &model::Circuit, wired: &Wired, position: PositionId) -> Vec<LampSaid> {
    let all = shows(guide, wired, position);
    let own = if guide.sides.is_empty() { all.len() } else { guide.lamps.len() };
    all.into_iter().take(own).collect()
}

/// The positions of a circuit with words of their own, in the order written.
pub fn positions<'g>(
    guide: &'g model::Circuit,
    wired: &Wired,
) -> Vec<(PositionId, Option<&'g model::circuit::Position>)> {
    let written = sound(&guide.positions);
    let find = |id: PositionId| {
        let name = wired.network.position_name(id).to_owned();
        written.iter().find(|position| position.position.value.as_str() == name).copied()
    };
    wired.network.positions().map(|id| (id, find(id))).collect()
}
