//! Hazardous consumables: a safety note stands before the step that uses them, with a word at least as serious as the stores say.

use crate::model::prose::{LinkKind, LinkTo, links};
use crate::model::{Guides, Named, Procedure, Prose, Safety, Signal, Step};
use crate::proof::finding::Finding;
use crate::proof::findings::safety;
use crate::source::{Place, Texts, Tolerant};
use std::collections::{BTreeMap, BTreeSet};

/// What the stores say of a hazardous consumable.
struct Hazard {
    signal: Signal,
    place: Place,
}

/// Checks jobs, probes and checklist items.
pub fn check(guides: &Guides, texts: &Texts, findings: &mut Vec<Finding>) {
    let hazards = hazards(guides);
    let mut checking = Checking { hazards, texts, findings };
    guides.procedures.iter().for_each(|(_, guide)| checking.procedure(guide));
    for (_, guide) in &guides.symptoms {
        for first in guide.first.iter().filter_map(Tolerant::sound) {
            checking.texts(first.full.iter().chain(&first.short), most_serious(&first.safety));
        }
        for probe in guide.probes.iter().filter_map(Tolerant::sound) {
            let said = most_serious(&probe.safety);
            checking.texts(probe.full.iter().chain(&probe.short), said);
        }
    }
    for (_, guide) in &guides.checklists {
        let top = most_serious(&guide.safety);
        for item in guide.items.iter().filter_map(Tolerant::sound) {
            let said = more_serious(top, most_serious(&item.safety));
            checking.texts([&item.full].into_iter().chain(&item.short), said);
        }
    }
}

fn hazards(guides: &Guides) -> BTreeMap<String, Hazard> {
    let stored = guides.stores.iter().flat_map(|(_, stores)| stores.consumables.iter().filter_map(Tolerant::sound));
    stored
        .filter(|item| item.signal.is_some() || !item.hazards.is_empty())
        .map(|item| {
            let signal = item.signal.as_ref().map_or(Signal::Caution, |signal| signal.value);
            (item.consumable.value.0.clone(), Hazard { signal, place: item.consumable.place })
        })
        .collect()
}

fn most_serious(notes: &[Tolerant<Safety>]) -> Option<Signal> {
    notes.iter().filter_map(Tolerant::sound).filter_map(|note| note.note().map(|(signal, _)| signal)).min()
}

fn more_serious(one: Option<Signal>, other: Option<Signal>) -> Option<Signal> {
    [one, other].into_iter().flatten().min()
}

struct Checking<'c> {
    hazards: BTreeMap<String, Hazard>,
    texts: &'c Texts,
    findings: &'c mut Vec<Finding>,
}

impl Checking<'_> {
    fn procedure(&mut self, guide: &Procedure) {
        let mut said = most_serious(&guide.safety);
        let mut used = BTreeSet::new();
        let top = said;
        for step in guide.steps.iter().filter_map(Tolerant::sound) {
            said = more_serious(said, most_serious(&step.safety));
            for named in self.used_in(step) {
                used.insert(named.value.0.clone());
                self.held(&named, said);
            }
        }
        for check in guide.prove.iter().filter_map(Tolerant::sound) {
            self.texts(check.full.iter().chain(&check.short), said);
        }
        // What is laid out but named in no step may be used in any: only a note for the whole job stands before it.
        for need in guide.needs.consumables.iter().filter_map(Tolerant::sound) {
            if !used.contains(need.id.value.as_str()) {
                self.held(&need.id, top);
            }
        }
    }

    fn used_in(&self, step: &Step) -> Vec<Named> {
        let subs =
            step.steps.iter().filter_map(Tolerant::sound).flat_map(|sub| [&sub.full].into_iter().chain(&sub.short));
        let texts = [&step.full].into_iter().chain(&step.short).chain(&step.learner).chain(subs);
        let linked = texts.flat_map(|text| self.linked(text));
        step.uses.iter().cloned().chain(linked).collect()
    }

    fn texts<'a>(&mut self, texts: impl Iterator<Item = &'a Prose>, said: Option<Signal>) {
        let linked: Vec<Named> = texts.flat_map(|text| self.linked(text)).collect();
        linked.iter().for_each(|named| self.held(named, said));
    }

    fn linked(&self, text: &Prose) -> Vec<Named> {
        let named = links(&text.value.0).into_iter().filter_map(|link| match link.to {
            LinkTo::Short(LinkKind::Consumable, id) => {
                Some(Named { value: crate::model::Id(id), place: self.texts.within(text.place, &link.written, 0) })
            }
            _ => None,
        });
        named.collect()
    }

    fn held(&mut self, named: &Named, said: Option<Signal>) {
        let Some(hazard) = self.hazards.get(named.value.as_str()) else { return };
        if said.is_none_or(|said| said > hazard.signal) {
            self.findings.push(safety::hazard_without_safety(named, hazard.signal, hazard.place));
        }
    }
}
