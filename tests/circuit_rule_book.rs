//! The rule book's conditions, held against the demo's circuits: FIE Material Rules, English edition of December 2019, and its
//! Annex B. The article stands beside each check.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

#[path = "reference/guides.rs"]
mod guides;

use coquille::reckoning::circuit::Answer::{self, Dark, In, Lit, Open, Over};
use coquille::reckoning::circuit::{Change, Fault, FaultId, Measure, Network, Ohms, Pair, Reading, Span, Steadiness};

/// What is said of a limit stays true to one part in a thousand million.
const SLACK: f64 = 1e-9;

#[test]
fn a_foil_registers_when_its_loop_opens() {
    // m.11.6: at rest the tip touches the earth circuit, a hit breaks it. Annex B, A.1(a)1.
    assert_eq!(sound("foil-on-the-bench", "ohms-b-c", "rest"), [In]);
    assert_eq!(sound("foil-on-the-bench", "ohms-b-c", "pressed"), [Open]);
    assert_eq!(sound("foil-at-the-apparatus", "white", "rest"), [Dark]);
    assert_eq!(sound("foil-at-the-apparatus", "white", "pressed"), [Lit]);
    assert_eq!(sound("foil-at-the-apparatus", "coloured", "hits-jacket"), [Lit]);
    assert_eq!(sound("foil-at-the-apparatus", "white", "hits-jacket"), [Dark]);
}

#[test]
fn an_epee_registers_when_its_loop_closes() {
    // m.19.6: a hit makes the contact. Annex B, B(c).
    assert_eq!(sound("epee-on-the-bench", "ohms-a-b", "rest"), [Open]);
    assert_eq!(sound("epee-on-the-bench", "ohms-a-b", "pressed"), [In]);
    assert_eq!(sound("epee-bout", "red-coloured", "rest"), [Dark]);
    assert_eq!(sound("epee-bout", "red-coloured", "red-pressed"), [Lit]);
}

#[test]
fn a_sabre_registers_when_its_metal_lies_on_the_jacket_and_both_its_lines_lie_on_the_guard() {
    // Annex B, C(b)2; m.24.4: both sockets in contact with the guard.
    assert_eq!(sound("sabre-bout", "red-coloured", "red-hits"), [Lit]);
    assert_eq!(sound("sabre-bout", "red-coloured", "red-guard-hits"), [Lit]);
    assert_eq!(sound("sabre-bout", "red-white", "rest"), [Dark]);
    assert_eq!(sound("sabre-on-the-bench", "ohms-b-guard", "rest"), [In]);
}

#[test]
fn sound_kit_keeps_to_its_limit_of_resistance_over_its_whole_range_and_no_circuit_sets_another() {
    let limits = [
        ("foil-on-the-bench", "ohms-b-c", "rest", 2.0),      // m.5.4
        ("epee-on-the-bench", "ohms-a-b", "pressed", 2.0),   // m.5.4
        ("sabre-on-the-bench", "ohms-b-blade", "rest", 1.0), // m.24.5
        ("body-cord", "ohms-a", "rest", 1.0),                // m.29.1 c
        ("body-cord", "ohms-b", "rest", 1.0),
        ("body-cord", "ohms-c", "rest", 1.0),
        ("epee-cord", "ohms-a", "rest", 1.0), // m.31.1 b
        ("epee-cord", "ohms-b", "rest", 1.0),
        ("epee-cord", "ohms-c", "rest", 1.0),
        ("jacket", "ohms-flap-front", "rest", 5.0), // m.28.5
        ("jacket", "ohms-sleeve", "rest", 5.0),
        ("sabre-cuff", "ohms-worst", "rest", 5.0), // m.33.4
        ("sabre-cuff", "ohms-through", "rest", 5.0),
        ("sabre-mask", "ohms-mesh", "rest", 5.0), // m.32.5
        ("sabre-mask", "ohms-bib", "rest", 5.0),
        ("mask-cord", "ohms", "rest", 1.0), // m.32.5, the mask's wire
        ("reel", "ohms-a", "rest", 3.0),    // m.55.1
        ("reel", "ohms-b", "rest", 3.0),
        ("reel", "ohms-c", "rest", 3.0),
        ("floor-cable", "ohms-a", "rest", 2.5),    // m.55.5
        ("piste", "ohms-end-to-end", "rest", 5.0), // m.57.1
    ];
    for (circuit, reading, position, limit) in limits {
        let network = &network(circuit);
        let id = network.find_reading(reading).unwrap();
        let Reading::Ohmmeter { at_most, measure, .. } = network.reading_of(id).unwrap() else { panic!("{reading}") };
        assert_eq!(*at_most, Some(limit), "{circuit}, {reading}");
        let most = most(network, measure, position);
        assert!(most <= limit * (1.0 + SLACK), "{circuit}, {reading}: {most}");
    }
}

