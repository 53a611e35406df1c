//! Findings about a file and the shape of what stands in it.

use super::{translations, yaml};
use crate::model::{Kind, Misread, MisreadKind, Named};
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean, listed};
use crate::source::{Flaw, Place, What};

/// Words a flaw that `source` or `model` met.
pub fn from_flaw(flaw: Flaw) -> Finding {
    let Flaw { place, what } = flaw;
    match what {
        What::DuplicateKey { key, first } => duplicate_key(place, &key, first),
        What::DecimalComma(written) => decimal_comma(place, &written),
        What::NoKeys { found, known } => no_keys(place, &found, &known),
        What::KeyAlone(key) => key_alone(place, &key),
        What::UnknownKey { key, known } => unknown_key(place, &key, &known),
        What::MissingKey(key) => missing_key(place, &key),
        What::WrongType { wanted, found } => wrong_type(place, &wanted, &found),
        What::UnknownWord { word, known } => unknown_word(place, &word, &known),
        What::UnknownKind(key) => unknown_kind(place, &key),
        What::BadValue(why) => Finding::new(Code::BadValue, place, why, "look at how a guide that binds writes it"),
        What::NoHandbook => no_handbook(place),
        What::SecondHandbook(first) => second_handbook(place, first),
        What::NoLanguage(_) | What::NotWords(_) | What::NothingToTranslate { .. } => {
            translations::from_flaw(place, what)
        }
        What::TranslationOfNothing { .. } | What::SecondTranslation(_) => translations::from_flaw(place, what),
        other => from_text_flaw(place, other),
    }
}

/// Words a flaw of the text itself.
fn from_text_flaw(place: Place, what: What) -> Finding {
    let plain = |code: Code, message: &str, help: &str| Finding::new(code, place, message, help);
    match what {
        What::NotUtf8 => {
            plain(Code::NotUtf8, "the file is not UTF-8 text", "save it from your editor with the encoding UTF-8")
        }
        What::TooLarge(size) => Finding::new(
            Code::TooLarge,
            place,
            format!("the file has {} KiB, a guide may have 1024", size / 1024),
            "look into it: this is more than a person writes; split it or move it out of the folder",
        ),
        What::Unreadable(why) => Finding::new(
            Code::Unreadable,
            place,
            format!("the file cannot be read: {why}"),
            "see that it is yours to read and not open elsewhere",
        ),
        What::Empty => plain(Code::EmptyFile, "the file has nothing in it", "write the guide, or delete the file"),
        What::OddBreak(letter) => Finding::new(
            Code::OddBreak,
            place,
            format!("an odd character, U+{:04X}", u32::from(letter)),
            "delete it; where a new line is meant, press Enter",
        ),
        What::Tab => plain(Code::Tab, "a tab where YAML wants spaces", "set the line in with spaces instead"),
        What::Syntax { garbled, opened } => yaml::garbled(place, &garbled, opened),
        What::Anchor => plain(Code::Anchor, "an anchor, which guides do not use", "take the `&…` out"),
        What::Alias => {
            plain(Code::Alias, "an alias, which guides do not use", "write the value itself, or put the text in quotes")
        }
        What::Tag => plain(Code::Tag, "a tag, which guides do not use", "take the `!…` out, or put the text in quotes"),
        What::MergeKey => plain(Code::MergeKey, "a merge key, which guides do not use", "write the keys out"),
        What::SecondDocument => {
            plain(Code::SecondDocument, "a second document in one file", "put it into a file of its own")
        }
        What::Directive => plain(Code::Directive, "a YAML directive, which guides do not use", "delete the line"),
        What::TooDeep => plain(Code::TooDeep, "lists and maps stand too deep in one another", "write it flatter"),
        What::TooMany => plain(Code::TooMany, "more values than a guide can have", "split the file"),
        _ => plain(
            Code::KeyNotText,
            "a key that is a list or a map",
            "write a word before the colon; a text that starts with a bracket needs quotes",
        ),
    }
}

fn duplicate_key(place: Place, key: &str, first: Place) -> Finding {
    Finding::new(Code::DuplicateKey, place, format!("the key `{key}` stands here twice"), "join the two, or delete one")
        .also(first, "first here")
}

fn unknown_key(place: Place, key: &str, known: &[&'static str]) -> Finding {
    let all = format!("the keys here are {}", listed(known.iter().copied()));
    let help = match meant_by(key).filter(|meant| known.contains(meant)) {
        Some(meant) => format!("it is called `{meant}` here"),
        None if SIGNALS.contains(&key) && known.contains(&"safety") => {
            format!("a safety note stands under `safety:`, such as `safety: {{{key}: …}}`")
        }
        None => did_you_mean(key, known.iter().copied(), &all),
    };
    Finding::new(Code::UnknownKey, place, format!("no key `{key}` here"), help)
}

/// The signal words of safety notes.
const SIGNALS: [&str; 4] = ["danger", "warning", "caution", "notice"];

/// What people write for a key that is called otherwise, and would be taken for a slip of another.
fn meant_by(key: &str) -> Option<&'static str> {
    match key {
        "max" | "maximum" | "most" => Some("at most"),
        "min" | "minimum" | "least" => Some("at least"),
        "range" => Some("between"),
        "time" | "duration" => Some("minutes"),
        "name" => Some("title"),
        _ => None,
    }
}

