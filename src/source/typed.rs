//! From a placed tree to typed values, with every flaw noted and not only the first.
//!
//! In: a [`Node`]. Out: the type asked for, if it could be filled, and the flaws. A serde `Deserializer` on the tree.
//! Leaves to others: which keys there are (`model`). Three wrappers of ours are known by name: [`Placed`] adds the place,
//! [`Tolerant`] survives a broken item of a list, and `Many` takes one value for a list of one.

use super::flaw::{Flaw, What};
use super::place::{FileId, Place};
use super::tree::{Key, Node, NodeKind};
use serde::de::value::{SeqDeserializer, StrDeserializer};
use serde::de::{
    self, DeserializeOwned, DeserializeSeed, Deserializer, IntoDeserializer, MapAccess, SeqAccess, Visitor,
};
use serde::{Deserialize, forward_to_deserialize_any};
use std::cell::RefCell;
use std::fmt;
use std::marker::PhantomData;

/// Fills a type from a tree.
pub fn typed<T: DeserializeOwned>(node: &Node) -> (Option<T>, Vec<Flaw>) {
    let flaws = RefCell::new(Vec::new());
    let filled = T::deserialize(Filler { node, flaws: &flaws });
    (filled.ok(), flaws.into_inner())
}

/// A value with the place where it stood.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Placed<T> {
    /// The value.
    pub value: T,
    /// Where it stood.
    pub place: Place,
}

/// An item of a list that may have failed without taking the list with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Tolerant<T> {
    /// The item.
    Sound(T),
    /// The item failed and the flaws are noted; the value of its first key, so that what points at it is not called unknown.
    Broken(Option<String>),
}

impl<T> Tolerant<T> {
    /// The item, if it is sound.
    pub fn sound(&self) -> Option<&T> {
        match self {
            Tolerant::Sound(item) => Some(item),
            Tolerant::Broken(_) => None,
        }
    }

    /// The name of a broken item, as far as it could be read.
    pub fn broken(&self) -> Option<&str> {
        match self {
            Tolerant::Broken(name) => name.as_deref(),
            Tolerant::Sound(_) => None,
        }
    }
}

pub(crate) const PLACED: &str = "coquille placed";
pub(crate) const TOLERANT: &str = "coquille tolerant";
pub(crate) const MANY: &str = "coquille many";
/// A struct whose serde name begins so may be written as a bare text, which is then the value of its first key.
pub(crate) const SHORT: &str = "short ";

/// Letters of a value that a message shows.
const LONGEST_SHOWN: usize = 20;

type RawPlace = (u32, u32, u32, u32, u32);

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Placed<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_newtype_struct(PLACED, PlacedVisitor(PhantomData))
    }
}

struct PlacedVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for PlacedVisitor<T> {
    type Value = Placed<T>;

    fn expecting(&self, words: &mut fmt::Formatter<'_>) -> fmt::Result {
        words.write_str("a value")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut parts: A) -> Result<Self::Value, A::Error> {
        let raw = parts.next_element::<RawPlace>()?;
        let value = parts.next_element::<T>()?;
        match (raw, value) {
            (Some((file, start, end, line, column)), Some(value)) => {
                let place = Place { file: FileId(file), start, end, line, column };
                Ok(Placed { value, place })
            }
            _ => Err(de::Error::custom("a value without its place")),
        }
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Tolerant<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_newtype_struct(TOLERANT, TolerantVisitor(PhantomData))
    }
}

struct TolerantVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for TolerantVisitor<T> {
    type Value = Tolerant<T>;

    fn expecting(&self, words: &mut fmt::Formatter<'_>) -> fmt::Result {
        words.write_str("an item")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut parts: A) -> Result<Self::Value, A::Error> {
        let name = parts.next_element::<String>()?.filter(|name| !name.is_empty());
        match parts.next_element::<T>() {
            Ok(Some(item)) => Ok(Tolerant::Sound(item)),
            Ok(None) | Err(_) => Ok(Tolerant::Broken(name)),
        }
    }
}

