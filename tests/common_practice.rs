//! What every armourer knows, held against the demo's circuits. Common practice of the trade: there is no source to name.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

#[path = "reference/guides.rs"]
mod guides;

use coquille::reckoning::circuit::Answer::{self, Dark, In, Lit, Open, Over};

#[test]
fn a_foil_on_a_tester_is_lit_at_rest_and_goes_dark_pressed() {
    assert_eq!(tester("rest", None), [Lit]);
    assert_eq!(tester("pressed", None), [Dark]);
}

#[test]
fn worn_through_insulation_that_touches_the_barrel_keeps_it_lit() {
    stays_lit("worn-at-barrel");
}

#[test]
fn a_stray_strand_that_bridges_the_socket_keeps_it_lit() {
    stays_lit("strand-at-socket");
}

#[test]
fn a_pinched_wire_keeps_it_lit_if_it_touches_and_darkens_it_if_it_breaks() {
    stays_lit("pinched-touching");
    assert!(tester("rest", Some("pinched-breaking")).contains(&Dark));
    assert!(!tester("pressed", Some("pinched-breaking")).contains(&Lit));
}

#[test]
fn a_missing_tip_leaves_the_tester_dark_and_burns_white_at_the_apparatus() {
    assert_eq!(tester("rest", Some("no-tip")), [Dark]);
    assert_eq!(tester("pressed", Some("no-tip")), [Dark]);
    assert_eq!(shown("foil-at-the-apparatus", "white", "rest", Some("no-tip")), [Lit]);
    assert_eq!(shown("foil-at-the-apparatus", "white", "rest", None), [Dark]);
}

#[test]
fn a_foil_that_stays_lit_on_the_tester_shows_nothing_at_the_apparatus() {
    for position in ["rest", "pressed", "hits-jacket"] {
        for lamp in ["white", "coloured"] {
            assert_eq!(
                shown("foil-at-the-apparatus", lamp, position, Some("worn-at-barrel")),
                [Dark],
                "{lamp}, {position}"
            );
        }
    }
}

#[test]
fn a_sabre_cuff_that_has_slid_off_the_sleeve_is_no_target_and_the_sleeve_still_is() {
    let cuff = |position, fault| shown("sabre-hit-on-the-cuff", "coloured", position, fault);
    assert_eq!(cuff("hits-cuff", None), [Lit]);
    assert!(cuff("hits-cuff", Some("cuff-slides")).contains(&Dark));
    assert_eq!(cuff("hits-sleeve", Some("cuff-slides")), [Lit]);
    assert_eq!(shown("sabre-hit-on-the-cuff", "white", "hits-cuff", Some("cuff-slides")), [Dark]);
}

#[test]
fn a_clip_that_reads_badly_is_bad_at_the_jaws_at_its_joint_or_behind_it() {
    let clip = |reading, position, fault| shown("clip-on-the-jacket", reading, position, Some(fault));
    for (fault, position) in [("spring-weak", "pulled"), ("joint-loose", "twisted"), ("wire-breaking", "bent")] {
        assert_eq!(clip("ohms-a-cloth", "rest", fault), [In], "{fault} lies still");
        assert_eq!(clip("ohms-a-cloth", position, fault), [Open], "{fault} is moved");
    }
    assert_eq!(clip("ohms-clip", "twisted", "wire-breaking"), [In]);
    assert_eq!(clip("ohms-a-jaw", "bent", "joint-loose"), [In]);
    assert_eq!(clip("ohms-a-jaw", "bent", "wire-breaking"), [Open]);
    assert_eq!(clip("ohms-a-cloth", "rest", "jaws-green"), [Over]);
}

fn stays_lit(fault: &str) {
    assert_eq!(tester("rest", Some(fault)), [Lit], "{fault} at rest");
    assert_eq!(tester("pressed", Some(fault)), [Lit], "{fault} pressed");
}

fn tester(position: &str, fault: Option<&str>) -> Vec<Answer> {
    shown("foil-on-the-bench", "lamp", position, fault)
}

fn shown(circuit: &str, reading: &str, position: &str, fault: Option<&str>) -> Vec<Answer> {
    let circuits = guides::circuits();
    let network = &circuits[circuit].network;
    let fault = fault.map(|fault| network.find_fault(fault).unwrap());
    let (reading, position) = (network.find_reading(reading).unwrap(), network.find_position(position).unwrap());
    network.seen(reading, position, fault).unwrap().answers().iter().collect()
}
