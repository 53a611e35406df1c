//! What holds for every value: exact round trips, no more digits than were given, and no text that makes it stumble.

use coquille::reckoning::quantity::{
    Bound, Decimal, Expect, Figure, Minutes, PropertyClass, Quantity, Range, Ratio, Rounding, System, Thread,
    Tolerance, Uncertainty, Unit,
};
use proptest::prelude::*;
use std::io::Write;
use std::process::{Command, Stdio};

/// Any value that can be written.
fn any_value() -> impl Strategy<Value = Quantity> {
    (-999_999_999_999_i64..=999_999_999_999, 0_u8..=9, any_unit())
        .prop_map(|(digits, places, unit)| Quantity::new(Decimal::new(digits, places), unit))
}

/// A value as it occurs at a bench: four digits at most.
fn bench_value() -> impl Strategy<Value = Quantity> {
    (1_i64..=9999, 0_u8..=3, any_unit())
        .prop_map(|(digits, places, unit)| Quantity::new(Decimal::new(digits, places), unit))
}

fn any_unit() -> impl Strategy<Value = Unit> {
    (0..Unit::ALL.len()).prop_map(|at| Unit::ALL[at])
}

/// A value as it occurs at a bench, and a unit that it can be told in.
fn value_and_unit() -> impl Strategy<Value = (Quantity, Unit)> {
    (bench_value(), any::<prop::sample::Index>()).prop_map(|(value, at)| {
        let same = |unit: &Unit| unit.dimension() == value.unit.dimension();
        let units: Vec<Unit> = Unit::ALL.into_iter().filter(same).collect();
        (value, *at.get(&units))
    })
}