/// Why a value could not be filled. Once noted among the flaws it carries nothing more.
#[derive(Debug)]
enum Failed {
    Because(What),
    Noted,
}

impl fmt::Display for Failed {
    fn fmt(&self, words: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(words, "{self:?}")
    }
}

impl std::error::Error for Failed {}

impl de::Error for Failed {
    fn custom<T: fmt::Display>(message: T) -> Self {
        Failed::Because(What::BadValue(message.to_string()))
    }

    fn invalid_value(_: de::Unexpected<'_>, _: &dyn de::Expected) -> Self {
        Failed::Because(What::BadValue("a number that is too large".to_owned()))
    }

    fn missing_field(field: &'static str) -> Self {
        Failed::Because(What::MissingKey(field.to_owned()))
    }

    fn unknown_variant(word: &str, known: &'static [&'static str]) -> Self {
        Failed::Because(What::UnknownWord { word: word.to_owned(), known: known.to_vec() })
    }
}

struct Filler<'n> {
    node: &'n Node,
    flaws: &'n RefCell<Vec<Flaw>>,
}

impl<'n> Filler<'n> {
    /// Notes a failure at this node, once.
    fn settle<V>(&self, result: Result<V, Failed>) -> Result<V, Failed> {
        result.map_err(|failed| {
            if let Failed::Because(what) = failed {
                self.flaws.borrow_mut().push(Flaw::new(self.place_for(&what), what));
            }
            Failed::Noted
        })
    }

    /// A missing key is shown at the first key of the map that lacks it, not under the whole map.
    fn place_for(&self, what: &What) -> Place {
        match (what, self.node.first_entry()) {
            (What::MissingKey(_), Some((key, _))) => key.place,
            _ => self.node.place,
        }
    }

    fn refuse<V>(&self, wanted: &str) -> Result<V, Failed> {
        let found = self.found();
        self.settle(Err(Failed::Because(What::WrongType { wanted: wanted.to_owned(), found })))
    }

    /// What stands here, in words.
    fn found(&self) -> String {
        match self.node.text() {
            Some(text) if text.chars().count() <= LONGEST_SHOWN => format!("`{text}`"),
            Some(text) => format!("`{}…`", text.chars().take(LONGEST_SHOWN).collect::<String>()),
            None => self.node.described().to_owned(),
        }
    }

    fn number<'de, V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        let read = self.node.text().map(|text| text.parse::<i64>());
        match read {
            Some(Ok(number)) if number >= 0 => self.settle(visitor.visit_u64(number as u64)),
            Some(Ok(number)) => self.settle(visitor.visit_i64(number)),
            _ => self.refuse("a whole number"),
        }
    }

    fn count<'de, V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match self.node.text().map(str::parse::<u64>) {
            Some(Ok(number)) => self.settle(visitor.visit_u64(number)),
            _ => self.refuse("a whole number, 0 or more,"),
        }
    }

    fn items(&self) -> Option<&'n [Node]> {
        match &self.node.kind {
            NodeKind::List(items) => Some(items),
            _ => None,
        }
    }

    fn placed<'de, V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        let parts = Parts { lead: Lead::Place(self.node.place), node: self.node, flaws: self.flaws, given: 0 };
        self.settle(visitor.visit_seq(parts))
    }

    fn tolerant<'de, V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        let name = self.node.first_entry().and_then(|(_, value)| value.text()).unwrap_or("");
        let parts = Parts { lead: Lead::Name(name), node: self.node, flaws: self.flaws, given: 0 };
        self.settle(visitor.visit_seq(parts))
    }

    fn many<'de, V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        let items = self.items().unwrap_or(std::slice::from_ref(self.node));
        self.settle(visitor.visit_seq(Items { items: items.iter(), flaws: self.flaws }))
    }
}

