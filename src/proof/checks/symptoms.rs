//! Fault-finding guides: shares, answers, opening jobs, and what their parts point at inside the guide.
//!
//! Leaves to others: whether the order is a good one, and what no probe parts (`reckoning::diagnosis`, asked by `proof::cases`).

use crate::model::{Guides, Meant, Named, Probe, Shares, Symptom};
use crate::proof::cases::{NO_CHANGE, WORKS, named, odds_of};
use crate::proof::finding::Finding;
use crate::proof::findings::{diagnosis, ids};
use crate::proof::index::{Thing, Wanted};
use crate::proof::odds;
use crate::source::{Place, Tolerant};
use std::collections::{BTreeMap, BTreeSet};

/// Checks every fault-finding guide.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    for (_, guide) in &guides.symptoms {
        let mut checking = Checking::new(guide, findings);
        checking.shares();
        checking.rest();
        checking.access();
        checking.probes();
        checking.first();
    }
}

/// Cases that a club may have counted for one symptom: more is a slip of the pen.
const MOST_COUNTED: u64 = 1_000_000;

/// The ids of one kind inside a guide.
struct Names<'a> {
    known: BTreeMap<&'a str, Place>,
    broken: BTreeSet<&'a str>,
}

struct Checking<'a, 'f> {
    guide: &'a Symptom,
    causes: Names<'a>,
    access: Names<'a>,
    probes: Names<'a>,
    findings: &'f mut Vec<Finding>,
    /// Whether every answer can be read and names causes that there are.
    all_known: bool,
}

fn names<'a, T>(items: &'a [Tolerant<T>], id: impl Fn(&'a T) -> &'a Named, findings: &mut Vec<Finding>) -> Names<'a> {
    let mut known = BTreeMap::new();
    for named in items.iter().filter_map(Tolerant::sound).map(id) {
        if let Some(why) = crate::proof::index::why_no_id(named.value.as_str()) {
            findings.push(ids::bad_id(named, why));
        }
        match known.get(named.value.as_str()) {
            Some(first) => findings.push(ids::duplicate_id(named, *first)),
            None => {
                known.insert(named.value.as_str(), named.place);
            }
        }
    }
    Names { known, broken: items.iter().filter_map(Tolerant::broken).collect() }
}

impl Names<'_> {
    fn unknown(&self, named: &Named, noun: &'static str) -> Option<Finding> {
        let id = named.value.as_str();
        let there = self.known.contains_key(id) || self.broken.contains(id);
        (!there).then(|| unknown_inside(named, noun, self.known.keys().copied()))
    }
}

/// Something is pointed at that this guide does not have.
fn unknown_inside<'a>(named: &Named, noun: &'static str, known: impl Iterator<Item = &'a str>) -> Finding {
    let mut finding = ids::unknown_reference(named, Wanted::One(Thing::Item), known);
    finding.message = format!("this guide has no {noun} `{}`", named.value);
    if !finding.help.starts_with("did you mean") {
        finding.help = format!("write the {noun} `{}`, or correct the id", named.value);
    }
    finding
}

impl<'a, 'f> Checking<'a, 'f> {
    fn new(guide: &'a Symptom, findings: &'f mut Vec<Finding>) -> Self {
        let causes = names(&guide.causes, |cause| &cause.cause, findings);
        let access = names(&guide.access, |access| &access.access, findings);
        let probes = names(&guide.probes, |probe| &probe.probe, findings);
        let all_known = guide.probes.iter().all(|probe| probe.sound().is_some_and(is_whole));
        Checking { guide, causes, access, probes, findings, all_known }
    }

    fn shares(&mut self) {
        let mut sum = 0;
        let counted = self.guide.causes.iter().filter_map(Tolerant::sound).any(|cause| cause.seen.is_some());
        for cause in self.guide.causes.iter().filter_map(Tolerant::sound) {
            match (&cause.share, &cause.seen) {
                (None, None) => self.findings.push(diagnosis::no_share(&cause.cause)),
                (Some(_), _) if counted => self.findings.push(diagnosis::mixed_shares(&cause.cause)),
                (Some(share), _) => sum += share.value.value().map_or(0, |share| share.0),
                (None, Some(_)) => {}
            }
        }
        let seen = self.guide.causes.iter().filter_map(Tolerant::sound).filter_map(|cause| cause.seen.as_ref());
        let seen = seen.chain(self.guide.rest.iter().filter_map(|rest| rest.seen.as_ref()));
        if seen.map(|seen| u64::from(seen.value)).sum::<u64>() > MOST_COUNTED {
            self.findings.push(diagnosis::too_large(&self.guide.symptom));
        }
        if sum > 10_000 {
            self.findings.push(diagnosis::shares_over_100(self.guide.symptom.place, sum));
        }
    }

