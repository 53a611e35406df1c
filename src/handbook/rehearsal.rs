//! What the practice bench looks its answers up in: every way in which a guide's case can behave, and the least-cost tree, as plain data.
//!
//! In: a guide with its reckoning and, where it names one, its circuit. Out: [`Rehearsal`], which is written as JSON.
//! Leaves to others: words and pages (`practice`), drawing a fault and adding up (`practice.js`, which the tests hold to the reckoning).

use super::questions::Asking;
use crate::proof::cases::sound;
use crate::proof::network::Wired;
use crate::proof::shown;
use crate::proof::sights::Sight;
use crate::reckoning::circuit::{Answer, Answers, FaultId, PositionId, Reading, ReadingId, Span};
use crate::reckoning::diagnosis::{EndingKind, Hypothesis, JobIndex, Node, ProbeIndex, Suspect, TellApart, Tree};
use serde::Serialize;
use std::collections::BTreeSet;

/// Readings offered at most: a bout of two fencers has tens of thousands, and nobody scrolls so far.
const MOST_READINGS: usize = 24;

/// Everything that the bench looks up. Minutes are whole tenths.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Rehearsal {
    /// Changes when a reader would break.
    pub format: u32,
    /// The guide's id.
    pub guide: String,
    /// Whether a run ends only at a single cause.
    pub tell_causes: bool,
    /// The causes' ids, `rest` last if there is one.
    pub suspects: Vec<Named>,
    /// The opening jobs.
    pub jobs: Vec<Job>,
    /// The probes.
    pub probes: Vec<Probe>,
    /// The readings of the circuit: ids, so that they can be held against the circuit itself.
    pub readings: Vec<Pair>,
    /// Every way in which the case can behave.
    pub hypotheses: Vec<Behaviour>,
    /// The faults of the circuit that causes stand for, with what each reading shows.
    pub faults: Vec<Shown>,
    /// The least-cost tree, the start first.
    pub tree: Vec<Stop>,
    /// Its expected minutes, exactly.
    pub expected: String,
    /// The hypothesis of each card.
    pub cards: Vec<usize>,
}

/// A suspect.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Named {
    /// Its id.
    pub id: String,
    /// Its lasting remedy, as a place in the page's list.
    pub remedy: Option<usize>,
    /// Its stop-gap, as a place in the page's list.
    pub stop_gap: Option<usize>,
}

/// An opening job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Job {
    /// To open.
    pub open: u64,
    /// To close.
    pub close: u64,
}

/// A probe.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Probe {
    /// Its id.
    pub id: String,
    /// Without opening and closing.
    pub minutes: u64,
    /// Jobs that must be open, in opening order.
    pub open: Vec<usize>,
    /// Jobs that must be shut.
    pub shut: Vec<usize>,
    /// The answers' ids.
    pub answers: Vec<String>,
    /// For a trial fix: the answer *now it works*.
    pub works: Option<usize>,
}

/// A reading in a position.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Pair {
    /// The reading's id.
    pub reading: String,
    /// The position's id.
    pub position: String,
    /// What taking it costs.
    pub minutes: u64,
}

/// A way to behave.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Behaviour {
    /// Who, as a place among the suspects.
    pub suspect: usize,
    /// How often, beside the others.
    pub weight: u64,
    /// The answer to each probe.
    pub answers: Vec<usize>,
    /// The faults that answer so, as places among the faults; none where the circuit knows of none.
    pub faults: Vec<usize>,
}

/// What a fault shows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Shown {
    /// The fault's id.
    pub id: String,
    /// For each reading every answer that it can give.
    pub shows: Vec<Vec<&'static str>>,
    /// For each reading of a meter its usual figure, if the answer is sure.
    pub figures: Vec<Option<String>>,
}

/// A place in the tree.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stop {
    /// The probe to do; nothing at an ending.
    pub probe: Option<usize>,
    /// Where each answer leads.
    pub next: Vec<usize>,
    /// At an ending: whether a trial fix worked.
    pub mended: bool,
}

/// What a handbook's circuit adds to a guide.
struct Seen<'a> {
    sight: &'a Sight,
    wired: &'a Wired,
}

