//! Sheets to print: what a guide says, in the order in which a hand works, with boxes and blanks.

use super::laying::{Laying, lamps, maybe_worded, safety, seen_on};
use super::leads::{self, Led, Reached};
use super::numbers::{in_hundred, told, whole};
use super::page::{
    Body, CheckGroup, Checklist, JobLine, Link, Page, Sheet, SheetAnswer, SheetOf, SheetProbe, SymptomSheet,
};
use super::questions::Asking;
use super::symptom::{self, Remedies};
use super::{addresses, frame, guides};
use crate::model::{self, Kind, Order, SheetLayout};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::reckoning::diagnosis::{Fraction, Plan};
use std::collections::BTreeMap;

/// A sheet for every job and checklist that is wanted.
pub fn pages(laying: &Laying<'_>, is_wanted: impl Fn(&model::Named) -> bool) -> Vec<Page> {
    let all = &laying.proofed.guides;
    let jobs = all.procedures.iter().filter(|(_, guide)| is_wanted(&guide.procedure)).map(|(_, guide)| {
        let of = SheetOf::Procedure(Box::new(guides::procedure(laying, guide)));
        let mut page = page(laying, Kind::Procedure, guide.procedure.value.as_str(), guide.kit.as_ref(), of);
        page.rail = laying.rail_at(guide.kit.as_ref(), guide.place.as_ref());
        page
    });
    let checks = all.checklists.iter().filter(|(_, guide)| is_wanted(&guide.checklist)).map(|(_, guide)| {
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
    let paper = laying.proofed.guides.handbook.as_ref().map_or(model::Paper::A4, |(_, file)| file.paper);
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
    let reached = leads::reached(&case.diagnosis.tree(Plan::Order(&order)).root);
    // What no way comes to is not asked on paper either: a number means the same in both.
    let asked = order.iter().zip(&priced.found_by_step).filter(|(index, _)| reached.contains_key(&index.0));
    let asked: Vec<(usize, Fraction)> = asked.map(|(index, found)| (index.0, *found)).collect();
    let numbers: BTreeMap<usize, usize> = asked.iter().map(|(index, _)| *index).zip(1..).collect();
    let probes = asked.iter().filter_map(|(index, found)| {
        let paper = OnPaper { asking, numbers: &numbers, here: reached.get(index)? };
        paper.probe(*index, *found)
    });
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

/// A probe on its way to paper.
struct OnPaper<'a> {
    asking: &'a Asking<'a>,
    /// The number of each probe that is asked.
    numbers: &'a BTreeMap<usize, usize>,
    here: &'a Reached,
}

impl OnPaper<'_> {
    fn probe(&self, index: usize, found: Fraction) -> Option<SheetProbe> {
        let probe = self.asking.probe(index)?;
        let access = sound(&self.asking.guide.access);
        let needed: Vec<&model::Access> =
            self.here.opened.iter().filter_map(|job| access.get(job.0).copied()).collect();
        Some(SheetProbe {
            number: *self.numbers.get(&index)?,
            ask: probe.ask.value.clone(),
            who: probe.who.as_ref().map(|who| who.value),
            how: maybe_worded(probe.full.as_ref(), probe.short.as_ref()),
            safety: safety(needed.iter().flat_map(|job| &job.safety).chain(&probe.safety)),
            open: needed.iter().map(|job| job_line(self.asking, job)).collect(),
            minutes: whole(told(&probe.minutes)),
            answers: self.here.answers.iter().map(|(at, led)| self.answer(index, *at, led)).collect(),
            found: in_hundred(found),
        })
    }

    fn answer(&self, probe: usize, at: usize, led: &Led) -> SheetAnswer {
        let causes: Vec<&model::Cause> = led.causes.iter().filter_map(|who| self.asking.cause(who)).collect();
        let mut remedies: Vec<Link> = Vec::new();
        for remedy in causes.iter().filter_map(|cause| self.asking.laying.named_guide(cause.lasting.as_ref())) {
            if !remedies.contains(&remedy) {
                remedies.push(remedy);
            }
        }
        SheetAnswer {
            title: self.asking.answer_title(probe, at),
            message: self.asking.answer_message(probe, Some(at)),
            // Where ways part later, the earliest question asks too much rather than too little.
            next: led.next.iter().filter_map(|next| self.numbers.get(next).copied()).min(),
            means: causes.into_iter().map(|cause| cause.title.value.clone()).collect(),
            remedies,
        }
    }
}

fn job_line(asking: &Asking<'_>, job: &model::Access) -> JobLine {
    let procedure = asking.laying.named_guide(job.procedure.as_ref());
    JobLine { title: job.title.value.clone(), minutes: whole(told(&job.open)), procedure }
}
