//! The foil on the bench of `foil-on-the-bench.md`, put together by hand: the worked example of the circuit tests.

use coquille::reckoning::circuit::{
    AtRest, Change, Condition, Fault, Measure, Network, Ohms, Pair, PointId, Reading, Steadiness, Tester, Threshold,
    Way, While, Wiring,
};

const POINTS: [&str; 13] = ["B", "C", "A", "Bs", "Cs", "wb", "wm", "cup", "tip", "barrel", "blade", "guard", "jacket"];

/// Name, from, to, least, usual and most ohms.
const PIECES: [(&str, &str, &str, f64, f64, f64); 10] = [
    ("screw", "Bs", "wb", 0.005, 0.02, 0.1),
    ("wire_lo", "wb", "wm", 0.15, 0.25, 0.4),
    ("wire_up", "wm", "cup", 0.15, 0.25, 0.4),
    ("spring", "cup", "tip", 0.02, 0.1, 0.25),
    ("barrel_blade", "barrel", "blade", 0.005, 0.02, 0.1),
    ("blade_guard", "blade", "guard", 0.01, 0.05, 0.15),
    ("guard_C", "guard", "Cs", 0.01, 0.03, 0.15),
    ("plugB", "B", "Bs", 0.02, 0.05, 0.1),
    ("plugC", "C", "Cs", 0.02, 0.05, 0.1),
    ("leadA", "A", "jacket", 0.05, 0.2, 1.0),
];

const TOUCHINGS: [(&str, &str, &str, f64, f64, f64, AtRest); 4] = [
    ("tip_barrel", "tip", "barrel", 0.02, 0.1, 0.25, AtRest::Touching),
    ("tip_jacket", "tip", "jacket", 0.05, 0.5, 3.0, AtRest::Apart),
    ("blade_jacket", "blade", "jacket", 0.1, 0.5, 4.0, AtRest::Apart),
    ("tip_guard", "tip", "guard", 0.05, 0.5, 5.0, AtRest::Apart),
];

/// Name, what meets, what parts.
const POSITIONS: [(&str, &[&str], &[&str]); 4] = [
    ("pressed", &[], &["tip_barrel"]),
    ("pressed on A jacket", &["tip_jacket"], &["tip_barrel"]),
    ("blade on A jacket", &["blade_jacket"], &[]),
    ("pressed on own guard", &["tip_guard"], &["tip_barrel"]),
];

/// The foil with its faults and readings, named as in the tables.
pub fn foil_on_the_bench() -> Network {
    let mut foil = Network::new();
    for name in POINTS {
        foil.point(name).unwrap();
    }
    for (name, from, to, least, usual, most) in PIECES {
        foil.piece(name, wiring(&foil, from, to, least, usual, most)).unwrap();
    }
    for (name, from, to, least, usual, most, at_rest) in TOUCHINGS {
        foil.touching(name, wiring(&foil, from, to, least, usual, most), at_rest).unwrap();
    }
    for (name, meets, parts) in POSITIONS {
        let found = |names: &[&str]| names.iter().map(|name| foil.find_touching(name).unwrap()).collect::<Vec<_>>();
        foil.position(name, &found(meets), &found(parts)).unwrap();
    }
    add_faults(&mut foil);
    add_readings(&mut foil);
    foil
}