/// Pieces of what people write, thrown together.
fn hostile_text() -> impl Strategy<Value = String> {
    let pieces = [
        "±",
        "+/-",
        "..",
        "…",
        "–",
        "-",
        "−",
        "to",
        " ",
        "\u{a0}",
        "1",
        "0.5",
        ".",
        ",",
        "9999999999999",
        "N·m",
        "Ω",
        "\u{2126}",
        "°",
        "é",
        "\u{202e}",
        "≤",
        "<=",
        "at most",
        "between",
        " and ",
        "M",
        "x",
        "×",
        "%",
        "\"",
        "\u{0}",
        "🤺",
        "d",
        "or less",
        "+",
    ];
    let thrown = proptest::collection::vec(0..pieces.len(), 0..12)
        .prop_map(move |at| at.iter().map(|&i| pieces[i]).collect::<String>());
    prop_oneof![thrown, any::<String>()]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_shown_is_read_back_as_written(value in any_value()) {
        prop_assert_eq!(Quantity::parse(&value.to_string(), Expect::ANY), Ok(value));
    }

    #[test]
    fn a_limit_that_is_shown_is_read_back_as_written(value in any_value(), made in 0..4_usize) {
        let limit = [Bound::AtMost, Bound::LessThan, Bound::AtLeast, Bound::MoreThan][made](value);
        prop_assert_eq!(Bound::parse(&limit.to_string(), Expect::ANY), Ok(limit));
    }

    #[test]
    fn there_and_back_is_the_same_value((value, other) in value_and_unit()) {
        let there = value.exact_in(other).unwrap();
        let factor = other.factor().over(value.unit.factor()).unwrap();
        let back = there.minus(other.offset()).unwrap().times(factor).unwrap().plus(value.unit.offset()).unwrap();
        prop_assert_eq!(back, value.number.exact());
    }

    #[test]
    fn a_converted_figure_is_never_ten_times_finer_than_what_was_written((value, other) in value_and_unit()) {
        prop_assume!(other.offset() == value.unit.offset());
        let shown = value.converted(other, Rounding::Nearest).unwrap().number;
        prop_assert!(shown.significant() <= value.number.significant() + 1 || shown.places() == 0);
        // The last digit of each, as a part of the value: 1 over the digits read as a whole number.
        let whole = |number: Decimal| number.exact().times(Ratio::new(10_i128.pow(number.places()), 1).unwrap()).unwrap().top();
        prop_assert!(shown.places() == 0 || whole(shown) <= whole(value.number) * 10, "{shown} for {value}");
    }

    #[test]
    fn a_converted_figure_is_the_nearest_one((value, other) in value_and_unit()) {
        let (exact, shown) = (value.exact_in(other).unwrap(), value.converted(other, Rounding::Nearest).unwrap().number);
        prop_assume!(shown.places() > 0);
        let half = Ratio::new(1, 2 * 10_i128.pow(shown.places())).unwrap();
        prop_assert!(exact.minus(shown.exact()).unwrap().size() <= half);
    }

    #[test]
    fn the_order_of_fractions_is_that_of_their_cross_products(a in -10_000_i128..10_000, b in 1_i128..10_000, c in -10_000_i128..10_000, d in 1_i128..10_000) {
        let (one, two) = (Ratio::new(a, b).unwrap(), Ratio::new(c, d).unwrap());
        prop_assert_eq!(one.cmp(&two), (a * d).cmp(&(c * b)));
        prop_assert_eq!(one.plus(two), Ratio::new(a * d + c * b, b * d));
        prop_assert_eq!(one.times(two), Ratio::new(a * c, b * d));
    }

    #[test]
    fn fractions_of_any_size_never_overflow(a in any::<i128>(), b in any::<i128>(), c in any::<i128>(), d in any::<i128>()) {
        if let Some((one, two)) = Ratio::new(a, b).zip(Ratio::new(c, d)) {
            prop_assert_eq!(one.cmp(&two), two.cmp(&one).reverse());
            let _ = (one.plus(two), one.minus(two), one.times(two), one.over(two), one.size());
            let _ = (Decimal::to_digits(one, 3, Rounding::Nearest), Decimal::to_places(two, -30, Rounding::Up));
        }
    }

    #[test]
    fn any_value_can_be_shown_and_compared_without_stumbling(one in any_value(), two in any_value()) {
        let _ = (one.compare(two), one.show(System::Metric), one.show(System::Imperial), Minutes::of(one));
        let (limit, tolerance) = (Bound::AtMost(one), Some(Tolerance::Amount(two)));
        let _ = (limit.show(System::Imperial), limit.ends(), Figure { value: one, tolerance }.show(System::Imperial));
    }

    #[test]
    fn no_text_makes_it_stumble_and_what_is_wrong_is_within_the_text(text in hostile_text()) {
        let expect = Expect::or_bare(Unit::Ohm);
        let refused = [
            Quantity::parse(&text, Expect::ANY).err(),
            Range::parse(&text, expect).err(),
            Figure::parse(&text, expect).err(),
            Tolerance::parse(&text, expect).err(),
            Uncertainty::parse(&text, expect).err(),
            Bound::parse(&text, expect).err(),
            Minutes::parse(&text).err(),
        ];
        for refused in refused.into_iter().flatten() {
            prop_assert!(text.get(refused.at.clone()).is_some(), "{:?}", refused);
            prop_assert!(!refused.flaw.help().is_empty());
        }
        let _ = (Thread::named(&text), PropertyClass::named(&text));
    }
}

#[test]
#[ignore = "needs python3 with pint: run by tests/run"]
fn conversions_agree_exactly_with_a_general_units_library() {
    let mut asked: Vec<(Quantity, Unit)> = Vec::new();
    let mut digits = 7_i64;
    for from in Unit::ALL {
        for to in Unit::ALL.into_iter().filter(|to| to.dimension() == from.dimension()) {
            for places in 0..10 {
                // A fixed walk through eleven-digit numbers: the same values every time, none of them chosen.
                digits = (digits * 6_364_136 + 1_442_695) % 99_999_999_977;
                asked.push((Quantity::new(Decimal::new(digits, places), from), to));
            }
        }
    }
    let lines: String =
        asked.iter().map(|(q, to)| format!("{}\t{}\t{}\n", q.number.plain(), q.unit.symbol(), to.symbol())).collect();
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/pint_conversions.py");
    let mut python = Command::new("python3").arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    let mut stdin = python.stdin.take().unwrap();
    let writer = std::thread::spawn(move || stdin.write_all(lines.as_bytes()).unwrap());
    let output = python.wait_with_output().unwrap();
    writer.join().unwrap();
    assert!(output.status.success());
    let answers = String::from_utf8(output.stdout).unwrap();
    assert_eq!(answers.lines().count(), asked.len());
    for ((value, to), answer) in asked.iter().zip(answers.lines()) {
        assert_eq!(value.exact_in(*to).unwrap().to_string(), answer, "{value} in {}", to.symbol());
    }
}
