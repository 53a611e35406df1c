//! Limits: exactly one bound, and a source that somebody can look up.

use crate::model::{Guides, Limit, Limits};
use crate::proof::finding::Finding;
use crate::proof::findings::stores;
use crate::source::Tolerant;

/// Checks every limit.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    for (_, limits) in &guides.limits {
        for limit in limits.entries.iter().filter_map(Tolerant::sound) {
            let bounds = limit.bounds().len();
            if bounds != 1 {
                findings.push(stores::limit_bound(&limit.limit, bounds));
            }
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
        Some(_) if limits.looked_up.is_none() => Some("day on which it was looked up"),
        Some(_) if limit.article.is_none() => Some("article"),
        Some(_) => None,
    }
}