impl<'de> Deserializer<'de> for Filler<'_> {
    type Error = Failed;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match &self.node.kind {
            NodeKind::Nothing => self.settle(visitor.visit_unit()),
            NodeKind::Scalar(text) => self.settle(visitor.visit_str(text)),
            NodeKind::List(items) => self.settle(visitor.visit_seq(Items { items: items.iter(), flaws: self.flaws })),
            NodeKind::Map(_) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match self.node.text() {
            // A caution without words would satisfy whoever looks for one, and warn nobody.
            Some(text) if text.trim().is_empty() => self.settle(Err(Failed::Because(What::WrongType {
                wanted: "a text".into(),
                found: "an empty one".into(),
            }))),
            Some(text) => self.settle(visitor.visit_str(text)),
            None => self.refuse("a text"),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match self.node.text() {
            Some("true" | "yes") => self.settle(visitor.visit_bool(true)),
            Some("false" | "no") => self.settle(visitor.visit_bool(false)),
            _ => self.refuse("yes or no"),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match self.node.kind {
            NodeKind::Nothing => self.settle(visitor.visit_none()),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, Failed> {
        match name {
            PLACED => self.placed(visitor),
            TOLERANT => self.tolerant(visitor),
            MANY => self.many(visitor),
            _ => visitor.visit_newtype_struct(self),
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match self.items() {
            Some(items) => self.settle(visitor.visit_seq(Items { items: items.iter(), flaws: self.flaws })),
            None => self.refuse("a list"),
        }
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        match &self.node.kind {
            NodeKind::Map(entries) => {
                self.settle(visitor.visit_map(Entries { left: entries.iter().collect(), at: 0, flaws: self.flaws }))
            }
            _ => self.refuse("a map with keys"),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        known: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Failed> {
        if let (true, NodeKind::Scalar(_), Some(first)) = (name.starts_with(SHORT), &self.node.kind, known.first()) {
            let entry = (Key { text: (*first).to_owned(), place: self.node.place }, self.node.clone());
            return self.settle(visitor.visit_map(Entries { left: vec![&entry], at: 0, flaws: self.flaws }));
        }
        let NodeKind::Map(entries) = &self.node.kind else {
            let what = What::NoKeys { found: self.found(), known: known.to_vec() };
            return self.settle(Err(Failed::Because(what)));
        };
        let (left, strange): (Vec<_>, Vec<_>) = entries.iter().partition(|(key, _)| known.contains(&key.text.as_str()));
        for (key, _) in strange {
            let what = What::UnknownKey { key: key.text.clone(), known: known.to_vec() };
            self.flaws.borrow_mut().push(Flaw::new(key.place, what));
        }
        self.settle(visitor.visit_map(Entries { left, at: 0, flaws: self.flaws }))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Failed> {
        match self.node.text() {
            Some(text) => self.settle(visitor.visit_enum(IntoDeserializer::<Failed>::into_deserializer(text))),
            None => self.refuse("a word"),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        visitor.visit_unit()
    }

    fn deserialize_i8<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.number(visitor)
    }
    fn deserialize_i16<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.number(visitor)
    }
    fn deserialize_i32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.number(visitor)
    }
    fn deserialize_i64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.number(visitor)
    }
    fn deserialize_u8<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.count(visitor)
    }
    fn deserialize_u16<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.count(visitor)
    }
    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.count(visitor)
    }
    fn deserialize_u64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.count(visitor)
    }
    fn deserialize_char<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.deserialize_str(visitor)
    }
    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.deserialize_str(visitor)
    }
    fn deserialize_identifier<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Failed> {
        self.deserialize_str(visitor)
    }

    forward_to_deserialize_any! { i128 u128 f32 f64 bytes byte_buf unit unit_struct tuple tuple_struct }
}

struct Items<'n> {
    items: std::slice::Iter<'n, Node>,
    flaws: &'n RefCell<Vec<Flaw>>,
}

