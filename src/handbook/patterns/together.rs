//! What all the lamps of one instrument show together: a learner sees them at once, and two lamps say more than one.
//!
//! In: a circuit as a network. Out: [`Together`] for each instrument with more than one lamp.

use super::{Doing, INSTRUMENTS, Kit, Looking, States, circuits, states};
use crate::handbook::addresses;
use crate::handbook::laying::{Laying, seen_on};
use crate::handbook::page::{LampDoing, Together, TogetherRow};
use crate::model::SeenOn;
use crate::reckoning::circuit::{FaultId, PositionId, Reading, ReadingId, Tester};

/// A fault that leaves more than this open says nothing about what the lamps show together.
const MOST_WAYS: usize = 16;

/// What the lamps of each instrument show together, in all circuits of an item.
pub fn together_of_item(laying: &Laying<'_>, item: &str) -> Vec<Together> {
    let all = circuits(laying, item).flat_map(|(guide, wired)| {
        let looking = Looking { laying, guide, wired };
        INSTRUMENTS.into_iter().flat_map(move |on| looking.together(on))
    });
    all.collect()
}

/// A lamp with the positions in which it is looked at, and what it can do there: of sound kit first, then with each fault.
struct Lamp {
    reading: ReadingId,
    positions: Vec<PositionId>,
    ways: Vec<Vec<States>>,
}

impl Looking<'_> {
    fn together(self, on: SeenOn) -> Vec<Together> {
        let mut instruments: Vec<(Option<&Tester>, Vec<ReadingId>)> = Vec::new();
        for reading in self.readings(on) {
            // Testers stand beside one another; the apparatus is one.
            let tester = match self.wired.network.reading_of(reading) {
                Some(Reading::TesterLamp { tester, .. }) => Some(tester),
                Some(Reading::ApparatusLamp { .. }) => None,
                _ => continue,
            };
            match instruments.iter_mut().find(|(of, _)| *of == tester) {
                Some((_, lamps)) => lamps.push(reading),
                None => instruments.push((tester, vec![reading])),
            }
        }
        instruments.into_iter().filter_map(|(_, readings)| self.instrument(on, &readings)).collect()
    }

    fn instrument(self, on: SeenOn, readings: &[ReadingId]) -> Option<Together> {
        // A lamp that always does the same tells nothing.
        let tells = |lamp: &Lamp| lamp.ways.iter().any(|ways| Some(ways) != lamp.ways.first());
        let lamps: Vec<Lamp> = readings.iter().map(|reading| self.lamp(*reading)).filter(tells).collect();
        let name = self.wired.network.reading_name(lamps.first()?.reading);
        (lamps.len() > 1).then(|| Together {
            anchor: format!("{}-together-{name}", addresses::key(&self.address())),
            seen_on: seen_on(on),
            circuit: self.circuit(),
            rows: self.rows(&lamps),
        })
    }

    fn lamp(self, reading: ReadingId) -> Lamp {
        let columns = self.columns(reading);
        let ways = (0..=self.wired.network.faults().count()).map(|fault| states(&columns, fault)).collect();
        Lamp { reading, positions: columns.iter().map(|column| column.position).collect(), ways }
    }

    /// Sound kit first, then what most faults show.
    fn rows(self, lamps: &[Lamp]) -> Vec<TogetherRow> {
        let shown = self.by_what_shows(|fault| ways(lamps, fault));
        let row =
            |(way, (kit, faults)): (&Vec<States>, &(Kit, Vec<FaultId>))| self.together_row(lamps, way, faults, *kit);
        let mut rows: Vec<TogetherRow> = shown.iter().map(row).collect();
        rows.sort_by_key(|row| (!row.sound, row.guides.is_empty(), std::cmp::Reverse(row.faults.len())));
        rows
    }

    fn together_row(self, lamps: &[Lamp], way: &[States], faults: &[FaultId], kit: Kit) -> TogetherRow {
        let all = || lamps.iter().zip(way).map(|(lamp, states)| (lamp, lamp.doing(states)));
        let with_sound_kit = |lamp: &Lamp, doing: &Doing<'_>| {
            lamp.ways.first().is_some_and(|ways| ways.iter().any(|states| states == doing.states))
        };
        // What a fault changes says enough; sound kit's row tells of every lamp.
        let mut told: Vec<Doing<'_>> =
            all().filter(|(lamp, doing)| !with_sound_kit(lamp, doing)).map(|(_, d)| d).collect();
        if kit == Kit::Sound || told.is_empty() {
            told = all().map(|(_, doing)| doing).collect();
        }
        let lamp_doing = |doing: &Doing<'_>| LampDoing { title: self.title(doing.reading), shown: self.shown(doing) };
        TogetherRow {
            others: lamps.len() - told.len(),
            lamps: told.iter().map(lamp_doing).collect(),
            sound: kit == Kit::Sound,
            faults: self.named(faults),
            guides: self.guides(&all().map(|(_, doing)| doing).collect::<Vec<_>>(), faults, kit),
        }
    }
}

impl Lamp {
    fn doing<'a>(&'a self, states: &'a States) -> Doing<'a> {
        Doing { reading: self.reading, positions: &self.positions, states }
    }
}

/// Everything that the lamps can do together with one fault.
fn ways(lamps: &[Lamp], fault: usize) -> Vec<Vec<States>> {
    let of = |lamp: &Lamp| lamp.ways.get(fault).cloned().unwrap_or_default();
    let all = lamps.iter().try_fold(vec![Vec::new()], |rows: Vec<Vec<States>>, lamp| {
        let here = of(lamp);
        // Each lamp more may double them: too many are known before they are made.
        (rows.len() * here.len() <= MOST_WAYS).then(|| {
            rows.iter()
                .flat_map(|row| here.iter().map(move |way| [row.as_slice(), std::slice::from_ref(way)].concat()))
                .collect()
        })
    });
    all.unwrap_or_default()
}
