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
        assert!((3..=4).contains(&said.len()), "between two one may toss a coin: {question:?}");
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

/// A text as it is read: a short link prints about what its id says.
fn printed(text: &str) -> String {
    let mut words = String::new();
    for part in text.split('<') {
        let linked = part.split_once('>').filter(|(link, _)| link.contains(':') && !link.contains(' '));
        match linked {
            Some((link, rest)) => words.extend([link.split_once(':').unwrap().1, rest]),
            None => words.push_str(part),
        }
    }
    words
}

fn has_figure(text: &str) -> bool {
    text.contains("<limit:") || printed(text).chars().any(|letter| letter.is_ascii_digit())
}

/// The letters of a value, without its figures: its units.
fn units(value: &str) -> String {
    value.chars().filter(|letter| letter.is_alphabetic() || "Ω°%".contains(*letter)).collect()
}

/// The number of a value in its first unit.
fn number(said: &Said) -> f64 {
    let Said::Bound { value, .. } = said else { panic!("{said:?} is no bound") };
    let figures: String = value.chars().take_while(|letter| letter.is_ascii_digit() || *letter == '.').collect();
    figures.parse().unwrap()
}

#[test]
fn all_choices_of_a_question_are_of_one_kind_and_form() {
    for question in questions("") {
        for said in wrong(question) {
            match (right(question), said) {
                (Said::Bound { bound: one, value: own }, Said::Bound { bound: other, value }) => {
                    assert_eq!((one, units(own)), (other, units(value)), "{question:?}");
                }
                (Said::Lamps { lamps: one }, Said::Lamps { lamps: other }) => {
                    let looked = |lamps: &[coquille::handbook::page::LampShown]| -> Vec<String> {
                        lamps.iter().map(|lamp| format!("{} {:?} {:?}", lamp.when, lamp.position, lamp.light)).collect()
                    };
                    assert_eq!(looked(one), looked(other), "{question:?}");
                }
                (Said::Text { text: one }, Said::Text { text: other }) => {
                    let (a, b) = (printed(one).chars().count(), printed(other).chars().count());
                    assert!(a.max(b) <= 2 * a.min(b), "{a} and {b} letters: {question:?}");
                    assert_eq!(has_figure(one), has_figure(other), "{question:?}");
                }
                _ => panic!("of two kinds: {question:?}"),
            }
        }
    }
}

/// The signal word that a note stands under, in any job.
fn signal(note: &str) -> String {
    let words = ["danger", "warning", "caution", "notice"];
    let under = |value: &Value| -> Option<String> {
        let map = value.as_mapping()?;
        let found = words.iter().find(|word| map.get(**word).and_then(Value::as_str).map(str::trim) == Some(note));
        found.map(|word| (*word).to_owned())
    };
    fn search(value: &Value, under: &dyn Fn(&Value) -> Option<String>) -> Option<String> {
        under(value).or_else(|| match value {
            Value::Sequence(items) => items.iter().find_map(|item| search(item, under)),
            Value::Mapping(map) => map.values().find_map(|item| search(item, under)),
            _ => None,
        })
    }
    GUIDES.values().find_map(|guide| search(guide, &under)).unwrap_or_else(|| panic!("no note `{note}`"))
}

#[test]
fn every_danger_to_choose_from_stands_under_the_same_signal_word() {
    for question in questions("check-danger") {
        let own = signal(text(right(question)));
        assert_ne!(own, "notice");
        assert!(wrong(question).all(|said| signal(text(said)) == own), "{question:?}");
    }
}

#[test]
fn every_first_question_is_chosen_among_questions_with_as_many_answers_to_choose_from() {
    for question in questions("check-first-question") {
        let probes = GUIDES[id(&question.told.address)]["probes"].as_sequence().unwrap();
        let many = |said: &Said| {
            let title =
                |probe: &Value| probe.get("title").or(probe.get("ask")).unwrap().as_str().unwrap().trim().to_owned();
            let probe = probes.iter().find(|probe| title(probe) == text(said)).unwrap();
            probe.get("answers").and_then(Value::as_sequence).is_some_and(|answers| answers.len() > 2)
        };
        assert!(wrong(question).all(|said| many(said) == many(right(question))), "{question:?}");
    }
}

/// How often each of some places came, with the number of all.
fn places(at: impl Iterator<Item = usize>) -> (BTreeMap<usize, usize>, usize) {
    let mut times = BTreeMap::new();
    at.for_each(|place| *times.entry(place).or_insert(0) += 1);
    let all = times.values().sum();
    (times, all)
}

#[test]
fn neither_its_place_nor_its_size_gives_the_right_choice_away() {
    let (stands, all) =
        places(questions("").iter().map(|question| question.choices.iter().position(|one| one.right).unwrap()));
    assert_eq!(stands.len(), 4, "it stands in every place: {stands:?}");
    assert!(stands.values().all(|times| times * 2 < all), "{stands:?}");

    let rank = |question: &&CheckQuestion, size: &dyn Fn(&Said) -> f64| {
        let own = size(right(question));
        wrong(question).filter(|said| size(said) < own).count()
    };
    let (values, all) = places(questions("check-limit").iter().map(|question| rank(question, &number)));
    assert!(values.len() > 1 && values.values().all(|times| times * 3 <= all * 2), "least to most: {values:?}");

    let texts = ["check-first-question", "check-first-step", "check-danger"].into_iter().flat_map(questions);
    let length = |said: &Said| printed(text(said)).chars().count() as f64;
    let texts: Vec<&CheckQuestion> = texts.collect();
    let (lengths, all) = places(texts.iter().map(|question| rank(question, &length)));
    assert!(
        lengths.len() > 1 && lengths.values().all(|times| times * 3 <= all * 2),
        "shortest to longest: {lengths:?}"
    );
}

#[test]
fn no_wrong_choice_is_offered_again_and_again() {
    let texts = ["check-danger", "check-first-question", "check-first-step"].into_iter().flat_map(questions);
    let texts: Vec<&CheckQuestion> = texts.collect();
    let mut times: BTreeMap<&str, usize> = BTreeMap::new();
    texts.iter().flat_map(|question| wrong(question)).for_each(|said| *times.entry(text(said)).or_default() += 1);
    let (said, most) = times.iter().max_by_key(|(_, times)| **times).unwrap();
    assert!(most * 2 <= questions("check-danger").len() + 1, "{most} times: {said}");
}
