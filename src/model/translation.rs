//! A guide in another language: a file beside it that repeats its ids and gives other words.
//!
//! In: the trees of a folder. Out: [`Translation`]s, and the tree of a guide with another language's words in it.
//! Leaves to others: filling the guide (`fill`), how a flaw is worded (`proof`).
//! Promise: a translation changes words and nothing else; a word that it lacks stays as the guide has it.

use super::{Kind, code_of, typed_code};
use crate::source::{FileId, Flaw, Key, Node, NodeKind, Place, Placed, What};

/// Keys whose values are words for people, and the files of pictures, which may have words in them. Everything else must be as the
/// guide has it, or be left out.
pub const WORDS: [&str; 34] = [
    "title",
    "says",
    "for",
    "holds",
    "ask",
    "do",
    "short",
    "learner",
    "why",
    "closing",
    "next",
    "done",
    "heading",
    "by feel",
    "wait for",
    "note",
    "not when",
    "substitute",
    "how",
    "at",
    "danger",
    "warning",
    "caution",
    "notice",
    "hazards",
    "alt",
    "caption",
    "because",
    "read",
    "quantity",
    "also",
    "steps",
    "you can",
    "file",
];

/// A file that begins with `translation:`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Translation {
    /// The guide that it translates.
    pub of: String,
    /// Where that is said.
    pub place: Place,
    /// Its language, such as `fr`.
    pub language: String,
    /// The file.
    pub file: FileId,
    /// The code of the guide's words that it was made from, if it says so: `as of: 3467 C9FH`.
    pub as_of: Option<Placed<String>>,
    /// Its other keys.
    pub words: Vec<(Key, Node)>,
}

/// What a translation lacks: where the guide has the words, and the key that they stand under.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Untranslated {
    /// Where the guide has it.
    pub place: Place,
    /// The key.
    pub key: String,
}

/// Whether a tree is a translation.
pub fn is_translation(tree: &Node) -> bool {
    tree.first_entry().is_some_and(|(key, _)| key.text == "translation")
}

/// Reads a tree that is one.
pub fn translation(file: FileId, tree: &Node, flaws: &mut Vec<Flaw>) -> Option<Translation> {
    let NodeKind::Map(entries) = &tree.kind else { return None };
    let [(_, of), rest @ ..] = &entries[..] else { return None };
    let language = rest.iter().find(|(key, _)| key.text == "language");
    let Some((_, language)) = language else {
        flaws.push(Flaw::new(of.place, What::MissingKey("language".into())));
        return None;
    };
    let (Some(guide), Some(code)) = (of.text(), language.text().filter(|code| is_language(code))) else {
        flaws.push(Flaw::new(language.place, What::NoLanguage(language.text().unwrap_or("").to_owned())));
        return None;
    };
    let as_of = rest.iter().find(|(key, _)| key.text == "as of").map(|(_, code)| code);
    let as_of = as_of.map(|code| Placed { value: code.text().unwrap_or("").to_owned(), place: code.place });
    let words = rest.iter().filter(|(key, _)| !OWN.contains(&key.text.as_str())).cloned().collect();
    Some(Translation { of: guide.to_owned(), place: of.place, language: code.to_owned(), file, as_of, words })
}

/// Keys that say something of the translation itself.
const OWN: [&str; 2] = ["language", "as of"];

/// The code of a guide's words: another one as soon as there is something else to translate.
pub fn code_of_words(guide: &Node) -> String {
    let mut hash = blake3::Hasher::new();
    hash_words("", guide, &mut hash);
    code_of(hash.finalize().as_bytes())
}

