//! Every rule figure of the demo handbook, held against a table that was typed from the rule book, and none of them typed twice.
//!
//! The table: FIE Material Rules (Rules for Competitions, Book 3), English, edition of December 2019, read on 25 November 2026,
//! article by article; it knows nothing of the guides. Figures with a tolerance are written as the two ends.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod demo_guides;

use demo_guides::{Guide, guides, items};
use serde_yaml::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// What the rule book says: the article, our id of the limit, the kind of the bound, the figure.
const RULES: [(&str, &str, &str, &str); 68] = [
    // Weapons in general
    ("m.4.1", "foil-handle", "at most", "20 cm"),
    ("m.4.1", "epee-handle", "at most", "20 cm"),
    ("m.4.1", "sabre-handle", "at most", "17 cm"),
    ("m.5.2 a", "foil-pad", "less than", "2 cm"),
    ("m.5.4", "foil-resistance", "at most", "2 Ω"),
    ("m.5.4", "epee-resistance", "at most", "2 Ω"),
    // Foil
    ("m.6", "foil-weight-whole", "less than", "500 g"),
    ("m.7", "foil-length", "at most", "110 cm"),
    ("m.8.4", "foil-blade-length", "at most", "90 cm"),
    ("m.8.5", "foil-bend", "between", "5.5 .. 9.5 cm"),
    ("m.8.6", "foil-curve", "less than", "1 cm"),
    ("m.9", "foil-guard", "between", "9.5 .. 12 cm"),
    ("m.11.1", "foil-tip-diameter", "between", "5.5 .. 7 mm"),
    ("m.11.1", "foil-tip-body", "at most", "0.3 mm"),
    ("m.11.3", "foil-spring", "must lift", "500 g"),
    ("m.11.3", "foil-test-weight", "between", "498 .. 502 g"),
    ("m.11.4", "foil-travel", "at most", "1 mm"),
    ("m.11.4, m.19.4", "gauge-tolerance", "at most", "0.05 mm"),
    ("m.12.5", "foil-thread-core", "at least", "2.7 mm"),
    ("m.13.1", "foil-insulation", "at least", "15 cm"),
    // Epee
    ("m.14", "epee-weight-whole", "less than", "770 g"),
    ("m.15", "epee-length", "at most", "110 cm"),
    ("m.16.2", "epee-curve", "less than", "1 cm"),
    ("m.16.3", "epee-blade-length", "at most", "90 cm"),
    ("m.16.4", "epee-blade-width", "at most", "24 mm"),
    ("m.16.5", "epee-bend", "between", "4.5 .. 7 cm"),
    ("m.17", "epee-guard", "at most", "13.5 cm"),
    ("m.17", "epee-guard-depth", "between", "3 .. 5.5 cm"),
    ("m.17", "epee-guard-centre", "at most", "3.5 cm"),
    ("m.18.2", "epee-notch", "at least", "2 mm"),
    ("m.19.1", "epee-crown", "between", "7.95 .. 8.05 mm"),
    ("m.19.1", "epee-base", "at least", "7.7 mm"),
    ("m.19.2", "epee-spring", "must lift", "750 g"),
    ("m.19.3", "epee-test-weight", "between", "747 .. 753 g"),
    ("m.19.4", "epee-first-travel", "more than", "1 mm"),
    ("m.19.4", "epee-travel", "more than", "1.5 mm"),
    ("m.19.4", "epee-whole-travel", "must pass", "1.5 mm"),
    ("m.19.4", "epee-last-travel", "must not register", "0.5 mm"),
    ("m.20.4", "epee-thread-core", "at least", "3.05 mm"),
    // Sabre
    ("m.21", "sabre-length", "at most", "105 cm"),
    ("m.22", "sabre-weight-whole", "less than", "500 g"),
    ("m.23.1", "sabre-blade-length", "at most", "88 cm"),
    ("m.23.1", "sabre-width", "at least", "4 mm"),
    ("m.23.1", "sabre-thickness", "at least", "1.2 mm"),
    ("m.23.2", "sabre-button", "between", "4 .. 6 mm"),
    ("m.23.4", "sabre-curve", "less than", "4 cm"),
    ("m.23.5", "sabre-bend", "between", "4 .. 7 cm"),
    ("m.24.2", "sabre-guard", "at most", "15 cm"),
    ("m.24.2", "sabre-guard-across", "at most", "14 cm"),
    ("m.24.5", "sabre-resistance", "at most", "1 Ω"),
    ("m.24.6 to m.24.8", "sabre-guard-insulation", "between", "7 .. 8 cm"),
    // Cords, clothing, masks
    ("m.27", "bib-below-chin", "between", "1.5 .. 2 cm"),
    ("m.27", "mask-wire-length", "between", "30 .. 40 cm"),
    ("m.28.1", "jacket-flap", "at least", "3 cm"),
    ("m.28.5", "jacket-resistance", "at most", "5 Ω"),
    ("m.29.1 c, m.31.1 b", "cord-line", "at most", "1 Ω"),
    ("m.29.2", "clip-wire", "at least", "40 cm"),
    ("m.29.2", "clip-width", "at least", "10 mm"),
    ("m.32.5", "sabre-mask", "less than", "5 Ω"),
    ("m.32.5", "mask-wire", "at most", "1 Ω"),
    ("m.33.2", "cuff-turned-in", "at least", "5 cm"),
    ("m.33.4", "cuff-resistance", "at most", "5 Ω"),
    // Reels, cables, piste, supply
    ("m.55.1", "reel-line", "at most", "3 Ω"),
    ("m.55.5", "floor-cable-line", "at most", "2.5 Ω"),
    ("m.57.1", "piste-resistance", "at most", "5 Ω"),
    ("m.58.1", "apparatus-supply", "between", "11.4 .. 12.6 V"),
    // Scoring apparatus, Annex B: 14 ms give or take 1, and so on
    ("Annex B, A.1", "foil-break", "between", "13 .. 15 ms"),
    ("Annex B, A.1", "foil-lock-out", "between", "275 .. 325 ms"),
];

