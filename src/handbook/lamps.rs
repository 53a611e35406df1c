//! *What does the lamp do?* by item and instrument: what each lamp can show, as circuits compute it, and the guides that fit.
//!
//! In: circuits and fault-finding guides. Out: a page for each item and instrument, and the doors to them.
//! Leaves to others: what a lamp can show (`patterns`).

use super::front::{Faults, items};
use super::laying::{Laying, seen_on};
use super::page::{Body, LampDoor, LampDoors, LampsOf, Page, Patterns, SymptomRow};
use super::{addresses, frame, patterns};
use crate::model::{Named, SeenOn};
use rayon::prelude::*;

/// The instruments with lamps, and what they are called in addresses.
const INSTRUMENTS: [(SeenOn, &str, &str); 2] =
    [(SeenOn::Tester, "tester", "kind-lamps-tester"), (SeenOn::Apparatus, "apparatus", "kind-lamps-apparatus")];

/// The pages: for every item and instrument of which a circuit or a guide tells anything.
pub fn pages(laying: &Laying<'_>, faults: &Faults<'_>) -> Vec<Page> {
    items(laying).par_iter().map(|item| of_item(laying, faults, item)).flatten_iter().collect()
}

/// What leads to these pages, by item.
pub fn doors(pages: &[Page]) -> Vec<LampDoors> {
    let mut doors: Vec<LampDoors> = Vec::new();
    for page in pages {
        match doors.last_mut().filter(|item| item.title == page.title) {
            Some(item) => item.doors.extend(door(page)),
            None => doors.push(LampDoors { title: page.title.clone(), doors: door(page).into_iter().collect() }),
        }
    }
    doors
}

fn door(page: &Page) -> Option<LampDoor> {
    let Body::LampsOf(body) = &page.body else { return None };
    Some(LampDoor { seen_on: body.seen_on, address: page.address.clone() })
}

fn of_item(laying: &Laying<'_>, faults: &Faults<'_>, item: &str) -> Vec<Page> {
    let all = patterns::of_item(laying, item);
    let mut pages: Vec<Page> =
        INSTRUMENTS.iter().filter_map(|instrument| page(laying, faults, item, &all, *instrument)).collect();
    let doors: Vec<LampDoor> = pages.iter().filter_map(door).collect();
    for page in &mut pages {
        if let Body::LampsOf(body) = &mut page.body {
            body.doors = doors.iter().filter(|door| door.seen_on != body.seen_on).cloned().collect();
        }
    }
    pages
}

fn page(
    laying: &Laying<'_>,
    faults: &Faults<'_>,
    item: &str,
    all: &[Patterns],
    (on, instrument, kind): (SeenOn, &'static str, &'static str),
) -> Option<Page> {
    let on = seen_on(on);
    let lamps: Vec<Patterns> = all.iter().filter(|lamp| lamp.seen_on == on).cloned().collect();
    let found = |row: &SymptomRow| {
        let rows = lamps.iter().flat_map(|lamp| &lamp.rows).flat_map(|row| &row.guides);
        rows.into_iter().any(|guide| guide.address == row.address)
    };
    let here = faults.iter().filter(|(guide, row)| guide.kit.value.as_str() == item && row.seen_on == on);
    let others: Vec<SymptomRow> = here.map(|(_, row)| row).filter(|row| !found(row)).cloned().collect();
    if lamps.is_empty() && others.is_empty() {
        return None;
    }
    let kit: Option<&Named> = faults.iter().map(|(guide, _)| &guide.kit).find(|kit| kit.value.as_str() == item);
    let together =
        patterns::together_of_item(laying, item).into_iter().filter(|together| together.seen_on == on).collect();
    let body = LampsOf { seen_on: on, together, lamps, others, doors: Vec::new() };
    let address = addresses::lamps_of(item, instrument);
    let mut page = frame::page(&address, kind, &laying.item_title(item), Body::LampsOf(Box::new(body)));
    page.trail = frame::trail_to_kit(laying, kit);
    Some(page)
}