fn add_faults(foil: &mut Network) {
    let piece = |name: &str| foil.find_piece(name).unwrap();
    let touching = |name: &str| foil.find_touching(name).unwrap();
    let bare = |one: &str, other: &str| {
        Change::Touches(point(foil, one), point(foil, other), Ohms::range(0.02, 0.2, 2.0).unwrap())
    };
    let more = |name: &str, least, usual, most| Change::MoreOhms(piece(name), Ohms::range(least, usual, most).unwrap());
    let tip_barrel = touching("tip_barrel");
    let leak = Change::Touches(point(foil, "wm"), point(foil, "blade"), Ohms::range(60.0, 150.0, 800.0).unwrap());
    let on_jacket = Change::Touches(point(foil, "barrel"), point(foil, "jacket"), Ohms::range(0.05, 0.5, 3.0).unwrap());
    let dirt = Change::MoreOhmsTouching(tip_barrel, Ohms::range(5.0, 30.0, 300.0).unwrap());
    let crossed =
        Change::ChangedOver { pieces: [piece("plugB"), piece("plugC")], at: [point(foil, "Bs"), point(foil, "Cs")] };
    let steady = [
        ("no tip", vec![Change::Lost(piece("spring")), Change::LostTouching(tip_barrel)]),
        ("spring missing", vec![Change::Lost(piece("spring"))]),
        ("wire broken in blade", vec![Change::Lost(piece("wire_up"))]),
        ("wire broken at guard", vec![Change::Lost(piece("screw"))]),
        ("C off guard", vec![Change::Lost(piece("guard_C"))]),
        ("wire worn at barrel", vec![bare("cup", "barrel")]),
        ("wire worn in blade", vec![bare("wm", "blade")]),
        ("wire pinched at guard, touching", vec![bare("wb", "guard")]),
        ("weak leak wire to blade", vec![leak]),
        ("strand at connector", vec![bare("Bs", "Cs")]),
        ("tip stuck down", vec![Change::NeverTouches(tip_barrel)]),
        ("tip will not open", vec![Change::AlwaysTouches(tip_barrel)]),
        ("over the limit", vec![more("wire_lo", 3.0, 3.2, 4.0)]),
        ("cord reversed", vec![crossed]),
    ];
    let comes_and_goes = [
        ("dirty tip", dirt),
        ("tired spring", more("spring", 3.0, 15.0, 100.0)),
        ("barrel loose", Change::Lost(piece("barrel_blade"))),
        ("guard corroded", more("blade_guard", 3.0, 20.0, 500.0)),
        ("wire pinched, breaking", Change::Lost(piece("wire_lo"))),
        ("wire pinched, now and then touching", bare("wb", "guard")),
    ];
    let bare_barrel = Some(While::Touching(touching("tip_jacket")));
    for (name, changes) in steady {
        foil.fault(name, Fault { changes, only_while: None, steadiness: Steadiness::Steady }).unwrap();
    }
    for (name, change) in comes_and_goes {
        let fault = Fault { changes: vec![change], only_while: None, steadiness: Steadiness::NowAndThen };
        foil.fault(name, fault).unwrap();
    }
    let fault = Fault { changes: vec![on_jacket], only_while: bare_barrel, steadiness: Steadiness::Steady };
    foil.fault("barrel not insulated", fault).unwrap();
}

fn add_readings(foil: &mut Network) {
    let [b, c, a] = ["B", "C", "A"].map(|name| point(foil, name));
    let pins = Pair { one: b, other: c };
    let lamp = |first, second| Reading::Lamp { between: pins, lit: Threshold::new(Way::Under, first, second).unwrap() };
    // 3 V, 0.5 ohm inside, 12 ohm filaments; lit from 60 % of 0.24 A, dark up to 25 %.
    let tester = Tester {
        battery: b,
        volts: 3.0,
        inside: 0.5,
        lamps: vec![(a, 12.0), (c, 12.0)],
        lit_from: 0.144,
        dark_to: 0.06,
    };
    let ohms = |one: PointId, other: PointId| Reading::Ohmmeter {
        measure: Measure::Between(Pair { one, other }),
        at_most: Some(2.0),
        open_from: 2e6,
    };
    let [tip, cup, barrel, blade] = ["tip", "cup", "barrel", "blade"].map(|name| point(foil, name));
    let readings = [
        ("lamp B-C", lamp(8.133, 37.3)),
        ("led B-C", lamp(1030.0, 21930.0)),
        ("buzzer B-C", lamp(20.0, 100.0)),
        ("two-lamp A", Reading::TesterLamp { tester: tester.clone(), lamp: 0 }),
        ("two-lamp C", Reading::TesterLamp { tester, lamp: 1 }),
        ("ohm B-C", ohms(b, c)),
        ("ohm B-tip", ohms(b, tip)),
        ("ohm B-cup", ohms(b, cup)),
        ("ohm C-barrel", ohms(c, barrel)),
        ("ohm C-blade", ohms(c, blade)),
    ];
    for (name, reading) in readings {
        foil.reading(name, reading).unwrap();
    }
    // A condition over facts is tested in its own place; this only shows that one is refused that means nothing.
    let nothing = Reading::ApparatusLamp { facts: Vec::new(), lit: Condition::Fact(0) };
    assert!(foil.reading("nothing", nothing).is_err());
}

fn point(foil: &Network, name: &str) -> PointId {
    foil.find_point(name).unwrap()
}

fn wiring(foil: &Network, from: &str, to: &str, least: f64, usual: f64, most: f64) -> Wiring {
    Wiring { from: point(foil, from), to: point(foil, to), ohms: Ohms::range(least, usual, most).unwrap() }
}
