//! A fault-finding guide as its circuit sees it: its lamps, faults and probes found in the network.
//!
//! In: the guides, and their circuits as networks. Out: a [`Sight`] for each guide that names a circuit, and a finding for each
//! name that the circuit does not have.
//! Leaves to others: whether the circuit agrees (`checks::circuits`), drawing it (`handbook`).
//!
//! A circuit made of circuits has their names with a prefix. A guide may leave it out where exactly one name fits, or, where
//! several do, one of the first side's: `no-tip` is `red-no-tip` in a bout of red and green.

use super::finding::Finding;
use super::findings::circuit as words;
use super::network::Wired;
use crate::model::{Circuit, Guides, LampSeen, LampState, Named, Probe, Reads, SeenOn, SignSeen, Symptom};
use crate::reckoning::circuit::{Answer, Answers, FaultId, Network, PositionId, ReadingId, Sign};
use crate::source::{Place, Tolerant};
use std::collections::BTreeMap;

/// A guide as its circuit sees it.
#[derive(Debug, Clone)]
pub struct Sight {
    /// The circuit's id.
    pub circuit: String,
    /// What is seen, with where the guide says so; nothing if a part of it could not be found.
    pub signs: Option<Vec<(Sign, Place)>>,
    /// What is read, where any one of several sights is the symptom; nothing if one of them could not be found.
    pub one_of: Option<Vec<OneOf>>,
    /// The faults of the causes, by the cause's id.
    pub faults: BTreeMap<String, Vec<FaultId>>,
    /// The probes that take a reading, by the probe's id.
    pub probes: BTreeMap<String, Taken>,
}

/// One of the sights by which a symptom is known.
#[derive(Debug, Clone, Copy)]
pub struct OneOf {
    /// The reading.
    pub reading: ReadingId,
    /// In which position.
    pub position: PositionId,
    /// What it shows: any of these.
    pub shows: Answers,
    /// Where the guide says so.
    pub at: Place,
}

/// A reading that a probe takes.
#[derive(Debug, Clone)]
pub struct Taken {
    /// Which.
    pub reading: ReadingId,
    /// In which position.
    pub position: PositionId,
    /// What is read with each answer, in the order of the answers.
    pub answers: Vec<(String, Answers)>,
}

/// Finds every guide that names a circuit in it. A circuit that is not whole has no sights.
pub fn sights(
    guides: &Guides,
    circuits: &BTreeMap<String, Wired>,
    findings: &mut Vec<Finding>,
) -> BTreeMap<String, Sight> {
    let mut sights = BTreeMap::new();
    for (_, guide) in &guides.symptoms {
        let Some(named) = &guide.circuit else {
            findings.extend(sound(&guide.causes).flat_map(|cause| &*cause.fault).map(words::no_circuit));
            continue;
        };
        let of = guides.circuits.iter().map(|(_, circuit)| circuit).find(|c| c.circuit.value == named.value);
        let wired = circuits.get(named.value.as_str()).filter(|wired| wired.is_whole());
        let (Some(circuit), Some(wired)) = (of, wired) else { continue };
        let mut looking = Looking { guide, circuit, network: &wired.network, findings };
        sights.insert(guide.symptom.value.0.clone(), looking.sight());
    }
    sights
}

struct Looking<'a, 'f> {
    guide: &'a Symptom,
    circuit: &'a Circuit,
    network: &'a Network,
    findings: &'f mut Vec<Finding>,
}

fn sound<T>(items: &[Tolerant<T>]) -> impl Iterator<Item = &T> {
    items.iter().filter_map(Tolerant::sound)
}

impl Looking<'_, '_> {
    fn sight(&mut self) -> Sight {
        let guide = self.guide;
        let signs: Vec<Option<Vec<(Sign, Place)>>> = sound(&guide.lamps).map(|lamp| self.signs(lamp)).collect();
        let mut faults = BTreeMap::new();
        for cause in sound(&guide.causes) {
            let found: Vec<FaultId> = cause.fault.iter().filter_map(|fault| self.fault(fault)).collect();
            if !found.is_empty() {
                faults.insert(cause.cause.value.0.clone(), found);
            }
        }
        let mut probes = BTreeMap::new();
        for probe in sound(&guide.probes) {
            probes.extend(self.taken(probe).map(|taken| (probe.probe.value.0.clone(), taken)));
        }
        let signs = signs.into_iter().collect::<Option<Vec<_>>>().map(|lists| lists.concat());
        let one_of: Vec<Option<OneOf>> = sound(&guide.signs).map(|sign| self.one_of(sign)).collect();
        let one_of = one_of.into_iter().collect();
        Sight { circuit: self.circuit.circuit.value.0.clone(), signs, one_of, faults, probes }
    }

