//! What surprises: the rows of the trade that a circuit must get right, with the article of the FIE Material Rules beside those that rest on one.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

#[path = "reference/guides.rs"]
mod guides;

use std::collections::BTreeMap;

use coquille::proof::network::Wired;
use coquille::reckoning::circuit::{Answer, Answers, Grade, Network};
use guides::circuits;

/// One circuit with short questions.
struct Asked {
    network: Network,
}

#[test]
fn a_missing_tip_burns_white_in_every_position_and_never_scores() {
    let foil = asked("foil-at-the-apparatus");
    for position in ["rest", "pressed"] {
        assert_eq!(foil.shows("white", position, "no-tip"), [Answer::Lit], "{position}");
    }
    assert_eq!(foil.shows("coloured", "hits-jacket", "no-tip"), [Answer::Dark]);
    assert_eq!(asked("foil-on-the-bench").shows("lamp", "rest", "no-tip"), [Answer::Dark]);
}

#[test]
fn a_foil_worn_through_at_the_barrel_looks_well_at_rest_and_shows_nothing_ever() {
    // The loop B to C must open before the machine looks at the jacket: Annex B, A.1(b).
    let foil = asked("foil-at-the-apparatus");
    for position in ["rest", "pressed", "hits-jacket"] {
        assert_eq!(foil.shows("white", position, "worn-at-barrel"), [Answer::Dark], "{position}");
        assert_eq!(foil.shows("coloured", position, "worn-at-barrel"), [Answer::Dark], "{position}");
    }
}

#[test]
fn without_tape_on_the_barrel_a_good_hit_shows_nothing_and_off_target_shows_white() {
    // The reason for m.13.1.
    let foil = asked("foil-at-the-apparatus");
    assert_eq!(foil.shows("coloured", "hits-jacket", "barrel-not-insulated"), [Answer::Dark]);
    assert_eq!(foil.shows("white", "pressed", "barrel-not-insulated"), [Answer::Lit]);
    let bench = asked("foil-on-the-bench");
    assert_eq!(bench.shows("lamp", "pressed", "barrel-not-insulated"), [Answer::Dark]);
    assert_eq!(bench.shows("lamp", "pressed-on-jacket", "barrel-not-insulated"), [Answer::Lit]);
}

#[test]
fn with_line_a_broken_the_wearer_hits_as_before_and_the_opponent_loses() {
    for fault in ["red-cord-a-broken", "red-reel-a-broken", "red-cable-a-broken"] {
        let foil = asked("foil-bout");
        assert_eq!(foil.shows("red-coloured", "red-hits-jacket", fault), [Answer::Lit], "{fault}");
        assert_eq!(foil.shows("green-white", "green-hits-jacket", fault), [Answer::Lit], "{fault}");
        assert_eq!(foil.shows("red-yellow", "red-blade-on-own-jacket", fault), [Answer::Dark], "{fault}");
        let sabre = asked("sabre-bout");
        assert_eq!(sabre.shows("green-coloured", "green-hits", fault), [Answer::Dark], "{fault}");
        assert_eq!(sabre.shows("green-white", "green-hits", fault), [Answer::Dark], "{fault}");
    }
}

#[test]
fn a_dead_patch_is_told_from_a_broken_line_by_the_next_place_of_the_jacket() {
    let foil = asked("foil-bout");
    assert_eq!(foil.shows("green-white", "green-hits-patch", "red-jacket-dead-patch"), [Answer::Lit]);
    assert_eq!(foil.shows("green-coloured", "green-hits-jacket", "red-jacket-dead-patch"), [Answer::Lit]);
    assert_eq!(foil.shows("green-coloured", "green-hits-clip", "red-jacket-flap-off"), [Answer::Lit]);
    assert_eq!(foil.shows("green-coloured", "green-hits-jacket", "red-jacket-flap-off"), [Answer::Dark]);
}

#[test]
fn with_line_c_broken_at_foil_the_own_guard_is_no_longer_earthed() {
    // Hits on the weapon's metal must not register: m.51.1.
    let foil = asked("foil-bout");
    assert_eq!(foil.shows("red-white", "rest", "red-cord-c-broken"), [Answer::Lit]);
    assert_eq!(foil.shows("green-white", "green-hits-guard", "red-cord-c-broken"), [Answer::Lit]);
}

#[test]
fn a_stuck_tip_and_a_broken_line_are_told_apart_by_laying_the_blade_on_the_jacket() {
    let foil = asked("foil-at-the-apparatus");
    assert_eq!(foil.shows("white", "blade-laid-on-jacket", "tip-stuck-down"), [Answer::Lit]);
    assert_eq!(foil.shows("coloured", "point-laid-on-jacket", "tip-stuck-down"), [Answer::Lit]);
    assert_eq!(foil.shows("white", "point-laid-on-jacket", "wire-broken-in-blade"), [Answer::Lit]);
}

