//! What people write is read, kept with its digits, and shown in either system.

use coquille::reckoning::quantity::{
    Bound, Decimal, Dimension, Expect, Figure, Flaw, Minutes, Quantity, Range, Rounding, System, Tolerance,
    Uncertainty, Unit,
};

/// A value with any unit.
fn value(text: &str) -> Quantity {
    Quantity::parse(text, Expect::ANY).unwrap_or_else(|refused| panic!("{text}: {refused:?}"))
}

/// What is shown, with plain spaces so that tests can be typed.
fn metric(text: &str) -> String {
    value(text).show(System::Metric).replace('\u{a0}', " ")
}

fn imperial(text: &str) -> String {
    value(text).show(System::Imperial).replace('\u{a0}', " ")
}

/// What is wrong with a text, and the part of it that is pointed at.
fn flaw(text: &str, expect: Expect) -> (Flaw, &str) {
    let refused = Bound::parse(text, expect).expect_err(text);
    (refused.flaw, &text[refused.at])
}

#[test]
fn a_unit_may_be_spelled_in_the_trades_ways() {
    let same = [
        ("N·m", "3 N·m|3N·m|3 Nm|3 N.m|3 N m|3 N-m|3 N⋅m|3\u{a0}N·m|3 newton metres"),
        ("cN·m", "3 cN·m|3 cNm|3 cN.m|3 N·cm|3 Ncm"),
        ("lbf·in", "3 lbf·in|3 in·lbf|3 in-lb|3 in lb|3 inlb|3 lb-in|3 inch-pounds|3 in.lbs"),
        ("lbf·ft", "3 ft·lbf|3 lbf·ft|3 ft-lb|3 lb·ft|3 foot pounds"),
        ("kgf·cm", "3 kgf·cm|3 kgf.cm|3 kg·cm|3 kgfcm"),
        ("Ω", "3 Ω|3 \u{2126}|3 ohm|3 ohms|3 Ohms|3Ω"),
        ("mΩ", "3 mΩ|3 mohm|3 milliohms"),
        ("kΩ", "3 kΩ|3 kohm|3 KOHM"),
        ("MΩ", "3 MΩ|3 Mohm|3 megohms"),
        ("g", "3 g|3 grams"),
        ("lb", "3 lb|3 lbs|3 pounds"),
        ("in", "3 in|3 inches|3 \"|3\""),
        ("°C", "3 °C|3 ℃|3 degrees C"),
        ("min", "3 min|3 minutes|3 Minutes|3 mins"),
        ("d", "3 d|3 days"),
        ("%", "3 %|3%|3 percent"),
        ("MPa", "3 MPa|3 N/mm²"),
    ];
    for (symbol, spellings) in same {
        for spelling in spellings.split('|') {
            assert_eq!(value(spelling).unit.symbol(), symbol, "{spelling}");
        }
    }
}

#[test]
fn a_spelling_that_would_be_two_units_but_for_its_case_keeps_its_case() {
    for unclear in ["MOHM", "mOhm"] {
        assert_ne!(Unit::named(unclear), Ok(Unit::Megohm), "{unclear}");
        assert!(Unit::named(unclear).is_err(), "{unclear}");
    }
}

#[test]
fn every_symbol_is_read_as_its_own_unit() {
    for unit in Unit::ALL {
        assert_eq!(Unit::named(unit.symbol()), Ok(unit));
    }
}

#[test]
fn digits_are_kept_as_written() {
    for digits in ["3.10", "3.1", "0.50", "0", "0.0", "12", "0.05", "100"] {
        assert_eq!(value(&format!("{digits} mm")).number.to_string(), digits);
    }
    assert_eq!(value("-20 °C").number.to_string(), "−20");
    assert_eq!(value("−20 °C").number.plain(), "-20");
}

#[test]
fn a_torque_is_shown_in_the_preferred_unit_with_the_other_in_brackets() {
    assert_eq!(value("3 N·m").show(System::Metric), "3\u{a0}N·m (27\u{a0}lbf·in)");
    assert_eq!(imperial("3 N·m"), "27 lbf·in (3 N·m)");
    assert_eq!(imperial("27 in-lb"), "27 lbf·in (3.1 N·m)");
    assert_eq!(metric("27 in-lb"), "3.1 N·m (27 lbf·in)");
    assert_eq!(metric("5.0 kgf·cm"), "0.490 N·m (5.0 kgf·cm)");
    assert_eq!(imperial("5.0 kgf·cm"), "4.34 lbf·in (5.0 kgf·cm)");
}

#[test]
fn what_is_the_same_everywhere_has_no_brackets() {
    for (written, shown) in
        [("2.0 ohms", "2.0 Ω"), ("12 V", "12 V"), ("10%", "10 %"), ("45 min", "45 min"), ("8 h", "8 h")]
    {
        assert_eq!((metric(written), imperial(written)), (shown.to_owned(), shown.to_owned()));
    }
    assert_eq!(metric("2 d"), "2 days");
    assert_eq!(metric("1 day"), "1 day");
}

