//! Ways to choose the next probe: a fixed order, a settled search, and one look ahead where a search was stopped.

use std::collections::HashMap;
use std::hash::BuildHasherDefault;

use super::search::{Cost, Mixer, Search, live_parts};
use super::set::Set;
use super::table::Table;
use super::tree::Chooser;
use super::units::ProbeIndex;

/// A fixed order: the first probe that still parts what is left.
pub(super) struct InOrder<'a> {
    pub table: &'a Table,
    pub order: &'a [usize],
    pub left_out: Set,
}

impl Chooser for InOrder<'_> {
    fn choose(&mut self, set: &Set, _open: u64) -> Option<usize> {
        self.order
            .iter()
            .copied()
            .find(|probe| !self.left_out.has(*probe) && self.table.splits(*probe, set))
    }

    fn passed_over(&self, done: Option<usize>, next: Option<usize>) -> Vec<ProbeIndex> {
        let place = |probe: Option<usize>| {
            probe.and_then(|probe| self.order.iter().position(|other| *other == probe))
        };
        let from = place(done).map_or(0, |place| place + 1);
        let to = place(next).unwrap_or(self.order.len());
        let between = self.order.get(from..to).unwrap_or_default();
        between
            .iter()
            .filter(|probe| !self.left_out.has(**probe))
            .map(|probe| ProbeIndex(*probe))
            .collect()
    }
}

/// What a search settled; where it did not, the probe that is best if greed follows.
pub(super) struct Searched<'a, 't> {
    pub search: &'a Search<'t>,
    greedy: Greedy<'a, 't>,
}

impl<'a, 't> Searched<'a, 't> {
    pub fn new(search: &'a Search<'t>) -> Self {
        Searched {
            search,
            greedy: Greedy {
                search,
                known: HashMap::default(),
            },
        }
    }
}

impl Chooser for Searched<'_, '_> {
    fn choose(&mut self, set: &Set, open: u64) -> Option<usize> {
        self.search
            .choice(set, open)
            .or_else(|| self.greedy.look_ahead(set, open))
    }

    fn passed_over(&self, _done: Option<usize>, _next: Option<usize>) -> Vec<ProbeIndex> {
        Vec::new()
    }
}

/// Up to so many classes times probes there is time to look ahead.
const LOOK_AHEAD: usize = 8_000;

/// Least cost per pair parted, and one look ahead on top of it. A stand-in, with its gap said: never called the best.
struct Greedy<'a, 't> {
    search: &'a Search<'t>,
    known: HashMap<(Set, u64), Cost, BuildHasherDefault<Mixer>>,
}

impl Greedy<'_, '_> {
    fn look_ahead(&mut self, set: &Set, open: u64) -> Option<usize> {
        let search = self.search;
        if set.len() * search.table.probes.len() > LOOK_AHEAD {
            return self.cheapest_per_pair(set, open);
        }
        let costs = search
            .useful(set)
            .map(|probe| (self.cost_of(probe, set, open), probe));
        costs.min().map(|(_, probe)| probe)
    }

    fn cost_of(&mut self, probe: usize, set: &Set, open: u64) -> Cost {
        let table = self.search.table;
        let (step, weight) = (table.step(probe, open), table.weight(set));
        let jobs = weight * u64::from(step.opened.count_ones());
        let own = Cost {
            minutes: weight * step.cost,
            jobs,
            worst: step.cost,
        };
        let parts = live_parts(table, &self.search.left_out, probe, set);
        own.with(parts.into_iter().map(|part| self.cost(&part, step.open)))
    }

    fn cost(&mut self, set: &Set, open: u64) -> Cost {
        if let (Some(_), Some(cost)) = (self.search.choice(set, open), self.search.lower(set, open))
        {
            return cost;
        }
        if let Some(cost) = self.known.get(&(*set, open)) {
            return *cost;
        }
        let cost = self
            .cheapest_per_pair(set, open)
            .map(|probe| self.cost_of(probe, set, open))
            .unwrap_or_default();
        self.known.insert((*set, open), cost);
        cost
    }

    fn cheapest_per_pair(&self, set: &Set, open: u64) -> Option<usize> {
        let table = self.search.table;
        let total = table.weight(set) as f64;
        let rate = |probe: usize| {
            let squares: f64 = table
                .parts(probe, set)
                .map(|(_, part)| table.weight(&part) as f64)
                .map(|w| w * w)
                .sum();
            table.step(probe, open).cost as f64 / (total * total - squares)
        };
        let rates = self.search.useful(set).map(|probe| (rate(probe), probe));
        rates
            .min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)))
            .map(|(_, probe)| probe)
    }
}
