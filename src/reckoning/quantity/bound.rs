//! Limits, and whether a reading keeps to one.
//!
//! In: `at most 2 Ω`, `< 500 g`, `5.5 to 9.5 cm`, `8 mm ± 0.05`; a reading with what its instrument may be off and its leads.
//! Out: inside, outside, or too close to call. Leaves where a limit comes from to its callers.

use super::decimal::Rounding;
use super::range::Range;
use super::ratio::Ratio;
use super::text::{Expect, Flaw, Part, Unreadable};
use super::tolerance::{Figure, Uncertainty};
use super::unit::{System, Unit};
use super::value::{Incomparable, Quantity, same};
use std::fmt;

/// A limit on a value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// This much or less.
    AtMost(Quantity),
    /// Less, and not this much.
    LessThan(Quantity),
    /// This much or more.
    AtLeast(Quantity),
    /// More, and not this much.
    MoreThan(Quantity),
    /// From the one to the other, both included.
    Between(Range),
    /// A nominal figure with its tolerance, both ends included.
    Around(Figure),
}

/// What an instrument showed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// The figure it showed.
    pub shown: Quantity,
    /// What the instrument may be off by its maker's word, resolution included.
    pub uncertainty: Uncertainty,
    /// What it showed with the leads joined, to be taken off.
    pub leads: Option<Quantity>,
}

/// What a reading says about a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// It keeps to the limit wherever within the uncertainty the truth lies.
    Inside,
    /// It does not, wherever the truth lies.
    Outside,
    /// It hangs on where within the uncertainty the truth lies.
    TooCloseToCall,
}

/// One side of a limit, in the kept unit.
#[derive(Clone, Copy)]
enum Edge {
    Free,
    Included(Ratio),
    Excluded(Ratio),
}

/// What makes a limit of a value.
type Made = fn(Quantity) -> Bound;

/// The words and signs before a value, longer ones before those they begin with.
const BEFORE: [(&str, Made); 21] = [
    ("at most", Bound::AtMost),
    ("no more than", Bound::AtMost),
    ("not more than", Bound::AtMost),
    ("up to", Bound::AtMost),
    ("maximum", Bound::AtMost),
    ("max.", Bound::AtMost),
    ("max", Bound::AtMost),
    ("≤", Bound::AtMost),
    ("<=", Bound::AtMost),
    ("less than", Bound::LessThan),
    ("under", Bound::LessThan),
    ("<", Bound::LessThan),
    ("at least", Bound::AtLeast),
    ("no less than", Bound::AtLeast),
    ("not less than", Bound::AtLeast),
    ("minimum", Bound::AtLeast),
    ("≥", Bound::AtLeast),
    (">=", Bound::AtLeast),
    ("more than", Bound::MoreThan),
    ("over", Bound::MoreThan),
    (">", Bound::MoreThan),
];

/// The words after a value.
const AFTER: [(&str, Made); 6] = [
    ("at most", Bound::AtMost),
    ("or less", Bound::AtMost),
    ("max", Bound::AtMost),
    ("at least", Bound::AtLeast),
    ("or more", Bound::AtLeast),
    ("least", Bound::AtLeast),
];

impl Bound {
    /// Reads a limit: a direction and a value, two figures, or a figure and its tolerance.
    ///
    /// # Errors
    /// What cannot be read, with its bytes in `text`; a value alone is refused, because it does not say on which side it limits.
    pub fn parse(text: &str, expect: Expect) -> Result<Bound, Unreadable> {
        let part = Part::all(text);
        let before = BEFORE.iter().find_map(|&(word, made)| Some((part.after(word)?, made)));
        let after = || AFTER.iter().find_map(|&(word, made)| Some((part.before(word)?, made)));
        if let Some((value, made)) = before.or_else(after) {
            return Ok(made(value.loose()?.settled(None, expect)?));
        }
        if let Some((least, most)) = part.after("between").and_then(|rest| rest.split(" and ")) {
            return Range::between(part, &[least, most], expect).map(Bound::Between);
        }
        two_sided(part, expect)
    }

    /// Whether `reading` keeps to this limit.
    ///
    /// The worst case counts: what the instrument may be off at the reading and at the leads adds up.
    ///
    /// # Errors
    /// A reading of another dimension, or too many digits.
    pub fn judge(&self, reading: &Reading) -> Result<Verdict, Incomparable> {
        same(self.unit(), reading.shown.unit)?;
        let (low, high) = reading.ends()?;
        let (least, most) = self.edges()?;
        let outside = !least.reached_by(high) || !most.kept_by(low);
        let inside = least.reached_by(low) && most.kept_by(high);
        Ok(match (inside, outside) {
            (true, _) => Verdict::Inside,
            (_, true) => Verdict::Outside,
            _ => Verdict::TooCloseToCall,
        })
    }

    /// The unit it is written in; of two, the second.
    #[must_use]
    pub fn unit(&self) -> Unit {
        match self {
            Bound::AtMost(q) | Bound::LessThan(q) | Bound::AtLeast(q) | Bound::MoreThan(q) => q.unit,
            Bound::Between(range) => range.most.unit,
            Bound::Around(figure) => figure.value.unit,
        }
    }

