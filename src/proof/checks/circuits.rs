//! Circuits by themselves, and guides held against them by computation.
//!
//! Out: findings where sound kit does not read what its circuit says, where a cause's fault cannot show the symptom, where a
//! probe's answers are not those predicted, and where the circuit knows a fault that the guide does not.
//! Leaves to others: finding names in the network (`sights`), the computing (`reckoning::circuit`).

use crate::model::circuit::Shows;
use crate::model::{Cause, Circuit, Guides, Named, Probe, SeenOn, Symptom};
use crate::proof::finding::Finding;
use crate::proof::findings::circuit as words;
use crate::proof::network::{Circuits, Expected, Wired};
use crate::proof::shown;
use crate::proof::sights::{OneOf, Sight, Taken};
use crate::reckoning::circuit::{Answer, Answers, FaultId, Grade, PositionId, ReadingId, Seen, Sign};
use crate::source::{Place, Tolerant};
use std::collections::{BTreeMap, BTreeSet};

/// Checks all circuits, and all guides that name one.
pub fn check(
    guides: &Guides,
    circuits: &BTreeMap<String, Wired>,
    sights: &BTreeMap<String, Sight>,
    findings: &mut Vec<Finding>,
) {
    for wired in circuits.values() {
        written(wired, findings);
        if wired.is_whole() {
            findings.extend(wired.healthy.iter().filter_map(|expected| healthy(wired, expected)));
        }
    }
    let by_id: Circuits<'_> = guides.circuits.iter().map(|(_, c)| (c.circuit.value.as_str(), c)).collect();
    for (_, guide) in &guides.symptoms {
        let sight = sights.get(guide.symptom.value.as_str());
        let held =
            sight.and_then(|sight| Some(Held { guide, sight, wired: circuits.get(&sight.circuit)?, by_id: &by_id }));
        held.into_iter().for_each(|held| held.check(findings));
        findings.extend(no_circuit(guide, &by_id));
    }
}

/// A symptom that an instrument shows on an item whose circuit is known, and that names none.
fn no_circuit(guide: &Symptom, by_id: &Circuits<'_>) -> Option<Finding> {
    if guide.circuit.is_some() || guide.seen_on.value == SeenOn::EyeAndHand {
        return None;
    }
    let kit = guide.kit.value.as_str();
    let of_kit = by_id.values().filter(|circuit| circuit.kit.as_ref().is_some_and(|item| item.value.as_str() == kit));
    let known: Vec<&str> = of_kit.map(|circuit| circuit.circuit.value.as_str()).collect();
    (!known.is_empty()).then(|| words::without_circuit(&guide.symptom, &known))
}

/// What is wrong in a circuit's own file, unless another check said so at the same place.
fn written(wired: &Wired, findings: &mut Vec<Finding>) {
    let said: BTreeSet<_> = findings.iter().map(|finding| (finding.place, finding.code)).collect();
    findings.extend(wired.findings.iter().filter(|finding| !said.contains(&(finding.place, finding.code))).cloned());
}

/// Sound kit must show what is said, over the whole range of every figure.
fn healthy(wired: &Wired, expected: &Expected) -> Option<Finding> {
    let answers = wired.network.seen(expected.reading, expected.position, None).ok()?.answers();
    let agrees = match wanted(expected.shows) {
        Some(answer) => answers.sure() == Some(answer),
        None => answers.sure().is_none(),
    };
    let (reading, position) =
        (wired.network.reading_name(expected.reading), wired.network.position_name(expected.position));
    let said = wanted(expected.shows).map_or("that it may go either way", shown::answer);
    (!agrees).then(|| words::sound_reading(expected.at, reading, position, &shown::answers(answers), said))
}

/// The answer that is meant; nothing for *may go either way*.
fn wanted(shows: Shows) -> Option<Answer> {
    match shows {
        Shows::Lit | Shows::Sounds => Some(Answer::Lit),
        Shows::Dark | Shows::Silent => Some(Answer::Dark),
        Shows::In => Some(Answer::In),
        Shows::Over => Some(Answer::Over),
        Shows::Open => Some(Answer::Open),
        Shows::May => None,
    }
}

/// A guide held against its circuit.
struct Held<'a> {
    guide: &'a Symptom,
    sight: &'a Sight,
    wired: &'a Wired,
    by_id: &'a Circuits<'a>,
}

fn sound<T>(items: &[Tolerant<T>]) -> impl Iterator<Item = &T> {
    items.iter().filter_map(Tolerant::sound)
}