/// Rows of Annex B that say at which resistance a lamp must or must not burn.
const LAMPS: [(&str, &str, &str, &str); 6] = [
    ("Annex B, A.1", "foil-loop", "at most", "200 Ω"),
    ("Annex B, A.1, B", "earth-loop", "at most", "100 Ω"),
    ("Annex B, A.2", "yellow-lamp-lit", "less than", "450 Ω"),
    ("Annex B, B", "epee-contact", "between", "2 .. 10 ms"),
    ("Annex B, C", "sabre-lock-out", "between", "160 .. 180 ms"),
    ("Annex B, C(b)7", "sabre-loop", "more than", "250 Ω"),
];

/// Texts that hold such a figure and mean something else, each with what it means.
const SOMETHING_ELSE: [(&str, &str, &str); 1] =
    [("jobs/check-curve.yaml", "1 cm", "how far from the point of a sabre the weight hangs (m.23.5), not the curve")];

/// Drawings that carry a rule figure, with its limit.
const DRAWN: [(&str, &str); 4] = [
    ("epee-gauges.svg", "epee-whole-travel"),
    ("epee-gauges.svg", "epee-last-travel"),
    ("sabre-insulation.svg", "sabre-guard-insulation"),
    ("tape-place.svg", "foil-insulation"),
];

#[test]
fn each_rule_limit_has_the_rule_books_figure_bound_and_article() {
    let limits = rule_limits();
    for (article, id, bound, figure) in RULES.iter().chain(&LAMPS) {
        let limit = limits.get(*id).unwrap_or_else(|| panic!("no limit `{id}` for {article}"));
        assert_eq!(limit.get(*bound).and_then(Value::as_str), Some(*figure), "{id}: {article}");
        assert_eq!(limit.get("article").and_then(Value::as_str), Some(*article), "{id}");
    }
}

#[test]
fn no_limit_is_said_to_be_of_the_rule_book_that_the_table_does_not_know() {
    let known: BTreeSet<_> = RULES.iter().chain(&LAMPS).map(|(_, id, _, _)| (*id).to_owned()).collect();
    assert_eq!(known.len(), RULES.len() + LAMPS.len(), "an id stands twice in the table");
    assert_eq!(rule_limits().into_keys().collect::<BTreeSet<_>>(), known);
}

