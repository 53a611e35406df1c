//! Limits as rows: the value in the handbook's units, the bound, the source in short.

use super::addresses;
use super::laying::{Laying, markdown};
use super::page::{Doubt, LimitGroup, LimitRow};
use crate::model::{self, BoundKind, Units};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::reckoning::quantity::{
    Bound, Decimal, Expect, Quantity, Range, Rounding, System, Tolerance, Uncertainty, Unit,
};

/// A limit as a row.
pub fn row(laying: &Laying<'_>, list: &model::Limits, limit: &model::Limit) -> LimitRow {
    let bounds = limit.bounds();
    let (kind, text) = bounds.first().map_or((BoundKind::AtMost, ""), |(kind, text)| (*kind, text.value.as_str()));
    let figures = Figures::of(text, kind);
    let source = source(list, limit);
    LimitRow {
        id: limit.limit.value.0.clone(),
        title: limit.title.value.clone(),
        bound: bound_message(kind),
        value: figures.shown(text, laying.units),
        unit: figures.unit(),
        doubt: figures.doubt(laying),
        leads: figures.leads(),
        least: figures.least,
        most: figures.most,
        open: matches!(kind, BoundKind::LessThan | BoundKind::MoreThan),
        at: limit.at.as_ref().map(|at| at.value.clone()),
        shop: source == "shop",
        source: limit.article.as_ref().map_or(source, |article| article.value.clone()),
        how: markdown(limit.how.as_ref()),
        address: addresses::of(Thing::Limit, limit.limit.value.as_str()),
    }
}

fn source(list: &model::Limits, limit: &model::Limit) -> String {
    let source = limit.source.as_ref().or(list.source.as_ref());
    source.map_or_else(|| "shop".to_owned(), |source| source.value.clone())
}

/// The group of a list of limits.
pub fn group(laying: &Laying<'_>, list: &model::Limits) -> LimitGroup {
    let value = |line: &Option<model::Line>| line.as_ref().map(|line| line.value.clone());
    LimitGroup {
        title: list.title.value.clone(),
        source: value(&list.source).unwrap_or_else(|| "shop".to_owned()),
        edition: value(&list.edition),
        looked_up: value(&list.looked_up),
        says: markdown(list.says.as_ref()),
        rows: sound(&list.entries).into_iter().map(|limit| row(laying, list, limit)).collect(),
    }
}

fn bound_message(kind: BoundKind) -> &'static str {
    match kind {
        BoundKind::AtMost => "at-most",
        BoundKind::LessThan => "less-than",
        BoundKind::AtLeast => "at-least",
        BoundKind::MoreThan => "more-than",
        BoundKind::Between => "between",
        BoundKind::MustRegister => "must-register",
        BoundKind::MustNotRegister => "must-not-register",
        BoundKind::MustLift => "must-lift",
        BoundKind::MustPass => "must-pass",
    }
}

/// The figures of a bound: those that a reading is held against, in the unit of the most.
struct Figures {
    range: Option<Range>,
    bound: Option<Bound>,
    least: Option<String>,
    most: Option<String>,
}

impl Figures {
    fn of(text: &str, kind: BoundKind) -> Figures {
        let range = Range::parse(text, Expect::ANY).ok();
        let bound = range.and_then(|range| bound(range, kind));
        let plain = |quantity: Quantity| quantity.number.plain();
        let (least, most) = match bound {
            Some(Bound::AtMost(most) | Bound::LessThan(most)) => (None, Some(plain(most))),
            Some(Bound::AtLeast(least) | Bound::MoreThan(least)) => (Some(plain(least)), None),
            Some(Bound::Between(range)) => (in_unit(range.least, range.most.unit).map(plain), Some(plain(range.most))),
            Some(Bound::Around(_)) | None => (None, None),
        };
        Figures { range, bound, least, most }
    }

    /// In both systems of units; the one that was not written is cut so that nobody who keeps to it breaks the limit.
    fn shown(&self, text: &str, units: Units) -> String {
        let weighed = || self.range.map_or_else(|| text.to_owned(), |range| range.show(system(units)));
        self.bound.map_or_else(weighed, |bound| bound.show(system(units)))
    }

    fn unit(&self) -> String {
        self.range.map_or_else(String::new, |range| range.most.unit.symbol().to_owned())
    }

