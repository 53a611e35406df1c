//! Every leaf of a guide that a check looks at, in the order written: one walk that all checks share.
//!
//! In: guides. Out: [`Leaf`] values through a callback, and which guide they belong to.

use super::index::{Thing, Wanted};
use crate::model::{
    CheckItem, Circuit, Guides, Kind, Meant, Named, Needs, Picture, Probe, Procedure, Prose, Safety, Share, Step,
    Symptom, Time, Told, Waiver,
};
use crate::source::{FileId, Placed, Tolerant};

/// Something in a guide that a check looks at.
pub enum Leaf<'a> {
    /// It points at something.
    Points(Wanted, &'a Named),
    /// Words for the reader.
    Prose(&'a Prose),
    /// A time.
    Time(&'a Time),
    /// A share.
    Share(&'a Placed<Told<Share>>),
    /// How often a cause answers so.
    Odds(&'a Meant),
    /// A safety note.
    Safety(&'a Safety, crate::source::Place),
}

/// A guide's kind, id and file.
#[derive(Debug, Clone, Copy)]
pub struct GuideRef<'a> {
    /// Its kind.
    pub kind: Kind,
    /// Its id.
    pub id: &'a Named,
    /// Its file.
    pub file: FileId,
}

type Visit<'v, 'a> = dyn FnMut(GuideRef<'a>, Leaf<'a>) + 'v;

/// All guides with their kinds, ids and files.
pub fn guides(guides: &Guides) -> Vec<GuideRef<'_>> {
    let mut all = Vec::new();
    let mut add = |kind, file: &FileId, id| all.push(GuideRef { kind, id, file: *file });
    guides.handbook.iter().for_each(|(file, guide)| add(Kind::Handbook, file, &guide.handbook));
    guides.symptoms.iter().for_each(|(file, guide)| add(Kind::Symptom, file, &guide.symptom));
    guides.procedures.iter().for_each(|(file, guide)| add(Kind::Procedure, file, &guide.procedure));
    guides.checklists.iter().for_each(|(file, guide)| add(Kind::Checklist, file, &guide.checklist));
    guides.circuits.iter().for_each(|(file, guide)| add(Kind::Circuit, file, &guide.circuit));
    guides.stores.iter().for_each(|(file, guide)| add(Kind::Stores, file, &guide.stores));
    guides.limits.iter().for_each(|(file, guide)| add(Kind::Limits, file, &guide.limits));
    guides.words.iter().for_each(|(file, guide)| add(Kind::Words, file, &guide.words));
    guides.packs.iter().for_each(|(file, guide)| add(Kind::Pack, file, &guide.pack));
    guides.learning.iter().for_each(|(file, guide)| add(Kind::Learning, file, &guide.learning));
    all
}

/// All lists of pictures.
pub fn pictures(guides: &Guides) -> Vec<(FileId, &[Tolerant<Picture>])> {
    let mut all: Vec<(FileId, &[Tolerant<Picture>])> = Vec::new();
    all.extend(guides.handbook.iter().map(|(file, guide)| (*file, &*guide.pictures)));
    all.extend(guides.symptoms.iter().map(|(file, guide)| (*file, &*guide.pictures)));
    all.extend(guides.procedures.iter().map(|(file, guide)| (*file, &*guide.pictures)));
    all.extend(guides.checklists.iter().map(|(file, guide)| (*file, &*guide.pictures)));
    all
}

/// All waivers, with the file for which they hold.
pub fn waivers(guides: &Guides) -> Vec<(FileId, &Waiver)> {
    let mut lists: Vec<(FileId, &[Tolerant<Waiver>])> = Vec::new();
    lists.extend(guides.handbook.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.symptoms.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.procedures.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.checklists.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.circuits.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.stores.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.limits.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.words.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.packs.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists.extend(guides.learning.iter().map(|(file, guide)| (*file, &*guide.accepts)));
    lists
        .into_iter()
        .flat_map(|(file, list)| list.iter().filter_map(Tolerant::sound).map(move |waiver| (file, waiver)))
        .collect()
}

/// Walks every leaf of every guide.
pub fn walk<'a>(guides: &'a Guides, visit: &mut Visit<'_, 'a>) {
    walk_handbook(guides, visit);
    for (file, guide) in &guides.symptoms {
        let me = GuideRef { kind: Kind::Symptom, id: &guide.symptom, file: *file };
        walk_symptom(guide, &mut |leaf| visit(me, leaf));
    }
    for (file, guide) in &guides.procedures {
        let me = GuideRef { kind: Kind::Procedure, id: &guide.procedure, file: *file };
        walk_procedure(guide, &mut |leaf| visit(me, leaf));
    }
    walk_checklists(guides, visit);
    walk_learning(guides, visit);
    walk_lists(guides, visit);
}

fn walk_handbook<'a>(guides: &'a Guides, visit: &mut Visit<'_, 'a>) {
    let Some((file, guide)) = &guides.handbook else { return };
    let me = GuideRef { kind: Kind::Handbook, id: &guide.handbook, file: *file };
    let leaf = &mut |leaf| visit(me, leaf);
    prose([&guide.caution].into_iter().chain(&guide.says), leaf);
    captions(&guide.pictures, leaf);
    for withdrawn in guide.withdrawn.iter().filter_map(Tolerant::sound) {
        points(Wanted::AnyGuide, &withdrawn.instead, leaf);
    }
}

fn walk_checklists<'a>(guides: &'a Guides, visit: &mut Visit<'_, 'a>) {
    for (file, guide) in &guides.checklists {
        let me = GuideRef { kind: Kind::Checklist, id: &guide.checklist, file: *file };
        let leaf = &mut |leaf| visit(me, leaf);
        points(Wanted::One(Thing::Item), &guide.kit, leaf);
        prose([&guide.purpose].into_iter().chain(&guide.done), leaf);
        needs(&guide.needs, leaf);
        leaf(Leaf::Time(&guide.minutes));
        safety(&guide.safety, guide.checklist.place, leaf);
        guide.items.iter().filter_map(Tolerant::sound).for_each(|item| walk_item(item, leaf));
        captions(&guide.pictures, leaf);
    }
}

fn walk_learning<'a>(guides: &'a Guides, visit: &mut Visit<'_, 'a>) {
    for (file, guide) in &guides.learning {
        let me = GuideRef { kind: Kind::Learning, id: &guide.learning, file: *file };
        let leaf = &mut |leaf| visit(me, leaf);
        prose([&guide.purpose].into_iter().chain(&guide.done), leaf);
        for stop in guide.stops.iter().filter_map(Tolerant::sound) {
            prose(&stop.says, leaf);
            stop.minutes.iter().for_each(|minutes| leaf(Leaf::Time(minutes)));
            let guides = stop.read.iter().chain(&*stop.practise);
            guides.for_each(|named| leaf(Leaf::Points(Wanted::AnyGuide, named)));
        }
    }
}

