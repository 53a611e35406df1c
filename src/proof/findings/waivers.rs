//! Findings about waivers.

use crate::model::{Line, Waiver};
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean};

/// A code that does not exist.
pub fn unknown(code: &Line) -> Finding {
    let known = Code::ALL.iter().map(|code| code.as_str());
    Finding::new(
        Code::UnknownFinding,
        code.place,
        format!("there is no finding `{}`", code.value),
        did_you_mean(&code.value, known, "the code stands in square brackets behind `error` or `advice`"),
    )
}

/// A finding that cannot be accepted.
pub fn refused(waiver: &Waiver) -> Finding {
    Finding::new(
        Code::WaiverRefused,
        waiver.finding.place,
        format!("`{}` cannot be accepted", waiver.finding.value),
        "mend the finding; this waiver does nothing",
    )
}

/// A waiver that accepts nothing any more.
pub fn unused(waiver: &Waiver) -> Finding {
    Finding::new(
        Code::WaiverUnused,
        waiver.finding.place,
        format!("nothing is left of `{}` to accept", waiver.finding.value),
        "delete this waiver",
    )
}
