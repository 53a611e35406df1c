//! *How it works*: the circuits that teach, position by position, with the current drawn.
//!
//! In: circuits with `teaches:`. Out: a page for each. Leaves to others: the drawing's data (`circuit_drawing`).

use super::circuit_drawing::{Sketch, words};
use super::laying::{Laying, markdown};
use super::lists::used_in;
use super::page::{Body, How, Link, Page, TaughtPosition};
use super::{addresses, circuits, frame, patterns};
use crate::model::{self, Kind};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::proof::network::{Taught, Wired};
use crate::reckoning::circuit::Pair;

/// The pages, in the order of the guides.
pub fn pages(laying: &Laying<'_>) -> Vec<Page> {
    taught(laying).into_iter().filter_map(|(guide, wired)| page(laying, guide, wired)).collect()
}

/// What leads to the page of a circuit, if it teaches anything.
pub fn link(guide: &model::Circuit, wired: &Wired) -> Option<Link> {
    let teaches = guide.teaches.as_ref().filter(|_| !wired.lessons.is_empty())?;
    Some(Link { title: teaches.title.value.clone(), address: addresses::how(guide.circuit.value.as_str()) })
}

/// What leads to the pages about an item.
pub fn links(laying: &Laying<'_>, item: &str) -> Vec<Link> {
    let of_item = |guide: &model::Circuit| guide.kit.as_ref().is_some_and(|kit| kit.value.as_str() == item);
    let taught = taught(laying).into_iter().filter(|(guide, _)| of_item(guide));
    taught.filter_map(|(guide, wired)| link(guide, wired)).collect()
}

fn taught<'a>(laying: &Laying<'a>) -> Vec<(&'a model::Circuit, &'a Wired)> {
    let circuits = laying.proofed.guides.circuits.iter().map(|(_, guide)| guide);
    let wired = |guide: &model::Circuit| laying.proofed.circuits.get(guide.circuit.value.as_str());
    circuits.filter_map(|guide| Some((guide, wired(guide).filter(|wired| wired.is_whole())?))).collect()
}

fn page(laying: &Laying<'_>, guide: &model::Circuit, wired: &Wired) -> Option<Page> {
    let Link { title, address } = link(guide, wired)?;
    let teaches = guide.teaches.as_ref()?;
    let id = guide.circuit.value.as_str();
    let sketch = circuits::sketch(laying, guide, wired);
    let told = sound(&teaches.lessons);
    let lesson = |taught: &Taught| {
        let told = told.get(taught.lesson)?;
        let key = addresses::key(&address);
        Some(TaughtPosition {
            anchor: format!("{key}-{}", wired.network.position_name(taught.position)),
            title: heading(told, wired, taught),
            says: told.says.value.0.clone(),
            figure: sketch.as_ref().and_then(|sketch| drawn(sketch, taught)),
            shows: patterns::shows_of_own_side(guide, wired, taught.position),
        })
    };
    let body = How {
        says: markdown(teaches.says.as_ref()),
        lessons: wired.lessons.iter().filter_map(lesson).collect(),
        circuit: laying.link(Thing::Guide(Kind::Circuit), id),
        guides: used_in(laying, Thing::Guide(Kind::Circuit), id),
    };
    let mut page = frame::page(&address, "kind-how", &title, Body::How(Box::new(body)));
    page.trail = frame::trail_to_kit(laying, guide.kit.as_ref());
    page.rail = laying.rail_at(guide.kit.as_ref(), None);
    Some(page)
}

/// The lesson's own words, else those of its position.
fn heading(told: &model::circuit::Lesson, wired: &Wired, taught: &Taught) -> String {
    let position = || words(&wired.labels.positions, wired.network.position_name(taught.position));
    let own = told.title.as_ref().map(|title| title.value.clone());
    own.or_else(position).unwrap_or_else(|| told.lesson.value.spoken())
}

fn drawn(sketch: &Sketch<'_>, taught: &Taught) -> Option<super::page::CircuitFigure> {
    match taught.between {
        Some([one, other]) => sketch.drawn_between(Pair { one, other }, taught.position, None),
        None => sketch.drawn(taught.position, None),
    }
}
