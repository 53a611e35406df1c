//! Which probe to do next: beliefs, orders, decision trees, and what they cost.
//!
//! In: a `Case`, plain data by index. Out: exact expected minutes of any order, the quickest order, the least-cost decision tree with
//! its proven gap, and what the list cannot tell. Leaves names, words and rounding to its callers.
//! Not promised: that a symptom has one cause; that is the model.
//!
//! # The model
//! Exactly one suspect holds: a listed cause or *not on this list*. A probe costs minutes and its answer parts the suspects; a suspect that may
//! answer in more than one way is expanded into behaviours that do not (see `expand`). A job is opened at most once between two
//! shuttings and everything opened is closed at the end, so opening and closing are charged together and a state is *what is left* and
//! *what is open*, no more. A run ends when one remedy serves all that is left, when no probe parts it, or when a trial fix worked.
//! A probe that comes after others waits only as long as they can part what is left; one that parts nothing is passed over.
//!
//! Ties: fewest minutes, then fewest jobs opened, then the least worst case, then the author's order. All of them in whole numbers.

mod bound;
mod case;
mod choose;
mod clusters;
mod doubts;
mod expand;
mod grown;
mod hypotheses;
mod looks;
mod orders;
mod quickest;
mod search;
mod set;
mod table;
mod tree;
mod units;

pub use case::*;
pub use doubts::{Group, STEPS, Sensitivity};
pub use hypotheses::{Hypothesis, Wants};
pub use orders::Priced;
pub use quickest::{FoundBy, QuickestOrder};
pub use tree::{Belief, Branch, Decision, Ending, EndingKind, Node};
pub use units::*;

use choose::{InOrder, Searched};
use search::{Cost, Search};
use set::Set;
use table::Table;
use tree::Standing;

/// A sound case, ready to be reckoned.
#[derive(Clone, Debug)]
pub struct Diagnosis {
    case: Case,
    table: Table,
    dealt: Vec<(Suspect, ProbeIndex)>,
    grown: grown::Grown,
}

/// How far a search may go. A count, not a time: the same input gives the same answer everywhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// States that may be opened; one with a hundred probes and suspects or more counts as several.
    pub states: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Limits { states: 50_000 }
    }
}

/// How the next probe is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Plan<'a> {
    /// In this order; probes that are missing follow as written.
    Order(&'a [ProbeIndex]),
    /// Least expected minutes.
    Quickest(Limits),
}

/// A decision tree and what it costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Tree {
    /// Where it starts.
    pub root: Node,
    /// Expected minutes of a run, closing included.
    pub expected: Fraction,
    /// The longest run, closing included.
    pub worst: Minutes,
    /// No tree has less expected minutes than this (for a fixed order: its own).
    pub at_least: Fraction,
    /// The part of `expected` that may be too much: 0 is proved, 1 is nothing proved.
    pub gap: f64,
    /// States opened by the search.
    pub states: usize,
    /// Expected minutes until the item works again: with each suspect's own remedy, and none after a trial fix that worked.
    pub to_working_again: Fraction,
}

/// So many probes that could not be read are passed by; with one more a run is handed over. Each one passed by makes a tree of its own.
pub const MOST_UNREAD: usize = 1;

impl Diagnosis {
    /// Checks the case and makes it ready. Errors: every reason why it is unsound.
    pub fn of(case: Case) -> Result<Self, Vec<Unsound>> {
        let reasons = case::reasons(&case);
        if !reasons.is_empty() {
            return Err(reasons);
        }
        let mut last = vec![Unsound::TooLarge];
        for unsure in (0..=most::UNSURE_PROBES).rev() {
            let Some(expansion) = expand::expand(&case, unsure) else {
                continue;
            };
            match Table::of(&case, &expansion) {
                Ok(table) => {
                    return Ok(Diagnosis { case, table, dealt: expansion.dealt, grown: grown::Grown::default() });
                }
                Err(reasons) => last = reasons,
            }
        }
        Err(last)
    }

    /// The case as given.
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// Suspects and probes whose unsure answers were too many to be expanded exactly: figures are then approximate, and gaps 1.
    pub fn approximated(&self) -> &[(Suspect, ProbeIndex)] {
        &self.dealt
    }

    /// What is believed before the first probe.
    pub fn belief(&self) -> Belief {
        Standing::start(&self.table).belief(&self.table)
    }

    /// The author's order as a decision tree; a probe that must come after a later one waits for it.
    pub fn as_written_tree(&self) -> Tree {
        self.tree(Plan::Order(&self.as_written_order()))
    }

    /// The least-cost decision tree, or the best found with its gap.
    pub fn quickest_tree(&self, limits: Limits) -> Tree {
        self.tree(Plan::Quickest(limits))
    }

    /// The decision tree of a plan.
    pub fn tree(&self, plan: Plan<'_>) -> Tree {
        let start = Standing::start(&self.table);
        let (root, cost, least, states) = self.grow(start, plan);
        let weight = self.table.weight(&self.table.everyone);
        let to_working_again = tree::working_again(&self.case, &self.table, &root);
        Tree {
            root,
            expected: tree::expected(cost.minutes, weight),
            worst: Minutes(cost.worst),
            at_least: tree::expected(least, weight),
            gap: self.gap(cost.minutes, least),
            states,
            to_working_again: Fraction::reduced(to_working_again, u128::from(weight) * 10),
        }
    }

    /// How much of the minutes may be too much.
    fn gap(&self, minutes: u64, least: u64) -> f64 {
        match minutes.saturating_sub(least) {
            _ if !self.dealt.is_empty() => 1.0,
            0 => 0.0,
            over => over as f64 / minutes as f64,
        }
    }

    /// Where *I cannot tell* leads: the best for what is left without this probe, whose minutes are spent; after `MOST_UNREAD` of them
    /// on a path, an ending that hands over.
    pub fn cannot_tell(&self, at: &Decision, plan: Plan<'_>) -> Node {
        let (mut standing, _) = at.standing.worked(&self.table, at.probe.0);
        standing.left_out = standing.left_out.with(at.probe.0);
        if standing.left_out.len() > MOST_UNREAD {
            return Node::Ending(Box::new(tree::ending(&self.table, standing, EndingKind::HandOver, Vec::new())));
        }
        self.grow(standing, plan).0
    }

    /// The tree from here, its cost, a lower bound on any tree's cost, and the states opened; grown once.
    fn grow(&self, standing: Standing, plan: Plan<'_>) -> grown::Tree {
        self.grown.once(&standing, plan, || self.grow_anew(standing.clone(), plan))
    }

    fn grow_anew(&self, standing: Standing, plan: Plan<'_>) -> grown::Tree {
        let table = &self.table;
        let (left, open, left_out) = (standing.left, standing.open_mask(), standing.left_out);
        match plan {
            Plan::Order(order) => {
                let order = self.completed(order);
                let mut chooser = InOrder { table, order: &order, left_out };
                let (node, cost) = tree::grow(&self.case, table, standing, &mut chooser);
                (node, cost, cost.minutes, 0)
            }
            Plan::Quickest(limits) => {
                let mut search = Search::new(table, left_out, limits.states);
                let least = search.settle(left, open).minutes;
                let (node, cost) = tree::grow(&self.case, table, standing, &mut Searched::new(&search));
                (node, cost, least.min(cost.minutes), search.states_opened())
            }
        }
    }
}
