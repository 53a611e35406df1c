//! Circuits that a circuit is made of, and which of their points are one.

use super::super::code::Code;
use super::super::finding::{Finding, did_you_mean};
use super::{Circuits, Label, Labels, Wired, Wiring, name, within};
use crate::model::circuit::{Circuit, FaultsOfUse, Use};
use crate::model::{Id, Named};
use crate::source::Place;
use std::cell::Cell;
use std::collections::BTreeMap;

/// How deep circuits may use circuits.
const DEEPEST: usize = 4;
/// How many circuits a circuit may be made of in all: a bout of two fencers has some ten.
const MOST_USED: usize = 100;

impl Wiring {
    pub(super) fn uses(&mut self, circuit: &Circuit, circuits: &Circuits, users: &[&str], made: &Cell<usize>) {
        let me = circuit.circuit.value.as_str();
        let users: Vec<&str> = users.iter().copied().chain([me]).collect();
        for used in self.sound(&circuit.uses) {
            match circuits.get(used.circuit.value.as_str()) {
                None => self.unknown_circuit(&used.circuit, circuits),
                Some(_) if users.contains(&used.circuit.value.as_str()) || users.len() > DEEPEST => {
                    let message = format!("`{}` is made of itself, or too deep", used.circuit.value);
                    self.bad(used.circuit.place, message, "use a circuit that does not use this one");
                }
                Some(_) if made.get() > MOST_USED => {
                    let message = format!("`{me}` is made of more than {MOST_USED} circuits");
                    self.bad(used.circuit.place, message, "use fewer circuits here, or fewer in those that are used");
                    return;
                }
                Some(other) => self.take(used, &within(other, circuits, &users, made)),
            }
        }
    }

    /// Points that are one. Said after this circuit's own points are in, since they may be among them.
    pub(super) fn joins(&mut self, circuit: &Circuit) {
        for join in self.sound(&circuit.joins) {
            let points: Vec<_> =
                join.join.iter().filter_map(|named| self.find_point(named).map(|id| (named, id))).collect();
            for pair in points.windows(2) {
                let [(_, one), (named, other)] = pair else { continue };
                if let Err(flaw) = self.network.join(*one, *other) {
                    self.senseless(named.place, &flaw, Some(named));
                }
            }
        }
    }

    fn take(&mut self, used: &Use, other: &Wired) {
        let prefix = used.prefix.as_ref().map_or(String::new(), |prefix| format!("{}-", prefix.value));
        self.missing.extend(other.missing.iter().map(|name| format!("{prefix}{name}")));
        if !other.findings.is_empty() {
            // It has its findings where it stands; here it is only known not to be whole.
            self.missing.insert(prefix.clone());
        }
        let taken = match used.faults {
            FaultsOfUse::TakenAlong => self.network.take_in(&prefix, &other.network),
            FaultsOfUse::LeftOut => self.network.take_in_sound(&prefix, &other.network),
        };
        if let Err(flaw) = taken {
            self.senseless(used.circuit.place, &flaw, Some(&used.circuit));
            self.missing.insert(name(&used.circuit));
        }
        let words = used.title.as_ref().map_or(String::new(), |title| format!("{}: ", title.value));
        let at = used.circuit.place;
        self.labels.take(&prefix, &words, at, &other.labels, used.faults);
    }

    fn unknown_circuit(&mut self, named: &Named, circuits: &Circuits) {
        let help = did_you_mean(named.value.as_str(), circuits.keys().copied(), "write the id of a circuit guide");
        let message = format!("no circuit `{}` in this handbook", named.value);
        self.findings.push(Finding::new(Code::UnknownReference, named.place, message, help).of(name(named)));
        self.missing.insert(name(named));
    }
}

impl Labels {
    fn take(&mut self, prefix: &str, words: &str, at: Place, other: &Labels, faults: FaultsOfUse) {
        let taken = |into: &mut BTreeMap<String, Label>, from: &BTreeMap<String, Label>| {
            for (id, label) in from {
                let title = if id == "rest" { label.title.clone() } else { format!("{words}{}", label.title) };
                let place = label.place.as_ref().map(|Id(id)| Id(id.clone()));
                let label = Label { title, short: label.short.clone(), place, at };
                // `rest` is one for all.
                let id = if id == "rest" { id.clone() } else { format!("{prefix}{id}") };
                into.entry(id).or_insert(label);
            }
        };
        taken(&mut self.points, &other.points);
        taken(&mut self.pieces, &other.pieces);
        taken(&mut self.touchings, &other.touchings);
        taken(&mut self.positions, &other.positions);
        if faults == FaultsOfUse::TakenAlong {
            taken(&mut self.faults, &other.faults);
        }
    }
}