impl Held<'_> {
    fn check(&self, findings: &mut Vec<Finding>) {
        for cause in sound(&self.guide.causes) {
            let faults = self.faults(cause).iter().zip(&*cause.fault);
            findings.extend(faults.filter_map(|(fault, named)| self.never_shows(cause, named, *fault)));
        }
        for probe in sound(&self.guide.probes).filter(|probe| probe.mends.is_empty()) {
            let Some(taken) = self.sight.probes.get(probe.probe.value.as_str()) else { continue };
            for cause in sound(&self.guide.causes) {
                self.probe(probe, taken, cause, findings);
            }
        }
        findings.extend(self.knows_another());
    }

    /// The faults of a cause, in the order in which it names them; none unless all are in the circuit.
    fn faults(&self, cause: &Cause) -> &[FaultId] {
        let found = self.sight.faults.get(cause.cause.value.as_str()).map_or(&[][..], Vec::as_slice);
        if found.len() == cause.fault.len() { found } else { &[] }
    }

    fn never_shows(&self, cause: &Cause, named: &Named, fault: FaultId) -> Option<Finding> {
        if self.grade(fault) != Some(Grade::Never) {
            return None;
        }
        if self.one_of(fault) == Some(Grade::Never) {
            return self.never_one_of(cause, named, fault);
        }
        let signs = self.sight.signs.as_ref()?;
        // Each sign may be there at times though never all at once: then the first tells.
        let never = |(sign, _): &&(Sign, Place)| self.wired.network.shows(Some(fault), &[*sign]) == Ok(Grade::Never);
        let (sign, place) = signs.iter().find(never).or(signs.first())?;
        let found = self.contradiction(sign.reading, sign.position, fault, shown::answer(sign.shows))?;
        Some(words::never_shows(named, &cause.cause, *place, &found))
    }

    fn never_one_of(&self, cause: &Cause, named: &Named, fault: FaultId) -> Option<Finding> {
        let signs = self.sight.one_of.as_ref()?;
        let first = signs.first()?;
        let found = self.contradiction(first.reading, first.position, fault, &shown::answers(first.shows))?;
        Some(match signs.len() {
            1 => words::never_shows(named, &cause.cause, first.at, &found),
            several => words::never_shows_any(named, &cause.cause, first.at, several, &found),
        })
    }

    /// How far a fault shows the symptom; nothing where the guide has no sign to hold it against.
    fn grade(&self, fault: FaultId) -> Option<Grade> {
        [self.all_lamps(fault), self.one_of(fault)].into_iter().flatten().min()
    }

    fn all_lamps(&self, fault: FaultId) -> Option<Grade> {
        let signs: Vec<Sign> = self.sight.signs.as_ref()?.iter().map(|(sign, _)| *sign).collect();
        if signs.is_empty() { None } else { self.wired.network.shows(Some(fault), &signs).ok() }
    }

    /// The best that a fault does of the sights any one of which is the symptom.
    fn one_of(&self, fault: FaultId) -> Option<Grade> {
        let signs = self.sight.one_of.as_ref()?;
        signs.iter().filter_map(|sign| one_of(self.wired, sign, fault)).max()
    }

    fn contradiction(
        &self,
        reading: ReadingId,
        position: PositionId,
        fault: FaultId,
        said: &str,
    ) -> Option<words::Contradiction<'_>> {
        let network = &self.wired.network;
        let told = |seen: Seen| shown::seen_with_figure(&seen, network.reading_of(reading));
        Some(words::Contradiction {
            circuit: &self.sight.circuit,
            reading: network.reading_name(reading),
            position: network.position_name(position),
            faulty: told(network.seen(reading, position, Some(fault)).ok()?),
            sound: told(network.seen(reading, position, None).ok()?),
            said: said.to_owned(),
        })
    }

    /// A probe must have, for a cause, every answer that the circuit predicts for one of its faults, and no other.
    fn probe(&self, probe: &Probe, taken: &Taken, cause: &Cause, findings: &mut Vec<Finding>) {
        let seen = |fault: &FaultId| self.wired.network.seen(taken.reading, taken.position, Some(*fault)).ok();
        let each: Vec<(FaultId, Answers)> =
            self.faults(cause).iter().filter_map(|fault| Some((*fault, seen(fault)?.answers()))).collect();
        let predicted = each.iter().fold(Answers::default(), |all, (_, answers)| all.or(*answers));
        let id = cause.cause.value.as_str();
        let told = told(probe, id);
        // The fault to speak of: one that can answer so, else the first.
        let fault = |reads: Answers| each.iter().find(|(_, answers)| !reads.contradicts(*answers)).or(each.first());
        let found = |reads: Answers| self.contradiction(taken.reading, taken.position, fault(reads)?.0, "");
        for (answer, reads) in &taken.answers {
            let place = told.iter().find(|(known, _)| known.value.as_str() == answer).map(|(_, place)| *place);
            let Some(found) = found(*reads) else { return };
            match (place, reads.contradicts(predicted)) {
                (Some(place), true) => findings.push(words::wrong_answer(place, id, answer, &probe.probe, &found)),
                (None, false) => {
                    let at = sound(&probe.answers).find(|known| known.answer.value.as_str() == answer);
                    let at = at.map_or(probe.probe.place, |answer| answer.answer.place);
                    findings.push(words::missing_answer(at, id, answer, &probe.probe, &found));
                }
                _ => {}
            }
        }
        let offered = taken.answers.iter().fold(Answers::default(), |all, (_, reads)| all.or(*reads));
        // Whoever sees it come and go sees the two states too.
        let lacking = predicted.iter().find(|answer| *answer != Answer::Flickers && !offered.contains(*answer));
        let finding = |answer| {
            let found = found(Answers::of(&[answer]))?;
            Some(words::no_answer(&probe.probe, id, shown::answer(answer), &found))
        };
        findings.extend(lacking.and_then(finding));
    }

    /// Faults of the items that are left after the isolating steps that show the same and that no cause names.
    fn knows_another(&self) -> Option<Finding> {
        let named: BTreeSet<FaultId> = self.sight.faults.values().flatten().copied().collect();
        let network = &self.wired.network;
        let others = network.faults().filter(|fault| !named.contains(fault));
        let left: Vec<FaultId> = others.filter(|fault| self.is_left(network.fault_name(*fault))).collect();
        let of = |grade: Grade| -> Vec<&str> {
            let showing = left.iter().filter(|fault| self.grade(**fault) == Some(grade));
            showing.map(|fault| network.fault_name(*fault)).collect()
        };
        let (surely, perhaps) = (of(Grade::Surely), of(Grade::May));
        let place = self.guide.circuit.as_ref()?.place;
        let any = !surely.is_empty() || !perhaps.is_empty();
        any.then(|| words::knows_another(&self.guide.symptom, place, &surely, &perhaps))
    }

    /// After isolating steps only the guide's own item is left.
    fn is_left(&self, fault: &str) -> bool {
        let item = self.by_id.get(self.sight.circuit.as_str()).and_then(|circuit| item_of(circuit, fault, self.by_id));
        self.guide.first.is_empty() || item == Some(self.guide.kit.value.as_str())
    }
}

