//! Limits: exactly one bound that can be read, and a source that somebody can look up.

use crate::model::{BoundKind, Guides, Limit, Limits, Line, is_iso_day};
use crate::proof::finding::Finding;
use crate::proof::findings::{quantities, stores};
use crate::reckoning::quantity::{Dimension, Expect, Quantity, Range, Uncertainty, Unreadable};
use crate::source::{Texts, Tolerant};

/// Checks every limit, and what instruments are said to be off by.
pub fn check(guides: &Guides, texts: &Texts, findings: &mut Vec<Finding>) {
    let tools = guides.stores.iter().flat_map(|(_, stores)| stores.tools.iter().filter_map(Tolerant::sound));
    for line in tools.filter_map(|tool| tool.uncertainty.as_ref()) {
        let read = Uncertainty::parse(&line.value, Expect::ANY);
        findings.extend(read.err().map(|why| quantities::unreadable(line, &why, texts)));
    }
    for (_, limits) in &guides.limits {
        findings.extend(limits.looked_up.as_ref().filter(|day| !is_iso_day(&day.value)).map(stores::no_day));
        for limit in limits.entries.iter().filter_map(Tolerant::sound) {
            let bounds = limit.bounds();
            if bounds.len() != 1 {
                findings.push(stores::limit_bound(&limit.limit, bounds.len()));
            }
            findings.extend(bounds.into_iter().filter_map(|(kind, line)| unread(kind, line, texts)));
            findings.extend(lacks(limits, limit).map(|lacks| stores::limit_source(&limit.limit, lacks)));
        }
    }
}

/// What is missing of a limit's source. A shop's own figure needs no article; a rule's needs edition, day and article.
fn lacks(limits: &Limits, limit: &Limit) -> Option<&'static str> {
    let source = limit.source.as_ref().or(limits.source.as_ref());
    match source.map(|source| source.value.as_str()) {
        None => Some("source"),
        Some("shop" | "common practice" | "from memory") => None,
        Some(_) if limits.edition.is_none() => Some("edition"),
        Some(_) if limits.looked_up.is_none() => Some("`looked up` day"),
        Some(_) if limit.article.is_none() => Some("article"),
        Some(_) => None,
    }
}

/// Why a bound cannot be read.
fn unread(kind: BoundKind, line: &Line, texts: &Texts) -> Option<Finding> {
    let text = line.value.as_str();
    let two = || Range::parse(text, Expect::ANY).is_ok_and(|range| range.least != range.most);
    let read = match kind {
        BoundKind::Between => return between(line, texts),
        _ if two() => return Some(quantities::two_figures(line)),
        BoundKind::MustLift => Quantity::parse(text, Expect::of(Dimension::Mass)).map(drop),
        BoundKind::MustPass => Quantity::parse(text, Expect::of(Dimension::Length)).map(drop),
        BoundKind::MustRegister | BoundKind::MustNotRegister => gauge_or_weight(text),
        BoundKind::AtMost | BoundKind::LessThan | BoundKind::AtLeast | BoundKind::MoreThan => {
            Quantity::parse(text, Expect::ANY).map(drop)
        }
    };
    read.err().map(|why| quantities::unreadable(line, &why, texts))
}

/// `between` wants two figures: one that is its own least and most bounds nothing.
fn between(line: &Line, texts: &Texts) -> Option<Finding> {
    match Range::parse(&line.value, Expect::ANY) {
        Ok(range) if range.least == range.most => Some(quantities::one_figure(line)),
        Ok(_) => None,
        Err(why) => Some(quantities::unreadable(line, &why, texts)),
    }
}

/// What a tip registers is a weight on it or a gauge under it.
fn gauge_or_weight(text: &str) -> Result<(), Unreadable> {
    let as_weight = Quantity::parse(text, Expect::of(Dimension::Mass));
    as_weight.or_else(|_| Quantity::parse(text, Expect::of(Dimension::Length))).map(drop)
}
