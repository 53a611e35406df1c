//! Who may do it: what a job or a question uses and warns of must not ask for more than the guide says.
//!
//! A thing of the stores asks for what its `who:` says, or else for what its signal word does: DANGER for an adult, WARNING and CAUTION
//! for somebody beside. A safety note of the guide with DANGER asks for an adult (mains), one with WARNING for somebody beside.

use crate::model::prose::{LinkKind, LinkTo, links};
use crate::model::{Guides, Many, Named, Need, Needs, Probe, Procedure, Prose, Safety, Signal, Symptom, Who};
use crate::proof::cases::sound;
use crate::proof::finding::Finding;
use crate::proof::findings::safety;
use crate::source::{Place, Tolerant};
use std::collections::BTreeMap;

/// Something that asks for more than anyone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Demand {
    /// Who it asks for.
    pub who: Who,
    /// What asks: an id of the stores or of a job, or a signal word.
    pub what: String,
    /// Where that stands.
    pub place: Place,
}

/// What asks for whom, over a handbook.
#[derive(Debug)]
pub struct Demands<'g> {
    tools: BTreeMap<&'g str, Demand>,
    consumables: BTreeMap<&'g str, Demand>,
    jobs: BTreeMap<&'g str, &'g Procedure>,
}

/// Checks every job and every question.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    let demands = Demands::of(guides);
    for (_, job) in &guides.procedures {
        let said = job.who.as_ref().map(|who| (who.value, who.place));
        findings.extend(demands.job(job).and_then(|demand| short(&job.procedure, said, &demand)));
    }
    for (_, guide) in &guides.symptoms {
        for probe in sound(&guide.probes) {
            let said = probe.who.as_ref().map(|who| (who.value, who.place));
            findings.extend(demands.probe(guide, probe).and_then(|demand| short(&probe.probe, said, &demand)));
        }
    }
}

fn short(named: &Named, said: Option<(Who, Place)>, demand: &Demand) -> Option<Finding> {
    let says = said.map_or(Who::Anyone, |(who, _)| who);
    (says < demand.who).then(|| safety::who_may_do_it(named, said, demand))
}

impl<'g> Demands<'g> {
    /// Of these guides.
    pub fn of(guides: &'g Guides) -> Demands<'g> {
        let stores = || guides.stores.iter().map(|(_, stores)| stores);
        let tools = stores().flat_map(|stores| sound(&stores.tools)).filter_map(|tool| {
            let who = tool.who.as_ref()?.value;
            Some((tool.tool.value.as_str(), demand(who, &tool.tool)))
        });
        let consumables = stores().flat_map(|stores| sound(&stores.consumables)).filter_map(|item| {
            let hazard = item.signal.as_ref().map(|signal| signal.value);
            let hazard = hazard.or_else(|| (!item.hazards.is_empty()).then_some(Signal::Caution));
            let who = item.who.as_ref().map(|who| who.value).or_else(|| hazard.and_then(asked_by_a_thing))?;
            Some((item.consumable.value.as_str(), demand(who, &item.consumable)))
        });
        let jobs = guides.procedures.iter().map(|(_, job)| (job.procedure.value.as_str(), job));
        Demands { tools: tools.collect(), consumables: consumables.collect(), jobs: jobs.collect() }
    }

    /// The most that a job asks for.
    pub fn job(&self, job: &Procedure) -> Option<Demand> {
        let steps = sound(&job.steps);
        let texts = steps.iter().flat_map(|step| {
            let subs = sound(&step.steps).into_iter().flat_map(|sub| [&sub.full].into_iter().chain(&sub.short));
            [&step.full].into_iter().chain(&step.short).chain(subs)
        });
        let proofs = sound(&job.prove);
        let texts = texts.chain(proofs.iter().flat_map(|check| check.full.iter().chain(&check.short)));
        let uses = steps.iter().flat_map(|step| &step.uses).filter_map(|named| self.consumable(named.value.as_str()));
        let notes = steps.iter().flat_map(|step| notes(&step.safety)).chain(notes(&job.safety));
        most(self.linked(texts).into_iter().chain(uses).chain(self.needed(&job.needs)).chain(notes))
    }

    /// The most that a question asks for, with the jobs that must be open for it.
    pub fn probe(&self, guide: &Symptom, probe: &Probe) -> Option<Demand> {
        let open = sound(&guide.access);
        let open: Vec<_> =
            open.into_iter().filter(|job| probe.needs.iter().any(|need| need.value == job.access.value)).collect();
        let jobs = open.iter().filter_map(|job| job.procedure.as_ref()).chain(&probe.procedure);
        let jobs = jobs.filter_map(|named| {
            let who = self.jobs.get(named.value.as_str())?.who.as_ref()?.value;
            Some(demand(who, named))
        });
        let notes = open.iter().flat_map(|job| notes(&job.safety)).chain(notes(&probe.safety));
        let texts = self.linked(probe.full.iter().chain(&probe.short));
        most(texts.into_iter().chain(jobs).chain(notes))
    }

    fn consumable(&self, id: &str) -> Option<Demand> {
        self.consumables.get(id).cloned()
    }

    fn needed(&self, needs: &Needs) -> Vec<Demand> {
        let ids = |needs: &Many<Tolerant<Need>>| -> Vec<String> {
            sound(needs).into_iter().map(|need| need.id.value.0.clone()).collect()
        };
        let tools = ids(&needs.tools).into_iter().filter_map(|id| self.tools.get(id.as_str()).cloned());
        let consumables = ids(&needs.consumables).into_iter().filter_map(|id| self.consumable(&id));
        tools.chain(consumables).collect()
    }

    /// What texts name by a link.
    fn linked<'t>(&self, texts: impl Iterator<Item = &'t Prose>) -> Vec<Demand> {
        let named = texts.flat_map(|text| links(&text.value.0)).filter_map(|link| match link.to {
            LinkTo::Short(LinkKind::Consumable, id) => self.consumable(&id),
            LinkTo::Short(LinkKind::Tool, id) => self.tools.get(id.as_str()).cloned(),
            _ => None,
        });
        named.collect()
    }
}

fn demand(who: Who, named: &Named) -> Demand {
    Demand { who, what: named.value.0.clone(), place: named.place }
}

fn asked_by_a_thing(signal: Signal) -> Option<Who> {
    match signal {
        Signal::Danger => Some(Who::Adult),
        Signal::Warning | Signal::Caution => Some(Who::Supervised),
        Signal::Notice => None,
    }
}

fn notes(notes: &[Tolerant<Safety>]) -> Vec<Demand> {
    let notes = notes.iter().filter_map(Tolerant::sound).filter_map(Safety::note);
    let asked = notes.filter_map(|(signal, says)| {
        let (who, what) = match signal {
            Signal::Danger => (Who::Adult, "danger"),
            Signal::Warning => (Who::Supervised, "warning"),
            Signal::Caution | Signal::Notice => return None,
        };
        Some(Demand { who, what: what.to_owned(), place: says.place })
    });
    asked.collect()
}

/// The first of those that ask for the most.
fn most(demands: impl Iterator<Item = Demand>) -> Option<Demand> {
    let demands = demands.filter(|demand| demand.who > Who::Anyone);
    demands.fold(None, |most: Option<Demand>, next| match most {
        Some(most) if most.who >= next.who => Some(most),
        _ => Some(next),
    })
}
