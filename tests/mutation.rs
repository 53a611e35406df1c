//! Mutations of the demo handbook: exchange the faults of two causes that a reading tells apart, and `proof` must object.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::model::{Guides, Id, Many, Symptom, fill};
use coquille::proof::sights::Sight;
use coquille::proof::{Code, Proofed, Severity, check};
use coquille::reckoning::circuit::{Answer, FaultId, Network};
use coquille::source::{Flaw, Folder, Placed, read};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

#[test]
fn exchanging_the_faults_of_two_causes_that_a_reading_surely_parts_is_an_error() {
    let demo = Demo::read();
    let proofed = demo.proof(demo.guides.clone());
    assert_eq!(proofed.errors(), 0, "{:?}", proofed.findings);
    let mut guides_tried = BTreeSet::new();
    let mut missed = Vec::new();
    for (at, (_, guide)) in demo.guides.symptoms.iter().enumerate() {
        assert!(!objects(&demo.proof(demo.with(at, |_| {}))), "{} unchanged", guide.symptom.value);
        for (one, other) in parted(guide, &proofed) {
            guides_tried.insert(guide.symptom.value.0.clone());
            let mutant = demo.with(at, |guide| exchange(guide, one, other));
            if !objects(&demo.proof(mutant)) {
                missed.push((guide.symptom.value.0.clone(), one, other));
            }
        }
    }
    assert!(missed.is_empty(), "nothing said to {missed:?}");
    let wanted = ["epee-no-light", "foil-dark-on-tester", "foil-white-burns"].map(str::to_owned);
    assert!(guides_tried.is_superset(&wanted.into()), "only {guides_tried:?} have causes that a reading parts");
}

#[test]
fn a_fault_that_darkens_the_tester_is_no_cause_of_a_lamp_that_stays_lit() {
    let demo = Demo::read();
    let at = |id: &str| demo.guides.symptoms.iter().position(|(_, guide)| guide.symptom.value.as_str() == id).unwrap();
    let (lit, dark) = (at("foil-stays-lit"), at("foil-dark-on-tester"));
    let steady =
        ["no-tip", "spring-missing", "tip-stuck-down", "wire-broken-in-blade", "wire-broken-at-guard", "c-off-guard"];
    let mut tried = 0;
    for cause in causes_with_faults(&demo.guides.symptoms[lit].1) {
        for other in causes_with_faults(&demo.guides.symptoms[dark].1) {
            let fault = fault_names(&demo.guides.symptoms[dark].1, other);
            if fault.iter().any(|fault| !steady.contains(&fault.as_str())) {
                continue;
            }
            let from = demo.guides.symptoms[dark].1.causes[other].sound().unwrap().fault.clone();
            let mutant = demo.with(lit, |guide| set(guide, cause, from));
            assert!(objects(&demo.proof(mutant)), "{fault:?} taken for a lamp that stays lit");
            tried += 1;
        }
    }
    assert!(tried >= 30, "{tried}");
}

#[test]
fn a_fault_that_cannot_show_the_symptom_is_no_cause_of_it_in_any_guide() {
    let demo = Demo::read();
    let proofed = demo.proof(demo.guides.clone());
    let mut tried: BTreeMap<String, usize> = BTreeMap::new();
    let mut missed = Vec::new();
    for (at, (_, guide)) in demo.guides.symptoms.iter().enumerate() {
        let (Some(sight), Some(cause)) =
            (proofed.sights.get(guide.symptom.value.as_str()), causes_with_faults(guide).first().copied())
        else {
            continue;
        };
        let network = &proofed.circuits[&sight.circuit].network;
        // A bout has faults by the score and takes long: two tell enough.
        let strange = network.faults().filter(|fault| !can_show(sight, network, *fault));
        for fault in strange.take(if sight.circuit.ends_with("-bout") { 2 } else { 12 }) {
            let name = network.fault_name(fault).to_owned();
            let fault = guide.causes[cause].sound().unwrap().fault.iter().next().unwrap().clone();
            let strange = Placed { value: Id(name.clone()), place: fault.place };
            if !objects(&demo.proof(demo.with(at, |guide| set(guide, cause, Many(vec![strange]))))) {
                missed.push((guide.symptom.value.0.clone(), name));
            }
            *tried.entry(guide.symptom.value.0.clone()).or_default() += 1;
        }
    }
    assert!(missed.is_empty(), "nothing said to {missed:?}");
    for guide in ["side-dead", "body-cord-comes-and-goes", "jacket-too-high", "piste-shows-hits"] {
        assert!(tried.contains_key(guide), "{guide} has no fault that cannot show it: {tried:?}");
    }
}

/// Whether a fault can show every lamp of a symptom, and one of its signs, each by itself.
fn can_show(sight: &Sight, network: &Network, fault: FaultId) -> bool {
    let answers = |reading, position| network.seen(reading, position, Some(fault)).unwrap().answers();
    let all = sight.signs.iter().flatten().all(|(sign, _)| answers(sign.reading, sign.position).contains(sign.shows));
    let signs = sight.one_of.as_deref().unwrap_or_default();
    let one = signs.iter().any(|sign| !answers(sign.reading, sign.position).contradicts(sign.shows));
    all && (one || signs.is_empty())
}

