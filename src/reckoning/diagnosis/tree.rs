//! A decision tree as plain data: what each page of a handbook needs to know, and nothing about pages.
//!
//! In: where a run stands and a way to choose the next probe. Out: the tree from there on, with exact minutes to go.
//! Leaves words, rounding and layout to others. Holds: *so far* + *closing up* + *to go* is the cost of the whole run.

use std::collections::BTreeMap;

use super::case::*;
use super::search::Cost;
use super::set::Set;
use super::table::{Step, Table, remedy_of};
use super::units::*;

/// A place in a decision tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Node {
    /// Something is to be done here.
    Decision(Box<Decision>),
    /// The run ends here.
    Ending(Box<Ending>),
}

/// The next probe, and what is known before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decision {
    /// What to do next.
    pub probe: ProbeIndex,
    /// What is possible before it is done.
    pub belief: Belief,
    /// Spent so far: probes, opening, and closing where a probe needed a job shut.
    pub so_far: Minutes,
    /// Closing all that is open now.
    pub closing_up: Minutes,
    /// Expected minutes still to come, without `closing_up`.
    pub to_go: Fraction,
    /// The longest that can still come, without `closing_up`.
    pub worst_to_go: Minutes,
    /// Jobs open before the probe, in the order in which they were opened.
    pub open: Vec<JobIndex>,
    /// Jobs to shut before the probe, in closing order.
    pub shut_first: Vec<JobIndex>,
    /// Jobs to open for the probe, in opening order.
    pub newly_opened: Vec<JobIndex>,
    /// Probes that would have come first in a fixed order, but can no longer part what is left.
    pub passed_over: Vec<ProbeIndex>,
    /// Every answer of the probe, in the author's order.
    pub branches: Vec<Branch>,
    pub(super) standing: Standing,
}

/// An answer and where it leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Branch {
    /// Which answer.
    pub answer: AnswerIndex,
    /// How likely it is here.
    pub chance: Fraction,
    /// Where it leads.
    pub node: Node,
}

/// Where a run ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ending {
    /// How it ends.
    pub kind: EndingKind,
    /// What is still possible.
    pub belief: Belief,
    /// Spent so far, as in `Decision`.
    pub so_far: Minutes,
    /// Closing all that is open.
    pub closing_up: Minutes,
    /// What is open, last opened first: the order in which to close.
    pub close: Vec<JobIndex>,
    /// Probes of a fixed order that come later but can no longer part what is left.
    pub passed_over: Vec<ProbeIndex>,
    pub(super) standing: Standing,
}

/// How a run ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EndingKind {
    /// All that is left is mended by this lasting remedy.
    OneRemedy(RemedyIndex),
    /// The trial fix worked: it was one of those left.
    Mended(ProbeIndex),
    /// No probe can part what is left.
    Group,
    /// Not on this list.
    NotListed,
    /// No suspect gives these answers: an answer was misread, or it is not on this list.
    NothingFits,
    /// Too many probes could not be read: for somebody with better means.
    HandOver,
}

/// What is possible and what is not.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Belief {
    /// Who is still possible, in the author's order, the rest last; the shares add up to 1.
    pub possible: Vec<(Suspect, Fraction)>,
    /// Who was ruled out, and by which probe, in the order in which it happened.
    pub ruled_out: Vec<(Suspect, ProbeIndex)>,
}

/// Where a run stands: enough to go on from there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Standing {
    pub left: Set,
    /// In opening order.
    pub open: Vec<JobIndex>,
    pub so_far: u64,
    pub left_out: Set,
    pub ruled_out: Vec<(Suspect, ProbeIndex)>,
    pub mended: Option<ProbeIndex>,
}

/// Chooses the next probe; `None` where the run ends.
pub(super) trait Chooser {
    /// The probe, and those of a fixed order that are passed over.
    fn choose(&mut self, set: &Set, open: u64) -> Option<usize>;
    /// Probes of a fixed order between the last one done and this one (or the end).
    fn passed_over(&self, done: Option<usize>, next: Option<usize>) -> Vec<ProbeIndex>;
}