#[test]
fn one_wire_of_too_high_resistance_is_over_the_limit() {
    // m.5.4, m.24.5, m.29.1 c.
    assert_eq!(faulty("foil-on-the-bench", "ohms-b-c", "rest", "over-the-limit"), [Over]);
    assert_eq!(faulty("epee-on-the-bench", "ohms-a-b", "pressed", "over-the-limit"), [Over]);
    assert_eq!(faulty("sabre-on-the-bench", "ohms-b-blade", "rest", "over-the-limit"), [Over]);
    assert_eq!(faulty("body-cord", "ohms-a", "rest", "a-over-the-limit"), [Over]);
}

#[test]
fn a_hit_on_an_earthed_guard_or_piste_does_not_register() {
    // m.51.1; Annex B, A.1(b)5 and B(d).
    for (circuit, lamps, positions) in [
        ("foil-bout", ["red-coloured", "red-white"], ["red-hits-guard", "red-hits-piste"]),
        ("epee-bout", ["red-coloured", "red-coloured"], ["red-hits-guard", "red-hits-piste"]),
    ] {
        for lamp in lamps {
            for position in positions {
                assert_eq!(sound(circuit, lamp, position), [Dark], "{circuit}, {lamp}, {position}");
            }
        }
    }
    for position in ["hits-beside-cable", "hits-middle", "hits-far-end"] {
        assert_eq!(sound("piste", "coloured", position), [Dark], "{position}");
    }
}

#[test]
fn it_does_not_register_with_up_to_100_ohms_in_the_earth_circuit_either() {
    // Annex B, A.1(b)5 (foil) and B(d) (epee). The way from the wires to line C in all.
    let epee = network("epee-bout");
    let (tip_to_earth, holder) = (pair(&epee, "green-a", "red-c"), "red-holder");
    let position = "green-hits-guard";
    let (most_of_it, least_of_it) = (most(&epee, &tip_to_earth, position), least(&epee, &tip_to_earth, position));
    assert_eq!(with_more(&epee, holder, 100.0 - most_of_it, "green-coloured", position), [Dark]);
    // From 1000 ohms on it is no earth any more: that figure is chosen here.
    assert_eq!(with_more(&epee, holder, 1000.0 - least_of_it, "green-coloured", position), [Lit]);
    let foil = network("foil-bout");
    let tip_to_earth = pair(&foil, "red-b", "green-c");
    let most_of_it = most(&foil, &tip_to_earth, "red-hits-guard");
    assert_eq!(with_more(&foil, "green-holder", 100.0 - most_of_it, "red-white", "red-hits-guard"), [Dark]);
    assert_eq!(with_more(&foil, "green-holder", 100.0 - most_of_it, "red-coloured", "red-hits-guard"), [Dark]);
}

#[test]
fn a_foils_closed_circuit_may_rise_to_200_ohms_without_white() {
    // Annex B, A.1(b)4.
    let foil = network("foil-at-the-apparatus");
    let most_of_it = most(&foil, &pair(&foil, "own-b", "own-c"), "rest");
    assert_eq!(with_more(&foil, "thread", 200.0 - most_of_it, "white", "rest"), [Dark]);
    assert_eq!(with_more(&foil, "thread", 1000.0, "white", "rest"), [Lit]);
}

#[test]
fn a_valid_hit_at_foil_registers_with_up_to_200_ohms_and_never_shows_coloured_from_500() {
    // Annex B, A.2 and A.1(b)2.
    let foil = network("foil-at-the-apparatus");
    let most_of_it = most(&foil, &pair(&foil, "own-b", "other-a"), "hits-jacket");
    assert_eq!(with_more(&foil, "other-line-a", 200.0 - most_of_it, "coloured", "hits-jacket"), [Lit]);
    assert_eq!(with_more(&foil, "other-line-a", 500.0, "coloured", "hits-jacket"), [Dark]);
    assert_eq!(with_more(&foil, "other-line-a", 500.0, "white", "hits-jacket"), [Lit]);
}

#[test]
fn yellow_lights_under_450_ohms_and_never_over_475() {
    // Annex B, A.2 (foil) and C(b)3 (sabre; 475 is chosen there).
    let foil = network("foil-at-the-apparatus");
    let most_of_it = most(&foil, &pair(&foil, "own-a", "own-c"), "blade-on-own-jacket");
    assert_eq!(with_more(&foil, "cord-a-wire", 450.0 - most_of_it, "yellow", "blade-on-own-jacket"), [Lit]);
    assert_eq!(with_more(&foil, "cord-a-wire", 475.0, "yellow", "blade-on-own-jacket"), [Dark]);
}

