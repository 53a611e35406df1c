//! Codes of prints: a code changes if and only if what the sheet says does, and a handbook tells what became of an old one.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::handbook::page::{Body, CodeRow, Page};
use coquille::handbook::record::Record;
use coquille::handbook::{Handbook, lay_out, lay_out_since};
use coquille::proof::{Proofed, proof};
use coquille::render::{Theme, render};
use coquille::source::{Folder, Node, NodeKind, read_texts};
use std::collections::BTreeMap;
use std::sync::LazyLock;

static THEME: LazyLock<Theme> = LazyLock::new(|| Theme::with(BTreeMap::new()).unwrap());

/// A small handbook with a sheet of each kind, by the names of its files.
fn club() -> BTreeMap<String, String> {
    let folder = std::path::Path::new("src/cli/begin/club");
    let files = walkdir::WalkDir::new(folder).sort_by_file_name().into_iter().map(Result::unwrap);
    let files = files.filter(|entry| entry.file_type().is_file());
    let name = |path: &std::path::Path| path.strip_prefix(folder).unwrap().to_string_lossy().replace('\\', "/");
    files.map(|entry| (name(entry.path()), std::fs::read_to_string(entry.path()).unwrap())).collect()
}

fn folder(texts: &BTreeMap<String, String>) -> Folder {
    read_texts(texts.iter().map(|(name, text)| (name.as_str(), text.as_str())))
}

fn proofed(folder: &Folder) -> Option<Proofed> {
    Some(proof(folder)).filter(|proofed| proofed.errors() == 0)
}

/// The code of each sheet with what is printed on it.
fn sheets(texts: &BTreeMap<String, String>) -> Option<BTreeMap<String, (String, String)>> {
    let folder = folder(texts);
    let handbook = lay_out(&proofed(&folder)?, &folder);
    let sheets = |pages: &[Page]| -> Vec<(String, String)> {
        let sheets = pages.iter().filter(|page| matches!(page.body, Body::Sheet(_)));
        sheets.map(|page| (page.address.clone(), page.code.clone())).collect()
    };
    let codes = sheets(&handbook.pages);
    let files = render(handbook, &THEME).unwrap();
    let printed = |address: &str| printed(std::str::from_utf8(&files[address]).unwrap());
    Some(codes.into_iter().map(|(address, code)| (address.clone(), (code, printed(&address)))).collect())
}

/// What is printed: the words of the sheet with its boxes and blanks, without its code and the edition's label.
fn printed(html: &str) -> String {
    let sheets = html.split("<article").skip(1);
    let html: String =
        sheets.map(|sheet| &sheet[..sheet.rfind("<dl class=\"title-block").unwrap_or(sheet.len())]).collect();
    let html = html.replace("<span class=\"box\">", " ☐ ").replace("<span class=\"blank\">", " ____ ");
    let mut words = String::new();
    for (number, part) in html.split('<').enumerate() {
        let text = if number == 0 { part } else { part.split_once('>').map_or("", |(_, text)| text) };
        words.push_str(text);
        words.push(' ');
    }
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Every text and number of a guide, by where it stands.
fn scalars(node: &Node, found: &mut Vec<std::ops::Range<usize>>) {
    match &node.kind {
        NodeKind::Scalar(_) => found.push(node.place.bytes()),
        NodeKind::List(items) => items.iter().for_each(|item| scalars(item, found)),
        NodeKind::Map(entries) => entries.iter().for_each(|(_, value)| scalars(value, found)),
        NodeKind::Nothing => {}
    }
}

/// Another value of the same kind.
fn other(value: &str) -> String {
    match value.parse::<u32>() {
        Ok(number) => (number + 1).to_string(),
        Err(_) => match value.strip_suffix(['"', '\'']) {
            Some(inner) => format!("{inner}s{}", &value[inner.len()..]),
            None => format!("{}s", value.trim_end()),
        },
    }
}

/// Edits every text and number of the files that are `edited`: how many codes changed and how many were kept, each with its words.
fn codes_and_words_change_together(club: &BTreeMap<String, String>, edited: impl Fn(&str) -> bool) -> (usize, usize) {
    let before = sheets(club).unwrap();
    let (mut changed, mut kept) = (0, 0);
    let read = folder(club);
    for (file, tree) in &read.trees {
        let name = &read.texts.get(*file).unwrap().name;
        let mut places = Vec::new();
        scalars(tree, &mut places);
        for place in places.into_iter().filter(|_| edited(name)) {
            let mut edited = club.clone();
            let text = edited.get_mut(name).unwrap();
            let value = other(&text[place.clone()]);
            text.replace_range(place, &value);
            let Some(after) = sheets(&edited) else { continue };
            for (address, (code, words)) in &before {
                let Some((new_code, new_words)) = after.get(address) else { continue };
                assert_eq!(
                    code == new_code,
                    words == new_words,
                    "{address}, `{value}` in {name}:\n{words}\n{new_words}"
                );
                if code == new_code { kept += 1 } else { changed += 1 }
            }
        }
    }
    (changed, kept)
}

#[test]
fn a_code_changes_if_and_only_if_what_the_sheet_says_does() {
    let club = club();
    assert!(sheets(&club).unwrap().len() >= 4);
    let (changed, kept) = codes_and_words_change_together(&club, |_| true);
    assert!(changed > 25 && kept > 100, "{changed} changed, {kept} kept: the edits show nothing");
}

#[test]
fn so_does_the_code_of_a_queue() {
    let checks = "checks/cords-before-training.yaml";
    let mut club = edited(&club(), checks, "minutes: 3\n", "minutes: 3\nsheet: queue\n");
    club =
        edited(&club, checks, "    limit: cord-apart\n", "    limit: cord-apart\n    with: ohmmeter\n    pieces: 2\n");
    // The stores and a job lend it names.
    let (changed, kept) =
        codes_and_words_change_together(&club, |name| [checks, "jobs/spread-pins.yaml"].contains(&name));
    assert!(changed > 8 && kept > 20, "{changed} changed, {kept} kept: the edits show nothing");
}

fn bound(texts: &BTreeMap<String, String>, since: Option<&Record>) -> Handbook {
    let folder = folder(texts);
    let proofed = proofed(&folder).unwrap();
    since.map_or_else(|| lay_out(&proofed, &folder), |earlier| lay_out_since(&proofed, &folder, earlier))
}

fn edited(texts: &BTreeMap<String, String>, file: &str, old: &str, new: &str) -> BTreeMap<String, String> {
    let mut texts = texts.clone();
    let text = texts.get_mut(file).unwrap();
    assert!(text.contains(old), "{old}");
    *text = text.replacen(old, new, 1);
    texts
}

fn code(handbook: &Handbook, address: &str) -> String {
    handbook.pages.iter().find(|page| page.address == address).unwrap().code.clone()
}

fn row<'h>(handbook: &'h Handbook, code: &str) -> Option<&'h CodeRow> {
    let rows = handbook.pages.iter().find_map(|page| match &page.body {
        Body::Prints(prints) => Some(&prints.rows),
        _ => None,
    });
    rows.unwrap().iter().find(|row| row.code == code)
}