impl Standing {
    pub fn start(table: &Table) -> Self {
        let (open, ruled_out) = (Vec::new(), Vec::new());
        Standing { left: table.everyone, open, so_far: 0, left_out: Set::default(), ruled_out, mended: None }
    }

    pub fn open_mask(&self) -> u64 {
        self.open.iter().fold(0, |mask, job| mask | 1 << job.0)
    }

    /// After the probe's work is done, before its answer is known.
    pub fn worked(&self, table: &Table, probe: usize) -> (Standing, Step) {
        let step = table.step(probe, self.open_mask());
        let mut next = self.clone();
        next.open.retain(|job| step.shut >> job.0 & 1 == 0);
        next.open.extend(table.in_opening_order(step.opened));
        next.so_far += table.probes[probe].minutes + table.opening(step.opened) + table.closing(step.shut);
        (next, step)
    }

    /// After this answer of the probe.
    fn answered(&self, table: &Table, probe: usize, answer: usize) -> Standing {
        let mut next = self.clone();
        next.left = self.left.and(&table.probes[probe].answers[answer]);
        let still = weights(table, &next.left);
        for suspect in weights(table, &self.left).into_keys().filter(|suspect| !still.contains_key(suspect)) {
            next.ruled_out.push((suspect, ProbeIndex(probe)));
        }
        if table.probes[probe].works_now == Some(answer) {
            next.mended = Some(ProbeIndex(probe));
        }
        next
    }

    pub fn belief(&self, table: &Table) -> Belief {
        let total = table.weight(&self.left);
        let possible = weights(table, &self.left).into_iter().map(|(who, weight)| (who, Fraction::new(weight, total)));
        Belief { possible: possible.collect(), ruled_out: self.ruled_out.clone() }
    }
}

/// The weight of each suspect within a set.
pub(super) fn weights(table: &Table, set: &Set) -> BTreeMap<Suspect, u64> {
    let mut found = BTreeMap::new();
    for (suspect, weight) in set.iter().flat_map(|class| &table.classes[class].members) {
        *found.entry(*suspect).or_default() += weight;
    }
    found
}

/// The tree from here on, and its cost.
pub(super) fn grow(case: &Case, table: &Table, standing: Standing, chooser: &mut dyn Chooser) -> (Node, Cost) {
    grow_after(case, table, standing, chooser, None)
}

fn grow_after(
    case: &Case,
    table: &Table,
    standing: Standing,
    chooser: &mut dyn Chooser,
    done: Option<usize>,
) -> (Node, Cost) {
    let over = standing.mended.is_some() || standing.left.is_empty() || table.one_end(&standing.left);
    let next = if over { None } else { chooser.choose(&standing.left, standing.open_mask()) };
    let passed_over = if over { Vec::new() } else { chooser.passed_over(done, next) };
    match next {
        None => {
            let kind = kind(case, table, &standing);
            (Node::Ending(Box::new(ending(table, standing, kind, passed_over))), Cost::default())
        }
        Some(probe) => {
            let (node, cost) = decision(case, table, standing, chooser, probe, passed_over);
            (Node::Decision(Box::new(node)), cost)
        }
    }
}

