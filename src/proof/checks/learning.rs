//! A way to learn: no two stops with the same id, and ids that can be part of an address.

use crate::model::{Guides, Learning};
use crate::proof::finding::Finding;
use crate::proof::findings::ids;
use crate::proof::index::why_no_id;
use crate::source::{Place, Tolerant};
use std::collections::BTreeMap;

/// Checks every way.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    guides.learning.iter().for_each(|(_, guide)| stops(guide, findings));
}

fn stops(guide: &Learning, findings: &mut Vec<Finding>) {
    let mut known: BTreeMap<String, Place> = BTreeMap::new();
    for stop in guide.stops.iter().filter_map(Tolerant::sound) {
        if let Some(why) = why_no_id(stop.stop.value.as_str()) {
            findings.push(ids::bad_id(&stop.stop, why));
        }
        // Capitals make no difference in the address of its page.
        match known.get(&stop.stop.value.0.to_lowercase()) {
            Some(first) => findings.push(ids::duplicate_id(&stop.stop, *first)),
            None => {
                known.insert(stop.stop.value.0.to_lowercase(), stop.stop.place);
            }
        }
    }
}
