//! A fault-finding guide as the model that `reckoning::diagnosis` computes, and what the computation finds wrong with it.
//!
//! In: a guide whose parts are known to fit (`checks::symptoms` saw to it). Out: a [`Case`]: the reckoning, and the guide's own
//! causes, jobs and probes by the reckoning's indices. Leaves to others: words (`handbook`).

use super::finding::Finding;
use super::findings::diagnosis as words;
use super::network::Wired;
use super::odds;
use super::proposed;
use super::sights::Sight;
use crate::model::{self, Guides, Named, Odds, Procedure, Symptom, Told};
use crate::reckoning::diagnosis::{
    Answer, AnswerIndex, Case as Model, Cause, Diagnosis, Job, JobIndex, Minutes, Named as Naming, Probe, ProbeIndex,
    Remedy, RemedyIndex, Rest, Suspect, TellApart, Unsound, Weight,
};
use crate::source::{Placed, Tolerant};
use std::collections::{BTreeMap, BTreeSet};

/// A guide, ready to be reckoned.
#[derive(Debug, Clone)]
pub struct Case {
    /// The reckoning.
    pub diagnosis: Diagnosis,
    /// The lasting remedies by their index: ids of jobs.
    pub remedies: Vec<String>,
    /// For counted shares: how many cases in all.
    pub counted: u32,
}

/// The answer ids of a trial fix.
pub const WORKS: &str = "works";
/// The answer ids of a trial fix.
pub const NO_CHANGE: &str = "no-change";

/// Makes the case of every guide, with what the reckoning finds. Guides that are broken elsewhere have none. A former case that
/// asks the same is taken as it is, with what was reckoned of it.
pub fn cases(
    guides: &Guides,
    circuits: &BTreeMap<String, Wired>,
    sights: &BTreeMap<String, Sight>,
    former: Option<&BTreeMap<String, Case>>,
    findings: &mut Vec<Finding>,
) -> BTreeMap<String, Case> {
    let mut cases = BTreeMap::new();
    for (_, guide) in &guides.symptoms {
        let Some(making) = Making::of(guide, guides) else { continue };
        match making.case(former.and_then(|former| former.get(guide.symptom.value.as_str()))) {
            Ok(case) => {
                let sight = sights.get(guide.symptom.value.as_str());
                let parting = |group: &[&model::Cause]| {
                    let (sight, circuit) = (sight?, circuit_of(guide, guides)?);
                    proposed::probe(sight, circuits.get(&sight.circuit)?, circuit, group, &sound(&guide.causes))
                };
                findings.extend(told_nothing(guide, &case, parting));
                cases.insert(guide.symptom.value.0.clone(), case);
            }
            Err(reasons) => findings.extend(reasons.iter().filter_map(|reason| unsound(guide, reason))),
        }
    }
    cases
}

/// The same guide with other counts: of each cause in the order of the guide, and of what is not on the list.
pub fn recounted(guide: &Symptom, guides: &Guides, seen: &[u32], rest: u32) -> Option<Case> {
    let mut making = Making::of(guide, guides)?;
    making.counts = Some((seen, rest));
    making.case(None).ok()
}

fn circuit_of<'g>(guide: &Symptom, guides: &'g Guides) -> Option<&'g model::Circuit> {
    let named = guide.circuit.as_ref()?;
    guides.circuits.iter().map(|(_, circuit)| circuit).find(|circuit| circuit.circuit.value == named.value)
}

/// Probes that tell nothing, and causes with different remedies that none tells apart, with a probe that would, if the circuit
/// has a reading for it.
fn told_nothing(guide: &Symptom, case: &Case, parting: impl Fn(&[&model::Cause]) -> Option<String>) -> Vec<Finding> {
    let probes = sound(&guide.probes);
    let causes = sound(&guide.causes);
    let dead = case.diagnosis.dead_probes();
    let dead = dead.iter().filter_map(|probe| probes.get(probe.0)).map(|probe| words::dead_probe(&probe.probe));
    let groups = case.diagnosis.groups();
    let groups = groups.iter().filter(|group| group.one_remedy.is_none()).filter_map(|group| {
        let members: Vec<&model::Cause> =
            group.suspects.iter().filter_map(|suspect| cause_of(suspect, &causes)).collect();
        let names: Vec<&str> = members.iter().map(|cause| cause.cause.value.as_str()).collect();
        let first = members.first().filter(|_| members.len() > 1)?;
        Some(words::inseparable(&first.cause, &names, parting(&members)))
    });
    dead.chain(groups).collect()
}

