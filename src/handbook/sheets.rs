//! Sheets to print: what a guide says, in the order in which a hand works, with boxes and blanks.

use super::laying::{Laying, lamps, maybe_worded, safety, seen_on};
use super::numbers::{in_hundred, told, whole};
use super::page::{
    Body, CheckGroup, Checklist, JobLine, Link, Page, Sheet, SheetAnswer, SheetOf, SheetProbe, SymptomSheet,
};
use super::questions::Asking;
use super::symptom::{self, Remedies};
use super::{addresses, frame, guides};
use crate::model::{self, Kind, Order, Paper, SheetLayout};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::reckoning::diagnosis::{Fraction, ProbeIndex};
use std::collections::BTreeSet;

/// A sheet for every job and checklist.
pub fn pages(laying: &Laying<'_>) -> Vec<Page> {
    let all = &laying.proofed.guides;
    let jobs = all.procedures.iter().map(|(_, guide)| {
        let of = SheetOf::Procedure(Box::new(guides::procedure(laying, guide)));
        let mut page = page(laying, Kind::Procedure, guide.procedure.value.as_str(), guide.kit.as_ref(), of);
        page.rail = laying.rail_at(guide.kit.as_ref(), guide.place.as_ref());
        page
    });
    let checks = all.checklists.iter().map(|(_, guide)| {
        let list = Box::new(guides::checklist(laying, guide));
        let of = match guide.sheet {
            SheetLayout::List => SheetOf::Checklist(list),
            SheetLayout::Rows => SheetOf::Rows(list),
            SheetLayout::Queue => SheetOf::Queue(Box::new(by_instrument(*list))),
        };
        let mut page = page(laying, Kind::Checklist, guide.checklist.value.as_str(), guide.kit.as_ref(), of);
        page.rail = laying.rail_at(guide.kit.as_ref(), None);
        page
    });
    jobs.chain(checks).collect()
}

/// The sheet of a fault-finding guide.
pub fn fault_page(asking: &Asking<'_>) -> Page {
    let guide = asking.guide;
    let of = SheetOf::Symptom(symptom(asking));
    let mut page = page(&asking.laying, Kind::Symptom, guide.symptom.value.as_str(), Some(&guide.kit), of);
    page.rail = asking.laying.rail_at(Some(&guide.kit), None);
    page
}

/// The items of a queue: those with the same tool together, in the order in which the tools come up; looks and tries by hand first.
fn by_instrument(list: Checklist) -> Checklist {
    let mut groups: Vec<CheckGroup> = Vec::new();
    for item in list.groups.into_iter().flat_map(|group| group.items) {
        let heading = item.with.as_ref().map_or_else(String::new, |tool| tool.title.clone());
        match groups.iter_mut().find(|group| group.heading == heading) {
            Some(group) => group.items.push(item),
            None => groups.push(CheckGroup { heading, items: vec![item] }),
        }
    }
    groups.sort_by_key(|group| !group.heading.is_empty());
    let items = groups.iter_mut().flat_map(|group| &mut group.items);
    items.zip(1..).for_each(|(item, number)| item.number = number);
    Checklist { groups, ..list }
}

fn page(laying: &Laying<'_>, kind: Kind, id: &str, kit: Option<&model::Named>, of: SheetOf) -> Page {
    let guide = laying.link(Thing::Guide(kind), id);
    let paper = laying.proofed.guides.handbook.as_ref().map_or(Paper::A4, |(_, file)| file.paper);
    let title = guide.title.clone();
    let mut trail = frame::trail_to_kit(laying, kit);
    trail.push(guide.clone());
    let mut page = frame::page(
        &addresses::sheet(id),
        "kind-sheet",
        &title,
        Body::Sheet(Box::new(Sheet { guide, paper, pdf: None, of })),
    );
    page.trail = trail;
    page
}

