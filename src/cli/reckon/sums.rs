//! All figures of a report, worked out once for both formats.

use super::asked::{Asked, WhatIf};
use super::sought::Sought;
use crate::handbook::numbers::told;
use crate::proof::cases::sound;
use crate::reckoning::diagnosis::{
    Belief, Diagnosis, Fraction, Group, Limits, Minutes, Priced, ProbeIndex, QuickestOrder, Sensitivity, Suspect, Tree,
};

/// The figures.
pub struct Sums<'a> {
    /// The guide.
    pub sought: &'a Sought<'a>,
    /// Another share that was asked for; every figure below is with it.
    pub what_if: Option<WhatIf>,
    /// The shares.
    pub belief: Belief,
    /// The author's order.
    pub as_written: Priced,
    /// The quickest order.
    pub quickest: QuickestOrder,
    /// The quickest order with the shares as listed, if another share was asked for.
    pub quickest_as_listed: Option<Vec<ProbeIndex>>,
    /// An order given by hand.
    pub by_hand: Option<Priced>,
    /// The least-cost tree.
    pub tree: Tree,
    /// Suspects that no question tells apart.
    pub groups: Vec<Group>,
    /// Questions that tell nothing.
    pub dead: Vec<ProbeIndex>,
    /// How far the shares may be off; nothing where that takes too long.
    pub sensitivity: Option<Vec<Sensitivity>>,
    /// The questions that isolate the item: the same in every order.
    pub first: Minutes,
}

/// Works them out.
pub fn sums<'a>(sought: &'a Sought<'a>, asked: Asked) -> Sums<'a> {
    let listed = &sought.case.diagnosis;
    let case: &Diagnosis = asked.what_if.as_ref().map_or(listed, |what_if| &what_if.diagnosis);
    let limits = Limits::default();
    let (belief, groups, dead) = (case.belief(), case.groups(), case.dead_probes());
    let (as_written, quickest) = (case.price(&case.as_written_order()), case.quickest_order(limits));
    let by_hand = (!asked.order.is_empty()).then(|| case.price(&asked.order));
    let (tree, sensitivity) = (case.quickest_tree(limits), case.sensitivity());
    let quickest_as_listed = asked.what_if.is_some().then(|| listed.quickest_order(limits).priced.order);
    let first = sound(&sought.guide.first).into_iter().map(|first| told(&first.minutes)).sum();
    Sums {
        sought,
        belief,
        as_written,
        quickest,
        quickest_as_listed,
        by_hand,
        tree,
        groups,
        dead,
        sensitivity,
        first: Minutes(first),
        what_if: asked.what_if,
    }
}

impl Sums<'_> {
    /// The share of all cases that the list covers.
    pub fn listed_share(&self) -> Fraction {
        let rest = self.share(Suspect::Rest);
        let (over, under) = (rest.numerator(), rest.denominator());
        match (u64::try_from(under - over), u64::try_from(under)) {
            (Ok(listed), Ok(all)) => Fraction::new(listed, all),
            _ => Fraction::ONE,
        }
    }

    /// A suspect's share.
    pub fn share(&self, suspect: Suspect) -> Fraction {
        let found = self.belief.possible.iter().find(|(who, _)| *who == suspect);
        found.map_or(Fraction::ZERO, |(_, share)| *share)
    }

    /// Whether the author's order can be bettered.
    pub fn saves(&self) -> bool {
        self.quickest.priced.expected < self.as_written.expected
    }

    /// Every order with its name for programs and for people.
    pub fn orders(&self) -> Vec<(&'static str, &'static str, &Priced)> {
        let mut orders = vec![("as_written", "As written", &self.as_written)];
        orders.push(("quickest", "Quickest order", &self.quickest.priced));
        orders.extend(self.by_hand.iter().map(|priced| ("by_hand", "Your order", priced)));
        orders
    }

    /// The ids of the questions of an order.
    pub fn ids(&self, order: &[ProbeIndex]) -> Vec<&str> {
        order.iter().map(|probe| self.sought.probe(*probe)).collect()
    }
}