#[test]
fn each_file_of_rule_limits_says_edition_and_day_and_defers_to_the_rules_in_force() {
    for guide in guides("limits").iter().filter(|guide| is_of_the_rule_book(guide)) {
        assert_eq!(guide.text("edition"), Some("December 2019"), "{}", guide.file);
        assert_eq!(guide.text("looked up"), Some("2026-11-25"), "{}", guide.file);
        let says = guide.text("says").unwrap_or_default();
        assert!(says.contains("The rules in force at the event decide"), "{}", guide.file);
    }
}

#[test]
fn no_guide_types_a_rule_figure_of_its_own_item_instead_of_linking_to_the_limit() {
    let figures = figures_by_item();
    let mut typed = Vec::new();
    for guide in ["faults", "jobs", "checks"].iter().flat_map(|folder| guides(folder)) {
        let Some(own) = guide.text("kit").and_then(|item| figures.get(item)) else { continue };
        for text in guide.texts().iter().filter(|text| !["also", "quantity", "torque"].contains(&text.key)) {
            for figure in own.iter().filter(|figure| holds(text.text, figure)) {
                let excused = SOMETHING_ELSE.iter().any(|(file, it, _)| *file == guide.file && it == figure);
                if !excused {
                    typed.push(format!("{}, {}: {figure} in `{}`", guide.file, text.key, text.text));
                }
            }
        }
    }
    assert!(typed.is_empty(), "{}", typed.join("\n"));
}

#[test]
fn a_rule_figure_in_a_drawing_is_the_limits() {
    let limits = rule_limits();
    for (drawing, id) in DRAWN {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("guides/pictures").join(drawing);
        let svg = std::fs::read_to_string(path).unwrap();
        let figure = figure_of(&limits[id]).unwrap().replace(" .. ", " to ");
        assert!(svg.contains(&figure), "{drawing} does not say {figure}");
    }
}

#[test]
fn a_figure_is_found_whole_and_not_as_a_part_of_another() {
    assert!(holds("the first 15 cm of the blade", "15 cm"));
    assert!(holds("under 2\u{a0}Ω.", "2 Ω"));
    assert!(!holds("about 12 Ω", "2 Ω"));
    assert!(!holds("2 cm", "2 Ω"));
    assert!(!holds("1.5 mm", "5 mm"));
}

/// All limits whose source is the rule book, by their ids.
fn rule_limits() -> BTreeMap<String, Value> {
    let files = guides("limits");
    let ruled = files.iter().filter(|guide| is_of_the_rule_book(guide));
    let entries = ruled.flat_map(|guide| items(&guide.tree, "entries").into_iter().cloned().collect::<Vec<_>>());
    entries.map(|entry| (entry["limit"].as_str().unwrap().to_owned(), entry)).collect()
}

fn is_of_the_rule_book(guide: &Guide) -> bool {
    guide.text("source").is_some_and(|source| source.contains("Material Rules"))
}

/// The figures of the rule limits by the item that they are for; a range gives both ends.
fn figures_by_item() -> BTreeMap<String, BTreeSet<String>> {
    let mut by_item: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for limit in rule_limits().values() {
        let (Some(item), Some(figure)) = (limit.get("kit").and_then(Value::as_str), figure_of(limit)) else { continue };
        by_item.entry(item.to_owned()).or_default().extend(ends(&figure));
    }
    by_item
}

fn figure_of(limit: &Value) -> Option<String> {
    let bounds = RULES.iter().chain(&LAMPS).map(|(_, _, bound, _)| *bound);
    bounds.filter_map(|bound| limit.get(bound)?.as_str()).next().map(str::to_owned)
}

fn ends(figure: &str) -> Vec<String> {
    let (numbers, unit) = figure.rsplit_once(' ').unwrap();
    numbers.split(" .. ").map(|number| format!("{number} {unit}")).collect()
}

/// Whether a text has this figure with its unit, not as the end of a longer number or the start of a longer unit.
fn holds(text: &str, figure: &str) -> bool {
    let (number, unit) = figure.split_once(' ').unwrap();
    text.match_indices(number).any(|(at, _)| {
        let begins = !text[..at].ends_with(|it: char| it.is_ascii_digit() || it == '.');
        let after = text[at + number.len()..].trim_start_matches([' ', '\u{a0}']);
        let ends = after.strip_prefix(unit).is_some_and(|rest| !rest.starts_with(char::is_alphabetic));
        begins && ends
    })
}
