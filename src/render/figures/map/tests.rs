//! What holds of every map.

use super::*;
use crate::render::figures::words::{Weight, width};
use proptest::prelude::*;

fn ask(number: &str, label: &str, minutes: f64, branches: Vec<Branch>) -> Question {
    Question {
        number: number.to_owned(),
        label: label.to_owned(),
        minutes,
        branches,
    }
}

fn end(label: &str, share: f64) -> Branch {
    Branch::End(Ending {
        label: label.to_owned(),
        share,
    })
}

fn drawn(first: &Question) -> String {
    map(&Map {
        prefix: "m",
        title: "Map of the questions",
        minutes: "minutes",
        shares: "in 100",
        figure: &|share| svg::number(share.round()),
        others: &|count| format!("{count} others"),
        first,
    })
}

/// A line of words in the drawing: its box and itself.
#[derive(Debug)]
struct Written {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
    text: String,
}

/// Every line of words, measured; panics if the drawing is not well-formed.
fn written(drawing: &str) -> (f64, Vec<Written>) {
    let tree = roxmltree::Document::parse(drawing).expect("well-formed");
    let height = tree
        .root_element()
        .attribute("viewBox")
        .and_then(|size| size.rsplit(' ').next()?.parse().ok());
    let texts = tree
        .descendants()
        .filter(|node| node.has_tag_name("text"))
        .map(|node| {
            let number = |name| {
                node.attribute(name)
                    .and_then(|value| value.parse::<f64>().ok())
                    .expect("a number")
            };
            let text = node.text().unwrap_or_default().to_owned();
            let weight = if node.attribute("class") == Some("tb") {
                Weight::Bold
            } else {
                Weight::Plain
            };
            let (x, y, wide) = (number("x"), number("y"), width(&text, weight, SIZE));
            let left = if node.attribute("text-anchor") == Some("end") {
                x - wide
            } else {
                x
            };
            Written {
                left,
                right: left + wide,
                top: y - 0.7 * SIZE,
                bottom: y + 0.2 * SIZE,
                text,
            }
        });
    (height.expect("a height"), texts.collect())
}

/// Labels that a guide from a stranger might have.
fn label() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-zA-Z ,?]{0,70}",
        Just("<script>alert(1)</script> & \"more\" 'quotes' ]]>".to_owned()),
        Just("Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichen".to_owned()),
        Just("האם הנורה דולקת כשלוחצים על החוד של הפלורט?".to_owned()),
        Just("מנורה\u{202e} lamp \u{0}\u{1b}".to_owned()),
        "\\PC{0,40}",
    ]
}

fn tree() -> impl Strategy<Value = Question> {
    let ending =
        (label(), 0.0..30.0f64).prop_map(|(label, share)| Branch::End(Ending { label, share }));
    let branch = ending.prop_recursive(5, 40, 4, |inner| {
        (label(), 0.0..9.0f64, prop::collection::vec(inner, 0..4))
            .prop_map(|(label, minutes, branches)| Branch::Ask(ask("7", &label, minutes, branches)))
    });
    (label(), 0.0..9.0f64, prop::collection::vec(branch, 0..4))
        .prop_map(|(label, minutes, branches)| ask("1", &label, minutes, branches))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn words_never_meet_and_stay_in_the_drawing(first in tree()) {
        let (height, words) = written(&drawn(&first));
        for (index, one) in words.iter().enumerate() {
            prop_assert!(one.left >= 0.0 && one.right <= WIDTH && one.top >= 0.0 && one.bottom <= height, "{one:?} leaves");
            for other in &words[index + 1..] {
                let apart = one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top;
                prop_assert!(apart || one.text.is_empty() || other.text.is_empty(), "{one:?} meets {other:?}");
            }
        }
    }

    #[test]
    fn the_same_tree_gives_the_same_bytes_and_never_more_than_26_rows(first in tree()) {
        let once = drawn(&first);
        prop_assert_eq!(&once, &drawn(&first));
        prop_assert!(once.matches("class=\"ask\"").count() + once.matches("class=\"end\"").count() <= 26);
    }
}

#[test]
fn the_question_with_most_cases_goes_straight_on_and_comes_last() {
    let heavy = Branch::Ask(ask("2", "Heavy", 1.0, vec![end("a", 40.0), end("b", 30.0)]));
    let light = Branch::Ask(ask("2", "Light", 1.0, vec![end("c", 20.0), end("d", 5.0)]));
    let drawing = drawn(&ask("1", "First", 1.0, vec![heavy, end("e", 5.0), light]));
    let order: Vec<String> = written(&drawing)
        .1
        .into_iter()
        .map(|word| word.text)
        .filter(|text| text.parse::<f64>().is_err())
        .collect();
    assert_eq!(
        order,
        [
            "minutes", "in 100", "First", "e", "Light", "c", "d", "Heavy", "a", "b"
        ]
    );
}

#[test]
fn an_ending_bar_is_as_high_as_its_share_and_a_minute_has_its_tick() {
    let drawing = drawn(&ask(
        "1",
        "First",
        3.0,
        vec![end("a", 75.0), end("b", 25.0)],
    ));
    assert_eq!(drawing.matches("class=\"tick\"").count(), 3);
    let bars: Vec<f64> = drawing
        .split("class=\"end\" d=\"M")
        .skip(1)
        .filter_map(|rest| {
            let data = rest.split('"').next()?;
            let ys: Vec<f64> = data
                .split('L')
                .filter_map(|point| point.split(' ').nth(1)?.parse().ok())
                .collect();
            Some(ys[1] - ys[0] - 4.0)
        })
        .collect();
    assert!(
        (bars[0] - 0.75 * FULL).abs() < 0.02 && (bars[1] - 0.25 * FULL).abs() < 0.02,
        "{bars:?}"
    );
}

#[test]
fn a_tree_too_big_is_folded_from_its_rarest_end_and_loses_no_case() {
    let cause = |index: usize| {
        end(
            &format!("cause {index}"),
            if index == 0 { 41.0 } else { 1.0 },
        )
    };
    let drawing = drawn(&ask("1", "Which?", 1.0, (0..60).map(cause).collect()));
    let words: Vec<String> = written(&drawing)
        .1
        .into_iter()
        .map(|word| word.text)
        .collect();
    assert!(words.iter().any(|word| word == "cause 0"));
    assert!(
        words.iter().any(|word| word.ends_with(" others")),
        "{words:?}"
    );
    let shown: f64 = drawing
        .split("class=\"tb\"")
        .skip(2)
        .filter_map(|rest| {
            rest.split('>')
                .nth(1)?
                .split('<')
                .next()?
                .parse::<f64>()
                .ok()
        })
        .sum();
    assert!((shown - 100.0).abs() < 1e-9, "{shown}");
}
