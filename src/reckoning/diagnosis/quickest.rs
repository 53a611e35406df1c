//! The quickest fixed order of all probes.
//!
//! In: a ready case. Out: an order, its price, and how it is known to be the best, or how far off it may be.
//! Where each probe leaves at most one answer to go on from, an order *is* a tree and the search settles both. Else orders are improved by moving
//! one probe at a time and then tried from the front, where no order can beat the least-cost trees of what it leaves. Where that is too many, the
//! least-cost tree is the bound and the gap is said. Orders that cost the same in every respect: the one found first, starting from the author's.

use super::clusters::{self, Task};
use super::looks::{self, Look};
use super::search::{Search, live_parts};
use super::tree::Chooser;
use super::*;

/// The quickest order and how well it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct QuickestOrder {
    /// The order and its figures.
    pub priced: Priced,
    /// No order has less expected minutes than this.
    pub at_least: Fraction,
    /// The part of the expected minutes that may be too much: 0 is proved.
    pub gap: f64,
    /// How it was found.
    pub found_by: FoundBy,
}

/// How the quickest order was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundBy {
    /// Sorting by minutes over share, which is exact here.
    Ratio,
    /// The cluster rule for a forest of access jobs, which is exact here.
    Clusters,
    /// Search over what is left and what is open: exact if the gap is 0.
    Search,
    /// Trying orders from the front and giving up those that cannot beat the best: exact.
    EveryOrder,
    /// Moving one probe at a time: best found, with its gap.
    Moves,
}

/// So many beginnings of orders are tried; fewer where there are many classes and probes.
const BEGINNINGS: usize = 30_000;
/// So many orders are priced when probes are moved.
const MOVES: usize = 5_000;

impl Diagnosis {
    /// The quickest order of all probes that keeps `after`; probes that part nothing where their turn comes stand behind.
    pub fn quickest_order(&self, limits: Limits) -> QuickestOrder {
        let table = &self.table;
        if let Some((order, found_by)) = self.by_rule() {
            let minutes = cost_in_order(table, &order, &table.everyone, 0).minutes;
            return self.quickest(&order, minutes, found_by);
        }
        let mut search = Search::new(table, Set::default(), limits.states);
        let least = search.settle(table.everyone, 0).minutes;
        let first = self.along_the_live_branch(&search);
        if search.choice(&table.everyone, 0).is_some() && self.one_live_branch() {
            return self.quickest(&first, least, FoundBy::Search);
        }
        let written = self
            .as_written_order()
            .iter()
            .map(|probe| probe.0)
            .collect();
        let price = |order: &Vec<usize>| cost_in_order(table, order, &table.everyone, 0);
        let [written, first] = [written, first].map(|order| self.moved(order));
        let best = if price(&first) < price(&written) {
            first
        } else {
            written
        };
        let most = BEGINNINGS / (1 + table.classes.len() * table.probes.len() / 1024);
        let mut trying = Trying {
            search,
            best: price(&best),
            order: best,
            tried: 0,
            most,
        };
        trying.go_on(&mut Vec::new(), &[(table.everyone, 0)], Cost::default());
        let order = self.completed(&self.with_waiting(&trying.order));
        match trying.tried < trying.most {
            true => self.quickest(&order, trying.best.minutes, FoundBy::EveryOrder),
            false => self.quickest(&order, least, FoundBy::Moves),
        }
    }

    fn quickest(&self, order: &[usize], least: u64, found_by: FoundBy) -> QuickestOrder {
        let places: Vec<ProbeIndex> = order.iter().copied().map(ProbeIndex).collect();
        let minutes = cost_in_order(&self.table, order, &self.table.everyone, 0).minutes;
        QuickestOrder {
            priced: self.price(&places),
            at_least: tree::expected(least.min(minutes), self.table.weight(&self.table.everyone)),
            gap: self.gap(minutes, least),
            found_by,
        }
    }

    /// Whether every probe leaves at most one answer from which there is more to find out: then it does so whatever is left.
    fn one_live_branch(&self) -> bool {
        let table = &self.table;
        (0..table.probes.len())
            .all(|probe| live_parts(table, &Set::default(), probe, &table.everyone).len() <= 1)
    }

