//! Trees that were grown before: a case that is asked the same again has the same answer, and growing is what takes time.
//!
//! In: where a run stands and the plan. Out: the tree, grown at the first time of asking. Copies of a case share what was grown: the
//! preview keeps a case for as long as its guide asks the same.

use super::search::Cost;
use super::tree::{Node, Standing};
use super::{Limits, Plan, ProbeIndex};
use std::sync::{Arc, Mutex, PoisonError};

/// The tree, its cost, a lower bound on any tree's cost, and the states opened.
pub(super) type Tree = (Node, Cost, u64, usize);

/// What was grown. There are a few dozen trees to a case, so that looking through them takes no time beside growing one.
#[derive(Clone, Debug, Default)]
pub(super) struct Grown(Arc<Mutex<Vec<(Standing, Asked, Tree)>>>);

/// A plan that is kept.
#[derive(Clone, Debug, PartialEq)]
enum Asked {
    Order(Vec<ProbeIndex>),
    Quickest(Limits),
}

impl Grown {
    /// The tree from here by this plan.
    pub(super) fn once(&self, standing: &Standing, plan: Plan<'_>, grow: impl FnOnce() -> Tree) -> Tree {
        let asked = match plan {
            Plan::Order(order) => Asked::Order(order.to_vec()),
            Plan::Quickest(limits) => Asked::Quickest(limits),
        };
        let known = || {
            let trees = self.0.lock().unwrap_or_else(PoisonError::into_inner);
            trees.iter().find(|known| known.0 == *standing && known.1 == asked).map(|known| known.2.clone())
        };
        known().unwrap_or_else(|| {
            let tree = grow();
            let mut trees = self.0.lock().unwrap_or_else(PoisonError::into_inner);
            trees.push((standing.clone(), asked, tree.clone()));
            tree
        })
    }
}