#[test]
fn every_symptom_that_an_instrument_shows_is_held_against_a_circuit_and_the_others_say_why_not() {
    let demo = Demo::read();
    for (file, guide) in &demo.guides.symptoms {
        let text = &demo.folder.texts.get(*file).unwrap().text;
        let accepted = guide.accepts.iter().filter_map(|waiver| waiver.sound());
        let waived = accepted.into_iter().any(|waiver| waiver.finding.value == "symptom-without-circuit");
        let said = waived || text.lines().any(|line| line.starts_with("seen on: eye and hand # no circuit: "));
        assert!(guide.circuit.is_some() || said, "{}", guide.symptom.value);
        for cause in guide.causes.iter().filter_map(|cause| cause.sound()) {
            let named = !cause.fault.is_empty() || guide.circuit.is_none();
            assert!(named, "{}: `{}` names no fault", guide.symptom.value, cause.cause.value);
        }
        let known = guide.lamps.len() + guide.signs.len() > 0;
        assert!(known || guide.circuit.is_none(), "{}: nothing to hold a fault against", guide.symptom.value);
    }
}

/// The demo handbook, read once.
struct Demo {
    folder: Folder,
    guides: Guides,
    shape: Vec<Flaw>,
}

impl Demo {
    fn read() -> Demo {
        let folder = read(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/guides"))).unwrap();
        let (guides, shape) = fill(&folder);
        Demo { folder, guides, shape }
    }

    fn proof(&self, guides: Guides) -> Proofed {
        check(&self.folder, guides, self.shape.clone())
    }

    /// One guide, changed, with the circuits that it rests on: what the rest says does not change.
    fn with(&self, at: usize, change: impl FnOnce(&mut Symptom)) -> Guides {
        let mut guides = Guides { symptoms: vec![self.guides.symptoms[at].clone()], ..Guides::default() };
        let mut needed: Vec<String> =
            guides.symptoms[0].1.circuit.iter().map(|circuit| circuit.value.0.clone()).collect();
        let mut next = 0;
        while let Some(id) = needed.get(next).cloned() {
            let circuit = self.guides.circuits.iter().find(|(_, circuit)| circuit.circuit.value.0 == id).unwrap();
            let used = circuit.1.uses.iter().filter_map(|used| used.sound()).map(|used| used.circuit.value.0.clone());
            needed.extend(used.filter(|used| !needed.contains(used)).collect::<Vec<_>>());
            guides.circuits.push(circuit.clone());
            next += 1;
        }
        change(&mut guides.symptoms[0].1);
        guides
    }
}

/// Whether the circuit is what objects.
fn objects(proofed: &Proofed) -> bool {
    let by_circuit = [Code::FaultNeverShows, Code::ProbeContradicted];
    proofed.findings.iter().any(|finding| finding.severity() == Severity::Error && by_circuit.contains(&finding.code))
}

fn causes_with_faults(guide: &Symptom) -> Vec<usize> {
    let with = guide.causes.iter().enumerate();
    with.filter(|(_, cause)| cause.sound().is_some_and(|cause| !cause.fault.is_empty())).map(|(at, _)| at).collect()
}

fn fault_names(guide: &Symptom, cause: usize) -> Vec<String> {
    guide.causes[cause].sound().unwrap().fault.iter().map(|fault| fault.value.0.clone()).collect()
}

/// Pairs of causes whose answers to a sign of the symptom or to a probe of the guide are sure and differ.
fn parted(guide: &Symptom, proofed: &Proofed) -> Vec<(usize, usize)> {
    let Some(sight) = proofed.sights.get(guide.symptom.value.as_str()) else { return Vec::new() };
    let network = &proofed.circuits[&sight.circuit].network;
    let signs = sight.signs.iter().flatten().map(|(sign, _)| (sign.reading, sign.position));
    let probes = sight.probes.values().map(|taken| (taken.reading, taken.position));
    let looked_at: Vec<_> = signs.chain(probes).collect();
    let faults =
        |cause: usize| -> &[FaultId] { &sight.faults[guide.causes[cause].sound().unwrap().cause.value.as_str()] };
    let sure = |cause: usize, at: usize| -> Option<Answer> {
        let (reading, position) = looked_at[at];
        let answers: BTreeSet<Answer> = faults(cause)
            .iter()
            .flat_map(|fault| {
                network.seen(reading, position, Some(*fault)).unwrap().answers().iter().collect::<Vec<_>>()
            })
            .collect();
        if answers.len() == 1 { answers.first().copied() } else { None }
    };
    let differ = |one, other| {
        (0..looked_at.len()).any(|at| matches!((sure(one, at), sure(other, at)), (Some(a), Some(b)) if a != b))
    };
    let causes = causes_with_faults(guide);
    let pairs =
        causes.iter().flat_map(|one| causes.iter().filter(move |other| one < *other).map(move |other| (*one, *other)));
    pairs.filter(|(one, other)| differ(*one, *other)).collect()
}

fn exchange(guide: &mut Symptom, one: usize, other: usize) {
    let fault = |guide: &Symptom, cause: usize| guide.causes[cause].sound().unwrap().fault.clone();
    let (first, second) = (fault(guide, one), fault(guide, other));
    set(guide, one, second);
    set(guide, other, first);
}

fn set(guide: &mut Symptom, cause: usize, fault: coquille::model::Many<coquille::model::Named>) {
    use coquille::source::Tolerant;
    if let Tolerant::Sound(cause) = &mut guide.causes.0[cause] {
        cause.fault = fault;
    }
}
