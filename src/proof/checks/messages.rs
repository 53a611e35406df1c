//! A club's own words for pages: `messages/LANGUAGE.ftl`.
//!
//! Every line must be a message that the program has; one that a language lacks is said in English, and named.

use crate::model::{Guides, messages};
use crate::proof::finding::Finding;
use crate::proof::findings::translations;
use crate::source::{FileId, Folder, Place, Text, language_of_messages};
use std::collections::BTreeSet;

/// Checks every message file of the club.
pub fn check(folder: &Folder, guides: &Guides, findings: &mut Vec<Finding>) {
    let used: BTreeSet<&str> = languages(guides).collect();
    let known: Vec<&str> = messages::ids(messages::ENGLISH).into_iter().map(|(id, _)| id).collect();
    for (file, text) in folder.texts.iter() {
        let Some(language) = language_of_messages(&text.name) else { continue };
        let own = messages::ids(&text.text);
        findings.extend(messages::faulty(&text.text).into_iter().map(|at| faulty(file, text, at)));
        for (id, at) in own.iter().filter(|(id, _)| !known.contains(id)) {
            findings.push(translations::unknown_message(text.place(file, *at..*at + id.len()), id, &known));
        }
        let spoken = messages::built_in(language).map(messages::ids).unwrap_or_default();
        let says = |id: &str| own.iter().chain(&spoken).any(|(one, _)| *one == id);
        let lacking: Vec<&str> = known.iter().copied().filter(|id| !says(id)).collect();
        if !lacking.is_empty() && used.contains(language) && language != "en" {
            findings.push(translations::messages_lacking(Place::top(file), language, &lacking));
        }
    }
}

fn faulty(file: FileId, text: &Text, at: usize) -> Finding {
    let end = text.text.get(at..).and_then(|rest| rest.find('\n')).map_or(text.text.len(), |length| at + length);
    translations::faulty_message(text.place(file, at..end))
}

/// The languages that pages are made in, each with what it falls back to: `pt-BR`, `pt`.
fn languages(guides: &Guides) -> impl Iterator<Item = &str> {
    let own = guides.handbook.iter().map(|(_, file)| file.language.value.as_str());
    let others = guides.translations.iter().map(|one| one.language.as_str());
    own.chain(others).flat_map(|code| [code, messages::general(code)])
}
