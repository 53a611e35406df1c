//! The small values that guides are made of: ids, words, times, shares, and values that may be misread.
//!
//! In: text as written. Out: types that later stages trust. A value that means nothing is kept with its reason ([`Told`]),
//! so that one wrong minute does not take its guide out of every other check.
//! Leaves to others: whether an id exists, whether shares add up (`proof`).

use crate::reckoning::quantity::{Flaw, Minutes, Unreadable};
use crate::source::{MANY, Placed};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Deserializer, SeqAccess, Visitor};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

/// The name by which other guides call a thing: letters, digits and hyphens.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Id(pub String);

impl Id {
    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The id as words for people, for things that were given no title: `tape-off` is "Tape off".
    pub fn spoken(&self) -> String {
        let words = self.0.replace('-', " ");
        let mut letters = words.chars();
        letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
    }
}

impl fmt::Display for Id {
    fn fmt(&self, words: &mut fmt::Formatter<'_>) -> fmt::Result {
        words.write_str(&self.0)
    }
}

/// An id where it stands, be it given there or pointed at.
pub type Named = Placed<Id>;

/// Words in Markdown.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Markdown(pub String);

/// Words for the reader, in Markdown, where they stand.
pub type Prose = Placed<Markdown>;

/// A line of plain words, where it stands.
pub type Line = Placed<String>;

/// Why a value could not be read: what is wrong, in at most ten words, and what to write instead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Misread {
    /// Which finding it makes.
    pub kind: MisreadKind,
    /// What to write instead.
    pub help: String,
}

/// The kinds of misread values.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MisreadKind {
    /// Not a time.
    Time,
    /// Not a share.
    Share,
    /// A unit that nobody knows.
    UnknownUnit,
    /// A unit of another dimension than the place wants.
    WrongDimension,
    /// Not a number with a unit.
    Quantity,
    /// Anything else.
    Other,
}

/// A value as it was written and what it means, or why it means nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told<T> {
    /// As written.
    pub text: String,
    /// What it means.
    pub means: Result<T, Misread>,
}

impl<T> Told<T> {
    /// The value, if it means something.
    pub fn value(&self) -> Option<&T> {
        self.means.as_ref().ok()
    }
}

/// A value as guides write it: a text that means something, or is misread.
pub trait Written: Sized {
    /// What the text means.
    ///
    /// # Errors
    /// When it means nothing: what to write instead.
    fn read(text: &str) -> Result<Self, Misread>;
}

impl<'de, T: Written> Deserialize<'de> for Told<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let means = T::read(&text);
        Ok(Told { text, means })
    }
}

/// One value, or a list of them: a list of one need not be written as a list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Many<T>(pub Vec<T>);

impl<T> Default for Many<T> {
    fn default() -> Self {
        Many(Vec::new())
    }
}

impl<T> std::ops::Deref for Many<T> {
    type Target = [T];
    fn deref(&self) -> &[T] {
        &self.0
    }
}

impl<'a, T> IntoIterator for &'a Many<T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Many<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_newtype_struct(MANY, ManyVisitor(PhantomData))
    }
}

struct ManyVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for ManyVisitor<T> {
    type Value = Many<T>;

