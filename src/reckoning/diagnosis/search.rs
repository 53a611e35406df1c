//! The least-cost decision tree, by best-first search over what is left and which jobs are open.
//!
//! In: the table, where to start, which probes to leave out, how many states may be opened. Out: for each state that was settled the probe
//! to do and the exact cost; a lower bound for the others. Stops by the count of states, never by the clock, so that the same input
//! gives the same bytes. Leaves building pages to `tree`.
//!
//! Recursive best-first over an AND/OR graph: a state's bound is the least over its probes of the probe's own cost and the bounds of what
//! each answer leaves. The probe with the least bound is improved until it is no longer the least. A state is settled when the probe with
//! the least bound (ties: the author's order) leaves settled states only. Bounds are compared as (minutes, jobs opened, worst case).

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

use super::bound;
use super::looks;
use super::set::Set;
use super::table::Table;

/// What is compared, in this order: weight times tenths, weight times jobs opened, the longest run in tenths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Cost {
    pub minutes: u64,
    pub jobs: u64,
    pub worst: u64,
}

impl Cost {
    /// This step, and then whichever of the parts turns out.
    pub fn with(self, parts: impl Iterator<Item = Cost>) -> Cost {
        let mut worst = 0;
        let mut sum = self;
        for part in parts {
            sum.minutes += part.minutes;
            sum.jobs += part.jobs;
            worst = worst.max(part.worst);
        }
        sum.worst += worst;
        sum
    }
}

/// Opening a state takes time like its probes squared times its classes: beyond so much of that it counts as more than one.
const LARGE: usize = 1 << 17;

/// A search with its memory.
pub(super) struct Search<'t> {
    pub table: &'t Table,
    pub left_out: Set,
    states: Vec<State>,
    places: HashMap<(Set, u64), u32, BuildHasherDefault<Mixer>>,
    opened: usize,
    /// What may still be opened.
    allowance: usize,
    /// What each probe catches, if all look at suspects of their own.
    caught: Option<Vec<u64>>,
}

struct State {
    set: Set,
    open: u64,
    bound: Cost,
    /// The probe to do, once the state is settled.
    settled: Option<usize>,
    actions: Option<Vec<Action>>,
}

struct Action {
    probe: usize,
    own: Cost,
    leaves: Vec<u32>,
}

impl<'t> Search<'t> {
    pub fn new(table: &'t Table, left_out: Set, allowance: usize) -> Self {
        let caught = looks::caught(table, &left_out);
        Search {
            table,
            left_out,
            states: Vec::new(),
            places: HashMap::default(),
            opened: 0,
            allowance,
            caught,
        }
    }

    /// Settles a state, or improves its bound as far as the count of states allows. Gives what is now known.
    pub fn settle(&mut self, set: Set, open: u64) -> Cost {
        if self.is_end(&set) {
            return Cost::default();
        }
        let state = self.place(set, open);
        self.improve(state, u64::MAX);
        self.states[state as usize].bound
    }

    /// The probe to do at a settled state.
    pub fn choice(&self, set: &Set, open: u64) -> Option<usize> {
        self.known(set, open)?.settled
    }

    /// A lower bound, exact if the state is settled.
    pub fn lower(&self, set: &Set, open: u64) -> Option<Cost> {
        self.known(set, open).map(|state| state.bound)
    }

    /// How many states were opened.
    pub fn states_opened(&self) -> usize {
        self.opened
    }

    /// Whether nothing more is to be found out: one remedy serves, or no probe parts what is left.
    pub fn is_end(&self, set: &Set) -> bool {
        self.table.one_end(set) || !self.useful(set).any(|_| true)
    }

    /// The probes that may be done here, in the author's order.
    pub fn useful(&self, set: &Set) -> impl Iterator<Item = usize> {
        (0..self.table.probes.len())
            .filter(move |probe| self.table.useful(*probe, set, &self.left_out))
    }

    fn known(&self, set: &Set, open: u64) -> Option<&State> {
        self.places
            .get(&(*set, open))
            .map(|place| &self.states[*place as usize])
    }

    fn place(&mut self, set: Set, open: u64) -> u32 {
        if let Some(place) = self.places.get(&(set, open)) {
            return *place;
        }
        let place = self.states.len() as u32;
        let minutes = bound::pairs(self.table, &set, open, &self.left_out);
        let bound = Cost {
            minutes,
            ..Cost::default()
        };
        self.states.push(State {
            set,
            open,
            bound,
            settled: None,
            actions: None,
        });
        self.places.insert((set, open), place);
        place
    }

    /// Works on a state until it is settled, its bound is above `limit`, or no more states may be opened.
    fn improve(&mut self, place: u32, limit: u64) {
        if self.states[place as usize].settled.is_some() || !self.open_up(place) {
            return;
        }
        loop {
            let (best, other) = self.least_two(place);
            let state = &mut self.states[place as usize];
            state.bound = state.bound.max(best.cost);
            let Some(next) = best.unsettled else {
                state.settled = Some(best.probe);
                // Nobody asks again how it compared.
                state.actions = None;
                return;
            };
            if best.cost.minutes > limit || self.allowance == 0 {
                return;
            }
            // The part may grow until its probe is no longer the least.
            let slack = limit.min(other) - best.cost.minutes;
            let part = self.states[next as usize].bound.minutes;
            self.improve(next, part.saturating_add(slack));
        }
    }

