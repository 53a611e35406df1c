//! Guides whose every probe looks at suspects of its own: orders and trees are then the same, and much is known about them.
//!
//! In: the table. Out: the looks and whom each catches, if the case is of that kind. Leaves orders to `clusters` and `search`.

use super::search::live_parts;
use super::set::Set;
use super::table::Table;

/// A probe and the suspects that it catches.
pub(super) struct Look {
    pub probe: usize,
    pub catch: Set,
}

/// All useful probes, if each catches suspects of its own, ends with them, waits for nothing and shuts nothing, and if no run ends before the
/// last look but one. With them, who is caught by none.
pub(super) fn own_looks(table: &Table) -> Option<(Vec<Look>, Set)> {
    let mut looks: Vec<Look> = Vec::new();
    let mut rest = table.everyone;
    for probe in (0..table.probes.len()).filter(|probe| table.splits(*probe, &table.everyone)) {
        let row = &table.probes[probe];
        let live = live_parts(table, &Set::default(), probe, &table.everyone);
        let [live] = live.as_slice() else { return None };
        let catch = table.everyone.minus(live);
        if !catch.within(&rest) || !row.before.is_empty() || row.shut > 0 {
            return None;
        }
        rest = rest.minus(&catch);
        looks.push(Look { probe, catch });
    }
    (!looks.is_empty() && !ends_early(table, &looks, &rest)).then_some((looks, rest))
}

/// Whether one remedy could serve two looks' suspects, or a look's and those whom none catches.
fn ends_early(table: &Table, looks: &[Look], rest: &Set) -> bool {
    let together = |a: &Look, other: &Set| table.one_end(&a.catch.or(other));
    let pairs = looks
        .iter()
        .enumerate()
        .any(|(i, a)| looks[..i].iter().any(|b| together(a, &b.catch)));
    pairs || (!rest.is_empty() && looks.iter().any(|look| together(look, rest)))
}

/// What each look catches, where no look is ever left out: somebody is caught by none.
///
/// Then a look is never the next one while another catches more per minute and needs nothing that it does not need: were it first, with X
/// between them, X would have to catch no more per minute than it (or it would go behind X) and no less than the other (or that would
/// go before X). Smith's exchange, 1956, for tasks on which nothing waits.
pub(super) fn caught(table: &Table, left_out: &Set) -> Option<Vec<u64>> {
    let (looks, _) =
        own_looks(table).filter(|(_, rest)| !rest.is_empty() && left_out.is_empty())?;
    let mut caught = vec![0; table.probes.len()];
    looks
        .iter()
        .for_each(|look| caught[look.probe] = table.weight(&look.catch));
    Some(caught)
}
