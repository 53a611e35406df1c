//! What holds of every rail.

use super::*;

fn place_ids(item: Item) -> Vec<&'static str> {
    places(item).iter().map(|place| place.id).collect()
}

#[test]
fn every_item_has_at_most_seven_places_in_ascii_words_and_a_part_for_each() {
    for item in Item::ALL {
        let ids = place_ids(item);
        assert!((2..=7).contains(&ids.len()), "{item:?}");
        for id in &ids {
            assert!(
                id.chars().all(|c| c.is_ascii_lowercase() || c == '-'),
                "{id}"
            );
            assert_eq!(
                ids.iter().filter(|other| *other == id).count(),
                1,
                "{id} twice on {item:?}"
            );
            assert!(
                item.plan().parts.iter().any(|(part, _)| part == id),
                "nothing is drawn of {id} of {item:?}"
            );
        }
        for (part, _) in item.plan().parts {
            assert!(ids.contains(part), "{part} of {item:?} is no place");
        }
        assert_eq!(Item::by_id(item.id()), Some(item));
    }
}

#[test]
fn the_place_in_question_is_painted_and_bracketed_and_no_other() {
    for item in Item::ALL {
        for id in place_ids(item) {
            let drawn = rail(
                item,
                &[Mark {
                    place: id,
                    state: State::Here,
                }],
                Shapes::Own,
            );
            let parts = item
                .plan()
                .parts
                .iter()
                .filter(|(part, _)| *part == id)
                .count();
            assert_eq!(drawn.matches("is-here").count(), parts, "{id} of {item:?}");
            assert_eq!(drawn.matches("d-mark").count(), 1);
        }
        assert!(
            !rail(
                item,
                &[Mark {
                    place: "no-such-place",
                    state: State::Here
                }],
                Shapes::Own
            )
            .contains("is-here")
        );
    }
}

#[test]
fn brackets_and_leaders_stay_in_the_drawing() {
    for place in Item::ALL.into_iter().flat_map(places) {
        let (from, to) = place.span;
        assert!(0.0 <= from && from < to && to <= WIDTH, "{place:?}");
        let (x, y) = place.lead;
        assert!(
            (0.0..=WIDTH).contains(&x) && (0.0..=HEIGHT).contains(&y),
            "{place:?}"
        );
    }
}

#[test]
fn shared_parts_stand_among_the_shapes_in_every_state() {
    for item in Item::ALL {
        let stock = shapes(item);
        for state in [State::Plain, State::Here, State::Out] {
            let marks: Vec<Mark<'_>> = place_ids(item)
                .into_iter()
                .map(|place| Mark { place, state })
                .collect();
            let drawn = rail(item, &marks, Shapes::Shared);
            let used: Vec<&str> = drawn
                .split("href=\"#")
                .skip(1)
                .filter_map(|rest| rest.split('"').next())
                .collect();
            assert_eq!(used.len(), item.plan().parts.len());
            for id in used {
                assert_eq!(stock.matches(&format!("id=\"{id}\"")).count(), 1, "{id}");
            }
        }
    }
}

#[test]
fn a_strip_has_a_block_a_place_and_a_bracket_where_it_is_here() {
    let drawn = strip(&[State::Plain, State::Here, State::Out]);
    assert_eq!(drawn.matches("d-mark").count(), 1);
    assert_eq!(drawn.matches("class=\"st is-here\"").count(), 1);
    assert_eq!(drawn.matches("class=\"st is-out\"").count(), 1);
    assert!(strip(&[]).starts_with("<svg"));
}