fn symptom(asking: &Asking<'_>) -> SymptomSheet {
    let Asking { laying, guide, case, .. } = asking;
    let written = case.diagnosis.as_written_order();
    let order = match guide.order {
        Order::AsWritten => written,
        Order::Quickest => case.diagnosis.quickest_order(Default::default()).priced.order,
    };
    let priced = case.diagnosis.price(&order);
    let mut opened = BTreeSet::new();
    let probes = order.iter().enumerate().zip(&priced.found_by_step);
    let probes = probes.filter_map(|((at, index), found)| probe(asking, at + 1, *index, *found, &mut opened));
    SymptomSheet {
        seen_on: seen_on(guide.seen_on.value),
        lamps: lamps(guide),
        says: guide.says.value.0.clone(),
        first: symptom::first(laying, guide),
        probes: probes.collect(),
        rest_says: guide.rest.as_ref().map(|rest| rest.says.value.0.clone()),
        causes: asking.share_rows(&case.diagnosis.belief(), Remedies::Told),
    }
}

fn probe<'a>(
    asking: &Asking<'a>,
    number: usize,
    index: ProbeIndex,
    found: Fraction,
    opened: &mut BTreeSet<&'a str>,
) -> Option<SheetProbe> {
    let probe = asking.probe(index.0)?;
    let mut needed = Vec::new();
    probe.needs.iter().for_each(|need| open_first(asking.guide, need.value.as_str(), opened, &mut needed));
    Some(SheetProbe {
        number,
        ask: probe.ask.value.clone(),
        who: probe.who.as_ref().map(|who| who.value),
        how: maybe_worded(probe.full.as_ref(), probe.short.as_ref()),
        safety: safety(needed.iter().flat_map(|job| &job.safety).chain(&probe.safety)),
        open: needed.iter().map(|job| job_line(asking, job)).collect(),
        minutes: whole(told(&probe.minutes)),
        answers: answers(asking, probe, index.0),
        found: in_hundred(found),
    })
}

/// The jobs that are still shut, those that others need first.
fn open_first<'a>(
    guide: &'a model::Symptom,
    id: &str,
    opened: &mut BTreeSet<&'a str>,
    needed: &mut Vec<&'a model::Access>,
) {
    let Some(job) = sound(&guide.access).into_iter().find(|job| job.access.value.as_str() == id) else { return };
    if !opened.insert(job.access.value.as_str()) {
        return;
    }
    job.needs.iter().for_each(|need| open_first(guide, need.value.as_str(), opened, needed));
    needed.push(job);
}

fn job_line(asking: &Asking<'_>, job: &model::Access) -> JobLine {
    let procedure = asking.laying.named_guide(job.procedure.as_ref());
    JobLine { title: job.title.value.clone(), minutes: whole(told(&job.open)), procedure }
}

fn answers(asking: &Asking<'_>, probe: &model::Probe, index: usize) -> Vec<SheetAnswer> {
    if !probe.mends.is_empty() {
        let means: Vec<&str> = probe.mends.iter().map(|cause| cause.value.as_str()).collect();
        return vec![answer(asking, index, 0, &means), answer(asking, index, 1, &[])];
    }
    let answers = sound(&probe.answers).into_iter().enumerate();
    answers
        .map(|(at, written)| {
            let meant: Vec<&str> = sound(&written.means).into_iter().map(|meant| meant.cause.value.as_str()).collect();
            // The unremarkable answer settles nothing, even if a cause that comes and goes may give it too.
            answer(asking, index, at, if meant.contains(&"otherwise") { &[] } else { &meant })
        })
        .collect()
}

fn answer(asking: &Asking<'_>, probe: usize, at: usize, means: &[&str]) -> SheetAnswer {
    let causes = sound(&asking.guide.causes).into_iter().filter(|cause| means.contains(&cause.cause.value.as_str()));
    let causes: Vec<&model::Cause> = causes.collect();
    let mut remedies: Vec<Link> =
        causes.iter().filter_map(|cause| asking.laying.named_guide(cause.lasting.as_ref())).collect();
    remedies.dedup();
    SheetAnswer {
        title: asking.answer_title(probe, at),
        message: asking.answer_message(probe, Some(at)),
        means: causes.into_iter().map(|cause| cause.title.value.clone()).collect(),
        remedies,
    }
}
