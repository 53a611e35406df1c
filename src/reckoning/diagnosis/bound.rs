//! The pair bound: at least so many minutes must still be spent, whatever is done.
//!
//! In: what is left and which jobs are open. Out: a lower bound on weight times tenths of a minute.
//!
//! Why it holds. A probe done at S′ costs m·w(S′), shared out over the pairs that it parts there: each pair w·w′ pays w·w′·m·w(S′)/e(S′),
//! e(S′) being the sum of w·w′ over all pairs that it parts at S′. Now e(S′)/w(S′) can only grow with S′, so that a pair never pays less
//! than at S, and each pair that must be parted pays for some probe: at least for the cheapest. A closed job is charged in equal parts to the
//! probes that need it, at most |S| − 1 of which are done on any path. Pairs of one circle need not be parted and pay nothing.

use super::set::{Bits, Set};
use super::table::Table;

/// Rounding of the sums in floats never lifts the bound above the truth: it is cut by far more than they can be off.
const CUT: f64 = 1.0 - 1e-9;

/// A lower bound on the cost to come at `set` with these jobs open.
pub(super) fn pairs(table: &Table, set: &Set, open: u64, left_out: &Set) -> u64 {
    let weight = table.weight(set);
    let mut rates = rates(table, set, open, left_out, weight);
    rates.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut blocks = vec![(*set, unlike(table, set))];
    let mut bound = 0.0;
    for (rate, probe) in rates {
        let mut finer = Vec::with_capacity(blocks.len() + 1);
        for (block, within) in blocks.drain(..) {
            if !table.splits(probe, &block) {
                finer.push((block, within));
                continue;
            }
            let mut parted = within;
            for (_, part) in table.parts(probe, &block) {
                let inside = unlike(table, &part);
                parted -= inside;
                if inside > 0 {
                    finer.push((part, inside));
                }
            }
            bound += parted as f64 * rate;
        }
        blocks = finer;
        if blocks.is_empty() {
            break;
        }
    }
    (bound * CUT) as u64
}

/// For each probe that parts the set: m·w/e, what a pair of weights 1 pays for it.
fn rates(table: &Table, set: &Set, open: u64, left_out: &Set, weight: u64) -> Vec<(f64, usize)> {
    let useful: Vec<usize> = (0..table.probes.len())
        .filter(|probe| !left_out.has(*probe) && table.splits(*probe, set))
        .collect();
    let shares = job_shares(table, &useful, open, set.len());
    let rate = |probe: usize| {
        let row = &table.probes[probe];
        let jobs: f64 = Bits(row.needs & !open).map(|job| shares[job]).sum();
        let squares = squares(table, probe, set, weight);
        (row.minutes as f64 + jobs) * (weight as f64) * 2.0 / (square(weight) - squares) as f64
    };
    useful.iter().map(|probe| (rate(*probe), *probe)).collect()
}

/// The sum of the squared weights that the answers leave; the unremarkable one is what the others do not take.
fn squares(table: &Table, probe: usize, set: &Set, weight: u64) -> u128 {
    let row = &table.probes[probe];
    let (mut sum, mut left) = (0, weight);
    for (_, who) in row
        .answers
        .iter()
        .enumerate()
        .filter(|(answer, _)| *answer != row.otherwise)
    {
        let part = table.weight(&who.and(set));
        sum += square(part);
        left -= part;
    }
    sum + square(left)
}

/// What each closed job costs a probe that needs it.
fn job_shares(table: &Table, useful: &[usize], open: u64, size: usize) -> [f64; 64] {
    let mut users = [0u32; 64];
    for probe in useful {
        Bits(table.probes[*probe].needs & !open).for_each(|job| users[job] += 1);
    }
    let most = size.saturating_sub(1).max(1) as u32;
    let mut shares = [0.0; 64];
    for (job, row) in table
        .jobs
        .iter()
        .enumerate()
        .filter(|(job, _)| users[*job] > 0)
    {
        shares[job] = (row.open + row.close) as f64 / f64::from(users[job].min(most));
    }
    shares
}

/// The sum of w·w′ over the pairs of a set that must be parted if they can.
fn unlike(table: &Table, set: &Set) -> u128 {
    let (mut total, mut like, mut circle, mut run) = (0, 0, usize::MAX, 0);
    for class in set.iter().map(|class| &table.classes[class]) {
        if class.circle != circle {
            like += square(run);
            (circle, run) = (class.circle, 0);
        }
        run += class.weight;
        total += class.weight;
    }
    (square(total) - like - square(run)) / 2
}

fn square(weight: u64) -> u128 {
    u128::from(weight) * u128::from(weight)
}