fn hash_words(key: &str, value: &Node, hash: &mut blake3::Hasher) {
    match &value.kind {
        NodeKind::Scalar(text) if key != "file" && WORDS.contains(&key) => {
            // Neither can hold a zero byte, so no two guides give the same bytes.
            hash.update(key.as_bytes()).update(&[0]).update(text.as_bytes()).update(&[0]);
        }
        NodeKind::List(items) => items.iter().for_each(|item| hash_words(key, item, hash)),
        NodeKind::Map(entries) if key != "accepts" => {
            let mut entries: Vec<&(Key, Node)> = entries.iter().collect();
            // In which order keys are written says nothing.
            entries.sort_by(|(one, _), (other, _)| one.text.cmp(&other.text));
            entries.into_iter().for_each(|(key, value)| hash_words(&key.text, value, hash));
        }
        _ => {}
    }
}

/// The shape of a language tag (BCP 47, RFC 5646) as a folder and a message file can be named after it: two or three small letters, then
/// parts of up to eight letters and digits.
pub fn is_language(tag: &str) -> bool {
    let mut parts = tag.split('-');
    let language = parts.next().unwrap_or_default();
    matches!(language.len(), 2 | 3)
        && language.bytes().all(|letter| letter.is_ascii_lowercase())
        && parts.all(|part| (1..=8).contains(&part.len()) && part.bytes().all(|letter| letter.is_ascii_alphanumeric()))
}

/// The id of the guide that a tree holds.
pub fn guide_id(tree: &Node) -> Option<&str> {
    let (key, id) = tree.first_entry()?;
    Kind::of(&key.text)?;
    id.text()
}

/// A translation of words that the guide no longer has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outdated {
    /// Where the translation says what it was made from.
    pub place: Place,
    /// The guide.
    pub of: String,
    /// The code of its words now.
    pub now: String,
}

/// Whether a translation says that it was made from other words than the guide's.
pub fn outdated(guide: &Node, translation: &Translation) -> Option<Outdated> {
    let as_of = translation.as_of.as_ref()?;
    let now = code_of_words(guide);
    let same = typed_code(&as_of.value).as_ref() == Some(&now);
    (!same).then(|| Outdated { place: as_of.place, of: translation.of.clone(), now })
}

/// What came of laying a translation over its guide.
#[derive(Debug, Clone, Default)]
pub struct Laid {
    /// What the translation says that the guide has no place for, or must not change.
    pub flaws: Vec<Flaw>,
    /// What it does not say.
    pub untranslated: Vec<Untranslated>,
}

/// The guide's tree with the translation's words.
pub fn overlaid(guide: &Node, translation: &Translation) -> (Node, Laid) {
    let mut laid = Laid::default();
    let over = Node { place: translation.place, kind: NodeKind::Map(translation.words.clone()) };
    let tree = laid.map(guide, &over);
    (tree, laid)
}

impl Laid {
    fn node(&mut self, key: &str, guide: &Node, over: &Node) -> Node {
        match (&guide.kind, &over.kind) {
            (NodeKind::Map(_), NodeKind::Map(_)) => self.map(guide, over),
            _ if WORDS.contains(&key) && is_words(guide) => self.words(guide, over),
            (NodeKind::List(guides), NodeKind::List(overs)) => self.list(key, guide, guides, overs),
            (NodeKind::Scalar(_), NodeKind::Map(entries)) if names(entries, guide) => over.clone(),
            (one, other) if one == other => guide.clone(),
            // A list of one may be written without the list.
            (NodeKind::List(guides), _) => self.list(key, guide, guides, std::slice::from_ref(over)),
            _ => {
                self.flaws.push(Flaw::new(over.place, What::NotWords(key.to_owned())));
                guide.clone()
            }
        }
    }

    /// Words for words; a list of words may be longer or shorter in another language.
    fn words(&mut self, guide: &Node, over: &Node) -> Node {
        if is_words(over) {
            return over.clone();
        }
        self.flaws
            .push(Flaw::new(over.place, What::WrongType { wanted: "words".into(), found: over.described().into() }));
        guide.clone()
    }