    /// What one lamp does, in each position that the guide tells of.
    fn signs(&mut self, lamp: &LampSeen) -> Option<Vec<(Sign, Place)>> {
        let reading = match &lamp.reading {
            Some(named) => self.reading(named)?,
            None => self.usual_lamp()?,
        };
        let at = |position, state: &crate::source::Placed<LampState>| {
            (Sign { reading, position, shows: shown(state.value) }, state.place)
        };
        let mut signs: Vec<(Sign, Place)> = Vec::new();
        signs.extend(lamp.at_rest.iter().map(|state| at(Network::REST, state)));
        if let Some(state) = &lamp.pressed {
            signs.push(at(self.position("pressed", state.place)?, state));
        }
        if let (Some(when), Some(state)) = (&lamp.when, &lamp.shows) {
            signs.push(at(self.position(when.value.as_str(), when.place)?, state));
        }
        Some(signs)
    }

    fn one_of(&mut self, sign: &SignSeen) -> Option<OneOf> {
        let reading = self.reading(&sign.reading)?;
        let position = match &sign.when {
            Some(when) => self.position(when.value.as_str(), when.place)?,
            None => Network::REST,
        };
        let told: Vec<Answer> = sign.reads.iter().map(|reads| read(reads.value)).collect();
        Some(OneOf { reading, position, shows: Answers::of(&told), at: sign.reading.place })
    }

    /// The first lamp of the instrument that the guide is seen on.
    fn usual_lamp(&mut self) -> Option<ReadingId> {
        let first = lamps(self.circuit, self.guide.seen_on.value).into_iter().next();
        let found = first.and_then(|name| self.network.find_reading(&name));
        if found.is_none() {
            self.findings.push(words::no_lamp(&self.guide.seen_on, &self.circuit.circuit));
        }
        found
    }

    fn taken(&mut self, probe: &Probe) -> Option<Taken> {
        let reading = self.reading(probe.reading.as_ref()?)?;
        let position = match &probe.when {
            Some(when) => self.position(when.value.as_str(), when.place)?,
            None => Network::REST,
        };
        let mut answers = Vec::new();
        for answer in sound(&probe.answers) {
            let told: Vec<Answer> = answer.reads.iter().map(|reads| read(reads.value)).collect();
            let told = match &answer.lamp {
                Some(lamp) if told.is_empty() => vec![shown(lamp.value)],
                _ => told,
            };
            if told.is_empty() {
                self.findings.push(words::answer_reads_nothing(&answer.answer, &probe.probe));
                return None;
            }
            answers.push((answer.answer.value.0.clone(), Answers::of(&told)));
        }
        Some(Taken { reading, position, answers })
    }

    fn fault(&mut self, named: &Named) -> Option<FaultId> {
        let name = self.found("fault", named.value.as_str(), named.place, self.network.faults_by_name())?;
        self.network.find_fault(&name)
    }

    fn reading(&mut self, named: &Named) -> Option<ReadingId> {
        let name = self.found("reading", named.value.as_str(), named.place, self.network.readings_by_name())?;
        self.network.find_reading(&name)
    }

    fn position(&mut self, id: &str, place: Place) -> Option<PositionId> {
        let name = self.found("position", id, place, self.network.positions_by_name())?;
        self.network.find_position(&name)
    }

    fn found<'n>(
        &mut self,
        noun: &str,
        id: &str,
        place: Place,
        names: impl Iterator<Item = &'n str>,
    ) -> Option<String> {
        let names: Vec<&str> = names.collect();
        let fitting = fitting(id, &names, self.circuit.sides.first().map(|side| side.value.as_str()));
        match fitting.as_slice() {
            [one] => Some((*one).to_owned()),
            several => {
                let circuit = &self.circuit.circuit.value;
                self.findings.push(words::not_in_circuit(noun, id, place, circuit, several, &names));
                None
            }
        }
    }
}

