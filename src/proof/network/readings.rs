//! Readings as written: lamps, buzzers, meters, testers, the lamps of the apparatus; and what sound kit must show.

use super::{Expected, Label, Wiring, label, name};
use crate::model::circuit::{self, Circuit, When};
use crate::model::{Id, Many, Named, Resistance, ResistanceRange, Told};
use crate::reckoning::circuit::{At, Condition, Fact, Measure, Network, Pair, Reading, Tester, Threshold, Way};
use crate::source::{Placed, Tolerant};

/// From here on a meter shows no figure, if nothing else is said, ohms. Chosen here: common meters end at 2 to 20 megohms.
const OPEN_FROM: f64 = 2e6;

/// Facts in order, with whether each could be taken in.
type Facts<'c> = Vec<(&'c str, Fact)>;

impl Wiring {
    pub(super) fn readings(&mut self, circuit: &Circuit) {
        for reading in self.sound(&circuit.readings) {
            let made =
                self.reading(reading, circuit).map(|made| self.network.reading(reading.reading.value.as_str(), made));
            if self.maybe_entered(&reading.reading, made).is_some() {
                self.labels.readings.insert(name(&reading.reading), label(&reading.reading, &reading.title, None));
            }
        }
        match &*circuit.sides.0 {
            [] => self.apparatus(circuit, None),
            [one, other] => {
                self.apparatus(circuit, Some([one, other]));
                self.apparatus(circuit, Some([other, one]));
            }
            [first, ..] => {
                self.bad(first.place, "an apparatus has two sides".to_owned(), "write `sides: [red, green]`")
            }
        }
        for healthy in self.sound(&circuit.healthy) {
            self.healthy(healthy);
        }
    }

    fn reading(&mut self, reading: &circuit::Reading, circuit: &Circuit) -> Option<Reading> {
        if let (Some(tester), Some(lamp)) = (&reading.tester, &reading.lamp) {
            return self.tester_lamp(tester, lamp, circuit);
        }
        let [one, other] = self.two_points(&reading.between, reading.reading.place, "between")?;
        let between = Pair { one, other };
        let lamp = (reading.lit_under.as_ref(), reading.dark_over.as_ref());
        let buzzer = (reading.sounds_under.as_ref(), reading.silent_over.as_ref());
        match (lamp, buzzer) {
            ((None, None), (None, None)) => self.meter(reading, between),
            ((under, over), (None, None)) | ((None, None), (under, over)) => {
                let lit = self.lit(reading, under, over)?;
                Some(Reading::Lamp { between, lit })
            }
            _ => {
                self.bad(reading.reading.place, "a lamp and a buzzer in one".to_owned(), "make two readings of it");
                None
            }
        }
    }

    fn lit(
        &mut self,
        reading: &circuit::Reading,
        under: Option<&Placed<Told<Resistance>>>,
        over: Option<&Placed<Told<Resistance>>>,
    ) -> Option<Threshold> {
        let (Some(under), Some(over)) = (under, over) else {
            let help = "say from where on it is lit or sounds for certain, and from where on not";
            self.bad(reading.reading.place, "one figure of two is missing".to_owned(), help);
            return None;
        };
        let (first, second) = (self.value(under).copied(), self.value(over).copied());
        let made = Threshold::new(Way::Under, first?.ohms(), second?.ohms());
        self.entered(&reading.reading, made)
    }

    fn meter(&mut self, reading: &circuit::Reading, between: Pair) -> Option<Reading> {
        let measure = match (&reading.first, &reading.less) {
            (Some(first), Some(less)) => {
                let (first, less) = (self.find_position(first), self.find_position(less));
                Measure::Less { first: (between, At::Position(first?)), second: (between, At::Position(less?)) }
            }
            _ => Measure::Between(between),
        };
        let at_most = match &reading.at_most {
            Some(told) => Some(self.value(told)?.ohms()),
            None => None,
        };
        let open_from = match &reading.open_from {
            Some(told) => self.value(told)?.ohms(),
            None => OPEN_FROM,
        };
        Some(Reading::Ohmmeter { measure, at_most, open_from })
    }

