//! How like two choices of a self-check are: in form, so that the right one does not stand out; and in what they speak of, so that a
//! wrong one is wrong.
//!
//! In: texts of the guides. Out: whether they are alike, and the beginnings of their words. No language is known here: a word is known
//! again by its beginning, and what stands in many texts says little.

use crate::model::prose::{LinkKind, LinkTo, links, plain};
use std::collections::{BTreeMap, BTreeSet};

/// How many times as long a text of the same form may be.
const LONGER: usize = 2;
/// Letters by which a word is known again: `cutters` and `cutter`.
const BEGINNING: usize = 5;
/// Letters of the shortest word that says anything.
const SHORTEST: usize = 3;
/// A word that stands in more than one in so many texts says little.
const COMMON: usize = 5;

/// The beginnings of a text's words.
pub type Beginnings = BTreeSet<String>;

/// Whether two texts have the same form: about as long, and both with a figure or both without.
pub fn alike(one: &str, other: &str) -> bool {
    let (a, b) = (letters(one), letters(other));
    a.max(b) <= LONGER * a.min(b) && has_figure(one) == has_figure(other)
}

/// How many letters a text has for who reads it.
fn letters(text: &str) -> usize {
    plain(text).chars().count()
}

/// A digit, or a limit, which prints its value.
fn has_figure(text: &str) -> bool {
    let limit = |link: &crate::model::prose::Link| matches!(link.to, LinkTo::Short(LinkKind::Limit, _));
    plain(text).contains(|letter: char| letter.is_ascii_digit()) || links(text).iter().any(limit)
}

/// The beginnings of all words of a text but the shortest.
pub fn beginnings(text: &str) -> Beginnings {
    let text = plain(text).to_lowercase();
    let words = text.split(|letter: char| !letter.is_alphanumeric());
    let telling = words.filter(|word| word.chars().count() >= SHORTEST);
    telling.map(|word| word.chars().take(BEGINNING).collect()).collect()
}

/// The beginnings that say little, since they stand in many of the texts.
pub fn common<'t>(texts: impl Iterator<Item = &'t str>) -> Beginnings {
    let texts: BTreeSet<&str> = texts.collect();
    let mut times: BTreeMap<String, usize> = BTreeMap::new();
    texts.iter().flat_map(|text| beginnings(text)).for_each(|word| *times.entry(word).or_default() += 1);
    times.into_iter().filter(|(_, times)| times * COMMON > texts.len()).map(|(word, _)| word).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_of_one_form_are_about_as_long_and_have_a_figure_both_or_neither() {
        assert!(alike("Clamp over the tray.", "Open the plug."));
        assert!(!alike("Clamp over the tray.", "Tape."));
        assert!(!alike("Tape, 15 cm.", "Clamp it."));
        assert!(!alike("At most <limit:foil>.", "At most a little."));
    }

    #[test]
    fn a_word_is_known_again_by_its_beginning() {
        assert_eq!(beginnings("The cutters, if sharp."), beginnings("*Sharp*: the cutter"));
    }

    #[test]
    fn what_stands_in_many_texts_says_little() {
        let texts = ["wear gloves", "wear glasses", "wear a mask", "wear boots", "wear it", "a spring"];
        assert_eq!(common(texts.into_iter()), Beginnings::from(["wear".to_owned()]));
    }
}
