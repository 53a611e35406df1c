//! A circuit's page, in words; its drawing and readings come from the reckoning.

use super::laying::{Laying, markdown};
use super::lists::used_in;
use super::page::{Body, Circuit, Page};
use super::{addresses, frame};
use crate::model::{self, Kind};
use crate::proof::Thing;

/// The page.
pub fn page(laying: &Laying<'_>, guide: &model::Circuit) -> Page {
    let id = guide.circuit.value.as_str();
    let body = Circuit {
        says: markdown(guide.says.as_ref()),
        guides: used_in(laying, Thing::Guide(Kind::Circuit), id),
        parts: Vec::new(),
        faults: Vec::new(),
        positions: Vec::new(),
    };
    let address = addresses::guide(Kind::Circuit, id);
    let mut page = frame::page(&address, "kind-circuit", &guide.title.value, Body::Circuit(Box::new(body)));
    page.trail = frame::trail_to_kit(laying, guide.kit.as_ref());
    page.rail = laying.rail_at(guide.kit.as_ref(), None);
    page
}
