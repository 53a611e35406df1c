//! The case as the search sees it: classes of behaviours that no probe parts, and sets instead of lists.
//!
//! In: a sound case and its behaviours. Out: who gives which answer, what a step opens and shuts and costs, when a run ends.
//! Leaves the search to others. Holds: needs are closed upwards, shut is closed downwards, `before` is transitive.

use std::collections::BTreeMap;

use super::case::*;
use super::expand::{Expansion, HEAVIEST};
use super::set::{Bits, Set};
use super::units::*;

/// The case in sets.
#[derive(Clone, Debug)]
pub(super) struct Table {
    pub classes: Vec<Class>,
    pub probes: Vec<Row>,
    pub jobs: Vec<JobRow>,
    /// Jobs, each after those it needs, else in the author's order.
    pub job_order: Vec<usize>,
    pub everyone: Set,
}

/// Behaviours with the same answer to every probe.
#[derive(Clone, Debug)]
pub(super) struct Class {
    pub weight: u64,
    /// What ends a run: equal for classes that one remedy serves.
    pub end: usize,
    /// Classes of one circle need not be parted from each other, by a shared end or by a trial fix that mends both.
    pub circle: usize,
    pub members: Vec<(Suspect, u64)>,
}

/// A probe in sets.
#[derive(Clone, Debug)]
pub(super) struct Row {
    pub minutes: u64,
    pub needs: u64,
    pub shut: u64,
    pub before: Set,
    /// Who gives each answer.
    pub answers: Vec<Set>,
    /// The answer of each class.
    pub answer_of: Vec<u8>,
    pub otherwise: usize,
    pub works_now: Option<usize>,
}

/// A job's costs, and what is nested in it (itself too).
#[derive(Clone, Debug)]
pub(super) struct JobRow {
    pub open: u64,
    pub close: u64,
    pub needs: u64,
    pub nested: u64,
}

/// What doing a probe does to the jobs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Step {
    pub shut: u64,
    pub opened: u64,
    pub open: u64,
    /// The probe, and opening *and* closing of what was opened: everything opened is closed exactly once.
    pub cost: u64,
}

impl Table {
    pub fn of(case: &Case, expansion: &Expansion) -> Result<Table, Vec<Unsound>> {
        let jobs = job_rows(case)?;
        let classes = classes(case, expansion)?;
        let before = before(case)?;
        let mut table = Table {
            job_order: job_order(&jobs),
            everyone: Set::below(classes.len()),
            jobs,
            classes: Vec::new(),
            probes: Vec::new(),
        };
        for (index, probe) in case.probes.iter().enumerate() {
            table
                .probes
                .push(table.row(ProbeIndex(index), probe, before[index], &classes)?);
        }
        table.classes = classes.into_iter().map(|(_, class)| class).collect();
        table
            .fits()
            .then_some(table)
            .ok_or_else(|| vec![Unsound::TooLarge])
    }

    fn row(
        &self,
        index: ProbeIndex,
        probe: &Probe,
        before: Set,
        classes: &[(Vec<u8>, Class)],
    ) -> Result<Row, Vec<Unsound>> {
        let needs = probe
            .needs
            .iter()
            .fold(0, |mask, job| mask | self.jobs[job.0].needs);
        let shut = probe
            .shut
            .iter()
            .fold(0, |mask, job| mask | self.jobs[job.0].nested);
        if let Some(job) = Bits(needs & shut).next() {
            return Err(vec![Unsound::OpenAndShut(index, JobIndex(job))]);
        }
        let answer_of: Vec<u8> = classes
            .iter()
            .map(|(answers, _)| answers[index.0])
            .collect();
        let mut answers = vec![Set::default(); probe.answers.len()];
        for (class, answer) in answer_of.iter().enumerate() {
            answers[usize::from(*answer)] = answers[usize::from(*answer)].with(class);
        }
        let works_now = probe.works_now.map(|answer| answer.0);
        Ok(Row {
            minutes: probe.minutes.0,
            needs,
            shut,
            before,
            answers,
            answer_of,
            otherwise: probe.otherwise.0,
            works_now,
        })
    }

    /// Whether every sum of weights times minutes stays within 62 bits: each probe done once, each job reopened after each shutting.
    fn fits(&self) -> bool {
        let looks: u128 = self.probes.iter().map(|p| u128::from(p.minutes)).sum();
        let jobs: u128 = self
            .jobs
            .iter()
            .map(|j| u128::from(j.open) + u128::from(j.close))
            .sum();
        let times = 2 + self.probes.iter().filter(|p| p.shut > 0).count() as u128;
        let total = u128::from(self.weight(&self.everyone));
        jobs.checked_mul(times)
            .and_then(|jobs| looks.checked_add(jobs)?.checked_mul(total))
            .is_some_and(|cost| cost < 1 << 62)
    }

