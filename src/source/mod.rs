//! Finds and reads a handbook's files, and keeps for every value where it stood.
//!
//! In: a folder. Out: the texts, one placed tree per guide, the pictures, and every flaw met on the way ([`Folder`]).
//! Leaves to others: what the keys mean (`model`), how a flaw is worded (`proof`).
//! Promise: never stops at the first flaw, never follows a link out of the folder, never panics on any bytes.

mod flaw;
mod garbled;
mod in_words;
mod place;
mod read;
mod tree;
mod typed;

pub use flaw::{Flaw, What};
pub use garbled::Garbled;
pub use in_words::in_words;
pub use place::{FileId, Place, Text, Texts};
pub use read::{Folder, language_of_messages, read, read_record, read_table, read_texts, read_theme};
pub use tree::{Key, Node, NodeKind, parse};
pub(crate) use typed::MANY;
pub use typed::{Placed, Tolerant, typed};