#[test]
fn a_conversion_says_neither_more_nor_less_than_what_was_written() {
    let to = |text, unit| value(text).converted(unit, Rounding::Nearest).unwrap().number.to_string();
    // NIST SP 811 (2008), B.7.2: 36 ft is 11.0 m.
    assert_eq!(to("36 ft", Unit::Metre), "11.0");
    // NIST LC 1137, metric style guide: 36 in is 91 cm and 40.1 in is 101.9 cm.
    assert_eq!(to("36 in", Unit::Centimetre), "91");
    assert_eq!(to("40.1 in", Unit::Centimetre), "101.9");
    assert_eq!(to("1.0 in", Unit::Millimetre), "25");
    assert_eq!(to("5.0 lb", Unit::Kilogram), "2.27");
    assert_eq!(to("500 g", Unit::Ounce), "17.64");
    assert_eq!(to("20 °C", Unit::Fahrenheit), "68");
    assert_eq!(to("-40 °F", Unit::Celsius), "−40");
    assert_eq!(to("0 N·m", Unit::PoundInch), "0");
}

#[test]
fn half_way_goes_to_the_even_digit() {
    let cut = |exact: Quantity, places| {
        Decimal::to_places(exact.number.exact(), places, Rounding::Nearest).unwrap().to_string()
    };
    // NIST SP 811 (2008), B.7.1, the example quoted from memory: 6.974 950 5 to seven digits is 6.974 950.
    assert_eq!(cut(value("6.9749505 mm"), 6), "6.974950");
    assert_eq!(cut(value("6.9749515 mm"), 6), "6.974952");
    assert_eq!(cut(value("-0.5 mm"), 0), "0");
    assert_eq!(cut(value("-1.5 mm"), 0), "−2");
    assert_eq!(Decimal::to_digits(value("9.96 mm").number.exact(), 2, Rounding::Nearest).unwrap().to_string(), "10");
}

#[test]
fn ranges_are_read_in_all_their_forms() {
    let read = |text| Range::parse(text, Expect::or_bare(Unit::Ohm)).unwrap().to_string().replace('\u{a0}', " ");
    assert_eq!(read("0.15 .. 0.25 .. 0.4"), "0.15 to 0.4 Ω, usually 0.25 Ω");
    for same in ["0.1 .. 2", "0.1..2 Ω", "0.1 to 2 ohm", "0.1 – 2 Ω", "0.1-2 Ω", "0.1 Ω - 2 Ω", "0.1 Ω … 2"] {
        assert_eq!(read(same), "0.1 to 2 Ω", "{same}");
    }
    assert_eq!(read("900 mΩ .. 1.2 Ω"), "900 mΩ to 1.2 Ω");
    assert_eq!(read("0.25"), "0.25 Ω");
    let torque = Range::parse("5-9 in-lb", Expect::of(Dimension::Torque)).unwrap();
    assert_eq!(torque.to_string(), "5 to 9\u{a0}lbf·in");
    let bend = Range::parse("5.5 to 9.5 cm", Expect::of(Dimension::Length)).unwrap();
    assert_eq!(bend.show(System::Metric).replace('\u{a0}', " "), "5.5 to 9.5 cm (2.17 to 3.74 in)");
    let cold = Range::parse("-5 to 30 °C", Expect::ANY).unwrap();
    assert_eq!(cold.show(System::Imperial).replace('\u{a0}', " "), "23 to 86 °F (−5 to 30 °C)");
}

#[test]
fn tolerances_are_read_and_shown() {
    let read = |text| Figure::parse(text, Expect::ANY).unwrap();
    let metric = |text| read(text).show(System::Metric).replace('\u{a0}', " ");
    assert_eq!(metric("3 N·m ± 10 %"), "3 N·m ± 10 % (27 lbf·in ± 10 %)");
    assert_eq!(metric("8 mm +/- 0.05"), "8 mm ± 0.05 mm (0.3150 in ± 0.0020 in)");
    assert_eq!(metric("14 ± 1 ms"), "14 ms ± 1 ms");
    assert_eq!(metric("20 °C ± 5 °C"), "20 °C ± 5 °C (68 °F ± 9 °F)");
    let share = Tolerance::parse("± 10 %", Expect::ANY).unwrap();
    assert_eq!(share, Tolerance::Share(Decimal::new(10, 0)));
    let parts = |text| Uncertainty::parse(text, Expect::or_bare(Unit::Ohm)).unwrap().parts.len();
    assert_eq!([parts("± 1 % ± 0.1 Ω"), parts("1 % + 0.1"), parts("0.1 Ω"), parts("±0.5%")], [2, 2, 1, 1]);
}

