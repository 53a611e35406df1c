//! Safety at the bench: a job that brings out something that burns, cuts, flies or poisons says so, in the words that the
//! hazard has; what a note tells to wear lies on the list of what to fetch; and the handbook defers to those who decide.
//!
//! The proof holds hazardous consumables (`hazard-without-safety`); this holds tools, and what is worn against them.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod demo_guides;

use demo_guides::{Guide, guides, items};
use serde_yaml::Value;

/// A tool or consumable, and the words one of which a note of the job must have.
const HAZARDS: [(&str, &[&str]); 10] = [
    ("soldering-iron", &["hot iron burns"]),
    ("fine-knife", &["knife"]),
    ("groove-scraper", &["scraper"]),
    ("wire-cutter", &["cut end", "cut ends", "knife"]),
    ("file", &["filings"]),
    ("abrasive-paper", &["dust", "eyes", "filings", "sheet metal", "cut ends"]),
    ("barrel-spanner", &["clamp the blade"]),
    ("bend-weight", &["springs up"]),
    ("acetone", &["catches fire"]),
    ("isopropanol", &["catches fire"]),
];

#[test]
fn each_hazardous_tool_of_a_job_has_its_note() {
    for guide in guides("jobs") {
        let notes = notes(&guide);
        for (thing, words) in HAZARDS.iter().filter(|(thing, _)| needs(&guide, thing)) {
            assert!(words.iter().any(|word| notes.contains(word)), "{}: `{thing}` has no note", guide.file);
        }
    }
}

#[test]
fn what_a_note_tells_to_wear_is_on_the_list_of_what_to_fetch_and_the_other_way_round() {
    for guide in guides("jobs") {
        let notes = notes(&guide);
        assert_eq!(notes.contains("glasses"), needs(&guide, "safety-glasses"), "{}: glasses", guide.file);
        let gloves = ["glove", "leather-gloves", "nitrile-gloves"].iter().any(|glove| needs(&guide, glove));
        assert_eq!(notes.contains("gloves"), gloves, "{}: gloves", guide.file);
    }
}

#[test]
fn taking_out_a_tip_warns_of_its_spring_before_the_step() {
    for guide in guides("jobs") {
        for step in items(&guide.tree, "steps") {
            let text = serde_yaml::to_string(step).unwrap();
            if ["screws, tip and spring", "undo both screws", "take out the screws"].iter().any(|it| text.contains(it))
                && !text.contains("Put ")
            {
                assert!(text.contains("throw"), "{}: {text}", guide.file);
            }
        }
    }
    for guide in guides("faults") {
        for access in items(&guide.tree, "access").into_iter().filter(|it| it["access"].as_str() == Some("tip-out")) {
            assert!(note_of(access).contains("throw"), "{}", guide.file);
        }
    }
}

#[test]
fn mains_power_is_a_warning_and_for_a_qualified_person() {
    let all: Vec<_> = guides("jobs").into_iter().chain(guides("checks")).collect();
    let of = |file: &str| all.iter().find(|guide| guide.file.ends_with(file)).map(notes).unwrap();
    for file in ["apparatus-out.yaml", "open-the-bench.yaml"] {
        assert!(of(file).contains("qualified person") && of(file).contains("kill"), "{file}");
    }
    for guide in guides("faults") {
        let text = serde_yaml::to_string(&guide.tree).unwrap();
        let opens = text.contains("inside the apparatus") || text.contains("apparatus's own earth");
        assert!(!opens || text.contains("qualified person"), "{}", guide.file);
    }
}

#[test]
fn the_handbook_defers_to_the_rules_in_force_to_local_law_to_labels_and_to_qualified_people() {
    let all = guides("");
    let handbook = all.iter().find(|guide| guide.file == "handbook.yaml").unwrap();
    let caution = handbook.text("caution").unwrap();
    for words in ["rules in force", "local law", "weapon control on the day", "label", "qualified person"] {
        assert!(caution.contains(words), "{words}");
    }
}

#[test]
fn no_job_files_or_grinds_a_blade_between_guard_and_tip() {
    for guide in guides("jobs").iter().filter(|guide| needs(guide, "file")) {
        let text = serde_yaml::to_string(&guide.tree).unwrap();
        assert!(text.contains("m.1.3"), "{}: the file's limit (m.1.3) is not said", guide.file);
    }
}

/// Whether a job lists this tool or consumable.
fn needs(guide: &Guide, id: &str) -> bool {
    let Some(needs) = guide.tree.get("needs") else { return false };
    let lists = ["tools", "consumables"].iter().flat_map(|list| items(needs, list));
    lists.into_iter().any(|need| need.as_str().or_else(|| need.get("id")?.as_str()) == Some(id))
}

/// All safety notes of a guide, at its top and at its steps or items, in small letters.
fn notes(guide: &Guide) -> String {
    let inner = ["steps", "items"].iter().flat_map(|list| items(&guide.tree, list));
    [&guide.tree].into_iter().chain(inner).map(note_of).collect::<Vec<_>>().join(" ").to_lowercase()
}

/// The safety notes of one thing.
fn note_of(thing: &Value) -> String {
    let notes = items(thing, "safety").into_iter();
    let words =
        notes.flat_map(|note| note.as_mapping().unwrap().values().filter_map(Value::as_str).collect::<Vec<_>>());
    words.collect::<Vec<_>>().join(" ")
}
