//! Torque against proof load: the tables agree with their formulas, and the verdicts with worked figures.

use coquille::reckoning::quantity::{
    Condition, Decimal, Expect, Figure, Joint, Material, PropertyClass, Thread, TorqueVerdict, Unit,
};

fn joint(thread: &str, class: &str, condition: Condition) -> Joint {
    let material = PropertyClass::named(class).map_or(Material::Other, Material::Class);
    Joint { thread: Thread::named(thread).expect("written rightly in the test"), material, condition }
}

fn judged(joint: Joint, torque: &str) -> TorqueVerdict {
    joint
        .judge(Figure::parse(torque, Expect::ANY).expect("written rightly in the test"))
        .expect("written rightly in the test")
}

#[test]
fn printed_stress_areas_agree_with_the_formula() {
    // ISO 898-1: A = π/4·(d − 0.938194·P)², printed to three digits.
    for thread in Thread::ALL {
        let (d, pitch, printed) = (thread.diameter.exact().nearly(), thread.pitch.exact().nearly(), thread.stress_area);
        let by_formula = std::f64::consts::FRAC_PI_4 * (d - 0.938_194 * pitch) * (d - 0.938_194 * pitch);
        let unit_of_last_digit = [1.0, 0.1, 0.01][printed.places() as usize];
        assert!(
            (by_formula - printed.exact().nearly()).abs() <= unit_of_last_digit / 2.0,
            "{}: {by_formula}",
            thread.name
        );
    }
}

#[test]
fn ceilings_agree_with_figures_worked_by_hand() {
    // T = K·F·d with F = 0.75 × proof load and K = 0.20, worked out apart from this program; N·m to two or three digits.
    let by_hand = [
        ("4.8", "M2", 0.19),
        ("4.8", "M2.5", 0.39),
        ("4.8", "M3", 0.70),
        ("4.8", "M4", 1.6),
        ("4.8", "M5", 3.3),
        ("4.8", "M6", 5.6),
        ("4.8", "M8", 13.6),
        ("8.8", "M3", 1.3),
        ("8.8", "M4", 3.1),
        ("8.8", "M5", 6.2),
        ("8.8", "M6", 10.5),
        ("8.8", "M8", 25.5),
    ];
    for (class, thread, expected) in by_hand {
        let (class, thread) = (PropertyClass::named(class).unwrap(), Thread::named(thread).unwrap());
        let ceiling = thread.ceiling(class, Decimal::new(20, 2)).unwrap().nearly();
        assert!((ceiling / expected - 1.0_f64).abs() < 0.03, "{} {}: {ceiling}", thread.name, class.name);
    }
}

/// An inch thread, which the table of threads leaves out: diameter in hundredths of a thousandth of an inch, area in ten-thousandths of in².
fn inch_thread(name: &'static str, inch: (i64, u8), square_inches: f64) -> Thread {
    let millimetres = Decimal::new(inch.0 * 254, inch.1 + 1);
    // 1 in² = 645.16 mm², to a hundredth of a mm².
    #[expect(clippy::cast_possible_truncation, reason = "a stress area in mm² has few digits")]
    let area = Decimal::new((square_inches * 64_516.0).round() as i64, 2);
    Thread { name, diameter: millimetres, pitch: Decimal::new(1, 0), stress_area: area }
}

#[test]
fn the_pull_of_a_torque_is_that_of_a_textbooks_worked_example() {
    // Shigley, Mechanical Engineering Design, 9th edition, example 8-3 (cited from memory): a 3/4 in-16 UNF bolt of SAE grade 5 is to
    // be tightened to 25 kip; with K = 0.2 it takes 0.2 × 25 × 10³ × 0.75 = 3750 lbf·in. Stress area 0.373 in², proof strength 85 kpsi.
    let bolt = Joint {
        thread: inch_thread("3/4-16", (75, 2), 0.373),
        material: Material::Class(PropertyClass { name: "SAE 5", proof_stress: Decimal::new(5861, 1) }),
        condition: Condition::NotStated,
    };
    let TorqueVerdict::Bears(load) = judged(bolt, "3750 in·lbf") else { panic!("25 kip of 31.7 are borne") };
    let kip = load.usual.number.exact().nearly() / 4_448.221_615;
    assert!((kip / 25.0 - 1.0).abs() < 0.005, "{kip} kip");
    // 25 kip / (85 kpsi × 0.373 in²) = 78.85 in 100, worked here.
    let share = load.usual_share.exact().nearly();
    assert!((share - 78.85).abs() < 0.06, "{share}");
}

#[test]
fn three_quarters_of_what_a_bolt_bears_takes_the_torque_of_a_published_table() {
    // A conveyor maker's safety guide, "General Bolt Tightening Torque", page 10: T = K·D·P with P three quarters of the yield
    // strength (69 000 psi for SAE grade 5, 98 000 psi for grade 8), plain finish K = 0.20, in ft·lb to the full one.
    let table = [
        ("1/4-20", (25, 2), 0.0318, 9.0, 13.0),
        ("3/8-16", (375, 3), 0.0775, 33.0, 47.0),
        ("1/2-13", (5, 1), 0.1419, 82.0, 116.0),
        ("5/8-14", (625, 3), 0.2560, 184.0, 261.0),
        ("3/4-16", (75, 2), 0.3730, 322.0, 457.0),
    ];
    for (name, inch, area, grade_5, grade_8) in table {
        for (three_quarters_in_psi, printed) in [(69_000.0_f64, grade_5), (98_000.0, grade_8)] {
            #[expect(clippy::cast_possible_truncation, reason = "a strength in MPa has few digits")]
            let strength = Decimal::new((three_quarters_in_psi / 0.75 * 0.689_475_729).round() as i64, 2);
            let class = PropertyClass { name: "SAE", proof_stress: strength };
            let torque = inch_thread(name, inch, area).ceiling(class, Decimal::new(20, 2)).unwrap().nearly();
            let foot_pounds = torque / 1.355_817_948;
            assert!((foot_pounds - printed).abs() < 1.0, "{name}: {foot_pounds}, printed {printed}");
        }
    }
}

