//! Every way in which a case can behave, and what a probe makes one open and shut: what a search for the fault can be rehearsed with.
//!
//! In: the table. Out: plain data by index. Leaves drawing one of them, and words, to the callers.

use super::Diagnosis;
use super::set::Bits;
use super::units::*;

/// A suspect that behaves in one way for the whole session.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hypothesis {
    /// Who it is.
    pub suspect: Suspect,
    /// How often, beside the other hypotheses: whole parts of no named unit. Their sum stays under 2⁵⁰.
    pub weight: u64,
    /// The answer to each probe, in the order of the probes.
    pub answers: Vec<AnswerIndex>,
}

/// What a probe wants of the opening jobs, with all that they need in their turn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wants {
    /// Jobs that must be open, in opening order.
    pub open: Vec<JobIndex>,
    /// Jobs that must be shut.
    pub shut: Vec<JobIndex>,
}

impl Diagnosis {
    /// Every hypothesis, in the order of the suspects, the rest last. Their weights stand to each other exactly as the shares do.
    pub fn hypotheses(&self) -> Vec<Hypothesis> {
        let mut all = Vec::new();
        for (class, row) in self.table.classes.iter().enumerate() {
            let answer = |probe: &super::table::Row| probe.answer_of.get(class).map(|at| AnswerIndex(usize::from(*at)));
            let answers: Vec<AnswerIndex> = self.table.probes.iter().filter_map(answer).collect();
            let members = row.members.iter();
            all.extend(members.map(|(suspect, weight)| Hypothesis {
                suspect: *suspect,
                weight: *weight,
                answers: answers.clone(),
            }));
        }
        all.sort_by(|one, other| (one.suspect, &one.answers).cmp(&(other.suspect, &other.answers)));
        all
    }

    /// What a probe wants open and shut; nothing for a probe that is not there.
    pub fn wants(&self, probe: ProbeIndex) -> Wants {
        let row = self.table.probes.get(probe.0);
        Wants {
            open: row.map_or_else(Vec::new, |row| self.table.in_opening_order(row.needs)),
            shut: row.map_or_else(Vec::new, |row| Bits(row.shut).map(JobIndex).collect()),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnosis::*;

    /// Two causes; the second answers the one probe either way.
    fn case() -> Case {
        let probe = Probe {
            minutes: Minutes::whole(1),
            needs: vec![JobIndex(1)],
            shut: Vec::new(),
            after: Vec::new(),
            answers: vec![
                Answer { named: vec![Named::cause(0), Named::cause(1)] },
                Answer { named: vec![Named::cause(1)] },
            ],
            otherwise: AnswerIndex(1),
            works_now: None,
        };
        Case {
            causes: vec![
                Cause { weight: Weight(60), remedy: RemedyIndex(0) },
                Cause { weight: Weight(30), remedy: RemedyIndex(1) },
            ],
            rest: Some(Rest { weight: Weight(10), remedy: None }),
            remedies: vec![Remedy::default(), Remedy::default()],
            jobs: vec![Job::default(), Job { needs: vec![JobIndex(0)], ..Job::default() }],
            probes: vec![probe],
            tell_apart: TellApart::Remedies,
        }
    }

    #[test]
    fn a_cause_that_answers_either_way_is_one_hypothesis_a_way_with_half_the_share_each() {
        let diagnosis = Diagnosis::of(case()).expect("the case is sound");
        let told: Vec<_> = diagnosis.hypotheses().into_iter().map(|h| (h.suspect, h.weight, h.answers[0].0)).collect();
        let [first, second] = [0, 1].map(|at| Suspect::Cause(CauseIndex(at)));
        assert_eq!(told, [(first, 12, 0), (second, 3, 0), (second, 3, 1), (Suspect::Rest, 2, 1)]);
    }

    #[test]
    fn what_a_job_needs_is_opened_before_it() {
        let diagnosis = Diagnosis::of(case()).expect("the case is sound");
        assert_eq!(diagnosis.wants(ProbeIndex(0)), Wants { open: vec![JobIndex(0), JobIndex(1)], shut: vec![] });
    }
}
