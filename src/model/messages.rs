//! The program's own words for pages, as they are carried in it, and the shape of a message file.
//!
//! In: a language, or a club's message file. Out: its text, its ids. The syntax is that of Fluent.
//! Leaves to others: saying a message with its arguments (`render`), whether pages use it.

use fluent_bundle::FluentResource;

/// English: every message that there is.
pub const ENGLISH: &str = include_str!("messages/en.ftl");
/// French.
pub const FRENCH: &str = include_str!("messages/fr.ftl");

/// The language without its country: `pt` of `pt-BR`.
pub fn general(language: &str) -> &str {
    language.split_once('-').map_or(language, |(general, _)| general)
}

/// The message file of a language that the program speaks. `fr-CA` is spoken as `fr`.
pub fn built_in(language: &str) -> Option<&'static str> {
    match general(language) {
        "en" => Some(ENGLISH),
        "fr" => Some(FRENCH),
        _ => None,
    }
}

/// Every message of a file with the byte that its id begins at.
pub fn ids(text: &str) -> Vec<(&str, usize)> {
    let mut at = 0;
    let mut ids = Vec::new();
    for line in text.split_inclusive('\n') {
        let id = line.split_once('=').map(|(id, _)| id.trim_end());
        let is_id = |id: &str| {
            id.bytes().next().is_some_and(|first| first.is_ascii_alphabetic())
                && id.bytes().all(|letter| letter.is_ascii_alphanumeric() || matches!(letter, b'-' | b'_'))
        };
        ids.extend(id.filter(|id| is_id(id)).map(|id| (id, at)));
        at += line.len();
    }
    ids
}

/// Where each line begins that is no message and no comment.
pub fn faulty(text: &str) -> Vec<usize> {
    match FluentResource::try_new(text.to_owned()) {
        Ok(_) => Vec::new(),
        Err((_, faults)) => faults.into_iter().map(|fault| line_start(text, fault.pos.start)).collect(),
    }
}

fn line_start(text: &str, at: usize) -> usize {
    text.get(..at).and_then(|before| before.rfind('\n')).map_or(0, |newline| newline + 1)
}