/// Lays it all out. `remedies` are the ids of the jobs in the order in which the page lists them.
pub fn rehearsal(asking: &Asking<'_>, least: &Tree, remedies: &[&str], cards: Vec<usize>) -> Rehearsal {
    let diagnosis = &asking.case.diagnosis;
    let hypotheses = diagnosis.hypotheses();
    let seen = seen(asking);
    let faults = seen.as_ref().map_or_else(Vec::new, |seen| faults(asking, seen));
    let pairs = pairs(asking);
    let behaviour = |one: &Hypothesis| behaviour(asking, seen.as_ref(), &faults, one);
    Rehearsal {
        format: 1,
        guide: asking.guide.symptom.value.0.clone(),
        tell_causes: diagnosis.case().tell_apart == TellApart::Causes,
        suspects: suspects(asking, remedies),
        jobs: diagnosis.case().jobs.iter().map(|job| Job { open: job.open.0, close: job.close.0 }).collect(),
        probes: probes(asking),
        readings: pairs.iter().map(|pair| written(seen.as_ref(), pair)).collect(),
        hypotheses: hypotheses.iter().map(behaviour).collect(),
        faults: faults.iter().filter_map(|fault| shown_by(seen.as_ref()?, *fault, &pairs)).collect(),
        tree: flat(least),
        expected: least.expected.to_string(),
        cards,
    }
}

/// The place of a suspect: causes in the author's order, *not on this list* after them.
pub fn place(asking: &Asking<'_>, who: Suspect) -> usize {
    match who {
        Suspect::Cause(index) => index.0,
        Suspect::Rest => sound(&asking.guide.causes).len(),
    }
}

fn suspects(asking: &Asking<'_>, remedies: &[&str]) -> Vec<Named> {
    let at = |named: Option<&crate::model::Named>| {
        let id = named?.value.as_str();
        remedies.iter().position(|known| *known == id)
    };
    let causes = sound(&asking.guide.causes).into_iter().map(|cause| Named {
        id: cause.cause.value.0.clone(),
        remedy: at(cause.lasting.as_ref()),
        stop_gap: at(cause.stop_gap.as_ref()),
    });
    let lasting = asking.guide.rest.as_ref().and_then(|rest| rest.lasting.as_ref());
    let rest =
        asking.case.diagnosis.case().rest.map(|_| Named { id: "rest".into(), remedy: at(lasting), stop_gap: None });
    causes.chain(rest).collect()
}

fn probes(asking: &Asking<'_>) -> Vec<Probe> {
    let diagnosis = &asking.case.diagnosis;
    let indices = |jobs: &[JobIndex]| jobs.iter().map(|job| job.0).collect();
    let probe = |(index, probe): (usize, &crate::reckoning::diagnosis::Probe)| {
        let wants = diagnosis.wants(ProbeIndex(index));
        let written = asking.probe(index);
        let answer = |at| written.map_or_else(String::new, |probe| super::ways::answer_id(probe, at));
        Probe {
            id: written.map_or_else(String::new, |probe| probe.probe.value.0.clone()),
            minutes: probe.minutes.0,
            open: indices(&wants.open),
            shut: indices(&wants.shut),
            answers: (0..probe.answers.len()).map(answer).collect(),
            works: probe.works_now.map(|answer| answer.0),
        }
    };
    diagnosis.case().probes.iter().enumerate().map(probe).collect()
}

fn behaviour(asking: &Asking<'_>, seen: Option<&Seen<'_>>, faults: &[FaultId], one: &Hypothesis) -> Behaviour {
    let fitting = seen.map_or_else(Vec::new, |seen| fitting(asking, seen, one));
    Behaviour {
        suspect: place(asking, one.suspect),
        weight: one.weight,
        answers: one.answers.iter().map(|answer| answer.0).collect(),
        faults: fitting.iter().filter_map(|fault| faults.iter().position(|known| known == fault)).collect(),
    }
}

fn seen<'a>(asking: &Asking<'a>) -> Option<Seen<'a>> {
    let proofed = asking.laying.proofed;
    let sight = proofed.sights.get(asking.guide.symptom.value.as_str())?;
    let wired = proofed.circuits.get(&sight.circuit).filter(|wired| wired.is_whole())?;
    Some(Seen { sight, wired })
}

/// The faults that causes of the guide stand for, each once.
fn faults(asking: &Asking<'_>, seen: &Seen<'_>) -> Vec<FaultId> {
    let causes = sound(&asking.guide.causes).into_iter();
    let named = causes.filter_map(|cause| seen.sight.faults.get(cause.cause.value.as_str())).flatten();
    named.copied().collect::<BTreeSet<FaultId>>().into_iter().collect()
}

/// The faults of a cause that can answer as a hypothesis does wherever a probe takes a reading; all of them where none can.
fn fitting(asking: &Asking<'_>, seen: &Seen<'_>, one: &Hypothesis) -> Vec<FaultId> {
    let Some(cause) = asking.cause(&one.suspect) else { return Vec::new() };
    let faults = seen.sight.faults.get(cause.cause.value.as_str()).map_or(&[][..], Vec::as_slice);
    let agrees = |fault: &FaultId| {
        one.answers.iter().enumerate().all(|(probe, answer)| {
            let taken = asking.probe(probe).and_then(|probe| seen.sight.probes.get(probe.probe.value.as_str()));
            let told = taken.and_then(|taken| Some((taken, taken.answers.get(answer.0)?.1)));
            told.is_none_or(|(taken, told)| !answers(seen, taken.reading, taken.position, *fault).contradicts(told))
        })
    };
    let fitting: Vec<FaultId> = faults.iter().copied().filter(agrees).collect();
    if fitting.is_empty() { faults.to_vec() } else { fitting }
}

