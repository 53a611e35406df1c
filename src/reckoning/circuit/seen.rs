//! What a reading shows in a position with a fault, over the whole range of every resistance.

use super::answer::with_slack;
use super::tester::amperes;
use super::{
    Answer, Answers, Condition, Fact, FaultId, Flaw, Measure, Network, PositionId, Reading, ReadingId, Span,
    Steadiness, Tester, Truth,
};

/// What a reading shows in one state of the network.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// The answers that it can give.
    pub answers: Answers,
    /// The figure behind it: ohms, or amperes for a tester's lamp. A lamp of the apparatus rests on several and has none.
    pub figure: Option<Span>,
}

/// What a reading shows with a fault.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// With the fault there.
    pub faulty: Outcome,
    /// While the fault is away: only of a fault that comes and goes.
    pub away: Option<Outcome>,
}

impl Seen {
    /// All answers that a person can give: those of either state, and that it flickers where the two states differ.
    pub fn answers(&self) -> Answers {
        let faulty = self.faulty.answers;
        match self.away {
            Some(away) if away.answers != faulty => faulty.or(away.answers).or(Answers::of(&[Answer::Flickers])),
            _ => faulty,
        }
    }
}

impl Network {
    /// What a reading shows in a position, with a fault or (`None`) of the sound network.
    ///
    /// # Errors
    /// [`Flaw::Unknown`] for anything of another network.
    pub fn seen(&self, reading: ReadingId, position: PositionId, fault: Option<FaultId>) -> Result<Seen, Flaw> {
        let comes_and_goes = match fault {
            Some(id) => self.fault_of(id).is_some_and(|fault| fault.steadiness == Steadiness::NowAndThen),
            None => false,
        };
        let outcome =
            |fault| self.remembered.outcome(reading, (position, fault), || self.outcome(reading, position, fault));
        let away = if comes_and_goes { Some(outcome(None)?) } else { None };
        Ok(Seen { faulty: outcome(fault)?, away })
    }

    fn outcome(&self, reading: ReadingId, position: PositionId, fault: Option<FaultId>) -> Result<Outcome, Flaw> {
        let reading = self.reading_of(reading).ok_or_else(|| Flaw::Unknown(format!("reading {}", reading.0)))?;
        match reading {
            Reading::Lamp { between, lit } => {
                let span = self.measure(&Measure::Between(*between), position, fault)?;
                Ok(Outcome { answers: lamp(lit.judge(span)), figure: Some(span) })
            }
            Reading::TesterLamp { tester, lamp } => {
                let span = amperes(self, tester, *lamp, position, fault)?;
                Ok(Outcome { answers: glow(tester, span), figure: Some(span) })
            }
            Reading::Ohmmeter { measure, at_most, open_from } => {
                let span = self.measure(measure, position, fault)?;
                Ok(Outcome { answers: bands(span, *at_most, *open_from), figure: Some(span) })
            }
            Reading::ApparatusLamp { facts, lit } => {
                Ok(Outcome { answers: lamp(self.condition(facts, lit, position, fault)?), figure: None })
            }
        }
    }

    fn condition(
        &self,
        facts: &[Fact],
        lit: &Condition,
        position: PositionId,
        fault: Option<FaultId>,
    ) -> Result<Truth, Flaw> {
        let links = self.links(position, fault)?;
        let span = |measure: &Measure| {
            self.remembered.span(measure, (position, fault), || self.measured(measure, position, fault, &links))
        };
        let truth = |fact: &Fact| Ok(fact.holds.judge(span(&fact.measure)?));
        let truths: Vec<Truth> = facts.iter().map(truth).collect::<Result<_, Flaw>>()?;
        Ok(lit.judge(&truths))
    }
}

fn lamp(lit: Truth) -> Answers {
    match lit {
        Truth::Yes => Answers::of(&[Answer::Lit]),
        Truth::No => Answers::of(&[Answer::Dark]),
        Truth::May => Answers::of(&[Answer::Lit, Answer::Dark]),
    }
}

/// A tester's lamp by its current.
fn glow(tester: &Tester, amperes: Span) -> Answers {
    lamp(match amperes {
        Span::Within { least, .. } if least >= with_slack(tester.lit_from, -1.0) => Truth::Yes,
        Span::Within { most, .. } if most <= with_slack(tester.dark_to, 1.0) => Truth::No,
        _ => Truth::May,
    })
}

/// The bands that a range reaches into: in up to the limit, open from the meter's range on, over between.
fn bands(span: Span, at_most: Option<f64>, open_from: f64) -> Answers {
    let limit = at_most.unwrap_or(open_from);
    match span {
        Span::Within { least, most, .. } => {
            let in_limit = with_slack(limit, 1.0);
            let reaches = [
                (least <= in_limit, Answer::In),
                (most > in_limit && least < open_from && at_most.is_some(), Answer::Over),
                (most >= open_from && most > in_limit, Answer::Open),
            ];
            reaches
                .into_iter()
                .filter(|(yes, _)| *yes)
                .fold(Answers::default(), |set, (_, answer)| set.or(Answers::of(&[answer])))
        }
        Span::Open | Span::Undefined => Answers::of(&[Answer::Open]),
        Span::FarUnder => Answers::of(&[Answer::In]),
        Span::NotComputed if at_most.is_none() => Answers::of(&[Answer::In, Answer::Open]),
        Span::NotComputed => Answers::of(&[Answer::In, Answer::Over, Answer::Open]),
    }
}