    fn tester_lamp(&mut self, tester: &Named, lamp: &Named, circuit: &Circuit) -> Option<Reading> {
        let testers = || circuit.testers.iter().filter_map(Tolerant::sound);
        let Some(found) = testers().find(|found| found.tester.value == tester.value) else {
            self.unknown(tester, "tester", |_| testers().map(|tester| name(&tester.tester)).collect());
            return None;
        };
        let Some(place) = found.lamps.iter().position(|pin| pin.value == lamp.value) else {
            self.unknown(lamp, "lamp of this tester", |_| found.lamps.iter().map(name).collect());
            return None;
        };
        Some(Reading::TesterLamp { tester: self.tester(found)?, lamp: place })
    }

    fn tester(&mut self, tester: &circuit::Tester) -> Option<Tester> {
        let battery = self.find_point(&tester.battery)?;
        let filament = self.value(&tester.filament)?.ohms();
        let pins: Option<Vec<_>> = tester.lamps.iter().map(|pin| Some((self.find_point(pin)?, filament))).collect();
        Some(Tester {
            battery,
            volts: self.value(&tester.volts)?.volts(),
            inside: self.value(&tester.inside)?.ohms(),
            lamps: pins?,
            lit_from: self.value(&tester.lit_from)?.amperes(),
            dark_to: self.value(&tester.dark_to)?.amperes(),
        })
    }

    /// The lamps of the apparatus, for one side or for a weapon alone.
    fn apparatus(&mut self, circuit: &Circuit, sides: Option<[&Named; 2]>) {
        let facts: Vec<(&str, Option<Fact>)> = self
            .sound(&circuit.apparatus)
            .into_iter()
            .map(|fact| (fact.fact.value.as_str(), self.fact(fact, sides)))
            .collect();
        self.missing.extend(facts.iter().filter(|(_, fact)| fact.is_none()).map(|(id, _)| (*id).to_owned()));
        let facts: Facts = facts.into_iter().filter_map(|(id, fact)| Some((id, fact?))).collect();
        for lamp in self.sound(&circuit.lamps) {
            let id = Placed { value: for_side(&lamp.lamp.value, sides), place: lamp.lamp.place };
            let side = sides.map_or(String::new(), |[own, _]| format!("{}: ", own.value.spoken()));
            let made = self.condition(&lamp.lit_when, &lamp.lamp, &facts).map(|lit| {
                let facts = facts.iter().map(|(_, fact)| *fact).collect();
                self.network.reading(id.value.as_str(), Reading::ApparatusLamp { facts, lit })
            });
            if self.maybe_entered(&id, made).is_some() {
                let title = format!("{side}{}", lamp.title.value);
                self.labels.readings.insert(name(&id), Label { title, short: None, place: None, at: lamp.lamp.place });
            }
        }
    }

    fn fact(&mut self, fact: &circuit::Fact, sides: Option<[&Named; 2]>) -> Option<Fact> {
        let place = fact.fact.place;
        let [one, other] = self.two_points(&lines(&fact.between, sides), place, "between")?;
        let between = Pair { one, other };
        let measure = if fact.less.is_empty() {
            Measure::Between(between)
        } else {
            let [one, other] = self.two_points(&lines(&fact.less, sides), place, "less")?;
            Measure::Less { first: (between, At::Here), second: (Pair { one, other }, At::Here) }
        };
        let (way, zone) = match (&fact.under, &fact.over) {
            (Some(under), None) => (Way::Under, under),
            (None, Some(over)) => (Way::Over, over),
            _ => {
                self.bad(place, "a fact has one of `under` and `over`".to_owned(), "say from where on it holds");
                return None;
            }
        };
        let holds = self.zone(way, zone)?;
        Some(Fact { measure, holds })
    }