    /// The same with every suspect's weight multiplied, brought to lowest terms; `None` if they would not fit.
    pub fn reweighed(&self, factor: impl Fn(Suspect) -> u128) -> Option<Table> {
        let members = || self.classes.iter().flat_map(|class| &class.members);
        let times = |who: Suspect, weight: u64| u128::from(weight).checked_mul(factor(who));
        let mut common = 0;
        let mut total = 0u128;
        for (who, weight) in members() {
            let weight = times(*who, *weight)?;
            common = gcd(common, weight);
            total = total.checked_add(weight)?;
        }
        if total / common >= HEAVIEST {
            return None;
        }
        let mut table = self.clone();
        for class in &mut table.classes {
            for (who, weight) in &mut class.members {
                *weight = (times(*who, *weight)? / common) as u64;
            }
            class.weight = class.members.iter().map(|(_, weight)| weight).sum();
        }
        table.fits().then_some(table)
    }

    pub fn weight(&self, set: &Set) -> u64 {
        set.iter().map(|class| self.classes[class].weight).sum()
    }

    /// Whether the probe can part what is left.
    pub fn splits(&self, probe: usize, set: &Set) -> bool {
        let row = &self.probes[probe];
        set.first()
            .is_some_and(|first| !set.within(&row.answers[usize::from(row.answer_of[first])]))
    }

    /// What is left after each answer that can be given.
    pub fn parts(&self, probe: usize, set: &Set) -> impl Iterator<Item = (usize, Set)> {
        let set = *set;
        let answers = self.probes[probe].answers.iter().enumerate();
        answers
            .map(move |(answer, who)| (answer, who.and(&set)))
            .filter(|(_, left)| !left.is_empty())
    }

    /// Whether one remedy serves all that is left.
    pub fn one_end(&self, set: &Set) -> bool {
        let mut ends = set.iter().map(|class| self.classes[class].end);
        let first = ends.next();
        ends.all(|end| Some(end) == first)
    }

    /// Whether the probe can part what is left and everything it comes after is done or cannot.
    pub fn useful(&self, probe: usize, set: &Set, left_out: &Set) -> bool {
        !left_out.has(probe)
            && self.splits(probe, set)
            && self.probes[probe]
                .before
                .minus(left_out)
                .iter()
                .all(|earlier| !self.splits(earlier, set))
    }

    pub fn step(&self, probe: usize, open: u64) -> Step {
        let row = &self.probes[probe];
        let shut = open & row.shut;
        let opened = row.needs & !(open & !shut);
        Step {
            shut,
            opened,
            open: (open & !shut) | opened,
            cost: row.minutes + self.round_trip(opened),
        }
    }

    /// Opening and closing of all these jobs.
    pub fn round_trip(&self, jobs: u64) -> u64 {
        Bits(jobs)
            .map(|job| self.jobs[job].open + self.jobs[job].close)
            .sum()
    }

    /// Opening alone.
    pub fn opening(&self, jobs: u64) -> u64 {
        Bits(jobs).map(|job| self.jobs[job].open).sum()
    }

    /// Closing alone.
    pub fn closing(&self, jobs: u64) -> u64 {
        Bits(jobs).map(|job| self.jobs[job].close).sum()
    }

    /// These jobs, each after those it needs.
    pub fn in_opening_order(&self, jobs: u64) -> Vec<JobIndex> {
        self.job_order
            .iter()
            .filter(|job| jobs >> **job & 1 == 1)
            .map(|job| JobIndex(*job))
            .collect()
    }

    /// Jobs that must be open for all of these, these too.
    pub fn with_needs(&self, jobs: &[JobIndex]) -> u64 {
        jobs.iter()
            .fold(0, |mask, job| mask | self.jobs[job.0].needs)
    }
}

fn job_rows(case: &Case) -> Result<Vec<JobRow>, Vec<Unsound>> {
    let needs = closure(
        case.jobs
            .iter()
            .map(|job| job.needs.iter().map(|j| j.0).collect())
            .collect(),
    )
    .map_err(|job| vec![Unsound::JobCycle(JobIndex(job))])?;
    let mask = |set: &Set| set.iter().fold(0u64, |mask, job| mask | 1 << job);
    let rows = case.jobs.iter().enumerate().map(|(index, job)| JobRow {
        open: job.open.0,
        close: job.close.0,
        needs: mask(&needs[index].with(index)),
        nested: needs
            .iter()
            .enumerate()
            .filter(|(other, set)| *other == index || set.has(index))
            .fold(0, |mask, (other, _)| mask | 1 << other),
    });
    Ok(rows.collect())
}