impl<'de> SeqAccess<'de> for Items<'_> {
    type Error = Failed;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Failed> {
        match self.items.next() {
            Some(node) => seed.deserialize(Filler { node, flaws: self.flaws }).map(Some),
            None => Ok(None),
        }
    }
}

struct Entries<'n> {
    left: Vec<&'n (Key, Node)>,
    at: usize,
    flaws: &'n RefCell<Vec<Flaw>>,
}

impl<'de> MapAccess<'de> for Entries<'_> {
    type Error = Failed;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Failed> {
        let Some((key, _)) = self.left.get(self.at).copied() else { return Ok(None) };
        let node = Node { place: key.place, kind: NodeKind::Scalar(key.text.clone()) };
        seed.deserialize(Filler { node: &node, flaws: self.flaws }).map(Some)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Failed> {
        let Some((_, value)) = self.left.get(self.at).copied() else { return Err(Failed::Noted) };
        self.at += 1;
        seed.deserialize(Filler { node: value, flaws: self.flaws })
    }
}

/// What a wrapper gets before the value itself.
enum Lead<'n> {
    Place(Place),
    Name(&'n str),
}

struct Parts<'n> {
    lead: Lead<'n>,
    node: &'n Node,
    flaws: &'n RefCell<Vec<Flaw>>,
    given: u8,
}

impl<'de> SeqAccess<'de> for Parts<'_> {
    type Error = Failed;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Failed> {
        self.given += 1;
        match (self.given, &self.lead) {
            (1, Lead::Place(place)) => {
                let raw = [place.file.0, place.start, place.end, place.line, place.column];
                seed.deserialize(SeqDeserializer::new(raw.into_iter())).map(Some)
            }
            (1, Lead::Name(name)) => seed.deserialize(StrDeserializer::new(name)).map(Some),
            (2, _) => seed.deserialize(Filler { node: self.node, flaws: self.flaws }).map(Some),
            _ => Ok(None),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{Text, parse};

    #[derive(Debug, Deserialize)]
    struct Cause {
        cause: Placed<String>,
        #[serde(default)]
        share: Option<Placed<u32>>,
    }

    #[derive(Debug, Deserialize)]
    struct Guide {
        causes: Vec<Tolerant<Cause>>,
    }

    fn guide(yaml: &str) -> (Option<Guide>, Vec<Flaw>) {
        let text = Text::new("g.yaml", yaml);
        let (tree, flaws) = parse(FileId(0), &text);
        assert_eq!(flaws, []);
        typed(&tree.unwrap())
    }

    #[test]
    fn every_flaw_of_a_file_is_noted_and_the_sound_items_survive() {
        let (guide, flaws) = guide(
            "causes:\n  - {cause: dirt, share: 3}\n  - {share: 4}\n  - {cause: worn, share: lots}\n  - {cause: loose, colour: red}\n",
        );
        let guide = guide.unwrap();
        let sound: Vec<_> = guide.causes.iter().filter_map(Tolerant::sound).map(|c| c.cause.value.as_str()).collect();
        assert_eq!(sound, ["dirt", "loose"]);
        assert_eq!(guide.causes[2].broken(), Some("worn"));
        let lines: Vec<_> = flaws.iter().map(|flaw| (flaw.place.line, flaw.place.column)).collect();
        assert_eq!(lines, [(3, 6), (4, 26), (5, 20)]);
        assert_eq!(flaws[0].what, What::MissingKey("cause".into()));
        assert!(matches!(&flaws[1].what, What::WrongType { wanted, .. } if wanted == "a whole number, 0 or more,"));
        assert!(matches!(&flaws[2].what, What::UnknownKey { key, .. } if key == "colour"));
    }

    #[test]
    fn a_value_knows_where_it_stood() {
        let (guide, _) = guide("causes:\n  - cause: dirt\n    share: 30\n");
        let guide = guide.unwrap();
        let share = guide.causes[0].sound().unwrap().share.clone().unwrap();
        assert_eq!((share.value, share.place.line, share.place.column), (30, 3, 12));
    }
}
