//! What a handbook with an `https` address has besides: a manifest and a worker, so that a phone keeps it for when there is no net.
//!
//! In: the files of the folder. Out: three more. Nothing of it is asked for when a page is opened from disk: the script that asks
//! looks at the address first.

use serde_json::json;
use std::collections::BTreeMap;

/// The worker's address: at the top, since a worker rules only what stands below it.
const WORKER: &str = "offline-worker.js";

const WORKER_SAYS: &str = include_str!("offline-worker.js");

/// Adds the manifest, which shows the theme's icon, and the worker, which names every file of the folder.
pub fn online(title: &str, language: &str, files: &mut BTreeMap<String, Vec<u8>>) {
    let manifest = json!({
        "name": title,
        "short_name": title,
        "lang": language,
        "start_url": "index.html",
        "scope": "./",
        "display": "minimal-ui",
        "icons": [{ "src": "look/icon.svg", "type": "image/svg+xml", "sizes": "any" }],
    });
    files.insert("handbook.webmanifest".to_owned(), format!("{manifest:#}\n").into_bytes());
    let worker = worker(files);
    files.insert(WORKER.to_owned(), worker.into_bytes());
}

/// The worker: a changed file gives it another edition, and so the phone fetches anew.
fn worker(files: &BTreeMap<String, Vec<u8>>) -> String {
    let mut hasher = blake3::Hasher::new();
    for (name, bytes) in files {
        hasher.update(name.as_bytes()).update(&[0]).update(blake3::hash(bytes).as_bytes());
    }
    let edition = &hasher.finalize().to_hex()[..16];
    let names: Vec<&String> = files.keys().collect();
    format!("const EDITION = {};\nconst FILES = {};\n{WORKER_SAYS}", json!(edition), json!(names))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn made(text: &str) -> String {
        let mut files = BTreeMap::from([("index.html".to_owned(), text.as_bytes().to_vec())]);
        online("Club", "en", &mut files);
        String::from_utf8_lossy(&files[WORKER]).into_owned()
    }

    #[test]
    fn the_worker_keeps_every_file_but_itself_and_changes_with_them() {
        let worker = made("a");
        assert!(worker.contains("[\"handbook.webmanifest\",\"index.html\"]"), "{worker}");
        assert_ne!(worker, made("b"));
        assert_eq!(worker, made("a"));
    }
}
