//! Limits as rows: the value in the handbook's units, the bound, the source in short.

use super::addresses;
use super::laying::markdown;
use super::page::{LimitGroup, LimitRow};
use crate::model::{self, BoundKind, Units};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::reckoning::quantity::{Expect, Quantity, Range, System};

/// A limit as a row.
pub fn row(list: &model::Limits, limit: &model::Limit, units: Units) -> LimitRow {
    let bounds = limit.bounds();
    let (kind, text) = bounds.first().map_or((BoundKind::AtMost, ""), |(kind, text)| (*kind, text.value.as_str()));
    let figures = Figures::of(text, kind);
    let source = source(list, limit);
    LimitRow {
        id: limit.limit.value.0.clone(),
        title: limit.title.value.clone(),
        bound: bound_message(kind),
        value: figures.shown(text, units),
        other: None,
        unit: figures.unit(),
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
pub fn group(list: &model::Limits, units: Units) -> LimitGroup {
    let value = |line: &Option<model::Line>| line.as_ref().map(|line| line.value.clone());
    LimitGroup {
        title: list.title.value.clone(),
        source: value(&list.source).unwrap_or_else(|| "shop".to_owned()),
        edition: value(&list.edition),
        looked_up: value(&list.looked_up),
        says: markdown(list.says.as_ref()),
        rows: sound(&list.entries).into_iter().map(|limit| row(list, limit, units)).collect(),
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

/// The figures of a bound: those that a reading is held against.
struct Figures {
    range: Option<Range>,
    least: Option<String>,
    most: Option<String>,
}

impl Figures {
    fn of(text: &str, kind: BoundKind) -> Figures {
        let range = Range::parse(text, Expect::ANY).ok();
        let plain = |quantity: Quantity| quantity.number.plain();
        let (least, most) = match (range, kind) {
            (Some(range), BoundKind::AtMost | BoundKind::LessThan) => (None, Some(plain(range.most))),
            (Some(range), BoundKind::AtLeast | BoundKind::MoreThan) => (Some(plain(range.least)), None),
            (Some(range), BoundKind::Between) => (Some(plain(range.least)), Some(plain(range.most))),
            _ => (None, None),
        };
        Figures { range, least, most }
    }

    fn shown(&self, text: &str, units: Units) -> String {
        self.range.map_or_else(|| text.to_owned(), |range| range.show(system(units)))
    }

    fn unit(&self) -> String {
        self.range.map_or_else(String::new, |range| range.most.unit.symbol().to_owned())
    }
}

/// The system of units that a handbook puts first.
pub fn system(units: Units) -> System {
    match units {
        Units::Metric => System::Metric,
        Units::Imperial => System::Imperial,
    }
}