    /// Shares of exactly 100 claim that the list is complete; all others leave cases over.
    fn rest(&mut self) {
        let shares = self.guide.causes.iter().filter_map(Tolerant::sound).filter_map(|cause| cause.share.as_ref());
        let sum: u32 = shares.filter_map(|share| share.value.value()).map(|share| share.0).sum();
        let complete = sum == 10_000 && self.guide.shares == Shares::Estimated;
        if self.guide.rest.is_none() && !complete {
            self.findings.push(diagnosis::no_rest(&self.guide.symptom));
        }
    }

    fn access(&mut self) {
        let mut links = BTreeMap::new();
        for access in self.guide.access.iter().filter_map(Tolerant::sound) {
            let unknown = access.needs.iter().filter_map(|named| self.access.unknown(named, "opening job"));
            self.findings.extend(unknown);
            links.insert(access.access.value.as_str(), (&access.access, &access.needs[..]));
        }
        self.findings.extend(first_in_circle(&links).map(diagnosis::needs_itself));
    }

    fn probes(&mut self) {
        let mut links = BTreeMap::new();
        let mut named = BTreeSet::new();
        for probe in self.guide.probes.iter().filter_map(Tolerant::sound) {
            links.insert(probe.probe.value.as_str(), (&probe.probe, &probe.after[..]));
            self.probe(probe, &mut named);
        }
        self.findings.extend(first_in_circle(&links).map(diagnosis::needs_itself));
        self.never_found(&named);
    }

    fn probe(&mut self, probe: &'a Probe, named: &mut BTreeSet<&'a str>) {
        let jobs = probe.needs.iter().chain(&probe.shut);
        self.findings.extend(jobs.filter_map(|job| self.access.unknown(job, "opening job")));
        self.findings.extend(probe.after.iter().filter_map(|after| self.probes.unknown(after, "probe")));
        self.findings.extend(probe.mends.iter().filter_map(|cause| self.causes.unknown(cause, "cause")));
        named.extend(probe.mends.iter().map(|cause| cause.value.as_str()));
        if probe.minutes.value.value().is_some_and(|minutes| minutes.tenths == 0) {
            self.findings.push(diagnosis::no_minutes(&probe.probe, probe.minutes.place));
        }
        match probe.mends.is_empty() {
            true => self.answers(probe, named),
            false => self.trial(probe),
        }
    }

    /// A trial fix works or changes nothing; its answers may only be worded.
    fn trial(&mut self, probe: &Probe) {
        for (at, answer) in probe.answers.iter().enumerate() {
            let Some(answer) = answer.sound() else { continue };
            let known = [WORKS, NO_CHANGE].get(at).is_some_and(|id| answer.answer.value.as_str() == *id);
            if !known || !answer.means.is_empty() {
                self.findings.push(diagnosis::trial_answers(&probe.probe, &answer.answer));
            }
        }
    }

    fn answers(&mut self, probe: &'a Probe, named: &mut BTreeSet<&'a str>) {
        if probe.answers.len() < 2 {
            self.findings.push(diagnosis::too_few_answers(&probe.probe));
        }
        names(&probe.answers, |answer| &answer.answer, self.findings);
        let mut otherwise = 0;
        for answer in probe.answers.iter().filter_map(Tolerant::sound) {
            if answer.means.is_empty() {
                self.findings.push(diagnosis::empty_answer(&answer.answer));
            }
            for meant in answer.means.iter().filter_map(Tolerant::sound) {
                if meant.cause.value.as_str() != "otherwise" {
                    let unknown = self.causes.unknown(&meant.cause, "cause");
                    self.all_known &= unknown.is_none();
                    self.findings.extend(unknown);
                    named.insert(meant.cause.value.as_str());
                    continue;
                }
                otherwise += 1;
                if otherwise == 2 {
                    self.findings.push(diagnosis::two_otherwise(meant.cause.place, &probe.probe));
                }
            }
        }
        if otherwise == 0 && probe.answers.iter().all(|answer| answer.sound().is_some()) {
            self.findings.push(diagnosis::no_otherwise(&probe.probe));
        }
        self.odds(probe);
    }

