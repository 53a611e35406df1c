//! Pictures: there, inside the folder, of a kind that pages can show, harmless, and told in words.

use crate::model::{Guides, Picture};
use crate::proof::drawing::{self, Refused};
use crate::proof::finding::Finding;
use crate::proof::findings::pictures;
use crate::proof::photo::{self, Unfit};
use crate::proof::walk;
use crate::source::Tolerant;
use std::collections::BTreeMap;

/// Pictures as they are shown, by the path of their file.
pub type Shown = BTreeMap<String, Vec<u8>>;

/// Checks every picture against the files beside the guides; the sound ones as they are shown.
pub fn check(guides: &Guides, others: &BTreeMap<String, Vec<u8>>, findings: &mut Vec<Finding>) -> Shown {
    check_more(guides, others, &Shown::new(), findings)
}

/// The same for the guides in another language: the pictures that they show in place of those that are known.
pub fn check_more(
    guides: &Guides,
    others: &BTreeMap<String, Vec<u8>>,
    known: &Shown,
    findings: &mut Vec<Finding>,
) -> Shown {
    let mut shown = Shown::new();
    for picture in walk::pictures(guides).into_iter().flat_map(|(_, list)| list.iter().filter_map(Tolerant::sound)) {
        if !known.contains_key(&picture.file.value) {
            match fit(picture, others) {
                Ok(bytes) => drop(shown.insert(picture.file.value.clone(), bytes)),
                Err(finding) => findings.push(finding),
            }
        }
        if picture.alt.as_ref().is_none_or(|alt| alt.value.trim().is_empty()) {
            findings.push(pictures::without_alt(&picture.picture));
        }
    }
    shown
}

/// A picture as it is shown, or what is wrong with it.
fn fit(picture: &Picture, others: &BTreeMap<String, Vec<u8>>) -> Result<Vec<u8>, Finding> {
    let file = &picture.file;
    if leaves(&file.value) {
        return Err(pictures::outside(file));
    }
    let Some(kind) = kind(&file.value) else { return Err(pictures::kind(file)) };
    match others.get(&file.value) {
        None => Err(pictures::missing(file, others.keys().map(String::as_str))),
        Some(bytes) if bytes.is_empty() => Err(pictures::no_bytes(file)),
        Some(bytes) if kind == "svg" => match drawing::refused(bytes) {
            Some(Refused::Has(what)) => Err(pictures::unsafe_svg(file, what)),
            Some(Refused::Broken) => Err(pictures::unfit(file, &Unfit::Broken)),
            None => Ok(bytes.clone()),
        },
        Some(bytes) => photo::fit(bytes, kind).map_err(|why| pictures::unfit(file, &why)),
    }
}

/// Whether a path would leave the handbook's folder on any system.
fn leaves(path: &str) -> bool {
    let absolute = path.starts_with(['/', '\\']) || path.contains(':');
    absolute || path.split(['/', '\\']).any(|part| part == "..")
}

/// The kind of a picture that pages can show, by its name.
pub fn kind(path: &str) -> Option<&'static str> {
    let ending = path.rsplit_once('.')?.1.to_ascii_lowercase();
    match ending.as_str() {
        "svg" => Some("svg"),
        "png" => Some("png"),
        "jpg" | "jpeg" => Some("jpeg"),
        "webp" => Some("webp"),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_path_leaves_the_folder_on_any_system() {
        for bad in ["../a.png", "a/../../b.png", "/etc/a.png", "C:\\a.png", "a\\..\\b.png"] {
            assert!(leaves(bad), "{bad}");
        }
        assert!(!leaves("pictures/tip.svg"));
    }
}