    /// The sign of a limit to one side, for pages in any language; nothing for a limit to both.
    #[must_use]
    pub fn sign(&self) -> &'static str {
        match self {
            Bound::AtMost(_) => "≤",
            Bound::LessThan(_) => "<",
            Bound::AtLeast(_) => "≥",
            Bound::MoreThan(_) => ">",
            Bound::Between(_) | Bound::Around(_) => "",
        }
    }

    /// The values without the words, the preferred unit first: `90 cm (35.4 in)`.
    ///
    /// The figure that was not written is cut to the safe side, so that nobody who keeps to it breaks the limit.
    #[must_use]
    pub fn show(&self, system: System) -> String {
        match self {
            Bound::AtMost(q) | Bound::LessThan(q) => q.show_cut(system, Rounding::Down),
            Bound::AtLeast(q) | Bound::MoreThan(q) => q.show_cut(system, Rounding::Up),
            Bound::Between(range) => range.show_cut(system, Rounding::Up, Rounding::Down),
            Bound::Around(figure) => figure.show(system),
        }
    }

    /// The least and the most that keep to it, in the unit its dimension is kept in, for a page's script; `None` where it is open.
    ///
    /// # Errors
    /// Too many digits.
    pub fn ends(&self) -> Result<(Option<Ratio>, Option<Ratio>), Incomparable> {
        let (least, most) = self.edges()?;
        Ok((least.at(), most.at()))
    }

    fn edges(&self) -> Result<(Edge, Edge), Incomparable> {
        Ok(match self {
            Bound::AtMost(q) => (Edge::Free, Edge::Included(q.kept()?)),
            Bound::LessThan(q) => (Edge::Free, Edge::Excluded(q.kept()?)),
            Bound::AtLeast(q) => (Edge::Included(q.kept()?), Edge::Free),
            Bound::MoreThan(q) => (Edge::Excluded(q.kept()?), Edge::Free),
            Bound::Between(range) => (Edge::Included(range.least.kept()?), Edge::Included(range.most.kept()?)),
            Bound::Around(figure) => {
                let (least, most) = figure.ends()?;
                (Edge::Included(least), Edge::Included(most))
            }
        })
    }
}

impl fmt::Display for Bound {
    /// In words, as written: `at most 2 Ω`, `5.5 to 9.5 cm`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Bound::AtMost(q) => write!(f, "at most {q}"),
            Bound::LessThan(q) => write!(f, "less than {q}"),
            Bound::AtLeast(q) => write!(f, "at least {q}"),
            Bound::MoreThan(q) => write!(f, "more than {q}"),
            Bound::Between(range) => range.fmt(f),
            Bound::Around(figure) => figure.fmt(f),
        }
    }
}

impl Reading {
    /// A reading of an instrument that is taken to be exact, without leads.
    #[must_use]
    pub fn exact(shown: Quantity) -> Reading {
        Reading { shown, uncertainty: Uncertainty::default(), leads: None }
    }

    /// The least and the most that the truth may be, the leads taken off, in the kept unit.
    ///
    /// # Errors
    /// Leads or an uncertainty of another dimension, or too many digits.
    pub fn ends(&self) -> Result<(Ratio, Ratio), Incomparable> {
        let (mut value, mut wide) = (self.shown.kept()?, self.uncertainty.half_width(self.shown)?);
        let sum = |a: Ratio, b: Option<Ratio>| b.and_then(|b| a.plus(b)).ok_or(Incomparable::TooManyDigits);
        if let Some(leads) = self.leads {
            same(self.shown.unit, leads.unit)?;
            value = value.minus(leads.kept()?).ok_or(Incomparable::TooManyDigits)?;
            wide = sum(wide, Some(self.uncertainty.half_width(leads)?))?;
        }
        Ok((sum(value, Ratio::ZERO.minus(wide))?, sum(value, Some(wide))?))
    }
}

impl Edge {
    /// Whether `value` is not under this lower edge.
    fn reached_by(self, value: Ratio) -> bool {
        match self {
            Edge::Free => true,
            Edge::Included(edge) => value >= edge,
            Edge::Excluded(edge) => value > edge,
        }
    }

    /// Whether `value` is not over this upper edge.
    fn kept_by(self, value: Ratio) -> bool {
        match self {
            Edge::Free => true,
            Edge::Included(edge) => value <= edge,
            Edge::Excluded(edge) => value < edge,
        }
    }

    fn at(self) -> Option<Ratio> {
        match self {
            Edge::Free => None,
            Edge::Included(edge) | Edge::Excluded(edge) => Some(edge),
        }
    }
}

/// A limit to both sides: a figure with its tolerance, or two figures.
fn two_sided(part: Part<'_>, expect: Expect) -> Result<Bound, Unreadable> {
    let figures = part.figures();
    if figures.len() != 1 {
        let flawed = || part.flawed(Flaw::TooManyFigures);
        let range = Range::between(part, &figures, expect)?;
        return if range.usual.is_some() { Err(flawed()) } else { Ok(Bound::Between(range)) };
    }
    let figure = Figure::of(part, expect)?;
    if figure.tolerance.is_none() {
        return Err(part.flawed(Flaw::NoDirection));
    }
    Ok(Bound::Around(figure))
}