const SHEET: &str = "sheets/splint-cord.html";
const JOB: &str = "jobs/splint-cord.yaml";

#[test]
fn a_code_is_current_then_older_then_withdrawn() {
    let first = club();
    let one = bound(&first, None);
    let old = code(&one, SHEET);
    assert_eq!(row(&one, &old).unwrap().state, "current");
    assert_eq!(row(&one, "33333333"), None, "not ours");

    let title = first[JOB].lines().find_map(|line| line.strip_prefix("title: ")).unwrap().to_owned();
    let second = edited(&first, JOB, &title, "Splint it with a new title");
    let two = bound(&second, Some(&Record::read(&one.record.bytes()).unwrap()));
    let older = row(&two, &old).unwrap();
    assert_eq!(older.state, "older");
    let said: Vec<&str> = older.differences.iter().flat_map(|one| &one.was).map(|line| line.text.as_str()).collect();
    assert!(said.contains(&title.trim_matches('"')), "{said:?}");
    assert_ne!(code(&two, SHEET), old);
    let again: Vec<&str> =
        two.recast.iter().flat_map(|step| &step.changes).map(|change| change.address.as_str()).collect();
    assert!(again.contains(&SHEET));

    let handbook = format!(
        "{}\nwithdrawn:\n  - {{code: {old}, because: It was wrong., instead: splint-cord}}\n",
        second["handbook.yaml"]
    );
    let third = second.into_iter().chain([("handbook.yaml".to_owned(), handbook)]).collect();
    let three = bound(&third, Some(&two.record));
    let withdrawn = row(&three, &old).unwrap();
    assert_eq!((withdrawn.state, withdrawn.because.as_deref()), ("withdrawn", Some("It was wrong.")));
    assert!(three.pages.iter().any(|page| page.address == "notice.html"));
}

#[test]
fn codes_of_two_editions_ago_are_still_known_and_tell_all_that_changed() {
    let first = club();
    let one = bound(&first, None);
    let old = code(&one, SHEET);
    let title = first[JOB].lines().find_map(|line| line.strip_prefix("title: ")).unwrap().to_owned();
    let second = edited(&first, JOB, &title, "Another title");
    let two = bound(&second, Some(&one.record));
    let third = edited(&second, JOB, "Another title", "A third title");
    let three = bound(&third, Some(&two.record));
    let older = row(&three, &old).unwrap();
    let now: Vec<&str> = older.differences.iter().flat_map(|one| &one.now).map(|line| line.text.as_str()).collect();
    assert!(now.contains(&"Another title") && now.contains(&"A third title"), "{now:?}");
    let back = bound(&first, Some(&three.record));
    assert_eq!(row(&back, &old).unwrap().state, "current", "what was taken back is current again");
}

#[test]
fn a_second_bind_of_the_same_guides_changes_nothing() {
    let club = club();
    let one = bound(&club, None);
    let two = bound(&club, Some(&one.record));
    assert_eq!(two.recast, None);
    assert_eq!(two.record, one.record);
}

#[test]
fn a_record_that_was_meddled_with_is_refused_in_words() {
    assert!(Record::read(b"{").unwrap_err().starts_with("cannot be made out"));
    assert!(Record::read(br#"{"format": 9, "edition": "", "pages": {}}"#).unwrap_err().contains("format 9"));
}