    /// How far the first instrument of the stores that measures such a thing may be off.
    fn doubt(&self, laying: &Laying<'_>) -> Option<Doubt> {
        let unit = self.range?.most.unit;
        if self.least.is_none() && self.most.is_none() {
            return None;
        }
        let instruments = laying.directory.instruments.iter();
        let mut fitting = instruments.filter_map(|(tool, may)| Some((tool, may, amount(may, unit)?)));
        let (tool, may, amount) = fitting.next()?;
        let percent = may.parts.iter().find_map(|part| match part {
            Tolerance::Share(percent) => Some(percent.plain()),
            Tolerance::Amount(_) => None,
        });
        Some(Doubt {
            percent: percent.unwrap_or_else(|| "0".to_owned()),
            amount: amount.plain(),
            words: tool.uncertainty.as_ref().map_or_else(String::new, |line| line.value.clone()),
            tool: laying.link(Thing::Tool, tool.tool.value.as_str()),
        })
    }

    /// The meter's leads stand in every reading of a few ohms; beside kilohms they are nothing.
    fn leads(&self) -> Option<String> {
        let unit = self.range?.most.unit;
        let small = matches!(unit, Unit::Ohm | Unit::Milliohm);
        (small && self.most.is_some()).then(|| unit.symbol().to_owned())
    }
}

/// The limit that these figures are; nothing where a weight or a gauge is named that must register, lift or pass.
fn bound(range: Range, kind: BoundKind) -> Option<Bound> {
    match kind {
        BoundKind::AtMost => Some(Bound::AtMost(range.most)),
        BoundKind::LessThan => Some(Bound::LessThan(range.most)),
        BoundKind::AtLeast => Some(Bound::AtLeast(range.least)),
        BoundKind::MoreThan => Some(Bound::MoreThan(range.least)),
        BoundKind::Between => Some(Bound::Between(range)),
        BoundKind::MustRegister | BoundKind::MustNotRegister | BoundKind::MustLift | BoundKind::MustPass => None,
    }
}

/// A least value in the unit of the most; what does not come out even is cut to the safe side.
fn in_unit(least: Quantity, unit: Unit) -> Option<Quantity> {
    if least.unit == unit { Some(least) } else { least.converted(unit, Rounding::Up).ok() }
}

/// The system of units that a handbook puts first.
pub fn system(units: Units) -> System {
    match units {
        Units::Metric => System::Metric,
        Units::Imperial => System::Imperial,
    }
}

/// What an instrument may be off by besides percents, in this unit; nothing if it measures something else.
fn amount(may: &Uncertainty, unit: Unit) -> Option<Decimal> {
    let mut amounts = may.parts.iter().filter_map(|part| match part {
        Tolerance::Amount(amount) => Some(*amount),
        Tolerance::Share(_) => None,
    });
    let amount = amounts.find(|amount| amount.unit.dimension() == unit.dimension())?;
    if amount.unit == unit {
        return Some(amount.number);
    }
    amount.converted(unit, Rounding::Up).ok().map(|amount| amount.number)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ends(text: &str, kind: BoundKind) -> [Option<String>; 2] {
        let figures = Figures::of(text, kind);
        [figures.least, figures.most]
    }

    #[test]
    fn both_ends_are_in_the_unit_of_the_most() {
        let own = |least: &str, most: &str| [Some(least.to_owned()), Some(most.to_owned())];
        assert_eq!(ends("950 mm .. 1.05 m", BoundKind::Between), own("0.950", "1.05"));
        assert_eq!(ends("200 Ω .. 1 kΩ", BoundKind::Between), own("0.200", "1"));
        assert_eq!(ends("5 Mohm", BoundKind::AtLeast), [Some("5".to_owned()), None]);
    }

    #[test]
    fn what_is_shown_in_the_other_unit_keeps_to_the_limit() {
        let shown = |text: &str, kind| Figures::of(text, kind).shown(text, Units::Metric).replace('\u{a0}', " ");
        // 0.0787 in and 0.9055 in exactly.
        assert_eq!(shown("2 mm", BoundKind::AtMost), "2 mm (0.07 in)");
        assert_eq!(shown("2 mm", BoundKind::AtLeast), "2 mm (0.08 in)");
        assert_eq!(shown("23.0 mm", BoundKind::AtMost), "23.0 mm (0.905 in)");
    }
}