    fn map(&mut self, guide: &Node, over: &Node) -> Node {
        let (NodeKind::Map(entries), NodeKind::Map(overs)) = (&guide.kind, &over.kind) else { return guide.clone() };
        for (key, _) in overs.iter().filter(|(key, _)| !entries.iter().any(|(own, _)| own.text == key.text)) {
            let known: Vec<String> = entries.iter().map(|(own, _)| own.text.clone()).collect();
            self.flaws.push(Flaw::new(key.place, What::NothingToTranslate { named: key.text.clone(), known }));
        }
        let laid = entries.iter().map(|(key, value)| {
            let other = overs.iter().find(|(own, _)| own.text == key.text);
            let value = match other {
                Some((_, other)) => self.node(&key.text, value, other),
                None => self.kept(&key.text, value),
            };
            (key.clone(), value)
        });
        Node { place: guide.place, kind: NodeKind::Map(laid.collect()) }
    }

    /// Entries with an id meet by their id; others, such as steps, by their number.
    fn list(&mut self, key: &str, whole: &Node, guides: &[Node], overs: &[Node]) -> Node {
        let mut laid = Vec::new();
        for (at, guide) in guides.iter().enumerate() {
            let other = overs.iter().enumerate().find(|(number, over)| match (id_of(key, guide), id_of(key, over)) {
                (Some(own), Some(other)) => own == other,
                _ => *number == at,
            });
            laid.push(match other {
                Some((_, other)) => self.node(key, guide, other),
                None => self.kept(key, guide),
            });
        }
        for (at, over) in overs.iter().enumerate() {
            let met = id_of(key, over)
                .map_or(at < guides.len(), |id| guides.iter().any(|guide| id_of(key, guide) == Some(id)));
            if !met {
                let known: Vec<String> =
                    guides.iter().filter_map(|guide| id_of(key, guide)).map(str::to_owned).collect();
                let named = id_of(key, over).map_or_else(|| format!("entry {}", at + 1), str::to_owned);
                self.flaws.push(Flaw::new(over.place, What::NothingToTranslate { named, known }));
            }
        }
        Node { place: whole.place, kind: NodeKind::List(laid) }
    }

    /// What the translation leaves as it is, with a note of the words in it.
    fn kept(&mut self, key: &str, value: &Node) -> Node {
        match &value.kind {
            NodeKind::Scalar(text)
                if key != "file" && WORDS.contains(&key) && text.chars().any(char::is_alphabetic) =>
            {
                self.untranslated.push(Untranslated { place: value.place, key: key.to_owned() });
            }
            NodeKind::List(items) if key != "also" => {
                for item in items {
                    self.kept(key, item);
                }
            }
            // Why a finding is accepted is for those who write the guides.
            NodeKind::Map(entries) if key != "accepts" => {
                for (key, value) in entries {
                    self.kept(&key.text, value);
                }
            }
            _ => {}
        }
        value.clone()
    }
}

/// A text, or a list of texts.
fn is_words(node: &Node) -> bool {
    match &node.kind {
        NodeKind::Scalar(_) => true,
        NodeKind::List(items) => items.iter().all(|item| matches!(item.kind, NodeKind::Scalar(_))),
        _ => false,
    }
}

/// The id of an entry: the value of its first key when that is no word for people, or the entry itself when it is a
/// bare id.
fn id_of<'n>(key: &str, node: &'n Node) -> Option<&'n str> {
    match &node.kind {
        NodeKind::Scalar(text) => Some(text.as_str()).filter(|_| !WORDS.contains(&key)),
        _ => {
            node.first_entry().filter(|(first, _)| !WORDS.contains(&first.text.as_str())).and_then(|(_, id)| id.text())
        }
    }
}

/// Whether a map with an id stands for the bare id in the guide: `{item: foil, title: Fleuret}` for `foil`.
fn names(entries: &[(Key, Node)], bare: &Node) -> bool {
    entries.first().is_some_and(|(_, id)| id.text() == bare.text())
}