fn job_order(jobs: &[JobRow]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..jobs.len()).collect();
    // A job needs strictly more than each of those it needs.
    order.sort_by_key(|job| (jobs[*job].needs.count_ones(), *job));
    order
}

fn before(case: &Case) -> Result<Vec<Set>, Vec<Unsound>> {
    closure(
        case.probes
            .iter()
            .map(|probe| probe.after.iter().map(|p| p.0).collect())
            .collect(),
    )
    .map_err(|probe| vec![Unsound::AfterCycle(ProbeIndex(probe))])
}

/// Everything that can be reached from each; the first that reaches itself is an error.
fn closure(direct: Vec<Vec<usize>>) -> Result<Vec<Set>, usize> {
    let mut reach: Vec<Set> = direct
        .iter()
        .map(|next| next.iter().fold(Set::default(), |set, i| set.with(*i)))
        .collect();
    for middle in 0..reach.len() {
        for from in 0..reach.len() {
            if reach[from].has(middle) {
                reach[from] = reach[from].or(&reach[middle]);
            }
        }
    }
    match reach
        .iter()
        .enumerate()
        .position(|(index, set)| set.has(index))
    {
        Some(index) => Err(index),
        None => Ok(reach),
    }
}

/// Merges behaviours that no probe parts; classes of one circle stand together.
fn classes(case: &Case, expansion: &Expansion) -> Result<Vec<(Vec<u8>, Class)>, Vec<Unsound>> {
    let mut merged: BTreeMap<&[u8], Vec<(Suspect, u64)>> = BTreeMap::new();
    for behaviour in &expansion.behaviours {
        merged
            .entry(&behaviour.answers)
            .or_default()
            .push((behaviour.suspect, behaviour.weight));
    }
    if merged.len() > most::CLASSES {
        return Err(vec![Unsound::TooMany("ways to behave", most::CLASSES)]);
    }
    let mut found: Vec<(Vec<u8>, Class)> = Vec::new();
    for (answers, members) in merged {
        let end = end_of(case, &members, found.len());
        let weight = members.iter().map(|(_, weight)| weight).sum();
        found.push((
            answers.to_vec(),
            Class {
                weight,
                end,
                circle: 0,
                members,
            },
        ));
    }
    circles(case, &mut found);
    found.sort_by_key(|(_, class)| {
        (
            class.circle,
            class.members.first().map(|(suspect, _)| *suspect),
        )
    });
    Ok(found)
}

/// One number for each remedy (or cause), one for a rest without advice, one of its own for a class that no single remedy serves.
fn end_of(case: &Case, members: &[(Suspect, u64)], own: usize) -> usize {
    let most = case.causes.len().max(case.remedies.len());
    let one = |suspect: Suspect| match (case.tell_apart, suspect) {
        (TellApart::Causes, Suspect::Cause(cause)) => cause.0,
        (TellApart::Causes, Suspect::Rest) => most,
        (TellApart::Remedies, suspect) => remedy_of(case, suspect).map_or(most, |remedy| remedy.0),
    };
    let mut ends = members.iter().map(|(suspect, _)| one(*suspect));
    match ends.next() {
        Some(end) if ends.all(|other| other == end) => end,
        _ => most + 1 + own,
    }
}

/// The lasting remedy that the guide names for a suspect.
pub(super) fn remedy_of(case: &Case, suspect: Suspect) -> Option<RemedyIndex> {
    match suspect {
        Suspect::Cause(cause) => case.causes.get(cause.0).map(|cause| cause.remedy),
        Suspect::Rest => case.rest.and_then(|rest| rest.remedy),
    }
}

fn circles(case: &Case, classes: &mut [(Vec<u8>, Class)]) {
    for (index, (_, class)) in classes.iter_mut().enumerate() {
        class.circle = index;
    }
    for later in 0..classes.len() {
        for earlier in 0..later {
            let mended = case.probes.iter().enumerate().any(|(probe, row)| {
                row.works_now.is_some_and(|answer| {
                    usize::from(classes[earlier].0[probe]) == answer.0
                        && usize::from(classes[later].0[probe]) == answer.0
                })
            });
            let (new, old) = (classes[earlier].1.circle, classes[later].1.circle);
            if new != old && (mended || classes[earlier].1.end == classes[later].1.end) {
                classes
                    .iter_mut()
                    .filter(|(_, class)| class.circle == old)
                    .for_each(|(_, class)| class.circle = new);
            }
        }
    }
}