fn walk_item<'a>(item: &'a CheckItem, leaf: &mut dyn FnMut(Leaf<'a>)) {
    prose([&item.full].into_iter().chain(&item.short), leaf);
    points(Wanted::One(Thing::Tool), &item.with, leaf);
    points(Wanted::One(Thing::Limit), &item.limit, leaf);
    safety(&item.safety, item.item.place, leaf);
    points(Wanted::One(Thing::Picture), &item.picture, leaf);
    points(Wanted::AnyGuide, &item.if_not, leaf);
}

/// Points, pieces and faults inside a circuit are the business of `proof::network`.
fn walk_circuit<'a>(guide: &'a Circuit, leaf: &mut dyn FnMut(Leaf<'a>)) {
    points(Wanted::One(Thing::Item), &guide.kit, leaf);
    prose(&guide.says, leaf);
    for used in guide.uses.iter().filter_map(Tolerant::sound) {
        leaf(Leaf::Points(Wanted::One(Thing::Guide(Kind::Circuit)), &used.circuit));
    }
    guide.positions.iter().filter_map(Tolerant::sound).for_each(|position| prose(&position.says, leaf));
    guide.faults.iter().filter_map(Tolerant::sound).for_each(|fault| prose(&fault.says, leaf));
    guide.lamps.iter().filter_map(Tolerant::sound).for_each(|lamp| prose(&lamp.says, leaf));
    guide.readings.iter().filter_map(Tolerant::sound).for_each(|reading| prose(&reading.says, leaf));
    if let Some(teaches) = &guide.teaches {
        prose(&teaches.says, leaf);
        teaches.lessons.iter().filter_map(Tolerant::sound).for_each(|lesson| prose([&lesson.says], leaf));
    }
}

