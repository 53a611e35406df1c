//! Updated counts of a guide, with what they do to its shares and minutes, as YAML to paste after a look.
//!
//! In: a guide with its reckoning, its new cases. Out: text. Leaves to others: the reckoning (`proof::cases`).

use super::cases::{Case, What};
use crate::cli::report::count;
use crate::model::{Guides, Symptom};
use crate::proof::cases::{Case as Reckoned, recounted, sound};
use crate::reckoning::counts::FEW;
use crate::reckoning::diagnosis::{Diagnosis, Fraction, Limits};
use serde::Serialize;
use std::collections::BTreeMap;

/// How often a cause that was written in by hand must be met to be named: it belongs in the guide.
const BY_HAND: usize = 3;

/// What is to be pasted.
#[derive(Serialize)]
struct Pasted<'g> {
    shares: &'static str,
    causes: Vec<PastedCause<'g>>,
    #[serde(rename = "not on this list", skip_serializing_if = "Option::is_none")]
    rest: Option<PastedRest>,
}

#[derive(Serialize)]
struct PastedCause<'g> {
    cause: &'g str,
    seen: u32,
}

#[derive(Serialize)]
struct PastedRest {
    seen: u32,
}

/// A guide's new counts.
pub struct Counted<'g> {
    guide: &'g Symptom,
    /// Before and after, by the number of the cause.
    causes: Vec<(u32, u32)>,
    rest: (u32, u32),
    by_hand: BTreeMap<String, usize>,
    minutes: Vec<u64>,
    new: usize,
    before: Option<&'g Reckoned>,
    after: Option<Reckoned>,
}

impl<'g> Counted<'g> {
    /// Counts the cases of a guide.
    pub fn of(guide: &'g Symptom, before: Option<&'g Reckoned>, guides: &Guides, cases: &[&Case]) -> Counted<'g> {
        let seen = |seen: &Option<crate::source::Placed<u32>>| seen.as_ref().map_or(0, |seen| seen.value);
        let mut causes: Vec<(u32, u32)> =
            sound(&guide.causes).into_iter().map(|cause| (seen(&cause.seen), seen(&cause.seen))).collect();
        let already = guide.rest.as_ref().map_or(0, |rest| seen(&rest.seen));
        let mut rest = (already, already);
        let mut by_hand: BTreeMap<String, usize> = BTreeMap::new();
        for case in cases {
            match &case.what {
                What::Cause(index) => {
                    if let Some(counted) = causes.get_mut(*index) {
                        counted.1 = counted.1.saturating_add(1);
                    }
                }
                What::Rest => rest.1 = rest.1.saturating_add(1),
                What::ByHand(words) => {
                    rest.1 = rest.1.saturating_add(1);
                    *by_hand.entry(words.clone()).or_default() += 1;
                }
            }
        }
        let now: Vec<u32> = causes.iter().map(|counted| counted.1).collect();
        let after = recounted(guide, guides, &now, rest.1);
        let minutes = cases.iter().filter_map(|case| case.minutes).collect();
        Counted { guide, causes, rest, by_hand, minutes, new: cases.len(), before, after }
    }

    /// The counts as comments and YAML. `file` is the guide's.
    pub fn text(&self, file: &str) -> String {
        let mut lines = vec![format!("# {file}: {}", self.cases())];
        lines.extend(self.expected());
        lines.extend(self.took());
        lines.extend(self.warnings());
        let mut text: String = lines.into_iter().map(|line| format!("{line}\n")).collect();
        text.push_str(&self.pasted());
        text
    }

    /// How many cases there are now; counts that a guide made up may be as large as they like.
    fn all(&self) -> u64 {
        self.causes.iter().map(|counted| u64::from(counted.1)).sum::<u64>() + u64::from(self.rest.1)
    }

    fn cases(&self) -> String {
        let all = self.all();
        let new = count(self.new, "new case", "new cases");
        let moved = self.causes.iter().zip(sound(&self.guide.causes)).filter(|((was, now), _)| was != now);
        let moved: Vec<String> =
            moved.map(|((was, now), cause)| format!("{} {was} to {now}", cause.cause.value)).collect();
        let rest = (self.rest.0 != self.rest.1).then(|| format!("not on the list {} to {}", self.rest.0, self.rest.1));
        let moved: Vec<String> = moved.into_iter().chain(rest).collect();
        format!("{new}, {all} in all.\n# Seen: {}.", moved.join(", "))
    }

    fn expected(&self) -> Vec<String> {
        let (Some(before), Some(after)) = (self.before, &self.after) else {
            return vec!["# The minutes cannot be reckoned: see `coquille proof`.".to_owned()];
        };
        let line = |name: &str, minutes: fn(&Diagnosis) -> Fraction| {
            let (was, now) = (minutes(&before.diagnosis), minutes(&after.diagnosis));
            format!("#   {name}: {} before, {} now", shown(was), shown(now))
        };
        vec![
            "# Minutes to the remedy, on average:".to_owned(),
            line("as written", as_written),
            line("quickest order", quickest),
        ]
    }

    fn took(&self) -> Option<String> {
        let number = self.minutes.len() as u64;
        let tenths = self.minutes.iter().sum::<u64>().checked_div(number)?;
        Some(format!(
            "# It took {}.{} min on average ({} with minutes).",
            tenths / 10,
            tenths % 10,
            count(self.minutes.len(), "case", "cases")
        ))
    }

    fn warnings(&self) -> Vec<String> {
        let mut lines = Vec::new();
        let all = self.all();
        if all < u64::from(FEW) {
            lines.push(format!("# Fewer than {FEW} cases: shares may be far off. The page will say how far."));
        }
        if self.causes.iter().all(|counted| counted.0 == 0) {
            lines.push("# Estimates until now: take every `share:` out when you paste the counts.".to_owned());
        }
        for (words, times) in self.by_hand.iter().filter(|(_, times)| **times >= BY_HAND) {
            lines.push(format!("# Written in by hand {times} times, it belongs in the guide: \"{words}\""));
        }
        if self.guide.rest.is_none() && self.rest.1 > 0 {
            lines.push("# The guide has no `not on this list:` yet: it needs `says:` too.".to_owned());
        }
        lines
    }

    fn pasted(&self) -> String {
        let causes = sound(&self.guide.causes).into_iter().zip(&self.causes);
        let causes = causes.map(|(cause, counted)| PastedCause { cause: cause.cause.value.as_str(), seen: counted.1 });
        let rest = (self.guide.rest.is_some() || self.rest.1 > 0).then_some(PastedRest { seen: self.rest.1 });
        let pasted = Pasted { shares: "counted", causes: causes.collect(), rest };
        // Ids and numbers: they always serialise.
        serde_yaml::to_string(&pasted).unwrap_or_default()
    }
}

fn as_written(diagnosis: &Diagnosis) -> Fraction {
    diagnosis.price(&diagnosis.as_written_order()).expected
}

fn quickest(diagnosis: &Diagnosis) -> Fraction {
    diagnosis.quickest_order(Limits::default()).priced.expected
}

fn shown(minutes: Fraction) -> String {
    let tenths = crate::handbook::numbers::tenths(minutes);
    format!("{}.{}", tenths / 10, tenths % 10)
}
