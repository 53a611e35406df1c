//! The demo handbook's guides as plain YAML, for tests about what they say rather than how the program reads them.
//!
//! In: the folder `guides/`. Out: each guide with its kind, and every text in it with the key that it stands under.
//! Read by a YAML library that the program does not read guides with.

#![allow(dead_code, reason = "each test file that takes this module uses a part of it")]

use serde_yaml::Value;
use std::path::Path;

/// A guide of the demo handbook.
pub struct Guide {
    /// Its path inside `guides/`.
    pub file: String,
    /// What it says.
    pub tree: Value,
}

/// A text of a guide.
pub struct Text<'g> {
    /// The guide's file.
    pub file: &'g str,
    /// The key that the text stands under; an item of a list stands under the list's key.
    pub key: &'g str,
    /// The text.
    pub text: &'g str,
}

/// All guides in this folder of `guides/`, by the names of their files.
pub fn guides(folder: &str) -> Vec<Guide> {
    let root = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/guides"));
    let files = walkdir::WalkDir::new(root.join(folder)).sort_by_file_name().into_iter().map(Result::unwrap);
    let yaml = files.filter(|entry| entry.path().extension().is_some_and(|it| it == "yaml"));
    let all: Vec<_> = yaml
        .map(|entry| Guide {
            file: entry.path().strip_prefix(root).unwrap().to_string_lossy().into_owned(),
            tree: serde_yaml::from_str(&std::fs::read_to_string(entry.path()).unwrap()).unwrap(),
        })
        .filter(|guide: &Guide| guide.tree.get("translation").is_none())
        .collect();
    assert!(!all.is_empty(), "no guides in {folder}");
    all
}

impl Guide {
    /// All its texts, in their order.
    pub fn texts(&self) -> Vec<Text<'_>> {
        let mut out = Vec::new();
        self.collect(&self.tree, "", &mut out);
        out
    }

    /// A value by its key, if it is a text.
    pub fn text(&self, key: &str) -> Option<&str> {
        self.tree.get(key)?.as_str()
    }

    fn collect<'g>(&'g self, node: &'g Value, key: &'g str, out: &mut Vec<Text<'g>>) {
        match node {
            Value::String(text) => out.push(Text { file: &self.file, key, text }),
            Value::Sequence(items) => items.iter().for_each(|item| self.collect(item, key, out)),
            Value::Mapping(entries) => {
                for (key, value) in entries {
                    self.collect(value, key.as_str().unwrap_or_default(), out);
                }
            }
            _ => {}
        }
    }
}

/// The items of a list under this key; nothing if there is none, and the value itself if it stands without a list.
pub fn items<'v>(node: &'v Value, key: &str) -> Vec<&'v Value> {
    match node.get(key) {
        None => Vec::new(),
        Some(Value::Sequence(items)) => items.iter().collect(),
        Some(one) => vec![one],
    }
}

/// A text as it is read aloud: a link gives the words that it shows, a short link its id, marks of emphasis nothing.
pub fn plain(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(['[', '<', '*']) {
        let (before, from) = rest.split_at(at);
        out.push_str(before);
        let (shown, after) = one_mark(from);
        out.push_str(shown);
        rest = after;
    }
    out + rest
}

/// The words that a mark at the start of the text shows, and what follows it. A mark that is none is shown as it is.
fn one_mark(from: &str) -> (&str, &str) {
    if let Some((words, after)) = from.strip_prefix('[').and_then(|it| it.split_once("](")) {
        return (words, after.split_once(')').map_or("", |(_, after)| after));
    }
    if let Some((link, after)) = from.strip_prefix('<').and_then(|it| it.split_once('>')) {
        return (link.split_once(':').map_or(link, |(_, id)| id), after);
    }
    ("", &from[1..])
}
