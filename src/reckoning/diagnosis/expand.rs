//! From suspects to behaviours: a suspect that may give more than one answer becomes one deterministic hypothesis per way to answer.
//!
//! In: a sound case. Out: behaviours with whole weights that stand in the exact proportions, and what could not be expanded exactly.
//! A behaviour is the same for the whole session: a probe that is repeated tells nothing new. Not promised: exact figures for a
//! suspect with more than `most::UNSURE_PROBES` unsure probes; then no single answer rules it out, and `dealt` says so.

use super::case::*;
use super::units::*;

/// One deterministic hypothesis.
#[derive(Clone, Debug)]
pub(super) struct Behaviour {
    pub suspect: Suspect,
    pub weight: u64,
    /// The answer to each probe.
    pub answers: Vec<u8>,
}

/// All behaviours, in the author's order of suspects, the rest last.
#[derive(Clone, Debug)]
pub(super) struct Expansion {
    pub behaviours: Vec<Behaviour>,
    /// Where a suspect's answers to a probe were dealt out over the behaviours that there were, instead of multiplied.
    pub dealt: Vec<(Suspect, ProbeIndex)>,
}

/// The exact total of weights stays under this, so that costs fit 64 bits.
pub(super) const HEAVIEST: u128 = 1 << 50;

/// Expands up to so many unsure probes of a suspect; `None` if it would be too many behaviours or too fine weights.
pub(super) fn expand(case: &Case, unsure: usize) -> Option<Expansion> {
    let mut dealt = Vec::new();
    let mut shapes = Vec::new();
    for (suspect, weight) in suspects(case) {
        shapes.push(Shape::of(case, suspect, weight, unsure, &mut dealt)?);
    }
    let behaviours = with_whole_weights(&shapes)?;
    Some(Expansion { behaviours, dealt })
}

/// The suspects with their shares: causes in the author's order, then the rest.
pub(super) fn suspects(case: &Case) -> impl Iterator<Item = (Suspect, Weight)> + '_ {
    let causes = case
        .causes
        .iter()
        .enumerate()
        .map(|(i, cause)| (Suspect::Cause(CauseIndex(i)), cause.weight));
    causes.chain(case.rest.map(|rest| (Suspect::Rest, rest.weight)))
}

/// A suspect's ways to answer, each so many parts of `of`.
struct Shape {
    suspect: Suspect,
    weight: Weight,
    ways: Vec<(u128, Vec<u8>)>,
    of: u128,
}

impl Shape {
    fn of(
        case: &Case,
        suspect: Suspect,
        weight: Weight,
        unsure: usize,
        dealt: &mut Vec<(Suspect, ProbeIndex)>,
    ) -> Option<Self> {
        let mut shape = Shape {
            suspect,
            weight,
            ways: vec![(1, Vec::new())],
            of: 1,
        };
        let mut multiplied = 0;
        let mut late = Vec::new();
        for (index, probe) in case.probes.iter().enumerate() {
            let answers = answers_of(probe, suspect);
            match answers.as_slice() {
                [(only, _)] => shape.give(*only),
                _ if multiplied < unsure => {
                    if shape.ways.len() * answers.len() > most::CLASSES {
                        return None;
                    }
                    multiplied += 1;
                    shape.multiply(&answers);
                }
                _ => {
                    dealt.push((suspect, ProbeIndex(index)));
                    shape.give(likeliest(&answers));
                    late.push((index, answers));
                }
            }
        }
        for (index, answers) in late {
            shape.deal(index, &answers);
        }
        Some(shape)
    }

    fn give(&mut self, answer: u8) {
        for (_, answers) in &mut self.ways {
            answers.push(answer);
        }
    }

    fn multiply(&mut self, answers: &[(u8, u32)]) {
        // Parts that share a factor would only make the weights larger.
        let common = answers
            .iter()
            .fold(0, |common, (_, parts)| gcd(common, u128::from(*parts)));
        let old = std::mem::take(&mut self.ways);
        for (parts, way) in old {
            for (answer, more) in answers {
                let mut way = way.clone();
                way.push(*answer);
                self.ways.push((parts * (u128::from(*more) / common), way));
            }
        }
        self.of *= answers
            .iter()
            .map(|(_, parts)| u128::from(*parts))
            .sum::<u128>()
            / common;
    }

    /// Gives the ways there are each of the answers in turn, so that no answer rules the suspect out; too few ways keep the likeliest.
    fn deal(&mut self, probe: usize, answers: &[(u8, u32)]) {
        if self.ways.len() >= answers.len() {
            for (place, (_, way)) in self.ways.iter_mut().enumerate() {
                way[probe] = answers[place % answers.len()].0;
            }
        }
    }
}

/// The answers that name the suspect, or the unremarkable one.
fn answers_of(probe: &Probe, suspect: Suspect) -> Vec<(u8, u32)> {
    let mut found = Vec::new();
    for (place, answer) in probe.answers.iter().enumerate() {
        if let Some(named) = answer.named.iter().find(|named| named.suspect == suspect) {
            found.push((place as u8, named.parts));
        }
    }
    if found.is_empty() {
        found.push((probe.otherwise.0 as u8, 1));
    }
    found
}

fn likeliest(answers: &[(u8, u32)]) -> u8 {
    let first = answers.first().copied().unwrap_or_default();
    answers
        .iter()
        .fold(
            first,
            |best, next| if next.1 > best.1 { *next } else { best },
        )
        .0
}

/// Brings all weights to one denominator and takes out the common factor; `None` if they would not fit.
fn with_whole_weights(shapes: &[Shape]) -> Option<Vec<Behaviour>> {
    let mut under: u128 = 1;
    for shape in shapes {
        under = (under / gcd(under, shape.of)).checked_mul(shape.of)?;
    }
    let mut whole = Vec::new();
    for shape in shapes {
        for (parts, answers) in &shape.ways {
            let weight = parts
                .checked_mul(under / shape.of)?
                .checked_mul(shape.weight.0.into())?;
            whole.push((shape.suspect, weight, answers));
        }
    }
    let common = whole
        .iter()
        .fold(0, |common, (_, weight, _)| gcd(common, *weight));
    let total = whole.iter().try_fold(0u128, |sum, (_, weight, _)| {
        sum.checked_add(weight / common)
    })?;
    (total < HEAVIEST).then(|| {
        let one = |(suspect, weight, answers): &(Suspect, u128, &Vec<u8>)| Behaviour {
            suspect: *suspect,
            weight: (weight / common) as u64,
            answers: (*answers).clone(),
        };
        whole.iter().map(one).collect()
    })
}