#[test]
fn limits_are_read_in_all_their_forms() {
    let read = |text| Bound::parse(text, Expect::or_bare(Unit::Ohm)).unwrap().to_string().replace('\u{a0}', " ");
    for same in [
        "≤ 2 Ω",
        "<= 2",
        "at most 2 Ω",
        "At most 2 ohms",
        "no more than 2",
        "max. 2 Ω",
        "2 Ω max",
        "2 Ω at most",
        "≤2Ω",
    ] {
        assert_eq!(read(same), "at most 2 Ω", "{same}");
    }
    for same in ["≥ 2 Ω", ">= 2", "at least 2 Ω", "2 or more", "2 Ω or more"] {
        assert_eq!(read(same), "at least 2 Ω", "{same}");
    }
    assert_eq!([read("< 2"), read("less than 2 Ω")], ["less than 2 Ω"; 2]);
    assert_eq!([read("> 2"), read("more than 2 Ω"), read("over 2")], ["more than 2 Ω"; 3]);
    assert_eq!([read("between 1 and 2 Ω"), read("1 .. 2 Ω"), read("1 to 2")], ["1 to 2 Ω"; 3]);
    assert_eq!([read("2 ± 5 %"), read("2 Ω +/- 5 %")], ["2 Ω ± 5 %"; 2]);
}

#[test]
fn the_other_system_never_allows_more_than_the_limit() {
    let shown = |text| Bound::parse(text, Expect::ANY).unwrap().show(System::Metric).replace('\u{a0}', " ");
    // 17.637 oz: the nearest figure would be 17.64 oz, and that is too heavy.
    assert_eq!(shown("less than 500 g"), "500 g (17.63 oz)");
    // 0.9449 in is 24 mm.
    assert_eq!(shown("at least 24 mm"), "24 mm (0.95 in)");
    assert_eq!(shown("5.5 to 9.5 cm"), "5.5 to 9.5 cm (2.17 to 3.74 in)");
}

#[test]
fn minutes_are_whole_tenths() {
    let tenths = |text: &str| Minutes::parse(text).unwrap().tenths;
    assert_eq!(
        ["2", "2 min", "30 s", "1.5 h", "2 days", "6 s", "2.4", "0"].map(tenths),
        [20, 20, 5, 900, 28_800, 1, 24, 0]
    );
    for wrong in ["7 s", "-1", "0.05", "900000000000"] {
        assert_eq!(Minutes::parse(wrong).expect_err(wrong).flaw, Flaw::NotMinutes);
    }
}

#[test]
fn what_cannot_be_read_is_pointed_at() {
    let ohms = Expect::of(Dimension::Resistance);
    let unknown = |nearest| Flaw::UnknownUnit { nearest };
    assert_eq!(flaw("at most 2 ohmz", ohms), (unknown(Some("Ω")), "ohmz"));
    assert_eq!(flaw("at most 2 NM", Expect::ANY), (unknown(Some("N·m")), "NM"));
    assert_eq!(flaw("at most 2 lbfin·ft·s", Expect::ANY).1, "lbfin·ft·s");
    assert_eq!(flaw("at most 2 furlongs per fortnight", Expect::ANY), (unknown(None), "furlongs per fortnight"));
    assert_eq!(flaw("at most two", ohms), (Flaw::NoNumber, "two"));
    assert_eq!(flaw("≤ 0,5 Ω", ohms), (Flaw::Comma, "0,"));
    assert_eq!(flaw("≤ 1.2.3 Ω", ohms), (Flaw::BadNumber, "1.2.3 Ω"));
    assert_eq!(flaw("≤ 1234567890123 Ω", ohms), (Flaw::TooManyDigits, "1234567890123"));
    assert_eq!(flaw("≤ 2", ohms), (Flaw::NoUnit, "2"));
    let wrong = Flaw::WrongDimension { found: Dimension::Mass, wanted: Dimension::Resistance };
    assert_eq!(flaw("≤ 2 g", ohms), (wrong, "g"));
    assert_eq!(flaw(" 9 to 5 Ω ", ohms), (Flaw::NotRising, "9 to 5 Ω"));
    assert_eq!(flaw("1 .. 2 .. 3 Ω", ohms), (Flaw::TooManyFigures, "1 .. 2 .. 3 Ω"));
    assert_eq!(flaw("2 Ω", ohms), (Flaw::NoDirection, "2 Ω"));
    assert_eq!(flaw("2 Ω ± -1 Ω", ohms), (Flaw::BadTolerance, "-1 Ω"));
    assert_eq!(flaw("", ohms), (Flaw::NoNumber, ""));
}

#[test]
fn every_flaw_says_what_to_write_instead() {
    let (refused, _) = flaw("≤ 2 Nn·m", Expect::ANY);
    assert_eq!(
        (refused.to_string(), refused.help()),
        ("unknown unit".to_owned(), "the nearest unit is `N·m`".to_owned())
    );
    let (refused, _) = flaw("≤ 2 g", Expect::of(Dimension::Resistance));
    assert_eq!(refused.help(), "a resistance is written in Ω, mΩ, kΩ, MΩ");
}
