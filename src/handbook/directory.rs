//! Where to find what pages ask for again and again: things by their ids, who points at what, what a job mends.
//!
//! In: proofed guides. Out: [`Directory`], made once, so that no page searches a large handbook from end to end.
//! Leaves to others: what is made of what is found.

use crate::model::{self, Kind, Line, Many};
use crate::proof::cases::sound;
use crate::proof::{Proofed, Thing, all_pictures};
use crate::reckoning::quantity::{Expect, Uncertainty};
use std::collections::{BTreeMap, BTreeSet};

/// Things of a handbook by id.
pub struct Directory<'a> {
    /// The jobs.
    pub procedures: BTreeMap<&'a str, &'a model::Procedure>,
    /// The limits, each with its list.
    pub limits: BTreeMap<&'a str, (&'a model::Limits, &'a model::Limit)>,
    /// The consumables.
    pub consumables: BTreeMap<&'a str, &'a model::Consumable>,
    /// The instruments with what they may be off by, in the order of the stores.
    pub instruments: Vec<(&'a model::Tool, Uncertainty)>,
    /// The pictures.
    pub pictures: BTreeMap<&'a str, &'a model::Picture>,
    /// Other names of guides.
    pub also: BTreeMap<(Kind, &'a str), &'a Many<Line>>,
    /// The guides that point at a thing, in the order of the references.
    pub pointing: BTreeMap<(Thing, &'a str), Vec<(Kind, &'a str)>>,
    /// The fault-finding guides that name a job as a remedy, in their order.
    pub mended: BTreeMap<&'a str, Vec<&'a model::Symptom>>,
}

impl<'a> Directory<'a> {
    /// The directory of a handbook.
    pub fn of(proofed: &'a Proofed) -> Directory<'a> {
        let guides = &proofed.guides;
        let limits =
            guides.limits.iter().flat_map(|(_, list)| sound(&list.entries).into_iter().map(move |l| (list, l)));
        let consumables = guides.stores.iter().flat_map(|(_, stores)| sound(&stores.consumables));
        let pictures = all_pictures(guides).into_iter().flat_map(|(_, list)| sound(list));
        Directory {
            procedures: guides.procedures.iter().map(|(_, guide)| (guide.procedure.value.as_str(), guide)).collect(),
            limits: limits.map(|(list, limit)| (limit.limit.value.as_str(), (list, limit))).collect(),
            consumables: consumables.map(|item| (item.consumable.value.as_str(), item)).collect(),
            instruments: instruments(guides),
            pictures: pictures.map(|picture| (picture.picture.value.as_str(), picture)).collect(),
            also: also(guides),
            pointing: pointing(proofed),
            mended: mended(guides),
        }
    }
}

fn instruments(guides: &model::Guides) -> Vec<(&model::Tool, Uncertainty)> {
    let tools = guides.stores.iter().flat_map(|(_, stores)| sound(&stores.tools));
    let known = tools.filter_map(|tool| {
        let said = &tool.uncertainty.as_ref()?.value;
        Some((tool, Uncertainty::parse(said, Expect::ANY).ok()?))
    });
    known.collect()
}

fn also(guides: &model::Guides) -> BTreeMap<(Kind, &str), &Many<Line>> {
    let symptoms = guides.symptoms.iter().map(|(_, g)| ((Kind::Symptom, g.symptom.value.as_str()), &g.also));
    let procedures = guides.procedures.iter().map(|(_, g)| ((Kind::Procedure, g.procedure.value.as_str()), &g.also));
    let checklists = guides.checklists.iter().map(|(_, g)| ((Kind::Checklist, g.checklist.value.as_str()), &g.also));
    let learning = guides.learning.iter().map(|(_, g)| ((Kind::Learning, g.learning.value.as_str()), &g.also));
    symptoms.chain(procedures).chain(checklists).chain(learning).collect()
}

fn pointing(proofed: &Proofed) -> BTreeMap<(Thing, &str), Vec<(Kind, &str)>> {
    let mut pointing: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for reference in &proofed.references {
        let (thing, id) = &reference.to;
        pointing.entry((*thing, id.as_str())).or_default().push((reference.from.0, reference.from.1.as_str()));
    }
    pointing
}

fn mended(guides: &model::Guides) -> BTreeMap<&str, Vec<&model::Symptom>> {
    let mut mended: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for (_, guide) in &guides.symptoms {
        let causes = sound(&guide.causes).into_iter();
        let jobs = causes.flat_map(|cause| cause.lasting.iter().chain(&cause.stop_gap));
        let jobs: BTreeSet<&str> = jobs.map(|named| named.value.as_str()).collect();
        jobs.into_iter().for_each(|job| mended.entry(job).or_default().push(guide));
    }
    mended
}
