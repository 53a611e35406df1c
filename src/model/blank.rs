//! Guides to fill in, one of each kind, and the words in capitals that stand in them where somebody is to write.
//!
//! In: the files of `blank/`, written by hand and embedded. Out: their texts, and the capitals by the key that they stand under.
//! Leaves to others: finding them in a guide (`proof`).

use super::Kind;
use crate::source::{FileId, Node, Text, parse};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// The guide of a kind to fill in, with comments.
pub fn blank(kind: Kind) -> &'static str {
    match kind {
        Kind::Symptom => include_str!("blank/symptom.yaml"),
        Kind::Procedure => include_str!("blank/procedure.yaml"),
        Kind::Checklist => include_str!("blank/checklist.yaml"),
        Kind::Stores => include_str!("blank/stores.yaml"),
        Kind::Limits => include_str!("blank/limits.yaml"),
        Kind::Words => include_str!("blank/words.yaml"),
        Kind::Learning => include_str!("blank/learning.yaml"),
        Kind::Circuit => include_str!("blank/circuit.yaml"),
        Kind::Pack => include_str!("blank/pack.yaml"),
        Kind::Handbook => include_str!("blank/handbook.yaml"),
    }
}

/// The capitals of all blank guides, by the key that they stand under.
static CAPITALS: LazyLock<BTreeMap<String, BTreeSet<String>>> = LazyLock::new(|| {
    let mut capitals: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for text in Kind::ALL.into_iter().map(blank).flat_map(parts) {
        let (tree, _) = parse(FileId(0), &Text::new("blank.yaml", text));
        for (key, value) in tree.iter().flat_map(Node::texts_under_keys) {
            if let Some(words) = value.text().and_then(leading_capitals) {
                capitals.entry(key.to_owned()).or_default().insert(words);
            }
        }
    }
    capitals
});

/// A blank guide, and every line that stands in it as a comment and is to be taken in where it is wanted.
fn parts(blank: &str) -> Vec<&str> {
    let comments = blank.lines().filter_map(|line| line.strip_prefix("# "));
    let lines = comments.map(|line| line.trim_start().trim_start_matches("- "));
    lines.chain([blank]).collect()
}

/// The capitals of a blank guide that still stand at the head of a text under a key.
pub fn unfilled<'t>(key: &str, text: &'t str) -> Option<&'t str> {
    let ends = |rest: &str| rest.is_empty() || rest.starts_with(['.', ',', ':', '?', '!']);
    let left = |words: &String| text.strip_prefix(words.as_str()).is_some_and(ends);
    // The longest: `WHICH KIT` stands at the head of `WHICH KIT, AND HOW OFTEN`.
    let words = CAPITALS.get(key)?.iter().filter(|words| left(words)).max_by_key(|words| words.len())?;
    text.get(..words.len())
}

/// Fewer capital letters make no words to fill in: `A4` and `2 Ω` are values.
const FEWEST: usize = 3;

/// The words at the head of a text that have no small letter, without the sign at their end.
fn leading_capitals(text: &str) -> Option<String> {
    let words = text.split_whitespace().take_while(|word| !word.contains(char::is_lowercase));
    let words = words.collect::<Vec<_>>().join(" ");
    let words = words.trim_end_matches(|sign: char| !sign.is_ascii_alphanumeric());
    let capitals = words.bytes().filter(u8::is_ascii_uppercase).count();
    (capitals >= FEWEST).then(|| words.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_to_fill_in_are_those_of_the_blank_guides() {
        assert_eq!(unfilled("symptom", "WHAT-IS-SEEN"), Some("WHAT-IS-SEEN"));
        assert_eq!(unfilled("title", "WHAT IS SEEN, as a fencer would say it"), Some("WHAT IS SEEN"));
        assert_eq!(unfilled("by", "WHO WROTE THEM"), Some("WHO WROTE THEM"));
        assert_eq!(unfilled("for", "WHICH KIT, AND HOW OFTEN."), Some("WHICH KIT, AND HOW OFTEN"));
        assert_eq!(unfilled("access", "COVER-OFF"), Some("COVER-OFF"), "it stands in a comment of the blank guide");
    }

    #[test]
    fn other_capitals_are_what_somebody_wrote() {
        let ours =
            [("title", "FIE RULES"), ("title", "TRIAL"), ("paper", "A4"), ("at most", "2 Ω"), ("probe", "TRIALS")];
        for (key, text) in ours {
            assert_eq!(unfilled(key, text), None, "{key}: {text}");
        }
        assert_eq!(unfilled("learner", "WHY it slips: the thread is worn"), None);
    }
}
