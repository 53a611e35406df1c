//! A finding as a value: what is wrong, where, and what to do about it.
//!
//! Leaves to others: how it is drawn in a terminal, as JSON or as SARIF (`cli`).

use super::code::Code;
use crate::source::Place;

/// How bad a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The handbook does not bind.
    Error,
    /// It binds, but could be better.
    Advice,
}

impl Severity {
    /// The word for it.
    pub fn as_str(self) -> &'static str {
        match self {
            Severity::Error => "error",
            Severity::Advice => "advice",
        }
    }
}

/// Something that is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// What kind of thing.
    pub code: Code,
    /// Where.
    pub place: Place,
    /// What is wrong, in at most ten words, without a full stop.
    pub message: String,
    /// What to do.
    pub help: String,
    /// Other places that belong to it, each with a word.
    pub also: Vec<(Place, String)>,
    /// The id that it is about, for waivers.
    pub of: Option<String>,
}

impl Finding {
    /// A finding with its message and help.
    pub fn new(code: Code, place: Place, message: impl Into<String>, help: impl Into<String>) -> Self {
        let (message, help) = (message.into(), help.into());
        Finding { code, place, message, help, also: Vec::new(), of: None }
    }

    /// Adds another place that belongs to it.
    #[must_use]
    pub fn also(mut self, place: Place, word: impl Into<String>) -> Self {
        self.also.push((place, word.into()));
        self
    }

    /// Says which id it is about.
    #[must_use]
    pub fn of(mut self, id: impl Into<String>) -> Self {
        self.of = Some(id.into());
        self
    }

    /// How bad it is.
    pub fn severity(&self) -> Severity {
        self.code.severity()
    }
}

/// Longest word, in letters, for which a nearest name is looked for.
const LONGEST: usize = 80;
/// Most names that a word is compared with: a guide that is made to do harm has thousands of unknown names beside thousands of known ones.
const MOST_COMPARED: usize = 400;

/// The nearest of several names, if one is near enough to be meant.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let lower = word.to_lowercase();
    let letters = lower.chars().count();
    let within = 1 + letters / 3;
    let near = |name: &str| strsim::damerau_levenshtein(&lower, &name.to_lowercase());
    let fits = |name: &&str| letters <= LONGEST && name.chars().count().abs_diff(letters) <= within;
    let compared = known.into_iter().filter(fits).take(MOST_COMPARED);
    let (distance, name) = compared.map(|name| (near(name), name)).min_by_key(|(distance, _)| *distance)?;
    (distance < letters && distance <= within).then_some(name)
}

/// "did you mean" with the nearest name, or what to do when none is near.
pub fn did_you_mean<'a>(word: &str, known: impl IntoIterator<Item = &'a str>, otherwise: &str) -> String {
    match nearest(word, known) {
        Some(name) => format!("did you mean `{name}`?"),
        None => otherwise.to_owned(),
    }
}

/// Words as a list for people: `a`, `b` or `c`.
pub fn listed<'a>(words: impl IntoIterator<Item = &'a str>) -> String {
    let quoted: Vec<String> = words.into_iter().map(|word| format!("`{word}`")).collect();
    match quoted.as_slice() {
        [] => String::new(),
        [only] => only.clone(),
        [rest @ .., last] => format!("{} or {last}", rest.join(", ")),
    }
}