    /// The probes in the order in which the tree does them where most is still open, the others as written.
    fn along_the_live_branch(&self, search: &Search<'_>) -> Vec<usize> {
        let table = &self.table;
        let mut chooser = Searched::new(search);
        let (mut set, mut open, mut order) = (table.everyone, 0, Vec::new());
        while let Some(probe) = chooser.choose(&set, open).filter(|_| !table.one_end(&set)) {
            // What it comes after can part nothing any more: placed before it, it is passed over.
            let earlier = self.as_written_order().into_iter().map(|earlier| earlier.0);
            order.extend(earlier.filter(|earlier| table.probes[probe].before.has(*earlier)));
            order.push(probe);
            open = table.step(probe, open).open;
            let parts = live_parts(table, &Set::default(), probe, &set);
            let Some(next) = parts.into_iter().max_by_key(|part| table.weight(part)) else {
                break;
            };
            set = next;
        }
        let places: Vec<ProbeIndex> = order.into_iter().map(ProbeIndex).collect();
        self.completed(&places)
    }

    /// The ratio or cluster rule, where it is exact.
    fn by_rule(&self) -> Option<(Vec<usize>, FoundBy)> {
        let table = &self.table;
        let (looks, rest) = looks::own_looks(table)?;
        let jobs = self.forest(&looks)?;
        let found_by = if jobs.is_empty() {
            FoundBy::Ratio
        } else {
            FoundBy::Clusters
        };
        if !rest.is_empty() {
            return Some((self.clustered(&looks, &jobs, None), found_by));
        }
        // Nobody is left over, so that the last cause needs no look: each in turn is the one that is not done.
        let orders = looks
            .iter()
            .map(|look| self.clustered(&looks, &jobs, Some(look.probe)));
        let best = orders.min_by_key(|order| {
            (
                cost_in_order(table, order, &table.everyone, 0),
                order.clone(),
            )
        })?;
        Some((best, found_by))
    }

    /// The jobs that the looks need, each with the one job around it, if they are a forest.
    fn forest(&self, looks: &[Look]) -> Option<Vec<(usize, Option<usize>)>> {
        let table = &self.table;
        let needed = looks
            .iter()
            .fold(0, |mask, look| mask | table.probes[look.probe].needs);
        let mut jobs = Vec::new();
        for job in table.in_opening_order(needed) {
            let around = table.jobs[job.0].needs & !(1 << job.0);
            jobs.push((job.0, self.innermost(around)?));
        }
        looks
            .iter()
            .all(|look| self.innermost(table.probes[look.probe].needs).is_some())
            .then_some(jobs)
    }

    /// The one job that needs all of these (`None` inside if there are none), if they are nested in one another.
    fn innermost(&self, jobs: u64) -> Option<Option<usize>> {
        match self.table.in_opening_order(jobs).last() {
            None => Some(None),
            Some(last) => (self.table.jobs[last.0].needs == jobs).then_some(Some(last.0)),
        }
    }

    fn clustered(
        &self,
        looks: &[Look],
        jobs: &[(usize, Option<usize>)],
        last: Option<usize>,
    ) -> Vec<usize> {
        let table = &self.table;
        let done: Vec<&Look> = looks
            .iter()
            .filter(|look| Some(look.probe) != last)
            .collect();
        let needed = done
            .iter()
            .fold(0, |mask, look| mask | table.probes[look.probe].needs);
        let jobs: Vec<&(usize, Option<usize>)> = jobs
            .iter()
            .filter(|(job, _)| needed >> job & 1 == 1)
            .collect();
        let place = |job: Option<usize>| {
            job.and_then(|job| jobs.iter().position(|(other, _)| *other == job))
        };
        let mut tasks = Vec::new();
        for (job, around) in &jobs {
            tasks.push(Task {
                minutes: table.round_trip(1 << job),
                weight: 0,
                parent: place(*around),
            });
        }
        for look in &done {
            let row = &table.probes[look.probe];
            let parent = place(self.innermost(row.needs).flatten());
            tasks.push(Task {
                minutes: row.minutes,
                weight: table.weight(&look.catch),
                parent,
            });
        }
        let order = clusters::in_best_order(&tasks).into_iter();
        let order: Vec<ProbeIndex> = order
            .filter_map(|task| Some(ProbeIndex(done.get(task.checked_sub(jobs.len())?)?.probe)))
            .collect();
        // The one that is not done stands behind the others; so do probes that part nothing.
        let last = last.map(ProbeIndex);
        self.completed(&order.into_iter().chain(last).collect::<Vec<_>>())
    }

    fn keeps_after(&self, order: &[usize]) -> bool {
        let mut done = Set::default();
        order.iter().all(|probe| {
            done = done.with(*probe);
            self.table.probes[*probe].before.within(&done)
        })
    }

    /// Moves one probe at a time for as long as that is cheaper.
    fn moved(&self, mut order: Vec<usize>) -> Vec<usize> {
        let table = &self.table;
        let mut best = cost_in_order(table, &order, &table.everyone, 0);
        let mut priced = 0;
        let mut improved = true;
        while improved && priced < MOVES {
            improved = false;
            for from in 0..order.len() {
                for to in (0..order.len()).filter(|to| *to != from) {
                    let mut other = order.clone();
                    let probe = other.remove(from);
                    other.insert(to, probe);
                    if priced >= MOVES || !self.keeps_after(&other) {
                        continue;
                    }
                    priced += 1;
                    let cost = cost_in_order(table, &other, &table.everyone, 0);
                    if cost < best {
                        (best, order, improved) = (cost, other, true);
                    }
                }
            }
        }
        order
    }

