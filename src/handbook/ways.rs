//! The ways through a fault-finding guide: every question and every ending, with its address and where each answer leads.
//!
//! In: a guide and its reckoning. Out: [`Ways`], a flat list of stops. The tree is the one that the guide asks for.
//! *I cannot tell* leads where the reckoning says: on at first, in the end to somebody with a meter.

use super::addresses;
use super::page::Address;
use crate::model::{self, Order};
use crate::proof::cases::{Case, NO_CHANGE, WORKS, sound};
use crate::reckoning::diagnosis::{Belief, Decision, Ending, EndingKind, Limits, Node, Plan, Tree};

/// How the guide wants its next question chosen.
fn plan<'o>(guide: &model::Symptom, written: &'o [crate::reckoning::diagnosis::ProbeIndex]) -> Plan<'o> {
    match guide.order {
        Order::AsWritten => Plan::Order(written),
        Order::Quickest => Plan::Quickest(Limits::default()),
    }
}

/// A question that was answered on the way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Given {
    /// The stop at which it was asked.
    pub stop: usize,
    /// The probe, by its index.
    pub probe: usize,
    /// The answer, by its index; nothing for *I cannot tell*.
    pub answer: Option<usize>,
}

/// Where a way stops.
#[derive(Debug, Clone)]
pub struct Stop {
    /// Its page; the first question stands on the guide's own page.
    pub address: Address,
    /// What was answered before.
    pub way: Vec<Given>,
    /// What is there.
    pub what: At,
}

/// What is at a stop.
#[derive(Debug, Clone)]
pub enum At {
    /// A question, with the stop that each answer leads to, and that of *I cannot tell*.
    Question(Box<Decision>, Vec<usize>, Option<usize>),
    /// An ending.
    End(Box<Ending>),
}

impl Stop {
    /// What is believed there.
    pub fn belief(&self) -> &Belief {
        match &self.what {
            At::Question(decision, ..) => &decision.belief,
            At::End(ending) => &ending.belief,
        }
    }

    /// The kind of an ending; nothing for a question.
    pub fn ending(&self) -> Option<EndingKind> {
        match &self.what {
            At::Question(..) => None,
            At::End(ending) => Some(ending.kind),
        }
    }
}

/// Every stop of a guide; the first is the start.
#[derive(Debug, Clone)]
pub struct Ways {
    /// The stops.
    pub stops: Vec<Stop>,
    /// The tree that they come from.
    pub tree: Tree,
}

impl Ways {
    /// The most questions on any way that goes through a stop.
    pub fn questions_through(&self, stop: usize) -> usize {
        let Some(here) = self.stops.get(stop) else { return 0 };
        here.way.len() + self.deepest(stop)
    }

    fn deepest(&self, stop: usize) -> usize {
        match self.stops.get(stop).map(|stop| &stop.what) {
            Some(At::Question(_, next, _)) => 1 + next.iter().map(|next| self.deepest(*next)).max().unwrap_or(0),
            _ => 0,
        }
    }
}

/// The tree that the guide asks for.
pub fn tree(guide: &model::Symptom, case: &Case) -> Tree {
    case.diagnosis.tree(plan(guide, &case.diagnosis.as_written_order()))
}

/// Lays out every way.
pub fn ways(guide: &model::Symptom, case: &Case) -> Ways {
    let written = case.diagnosis.as_written_order();
    let plan = plan(guide, &written);
    let tree = case.diagnosis.tree(plan);
    let mut walking = Walking { guide, case, plan, stops: Vec::new() };
    walking.node(&tree.root, Vec::new());
    Ways { stops: walking.stops, tree }
}

/// The id of an answer, as addresses are made from it.
pub fn answer_id(probe: &model::Probe, answer: usize) -> String {
    if !probe.mends.is_empty() {
        return if answer == 0 { WORKS } else { NO_CHANGE }.to_owned();
    }
    sound(&probe.answers).get(answer).map_or_else(String::new, |answer| answer.answer.value.0.clone())
}

struct Walking<'w> {
    guide: &'w model::Symptom,
    case: &'w Case,
    plan: Plan<'w>,
    stops: Vec<Stop>,
}

impl Walking<'_> {
    /// Adds a node and all that follows; gives the number of its stop.
    fn node(&mut self, node: &Node, way: Vec<Given>) -> usize {
        match node {
            Node::Decision(decision) => self.question(decision, way),
            Node::Ending(ending) => self.add("end", way, At::End(ending.clone())),
        }
    }

    fn add(&mut self, name: &str, way: Vec<Given>, what: At) -> usize {
        let address = self.address(name, &way);
        self.stops.push(Stop { address, way, what });
        self.stops.len() - 1
    }

    fn question(&mut self, decision: &Decision, way: Vec<Given>) -> usize {
        let name = self.probe_id(decision.probe.0);
        let at = self.add(&name, way.clone(), At::Question(Box::new(decision.clone()), Vec::new(), None));
        let mut next = Vec::new();
        for branch in &decision.branches {
            let given = Given { stop: at, probe: decision.probe.0, answer: Some(branch.answer.0) };
            next.push(self.node(&branch.node, longer(&way, given)));
        }
        let unread = Given { stop: at, probe: decision.probe.0, answer: None };
        let cannot_tell = self.cannot_tell(decision, longer(&way, unread));
        if let Some(stop) = self.stops.get_mut(at) {
            stop.what = At::Question(Box::new(decision.clone()), next, Some(cannot_tell));
        }
        at
    }

    fn cannot_tell(&mut self, decision: &Decision, way: Vec<Given>) -> usize {
        let node = self.case.diagnosis.cannot_tell(decision, self.plan);
        self.node(&node, way)
    }

    fn probe_id(&self, probe: usize) -> String {
        sound(&self.guide.probes).get(probe).map_or_else(String::new, |probe| probe.probe.value.0.clone())
    }

    /// The first question has no page of its own.
    fn address(&self, name: &str, way: &[Given]) -> Address {
        let guide = self.guide.symptom.value.as_str();
        if way.is_empty() {
            return addresses::guide(model::Kind::Symptom, guide);
        }
        let probes = sound(&self.guide.probes);
        let answers: Vec<String> = way
            .iter()
            .filter_map(|given| {
                let probe = probes.get(given.probe)?;
                let answer = given.answer.map_or_else(|| "cannot-tell".to_owned(), |answer| answer_id(probe, answer));
                Some(format!("{}={answer}", probe.probe.value))
            })
            .collect();
        addresses::on_the_way(guide, name, &answers)
    }
}

fn longer(way: &[Given], given: Given) -> Vec<Given> {
    way.iter().cloned().chain([given]).collect()
}