#[test]
fn a_thread_may_be_written_with_its_pitch_but_not_with_another_one() {
    let named = |text| Thread::named(text).map(|thread| thread.name);
    for (text, name) in [
        ("M6", "M6"),
        ("m6 x 1", "M6"),
        ("M6×1.0", "M6"),
        ("3.5 x 0.60", "M3.5"),
        ("4.0 × 0.70", "M4"),
        ("M1.6", "M1.6"),
    ] {
        assert_eq!(named(text), Some(name), "{text}");
    }
    for unknown in ["M6x0.75", "M7", "", "M", "1/4-20", "M6x1x1", "M6 mm", "Mé", "x"] {
        assert_eq!(named(unknown), None, "{unknown}");
    }
}

#[test]
fn a_torque_that_surely_overloads_is_an_error_with_its_numbers() {
    // By hand: M3 of class 4.8 bears 5.03 × 310 = 1559 N. 1.5 N·m at K 0.25 pulls 1.5/(0.25 × 0.003) = 2000 N: 128 %.
    let TorqueVerdict::OverProof(load) = judged(joint("M3", "4.8", Condition::Dry), "1.5 N·m") else {
        panic!("not over")
    };
    assert_eq!(
        (load.least.number.plain(), load.proof.number.plain(), load.least_share.plain()),
        ("2000".into(), "1560".into(), "128".into())
    );
    assert_eq!(load.proof.unit, Unit::Newton);
}

#[test]
fn a_torque_near_the_proof_load_is_an_advice_and_one_well_under_is_none() {
    // M6 of class 8.8 bears 20.1 × 580 = 11 658 N; at the usual K of dry steel, 0.225, that is 15.74 N·m, and 90 % is 14.16.
    let m6 = joint("M6", "8.8", Condition::Dry);
    assert!(matches!(judged(m6, "14.1 N·m"), TorqueVerdict::Bears(_)));
    assert!(matches!(judged(m6, "14.2 N·m"), TorqueVerdict::NearProof(_)));
    assert!(matches!(judged(m6, "13 N·m ± 10 %"), TorqueVerdict::NearProof(_)), "the tolerance may take it there");
    // At the highest K, 0.25, the proof load is 17.487 N·m.
    assert!(matches!(judged(m6, "17.487 N·m"), TorqueVerdict::NearProof(_)));
    assert!(matches!(judged(m6, "17.488 N·m"), TorqueVerdict::OverProof(_)));
    assert!(matches!(judged(m6, "155 in-lb"), TorqueVerdict::OverProof(_)), "17.51 N·m");
}

#[test]
fn oil_lowers_what_a_screw_bears() {
    let torque = "15 N·m";
    assert!(matches!(judged(joint("M6", "8.8", Condition::Dry), torque), TorqueVerdict::NearProof(_)));
    assert!(matches!(judged(joint("M6", "8.8", Condition::Oiled), torque), TorqueVerdict::OverProof(_)));
    assert!(matches!(judged(joint("M6", "8.8", Condition::NotStated), torque), TorqueVerdict::NearProof(_)));
}

#[test]
fn nothing_is_said_of_other_materials_or_of_what_is_no_torque() {
    assert_eq!(judged(joint("M6", "A2-70", Condition::Dry), "500 N·m"), TorqueVerdict::NotJudged);
    let length = Figure::parse("3 mm", Expect::ANY).unwrap();
    assert!(joint("M6", "8.8", Condition::Dry).judge(length).is_err());
}

#[test]
fn the_highest_torque_that_passes_is_that_of_nine_tenths_of_the_proof_load() {
    // By hand: M6 of class 4.8 bears 20.1 × 310 = 6231 N. Nine tenths at K 0.225: 0.9 × 6231 × 0.225 × 0.006 = 7.571 N·m;
    // with ± 10 % 7.571/1.1 = 6.88; oiled, K 0.175: 5.888.
    let highest = |condition, torque: &str| {
        let figure = Figure::parse(torque, Expect::ANY).expect("written rightly in the test");
        joint("M6", "4.8", condition).highest_that_passes(figure).map(|most| most.to_string())
    };
    assert_eq!(highest(Condition::Dry, "30 N·m").as_deref(), Some("7.5\u{a0}N·m"));
    assert_eq!(highest(Condition::Dry, "30 N·m ± 10 %").as_deref(), Some("6.8\u{a0}N·m"));
    assert_eq!(highest(Condition::Oiled, "30 N·m").as_deref(), Some("5.8\u{a0}N·m"));
    assert_eq!(highest(Condition::Dry, "30 N·m ± 8 N·m"), None, "so wide that nothing passes");
}