    /// Lists the probes of a state once; false if the count of states does not allow it.
    fn open_up(&mut self, place: u32) -> bool {
        let State {
            set,
            open,
            ref actions,
            ..
        } = self.states[place as usize];
        if actions.is_some() {
            return true;
        }
        if self.allowance == 0 {
            return false;
        }
        let weight = self.table.weight(&set);
        let useful = self.worth_trying(&set, open);
        self.opened += 1;
        self.allowance = self
            .allowance
            .saturating_sub(1 + useful.len() * useful.len() * set.len() / LARGE);
        let mut actions = Vec::with_capacity(useful.len());
        for probe in useful {
            actions.push(self.action(probe, &set, open, weight));
        }
        self.states[place as usize].actions = Some(actions);
        true
    }

    /// The useful probes without those that another must precede.
    fn worth_trying(&self, set: &Set, open: u64) -> Vec<usize> {
        let useful: Vec<usize> = self.useful(set).collect();
        let Some(caught) = &self.caught else {
            return useful;
        };
        let precedes = |a: usize, b: usize| {
            let (first, second) = (&self.table.probes[a], &self.table.probes[b]);
            let per_minute = |weight: u64, minutes: u64| u128::from(weight) * u128::from(minutes);
            first.needs & !open & !second.needs == 0
                && per_minute(caught[a], second.minutes) > per_minute(caught[b], first.minutes)
        };
        let worth = |b: &usize| !useful.iter().any(|a| precedes(*a, *b));
        useful.iter().copied().filter(worth).collect()
    }

    fn action(&mut self, probe: usize, set: &Set, open: u64, weight: u64) -> Action {
        let step = self.table.step(probe, open);
        let own = Cost {
            minutes: weight * step.cost,
            jobs: weight * u64::from(step.opened.count_ones()),
            worst: step.cost,
        };
        let leaves = live_parts(self.table, &self.left_out, probe, set);
        let leaves = leaves
            .into_iter()
            .map(|part| self.place(part, step.open))
            .collect();
        Action { probe, own, leaves }
    }

    /// The probe with the least bound, and the minutes of the next least.
    fn least_two(&self, place: u32) -> (Least, u64) {
        let mut best = Least {
            cost: Cost {
                minutes: u64::MAX,
                jobs: u64::MAX,
                worst: u64::MAX,
            },
            probe: usize::MAX,
            unsettled: None,
        };
        let mut other = u64::MAX;
        for action in self.states[place as usize].actions.iter().flatten() {
            let parts = || {
                action
                    .leaves
                    .iter()
                    .map(|leaf| &self.states[*leaf as usize])
            };
            let cost = action.own.with(parts().map(|state| state.bound));
            if cost < best.cost {
                other = best.cost.minutes;
                best = Least {
                    cost,
                    probe: action.probe,
                    unsettled: None,
                };
                let heaviest = action
                    .leaves
                    .iter()
                    .filter(|leaf| self.states[**leaf as usize].settled.is_none());
                best.unsettled = heaviest
                    .max_by_key(|leaf| self.states[**leaf as usize].bound.minutes)
                    .copied();
            } else {
                other = other.min(cost.minutes);
            }
        }
        (best, other)
    }
}

/// What a probe's answers leave, without the runs that end: mended, one remedy, or nothing more to part.
pub(super) fn live_parts(table: &Table, left_out: &Set, probe: usize, set: &Set) -> Vec<Set> {
    let works_now = table.probes[probe].works_now;
    let parts = table
        .parts(probe, set)
        .filter(|(answer, _)| Some(*answer) != works_now);
    let live = |part: &Set| {
        !table.one_end(part)
            && (0..table.probes.len())
                .any(|other| !left_out.has(other) && table.splits(other, part))
    };
    parts.map(|(_, part)| part).filter(live).collect()
}

struct Least {
    cost: Cost,
    probe: usize,
    unsettled: Option<u32>,
}

/// A quick hash of whole words; its order is never seen.
#[derive(Default)]
pub(super) struct Mixer(u64);

impl Hasher for Mixer {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        bytes
            .iter()
            .for_each(|byte| self.write_u64(u64::from(*byte)));
    }

    fn write_u64(&mut self, word: u64) {
        // An odd constant near 2⁶⁴ over the golden ratio spreads the bits.
        self.0 = (self.0.rotate_left(5) ^ word).wrapping_mul(0x9e37_79b9_7f4a_7c15);
        self.0 ^= self.0 >> 29;
    }

    fn write_usize(&mut self, word: usize) {
        self.write_u64(word as u64);
    }
}