#[test]
fn a_weak_leak_is_seen_by_an_led_tester_and_not_by_a_filament_lamp() {
    let bench = asked("foil-on-the-bench");
    assert_eq!(bench.shows("lamp", "pressed", "weak-leak"), [Answer::Dark]);
    assert_eq!(bench.shows("led", "pressed", "weak-leak"), [Answer::Lit]);
}

#[test]
fn exchanged_leads_are_not_to_be_seen_from_two_pins() {
    let bench = asked("foil-on-the-bench");
    for reading in ["lamp", "led", "buzzer", "ohms-b-c"] {
        for position in ["rest", "pressed"] {
            assert_eq!(bench.grade(reading, position, "none", "cord-reversed"), Grade::Never, "{reading}, {position}");
        }
    }
    let cord = asked("body-cord");
    assert_eq!(cord.shows("ohms-b", "rest", "b-and-c-exchanged"), [Answer::Open]);
}

#[test]
fn an_epee_wire_on_the_blade_works_on_the_tester_and_never_lights_the_apparatus() {
    for fault in ["a-on-blade", "b-on-blade"] {
        assert_eq!(asked("epee-on-the-bench").shows("lamp", "pressed", fault), [Answer::Lit], "{fault}");
        assert_eq!(
            asked("epee-bout").shows("red-coloured", "red-pressed", &format!("red-{fault}")),
            [Answer::Dark],
            "{fault}"
        );
    }
}

#[test]
fn a_tester_whose_lamps_share_b_is_blind_to_a_on_c_at_rest_at_epee() {
    let bench = asked("epee-on-the-bench");
    for lamp in ["two-lamp-a", "two-lamp-c"] {
        assert_eq!(bench.grade(lamp, "rest", "none", "a-on-blade"), Grade::Never, "{lamp}");
    }
    assert_eq!(bench.shows("two-lamp-c", "pressed", "a-on-blade"), [Answer::Lit]);
    assert_eq!(bench.grade("ohms-a-c", "rest", "none", "a-on-blade"), Grade::Surely);
}

#[test]
fn an_epee_guard_that_is_not_earthed_gives_hits_to_the_opponent_only() {
    // Guard hits do not register: m.51.1, Annex B B(d).
    let epee = asked("epee-bout");
    assert_eq!(epee.shows("green-coloured", "green-hits-guard", "none"), [Answer::Dark]);
    assert_eq!(epee.shows("green-coloured", "green-hits-guard", "red-c-off-guard"), [Answer::Lit]);
    assert_eq!(epee.shows("red-coloured", "red-pressed", "red-c-off-guard"), [Answer::Lit]);
    assert_eq!(epee.shows("green-coloured", "green-hits-guard-blades-touch", "red-c-off-guard"), [Answer::Dark]);
    assert_eq!(epee.shows("green-coloured", "green-hits-guard", "red-guard-badly-joined"), [Answer::Lit, Answer::Dark]);
}

#[test]
fn a_stuck_epee_tip_goes_dark_on_the_other_guard_and_touching_wires_stay_lit() {
    let epee = asked("epee-bout");
    assert_eq!(epee.shows("red-coloured", "rest", "red-tip-stuck-down"), [Answer::Lit]);
    assert_eq!(epee.shows("red-coloured", "red-tip-laid-on-guard", "red-tip-stuck-down"), [Answer::Dark]);
    assert_eq!(epee.shows("red-coloured", "red-tip-laid-on-guard", "red-wires-touching"), [Answer::Lit]);
}

#[test]
fn epee_wires_a_and_b_may_be_exchanged_and_a_and_c_may_not() {
    let epee = asked("epee-bout");
    for (reading, position) in
        [("red-coloured", "red-pressed"), ("red-coloured", "red-hits-guard"), ("green-coloured", "green-hits-guard")]
    {
        assert_eq!(
            epee.grade(reading, position, "none", "red-cord-a-and-b-exchanged"),
            Grade::Never,
            "{reading}, {position}"
        );
    }
    assert_eq!(epee.shows("red-coloured", "red-pressed", "red-cord-a-and-c-exchanged"), [Answer::Dark]);
}

#[test]
fn a_sabre_socket_off_the_guard_looks_well_and_is_dead() {
    // m.24.4: both sockets in contact with the guard.
    assert_eq!(asked("sabre-on-the-bench").shows("lamp", "rest", "socket-loose"), [Answer::Lit]);
    assert_eq!(asked("sabre-on-the-bench").shows("ohms-b-blade", "rest", "socket-loose"), [Answer::Open]);
    let sabre = asked("sabre-bout");
    assert_eq!(sabre.shows("red-white", "rest", "red-socket-loose"), [Answer::Dark]);
    assert_eq!(sabre.shows("red-coloured", "red-hits", "red-socket-loose"), [Answer::Dark]);
    assert_eq!(sabre.shows("red-coloured", "red-guard-hits", "red-guard-off-blade"), [Answer::Lit]);
    assert_eq!(sabre.shows("red-coloured", "red-hits", "red-guard-off-blade"), [Answer::Dark]);
}

