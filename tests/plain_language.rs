//! The part of plain language that a machine can hold: the demo handbook's short wordings are short, its steps are instructions,
//! its sentences end in time, and what a guide claims to cover is the sum of its shares.
//!
//! Not promised: that a text is right, or that a word is known. Words behind links are proofed by the program itself.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod demo_guides;

use demo_guides::{guides, items, plain};
use serde_yaml::Value;

/// Most words of a short wording.
const SHORT: usize = 30;

/// Most words of a sentence, in any wording.
const SENTENCE: usize = 25;

/// The verbs that a step may open with, in the imperative.
const VERBS: [&str; 77] = [
    "Ask", "Bare", "Bend", "Bow", "Brush", "Check", "Clamp", "Clean", "Close", "Cover", "Cut", "Dab", "Draw", "Fasten",
    "File", "Fit", "Fix", "Fold", "Glue", "Go", "Hang", "Heat", "Hold", "Label", "Lay", "Lead", "Leave", "Let", "Lock",
    "Look", "Mark", "Measure", "Move", "Nip", "Open", "Plug", "Press", "Pull", "Push", "Put", "Read", "Rinse", "Roll",
    "Rub", "Run", "Scrape", "Screw", "Seat", "Set", "Sew", "Slide", "Smooth", "Solder", "Spread", "Stand", "Start",
    "Stop", "Stretch", "Strip", "Switch", "Take", "Tape", "Tell", "Test", "Thread", "Tie", "Tighten", "Try", "Turn",
    "Twist", "Undo", "Unplug", "Unscrew", "Wait", "Weigh", "Wet", "Wind",
];

/// More verbs, and the words that may stand before one: a condition or a place.
const MORE: [&str; 5] = ["Wipe", "Wrap", "Write", "If", "Where"];

#[test]
fn no_short_wording_is_longer_than_thirty_words() {
    let mut long = Vec::new();
    for guide in guides("") {
        let short =
            guide.texts().iter().filter(|text| text.key == "short").map(|text| plain(text.text)).collect::<Vec<_>>();
        let alone = steps(&guide.tree).into_iter().filter(|step| step.get("short").is_none()).map(wording);
        let all = short.into_iter().chain(alone);
        long.extend(
            all.filter(|text| text.split_whitespace().count() > SHORT).map(|text| format!("{}: {text}", guide.file)),
        );
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
}

#[test]
fn each_step_of_a_job_opens_with_a_verb() {
    let mut other = Vec::new();
    for guide in guides("jobs") {
        for step in steps(&guide.tree) {
            let text = wording(step);
            let first = text.split_whitespace().next().unwrap_or_default().trim_matches([',', '.', ':']);
            if !VERBS.contains(&first) && !MORE.contains(&first) {
                other.push(format!("{}: {text}", guide.file));
            }
        }
    }
    assert!(other.is_empty(), "{}", other.join("\n"));
}

#[test]
fn each_verb_of_the_list_opens_a_step() {
    let openings: Vec<_> = guides("jobs")
        .iter()
        .flat_map(|guide| steps(&guide.tree).into_iter().map(wording).collect::<Vec<_>>())
        .collect();
    let unused: Vec<_> =
        VERBS.iter().chain(&MORE).filter(|verb| !openings.iter().any(|text| text.starts_with(**verb))).collect();
    assert!(unused.is_empty(), "take these out of the list: {unused:?}");
}

#[test]
fn no_sentence_is_longer_than_twenty_five_words() {
    let prose = [
        "do", "says", "learner", "for", "not when", "next", "why", "how", "caution", "warning", "notice", "danger",
        "ask",
    ];
    let mut long = Vec::new();
    for guide in guides("").iter().filter(|guide| !guide.file.starts_with("circuits")) {
        for text in guide.texts().iter().filter(|text| prose.contains(&text.key)) {
            let text = plain(text.text);
            let sentences =
                text.split_inclusive(['.', '?', '!', ':']).filter(|it| it.split_whitespace().count() > SENTENCE);
            long.extend(sentences.map(|sentence| format!("{}: {}", guide.file, sentence.trim())));
        }
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
}

#[test]
fn what_a_guide_claims_to_cover_is_the_sum_of_its_shares() {
    for guide in guides("faults") {
        let says = plain(guide.tree["not on this list"]["says"].as_str().unwrap());
        let claimed = says.split("covers about ").nth(1).and_then(|rest| rest.split(' ').next()).unwrap_or_default();
        let shares = items(&guide.tree, "causes").into_iter().map(|cause| cause["share"].as_f64().unwrap());
        assert_eq!(claimed, shares.sum::<f64>().to_string(), "{}", guide.file);
        assert_eq!(guide.text("shares"), Some("estimated"), "{}: nobody has counted yet", guide.file);
        assert!(says.contains("By our estimate"), "{}", guide.file);
    }
}

/// The steps of a job and the instructions inside them.
fn steps(guide: &Value) -> Vec<&Value> {
    let outer = items(guide, "steps").into_iter();
    outer.flat_map(|step| [vec![step], items(step, "steps")].concat()).collect()
}

/// The full wording of a step, which may be a bare text.
fn wording(step: &Value) -> String {
    plain(step.as_str().or_else(|| step.get("do")?.as_str()).unwrap())
}
