//! File names: none that some system takes for another's. A folder with `Foil.yaml` beside `foil.yaml` loses one of the two when it is
//! copied to Windows, and so it does with `é` written as one character and as two (the same name on macOS).

use crate::model::Guides;
use crate::proof::finding::Finding;
use crate::proof::findings::ids;
use crate::proof::walk;
use crate::source::{Folder, Place, Tolerant};
use std::collections::BTreeMap;
use unicode_normalization::UnicodeNormalization;

/// Checks every file of the folder against those before it.
pub fn check(folder: &Folder, guides: &Guides, findings: &mut Vec<Finding>) {
    let texts = folder.texts.iter().map(|(file, text)| (text.name.as_str(), Place::top(file)));
    let home = guides.handbook.as_ref().map(|(file, _)| Place::top(*file));
    let shown = shown(guides);
    let others = folder.others.keys().map(String::as_str);
    let others = others.filter_map(|name| Some((name, shown.get(name).copied().or(home)?)));
    // A club's message file is a text as well as one of the others.
    let named: BTreeMap<&str, Place> = others.chain(texts).collect();
    let mut seen: BTreeMap<String, &str> = BTreeMap::new();
    for (name, place) in named {
        match seen.get(&folded(name)) {
            Some(first) => findings.push(ids::names_alike(name, first, place)),
            None => drop(seen.insert(folded(name), name)),
        }
    }
}

/// Where a guide names a file as a picture's.
fn shown(guides: &Guides) -> BTreeMap<&str, Place> {
    let pictures = walk::pictures(guides).into_iter().flat_map(|(_, list)| list.iter().filter_map(Tolerant::sound));
    pictures.map(|picture| (picture.file.value.as_str(), picture.file.place)).collect()
}

/// The name as the least particular of systems takes it: no capitals, and composed letters (Unicode Standard Annex 15, form C).
pub(super) fn folded(name: &str) -> String {
    let lower: String = name.nfc().flat_map(char::to_lowercase).collect();
    lower.nfc().collect()
}

#[cfg(test)]
mod tests {
    use super::folded;

    #[test]
    fn capitals_and_unicode_forms_make_no_difference() {
        assert_eq!(folded("Foil.yaml"), folded("foil.yaml"));
        assert_eq!(folded("e\u{301}pe\u{301}e.jpg"), folded("\u{c9}p\u{e9}e.JPG"));
        assert_ne!(folded("epee.jpg"), folded("\u{e9}p\u{e9}e.jpg"));
    }
}
