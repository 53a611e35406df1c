//! What can be wrong with a file or with the shape of its YAML, as plain data.
//!
//! In: what the reader met. Out: a [`Flaw`]: a place and what is the matter there.
//! Leaves to others: severity, words and help (`proof`).

use super::garbled::Garbled;
use super::place::Place;

/// Something wrong at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Flaw {
    /// Where.
    pub place: Place,
    /// What.
    pub what: What,
}

impl Flaw {
    /// A flaw at a place.
    pub fn new(place: Place, what: What) -> Self {
        Flaw { place, what }
    }
}

/// What is the matter with a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// The file holds bytes that are no UTF-8 text.
    NotUtf8,
    /// The file is larger than a guide may be, in bytes.
    TooLarge(u64),
    /// A guide could not be read from disk: the system's words.
    Unreadable(String),
    /// The file has nothing in it.
    Empty,
    /// A character that is a line break to some programs and none to others.
    OddBreak(char),
    /// A tab where YAML wants spaces.
    Tab,
    /// YAML cannot be made out.
    Syntax {
        /// What happened.
        garbled: Garbled,
        /// The quote or bracket on a line above that the place lies behind: what is missing is most often its end.
        opened: Option<Place>,
    },
    /// A `&name` on a value.
    Anchor,
    /// A `*name` for a value.
    Alias,
    /// A `!name` before a value.
    Tag,
    /// A `<<` key.
    MergeKey,
    /// A second document after `---`.
    SecondDocument,
    /// A `%` directive.
    Directive,
    /// Lists and maps stand deeper in one another than a guide may have them.
    TooDeep,
    /// More values than a guide may have.
    TooMany,
    /// A key that is a list or a map.
    KeyNotText,
    /// The same key twice in one map.
    DuplicateKey {
        /// The key.
        key: String,
        /// Where it stood first.
        first: Place,
    },
    /// Inside `{ }`, words without a colon behind them: a key to YAML, most often the rest of a text after a comma.
    KeyAlone(String),
    /// Inside `{ }`, a figure whose decimal comma ended it: the whole as written.
    DecimalComma(String),
    /// A key that the map at this place does not have.
    UnknownKey {
        /// The key as written.
        key: String,
        /// The keys that there are.
        known: Vec<&'static str>,
    },
    /// A key that must be there and is not.
    MissingKey(String),
    /// A value of another shape than is wanted.
    WrongType {
        /// What is wanted, in words.
        wanted: String,
        /// What stands there, in words.
        found: String,
    },
    /// A value where keys are wanted.
    NoKeys {
        /// What stands there, in words.
        found: String,
        /// The keys that there are, in the order in which they are told.
        known: Vec<&'static str>,
    },
    /// A word that is none of those that fit.
    UnknownWord {
        /// The word as written.
        word: String,
        /// The words that fit.
        known: Vec<&'static str>,
    },
    /// A value that means nothing here: the reason in words.
    BadValue(String),
    /// The first key is not a kind of guide.
    UnknownKind(String),
    /// A second handbook file; the place of the first one's id.
    SecondHandbook(Place),
    /// There is no `handbook.yaml`.
    NoHandbook,
    /// A translation's language is none.
    NoLanguage(String),
    /// A translation gives another value to a key that holds no words for people.
    NotWords(String),
    /// A translation names what its guide does not have.
    NothingToTranslate {
        /// The key or id as written.
        named: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A translation of a guide that is not there.
    TranslationOfNothing {
        /// The id as written.
        named: String,
        /// The guides that there are.
        known: Vec<String>,
    },
    /// A second translation of a guide into the same language; the place of the first.
    SecondTranslation(Place),
}
