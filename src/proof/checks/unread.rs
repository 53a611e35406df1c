//! What lies in the folder and comes to nothing: words of an empty guide that nobody filled in, the rest of a text behind a `#`, guides
//! whose name does not end in `.yaml`, pictures that no guide lists.
//!
//! Leaves to others: pictures that are listed (`checks::pictures`).

use super::names::folded;
use super::pictures::kind;
use crate::model::{Guides, Kind, unfilled};
use crate::proof::finding::Finding;
use crate::proof::findings::{pictures, shape};
use crate::source::{Folder, Node, Place, Texts};
use std::collections::BTreeSet;

/// Endings that a text editor may give a guide.
const TEXT_ENDINGS: [&str; 7] = ["txt", "text", "md", "yam", "rtf", "doc", "docx"];
/// Endings of photos that pages cannot show: their finding says what they are saved as once they are listed.
const OTHER_PHOTOS: [&str; 6] = ["heic", "heif", "gif", "bmp", "tif", "tiff"];

/// Checks the texts, and the files beside them.
pub fn check(folder: &Folder, guides: &Guides, findings: &mut Vec<Finding>) {
    findings.extend(folder.trees.iter().filter_map(|(_, tree)| first_unfilled(tree)));
    for (_, tree) in &folder.trees {
        findings.extend(tree.texts_under_keys().into_iter().filter_map(|(_, value)| cut_off(&folder.texts, value)));
    }
    // What is true of a file without a line stands at the handbook's head.
    let Some((file, handbook)) = &guides.handbook else { return };
    let home = Place { file: *file, ..handbook.handbook.place };
    for (name, bytes) in &folder.others {
        findings.extend(better_name(name, bytes).map(|better| shape::passed_over(home, name, &better)));
    }
    // A guide that cannot be made out lists nobody knows what.
    if folder.flaws.is_empty() {
        findings.extend(unlisted(folder).into_iter().map(|name| pictures::unlisted(home, name)));
    }
}

/// One finding a file is enough: it says that there may be more.
fn first_unfilled(tree: &Node) -> Option<Finding> {
    let left = |(key, value): (&str, &Node)| Some(shape::unfilled(value.place, unfilled(key, value.text()?)?));
    tree.texts_under_keys().into_iter().find_map(left)
}

/// A text without quotes before ` #1` or ` #one`: YAML takes the rest for a note to oneself. Such notes begin with a space behind the `#`.
fn cut_off(texts: &Texts, value: &Node) -> Option<Finding> {
    let place = value.place;
    let text = texts.get(place.file)?;
    let rest = text.text.get(place.end as usize..)?.lines().next()?;
    let note = rest.trim_start_matches([' ', '\t']).strip_prefix('#')?;
    let bare = !texts.at(place).starts_with(['"', '\'', '|', '>']);
    (bare && note.starts_with(char::is_alphanumeric)).then(|| {
        let start = place.end as usize + (rest.len() - note.len() - 1);
        shape::cut_off(text.place(place.file, start..place.end as usize + rest.trim_end().len()))
    })
}

/// What a file that was meant as a guide should be called.
fn better_name(name: &str, bytes: &[u8]) -> Option<String> {
    let (stem, ending) = name.rsplit_once('.')?;
    if !TEXT_ENDINGS.contains(&&*ending.to_ascii_lowercase()) {
        return None;
    }
    match stem.rsplit_once('.') {
        Some((_, inner)) if ["yaml", "yml"].contains(&&*inner.to_ascii_lowercase()) => Some(stem.to_owned()),
        _ => begins_as_a_guide(bytes).then(|| format!("{stem}.yaml")),
    }
}

/// Whether the first line that says something has the key of a kind of guide.
fn begins_as_a_guide(bytes: &[u8]) -> bool {
    let Ok(text) = std::str::from_utf8(bytes) else { return false };
    let said = text.lines().find(|line| !line.trim().is_empty() && !line.starts_with('#'));
    let key = said.and_then(|line| line.split_once(": ")).map(|(key, _)| key);
    key.is_some_and(|key| key == "translation" || Kind::of(key).is_some())
}

fn is_photo(name: &str) -> bool {
    let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending).to_ascii_lowercase();
    kind(name).is_some() || OTHER_PHOTOS.contains(&&*ending)
}

/// Pictures that no guide lists. While a path that is listed leads nowhere, that comes first: it may be one of these.
fn unlisted(folder: &Folder) -> Vec<&str> {
    let photos: Vec<&str> = folder.others.keys().map(String::as_str).filter(|name| is_photo(name)).collect();
    let listed = listed(folder);
    // A pack names its pictures as they lie inside its own folder.
    let is =
        |name: &str, path: &str| name.strip_suffix(path).is_some_and(|above| above.is_empty() || above.ends_with('/'));
    if listed.iter().any(|path| !photos.iter().any(|name| is(name, path))) {
        return Vec::new();
    }
    // One that some systems take for another has its own finding (`checks::names`): which of the two is meant is not known.
    let twins = |name: &&str| photos.iter().filter(|other| folded(other) == folded(name)).count() > 1;
    let unlisted = |name: &&str| !listed.iter().any(|path| is(name, path)) && !twins(name);
    photos.iter().copied().filter(unlisted).collect()
}

/// Every path that some guide names as a picture's, be it sound or not, or replaced by one of the club's own.
fn listed(folder: &Folder) -> BTreeSet<&str> {
    let texts = folder.trees.iter().flat_map(|(_, tree)| tree.texts_under_keys());
    texts.filter(|(key, _)| *key == "file").filter_map(|(_, value)| value.text()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_guide_that_an_editor_renamed_is_told_from_notes() {
        let better = |name: &str, text: &str| better_name(name, text.as_bytes());
        assert_eq!(better("lamp.yaml.txt", "anything").as_deref(), Some("lamp.yaml"));
        assert_eq!(better("faults/lamp.YML.TXT", "").as_deref(), Some("faults/lamp.YML"));
        assert_eq!(better("lamp.txt", "# Ours\n\nsymptom: lamp\n").as_deref(), Some("lamp.yaml"));
        assert_eq!(better("notes.txt", "Ask Ida about reels: she has two.\n"), None);
        assert_eq!(better("lamp.yaml.bak", "symptom: lamp\n"), None, "a copy that somebody keeps");
    }
}