fn cause_of<'a>(suspect: &Suspect, causes: &[&'a model::Cause]) -> Option<&'a model::Cause> {
    match suspect {
        Suspect::Cause(index) => causes.get(index.0).copied(),
        Suspect::Rest => None,
    }
}

/// What the reckoning refuses, as far as no check said it before.
fn unsound(guide: &Symptom, reason: &Unsound) -> Option<Finding> {
    let probe = |index: &ProbeIndex| sound(&guide.probes).get(index.0).map(|probe| &probe.probe);
    match reason {
        Unsound::OpenAndShut(index, _) => probe(index).map(words::open_and_shut),
        Unsound::NamedTwice(index, ..) => probe(index).map(words::named_twice),
        Unsound::TooMany(what, most) => Some(words::too_many(&guide.symptom, what, *most)),
        Unsound::TooLarge => Some(words::too_large(&guide.symptom)),
        Unsound::NoCauses => Some(words::no_causes(&guide.symptom)),
        _ => None,
    }
}

/// The sound items of a list, in the order of the reckoning's indices.
pub fn sound<T>(items: &[Tolerant<T>]) -> Vec<&T> {
    items.iter().filter_map(Tolerant::sound).collect()
}

struct Making<'a> {
    guide: &'a Symptom,
    guides: &'a Guides,
    causes: BTreeMap<&'a str, usize>,
    jobs: BTreeMap<&'a str, usize>,
    probes: BTreeMap<&'a str, usize>,
    remedies: Vec<&'a str>,
    /// Counts that go before those of the guide: of each cause, and of what is not on the list.
    counts: Option<(&'a [u32], u32)>,
}

fn numbered<'a>(names: impl Iterator<Item = &'a Named>) -> BTreeMap<&'a str, usize> {
    names.enumerate().map(|(index, named)| (named.value.as_str(), index)).collect()
}

impl<'a> Making<'a> {
    /// Nothing when a part of the guide is broken: then the reckoning would say wrong things.
    fn of(guide: &'a Symptom, guides: &'a Guides) -> Option<Self> {
        let whole = guide.causes.iter().all(|cause| cause.sound().is_some())
            && guide.access.iter().all(|access| access.sound().is_some())
            && guide
                .probes
                .iter()
                .all(|probe| probe.sound().is_some_and(|p| p.answers.iter().all(|a| a.sound().is_some())));
        let causes = numbered(sound(&guide.causes).into_iter().map(|cause| &cause.cause));
        let jobs = numbered(sound(&guide.access).into_iter().map(|access| &access.access));
        let probes = numbered(sound(&guide.probes).into_iter().map(|probe| &probe.probe));
        let mut remedies: Vec<&str> = sound(&guide.causes).into_iter().filter_map(remedy).collect();
        remedies.extend(guide.rest.iter().filter_map(|rest| rest.lasting.as_ref()).map(|named| named.value.as_str()));
        remedies.sort_unstable();
        remedies.dedup();
        whole.then_some(Making { guide, guides, causes, jobs, probes, remedies, counts: None })
    }

    fn case(&self, former: Option<&Case>) -> Result<Case, Vec<Unsound>> {
        let (weights, rest, counted) = self.weights().ok_or_else(Vec::new)?;
        let causes = sound(&self.guide.causes);
        let model = Model {
            causes: causes
                .iter()
                .zip(&weights)
                .map(|(cause, weight)| self.cause(cause, *weight))
                .collect::<Option<_>>()
                .ok_or_else(Vec::new)?,
            rest: (rest > 0).then(|| Rest { weight: Weight(rest), remedy: self.rest_remedy() }),
            remedies: self.remedies.iter().map(|id| self.remedy(id)).collect(),
            jobs: sound(&self.guide.access)
                .into_iter()
                .map(|access| self.job(access))
                .collect::<Option<_>>()
                .ok_or_else(Vec::new)?,
            probes: sound(&self.guide.probes)
                .into_iter()
                .map(|probe| self.probe(probe))
                .collect::<Option<_>>()
                .ok_or_else(Vec::new)?,
            tell_apart: match self.guide.tell_apart {
                model::TellApart::Remedies => TellApart::Remedies,
                model::TellApart::Causes => TellApart::Causes,
            },
        };
        let remedies = self.remedies.iter().map(|id| (*id).to_owned()).collect();
        if let Some(former) = former.filter(|former| *former.diagnosis.case() == model) {
            return Ok(Case { remedies, counted, ..former.clone() });
        }
        Ok(Case { diagnosis: Diagnosis::of(model)?, remedies, counted })
    }

