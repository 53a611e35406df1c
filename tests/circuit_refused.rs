//! What a circuit guide may not say: each with its line, and that nothing else is said about it.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::model::fill;
use coquille::proof::network::{Circuits, network};
use coquille::source::{What, read_texts};

/// A loop of two pieces with a contact: what the examples below add to. Eleven lines.
const LOOP: &str = "circuit: loop
title: A loop
points:
  - {point: one, title: One}
  - {point: two, title: Two}
  - {point: three, title: Three}
pieces:
  - {piece: wire, title: Wire, from: one, to: two, ohms: 0.1 .. 0.2}
  - {piece: spring, title: Spring, from: two, to: three, ohms: 1}
touching:
  - {touching: tip, title: Tip, from: three, to: one, ohms: 0.1 .. 0.2 .. 0.3, at rest: touching}
";

#[test]
fn a_sound_circuit_has_no_findings() {
    assert_eq!(found(""), Vec::<String>::new());
}

#[test]
fn unknown_names_are_found_where_they_stand() {
    assert_eq!(
        found("faults:\n  - {fault: a, title: A, broken: wir}"),
        ["13: no piece or touching `wir` in this circuit"]
    );
    assert_eq!(
        found("faults:\n  - {fault: a, title: A, touches: [one, tow], ohms: 1}"),
        ["13: no point `tow` in this circuit"]
    );
    assert_eq!(found("positions:\n  - {position: a, title: A, parts: top}"), ["13: no touching `top` in this circuit"]);
    assert_eq!(
        found("faults:\n  - {fault: a, title: A, broken: wire, while: wet}"),
        ["13: no touching or position `wet` in this circuit"]
    );
    assert_eq!(found("healthy:\n  - {reading: lamp, shows: lit}"), ["13: no reading `lamp` in this circuit"]);
    assert_eq!(found("uses: lop"), ["12: no circuit `lop` in this handbook"]);
    assert_eq!(found("joins:\n  - join: [one, four]"), ["13: no point `four` in this circuit"]);
}

#[test]
fn figures_that_make_no_sense_are_found() {
    let touch = |ohms: &str| found(&format!("faults:\n  - {{fault: a, title: A, touches: [one, two], ohms: {ohms}}}"));
    assert_eq!(touch("2 .. 1"), ["13: ohms must rise from the least to the most"]);
    assert_eq!(touch("0"), ["13: no piece has 0 ohms; write 0.01"]);
    assert_eq!(touch("a lot").len(), 1);
    assert_eq!(found("faults:\n  - {fault: a, title: A, touches: [one, two]}"), ["13: `touches` without `ohms`"]);
    let lamp = "readings:\n  - {reading: a, title: A, on: tester, between: [one, two], lit under: 9, dark over: 8}";
    assert_eq!(found(lamp), ["13: the first figure must not be the larger: 9 and 8"]);
}

#[test]
fn a_fault_must_change_something_and_a_piece_must_lead_somewhere() {
    assert_eq!(found("faults:\n  - {fault: a, title: A}"), ["13: `a` changes nothing"]);
    assert_eq!(
        found("faults:\n  - {fault: a, title: A, touches: [one, one], ohms: 1}"),
        ["13: `a` begins and ends at the same point"]
    );
    assert_eq!(found("joins:\n  - join: [one, two]"), ["13: `wire` begins and ends at the same point"]);
}

#[test]
fn wires_are_changed_over_at_two_points_where_each_has_one_end() {
    let at = |points: &str| {
        found(&format!("faults:\n  - {{fault: a, title: A, changed over: [wire, spring], at: [{points}]}}"))
    };
    assert_eq!(at("one, three"), Vec::<String>::new());
    assert_eq!(at("one, two"), ["13: `wire` and `spring` do not each have one end at one of the two points"]);
}

#[test]
fn a_circuit_is_not_made_of_itself() {
    assert_eq!(found("uses: loop"), ["12: `loop` is made of itself, or too deep"]);
}

#[test]
fn what_points_at_a_broken_part_is_not_called_unknown() {
    let extra = "testers: []\nfaults:\n  - {fault: a, title: A, broken: wire2}";
    let text = LOOP.replace("pieces:\n", "pieces:\n  - {piece: wire2, title: Wire, from: one, to: tow, ohms: 1}\n");
    assert_eq!(found_in(&format!("{text}{extra}")), ["8: no point `tow` in this circuit"]);
}

/// Line and message of every finding in the loop with something added.
fn found(added: &str) -> Vec<String> {
    found_in(&format!("{LOOP}{added}\n"))
}

fn found_in(text: &str) -> Vec<String> {
    let folder = read_texts([("loop.yaml", text)]);
    assert_eq!(folder.flaws, []);
    let (guides, flaws) = fill(&folder);
    assert!(flaws.iter().all(|flaw| flaw.what == What::NoHandbook), "{flaws:?}");
    let circuit = &guides.circuits.first().unwrap().1;
    let all = Circuits::from([(circuit.circuit.value.as_str(), circuit)]);
    let findings = network(circuit, &all).findings;
    findings.iter().map(|finding| format!("{}: {}", finding.place.line, finding.message)).collect()
}
