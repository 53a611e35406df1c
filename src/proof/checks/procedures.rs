//! Jobs: there is something to do, and a stop-gap names what mends it for good.

use crate::model::Guides;
use crate::proof::finding::Finding;
use crate::proof::findings::{diagnosis, shape};
use crate::source::Tolerant;
use std::collections::BTreeSet;

/// Checks stop-gaps: jobs that only hold for a time, and causes that name one.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    let stop_gaps: BTreeSet<&str> = guides
        .procedures
        .iter()
        .filter(|(_, guide)| guide.holds.is_some())
        .map(|(_, g)| g.procedure.value.as_str())
        .collect();
    for (_, guide) in &guides.procedures {
        if guide.steps.is_empty() {
            findings.push(shape::no_steps(&guide.procedure));
        }
        match &guide.lasting {
            None if guide.holds.is_some() => findings.push(diagnosis::stop_gap(&guide.procedure)),
            Some(lasting) if stop_gaps.contains(lasting.value.as_str()) || lasting.value == guide.procedure.value => {
                findings.push(diagnosis::lasts_no_longer(lasting));
            }
            _ => {}
        }
    }
    for (_, guide) in &guides.symptoms {
        for cause in guide.causes.iter().filter_map(Tolerant::sound) {
            match (&cause.lasting, &cause.stop_gap) {
                (None, Some(stop_gap)) => findings.push(diagnosis::stop_gap(stop_gap)),
                (None, None) => findings.push(diagnosis::no_remedy(&cause.cause)),
                (Some(lasting), _) if stop_gaps.contains(lasting.value.as_str()) => {
                    findings.push(diagnosis::lasts_no_longer(lasting));
                }
                _ => {}
            }
        }
    }
}
