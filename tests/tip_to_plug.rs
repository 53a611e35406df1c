//! The questions of a guide about a foil or an epee follow the hand from the tip to the plug, so that nothing is skipped; where
//! one does not, the reason stands here and the guide's `why` says it to the reader.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod demo_guides;

use demo_guides::{Guide, guides, items};

/// The places in the order of the hand. Socket and guard are one stop: which comes first depends on what is opened for them.
const ORDER: [&[&str]; 6] = [&["tip"], &["barrel"], &["blade"], &["guard", "socket"], &["grip"], &["pommel"]];

/// Guides that go another way, each with its reason.
const OTHER_WAY: [(&str, &str); 6] = [
    ("epee-guard-registers", "the wire is not asked about: it follows the earth from the socket outwards"),
    ("epee-stays-lit", "the tip goes back into the barrel that was just wiped"),
    ("foil-dark-on-tester", "what opens nothing at the tip is looked at before the tip comes out, once"),
    ("foil-fails-weight", "tape in the gap makes the tip hang too, so it is looked at before the tip is felt"),
    ("foil-white-burns", "what opens nothing at the tip is looked at before the tip comes out, once"),
    ("foil-white-now-and-then", "the one trial that opens the tip comes after all looks that open nothing"),
];

#[test]
fn the_questions_about_a_foil_or_an_epee_go_from_the_tip_to_the_plug() {
    for guide in weapons() {
        let id = guide.text("symptom").unwrap();
        let excused = OTHER_WAY.iter().any(|(other, _)| *other == id);
        let stops = stops(&guide);
        assert_eq!(stops.is_sorted(), !excused, "{id}: {stops:?}");
    }
}

#[test]
fn each_guide_says_why_its_order_is_what_it_is() {
    for guide in weapons() {
        assert!(guide.text("why").is_some_and(|why| why.len() > 20), "{}", guide.file);
    }
}

/// The fault-finding guides about foil and epee that are asked as written.
fn weapons() -> Vec<Guide> {
    let all = guides("faults").into_iter();
    let weapons = all.filter(|guide| ["foil", "epee"].contains(&guide.text("kit").unwrap()));
    weapons.filter(|guide| guide.text("order") == Some("as written")).collect()
}

/// Where the questions stop on the way from the tip to the plug.
fn stops(guide: &Guide) -> Vec<usize> {
    let places = items(&guide.tree, "probes").into_iter().filter_map(|probe| probe.get("place")?.as_str());
    places.map(|place| ORDER.iter().position(|stop| stop.contains(&place)).unwrap()).collect()
}
