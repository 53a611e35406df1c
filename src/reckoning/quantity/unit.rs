//! The units that people at a bench write, what they measure, and their exact factors.
//!
//! In: a unit as somebody wrote it. Out: the unit, or the nearest one known. Leaves numbers to `decimal`.
//!
//! Every factor follows exactly from four definitions (NIST SP 811, 2008 edition, B.8 and its footnotes; SI brochure, 9th
//! edition, table 8 for minute, hour and day): 1 lb = 0.453 592 37 kg, gₙ = 9.806 65 m/s², 1 in = 25.4 mm, °C = (°F − 32)/1.8.

use super::ratio::Ratio;
use Dimension as D;
use Family as F;
use Unit as U;

/// What a unit measures. Only values of the same dimension can be compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dimension {
    /// A tightening torque; kept in newton metres.
    Torque,
    /// A force; kept in newtons.
    Force,
    /// A mass, which people call weight; kept in grams.
    Mass,
    /// A length; kept in millimetres.
    Length,
    /// An electrical resistance; kept in ohms.
    Resistance,
    /// A voltage; kept in volts.
    Voltage,
    /// A current; kept in amperes.
    Current,
    /// A temperature; kept in fifths of nine degrees Celsius above freezing, that is Fahrenheit's degrees, where both scales are whole.
    Temperature,
    /// A length of time; kept in seconds.
    Time,
    /// A share of something, in percent.
    Share,
    /// A stress or pressure; kept in megapascals, newtons per square millimetre.
    Stress,
}

/// The system whose units a handbook puts first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum System {
    /// Newton metres, grams, millimetres, degrees Celsius.
    #[default]
    Metric,
    /// Pound-force inches, ounces, inches, degrees Fahrenheit.
    Imperial,
}

/// A unit that is known here.
#[allow(missing_docs, reason = "the names are the units' own; `facts` has symbol and factor of each")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    NewtonMetre,
    CentinewtonMetre,
    PoundInch,
    PoundFoot,
    OunceInch,
    KilopondCentimetre,
    KilopondMetre,
    Newton,
    PoundForce,
    Kilopond,
    Gram,
    Kilogram,
    Ounce,
    Pound,
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,
    Ohm,
    Milliohm,
    Kilohm,
    Megohm,
    Volt,
    Millivolt,
    Ampere,
    Milliampere,
    Celsius,
    Fahrenheit,
    Millisecond,
    Second,
    Minute,
    Hour,
    Day,
    Percent,
    Megapascal,
}

/// Which system a unit belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Family {
    Metric,
    Imperial,
    /// Metric by origin but not SI: never put first.
    Gravitational,
    /// The same everywhere: ohms, minutes, percent.
    Common,
}

/// One row of the table of units.
struct Facts {
    symbol: &'static str,
    dimension: Dimension,
    family: Family,
    /// How many of the dimension's kept unit one of this is: top and bottom of a fraction.
    factor: (i128, i128),
    /// How else people write it, beside the symbol; dots and spaces within are dealt with by `plain`.
    aliases: &'static [&'static str],
}

/// 1 lb in kilograms, gₙ in m/s² and 1 in in metres, by definition, each as a whole number over a power of ten.
const LB: (i128, i128) = (45_359_237, 100_000_000);
const GN: (i128, i128) = (980_665, 100_000);
const IN: (i128, i128) = (254, 10_000);
/// Pound-force in newtons, and pound-force inch in newton metres.
const LBF: (i128, i128) = (LB.0 * GN.0, LB.1 * GN.1);
const LBF_IN: (i128, i128) = (LBF.0 * IN.0, LBF.1 * IN.1);

impl Unit {
    /// All of them, in the order of their dimensions.
    #[rustfmt::skip]
    pub const ALL: [Unit; 36] = [
        U::NewtonMetre, U::CentinewtonMetre, U::PoundInch, U::PoundFoot, U::OunceInch, U::KilopondCentimetre, U::KilopondMetre,
        U::Newton, U::PoundForce, U::Kilopond, U::Gram, U::Kilogram, U::Ounce, U::Pound, U::Millimetre, U::Centimetre, U::Metre,
        U::Inch, U::Foot, U::Ohm, U::Milliohm, U::Kilohm, U::Megohm, U::Volt, U::Millivolt, U::Ampere, U::Milliampere,
        U::Celsius, U::Fahrenheit, U::Millisecond, U::Second, U::Minute, U::Hour, U::Day, U::Percent, U::Megapascal,
    ];