#[test]
fn a_broken_sabre_line_burns_white_and_machines_differ_on_the_hit() {
    let sabre = asked("sabre-bout");
    for fault in ["red-cord-b-broken", "red-cord-c-broken"] {
        assert_eq!(sabre.shows("red-white", "rest", fault), [Answer::Lit], "{fault}");
        assert_eq!(sabre.shows("red-coloured", "red-hits", fault), [Answer::Lit, Answer::Dark], "{fault}");
    }
}

#[test]
fn a_parry_lights_the_opponent_if_the_sabre_is_joined_to_its_jacket() {
    // FIE test programme of September 2020, sabre 4 and 5.
    let sabre = asked("sabre-bout");
    assert_eq!(sabre.shows("red-yellow", "rest", "red-cord-a-on-b"), [Answer::Lit]);
    assert_eq!(sabre.shows("red-coloured", "red-hits", "red-cord-a-on-b"), [Answer::Lit]);
    assert_eq!(sabre.shows("green-coloured", "parry", "red-cord-a-on-b"), [Answer::Lit]);
}

#[test]
fn sabre_insulation_shows_in_one_position_only() {
    // m.24.6 to 8.
    let sabre = asked("sabre-bout");
    assert_eq!(sabre.shows("red-yellow", "red-fist-on-cuff", "red-insulation-gone"), [Answer::Lit]);
    assert_eq!(sabre.shows("red-yellow", "rest", "red-insulation-gone"), [Answer::Dark]);
}

#[test]
fn a_cut_across_a_jacket_is_found_by_eyes_and_not_by_ohms() {
    let jacket = asked("jacket");
    for reading in ["ohms-flap-front", "ohms-front-low", "ohms-patch", "ohms-sleeve"] {
        assert_eq!(jacket.shows(reading, "rest", "cut-across"), [Answer::In], "{reading}");
    }
    assert_eq!(jacket.shows("ohms-patch", "rest", "dead-patch"), [Answer::Open]);
}

#[test]
fn a_reel_with_b_on_its_frame_hides_it_when_the_frame_lead_is_off() {
    // m.55.2: C is joined to the frame.
    let reel = asked("reel");
    assert_eq!(reel.shows("ohms-b-c", "rest", "b-on-frame"), [Answer::In]);
    assert_eq!(reel.shows("ohms-b-c", "rest", "b-on-frame-lead-off"), [Answer::Open]);
    assert_eq!(reel.shows("ohms-b-frame", "rest", "b-on-frame-lead-off"), [Answer::In]);
}

#[test]
fn a_sound_bout_is_the_same_from_either_side() {
    let mirrored = [
        ("red-pressed", "green-pressed"),
        ("red-hits-jacket", "green-hits-jacket"),
        ("red-hits-guard", "green-hits-guard"),
    ];
    let foil = asked("foil-bout");
    for (red, green) in mirrored {
        for lamp in ["coloured", "white", "yellow"] {
            let (own, other) = (format!("red-{lamp}"), format!("green-{lamp}"));
            assert_eq!(foil.shows(&own, red, "none"), foil.shows(&other, green, "none"), "{lamp}, {red}");
            assert_eq!(foil.shows(&other, red, "none"), foil.shows(&own, green, "none"), "{lamp}, {green}");
        }
    }
}

fn asked(id: &str) -> Asked {
    let mut circuits: BTreeMap<String, Wired> = circuits();
    Asked { network: circuits.remove(id).unwrap().network }
}

impl Asked {
    /// All answers of a reading in a position with a fault, or `none`.
    fn shows(&self, reading: &str, position: &str, fault: &str) -> Vec<Answer> {
        let fault = (fault != "none").then(|| self.network.find_fault(fault).unwrap_or_else(|| panic!("{fault}")));
        let reading = self.network.find_reading(reading).unwrap_or_else(|| panic!("{reading}"));
        let position = self.network.find_position(position).unwrap_or_else(|| panic!("{position}"));
        let answers: Answers = self.network.seen(reading, position, fault).unwrap().answers();
        answers.iter().collect()
    }

    /// How far a reading in a position tells two faults apart.
    fn grade(&self, reading: &str, position: &str, one: &str, other: &str) -> Grade {
        let fault = |name: &str| (name != "none").then(|| self.network.find_fault(name).unwrap());
        let (reading, position) =
            (self.network.find_reading(reading).unwrap(), self.network.find_position(position).unwrap());
        self.network.parts(fault(one), fault(other), reading, position).unwrap()
    }
}
