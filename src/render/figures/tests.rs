//! What holds of every drawing, whatever it shows.

use super::*;
use proptest::prelude::*;
use std::collections::BTreeSet;

/// Parses what may stand in one file together; panics if it is not well-formed.
fn parsed(parts: &[String]) -> String {
    format!("<body xmlns:x=\"x\">{}</body>", parts.concat())
}

/// One file with everything that is offered once.
fn everything_once() -> String {
    let rails = rail::Item::ALL;
    let mut parts = vec![patterns(), lamp::shapes()];
    parts.extend(rails.map(rail::shapes));
    parts.extend(rails.map(|item| rail::rail(item, &[], Shapes::Shared)));
    parts.extend(lamp::Lamp::ALL.map(|state| lamp::lamp(state, lamp::Light::Coloured, Shapes::Shared)));
    parts.extend([chain::Arrangement::Wide, chain::Arrangement::Tall].map(chain::chain));
    parts.push(shares::bar(27.0, 30.0, shares::Bar::Cause));
    parts.push(rail::strip(&[rail::State::Plain, rail::State::Here]));
    parsed(&parts)
}

#[test]
fn everything_is_well_formed_and_no_id_is_given_twice_and_every_reference_is_met() {
    let file = everything_once();
    let tree = roxmltree::Document::parse(&file).expect("well-formed");
    let ids: Vec<&str> = tree.descendants().filter_map(|node| node.attribute("id")).collect();
    let known: BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(ids.len(), known.len());
    for reference in tree.descendants().filter_map(|node| node.attribute("href")) {
        assert!(known.contains(reference.trim_start_matches('#')), "{reference}");
    }
}

#[test]
fn nothing_carries_a_style_or_a_script_that_the_security_policy_would_stop() {
    let file = everything_once();
    let tree = roxmltree::Document::parse(&file).expect("well-formed");
    for node in tree.descendants() {
        assert!(!["style", "script"].contains(&node.tag_name().name()));
        assert!(node.attributes().all(|attribute| attribute.name() != "style" && !attribute.name().starts_with("on")));
    }
}

#[test]
fn what_is_not_read_out_says_so_and_what_is_has_a_title() {
    let file = everything_once();
    let tree = roxmltree::Document::parse(&file).expect("well-formed");
    for drawing in tree.descendants().filter(|node| node.has_tag_name("svg")) {
        assert_eq!(drawing.attribute("aria-hidden"), Some("true"));
    }
    let rule = minutes::Minutes {
        prefix: "q1",
        title: "2 minutes so far",
        so_far: 2.0,
        to_go: 5.0,
        at_most: 12.0,
        now: "now",
        most: "at most 12",
    };
    let drawn = minutes::rule(&rule);
    assert!(drawn.contains("role=\"img\"") && drawn.contains("<title id=\"q1-title\">2 minutes so far</title>"));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_minutes_rule_takes_any_words_and_numbers_and_keeps_its_words_inside(
        (title, now, most) in ("\\PC{0,60}", "\\PC{0,60}", "\\PC{0,60}"),
        (so_far, to_go, at_most) in (any::<f64>(), any::<f64>(), any::<f64>()),
    ) {
        let drawn = minutes::rule(&minutes::Minutes { prefix: &now, title: &title, so_far, to_go, at_most, now: &now, most: &most });
        let tree = roxmltree::Document::parse(&drawn).expect("well-formed");
        for node in tree.descendants().filter(|node| node.has_tag_name("text")) {
            let x: f64 = node.attribute("x").and_then(|x| x.parse().ok()).expect("a number");
            let half = words::width(node.text().unwrap_or_default(), words::Weight::Plain, 13.0) / 2.0;
            prop_assert!(x - half >= -0.01 && x + half <= 340.01, "{drawn}");
        }
    }

    #[test]
    fn a_bar_takes_any_share(share in any::<f64>(), scale in any::<f64>()) {
        let drawn = shares::bar(share, scale, shares::Bar::Rest);
        let tree = roxmltree::Document::parse(&drawn).expect("well-formed");
        let widths = tree.descendants().filter_map(|node| node.attribute("width")?.parse::<f64>().ok());
        prop_assert!(widths.into_iter().all(|width| (0.0..=100.0).contains(&width)), "{drawn}");
    }
}
