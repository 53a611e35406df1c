//! What was computed of a network before: pages, cards and proofs ask for the same readings many times, and the lamps of an apparatus
//! rest on the same resistances.
//!
//! In: which reading or measure, position and fault. Out: what was computed for them, once. Leaves to others: computing, and saying
//! when a network has changed so that nothing holds any more.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use super::seen::Outcome;
use super::{FaultId, Flaw, Measure, PositionId, ReadingId, Span};

/// Where, and with which fault.
type State = (PositionId, Option<FaultId>);

/// What is known. A clone of a network, which may be changed, begins anew.
#[derive(Debug, Default)]
pub(super) struct Remembered {
    outcomes: Mutex<BTreeMap<(ReadingId, State), Outcome>>,
    /// A state has a handful of measures.
    spans: Mutex<BTreeMap<State, Vec<(Measure, Span)>>>,
}

impl Clone for Remembered {
    fn clone(&self) -> Remembered {
        Remembered::default()
    }
}

impl Remembered {
    /// What a reading is known to show, or else what `compute` finds. Nothing is held while computing: two threads may find the same,
    /// which is the same.
    pub(super) fn outcome(
        &self,
        reading: ReadingId,
        state: State,
        compute: impl FnOnce() -> Result<Outcome, Flaw>,
    ) -> Result<Outcome, Flaw> {
        let known = || self.outcomes.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(outcome) = known().get(&(reading, state)) {
            return Ok(*outcome);
        }
        let outcome = compute()?;
        known().insert((reading, state), outcome);
        Ok(outcome)
    }

    /// The range that a measure is known to have, or else what `compute` finds.
    pub(super) fn span(
        &self,
        measure: &Measure,
        state: State,
        compute: impl FnOnce() -> Result<Span, Flaw>,
    ) -> Result<Span, Flaw> {
        let known = || self.spans.lock().unwrap_or_else(PoisonError::into_inner);
        let found =
            known().get(&state).and_then(|all| all.iter().find(|(other, _)| other == measure)).map(|(_, span)| *span);
        if let Some(span) = found {
            return Ok(span);
        }
        let span = compute()?;
        known().entry(state).or_default().push((*measure, span));
        Ok(span)
    }

    /// For a network whose wiring changes.
    pub(super) fn forget(&mut self) {
        *self = Remembered::default();
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Answer, Answers, Flaw, Measure, Network, Ohms, Pair, Reading, Wiring};

    /// Two points with a meter between them, and 5 Ω.
    #[test]
    fn a_network_that_is_changed_shows_what_it_shows_now() -> Result<(), Flaw> {
        let mut network = Network::default();
        let (from, to) = (network.point("from")?, network.point("to")?);
        let five = Wiring { from, to, ohms: Ohms::exactly(5.0)? };
        network.piece("five", five)?;
        let measure = Measure::Between(Pair { one: from, other: to });
        let meter = network.reading("meter", Reading::Ohmmeter { measure, at_most: Some(3.0), open_from: 1e6 })?;
        let shown = |network: &Network| Ok(network.seen(meter, Network::REST, None)?.answers());
        assert_eq!(shown(&network)?, Answers::of(&[Answer::Over]));
        assert_eq!(shown(&network)?, Answers::of(&[Answer::Over]), "asked again");
        let mut other = network.clone();
        other.piece("beside it", five)?;
        assert_eq!(shown(&other)?, Answers::of(&[Answer::In]));
        network.piece("beside it", five)?;
        assert_eq!(shown(&network)?, Answers::of(&[Answer::In]));
        Ok(())
    }
}
