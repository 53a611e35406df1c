//! Jobs, checklists and circuits as pages.

use super::laying::{Laying, markdown, safety, worded};
use super::numbers::{told, whole};
use super::page::{Body, CheckGroup, CheckItem, Checklist, Link, Page, Procedure, Step, Torque, Worded};
use super::{addresses, frame, limits};
use crate::model::{self, Kind};
use crate::proof::Thing;
use crate::proof::cases::{sound, waiting};
use crate::reckoning::quantity::{Dimension, Expect, Quantity};

/// A job's page.
pub fn procedure_page(laying: &Laying<'_>, guide: &model::Procedure) -> Page {
    let id = guide.procedure.value.as_str();
    let body = Body::Procedure(Box::new(procedure(laying, guide)));
    let mut page = frame::page(&addresses::guide(Kind::Procedure, id), "kind-procedure", &guide.title.value, body);
    page.trail = frame::trail_to_kit(laying, guide.kit.as_ref());
    page.rail = laying.rail_at(guide.kit.as_ref(), guide.place.as_ref());
    page.sheet = Some(addresses::sheet(id));
    page
}

/// What a job says.
pub fn procedure(laying: &Laying<'_>, guide: &model::Procedure) -> Procedure {
    let steps = sound(&guide.steps);
    Procedure {
        purpose: guide.purpose.value.0.clone(),
        not_when: guide.not_when.iter().map(|text| text.value.0.clone()).collect(),
        who: guide.who.as_ref().map(|who| who.value),
        minutes: whole(told(&guide.hands_on)),
        waiting: whole(waiting(guide)),
        waiting_for: steps.iter().filter_map(|step| step.wait_for.as_ref()).map(|line| line.value.clone()).collect(),
        holds: guide.holds.as_ref().map(|holds| holds.value.clone()),
        lasting: laying.named_guide(guide.lasting.as_ref()),
        prove: laying.checks(guide),
        needs: laying.needs(&guide.needs),
        safety: safety(&guide.safety),
        steps: steps.into_iter().enumerate().map(|(index, guide)| step(laying, index + 1, guide)).collect(),
        next: markdown(guide.next.as_ref()),
        mends: mends(laying, guide.procedure.value.as_str()),
    }
}

/// The symptoms that name a job as a remedy.
fn mends(laying: &Laying<'_>, id: &str) -> Vec<Link> {
    let mending = laying.directory.mended.get(id).into_iter().flatten();
    mending.map(|guide| laying.link(Thing::Guide(Kind::Symptom), guide.symptom.value.as_str())).collect()
}

fn step(laying: &Laying<'_>, number: usize, step: &model::Step) -> Step {
    Step {
        number,
        what: worded(&step.full, step.short.as_ref()),
        learner: markdown(step.learner.as_ref()),
        subs: sound(&step.steps).into_iter().map(|sub| worded(&sub.full, sub.short.as_ref())).collect::<Vec<Worded>>(),
        safety: safety(&step.safety),
        picture: laying.picture(step.picture.as_ref()),
        torque: step.torque.as_ref().map(|torque| tightness(laying, torque)),
        wait: step.wait.as_ref().map(|wait| whole(told(wait))),
        wait_for: step.wait_for.as_ref().map(|line| line.value.clone()),
    }
}

fn tightness(laying: &Laying<'_>, torque: &model::Torque) -> Torque {
    let value = |line: &Option<model::Line>| line.as_ref().map(|line| line.value.clone());
    let read = Quantity::parse(&torque.torque.value, Expect::of(Dimension::Torque));
    let class = torque.property_class.as_ref().map(|class| class.value.clone());
    Torque {
        value: read.map_or_else(|_| torque.torque.value.clone(), |torque| torque.show(limits::system(laying.units))),
        tolerance: value(&torque.tolerance),
        fastener: [value(&torque.thread), class, value(&torque.material)].into_iter().flatten().collect(),
        state: torque.state,
        unjudged: torque.material.is_some(),
        by_feel: markdown(torque.by_feel.as_ref()),
        source: value(&torque.source),
    }
}

/// A checklist's page.
pub fn checklist_page(laying: &Laying<'_>, guide: &model::Checklist) -> Page {
    let id = guide.checklist.value.as_str();
    let body = Body::Checklist(Box::new(checklist(laying, guide)));
    let mut page = frame::page(&addresses::guide(Kind::Checklist, id), "kind-checklist", &guide.title.value, body);
    page.trail = frame::trail_to_kit(laying, guide.kit.as_ref());
    page.rail = laying.rail_at(guide.kit.as_ref(), None);
    page.sheet = Some(addresses::sheet(id));
    page
}

/// What a checklist says.
pub fn checklist(laying: &Laying<'_>, guide: &model::Checklist) -> Checklist {
    let mut groups: Vec<CheckGroup> = Vec::new();
    for (index, item) in sound(&guide.items).into_iter().enumerate() {
        let made = check_item(laying, guide, index + 1, item);
        match (&item.heading, groups.last_mut()) {
            (None, Some(group)) => group.items.push(made),
            (heading, _) => {
                let heading = heading.as_ref().map_or_else(String::new, |heading| heading.value.clone());
                groups.push(CheckGroup { heading, items: vec![made] });
            }
        }
    }
    Checklist {
        purpose: guide.purpose.value.0.clone(),
        minutes: whole(told(&guide.minutes)),
        needs: laying.needs(&guide.needs),
        safety: safety(&guide.safety),
        groups,
        done: markdown(guide.done.as_ref()),
    }
}

/// What an item says, under its number.
pub fn check_item(laying: &Laying<'_>, guide: &model::Checklist, number: usize, item: &model::CheckItem) -> CheckItem {
    CheckItem {
        id: format!("{}-{}", guide.checklist.value, item.item.value),
        number,
        what: worded(&item.full, item.short.as_ref()),
        place: item.place.as_ref().map(|place| place.value.0.clone()),
        with: item.with.as_ref().map(|tool| laying.link(Thing::Tool, tool.value.as_str())),
        pieces: item.pieces.map_or(1, |pieces| pieces.0),
        read: item.read.as_ref().map(|read| read.value.clone()),
        limit: item.limit.as_ref().and_then(|limit| laying.limit(limit.value.as_str())),
        safety: safety(&item.safety),
        picture: laying.picture(item.picture.as_ref()),
        if_not: laying.named_guide(item.if_not.as_ref()),
    }
}
