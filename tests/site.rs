//! The handbook in `site/` is the one that `guides/` make, and the same guides make the same bytes anywhere.

mod site_support;

use site_support::{bound, copied, held, project};
use std::collections::BTreeMap;
use std::sync::LazyLock;

type Tree = BTreeMap<String, Vec<u8>>;

/// What is different between two folders, in words; nothing when they hold the same.
fn differences(found: &Tree, wanted: &Tree) -> Vec<String> {
    let missing = wanted.keys().filter(|name| !found.contains_key(*name)).map(|name| format!("{name} is missing"));
    let foreign =
        found.keys().filter(|name| !wanted.contains_key(*name)).map(|name| format!("{name} belongs to no page"));
    let other = wanted.iter().filter_map(|(name, bytes)| {
        let found = found.get(name).filter(|found| *found != bytes)?;
        Some(format!("{name} differs at {}", first_difference(found, bytes)))
    });
    missing.chain(foreign).chain(other).collect()
}

/// The line of the first difference, as both have it.
fn first_difference(found: &[u8], wanted: &[u8]) -> String {
    let (found, wanted) = (String::from_utf8_lossy(found), String::from_utf8_lossy(wanted));
    let pairs = found.lines().zip(wanted.lines()).enumerate();
    let mut other = pairs.filter(|(_, (found, wanted))| found != wanted);
    match other.next() {
        Some((at, (found, wanted))) => {
            let short = |line: &str| line.chars().take(160).collect::<String>();
            format!("line {}\n      it says   {}\n      should be {}", at + 1, short(found), short(wanted))
        }
        None => "its end: one has more lines than the other".to_owned(),
    }
}

fn agree(found: &Tree, wanted: &Tree, or_else: &str) {
    let differences = differences(found, wanted);
    let first: Vec<&str> = differences.iter().take(12).map(String::as_str).collect();
    assert!(
        differences.is_empty(),
        "{or_else}\n  {} differences, the first of them:\n  - {}",
        differences.len(),
        first.join("\n  - ")
    );
}

/// What the guides make, by two threads.
static FRESH: LazyLock<Tree> = LazyLock::new(|| bound(&project().join("guides"), "2"));

#[test]
fn the_handbook_in_site_is_the_one_that_the_guides_make() {
    let committed = held(&project().join("site"));
    assert!(FRESH.contains_key("index.html"), "a bind writes a front page");
    agree(
        &committed,
        &FRESH,
        "`site/` is not what `guides/` make. `cargo run -- bind` renews it; commit what it changes.",
    );
}

#[test]
fn one_thread_writes_the_same_bytes() {
    agree(&bound(&project().join("guides"), "1"), &FRESH, "The number of threads shows in what is written.");
}

#[test]
fn guides_bound_from_another_path_by_seven_threads_give_the_same_bytes() {
    let elsewhere = tempfile::TempDir::new().expect("a temporary folder");
    let moved = copied(&project().join("guides"), &elsewhere.path().join("a club's own folder/über"));
    agree(&bound(&moved, "7"), &FRESH, "Where the guides are, or the number of threads, shows in what is written.");
}

#[test]
fn a_changed_a_missing_and_a_foreign_file_are_each_told() {
    let tree = |files: &[(&str, &str)]| -> Tree {
        files.iter().map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec())).collect()
    };
    let found = tree(&[("a.html", "one\ntwo"), ("old.html", "")]);
    let wanted = tree(&[("a.html", "one\n2"), ("b.html", "")]);
    let told = differences(&found, &wanted);
    assert_eq!(told[..2], ["b.html is missing".to_owned(), "old.html belongs to no page".to_owned()]);
    assert!(told[2].starts_with("a.html differs at line 2"), "{}", told[2]);
    assert_eq!(differences(&found, &found), Vec::<String>::new());
}
