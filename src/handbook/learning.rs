//! Ways to learn: a page for the way and one for each stop.
//!
//! In: `learning:` guides. Out: pages. Leaves to others: the questions of a stop (`self_check`).

use super::laying::{Laying, lines, markdown};
use super::numbers::{told, whole};
use super::page::{Body, LearningStop, Link, Page, Practised, Way, WayStop};
use super::{addresses, frame, self_check};
use crate::model::{self, Kind, Named};
use crate::proof::cases::sound;

/// The pages of a way.
pub fn pages(laying: &Laying<'_>, guide: &model::Learning) -> Vec<Page> {
    let stops = sound(&guide.stops);
    let mut pages = vec![way_page(laying, guide, &stops)];
    pages.extend((0..stops.len()).filter_map(|at| stop_page(laying, guide, &stops, at)));
    pages
}

fn way_page(laying: &Laying<'_>, guide: &model::Learning, stops: &[&model::LearningStop]) -> Page {
    let row = |(at, stop): (usize, &&model::LearningStop)| WayStop {
        number: at + 1,
        link: stop_link(guide, stop),
        minutes: minutes(stop),
        can: lines(&stop.can),
    };
    let way = Way {
        purpose: guide.purpose.value.0.clone(),
        stops: stops.iter().enumerate().map(row).collect(),
        minutes: stops.iter().filter_map(|stop| minutes(stop)).sum(),
        done: markdown(guide.done.as_ref()),
    };
    let link = way_link(laying, guide);
    frame::page(&link.address, "kind-learning", &link.title, Body::Way(Box::new(way)))
}

fn way_link(laying: &Laying<'_>, guide: &model::Learning) -> Link {
    laying.link(crate::proof::Thing::Guide(Kind::Learning), guide.learning.value.as_str())
}

fn stop_link(guide: &model::Learning, stop: &model::LearningStop) -> Link {
    let address = addresses::stop(guide.learning.value.as_str(), stop.stop.value.as_str());
    Link { title: stop.title.value.clone(), address }
}

fn minutes(stop: &model::LearningStop) -> Option<u32> {
    stop.minutes.as_ref().map(|minutes| whole(told(minutes)))
}

fn stop_page(laying: &Laying<'_>, guide: &model::Learning, stops: &[&model::LearningStop], at: usize) -> Option<Page> {
    let stop = stops.get(at)?;
    let beside = |at: Option<usize>| at.and_then(|at| stops.get(at)).map(|stop| stop_link(guide, stop));
    let link = stop_link(guide, stop);
    let body = LearningStop {
        way: way_link(laying, guide),
        number: at + 1,
        of: stops.len(),
        says: markdown(stop.says.as_ref()),
        minutes: minutes(stop),
        read: stop.read.iter().filter_map(|named| laying.named_guide(Some(named))).collect(),
        can: lines(&stop.can),
        practise: stop.practise.iter().filter_map(|named| practised(laying, named)).collect(),
        check: self_check::questions(laying, stop),
        before: beside(at.checked_sub(1)),
        after: beside(Some(at + 1)),
    };
    let mut page = frame::page(&link.address, "kind-stop", &link.title, Body::Stop(Box::new(body)));
    page.trail = vec![way_link(laying, guide)];
    Some(page)
}

fn practised(laying: &Laying<'_>, named: &Named) -> Option<Practised> {
    let id = named.value.as_str();
    let bench = laying.proofed.cases.contains_key(id).then(|| addresses::practice(id));
    Some(Practised { link: laying.named_guide(Some(named))?, bench })
}