    /// The unit that somebody wrote, whatever dot they put between its parts.
    ///
    /// Case matters for symbols (`mΩ` is not `MΩ`), not for words (`Ohms`), and it does matter for a word that would be two units
    /// without it (`mohm` and `Mohm`).
    ///
    /// # Errors
    /// The nearest spelling that is known, if one is near.
    pub fn named(written: &str) -> Result<Unit, Option<&'static str>> {
        let (wanted, word) = (plain(written), plain(written).to_lowercase());
        let spelled = |unit: &Unit| unit.spellings().any(|name| plain(name) == wanted);
        let sounds =
            |unit: &Unit| unit.spellings().map(plain).any(|name| name.len() > 3 && name.to_lowercase() == word);
        if let Some(unit) = Unit::ALL.into_iter().find(spelled) {
            return Ok(unit);
        }
        let mut alike = Unit::ALL.into_iter().filter(sounds);
        match (alike.next(), alike.next()) {
            (Some(unit), None) => Ok(unit),
            _ => Err(nearest(&wanted)),
        }
    }

    /// The symbol it is shown with.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.facts().symbol
    }

    /// What it measures.
    #[must_use]
    pub fn dimension(self) -> Dimension {
        self.facts().dimension
    }

    /// How many of its dimension's kept unit one of it is, exactly.
    #[must_use]
    pub fn factor(self) -> Ratio {
        let (top, bottom) = self.facts().factor;
        Ratio::new(top, bottom).unwrap_or(Ratio::ZERO)
    }

    /// What it shows where the kept unit shows zero: 32 for °F, else 0.
    #[must_use]
    pub fn offset(self) -> Ratio {
        let freezing = if self == U::Fahrenheit { 32 } else { 0 };
        Ratio::new(freezing, 1).unwrap_or(Ratio::ZERO)
    }

    /// The unit to put beside this one or in its stead in a handbook that prefers `system`; `None` if this one will do everywhere.
    #[must_use]
    pub fn counterpart(self, system: System) -> Option<Unit> {
        match (self.facts().family, system, self.across()) {
            (F::Gravitational, System::Imperial, Some(metric)) => metric.across(),
            (_, _, across) => across,
        }
    }

    /// Whether this unit comes first in a handbook that prefers `system`.
    #[must_use]
    pub(super) fn comes_first_in(self, system: System) -> bool {
        match self.facts().family {
            F::Common => true,
            F::Metric => system == System::Metric,
            F::Imperial => system == System::Imperial,
            F::Gravitational => false,
        }
    }

    /// The unit of the other system that people would use for the same job.
    fn across(self) -> Option<Unit> {
        Some(match self {
            U::NewtonMetre | U::CentinewtonMetre => U::PoundInch,
            U::PoundInch | U::PoundFoot | U::KilopondCentimetre | U::KilopondMetre => U::NewtonMetre,
            U::OunceInch => U::CentinewtonMetre,
            U::Newton => U::PoundForce,
            U::PoundForce | U::Kilopond => U::Newton,
            U::Gram => U::Ounce,
            U::Kilogram => U::Pound,
            U::Ounce => U::Gram,
            U::Pound => U::Kilogram,
            U::Millimetre | U::Centimetre => U::Inch,
            U::Metre => U::Foot,
            U::Inch => U::Millimetre,
            U::Foot => U::Metre,
            U::Celsius => U::Fahrenheit,
            U::Fahrenheit => U::Celsius,
            _ => return None,
        })
    }

    fn spellings(self) -> impl Iterator<Item = &'static str> {
        let facts = self.facts();
        std::iter::once(facts.symbol).chain(facts.aliases.iter().copied())
    }

    #[rustfmt::skip]
    fn facts(self) -> Facts {
        match self {
            U::NewtonMetre => row("N·m", D::Torque, F::Metric, (1, 1), &["Nm", "newton metres", "newton metre", "newton meters"]),
            U::CentinewtonMetre => row("cN·m", D::Torque, F::Metric, (1, 100), &["cNm", "N·cm"]),
            U::PoundInch => row("lbf·in", D::Torque, F::Imperial, LBF_IN, &["in·lbf", "in·lb", "lb·in", "in·lbs", "inch pounds", "pound inches"]),
            U::PoundFoot => row("lbf·ft", D::Torque, F::Imperial, (LBF_IN.0 * 12, LBF_IN.1), &["ft·lbf", "ft·lb", "lb·ft", "ft·lbs", "foot pounds", "pound feet"]),
            U::OunceInch => row("ozf·in", D::Torque, F::Imperial, (LBF_IN.0, LBF_IN.1 * 16), &["in·ozf", "in·oz", "oz·in"]),
            U::KilopondCentimetre => row("kgf·cm", D::Torque, F::Gravitational, (GN.0, GN.1 * 100), &["kg·cm", "kp·cm"]),
            U::KilopondMetre => row("kgf·m", D::Torque, F::Gravitational, GN, &["kg·m", "kp·m"]),
            U::Newton => row("N", D::Force, F::Metric, (1, 1), &["newtons", "newton"]),
            U::PoundForce => row("lbf", D::Force, F::Imperial, LBF, &[]),
            U::Kilopond => row("kgf", D::Force, F::Gravitational, GN, &["kp"]),
            U::Gram => row("g", D::Mass, F::Metric, (1, 1), &["gram", "grams"]),
            U::Kilogram => row("kg", D::Mass, F::Metric, (1000, 1), &["kilogram", "kilograms"]),
            U::Ounce => row("oz", D::Mass, F::Imperial, (LB.0 * 1000, LB.1 * 16), &["ounce", "ounces"]),
            U::Pound => row("lb", D::Mass, F::Imperial, (LB.0 * 1000, LB.1), &["lbs", "pound", "pounds"]),
            U::Millimetre => row("mm", D::Length, F::Metric, (1, 1), &["millimetres", "millimeters"]),
            U::Centimetre => row("cm", D::Length, F::Metric, (10, 1), &["centimetres", "centimeters"]),
            U::Metre => row("m", D::Length, F::Metric, (1000, 1), &["metre", "metres", "meter", "meters"]),
            U::Inch => row("in", D::Length, F::Imperial, (IN.0 * 1000, IN.1), &["inch", "inches", "\"", "″"]),
            U::Foot => row("ft", D::Length, F::Imperial, (IN.0 * 12_000, IN.1), &["foot", "feet"]),
            U::Ohm => row("Ω", D::Resistance, F::Common, (1, 1), &["ohm", "ohms"]),
            U::Milliohm => row("mΩ", D::Resistance, F::Common, (1, 1000), &["mohm", "milliohm", "milliohms"]),
            U::Kilohm => row("kΩ", D::Resistance, F::Common, (1000, 1), &["kohm", "kilohm", "kilohms", "kiloohms"]),
            U::Megohm => row("MΩ", D::Resistance, F::Common, (1_000_000, 1), &["Mohm", "megohm", "megohms"]),
            U::Volt => row("V", D::Voltage, F::Common, (1, 1), &["volt", "volts"]),
            U::Millivolt => row("mV", D::Voltage, F::Common, (1, 1000), &["millivolts"]),
            U::Ampere => row("A", D::Current, F::Common, (1, 1), &["amp", "amps", "ampere", "amperes"]),
            U::Milliampere => row("mA", D::Current, F::Common, (1, 1000), &["milliamps"]),
            U::Celsius => row("°C", D::Temperature, F::Metric, (9, 5), &["℃", "degC", "degrees C", "degrees Celsius"]),
            U::Fahrenheit => row("°F", D::Temperature, F::Imperial, (1, 1), &["℉", "degF", "degrees F", "degrees Fahrenheit"]),
            U::Millisecond => row("ms", D::Time, F::Common, (1, 1000), &["milliseconds"]),
            U::Second => row("s", D::Time, F::Common, (1, 1), &["sec", "second", "seconds"]),
            U::Minute => row("min", D::Time, F::Common, (60, 1), &["mins", "minute", "minutes"]),
            U::Hour => row("h", D::Time, F::Common, (3600, 1), &["hr", "hrs", "hour", "hours"]),
            U::Day => row("d", D::Time, F::Common, (86_400, 1), &["day", "days"]),
            U::Percent => row("%", D::Share, F::Common, (1, 1), &["percent", "per cent"]),
            U::Megapascal => row("MPa", D::Stress, F::Common, (1, 1), &["N/mm²", "N/mm2"]),
        }
    }
}