/// The names that an id can mean: itself; else the first side's own; else those that end in it after a prefix, of several
/// only the first side's.
fn fitting<'n>(id: &str, names: &[&'n str], side: Option<&str>) -> Vec<&'n str> {
    if let Some(exact) = names.iter().find(|name| **name == id) {
        return vec![exact];
    }
    let own =
        |name: &&&str| side.is_some_and(|side| name.strip_prefix(side).and_then(|r| r.strip_prefix('-')) == Some(id));
    if let Some(own) = names.iter().find(own) {
        return vec![own];
    }
    let prefixed = |name: &&&str| name.strip_suffix(id).is_some_and(|prefix| prefix.len() > 1 && prefix.ends_with('-'));
    let all: Vec<&str> = names.iter().filter(prefixed).copied().collect();
    let of_side =
        |name: &&&str| side.is_some_and(|side| name.strip_prefix(side).is_some_and(|rest| rest.starts_with('-')));
    let first: Vec<&str> = all.iter().filter(of_side).copied().collect();
    if all.len() > 1 && first.len() == 1 { first } else { all }
}

/// The names of a circuit that an id can mean, with or without its prefix.
pub fn names_meant<'n>(id: &str, names: &[&'n str]) -> Vec<&'n str> {
    fitting(id, names, None)
}

/// The lamps of an instrument in a circuit, in the order written, as they are called in the network.
pub fn lamps(circuit: &Circuit, seen_on: SeenOn) -> Vec<String> {
    let sides: Vec<Option<&str>> = match &*circuit.sides.0 {
        [] => vec![None],
        sides => sides.iter().map(|side| Some(side.value.as_str())).collect(),
    };
    let apparatus = sides.into_iter().flat_map(|side| {
        sound(&circuit.lamps).map(move |lamp| match side {
            Some(side) => format!("{side}-{}", lamp.lamp.value),
            None => lamp.lamp.value.0.clone(),
        })
    });
    let read = sound(&circuit.readings).filter(|reading| reading.on.value == seen_on);
    let read = read.filter(|reading| reading.lit_under.is_some() || reading.tester.is_some());
    let read = read.map(|reading| reading.reading.value.0.clone());
    if seen_on == SeenOn::Apparatus { apparatus.chain(read).collect() } else { read.collect() }
}

/// What a lamp does, as an answer.
pub fn shown(state: LampState) -> Answer {
    match state {
        LampState::Lit => Answer::Lit,
        LampState::Dark => Answer::Dark,
        LampState::ComesAndGoes => Answer::Flickers,
    }
}

fn read(reads: Reads) -> Answer {
    match reads {
        Reads::Lit | Reads::Sounds => Answer::Lit,
        Reads::Dark | Reads::Silent => Answer::Dark,
        Reads::In => Answer::In,
        Reads::Over => Answer::Over,
        Reads::Open => Answer::Open,
        Reads::ComesAndGoes => Answer::Flickers,
    }
}

#[cfg(test)]
mod tests {
    use super::fitting;

    #[test]
    fn a_prefix_can_be_left_out_where_one_name_fits_and_the_first_side_comes_first() {
        let names = ["no-tip", "red-no-tip", "red-pressed", "green-pressed", "red-cord-a-broken", "red-reel-a-broken"];
        assert_eq!(fitting("no-tip", &names, Some("red")), ["no-tip"]);
        assert_eq!(fitting("pressed", &names, Some("red")), ["red-pressed"]);
        assert_eq!(fitting("pressed", &names, None), ["red-pressed", "green-pressed"]);
        assert_eq!(fitting("a-broken", &names, Some("red")), ["red-cord-a-broken", "red-reel-a-broken"]);
        assert_eq!(fitting("a-broken", &["red-cord-a-broken", "red-a-broken"], Some("red")), ["red-a-broken"]);
        assert_eq!(fitting("cord-a-broken", &names, Some("red")), ["red-cord-a-broken"]);
        assert!(fitting("o-tip", &names, Some("red")).is_empty());
    }
}
