//! Times, shares and odds that mean nothing, and safety notes without their word.

use crate::model::{Guides, Told};
use crate::proof::finding::Finding;
use crate::proof::findings::{safety, shape};
use crate::proof::walk::{Leaf, walk};
use crate::source::Placed;

/// Checks every value that was kept with its reason.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    walk(guides, &mut |_, leaf| match leaf {
        Leaf::Time(time) => findings.extend(misread(time)),
        Leaf::Share(share) => findings.extend(misread(share)),
        Leaf::Odds(meant) => findings.extend(meant.times.as_ref().and_then(misread)),
        Leaf::Safety(note, place) if note.count() != 1 => {
            let at = note.note().map_or(place, |(_, text)| text.place);
            findings.push(safety::safety_word(at, note.count()));
        }
        _ => {}
    });
}

/// The finding for a value that means nothing.
pub fn misread<T>(told: &Placed<Told<T>>) -> Option<Finding> {
    let why = told.value.means.as_ref().err()?;
    Some(shape::misread(told.place, &told.value.text, why))
}