fn walk_lists<'a>(guides: &'a Guides, visit: &mut Visit<'_, 'a>) {
    for (file, guide) in &guides.circuits {
        let me = GuideRef { kind: Kind::Circuit, id: &guide.circuit, file: *file };
        walk_circuit(guide, &mut |leaf| visit(me, leaf));
    }
    for (file, guide) in &guides.stores {
        let me = GuideRef { kind: Kind::Stores, id: &guide.stores, file: *file };
        let leaf = &mut |leaf| visit(me, leaf);
        guide
            .parts
            .iter()
            .filter_map(Tolerant::sound)
            .for_each(|part| prose(part.says.iter().chain(&part.substitute), leaf));
        guide
            .tools
            .iter()
            .filter_map(Tolerant::sound)
            .for_each(|tool| prose(tool.says.iter().chain(&tool.substitute), leaf));
        guide
            .consumables
            .iter()
            .filter_map(Tolerant::sound)
            .for_each(|item| prose(item.says.iter().chain(&item.substitute), leaf));
    }
    for (file, guide) in &guides.limits {
        let me = GuideRef { kind: Kind::Limits, id: &guide.limits, file: *file };
        let leaf = &mut |leaf| visit(me, leaf);
        prose(&guide.says, leaf);
        for limit in guide.entries.iter().filter_map(Tolerant::sound) {
            points(Wanted::One(Thing::Item), &limit.kit, leaf);
            prose(&limit.how, leaf);
        }
    }
    for (file, guide) in &guides.words {
        let me = GuideRef { kind: Kind::Words, id: &guide.words, file: *file };
        guide.entries.iter().filter_map(Tolerant::sound).for_each(|word| visit(me, Leaf::Prose(&word.says)));
    }
}

/// Walks the leaves of a fault-finding guide. Causes, opening jobs and probes inside it are the business of `checks::diagnosis`.
pub fn walk_symptom<'a>(guide: &'a Symptom, leaf: &mut dyn FnMut(Leaf<'a>)) {
    leaf(Leaf::Points(Wanted::One(Thing::Item), &guide.kit));
    points(Wanted::One(Thing::Guide(Kind::Circuit)), &guide.circuit, leaf);
    prose([&guide.says].into_iter().chain(&guide.why), leaf);
    for unlike in guide.unlike.iter().filter_map(Tolerant::sound) {
        leaf(Leaf::Points(Wanted::AnyGuide, &unlike.guide));
    }
    for first in guide.first.iter().filter_map(Tolerant::sound) {
        prose(first.full.iter().chain(&first.short), leaf);
        leaf(Leaf::Time(&first.minutes));
        safety(&first.safety, first.first.place, leaf);
        first.answers.iter().filter_map(Tolerant::sound).for_each(|answer| prose(&answer.says, leaf));
    }
    for cause in guide.causes.iter().filter_map(Tolerant::sound) {
        cause.share.iter().for_each(|share| leaf(Leaf::Share(share)));
        prose(&cause.says, leaf);
        points(Wanted::One(Thing::Guide(Kind::Procedure)), &cause.lasting, leaf);
        points(Wanted::One(Thing::Guide(Kind::Procedure)), &cause.stop_gap, leaf);
    }
    for access in guide.access.iter().filter_map(Tolerant::sound) {
        leaf(Leaf::Time(&access.open));
        leaf(Leaf::Time(&access.close));
        safety(&access.safety, access.access.place, leaf);
        points(Wanted::AnyGuide, &access.procedure, leaf);
    }
    guide.probes.iter().filter_map(Tolerant::sound).for_each(|probe| walk_probe(probe, leaf));
    if let Some(rest) = &guide.rest {
        leaf(Leaf::Prose(&rest.says));
        points(Wanted::One(Thing::Guide(Kind::Procedure)), &rest.lasting, leaf);
    }
    captions(&guide.pictures, leaf);
}

