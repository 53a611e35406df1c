//! What the list cannot tell, and how far its shares may be off.
//!
//! In: a ready case. Out: suspects that no probe parts, probes that part nothing, causes that only a dead end reaches, and for each share the
//! steps at which the first probe of the quickest tree changes. Leaves it to others to say so in words.

use std::collections::BTreeMap;

use super::grown::Grown;
use super::search::Search;
use super::*;

/// Suspects that no probe parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// Who, in the author's order.
    pub suspects: Vec<Suspect>,
    /// The remedy that serves all of them, if one does.
    pub one_remedy: Option<RemedyIndex>,
}

/// How far one share may move, the others being scaled, before the first probe changes. Checked at the factors of `STEPS` only.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sensitivity {
    /// Whose share.
    pub suspect: Suspect,
    /// Its share as listed.
    pub share: Fraction,
    /// The first step downwards at which another probe comes first: that share and that probe.
    pub below: Option<(Fraction, ProbeIndex)>,
    /// The first step upwards at which another probe comes first.
    pub above: Option<(Fraction, ProbeIndex)>,
}

/// The steps at which shares are tried: times and over each of these, as far as they stay under 99 %.
pub const STEPS: [(u64, u64); 8] = [(10, 9), (5, 4), (3, 2), (2, 1), (3, 1), (4, 1), (6, 1), (10, 1)];
/// So many states may be opened for all shares and steps together: beyond it nothing is said, rather than slowly.
const QUICK: usize = 60_000;

impl Diagnosis {
    /// Groups of suspects that answer every probe alike, in the author's order.
    pub fn groups(&self) -> Vec<Group> {
        let mut by_classes: BTreeMap<Vec<usize>, Vec<Suspect>> = BTreeMap::new();
        for suspect in self.suspects() {
            let classes = self.table.classes.iter().enumerate();
            let own = classes.filter(|(_, class)| class.members.iter().any(|(who, _)| *who == suspect));
            by_classes.entry(own.map(|(place, _)| place).collect()).or_default().push(suspect);
        }
        let mut groups: Vec<Group> = by_classes
            .into_values()
            .filter(|suspects| suspects.len() > 1)
            .map(|suspects| self.group(suspects))
            .collect();
        groups.sort_by(|a, b| a.suspects.cmp(&b.suspects));
        groups
    }

    fn group(&self, suspects: Vec<Suspect>) -> Group {
        let mut remedies = suspects.iter().map(|suspect| table::remedy_of(&self.case, *suspect));
        let first = remedies.next().flatten();
        let one_remedy = first.filter(|_| remedies.all(|remedy| remedy == first));
        Group { suspects, one_remedy }
    }

    /// Probes that part nothing from the start.
    pub fn dead_probes(&self) -> Vec<ProbeIndex> {
        let dead = (0..self.table.probes.len()).filter(|probe| !self.table.splits(*probe, &self.table.everyone));
        dead.map(ProbeIndex).collect()
    }

    /// Causes that this tree never parts from others with another remedy: all their runs end in a group.
    pub fn only_dead_ends(&self, tree: &Tree) -> Vec<CauseIndex> {
        let mut reached = std::collections::BTreeSet::new();
        for (ending, _) in tree::endings(&tree.root) {
            if ending.kind != EndingKind::Group {
                reached.extend(tree::weights(&self.table, &ending.standing.left).into_keys());
            }
        }
        let causes = (0..self.case.causes.len()).map(CauseIndex);
        causes.filter(|cause| !reached.contains(&Suspect::Cause(*cause))).collect()
    }

    /// The same case with another share for one suspect, all others scaled. `None` if the share is not between 0 and 1, nobody else is
    /// there to scale, or the figures would not fit.
    pub fn with_share(&self, suspect: Suspect, share: Fraction) -> Option<Diagnosis> {
        let all = tree::weights(&self.table, &self.table.everyone);
        let total = all.values().sum();
        let old = Fraction::new(*all.get(&suspect)?, total);
        let inside = |share: Fraction| Fraction::ZERO < share && share < Fraction::ONE;
        if !inside(share) || !inside(old) {
            return None;
        }
        let own = share.numerator().checked_mul(old.denominator() - old.numerator())?;
        let others = (share.denominator() - share.numerator()).checked_mul(old.numerator())?;
        let factor = |who: Suspect| if who == suspect { own } else { others };
        let table = self.table.reweighed(factor)?;
        Some(Diagnosis { case: self.case.clone(), table, dealt: self.dealt.clone(), grown: Grown::default() })
    }

    /// For each share how far it may move; nothing if the search is too large to be repeated, or there is nothing to do first.
    pub fn sensitivity(&self) -> Option<Vec<Sensitivity>> {
        let (first, states) = self.first_probe(QUICK)?;
        let solves = 2 * STEPS.len() * self.suspects().count();
        // A moved share may make the search a few times longer.
        let (most, usual) = (4 * states + 100, states * solves);
        if usual > QUICK {
            return None;
        }
        let total = self.table.weight(&self.table.everyone);
        let mut found = Vec::new();
        for (suspect, weight) in tree::weights(&self.table, &self.table.everyone) {
            let share = Fraction::new(weight, total);
            let times = |(over, under): (u64, u64)| {
                Fraction::reduced(share.numerator() * u128::from(over), share.denominator() * u128::from(under))
            };
            let below = self.first_change(suspect, first, most, STEPS.map(|(over, under)| times((under, over))))?;
            let above = self.first_change(suspect, first, most, STEPS.map(times))?;
            found.push(Sensitivity { suspect, share, below, above });
        }
        Some(found)
    }

    /// The first of the shares at which another probe comes first; the outer `None` where that cannot be said quickly.
    fn first_change(
        &self,
        suspect: Suspect,
        first: ProbeIndex,
        most: usize,
        shares: [Fraction; STEPS.len()],
    ) -> Option<Option<(Fraction, ProbeIndex)>> {
        for share in shares.into_iter().filter(|share| *share < Fraction::new(99, 100)) {
            let Some(other) = self.with_share(suspect, share) else {
                continue;
            };
            let (probe, _) = other.first_probe(most)?;
            if probe != first {
                return Some(Some((share, probe)));
            }
        }
        Some(None)
    }

    /// The first probe of the quickest tree and the states it took, if it is settled within so many.
    fn first_probe(&self, most: usize) -> Option<(ProbeIndex, usize)> {
        let mut search = Search::new(&self.table, Set::default(), most);
        search.settle(self.table.everyone, 0);
        let probe = search.choice(&self.table.everyone, 0)?;
        Some((ProbeIndex(probe), search.states_opened()))
    }

    fn suspects(&self) -> impl Iterator<Item = Suspect> {
        tree::weights(&self.table, &self.table.everyone).into_keys()
    }
}
