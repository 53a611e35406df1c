//! The circuits of the demo handbook: each can be computed, sound kit shows what its guide says, ngspice agrees on every figure.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

#[path = "reference/foil.rs"]
mod foil;
#[path = "reference/guides.rs"]
mod guides;
#[path = "reference/spice.rs"]
mod spice;

use coquille::model::circuit::Shows;
use coquille::reckoning::circuit::{Answer, Answers, FaultId, Network};
use guides::circuits;

#[test]
fn every_circuit_can_be_computed() {
    for (id, wired) in circuits() {
        assert_eq!(wired.findings, [], "{id}");
        assert!(wired.is_whole(), "{id}: {:?}", wired.missing);
    }
}

#[test]
fn sound_kit_shows_what_its_guide_says() {
    for (id, wired) in circuits() {
        for expected in &wired.healthy {
            let seen = wired.network.seen(expected.reading, expected.position, None).unwrap();
            let (reading, position) =
                (wired.network.reading_name(expected.reading), wired.network.position_name(expected.position));
            assert_eq!(shown(seen.answers()), Some(as_a_lamp(expected.shows)), "{id}, {reading}, {position}: {seen:?}");
        }
    }
}

#[test]
fn the_guide_of_the_foil_on_the_bench_is_the_worked_example() {
    let circuits = circuits();
    let guide = &circuits["foil-on-the-bench"].network;
    let example = foil::foil_on_the_bench();
    // The guide knows more faults than the example.
    assert_eq!(FAULTS.len(), example.faults().count());
    for (position, as_worked) in POSITIONS {
        for (fault, fault_as_worked) in [("none", "none")].into_iter().chain(FAULTS) {
            for (reading, reading_as_worked) in READINGS {
                let ours = seen(guide, reading, position, fault);
                assert_eq!(
                    ours,
                    seen(&example, reading_as_worked, as_worked, fault_as_worked),
                    "{reading}, {position}, {fault}"
                );
            }
        }
    }
}

#[test]
#[ignore = "needs ngspice: run by tests/run"]
fn ngspice_computes_the_same_for_every_circuit_of_one_fencer() {
    ngspice_agrees(|id| !id.ends_with("-bout"));
}

#[test]
#[ignore = "needs ngspice and minutes: run by tests/run --all"]
fn ngspice_computes_the_same_for_every_bout() {
    ngspice_agrees(|id| id.ends_with("-bout"));
}

fn ngspice_agrees(these: impl Fn(&str) -> bool) {
    let read = circuits().into_iter().filter(|(id, wired)| these(id) && wired.network.readings().count() > 0);
    let figures: Vec<usize> = read.map(|(_, wired)| spice::agree(&wired.network)).collect();
    assert!(!figures.is_empty() && figures.iter().all(|figures| *figures > 0), "{figures:?}");
}

/// Ids of the guide, and the names of the worked example.
const POSITIONS: [(&str, &str); 5] = [
    ("rest", "rest"),
    ("pressed", "pressed"),
    ("pressed-on-jacket", "pressed on A jacket"),
    ("blade-on-jacket", "blade on A jacket"),
    ("pressed-on-guard", "pressed on own guard"),
];

const FAULTS: [(&str, &str); 21] = [
    ("no-tip", "no tip"),
    ("spring-missing", "spring missing"),
    ("wire-broken-in-blade", "wire broken in blade"),
    ("wire-broken-at-guard", "wire broken at guard"),
    ("c-off-guard", "C off guard"),
    ("worn-at-barrel", "wire worn at barrel"),
    ("worn-in-blade", "wire worn in blade"),
    ("pinched-touching", "wire pinched at guard, touching"),
    ("weak-leak", "weak leak wire to blade"),
    ("strand-at-socket", "strand at connector"),
    ("tip-stuck-down", "tip stuck down"),
    ("tip-will-not-open", "tip will not open"),
    ("dirty-tip", "dirty tip"),
    ("tired-spring", "tired spring"),
    ("barrel-loose", "barrel loose"),
    ("guard-corroded", "guard corroded"),
    ("pinched-breaking", "wire pinched, breaking"),
    ("pinched-now-and-then", "wire pinched, now and then touching"),
    ("over-the-limit", "over the limit"),
    ("cord-reversed", "cord reversed"),
    ("barrel-not-insulated", "barrel not insulated"),
];

const READINGS: [(&str, &str); 10] = [
    ("lamp", "lamp B-C"),
    ("led", "led B-C"),
    ("buzzer", "buzzer B-C"),
    ("two-lamp-a", "two-lamp A"),
    ("two-lamp-c", "two-lamp C"),
    ("ohms-b-c", "ohm B-C"),
    ("ohms-b-tip", "ohm B-tip"),
    ("ohms-b-cup", "ohm B-cup"),
    ("ohms-c-barrel", "ohm C-barrel"),
    ("ohms-c-blade", "ohm C-blade"),
];

/// What is answered, and the figure to eight digits: the order of the points differs, so the last bits may.
fn seen(network: &Network, reading: &str, position: &str, fault: &str) -> (Answers, String) {
    let fault: Option<FaultId> = (fault != "none").then(|| network.find_fault(fault).unwrap());
    let (reading, position) = (network.find_reading(reading).unwrap(), network.find_position(position).unwrap());
    let seen = network.seen(reading, position, fault).unwrap();
    (seen.answers(), format!("{:.8?} {:.8?}", seen.faulty.figure, seen.away.map(|away| away.figure)))
}

/// Answers as a guide says them.
fn shown(answers: Answers) -> Option<Shows> {
    match answers.sure() {
        Some(Answer::Lit) => Some(Shows::Lit),
        Some(Answer::Dark) => Some(Shows::Dark),
        Some(Answer::In) => Some(Shows::In),
        Some(Answer::Over) => Some(Shows::Over),
        Some(Answer::Open) => Some(Shows::Open),
        Some(Answer::Flickers) => None,
        None => Some(Shows::May),
    }
}

/// A buzzer is computed as a lamp.
fn as_a_lamp(shows: Shows) -> Shows {
    match shows {
        Shows::Sounds => Shows::Lit,
        Shows::Silent => Shows::Dark,
        other => other,
    }
}
