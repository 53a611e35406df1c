//! Fixed orders: what any of them costs, and the quickest.
//!
//! In: an order of probes. Out: its exact figures. A fixed order of probes with several answers is a tree too: each run does the next
//! probe that still parts what is left.

use super::*;

/// A fixed order and what it costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Priced {
    /// All probes; those that were not given follow as written.
    pub order: Vec<ProbeIndex>,
    /// Expected minutes of a run, closing included.
    pub expected: Fraction,
    /// The longest run, closing included.
    pub worst: Minutes,
    /// Expected minutes until the item works again.
    pub to_working_again: Fraction,
    /// The share of all cases whose remedy is known (or which are mended) after so many places of the order.
    pub found_by_step: Vec<Fraction>,
    /// Pairs of this order where the first should come after the second.
    pub breaks: Vec<(ProbeIndex, ProbeIndex)>,
}

impl Diagnosis {
    /// What a fixed order costs, exactly. Unknown and repeated probes are left out; missing ones follow as written.
    pub fn price(&self, order: &[ProbeIndex]) -> Priced {
        let complete: Vec<ProbeIndex> = self.completed(order).into_iter().map(ProbeIndex).collect();
        let tree = self.tree(Plan::Order(&complete));
        Priced {
            expected: tree.expected,
            worst: tree.worst,
            to_working_again: tree.to_working_again,
            found_by_step: self.found_by_step(&tree.root, &complete),
            breaks: self.breaks(&complete),
            order: complete,
        }
    }

    /// The author's order, in which a probe waits for those it comes after.
    pub fn as_written_order(&self) -> Vec<ProbeIndex> {
        let mut done = Set::default();
        let mut order = Vec::new();
        // Each round places the first probe whose predecessors are placed; `after` has no cycle, so there is one.
        while let Some(next) =
            (0..self.table.probes.len()).find(|p| !done.has(*p) && self.table.probes[*p].before.within(&done))
        {
            done = done.with(next);
            order.push(ProbeIndex(next));
        }
        order
    }

    /// The order with the missing probes behind it.
    pub(super) fn completed(&self, order: &[ProbeIndex]) -> Vec<usize> {
        let mut seen = Set::default();
        let mut complete = Vec::new();
        for probe in order.iter().chain(&self.as_written_order()) {
            if probe.0 < self.table.probes.len() && !seen.has(probe.0) {
                seen = seen.with(probe.0);
                complete.push(probe.0);
            }
        }
        complete
    }

    fn breaks(&self, order: &[ProbeIndex]) -> Vec<(ProbeIndex, ProbeIndex)> {
        let mut found = Vec::new();
        for (place, early) in order.iter().enumerate() {
            let late = order[place + 1..].iter().filter(|late| self.table.probes[early.0].before.has(late.0));
            found.extend(late.map(|late| (*early, *late)));
        }
        found
    }

    fn found_by_step(&self, root: &Node, order: &[ProbeIndex]) -> Vec<Fraction> {
        let mut found = vec![0; order.len()];
        for (ending, last) in tree::endings(root) {
            let place = last.and_then(|last| order.iter().position(|probe| *probe == last)).unwrap_or(0);
            if let (EndingKind::OneRemedy(_) | EndingKind::Mended(_), Some(found)) = (ending.kind, found.get_mut(place))
            {
                let listed = tree::weights(&self.table, &ending.standing.left).into_iter();
                *found +=
                    listed.filter(|(suspect, _)| *suspect != Suspect::Rest).map(|(_, weight)| weight).sum::<u64>();
            }
        }
        let total = self.table.weight(&self.table.everyone);
        let mut sum = 0;
        let shares = found.into_iter().map(|weight| {
            sum += weight;
            Fraction::new(sum, total)
        });
        shares.collect()
    }
}
