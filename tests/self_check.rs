//! The self-checks of the demo handbook: every question has one right choice, and a wrong one is wrong by the handbook's own word.
//!
//! What is right is looked up again here from the guides themselves, read by serde_yaml, or from pages that are not the self-check.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test that cannot go on has failed")]

use coquille::handbook::page::{Body, CheckQuestion, LimitRow, Page, PatternRow, Said};
use coquille::handbook::{Handbook, lay_out};
use coquille::proof::proof;
use coquille::source::read;
use serde_yaml::Value;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::LazyLock;

static HANDBOOK: LazyLock<Handbook> = LazyLock::new(|| {
    let folder = read(Path::new("guides")).unwrap();
    lay_out(&proof(&folder), &folder)
});

/// The guides as serde_yaml reads them, by their own ids.
static GUIDES: LazyLock<BTreeMap<String, Value>> = LazyLock::new(|| {
    let folder = read(Path::new("guides")).unwrap();
    let guides = folder.texts.iter().filter_map(|(_, text)| {
        let guide: Value = serde_yaml::from_str(&text.text).unwrap();
        let id = guide.as_mapping()?.values().next()?.as_str()?.to_owned();
        Some((id, guide))
    });
    guides.collect()
});

fn questions(ask: &str) -> Vec<&'static CheckQuestion> {
    let stops = HANDBOOK.pages.iter().filter_map(|page| match &page.body {
        Body::Stop(stop) => Some(&stop.check),
        _ => None,
    });
    stops.flatten().filter(|question| question.ask == ask || ask.is_empty()).collect()
}

fn right(question: &CheckQuestion) -> &Said {
    &question.choices.iter().find(|choice| choice.right).unwrap().says
}

fn wrong(question: &CheckQuestion) -> impl Iterator<Item = &Said> {
    question.choices.iter().filter(|choice| !choice.right).map(|choice| &choice.says)
}

fn page(address: &str) -> &'static Page {
    let address = address.split('#').next().unwrap();
    HANDBOOK.pages.iter().find(|page| page.address == address).unwrap()
}

/// The id in the address of a guide's page.
fn id(address: &str) -> &str {
    address.rsplit('/').next().unwrap().trim_end_matches(".html")
}

fn text(said: &Said) -> &str {
    match said {
        Said::Text { text } => text.trim(),
        other => panic!("{other:?} is no text"),
    }
}

#[test]
fn every_question_has_one_right_choice_and_no_two_choices_say_the_same() {
    let all = questions("");
    assert!(all.len() >= 24, "six stops with four sorts of questions, and there are {}", all.len());
    for question in all {
        assert_eq!(question.choices.iter().filter(|choice| choice.right).count(), 1, "{question:?}");
        let mut said: Vec<String> = question.choices.iter().map(|choice| format!("{:?}", choice.says)).collect();
        said.sort();
        said.dedup();
        assert_eq!(said.len(), question.choices.len(), "{question:?}");
        assert!(said.len() > 1, "{question:?}");
    }
}

#[test]
fn the_right_limit_is_that_of_the_limits_page_and_no_wrong_one_has_its_value() {
    let Body::Limits(limits) = &page("limits.html").body else { panic!("no limits") };
    let rows: Vec<&LimitRow> = limits.groups.iter().flat_map(|group| &group.rows).collect();
    let asked = questions("check-limit");
    assert!(asked.len() >= 4);
    for question in asked {
        let row = rows.iter().find(|row| row.address == question.told.address).unwrap();
        assert_eq!(right(question), &Said::bound(row, row));
        assert!(wrong(question).all(|said| !matches!(said, Said::Bound { value, .. } if *value == row.value)));
    }
}

#[test]
fn what_a_lamp_does_is_a_row_of_its_circuit_that_the_fault_stands_in_and_in_no_other() {
    let of_circuit = |question: &CheckQuestion| -> Vec<PatternRow> {
        let Body::Circuit(circuit) = &page(&question.told.address).body else { panic!("{question:?}") };
        circuit.lamps.iter().find(|lamp| lamp.title == question.of).unwrap().rows.clone()
    };
    for question in questions("check-lamp-fault") {
        let shows = |row: &&PatternRow| row.faults.iter().any(|fault| fault.title == question.about);
        let rows = of_circuit(question);
        let showing: Vec<Said> =
            rows.iter().filter(shows).map(|row| Said::Lamps { lamps: row.lamps.clone() }).collect();
        assert_eq!(showing, [right(question).clone()], "{question:?}");
    }
    for question in questions("check-lamp-sound") {
        let rows = of_circuit(question);
        let sound: Vec<Said> =
            rows.iter().filter(|row| row.sound).map(|row| Said::Lamps { lamps: row.lamps.clone() }).collect();
        assert_eq!(sound, [right(question).clone()], "{question:?}");
    }
    assert!(questions("check-lamp-fault").len() + questions("check-lamp-sound").len() >= 4);
}

#[test]
fn what_comes_first_stands_first_in_the_guide() {
    let line = |value: &Value| value.as_str().unwrap().trim().to_owned();
    let mut asked = 0;
    for (ask, list, names) in
        [("check-first-question", "probes", ["title", "ask"]), ("check-first-step", "steps", ["short", "do"])]
    {
        for question in questions(ask) {
            let things = GUIDES[id(&question.told.address)][list].as_sequence().unwrap();
            let named: Vec<String> = things
                .iter()
                .map(|thing| names.iter().find_map(|name| thing.get(*name)).map_or_else(|| line(thing), &line))
                .collect();
            let at = |said: &Said| named.iter().position(|name| name == text(said));
            assert_eq!(at(right(question)), Some(0), "{question:?}\n{named:?}");
            assert!(wrong(question).all(|said| at(said) > Some(0)), "{question:?}");
            asked += 1;
        }
    }
    assert!(asked >= 8, "{asked}");
}

#[test]
fn the_danger_is_told_in_the_job_and_no_wrong_one_is() {
    let asked = questions("check-danger");
    assert!(asked.len() >= 4);
    for question in asked {
        // The texts of a guide by serde_yaml: what stands in it at all, in one line each.
        let job = serde_json::to_string(&GUIDES[id(&question.told.address)]).unwrap();
        let quoted = |said: &Said| serde_json::to_string(text(said)).unwrap().trim_matches('"').to_owned();
        assert!(job.contains(&quoted(right(question))), "{question:?}");
        assert!(wrong(question).all(|said| !job.contains(&quoted(said))), "{question:?}");
    }
}