fn row(
    symbol: &'static str,
    dimension: Dimension,
    family: Family,
    factor: (i128, i128),
    aliases: &'static [&'static str],
) -> Facts {
    Facts { symbol, dimension, family, factor, aliases }
}

/// A spelling without the dots, crosses, hyphens and spaces that people put between a product's parts, and with one ohm sign.
fn plain(written: &str) -> String {
    let apart = |c: char| c.is_whitespace() || ".·⋅∙•*×-‑".contains(c);
    written.chars().filter(|&c| !apart(c)).map(|c| if c == '\u{2126}' { 'Ω' } else { c }).collect()
}

/// The symbol of the unit whose spelling takes the fewest changes to reach, at most half as many as it has letters.
fn nearest(wanted: &str) -> Option<&'static str> {
    // A long text is no slip of the pen, and comparing it would take long.
    if wanted.is_empty() || wanted.len() > 40 {
        return None;
    }
    let spellings = Unit::ALL.into_iter().flat_map(|unit| unit.spellings().map(move |name| (unit, plain(name))));
    let (far, unit) = spellings.map(|(unit, name)| (distance(wanted, &name), unit)).min_by_key(|&(far, _)| far)?;
    (far <= wanted.chars().count()).then(|| unit.symbol())
}

/// Twice the changes from one spelling to the other; a change of case alone counts once.
fn distance(one: &str, two: &str) -> usize {
    strsim::levenshtein(one, two) + strsim::levenshtein(&one.to_lowercase(), &two.to_lowercase())
}