fn decision(
    case: &Case,
    table: &Table,
    standing: Standing,
    chooser: &mut dyn Chooser,
    probe: usize,
    passed_over: Vec<ProbeIndex>,
) -> (Decision, Cost) {
    let (worked, step) = standing.worked(table, probe);
    let total = table.weight(&standing.left);
    let mut branches = Vec::new();
    let mut parts = Vec::new();
    for answer in 0..table.probes[probe].answers.len() {
        let next = worked.answered(table, probe, answer);
        let chance = Fraction::new(table.weight(&next.left), total);
        let (node, cost) = grow_after(case, table, next, chooser, Some(probe));
        branches.push(Branch { answer: AnswerIndex(answer), chance, node });
        parts.push(cost);
    }
    let own = Cost { minutes: total * step.cost, jobs: total * u64::from(step.opened.count_ones()), worst: step.cost };
    let cost = own.with(parts.into_iter());
    let mut shut_first = standing.open.clone();
    shut_first.retain(|job| step.shut >> job.0 & 1 == 1);
    shut_first.reverse();
    let decision = Decision {
        probe: ProbeIndex(probe),
        belief: standing.belief(table),
        so_far: Minutes(standing.so_far),
        closing_up: Minutes(table.closing(standing.open_mask())),
        to_go: expected(cost.minutes, total),
        worst_to_go: Minutes(cost.worst),
        open: standing.open.clone(),
        shut_first,
        newly_opened: table.in_opening_order(step.opened),
        passed_over,
        branches,
        standing,
    };
    (decision, cost)
}

/// Weight times tenths over weight, in minutes.
pub(super) fn expected(minutes: u64, weight: u64) -> Fraction {
    Fraction::reduced(minutes.into(), u128::from(weight) * 10)
}

pub(super) fn ending(table: &Table, standing: Standing, kind: EndingKind, passed_over: Vec<ProbeIndex>) -> Ending {
    let mut close = standing.open.clone();
    close.reverse();
    Ending {
        kind,
        belief: standing.belief(table),
        so_far: Minutes(standing.so_far),
        closing_up: Minutes(table.closing(standing.open_mask())),
        close,
        passed_over,
        standing,
    }
}

fn kind(case: &Case, table: &Table, standing: &Standing) -> EndingKind {
    let left = weights(table, &standing.left);
    let mut remedies = left.keys().map(|suspect| remedy_of(case, *suspect));
    let first = remedies.next().flatten();
    let one = remedies.all(|remedy| remedy == first) && (case.tell_apart == TellApart::Remedies || left.len() == 1);
    match (standing.mended, first) {
        (Some(probe), _) => EndingKind::Mended(probe),
        _ if left.is_empty() => EndingKind::NothingFits,
        _ if left.keys().eq([&Suspect::Rest]) => EndingKind::NotListed,
        (None, Some(remedy)) if one => EndingKind::OneRemedy(remedy),
        _ => EndingKind::Group,
    }
}

/// All endings of a tree, in the order of its branches, each with the probe that was done last.
pub(super) fn endings(node: &Node) -> Vec<(&Ending, Option<ProbeIndex>)> {
    fn collect<'n>(node: &'n Node, last: Option<ProbeIndex>, found: &mut Vec<(&'n Ending, Option<ProbeIndex>)>) {
        match node {
            Node::Ending(ending) => found.push((ending, last)),
            Node::Decision(decision) => {
                for branch in &decision.branches {
                    collect(&branch.node, Some(decision.probe), found);
                }
            }
        }
    }
    let mut found = Vec::new();
    collect(node, None, &mut found);
    found
}

/// Weight times tenths until the item works again: each run with its closing, and each suspect's own remedy with what it needs opened.
pub(super) fn working_again(case: &Case, table: &Table, node: &Node) -> u128 {
    let mut sum = 0;
    for (ending, _) in endings(node) {
        let run = u128::from(ending.so_far.0) + u128::from(ending.closing_up.0);
        let open = ending.standing.open_mask();
        for (suspect, weight) in weights(table, &ending.standing.left) {
            let remedy = remedy_of(case, suspect).and_then(|remedy| case.remedies.get(remedy.0));
            let after = match (ending.kind, remedy) {
                (EndingKind::Mended(_), _) | (_, None) => 0,
                (_, Some(r)) => {
                    u128::from(r.minutes.0) + u128::from(table.round_trip(table.with_needs(&r.needs) & !open))
                }
            };
            sum += u128::from(weight) * (run + after);
        }
    }
    sum
}
