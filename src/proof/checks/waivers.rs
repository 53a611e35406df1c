//! Waivers: a guide may accept a finding with a reason; one that accepts nothing any more is pointed out.

use crate::model::{Guides, Waiver};
use crate::proof::code::{Code, Waivable};
use crate::proof::finding::Finding;
use crate::proof::findings::waivers;
use crate::proof::walk;
use crate::source::FileId;

/// A finding that was accepted, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Accepted {
    /// The finding.
    pub finding: Finding,
    /// The reason given.
    pub because: String,
}

/// Takes the accepted findings out of the list.
pub fn apply(guides: &Guides, findings: Vec<Finding>) -> (Vec<Finding>, Vec<Accepted>) {
    let mut left = findings;
    let mut accepted = Vec::new();
    for (file, waiver) in walk::waivers(guides) {
        let code = Code::ALL.iter().copied().find(|code| code.as_str() == waiver.finding.value);
        match code {
            None => left.push(waivers::unknown(&waiver.finding)),
            Some(code) if code.waivable() == Waivable::No => left.push(waivers::refused(waiver)),
            Some(code) => {
                let (bitten, rest): (Vec<_>, Vec<_>) = left.into_iter().partition(|f| bites(f, code, file, waiver));
                left = rest;
                if bitten.is_empty() {
                    left.push(waivers::unused(waiver));
                }
                let because = &waiver.because.value;
                accepted.extend(bitten.into_iter().map(|finding| Accepted { finding, because: because.clone() }));
            }
        }
    }
    (left, accepted)
}

fn bites(finding: &Finding, code: Code, file: FileId, waiver: &Waiver) -> bool {
    let of = waiver.of.as_ref().is_none_or(|of| finding.of.as_deref() == Some(of.value.as_str()));
    finding.code == code && finding.place.file == file && of
}
