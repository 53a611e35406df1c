//! `handbook.yaml`: values that become addresses, folder names or attributes.

use crate::model::translation::is_language;
use crate::model::{Guides, Line, typed_code};
use crate::proof::cases::sound;
use crate::proof::finding::Finding;
use crate::proof::findings::handbook;
use crate::proof::index::why_no_id;

/// Checks the theme, the address, the language and the withdrawn codes.
pub fn check(guides: &Guides, findings: &mut Vec<Finding>) {
    let Some((_, file)) = &guides.handbook else { return };
    findings.extend(file.theme.as_ref().and_then(theme));
    findings.extend(file.address.as_ref().filter(|line| !is_address(&line.value)).map(handbook::bad_address));
    let codes = sound(&file.withdrawn).into_iter().map(|withdrawn| &withdrawn.code);
    findings.extend(codes.filter(|code| typed_code(&code.value).is_none()).map(handbook::bad_code));
    findings.extend(Some(&file.language).filter(|line| !is_language(&line.value)).map(handbook::bad_language));
}

/// A theme is a folder beside the guides: its name must not lead anywhere else.
fn theme(line: &Line) -> Option<Finding> {
    why_no_id(&line.value).map(|why| handbook::bad_theme(line, why))
}

/// Printed on sheets and linked: only what a browser fetches.
fn is_address(text: &str) -> bool {
    let rest = text.strip_prefix("https://").or_else(|| text.strip_prefix("http://"));
    rest.is_some_and(|rest| {
        !rest.is_empty() && !rest.contains(|letter: char| letter.is_whitespace() || letter.is_control())
    })
}
