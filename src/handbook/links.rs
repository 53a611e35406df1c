//! What links where: the table that texts are printed with, and what links to each page.

use super::laying::Laying;
use super::page::{Body, Link, Page};
use super::{addresses, lists};
use crate::model::Kind;
use crate::model::prose::LinkKind;
use crate::proof::Thing;
use std::collections::BTreeMap;

/// What a bare link to a limit prints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LinkedLimit {
    /// The kind of bound: a message id after `bound-`.
    pub bound: &'static str,
    /// The value with its unit.
    pub value: String,
    /// Where it comes from, in short.
    pub source: String,
    /// Whether it is the club's own.
    pub shop: bool,
}

/// What a short link in a text prints and where it leads.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Target {
    /// The name; for a limit what is limited.
    pub title: String,
    /// Where it leads.
    pub address: String,
    /// For a limit: what a bare link prints.
    pub limit: Option<LinkedLimit>,
}

/// Every target of a short link.
pub type Targets = BTreeMap<(LinkKind, String), Target>;

/// The table of a handbook.
pub fn targets(laying: &Laying<'_>) -> Targets {
    let kinds = [LinkKind::Part, LinkKind::Tool, LinkKind::Consumable, LinkKind::Limit, LinkKind::Word];
    let guides = [Kind::Symptom, Kind::Procedure, Kind::Checklist, Kind::Circuit, Kind::Learning].map(LinkKind::Guide);
    let mut targets = Targets::new();
    for kind in kinds.into_iter().chain(guides) {
        let thing = Thing::from(kind);
        for entry in laying.proofed.index.all(thing) {
            let id = entry.named.value.0.clone();
            let limit = (thing == Thing::Limit).then(|| laying.limit(&id)).flatten();
            let limit =
                limit.map(|row| LinkedLimit { bound: row.bound, value: row.value, source: row.source, shop: row.shop });
            let target = Target { title: entry.title.clone(), address: addresses::of(thing, &id), limit };
            targets.insert((kind, id), target);
        }
    }
    targets
}

/// Tells every guide's page what links to it.
pub fn give_back(laying: &Laying<'_>, pages: &mut [Page]) {
    for page in pages {
        let kind = match page.body {
            Body::Symptom(_) => Kind::Symptom,
            Body::Procedure(_) => Kind::Procedure,
            Body::Checklist(_) => Kind::Checklist,
            Body::Circuit(_) => Kind::Circuit,
            Body::Way(_) => Kind::Learning,
            _ => continue,
        };
        let id = page.address.rsplit('/').next().unwrap_or("").trim_end_matches(".html").to_owned();
        let own = page.address.clone();
        let links = lists::used_in(laying, Thing::Guide(kind), &id);
        page.linked_from = links.into_iter().filter(|link: &Link| link.address != own).collect();
    }
}
