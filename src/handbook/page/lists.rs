//! The lists: limits, stores, words, every page.

use super::{LimitRow, Link, Markdown};
use crate::model::Signal;
use serde::Serialize;

/// All limits.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limits {
    /// One group a source.
    pub groups: Vec<LimitGroup>,
}

/// Limits of one source.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitGroup {
    /// What they are.
    pub title: String,
    /// The source; `shop` for the club's own.
    pub source: String,
    /// Its edition.
    pub edition: Option<String>,
    /// The day they were looked up.
    pub looked_up: Option<String>,
    /// *Markdown*.
    pub says: Option<Markdown>,
    /// The limits.
    pub rows: Vec<LimitRow>,
}

/// All stores.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stores {
    /// One group a list: parts, tools, consumables.
    pub groups: Vec<StoreGroup>,
}

/// A list of the stores.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StoreGroup {
    /// `parts`, `tools` or `consumables`: a message id.
    pub list: &'static str,
    /// What is in it.
    pub rows: Vec<StoreRow>,
}

/// Something in the stores.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StoreRow {
    /// Its id on the page.
    pub anchor: String,
    /// What people call it.
    pub title: String,
    /// Other names.
    pub also: Vec<String>,
    /// *Markdown*.
    pub says: Option<Markdown>,
    /// What does instead: *Markdown*.
    pub substitute: Option<Markdown>,
    /// What it can do to people.
    pub hazards: Vec<String>,
    /// The signal word that goes with it.
    pub signal: Option<Signal>,
    /// Where it is used.
    pub used_in: Vec<Link>,
}

/// All words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Words {
    /// The words, by the alphabet.
    pub rows: Vec<WordRow>,
}

/// A word.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WordRow {
    /// Its id on the page.
    pub anchor: String,
    /// The word.
    pub title: String,
    /// What else people say.
    pub also: Vec<String>,
    /// What it means: *Markdown*.
    pub says: Markdown,
    /// Where it is used.
    pub used_in: Vec<Link>,
}

/// Every page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AllPages {
    /// By the first letter.
    pub letters: Vec<Letter>,
}

/// The pages of a letter.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Letter {
    /// The letter.
    pub letter: String,
    /// The pages.
    pub rows: Vec<AllRow>,
}

/// A page in the list of all.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AllRow {
    /// The page.
    pub link: Link,
    /// Its kind: a message id.
    pub kind: &'static str,
    /// For another name: what the handbook calls it.
    pub see: Option<String>,
}
