//! A probe that would part causes which no probe of a guide parts, ready to paste in.
//!
//! In: the guide as its circuit sees it, and the causes. Out: YAML, with the answers that the circuit predicts for every cause.

use super::network::Wired;
use super::shown;
use super::sights::Sight;
use crate::model::{Cause, Circuit};
use crate::reckoning::circuit::{Answer, Answers, FaultId, Network, PositionId, ReadingId};
use serde::Serialize;

#[derive(Serialize)]
struct Probe {
    probe: String,
    ask: String,
    minutes: u32,
    reading: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    when: Option<String>,
    answers: Vec<Said>,
}

#[derive(Serialize)]
struct Said {
    answer: String,
    title: String,
    reads: &'static str,
    means: Vec<String>,
}

/// The probe, as YAML; nothing if the circuit has no reading that surely parts two of these causes with different remedies.
pub fn probe(sight: &Sight, wired: &Wired, circuit: &Circuit, apart: &[&Cause], all: &[&Cause]) -> Option<String> {
    let network = &wired.network;
    let faults_of = |cause: &Cause| sight.faults.get(cause.cause.value.as_str()).map(Vec::as_slice);
    let remedy = |cause: &Cause| cause.lasting.as_ref().map(|named| named.value.clone());
    let mut pairs =
        apart.iter().enumerate().flat_map(|(index, one)| apart.iter().skip(index + 1).map(move |o| (*one, *o)));
    let (reading, position) = pairs.find_map(|(one, other)| {
        let differ = remedy(one) != remedy(other);
        differ.then(|| parting(network, faults_of(one)?, faults_of(other)?)).flatten()
    })?;
    let faults: Vec<(&str, &[FaultId])> =
        all.iter().filter_map(|cause| Some((cause.cause.value.as_str(), faults_of(cause)?))).collect();
    let id = network.reading_name(reading).to_owned();
    let when = (position != Network::REST).then(|| network.position_name(position).to_owned());
    let title = wired.labels.readings.get(&id).map_or_else(|| id.clone(), |label| label.title.clone());
    let held = match wired.labels.positions.get(network.position_name(position)) {
        Some(label) => format!(" ({})", label.title),
        None => String::new(),
    };
    let probe = Probe {
        probe: format!("read-{id}{}", when.as_ref().map_or_else(String::new, |when| format!("-{when}"))),
        ask: format!("What does this show: {title}{held}?"),
        minutes: 1,
        reading: id.clone(),
        when,
        answers: said(network, reading, position, &faults, is_buzzer(circuit, &id))?,
    };
    serde_yaml::to_string(&[probe]).ok()
}

/// The answers that one of several faults can give.
fn answers(network: &Network, reading: ReadingId, position: PositionId, faults: &[FaultId]) -> Option<Answers> {
    let seen = |fault: &FaultId| network.seen(reading, position, Some(*fault)).ok().map(|seen| seen.answers());
    faults.iter().map(seen).try_fold(Answers::default(), |all, answers| Some(all.or(answers?)))
}

/// The first reading and position that surely parts two causes by its answers alone.
fn parting(network: &Network, one: &[FaultId], other: &[FaultId]) -> Option<(ReadingId, PositionId)> {
    let all = network.readings().flat_map(|reading| network.positions().map(move |position| (reading, position)));
    let mut parted = all.filter(|(reading, position)| {
        let both = (answers(network, *reading, *position, one), answers(network, *reading, *position, other));
        matches!(both, (Some(one), Some(other)) if one.contradicts(other))
    });
    parted.next()
}

/// The answers, each with the causes that can give it. What sound kit shows is for everything else.
fn said(
    network: &Network,
    reading: ReadingId,
    position: PositionId,
    faults: &[(&str, &[FaultId])],
    buzzer: bool,
) -> Option<Vec<Said>> {
    let usual = network.seen(reading, position, None).ok()?.answers().iter().next()?;
    let seen: Vec<(&str, Answers)> = faults
        .iter()
        .filter_map(|(cause, faults)| Some((*cause, answers(network, reading, position, faults)?)))
        .collect();
    let possible = seen.iter().fold(Answers::of(&[usual]), |all, (_, answers)| all.or(*answers));
    let said = possible.iter().map(|answer| {
        let named = seen.iter().filter(|(_, answers)| answers.contains(answer));
        let named = named.filter(|(_, answers)| answer != usual || answers.sure().is_none());
        let otherwise = (answer == usual).then(|| "otherwise".to_owned());
        let reads = reads(answer, buzzer);
        Said {
            answer: reads.replace(' ', "-"),
            title: format!("It is {reads}"),
            reads,
            means: otherwise.into_iter().chain(named.map(|(cause, _)| (*cause).to_owned())).collect(),
        }
    });
    Some(said.collect())
}

fn reads(answer: Answer, buzzer: bool) -> &'static str {
    match (answer, buzzer) {
        (Answer::Lit, true) => "sounds",
        (Answer::Dark, true) => "silent",
        _ => shown::answer(answer),
    }
}

/// Whether a reading is heard, not seen.
pub fn is_buzzer(circuit: &Circuit, reading: &str) -> bool {
    let sound = circuit.readings.iter().filter_map(crate::source::Tolerant::sound);
    sound.into_iter().any(|known| known.reading.value.as_str() == reading && known.sounds_under.is_some())
}
