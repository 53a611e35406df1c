//! What every page has around its body.

use super::addresses;
use super::laying::Laying;
use super::page::{Body, Link, Page};
use crate::model::Named;

/// A page with nothing around it yet.
pub fn page(address: &str, kind: &'static str, title: &str, body: Body) -> Page {
    Page {
        address: address.to_owned(),
        root: addresses::root(address),
        key: addresses::key(address),
        kind,
        title: title.to_owned(),
        trail: Vec::new(),
        rail: None,
        sheet: None,
        body,
        linked_from: Vec::new(),
        code: String::new(),
        languages: Vec::new(),
        source_file: None,
    }
}

/// The trail down to an item of kit. The front page has no words here: its name is a message.
pub fn trail_to_kit(laying: &Laying<'_>, kit: Option<&Named>) -> Vec<Link> {
    let kit = kit.map(|named| Link {
        title: laying.item_title(named.value.as_str()),
        address: addresses::kit(named.value.as_str()),
    });
    kit.into_iter().collect()
}