    fn zone(&mut self, way: Way, zone: &Placed<Told<ResistanceRange>>) -> Option<Threshold> {
        let figures: Vec<f64> = self.value(zone)?.0.iter().map(|figure| figure.ohms()).collect();
        let made = match figures.as_slice() {
            [only] => Threshold::new(way, *only, *only),
            [first, second] => Threshold::new(way, *first, *second),
            _ => {
                self.bad(zone.place, "a limit has one figure or two".to_owned(), "write `100 .. 1000 Ω`");
                return None;
            }
        };
        made.map_err(|flaw| self.senseless(zone.place, &flaw, None)).ok()
    }

    fn condition(&mut self, when: &When, lamp: &Named, facts: &Facts) -> Option<Condition> {
        let mut several = |conditions: &Many<When>| -> Option<Vec<Condition>> {
            conditions.iter().map(|condition| self.condition(condition, lamp, facts)).collect()
        };
        let parts = [
            when.fact.is_some(),
            when.not.is_some(),
            !when.all_of.is_empty(),
            !when.any_of.is_empty(),
            !when.machines_differ.is_empty(),
        ];
        match parts {
            [true, false, false, false, false] => self.fact_number(when.fact.as_ref()?, facts).map(Condition::Fact),
            [false, true, false, false, false] => {
                let not = self.condition(when.not.as_deref()?, lamp, facts)?;
                Some(Condition::Not(Box::new(not)))
            }
            [false, false, true, false, false] => several(&when.all_of).map(Condition::All),
            [false, false, false, true, false] => several(&when.any_of).map(Condition::Any),
            [false, false, false, false, true] => several(&when.machines_differ).map(Condition::Machines),
            _ => {
                let help = "write a fact, or one of `not`, `all of`, `any of`, `machines differ`";
                self.bad(lamp.place, format!("the condition of `{}` is not one", lamp.value), help);
                None
            }
        }
    }

    fn fact_number(&mut self, named: &Named, facts: &Facts) -> Option<usize> {
        let found = facts.iter().position(|(id, _)| *id == named.value.as_str());
        if found.is_none() {
            self.unknown(named, "fact", |_| facts.iter().map(|(id, _)| (*id).to_owned()).collect());
        }
        found
    }

    fn healthy(&mut self, healthy: &circuit::Healthy) {
        let reading = self.network.find_reading(healthy.reading.value.as_str());
        if reading.is_none() {
            self.unknown(&healthy.reading, "reading", |network| {
                network.readings_by_name().map(str::to_owned).collect()
            });
        }
        let position = match &healthy.when {
            Some(named) => self.find_position(named),
            None => Some(Network::REST),
        };
        if let (Some(reading), Some(position)) = (reading, position) {
            let (shows, at) = (healthy.shows.value, healthy.shows.place);
            self.healthy.push(Expected { reading, position, shows, at });
        }
    }
}

/// The lines of a fact, `own-` and `other-` replaced by the two sides.
fn lines(points: &Many<Named>, sides: Option<[&Named; 2]>) -> Many<Named> {
    let Some([own, other]) = sides else { return points.clone() };
    let line = |named: &Named| {
        let id = named.value.as_str();
        let prefixed = [("own-", own), ("other-", other)];
        let replaced = prefixed
            .into_iter()
            .find_map(|(prefix, side)| Some(format!("{}-{}", side.value, id.strip_prefix(prefix)?)));
        Placed { value: Id(replaced.unwrap_or_else(|| id.to_owned())), place: named.place }
    };
    Many(points.iter().map(line).collect())
}

fn for_side(lamp: &Id, sides: Option<[&Named; 2]>) -> Id {
    match sides {
        Some([own, _]) => Id(format!("{}-{}", own.value, lamp)),
        None => lamp.clone(),
    }
}