/// Words without a colon inside `{ }`: the rest of a text with a comma in it, or a key without the space behind its colon.
fn key_alone(place: Place, key: &str) -> Finding {
    let help = match key.contains(':') {
        true => "write a space behind the colon",
        false => "a comma inside { } starts a new key: put the whole text in quotes",
    };
    Finding::new(Code::UnknownKey, place, format!("`{}` is read as a key", shortened(key)), help)
}

/// A decimal comma inside `{ }`.
fn decimal_comma(place: Place, written: &str) -> Finding {
    Finding::new(
        Code::NotAQuantity,
        place,
        format!("`{}` has a comma for a decimal point", shortened(written)),
        format!("write `{}`: inside {{ }} a comma ends the value", shortened(&written.replace(',', "."))),
    )
}

/// A value where keys are wanted. The first key is the one that is never left out, where there is such a key.
fn no_keys(place: Place, found: &str, known: &[&'static str]) -> Finding {
    let first = known.first().copied().unwrap_or("key");
    let more = if known.len() > 1 { ", …" } else { "" };
    Finding::new(
        Code::WrongType,
        place,
        format!("a map with keys is wanted, not {found}"),
        format!("write `{{{first}: …{more}}}` here; the keys are {}", listed(known.iter().copied())),
    )
}

/// The first words of a text, for a message.
fn shortened(text: &str) -> String {
    let mut words = text.split_whitespace();
    let first: Vec<&str> = words.by_ref().take(6).collect();
    format!("{}{}", first.join(" "), if words.next().is_some() { " …" } else { "" })
}

fn second_handbook(place: Place, first: Place) -> Finding {
    Finding::new(
        Code::BadValue,
        place,
        "there is a handbook file already",
        "a handbook has one file of this kind; delete one of the two",
    )
    .also(first, "the first one")
}

fn missing_key(place: Place, key: &str) -> Finding {
    Finding::new(
        Code::MissingKey,
        place,
        format!("the key `{key}` is missing"),
        format!("add `{key}:` beside this key"),
    )
}

/// The rest of a text behind a `#`.
pub fn cut_off(place: Place) -> Finding {
    Finding::new(
        Code::TextCutOff,
        place,
        "what stands behind the `#` is not read",
        "put the whole text in quotes; a note to yourself begins with `#` and a space",
    )
}

/// A job without a step.
pub fn no_steps(job: &Named) -> Finding {
    Finding::new(
        Code::BadValue,
        job.place,
        format!("there is nothing to do in `{}`", job.value),
        "write under `steps:` what is done, one thing a step",
    )
}

fn wrong_type(place: Place, wanted: &str, found: &str) -> Finding {
    Finding::new(Code::WrongType, place, format!("{wanted} is wanted, not {found}"), format!("write {wanted} here"))
}

fn unknown_word(place: Place, word: &str, known: &[&'static str]) -> Finding {
    let help = format!("use {}", listed(known.iter().copied()));
    Finding::new(Code::UnknownWord, place, format!("`{word}` does not fit here"), help)
}

fn unknown_kind(place: Place, key: &str) -> Finding {
    let kinds = Kind::ALL.map(Kind::key);
    let all = format!("a guide starts with {}", listed(kinds));
    Finding::new(Code::UnknownKind, place, format!("`{key}` is no kind of guide"), did_you_mean(key, kinds, &all))
}

/// Capitals of an empty guide that were to be filled in.
pub fn unfilled(place: Place, capitals: &str) -> Finding {
    Finding::new(
        Code::Unfilled,
        place,
        format!("`{}` is still to be filled in", shortened(capitals)),
        "write what the capitals ask for, here and further down, or take out the key that you do not need",
    )
}

/// A file that is a guide but for its name.
pub fn passed_over(home: Place, name: &str, better: &str) -> Finding {
    Finding::new(
        Code::PassedOver,
        home,
        format!("`{name}` is not read"),
        format!("if it is a guide, rename it to `{better}`; if not, move it out of the folder"),
    )
    .of(name)
}

fn no_handbook(place: Place) -> Finding {
    Finding::new(
        Code::NoHandbook,
        place,
        "the folder has no `handbook.yaml`",
        "add one; `coquille begin DIR` writes a small handbook to copy it from",
    )
}

/// A value that could not be read.
pub fn misread(place: Place, text: &str, misread: &Misread) -> Finding {
    let (code, message) = match misread.kind {
        MisreadKind::Time => (Code::NotATime, format!("`{text}` is no time")),
        MisreadKind::Share => (Code::NotAShare, format!("`{text}` is no share")),
        MisreadKind::UnknownUnit => (Code::UnknownUnit, format!("nobody knows the unit of `{text}`")),
        MisreadKind::WrongDimension => (Code::WrongDimension, format!("`{text}` has a unit of the wrong kind")),
        MisreadKind::Quantity => (Code::NotAQuantity, format!("`{text}` is no number with a unit")),
        MisreadKind::Other => (Code::BadValue, format!("`{text}` means nothing here")),
    };
    Finding::new(code, place, message, misread.help.clone())
}
