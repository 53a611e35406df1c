//! What holds of every circuit.

use super::*;
use crate::render::figures::words::width;
use proptest::prelude::*;

fn point(place: usize, way: usize) -> Point {
    Point { place, way, label: None }
}

fn piece(from: usize, to: usize, kind: Kind) -> Piece {
    Piece { from, to, place: 0, kind, value: None, label: None, current: Current::None, condition: Condition::Sound }
}

fn two_ways(pieces: Vec<Piece>) -> Circuit {
    Circuit {
        prefix: "c".to_owned(),
        title: "A loop".to_owned(),
        fault: "fault".to_owned(),
        places: ["tip", "barrel", "socket"].map(str::to_owned).to_vec(),
        points: vec![point(0, 0), point(1, 0), point(2, 0), point(0, 1), point(1, 1), point(2, 1)],
        pieces,
    }
}

/// The loop of a pressed foil: open at the tip, closed by a bridge lower down.
fn bridged() -> Circuit {
    let live = |piece: Piece| Piece { current: Current::Live, ..piece };
    two_ways(vec![
        piece(0, 3, Kind::Push(Contact::Open)),
        piece(0, 1, Kind::Wire),
        live(piece(1, 2, Kind::Resistor)),
        piece(3, 4, Kind::Wire),
        live(piece(4, 5, Kind::Resistor)),
        live(piece(2, 5, Kind::Cell)),
        live(Piece { condition: Condition::Faulty, ..piece(1, 4, Kind::Wire) }),
    ])
}

fn words() -> impl Strategy<Value = Option<String>> {
    prop_oneof![
        Just(None),
        "[a-z ]{0,40}".prop_map(Some),
        Just(Some("</text><script>\u{0}&\"".to_owned())),
        Just(Some("Kontaktwiderstandsmessgerätezuleitung".to_owned())),
        Just(Some("חוט שבור ליד הידית של הסיף".to_owned())),
        Just(Some("0.25 Ω".to_owned())),
    ]
}

fn kind() -> impl Strategy<Value = Kind> {
    prop_oneof![
        Just(Kind::Wire),
        Just(Kind::Resistor),
        Just(Kind::Contact(Contact::Open)),
        Just(Kind::Push(Contact::Closed)),
        Just(Kind::Lamp(Lamp::Lit)),
        Just(Kind::Lamp(Lamp::ComesAndGoes)),
        Just(Kind::Meter),
        Just(Kind::Cell),
        Just(Kind::Plug),
        Just(Kind::Broken),
    ]
}

fn any_circuit() -> impl Strategy<Value = Circuit> {
    let point = (0..5usize, 0..5usize, words()).prop_map(|(place, way, label)| Point { place, way, label });
    let piece = ((0..11usize, 0..11usize, 0..6usize), kind(), words(), words(), any::<[bool; 2]>()).prop_map(
        |((from, to, place), kind, value, label, [live, faulty])| Piece {
            from,
            to,
            place,
            kind,
            value,
            label,
            current: if live { Current::Live } else { Current::None },
            condition: if faulty { Condition::Faulty } else { Condition::Sound },
        },
    );
    let parts = (prop::collection::vec(point, 0..10), prop::collection::vec(piece, 0..14), words());
    parts.prop_map(|(points, pieces, fault)| Circuit {
        prefix: "a \"b\"".to_owned(),
        title: "<title>".to_owned(),
        fault: fault.unwrap_or_default(),
        places: ["tip", "a very long name of a place", "guard"].map(str::to_owned).to_vec(),
        points,
        pieces,
    })
}