#[test]
fn an_epee_hit_registers_with_100_ohms_in_the_loop() {
    // Annex B, B(c): 10 ohms is normal, 100 must still register.
    let epee = network("epee-bout");
    let most_of_it = most(&epee, &pair(&epee, "red-a", "red-b"), "red-pressed");
    assert_eq!(with_more(&epee, "red-a-lower", 100.0 - most_of_it, "red-coloured", "red-pressed"), [Lit]);
}

#[test]
fn sabre_white_lights_over_250_ohms_of_its_control_circuit() {
    // Annex B, C(b)7.
    let sabre = network("sabre-bout");
    let loop_of_red = pair(&sabre, "red-b", "red-c");
    let (most_of_it, least_of_it) = (most(&sabre, &loop_of_red, "rest"), least(&sabre, &loop_of_red, "rest"));
    assert_eq!(with_more(&sabre, "red-b-contact", 250.0 - most_of_it, "red-white", "rest"), [Dark]);
    assert_eq!(with_more(&sabre, "red-b-contact", 250.1 - least_of_it, "red-white", "rest"), [Lit]);
}

#[test]
fn a_bib_is_target_and_a_sabre_mask_is_as_long_as_the_cord_joins_them_to_the_jacket() {
    // m.27 and m.32: both are joined to the jacket by a wire with two clips.
    assert_eq!(sound("foil-hit-on-the-bib", "coloured", "hits-bib"), [Lit]);
    assert_eq!(faulty("foil-hit-on-the-bib", "white", "hits-bib", "cord-wire-broken"), [Lit]);
    assert_eq!(sound("sabre-hit-on-the-mask", "coloured", "hits-mask"), [Lit]);
    assert_eq!(faulty("sabre-hit-on-the-mask", "coloured", "hits-mask", "cord-wire-broken"), [Dark]);
    assert_eq!(faulty("sabre-hit-on-the-mask", "white", "hits-mask", "cord-wire-broken"), [Dark]);
}

#[test]
fn a_piste_that_has_lost_its_earth_is_a_target() {
    // m.51.1, the other way about.
    for position in ["hits-beside-cable", "hits-far-end"] {
        assert_eq!(faulty("piste", "coloured", position, "earth-cable-off"), [Lit], "{position}");
    }
    assert_eq!(faulty("piste", "coloured", "hits-beside-cable", "middle-joint-open"), [Dark]);
    assert_eq!(faulty("piste", "coloured", "hits-far-end", "middle-joint-open"), [Lit]);
}

fn network(circuit: &str) -> Network {
    guides::circuits()[circuit].network.clone()
}

fn sound(circuit: &str, reading: &str, position: &str) -> Vec<Answer> {
    shown(&network(circuit), reading, position, None)
}

fn faulty(circuit: &str, reading: &str, position: &str, fault: &str) -> Vec<Answer> {
    let network = network(circuit);
    let fault = network.find_fault(fault).unwrap_or_else(|| panic!("{circuit} has no fault {fault}"));
    shown(&network, reading, position, Some(fault))
}

fn shown(network: &Network, reading: &str, position: &str, fault: Option<FaultId>) -> Vec<Answer> {
    let reading = network.find_reading(reading).unwrap_or_else(|| panic!("no reading {reading}"));
    let position = network.find_position(position).unwrap_or_else(|| panic!("no position {position}"));
    network.seen(reading, position, fault).unwrap().answers().iter().collect()
}

/// What is shown with so many ohms more in a piece.
fn with_more(network: &Network, piece: &str, ohms: f64, reading: &str, position: &str) -> Vec<Answer> {
    let mut network = network.clone();
    let piece = network.find_piece(piece).unwrap_or_else(|| panic!("no piece {piece}"));
    let more = Change::MoreOhms(piece, Ohms::exactly(ohms).unwrap());
    let fault = Fault { changes: vec![more], only_while: None, steadiness: Steadiness::Steady };
    let fault = network.fault("more ohms for the rule", fault).unwrap();
    shown(&network, reading, position, Some(fault))
}

fn pair(network: &Network, one: &str, other: &str) -> Measure {
    let point = |name: &str| network.find_point(name).unwrap_or_else(|| panic!("no point {name}"));
    Measure::Between(Pair { one: point(one), other: point(other) })
}

fn most(network: &Network, measure: &Measure, position: &str) -> f64 {
    span(network, measure, position).1
}

fn least(network: &Network, measure: &Measure, position: &str) -> f64 {
    span(network, measure, position).0
}

fn span(network: &Network, measure: &Measure, position: &str) -> (f64, f64) {
    match network.measure(measure, network.find_position(position).unwrap(), None).unwrap() {
        Span::Within { least, most, .. } => (least, most),
        span => panic!("{position}: {span:?}"),
    }
}
