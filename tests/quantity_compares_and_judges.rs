//! Factors are the published ones, comparisons are exact, and a reading is judged with what its instrument may be off.

use coquille::reckoning::quantity::{
    Bound, Expect, Incomparable, Quantity, Ratio, Reading, Uncertainty, Unit, Verdict,
};
use std::cmp::Ordering;

fn value(text: &str) -> Quantity {
    Quantity::parse(text, Expect::ANY).unwrap_or_else(|refused| panic!("{text}: {refused:?}"))
}

fn judged(limit: &str, shown: &str, uncertainty: &str, leads: &str) -> Verdict {
    let limit = Bound::parse(limit, Expect::ANY).expect("written rightly in the test");
    let uncertainty = match uncertainty {
        "" => Uncertainty::default(),
        stated => Uncertainty::parse(stated, Expect::ANY).expect("written rightly in the test"),
    };
    let leads = (!leads.is_empty()).then(|| value(leads));
    limit.judge(&Reading { shown: value(shown), uncertainty, leads }).expect("written rightly in the test")
}

#[test]
fn factors_agree_with_nist_sp_811() {
    // NIST SP 811 (2008), B.8, to the seven digits of its table, typed from memory; * marks those that it prints as exact.
    let printed = [
        (Unit::PoundForce, Unit::Newton, 4.448_222),
        (Unit::PoundInch, Unit::NewtonMetre, 0.112_984_8),
        (Unit::PoundFoot, Unit::NewtonMetre, 1.355_818),
        (Unit::OunceInch, Unit::NewtonMetre, 0.007_061_552),
        (Unit::KilopondMetre, Unit::NewtonMetre, 9.806_65), // *
        (Unit::Kilopond, Unit::Newton, 9.806_65),           // *
        (Unit::Ounce, Unit::Gram, 28.349_52),
        (Unit::Pound, Unit::Kilogram, 0.453_592_4),
        (Unit::Inch, Unit::Millimetre, 25.4), // *
        (Unit::Foot, Unit::Metre, 0.304_8),   // *
        (Unit::Hour, Unit::Second, 3600.0),   // *
        (Unit::Day, Unit::Second, 86_400.0),  // *
    ];
    for (from, to, printed) in printed {
        let one = Quantity::new(value("1 g").number, from).nearly_in(to).unwrap();
        assert_eq!(format!("{one:.6e}"), format!("{printed:.6e}"), "1 {}", from.symbol());
    }
}

#[test]
fn factors_are_exact_to_their_last_digit() {
    // From the definitions 1 lb = 0.453 592 37 kg, 9.806 65 m/s², 25.4 mm (NIST SP 811, B.8 and footnotes), multiplied out elsewhere.
    let exact = |text, unit, top, bottom| {
        assert_eq!(value(text).exact_in(unit), Ok(Ratio::new(top, bottom).unwrap()), "{text}")
    };
    exact("1 lbf", Unit::Newton, 44_482_216_152_605, 10_i128.pow(13));
    exact("1 lbf·in", Unit::NewtonMetre, 1_129_848_290_276_167, 10_i128.pow(16));
    exact("1 lbf·ft", Unit::NewtonMetre, 13_558_179_483_314_004, 10_i128.pow(16));
    exact("1 oz", Unit::Gram, 28_349_523_125, 10_i128.pow(9));
    exact("-40 °F", Unit::Celsius, -40, 1);
    exact("98.6 °F", Unit::Celsius, 37, 1);
}

#[test]
fn values_are_compared_exactly_across_units() {
    let compared = |a, b| value(a).compare(value(b)).unwrap();
    assert_eq!(compared("25.4 mm", "1 in"), Ordering::Equal);
    assert_eq!(compared("25.400000001 mm", "1 in"), Ordering::Greater);
    assert_eq!(compared("453.59237 g", "1 lb"), Ordering::Equal);
    assert_eq!(compared("0.1 Ω", "100 mΩ"), Ordering::Equal);
    assert_eq!(compared("37 °C", "98.6 °F"), Ordering::Equal);
    assert_eq!(compared("0.3 V", "300.000001 mV"), Ordering::Less);
    assert!(matches!(value("3 g").compare(value("3 N")), Err(Incomparable::Dimensions(..))));
}

#[test]
fn a_reading_on_the_limit_keeps_to_at_most_and_breaks_less_than() {
    assert_eq!(judged("at most 2 Ω", "2.0 Ω", "", ""), Verdict::Inside);
    assert_eq!(judged("less than 500 g", "500 g", "", ""), Verdict::Outside);
    assert_eq!(judged("at least 7.7 mm", "7.7 mm", "", ""), Verdict::Inside);
    assert_eq!(judged("more than 1.5 mm", "1.5 mm", "", ""), Verdict::Outside);
    assert_eq!(judged("5.5 to 9.5 cm", "55 mm", "", ""), Verdict::Inside);
    assert_eq!(judged("8 mm ± 0.05", "8.06 mm", "", ""), Verdict::Outside);
    assert_eq!(judged("12 V ± 5 %", "11.4 V", "", ""), Verdict::Inside);
}

#[test]
fn a_reading_within_the_instruments_error_of_the_limit_is_too_close_to_call() {
    assert_eq!(judged("at most 2 Ω", "1.8 Ω", "± 0.1 Ω", ""), Verdict::Inside);
    assert_eq!(judged("at most 2 Ω", "1.95 Ω", "± 0.1 Ω", ""), Verdict::TooCloseToCall);
    assert_eq!(judged("at most 2 Ω", "2.1 Ω", "± 0.1 Ω", ""), Verdict::TooCloseToCall);
    assert_eq!(judged("at most 2 Ω", "2.11 Ω", "± 0.1 Ω", ""), Verdict::Outside);
    assert_eq!(judged("less than 500 g", "499 g", "± 1 g", ""), Verdict::TooCloseToCall);
    assert_eq!(judged("less than 500 g", "501 g", "± 1 g", ""), Verdict::Outside);
    assert_eq!(judged("at most 2 Ω", "1.9 Ω", "± 1 % ± 0.1 Ω", ""), Verdict::TooCloseToCall);
    assert_eq!(judged("5.5 to 9.5 cm", "7 cm", "± 3 cm", ""), Verdict::TooCloseToCall);
}

#[test]
fn the_leads_are_taken_off_and_their_error_counts_too() {
    assert_eq!(judged("at most 2 Ω", "2.2 Ω", "", "0.3 Ω"), Verdict::Inside);
    assert_eq!(judged("at most 2 Ω", "2.2 Ω", "", "150 mΩ"), Verdict::Outside);
    // 2.1 − 0.3 = 1.8, ± 0.1 for the reading and ± 0.1 for the leads: just inside.
    assert_eq!(judged("at most 2 Ω", "2.1 Ω", "± 0.1 Ω", "0.3 Ω"), Verdict::Inside);
    assert_eq!(judged("at most 2 Ω", "2.2 Ω", "± 0.1 Ω", "0.3 Ω"), Verdict::TooCloseToCall);
}

#[test]
fn a_reading_of_another_kind_is_no_reading() {
    let limit = Bound::parse("at most 2 Ω", Expect::ANY).unwrap();
    assert!(matches!(limit.judge(&Reading::exact(value("3 V"))), Err(Incomparable::Dimensions(..))));
    let mixed = Reading { leads: Some(value("1 V")), ..Reading::exact(value("3 Ω")) };
    assert!(limit.judge(&mixed).is_err());
}
