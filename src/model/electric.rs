//! Figures of circuits as written: ohms and ranges of ohms, volts, amperes.
//!
//! In: text such as `0.02 .. 0.1 .. 0.25`. Out: whole millionths, so that the figure is kept exactly as it was written.
//! Leaves to others: whether a range rises and makes sense (`reckoning::circuit`).

use super::value::{Misread, MisreadKind, Told, Written};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

/// The largest figure, in whole units.
const LARGEST: u64 = 1_000_000_000;

/// A resistance, in millionths of an ohm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Resistance(pub u64);

/// A voltage, in millionths of a volt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Voltage(pub u64);

/// A current, in millionths of an ampere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Current(pub u64);

/// One to three rising resistances.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ResistanceRange(pub Vec<Resistance>);

/// Units with how many millionths each is, longest first.
const OHMS: [(&str, u64); 8] = [
    ("ohms", 1_000_000),
    ("ohm", 1_000_000),
    ("kΩ", 1_000_000_000),
    ("MΩ", 1_000_000_000_000),
    ("mΩ", 1_000),
    ("Ω", 1_000_000),
    // The ohm sign of its own, which looks the same.
    ("\u{2126}", 1_000_000),
    ("", 1_000_000),
];
const VOLTS: [(&str, u64); 3] = [("mV", 1_000), ("V", 1_000_000), ("", 1_000_000)];
const AMPERES: [(&str, u64); 3] = [("mA", 1_000), ("A", 1_000_000), ("", 1_000_000)];

macro_rules! figure {
    ($type:ident, $units:ident, $fn:ident, $unit:literal, $schema:literal, $example:literal) => {
        impl $type {
            #[doc = concat!("In ", $unit, ".")]
            pub fn $fn(self) -> f64 {
                self.0 as f64 / 1e6
            }
        }

        impl Written for $type {
            fn read(text: &str) -> Result<Self, Misread> {
                millionths(text, &$units).map($type).ok_or_else(|| misread(text, concat!("a figure in ", $unit, ", such as `", $example, "`")))
            }
        }

        impl JsonSchema for Told<$type> {
            fn schema_name() -> Cow<'static, str> {
                $schema.into()
            }
            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                json_schema!({ "description": concat!("A figure in ", $unit, ", such as `", $example, "`."), "type": ["string", "number"] })
            }
        }
    };
}

figure!(Resistance, OHMS, ohms, "ohms", "Resistance", "8.1 Ω");
figure!(Voltage, VOLTS, volts, "volts", "Voltage", "3 V");
figure!(Current, AMPERES, amperes, "amperes", "Current", "0.144 A");

impl Written for ResistanceRange {
    fn read(text: &str) -> Result<Self, Misread> {
        let parts: Vec<&str> = text.split("..").map(str::trim).collect();
        // A unit after the last figure holds for all.
        let unit = parts
            .last()
            .map_or("", |last| last.trim_start_matches(|letter: char| letter.is_ascii_digit() || letter == '.').trim());
        let figure = |part: &&str| {
            let bare = part.ends_with(|letter: char| letter.is_ascii_digit());
            millionths(&if bare { format!("{part}{unit}") } else { (*part).to_owned() }, &OHMS).map(Resistance)
        };
        let figures: Option<Vec<Resistance>> = parts.iter().map(figure).collect();
        match figures {
            Some(figures) if figures.len() <= 3 => Ok(ResistanceRange(figures)),
            _ => Err(misread(
                text,
                "ohms as the least, the usual and the most, such as `0.02 .. 0.1 .. 0.25`, or one or two figures",
            )),
        }
    }
}

impl JsonSchema for Told<ResistanceRange> {
    fn schema_name() -> Cow<'static, str> {
        "ResistanceRange".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "Ohms: the least, the usual and the most, such as `0.02 .. 0.1 .. 0.25`; two figures are the least and the most, one is exact.",
            "type": ["string", "number"]
        })
    }
}

/// A plain decimal with up to six decimals and a unit, in millionths.
fn millionths(text: &str, units: &[(&str, u64)]) -> Option<u64> {
    let text = text.trim();
    let (figures, scale) =
        units.iter().find_map(|(unit, scale)| Some((text.strip_suffix(unit)?.trim_end(), *scale)))?;
    let (whole, part) = figures.split_once('.').unwrap_or((figures, ""));
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || part.len() > 6 || (figures.contains('.') && !digits(part)) {
        return None;
    }
    let value = format!("{whole}{part:0<6}").parse::<u64>().ok()?.checked_mul(scale)? / 1_000_000;
    (value <= LARGEST * 1_000_000).then_some(value)
}

fn misread(text: &str, wanted: &str) -> Misread {
    Misread { kind: MisreadKind::Quantity, help: format!("`{text}` is none: write {wanted}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_take_a_unit_after_each_figure_or_after_the_last() {
        let micro =
            |text: &str| ResistanceRange::read(text).ok().map(|range| range.0.iter().map(|r| r.0).collect::<Vec<_>>());
        assert_eq!(micro("0.02 .. 0.1 .. 0.25"), Some(vec![20_000, 100_000, 250_000]));
        assert_eq!(micro("100 .. 1000 Ω"), Some(vec![100_000_000, 1_000_000_000]));
        assert_eq!(micro("200 Ω .. 1 kΩ"), Some(vec![200_000_000, 1_000_000_000]));
        assert_eq!(micro("1..2 mΩ"), Some(vec![1_000, 2_000]));
        assert_eq!(micro("2"), Some(vec![2_000_000]));
        for bad in ["", "..", "1 .. 2 .. 3 .. 4", "-1", "1 V", "1e3", "2000 MΩ", "0.1234567"] {
            assert_eq!(micro(bad), None, "{bad}");
        }
    }
}