    /// How often a cause gives each answer adds up to every time, with what is left for an unremarkable answer that does not name it.
    fn odds(&mut self, probe: &Probe) {
        let mut causes: BTreeMap<&str, Vec<&Meant>> = BTreeMap::new();
        for meant in named(probe) {
            causes.entry(meant.cause.value.as_str()).or_default().push(meant);
        }
        let by_otherwise = named_by_otherwise(probe);
        for (cause, meant) in causes {
            let odds: Vec<_> = meant.iter().map(|meant| odds_of(meant)).collect();
            let said = meant.iter().find_map(|meant| meant.times.as_ref());
            let parts = odds::parts(&odds);
            let adds_up = parts.is_some_and(|parts| parts.left == 0 || !by_otherwise.contains(cause));
            if let Some(said) = said.filter(|_| !adds_up) {
                self.findings.push(diagnosis::odds_over(said.place, cause, &probe.probe));
            }
        }
    }

    /// A cause that no answer names answers like everything that is not on the list. That is right for one whose remedy is
    /// the one advised there; any other is never found.
    fn never_found(&mut self, named: &BTreeSet<&str>) {
        // A slip in an answer has its own finding; taking the cause out would be the wrong cure.
        if !self.all_known {
            return;
        }
        let advised = self.guide.rest.as_ref().and_then(|rest| rest.lasting.as_ref()).map(|named| &named.value);
        for cause in self.guide.causes.iter().filter_map(Tolerant::sound) {
            let mended = advised.is_some() && cause.lasting.as_ref().map(|named| &named.value) == advised;
            if !named.contains(cause.cause.value.as_str()) && !mended && self.guide.rest.is_some() {
                self.findings.push(diagnosis::cause_never_found(&cause.cause));
            }
        }
    }

    fn first(&mut self) {
        names(&self.guide.first, |first| &first.first, self.findings);
        for first in self.guide.first.iter().filter_map(Tolerant::sound) {
            names(&first.answers, |answer| &answer.answer, self.findings);
            if first.answers.len() < 2 {
                self.findings.push(diagnosis::too_few_answers(&first.first));
            }
            let goes_on = first.answers.iter().any(|answer| answer.sound().is_none_or(|it| it.then.value == "go on"));
            if !goes_on {
                self.findings.push(diagnosis::nobody_goes_on(&first.first));
            }
        }
    }
}

/// The first thing, by id, from which a way of links leads back to itself.
/// Whether all answers of a probe can be read.
fn is_whole(probe: &Probe) -> bool {
    probe
        .answers
        .iter()
        .all(|answer| answer.sound().is_some_and(|answer| answer.means.iter().all(|meant| meant.sound().is_some())))
}

/// The causes that the unremarkable answer names itself.
fn named_by_otherwise(probe: &Probe) -> BTreeSet<&str> {
    let mut named = BTreeSet::new();
    for answer in probe.answers.iter().filter_map(Tolerant::sound) {
        let means: Vec<&str> =
            answer.means.iter().filter_map(Tolerant::sound).map(|meant| meant.cause.value.as_str()).collect();
        if means.contains(&"otherwise") {
            named.extend(means);
        }
    }
    named
}

fn first_in_circle<'a>(links: &BTreeMap<&'a str, (&'a Named, &'a [Named])>) -> Option<&'a Named> {
    links.values().find(|(named, _)| leads_back(named, links)).map(|(named, _)| *named)
}

fn leads_back(from: &Named, links: &BTreeMap<&str, (&Named, &[Named])>) -> bool {
    let mut seen = BTreeSet::new();
    let mut open = vec![from.value.as_str()];
    while let Some(id) = open.pop() {
        for next in links.get(id).into_iter().flat_map(|(_, next)| next.iter()) {
            if next.value == from.value {
                return true;
            }
            if seen.insert(next.value.as_str()) {
                open.push(next.value.as_str());
            }
        }
    }
    false
}
