//! Where each answer on paper leads.
//!
//! In: the tree of an order of probes. Out: for each probe that some way comes to, what is opened for it and where each of its
//! answers can lead: to which probes, or to which causes. Paper knows no way that was taken, so all ways are put together.

use crate::reckoning::diagnosis::{JobIndex, Node, Suspect};
use std::collections::{BTreeMap, BTreeSet};

/// A probe that some way comes to.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Reached {
    /// What is still shut on some way, in the order of opening.
    pub opened: Vec<JobIndex>,
    /// Where each answer leads, by its index.
    pub answers: BTreeMap<usize, Led>,
}

/// Where an answer leads on one way or another.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Led {
    /// The probes that may come next, by their index.
    pub next: BTreeSet<usize>,
    /// What is left where a way ends.
    pub causes: Vec<Suspect>,
}

/// Every probe of a tree, by its index.
pub fn reached(root: &Node) -> BTreeMap<usize, Reached> {
    let mut all = BTreeMap::new();
    follow(root, &mut all);
    all
}

fn follow(node: &Node, all: &mut BTreeMap<usize, Reached>) {
    let Node::Decision(decision) = node else { return };
    let here = all.entry(decision.probe.0).or_default();
    for job in &decision.newly_opened {
        if !here.opened.contains(job) {
            here.opened.push(*job);
        }
    }
    for branch in &decision.branches {
        here.answers.entry(branch.answer.0).or_default().add(&branch.node);
    }
    decision.branches.iter().for_each(|branch| follow(&branch.node, all));
}

impl Led {
    fn add(&mut self, node: &Node) {
        match node {
            Node::Decision(next) => {
                self.next.insert(next.probe.0);
            }
            Node::Ending(ending) => {
                let left = ending.belief.possible.iter().map(|(who, _)| *who).filter(|who| *who != Suspect::Rest);
                let new: Vec<Suspect> = left.filter(|who| !self.causes.contains(who)).collect();
                self.causes.extend(new);
            }
        }
    }
}