    /// The weights of the causes, of the rest, and how many cases were counted.
    fn weights(&self) -> Option<(Vec<u32>, u32, u32)> {
        let causes = sound(&self.guide.causes);
        let rest = self.guide.rest.as_ref();
        if let Some((seen, others)) = self.counts {
            return counted(seen.to_vec(), others, rest.is_some() || others > 0);
        }
        if causes.iter().any(|cause| cause.seen.is_some()) {
            let seen = |cause: &&model::Cause| cause.seen.as_ref().map(|seen| seen.value);
            let seen: Vec<u32> = causes.iter().map(seen).collect::<Option<_>>()?;
            let others = rest.and_then(|rest| rest.seen.as_ref()).map_or(0, |seen| seen.value);
            return counted(seen, others, rest.is_some());
        }
        let share = |cause: &&model::Cause| cause.share.as_ref()?.value.value().map(|share| share.0);
        let weights: Vec<u32> = causes.iter().map(share).collect::<Option<_>>()?;
        let rest = 10_000_u32.checked_sub(weights.iter().sum())?;
        Some((weights, rest, 0))
    }

    fn remedy_index(&self, id: &str) -> Option<RemedyIndex> {
        self.remedies.iter().position(|known| *known == id).map(RemedyIndex)
    }

    fn cause(&self, cause: &model::Cause, weight: u32) -> Option<Cause> {
        Some(Cause { weight: Weight(weight), remedy: self.remedy_index(remedy(cause)?)? })
    }

    fn rest_remedy(&self) -> Option<RemedyIndex> {
        let lasting = self.guide.rest.as_ref()?.lasting.as_ref()?;
        self.remedy_index(lasting.value.as_str())
    }

    fn remedy(&self, id: &str) -> Remedy {
        let job = self.guides.procedures.iter().find(|(_, guide)| guide.procedure.value.as_str() == id);
        let minutes = job.map_or(0, |(_, guide)| minutes_in_all(guide));
        Remedy { minutes: Minutes(minutes), needs: Vec::new() }
    }

    fn job(&self, access: &model::Access) -> Option<Job> {
        Some(Job { open: time(&access.open)?, close: time(&access.close)?, needs: self.jobs(&access.needs)? })
    }

    fn jobs(&self, named: &[Named]) -> Option<Vec<JobIndex>> {
        named.iter().map(|named| self.jobs.get(named.value.as_str()).copied().map(JobIndex)).collect()
    }

    fn probe(&self, probe: &model::Probe) -> Option<Probe> {
        let after = probe.after.iter().map(|named| self.probes.get(named.value.as_str()).copied().map(ProbeIndex));
        let (answers, otherwise, works_now) =
            if probe.mends.is_empty() { self.answers(probe)? } else { self.trial(probe)? };
        Some(Probe {
            minutes: time(&probe.minutes)?,
            needs: self.jobs(&probe.needs)?,
            shut: self.jobs(&probe.shut)?,
            after: after.collect::<Option<_>>()?,
            answers,
            otherwise,
            works_now,
        })
    }

    /// A trial fix answers *works* for what it mends and *no change* for everything else.
    fn trial(&self, probe: &model::Probe) -> Option<(Vec<Answer>, AnswerIndex, Option<AnswerIndex>)> {
        let named =
            probe.mends.iter().map(|cause| self.causes.get(cause.value.as_str()).map(|index| Naming::cause(*index)));
        let works = Answer { named: named.collect::<Option<_>>()? };
        Some((vec![works, Answer::default()], AnswerIndex(1), Some(AnswerIndex(0))))
    }

