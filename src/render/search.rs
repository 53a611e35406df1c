//! The search index as a classic script: `file://` lets pages have that, and nothing else.

use super::words::Words;
use crate::handbook::Entry;
use serde_json::{Map, Value, json};

/// Words of an entry's text that are kept: enough to be found by, little enough to be carried.
const MOST_WORDS: usize = 60;

/// The script. `lead` says where an entry's address leads; an entry that leads nowhere is left out.
pub fn index(entries: &[Entry], words: &Words, lead: &dyn Fn(&str) -> Option<String>) -> Vec<u8> {
    let pages: Vec<Value> =
        entries.iter().filter_map(|entry| Some(page(entry, words, lead(&entry.address)?))).collect();
    let index = json!({ "pages": pages, "names": names(entries) });
    // `<` is not a sign that a script in a file needs, and a reader who opens the file as HTML is not fooled.
    let text = index.to_string().replace('<', "\\u003c");
    format!("window.searchIndex = {text};\n").into_bytes()
}

fn page(entry: &Entry, words: &Words, href: String) -> Value {
    let text: Vec<&str> = entry.says.split_whitespace().take(MOST_WORDS).collect();
    json!({
        "href": href,
        "title": if entry.title.is_empty() { words.say(entry.kind) } else { entry.title.clone() },
        "kind": words.say(entry.kind),
        "about": entry.about,
        "also": entry.also.join(", "),
        "text": if text.is_empty() { own_words(entry.kind, words) } else { text.join(" ") },
    })
}

/// What a page of the handbook itself says at its head.
fn own_words(kind: &str, words: &Words) -> String {
    let lead = match kind {
        "kind-prints" => "prints-lead",
        "kind-juniors" => "juniors-lead",
        "kind-sheets" => "sheets-lead",
        "kind-practices" => "practice-lead",
        "kind-lamps" => "lamps-mean",
        _ => return String::new(),
    };
    words.say(lead)
}

/// Other names of words, so that what people say elsewhere finds what is said here.
fn names(entries: &[Entry]) -> Value {
    let mut names = Map::new();
    let words = entries.iter().filter(|entry| entry.kind == "kind-word");
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