    /// The order with each probe behind all those that it comes after.
    fn with_waiting(&self, order: &[usize]) -> Vec<ProbeIndex> {
        let mut placed = Vec::new();
        for probe in order.iter().copied().map(ProbeIndex) {
            let before = self
                .as_written_order()
                .into_iter()
                .filter(|other| self.table.probes[probe.0].before.has(other.0));
            placed.extend(before.chain([probe]));
        }
        placed
    }
}

/// Orders from the front, each beginning with what it leaves: no order can do better from there than the best tree.
struct Trying<'d> {
    search: Search<'d>,
    best: Cost,
    order: Vec<usize>,
    tried: usize,
    most: usize,
}

impl Trying<'_> {
    /// Goes on from this beginning, which cost so much and leaves these states.
    fn go_on(&mut self, begun: &mut Vec<usize>, left: &[(Set, u64)], spent: Cost) {
        if left.is_empty() {
            // The worst case of a beginning is not a sum, so that the finished order is priced as a whole.
            let table = self.search.table;
            let cost = cost_in_order(table, begun, &table.everyone, 0);
            if cost < self.best {
                (self.best, self.order) = (cost, begun.clone());
            }
            return;
        }
        for probe in 0..self.search.table.probes.len() {
            let useful = left
                .iter()
                .any(|(set, _)| self.search.table.splits(probe, set));
            if !useful || self.waits(probe, begun, left) || self.tried >= self.most {
                continue;
            }
            self.tried += 1;
            let (next, cost) = self.after(probe, left, spent);
            if cost < self.best {
                begun.push(probe);
                self.go_on(begun, &next, self.spent(probe, left, spent));
                begun.pop();
            }
        }
    }

    /// Whether the probe comes after one that is not done and can still part something.
    fn waits(&self, probe: usize, begun: &[usize], left: &[(Set, u64)]) -> bool {
        let table = self.search.table;
        let open = |other: usize| {
            !begun.contains(&other) && left.iter().any(|(set, _)| table.splits(other, set))
        };
        table.probes[probe].before.iter().any(open)
    }

    /// What the probe leaves, and the least that any order can cost then.
    fn after(&mut self, probe: usize, left: &[(Set, u64)], spent: Cost) -> (Vec<(Set, u64)>, Cost) {
        let table = self.search.table;
        let mut cost = self.spent(probe, left, spent);
        let mut next = Vec::new();
        for (set, open) in left {
            if table.splits(probe, set) {
                let parts = live_parts(table, &Set::default(), probe, set);
                next.extend(
                    parts
                        .into_iter()
                        .map(|part| (part, table.step(probe, *open).open)),
                );
            } else {
                next.push((*set, *open));
            }
        }
        for (set, open) in &next {
            let least = self.search.settle(*set, *open);
            (cost.minutes, cost.jobs) = (cost.minutes + least.minutes, cost.jobs + least.jobs);
        }
        (next, cost)
    }

    /// What was spent when the probe is done too, without the worst case.
    fn spent(&self, probe: usize, left: &[(Set, u64)], spent: Cost) -> Cost {
        let table = self.search.table;
        let mut cost = spent;
        for (set, open) in left.iter().filter(|(set, _)| table.splits(probe, set)) {
            let (step, weight) = (table.step(probe, *open), table.weight(set));
            cost.minutes += weight * step.cost;
            cost.jobs += weight * u64::from(step.opened.count_ones());
        }
        cost
    }
}

/// What this order costs from here on, without building its tree.
pub(super) fn cost_in_order(table: &Table, order: &[usize], set: &Set, open: u64) -> Cost {
    let place = order.iter().position(|probe| table.splits(*probe, set));
    let Some(place) = place.filter(|_| !table.one_end(set)) else {
        return Cost::default();
    };
    let probe = order[place];
    let (step, weight) = (table.step(probe, open), table.weight(set));
    let jobs = weight * u64::from(step.opened.count_ones());
    let own = Cost {
        minutes: weight * step.cost,
        jobs,
        worst: step.cost,
    };
    let works_now = table.probes[probe].works_now;
    let live = table
        .parts(probe, set)
        .filter(|(answer, _)| Some(*answer) != works_now);
    own.with(live.map(|(_, part)| cost_in_order(table, &order[place + 1..], &part, step.open)))
}
