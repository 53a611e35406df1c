//! The guides that fit what lamps show.
//!
//! In: what lamps of a circuit do, and with which faults they do it. Out: links to fault-finding guides. Leaves to others: what lamps
//! can show.

use super::{Doing, Kit, Looking};
use crate::handbook::addresses;
use crate::handbook::page::Link;
use crate::model::{self, Kind, LampState};
use crate::proof::cases::sound;
use crate::proof::sights::{Sight, shown};
use crate::reckoning::circuit::FaultId;
use std::collections::BTreeSet;

/// What a lamp that comes and goes is to a guide that says it is lit, or dark.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Flicker {
    /// Something else.
    IsItsOwn,
    /// Both, in turn.
    IsEither,
}

impl<'l> Looking<'l> {
    /// The guides that look into one of these faults and do not say that one of these lamps does something else. Where there is none,
    /// those that say so of a lamp that comes and goes: it does what they say too; and else those that look into the same fault on
    /// another instrument.
    pub(super) fn guides(self, lamps: &[Doing<'_>], faults: &[FaultId], kit: Kit) -> Vec<Link> {
        let exact = self.guides_that(|_, sight| self.fits(sight, lamps, faults, kit, Flicker::IsItsOwn));
        if !exact.is_empty() || kit == Kit::Sound {
            return exact;
        }
        let near = self.guides_that(|_, sight| self.fits(sight, lamps, faults, kit, Flicker::IsEither));
        if !near.is_empty() {
            return near;
        }
        self.guides_that(|guide, sight| self.has_one_of(guide, sight, faults))
    }

    fn guides_that(self, fits: impl Fn(&model::Symptom, &Sight) -> bool) -> Vec<Link> {
        let guides = self.laying.proofed.guides.symptoms.iter().map(|(_, guide)| guide);
        let sights = &self.laying.proofed.sights;
        let fits =
            |guide: &&model::Symptom| sights.get(guide.symptom.value.as_str()).is_some_and(|sight| fits(guide, sight));
        let link = |guide: &model::Symptom| Link {
            title: guide.title.value.clone(),
            address: addresses::guide(Kind::Symptom, guide.symptom.value.as_str()),
        };
        guides.filter(fits).map(link).collect()
    }

    fn fits(self, sight: &Sight, lamps: &[Doing<'_>], faults: &[FaultId], kit: Kit, flicker: Flicker) -> bool {
        let here = sight.circuit == self.guide.circuit.value.as_str();
        let named = sight.faults.values().flatten().any(|fault| faults.contains(fault));
        let told =
            sight.signs.iter().flatten().filter_map(|(sign, _)| {
                lamps.iter().find(|lamp| lamp.reading == sign.reading).map(|lamp| (sign, lamp))
            });
        let mut told = told.peekable();
        // What sound kit shows leads only to guides that speak of these very lamps.
        let speaks = told.peek().is_some() || kit == Kit::Faulty;
        let agrees = told.all(|(sign, lamp)| {
            let seen = lamp.positions.iter().zip(lamp.states).find(|(position, _)| **position == sign.position);
            seen.is_none_or(|(_, state)| {
                let either = flicker == Flicker::IsEither && *state == LampState::ComesAndGoes;
                either || shown(*state) == sign.shows
            })
        });
        here && named && speaks && agrees
    }

    /// Whether a guide with another circuit looks into one of these faults: both are the fault of a circuit that the two are made of,
    /// and the guide is about its item, or about ours.
    fn has_one_of(self, guide: &model::Symptom, sight: &Sight, faults: &[FaultId]) -> bool {
        let Some(other) = self.laying.proofed.circuits.get(&sight.circuit) else { return false };
        let theirs: Vec<&str> = sight.faults.values().flatten().map(|fault| other.network.fault_name(*fault)).collect();
        let ours: Vec<&str> = faults.iter().map(|fault| self.wired.network.fault_name(*fault)).collect();
        // In a larger circuit the name of a part stands before that of its fault.
        let is = |name: &str, fault: &str| {
            name.strip_suffix(fault).is_some_and(|part| part.is_empty() || part.ends_with('-'))
        };
        let ours_are_made_of = self.made_of(self.guide.circuit.value.as_str());
        let common = self.made_of(&sight.circuit).into_iter().filter(|part| ours_are_made_of.contains(part));
        let circuits = &self.laying.proofed.guides.circuits;
        let common =
            common.filter_map(|part| circuits.iter().find(|(_, circuit)| circuit.circuit.value.as_str() == part));
        let about = |kit: &Option<model::Named>| kit.as_ref().is_some_and(|kit| kit.value == guide.kit.value);
        let common = common.filter(|(_, part)| about(&part.kit) || about(&self.guide.kit));
        let mut own = common.flat_map(|(_, circuit)| sound(&circuit.faults)).map(|fault| fault.fault.value.as_str());
        own.any(|fault| theirs.iter().any(|name| is(name, fault)) && ours.iter().any(|name| is(name, fault)))
    }

    /// A circuit and all that it is made of.
    fn made_of(self, circuit: &str) -> BTreeSet<&'l str> {
        let circuits = &self.laying.proofed.guides.circuits;
        let mut found = BTreeSet::new();
        let mut open = vec![circuit.to_owned()];
        while let Some(next) = open.pop() {
            let Some((_, circuit)) = circuits.iter().find(|(_, circuit)| circuit.circuit.value.as_str() == next) else {
                continue;
            };
            if found.insert(circuit.circuit.value.as_str()) {
                open.extend(sound(&circuit.uses).into_iter().map(|part| part.circuit.value.as_str().to_owned()));
            }
        }
        found
    }
}