/// How far a fault shows one sight: surely if every answer that it can give is told there.
fn one_of(wired: &Wired, sign: &OneOf, fault: FaultId) -> Option<Grade> {
    let network = &wired.network;
    let answers = network.seen(sign.reading, sign.position, Some(fault)).ok()?.answers();
    if answers.iter().all(|answer| sign.shows.contains(answer)) {
        return Some(Grade::Surely);
    }
    let each = sign.shows.iter().filter_map(|shows| {
        network.shows(Some(fault), &[Sign { reading: sign.reading, position: sign.position, shows }]).ok()
    });
    each.max()
}

/// The item that a fault belongs to: that of the circuit in which it is written.
fn item_of<'c>(circuit: &'c Circuit, fault: &str, by_id: &Circuits<'c>) -> Option<&'c str> {
    if sound(&circuit.faults).any(|known| known.fault.value.as_str() == fault) {
        return circuit.kit.as_ref().map(|kit| kit.value.as_str());
    }
    sound(&circuit.uses).find_map(|used| {
        let inner = match &used.prefix {
            Some(prefix) => fault.strip_prefix(prefix.value.as_str())?.strip_prefix('-')?,
            None => fault,
        };
        item_of(by_id.get(used.circuit.value.as_str())?, inner, by_id)
    })
}

/// The answers that a probe has for a cause, each with the place that says so. A cause that none names answers *otherwise*,
/// and so does one that an answer names for some of the times.
fn told<'p>(probe: &'p Probe, cause: &str) -> Vec<(&'p Named, Place)> {
    let meant =
        || sound(&probe.answers).flat_map(|answer| sound(&answer.means).map(move |meant| (&answer.answer, meant)));
    let mut told = Vec::new();
    let mut at_times = false;
    for (answer, meant) in meant().filter(|(_, meant)| meant.cause.value.as_str() == cause) {
        let odds = meant.times.as_ref().and_then(|times| times.value.value());
        at_times |= odds.is_some_and(|odds| odds.times < odds.of);
        told.push((answer, meant.cause.place));
    }
    if told.is_empty() || (told.len() == 1 && at_times) {
        let otherwise = meant().filter(|(_, meant)| meant.cause.value.as_str() == "otherwise");
        told.extend(otherwise.map(|(answer, meant)| (answer, meant.cause.place)).take(1));
    }
    told
}