fn answers(seen: &Seen<'_>, reading: ReadingId, position: PositionId, fault: FaultId) -> Answers {
    seen.wired.network.seen(reading, position, Some(fault)).map_or(Answers::default(), |seen| seen.answers())
}

/// The readings that are worth taking: some fault of the guide shows on them what sound kit or another fault does not, and no probe takes
/// them already.
pub fn pairs(asking: &Asking<'_>) -> Vec<(ReadingId, PositionId)> {
    let Some(seen) = seen(asking) else { return Vec::new() };
    let network = &seen.wired.network;
    let faults = faults(asking, &seen);
    let taken = |pair: &(ReadingId, PositionId)| {
        seen.sight.probes.values().any(|taken| (taken.reading, taken.position) == *pair)
    };
    let tells = |(reading, position): &(ReadingId, PositionId)| {
        let sound = network.seen(*reading, *position, None).map(|seen| seen.answers()).ok();
        faults.iter().any(|fault| Some(answers(&seen, *reading, *position, *fault)) != sound)
    };
    let signs = seen.sight.signs.iter().flatten().map(|(sign, _)| (sign.reading, sign.position));
    let all = network.readings().flat_map(|reading| network.positions().map(move |position| (reading, position)));
    let signs: Vec<(ReadingId, PositionId)> = signs.collect();
    let others = all.filter(|pair| !signs.contains(pair) && !taken(pair) && tells(pair));
    others.take(MOST_READINGS).collect()
}

fn written(seen: Option<&Seen<'_>>, (reading, position): &(ReadingId, PositionId)) -> Pair {
    let network = seen.map(|seen| &seen.wired.network);
    Pair {
        reading: network.map_or_else(String::new, |network| network.reading_name(*reading).to_owned()),
        position: network.map_or_else(String::new, |network| network.position_name(*position).to_owned()),
        minutes: match network.and_then(|network| network.reading_of(*reading)) {
            Some(Reading::Ohmmeter { .. }) => METER,
            _ => LAMP,
        },
    }
}

/// A look at a lamp, in tenths of a minute: the bench says so.
const LAMP: u64 = 5;
/// A reading of a meter, in tenths of a minute: the bench says so.
const METER: u64 = 10;

fn shown_by(seen: &Seen<'_>, fault: FaultId, pairs: &[(ReadingId, PositionId)]) -> Option<Shown> {
    let network = &seen.wired.network;
    let all = |(reading, position): &(ReadingId, PositionId)| {
        let answers = answers(seen, *reading, *position, fault);
        // What comes and goes is seen to; that it is lit in between tells no more.
        let flickers = answers.contains(Answer::Flickers);
        answers.iter().filter(|answer| !flickers || *answer == Answer::Flickers).map(shown::answer).collect()
    };
    let figure = |(reading, position): &(ReadingId, PositionId)| {
        let seen = network.seen(*reading, *position, Some(fault)).ok()?;
        let in_ohms = matches!(network.reading_of(*reading), Some(Reading::Ohmmeter { .. }));
        seen.answers().sure().filter(|_| in_ohms)?;
        match seen.faulty.figure? {
            Span::Within { usual, .. } => shown::ohms(Span::Within { least: usual, usual, most: usual }),
            _ => None,
        }
    };
    Some(Shown {
        id: network.fault_name(fault).to_owned(),
        shows: pairs.iter().map(all).collect(),
        figures: pairs.iter().map(figure).collect(),
    })
}

/// The tree as a list of stops.
fn flat(tree: &Tree) -> Vec<Stop> {
    let mut stops = Vec::new();
    add(&tree.root, &mut stops);
    stops
}

fn add(node: &Node, stops: &mut Vec<Stop>) -> usize {
    let at = stops.len();
    match node {
        Node::Ending(ending) => {
            stops.push(Stop { probe: None, next: vec![], mended: matches!(ending.kind, EndingKind::Mended(_)) });
        }
        Node::Decision(decision) => {
            stops.push(Stop { probe: Some(decision.probe.0), next: vec![], mended: false });
            let next = decision.branches.iter().map(|branch| add(&branch.node, stops)).collect();
            if let Some(stop) = stops.get_mut(at) {
                stop.next = next;
            }
        }
    }
    at
}
