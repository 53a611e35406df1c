//! The search index as a classic script: `file://` lets pages have that, and nothing else.

use super::inside::Inside;
use super::words::Words;
use crate::handbook::{Entry, Handbook};
use serde_json::{Map, Value, json};

/// Words of an entry's text that are kept: enough to be found by, little enough to be carried.
const MOST_WORDS: usize = 60;

/// The script.
pub fn index(handbook: &Handbook, words: &Words, inside: &Inside) -> Vec<u8> {
    let pages: Vec<Value> = handbook.search.iter().map(|entry| page(entry, words, inside)).collect();
    let index = json!({ "pages": pages, "names": names(handbook) });
    // `<` is not a sign that a script in a file needs, and a reader who opens the file as HTML is not fooled.
    let text = index.to_string().replace('<', "\\u003c");
    format!("window.searchIndex = {text};\n").into_bytes()
}

fn page(entry: &Entry, words: &Words, inside: &Inside) -> Value {
    let text: Vec<&str> = entry.says.split_whitespace().take(MOST_WORDS).collect();
    json!({
        "href": inside.address(&entry.address),
        "title": entry.title,
        "kind": words.say(entry.kind),
        "about": "",
        "also": entry.also.join(", "),
        "text": text.join(" "),
    })
}

/// Other names of words, so that what people say elsewhere finds what is said here.
fn names(handbook: &Handbook) -> Value {
    let mut names = Map::new();
    let words = handbook.search.iter().filter(|entry| entry.kind == "kind-word");
    for entry in words {
        for other in &entry.also {
            let known = names.entry(other.to_lowercase()).or_insert_with(|| json!([]));
            if let Some(list) = known.as_array_mut() {
                list.push(json!(entry.title));
            }
        }
    }
    Value::Object(names)
}