/// Left, right, top and bottom of every line of words; panics if the drawing is not well-formed.
fn boxes(drawing: &str) -> (f64, Vec<[f64; 4]>) {
    let tree = roxmltree::Document::parse(drawing).expect("well-formed");
    let height = tree.root_element().attribute("viewBox").and_then(|size| size.rsplit(' ').next()?.parse().ok());
    let texts = tree.descendants().filter(|node| node.has_tag_name("text")).map(|node| {
        let number = |name| node.attribute(name).and_then(|value| value.parse::<f64>().ok()).expect("a number");
        let weight = if node.attribute("class") == Some("tb") { Weight::Bold } else { Weight::Plain };
        let (x, y, wide) = (number("x"), number("y"), width(node.text().unwrap_or_default(), weight, SIZE));
        let left = match node.attribute("text-anchor") {
            Some("end") => x - wide,
            Some("middle") => x - wide / 2.0,
            _ => x,
        };
        [left, left + wide, y - 0.7 * SIZE, y + 0.2 * SIZE]
    });
    (height.expect("a height"), texts.collect())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_circuit_is_well_formed_the_same_each_time_and_keeps_its_words_inside(drawn in any_circuit()) {
        let once = circuit(&drawn);
        prop_assert_eq!(&once, &circuit(&drawn));
        let (height, boxes) = boxes(&once);
        for [left, right, top, bottom] in boxes {
            prop_assert!(left >= 0.0 && right <= WIDTH && top >= 0.0 && bottom <= height, "{left} {right} {top} {bottom} in {height}");
        }
    }

    #[test]
    fn no_conductor_runs_through_a_point_that_it_is_not_joined_to(drawn in any_circuit()) {
        let layout = Layout::of(&drawn);
        for route in route::routes(&drawn, &layout) {
            for index in (0..drawn.points.len()).filter(|index| ![route.piece.from, route.piece.to].contains(index)) {
                let (x, y) = layout.at(index).expect("a point");
                for leg in route.corners().windows(2) {
                    let between = |one: f64, other: f64, at: f64| one.min(other) - 0.5 <= at && at <= one.max(other) + 0.5;
                    let through = between(leg[0].0, leg[1].0, x) && between(leg[0].1, leg[1].1, y);
                    prop_assert!(!through, "piece {} runs through point {index}", route.index);
                }
            }
        }
    }
}

#[test]
fn the_live_loop_is_under_the_conductors_and_closes() {
    let drawing = circuit(&bridged());
    let last_live = drawing.rfind("class=\"live\"").expect("a live loop");
    assert!(last_live < drawing.find("class=\"wire\"").expect("a conductor"));
    let mut ends: Vec<String> = Vec::new();
    for rest in drawing.split("class=\"live\" d=\"M").skip(1) {
        let corners: Vec<&str> = rest.split('"').next().unwrap_or_default().split('L').collect();
        ends.extend([corners[0], corners[corners.len() - 1]].map(str::to_owned));
    }
    ends.sort();
    assert!(ends.len() == 8 && ends.chunks(2).all(|pair| pair[0] == pair[1]), "each end meets another: {ends:?}");
}

#[test]
fn b_is_left_c_is_right_tip_above_tester_below() {
    let layout = Layout::of(&bridged());
    let at = |index| layout.at(index).expect("a point");
    assert!(at(0).0 < at(3).0 && at(0).1 < at(1).1 && at(1).1 < at(2).1);
    assert!((at(1).1 - at(4).1).abs() < 1e-9, "a bridge is level");
}

#[test]
fn only_the_fault_has_an_arrow_and_only_where_three_meet_there_is_a_dot() {
    let drawing = circuit(&bridged());
    assert_eq!(drawing.matches("class=\"flash\"").count(), 1);
    assert_eq!(drawing.matches(">fault<").count(), 1);
    assert_eq!(drawing.matches("class=\"node\"").count(), 2);
    let sound = two_ways(bridged().pieces.into_iter().take(6).collect());
    assert_eq!(circuit(&sound).matches("class=\"flash\"").count(), 0);
    assert_eq!(circuit(&sound).matches("class=\"node\"").count(), 0);
}

#[test]
fn a_second_piece_between_the_same_points_gets_a_lane_of_its_own() {
    let mut drawn = bridged();
    drawn.pieces.push(piece(0, 3, Kind::Resistor));
    let layout = Layout::of(&drawn);
    assert!(matches!(layout.ways.get(&0), Some(Way::Across(_))));
    assert!(matches!(layout.ways.get(&7), Some(Way::Lane(_))));
}