    fn expecting(&self, words: &mut fmt::Formatter<'_>) -> fmt::Result {
        words.write_str("a value or a list of values")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Self::Value, A::Error> {
        let mut many = Vec::new();
        while let Some(item) = items.next_element()? {
            many.push(item);
        }
        Ok(Many(many))
    }
}

/// The longest time a guide may state: a thousand hours, in tenths of a minute.
const LONGEST: u32 = 600_000;

impl Written for Minutes {
    fn read(text: &str) -> Result<Self, Misread> {
        match Minutes::parse(text) {
            Ok(minutes) if minutes.tenths <= LONGEST => Ok(minutes),
            Err(Unreadable { flaw: flaw @ Flaw::NotMinutes, .. }) if !text.starts_with('-') => {
                Err(Misread { kind: MisreadKind::Time, help: flaw.help() })
            }
            _ => Err(no_time(text)),
        }
    }
}

/// A plain decimal number in thousandths, exactly; `None` when it is none, or has more than three decimals.
fn thousandths(figures: &str) -> Option<u64> {
    let (whole, part) = figures.split_once('.').unwrap_or((figures, ""));
    let sound = |digits: &str| !digits.is_empty() && digits.bytes().all(|digit| digit.is_ascii_digit());
    if !sound(whole) || part.len() > 3 || (figures.contains('.') && !sound(part)) {
        return None;
    }
    format!("{whole}{part:0<3}").parse().ok()
}

fn no_time(text: &str) -> Misread {
    let help = with_a_point::<Minutes>(text)
        .unwrap_or_else(|| format!("`{text}` is no time: write minutes as `2`, or `30 s`, `2 min`, `1.5 h`, `2 days`"));
    Misread { kind: MisreadKind::Time, help }
}

/// What to write where a comma stands for a decimal point and nothing else is wrong.
fn with_a_point<T: Written>(text: &str) -> Option<String> {
    let (whole, part) = text.split_once(',')?;
    let pointed = format!("{whole}.{part}");
    let mends = !part.contains(',') && T::read(&pointed).is_ok();
    mends.then(|| format!("write a decimal point, not a comma: `{pointed}`"))
}

/// How much of a symptom's cases a cause accounts for, in hundredths of a percent: 1 to 10,000.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Share(pub u32);

impl Written for Share {
    fn read(text: &str) -> Result<Self, Misread> {
        let figures = text.strip_suffix('%').map_or(text, str::trim_end);
        let share = thousandths(figures).filter(|value| value % 10 == 0).map(|value| value / 10);
        match share {
            Some(share) if (1..=10_000).contains(&share) => Ok(Share(share as u32)),
            _ => Err(no_share(text)),
        }
    }
}

fn no_share(text: &str) -> Misread {
    let help = match (text.trim_start().starts_with('-'), with_a_point::<Share>(text)) {
        (true, _) => "a share cannot be negative: write how many in 100 cases it is, from 0.01 to 100".to_owned(),
        (_, Some(help)) => help,
        _ => format!("`{text}` is no share: write how many in 100 cases it is, from 0.01 to 100"),
    };
    Misread { kind: MisreadKind::Share, help }
}

macro_rules! schema_of_text {
    ($type:ty, $name:literal, $description:literal $(, $key:literal : $value:expr)*) => {
        impl JsonSchema for $type {
            fn schema_name() -> Cow<'static, str> { $name.into() }
            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                json_schema!({ "description": $description $(, $key: $value)* })
            }
        }
    };
}

schema_of_text!(Id, "Id", "The name by which other guides call a thing: letters, digits and hyphens.",
    "type": "string", "pattern": "^[A-Za-z0-9]+(-[A-Za-z0-9]+)*$");
schema_of_text!(Markdown, "Words", "Words for the reader, in Markdown. Point at another guide or thing with `<part:contact-spring>` or `[words](procedure:rewire-foil)`.",
    "type": ["string", "number", "boolean"], "pattern": "\\S");
schema_of_text!(Told<Minutes>, "Time", "A time: `2` or `2 min`, `30 s`, `1.5 h`, `2 days`.", "type": ["string", "number"]);
schema_of_text!(Told<Share>, "Share", "How many in 100 cases, with two decimals at most.", "type": ["string", "number"]);

impl<T: JsonSchema> JsonSchema for Many<T> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        format!("Many_{}", T::schema_name()).into()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let one = generator.subschema_for::<T>();
        json_schema!({ "anyOf": [one, { "type": "array", "items": one }] })
    }
}

impl<T: JsonSchema> JsonSchema for Placed<T> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        generator.subschema_for::<T>()
    }
}

impl<T: JsonSchema> JsonSchema for crate::source::Tolerant<T> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        generator.subschema_for::<T>()
    }
}

/// For structs that may be written as a bare text: lets the schema accept both forms.
pub fn or_text(schema: &mut Schema) {
    let long = schema.clone();
    *schema = json_schema!({ "anyOf": [{ "type": ["string", "number"] }, long] });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_whole_tenths_of_a_minute() {
        let tenths = |text: &str| Minutes::read(text).ok().map(|minutes| minutes.tenths);
        assert_eq!(tenths("2"), Some(20));
        assert_eq!(tenths("2 min"), Some(20));
        assert_eq!(tenths("30 s"), Some(5));
        assert_eq!(tenths("1.5 h"), Some(900));
        assert_eq!(tenths("2 days"), Some(28_800));
        assert_eq!(no_time("1,5").help, "write a decimal point, not a comma: `1.5`");
        assert_eq!(no_time("1,5 h").help, "write a decimal point, not a comma: `1.5 h`");
        assert!(no_time("1,5,2").help.contains("is no time"));
        for bad in ["", "soon", "-2", "1.2.3", "2 moons", ".5", "5.", "99999999999999999999", "1001 h", "7 s", "2 mm"] {
            assert_eq!(tenths(bad), None, "{bad}");
        }
    }

    #[test]
    fn shares_have_two_decimals_and_lie_between_nought_and_a_hundred() {
        let hundredths = |text: &str| Share::read(text).ok().map(|share| share.0);
        assert_eq!(hundredths("30"), Some(3000));
        assert_eq!(hundredths("0.25 %"), Some(25));
        assert_eq!(hundredths("100"), Some(10_000));
        for bad in ["0", "-3", "100.01", "0.001", "many", ""] {
            assert_eq!(hundredths(bad), None, "{bad}");
        }
    }
}