fn walk_probe<'a>(probe: &'a Probe, leaf: &mut dyn FnMut(Leaf<'a>)) {
    prose(probe.full.iter().chain(&probe.short), leaf);
    leaf(Leaf::Time(&probe.minutes));
    safety(&probe.safety, probe.probe.place, leaf);
    points(Wanted::One(Thing::Picture), &probe.picture, leaf);
    points(Wanted::AnyGuide, &probe.procedure, leaf);
    let meant = probe.answers.iter().filter_map(Tolerant::sound).flat_map(|answer| &answer.means);
    meant.filter_map(Tolerant::sound).for_each(|meant| leaf(Leaf::Odds(meant)));
}

/// Walks the leaves of a job.
pub fn walk_procedure<'a>(guide: &'a Procedure, leaf: &mut dyn FnMut(Leaf<'a>)) {
    points(Wanted::One(Thing::Item), &guide.kit, leaf);
    prose([&guide.purpose].into_iter().chain(&guide.not_when).chain(&guide.next), leaf);
    points(Wanted::One(Thing::Guide(Kind::Procedure)), &guide.lasting, leaf);
    needs(&guide.needs, leaf);
    leaf(Leaf::Time(&guide.hands_on));
    safety(&guide.safety, guide.procedure.place, leaf);
    guide.steps.iter().filter_map(Tolerant::sound).for_each(|step| walk_step(step, leaf));
    for check in guide.prove.iter().filter_map(Tolerant::sound) {
        prose(check.full.iter().chain(&check.short), leaf);
        points(Wanted::One(Thing::Limit), &check.limit, leaf);
    }
    captions(&guide.pictures, leaf);
}

/// Walks the leaves of a step.
pub fn walk_step<'a>(step: &'a Step, leaf: &mut dyn FnMut(Leaf<'a>)) {
    safety(&step.safety, step.full.place, leaf);
    prose([&step.full].into_iter().chain(&step.short).chain(&step.learner), leaf);
    for sub in step.steps.iter().filter_map(Tolerant::sound) {
        prose([&sub.full].into_iter().chain(&sub.short), leaf);
    }
    step.uses.iter().for_each(|named| leaf(Leaf::Points(Wanted::One(Thing::Consumable), named)));
    points(Wanted::One(Thing::Picture), &step.picture, leaf);
    step.torque.iter().for_each(|torque| prose(&torque.by_feel, leaf));
    step.wait.iter().for_each(|wait| leaf(Leaf::Time(wait)));
}

fn needs<'a>(needs: &'a Needs, leaf: &mut dyn FnMut(Leaf<'a>)) {
    let lists = [(Thing::Tool, &needs.tools), (Thing::Part, &needs.parts), (Thing::Consumable, &needs.consumables)];
    for (thing, list) in lists {
        for need in list.iter().filter_map(Tolerant::sound) {
            leaf(Leaf::Points(Wanted::One(thing), &need.id));
            prose(&need.note, leaf);
        }
    }
}

fn prose<'a>(texts: impl IntoIterator<Item = &'a Prose>, leaf: &mut dyn FnMut(Leaf<'a>)) {
    texts.into_iter().for_each(|text| leaf(Leaf::Prose(text)));
}

fn points<'a>(wanted: Wanted, at: &'a Option<Named>, leaf: &mut dyn FnMut(Leaf<'a>)) {
    at.iter().for_each(|named| leaf(Leaf::Points(wanted, named)));
}

fn safety<'a>(notes: &'a [Tolerant<Safety>], place: crate::source::Place, leaf: &mut dyn FnMut(Leaf<'a>)) {
    for note in notes.iter().filter_map(Tolerant::sound) {
        leaf(Leaf::Safety(note, place));
        note.note().into_iter().for_each(|(_, text)| leaf(Leaf::Prose(text)));
    }
}

fn captions<'a>(pictures: &'a [Tolerant<Picture>], leaf: &mut dyn FnMut(Leaf<'a>)) {
    pictures.iter().filter_map(Tolerant::sound).for_each(|picture| prose(&picture.caption, leaf));
}