    fn answers(&self, probe: &model::Probe) -> Option<(Vec<Answer>, AnswerIndex, Option<AnswerIndex>)> {
        let mut answers = Vec::new();
        let mut otherwise = None;
        for (index, answer) in sound(&probe.answers).into_iter().enumerate() {
            let mut named = Vec::new();
            for meant in sound(&answer.means) {
                match meant.cause.value.as_str() {
                    "otherwise" => otherwise = Some(AnswerIndex(index)),
                    id => named.push(Naming::cause(*self.causes.get(id)?)),
                }
            }
            answers.push(Answer { named });
        }
        let otherwise = otherwise?;
        weigh(probe, &mut answers, otherwise)?;
        Some((answers, otherwise, None))
    }
}

/// The causes that the answers of a probe name, in their order.
pub(super) fn named(probe: &model::Probe) -> impl Iterator<Item = &model::Meant> {
    let meant = sound(&probe.answers).into_iter().flat_map(|answer| sound(&answer.means));
    meant.filter(|meant| meant.cause.value.as_str() != "otherwise")
}

/// How often the cause gives the answer, if that is said.
pub(super) fn odds_of(meant: &model::Meant) -> Option<Odds> {
    meant.times.as_ref().and_then(|times| times.value.value()).copied()
}

/// Gives each naming its part of the cause's weight; what the odds leave goes to the unremarkable answer.
fn weigh(probe: &model::Probe, answers: &mut [Answer], otherwise: AnswerIndex) -> Option<()> {
    let suspects: BTreeSet<Suspect> =
        answers.iter().flat_map(|answer| &answer.named).map(|naming| naming.suspect).collect();
    // The same order as in `answers`.
    let odds: Vec<(Suspect, Option<Odds>)> = answers
        .iter()
        .flat_map(|answer| &answer.named)
        .zip(named(probe))
        .map(|(naming, meant)| (naming.suspect, odds_of(meant)))
        .collect();
    for suspect in suspects {
        let own: Vec<Option<Odds>> = odds.iter().filter(|(of, _)| *of == suspect).map(|(_, odds)| *odds).collect();
        let parts = odds::parts(&own)?;
        let namings =
            answers.iter_mut().flat_map(|answer| &mut answer.named).filter(|naming| naming.suspect == suspect);
        namings.zip(parts.named).for_each(|(naming, parts)| naming.parts = parts);
        if parts.left > 0 {
            let unremarkable = answers.get_mut(otherwise.0)?;
            // Its own times leave something over: said by `checks::symptoms`.
            if unremarkable.named.iter().any(|naming| naming.suspect == suspect) {
                return None;
            }
            unremarkable.named.push(Naming { suspect, parts: parts.left });
        }
    }
    Some(())
}

/// The weights of counted cases, and how many there are. What was never seen still has a little weight, half a case, so that
/// nothing is ruled out by luck.
fn counted(seen: Vec<u32>, others: u32, may_be_another: bool) -> Option<(Vec<u32>, u32, u32)> {
    let weight = |seen: u32| seen.checked_mul(2).map(|twice| twice.max(1));
    let all = seen.iter().try_fold(others, |sum, seen| sum.checked_add(*seen))?;
    let left = if may_be_another { weight(others)? } else { 0 };
    Some((seen.into_iter().map(weight).collect::<Option<_>>()?, left, all))
}

/// The remedy of a cause: the lasting one.
fn remedy(cause: &model::Cause) -> Option<&str> {
    cause.lasting.as_ref().map(|named| named.value.as_str())
}

fn time(told: &Placed<Told<model::Minutes>>) -> Option<Minutes> {
    told.value.value().map(|minutes| Minutes(u64::from(minutes.tenths)))
}

/// A job's time at the bench and waiting, in tenths of a minute.
fn minutes_in_all(guide: &Procedure) -> u64 {
    let hands_on = time(&guide.hands_on).map_or(0, |minutes| minutes.0);
    hands_on + waiting(guide)
}

/// How long a job makes one wait, in tenths of a minute.
pub fn waiting(guide: &Procedure) -> u64 {
    let waits = sound(&guide.steps).into_iter().filter_map(|step| step.wait.as_ref());
    waits.filter_map(time).map(|minutes| minutes.0).sum()
}
