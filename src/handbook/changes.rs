//! What changed since an earlier edition: which pages, and what they said before.
//!
//! In: the record of the earlier handbook and that of today. Out: the step between the two, and the page *What changed*.
//! Leaves to others: where an earlier record is read from (`source`).

use super::page::{Body, ChangeRow, Changes, DifferenceSaid, Link, Page, SaidLine, StepRow};
use super::record::{Change, Difference, Recast, Record, Recorded};
use super::saying::Said;
use super::{addresses, frame};
use crate::model::messages;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// Longest comparison that is made line by line, in lines times lines; beyond it a page is told as replaced.
const LARGEST: usize = 4_000_000;
/// Most differences that are told of a page.
const MOST: usize = 60;

/// What changed between two records; nothing if no page did.
pub fn step(before: &Record, today: &Record) -> Option<Recast> {
    let addresses: BTreeSet<&String> = before.pages.keys().chain(today.pages.keys()).collect();
    let changes: Vec<Change> = addresses
        .into_iter()
        .filter_map(|address| change(address, before.pages.get(address), today.pages.get(address)))
        .collect();
    let step = Recast { since: before.edition.clone(), edition: today.edition.clone(), changes };
    (!step.changes.is_empty()).then_some(step)
}

fn change(address: &str, was: Option<&Recorded>, now: Option<&Recorded>) -> Option<Change> {
    let page = now.or(was)?;
    if was.map(|page| &page.code) == now.map(|page| &page.code) {
        return None;
    }
    let differences = was.zip(now).map_or_else(Vec::new, |(was, now)| differences(&was.says, &now.says));
    Some(Change {
        address: address.to_owned(),
        kind: page.kind.clone(),
        title: page.title.clone(),
        was: was.map(|page| page.code.clone()),
        now: now.map(|page| page.code.clone()),
        differences,
    })
}

/// The lines that were replaced, by the longest common subsequence of the two.
pub fn differences(was: &[Said], now: &[Said]) -> Vec<Difference> {
    let same = was.iter().zip(now).take_while(|(one, other)| one == other).count();
    let (was, now) = (&was[same..], &now[same..]);
    let tail = was.iter().rev().zip(now.iter().rev()).take_while(|(one, other)| one == other).count();
    let (was, now) = (&was[..was.len() - tail], &now[..now.len() - tail]);
    if was.is_empty() && now.is_empty() {
        return Vec::new();
    }
    if was.len().saturating_mul(now.len()) > LARGEST {
        return vec![Difference { was: was.to_vec(), now: now.to_vec() }];
    }
    let mut differences = walked(was, now, &common(was, now));
    differences.truncate(MOST);
    differences
}

/// How long the longest common subsequence of the rests from each pair of lines on is.
fn common(was: &[Said], now: &[Said]) -> Vec<Vec<u32>> {
    let mut common = vec![vec![0_u32; now.len() + 1]; was.len() + 1];
    for one in (0..was.len()).rev() {
        for other in (0..now.len()).rev() {
            common[one][other] = if was[one] == now[other] {
                common[one + 1][other + 1] + 1
            } else {
                common[one + 1][other].max(common[one][other + 1])
            };
        }
    }
    common
}

fn walked(was: &[Said], now: &[Said], common: &[Vec<u32>]) -> Vec<Difference> {
    let (mut one, mut other) = (0, 0);
    let mut differences = Vec::new();
    let mut open = Difference::default();
    while one < was.len() || other < now.len() {
        if one < was.len() && other < now.len() && was[one] == now[other] {
            close(&mut open, &mut differences);
            (one, other) = (one + 1, other + 1);
        } else if other >= now.len() || (one < was.len() && common[one + 1][other] >= common[one][other + 1]) {
            open.was.push(was[one].clone());
            one += 1;
        } else {
            open.now.push(now[other].clone());
            other += 1;
        }
    }
    close(&mut open, &mut differences);
    differences
}

fn close(open: &mut Difference, differences: &mut Vec<Difference>) {
    if *open != Difference::default() {
        differences.push(std::mem::take(open));
    }
}

/// The page *What changed*, the newest step first; nothing if the handbook knows of no step.
pub fn page(steps: &[Recast], pages: &[Page]) -> Option<Page> {
    let here: BTreeMap<&str, &Page> = pages.iter().map(|page| (page.address.as_str(), page)).collect();
    let rows: Vec<StepRow> =
        steps.iter().enumerate().rev().map(|(number, step)| step_row(number, step, &here)).collect();
    let page = || frame::page(addresses::CHANGES, "kind-changes", "", Body::Changes(Changes { steps: rows }));
    (!steps.is_empty()).then(page)
}

/// Marks the pages that the last step changed.
pub fn mark(steps: &[Recast], pages: &mut [Page]) {
    let Some((number, last)) = steps.iter().enumerate().next_back() else { return };
    let told = last.changes.iter().filter(|change| is_told(&change.kind));
    let told: BTreeMap<&str, &Change> = told.map(|change| (change.address.as_str(), change)).collect();
    for page in pages {
        if let Some(change) = told.get(page.address.as_str()) {
            let link = Link { title: last.since.clone(), address: anchored(number, &change.address) };
            page.changed = Some(link);
        }
    }
}

/// Where a change is told.
pub fn anchored(step: usize, address: &str) -> String {
    format!("{}#{}", addresses::CHANGES, anchor(step, address))
}

fn anchor(step: usize, address: &str) -> String {
    let key = addresses::key(address);
    let plain = |letter: char| if letter.is_ascii_alphanumeric() { letter } else { '-' };
    format!("changed-{}-{}", step + 1, key.chars().map(plain).collect::<String>())
}

/// Pages whose changes are told: not questions and endings, which follow from their guide, nor lists of the program's own.
pub fn is_told(kind: &str) -> bool {
    let told = ["symptom", "procedure", "checklist", "circuit", "limits", "stores", "words"];
    kind.strip_prefix("kind-").is_some_and(|kind| told.contains(&kind))
}

fn step_row(number: usize, step: &Recast, here: &BTreeMap<&str, &Page>) -> StepRow {
    let told = step.changes.iter().filter(|change| is_told(&change.kind)).map(|change| row(number, change, here));
    let sheets = step.changes.iter().filter(|change| change.kind == "kind-sheet");
    StepRow {
        since: step.since.clone(),
        edition: step.edition.clone(),
        rows: told.collect(),
        sheets: sheets.map(|change| row(number, change, here)).collect(),
    }
}

fn row(number: usize, change: &Change, here: &BTreeMap<&str, &Page>) -> ChangeRow {
    ChangeRow {
        anchor: anchor(number, &change.address),
        title: change.title.clone(),
        kind: known(&change.kind),
        address: here.contains_key(change.address.as_str()).then(|| change.address.clone()),
        came: change.was.is_none(),
        went: change.now.is_none(),
        was: change.was.clone(),
        now: change.now.clone(),
        differences: told(&change.differences),
    }
}

/// Differences as a page says them.
pub fn told(differences: &[Difference]) -> Vec<DifferenceSaid> {
    let line = |said: &Said| SaidLine { figure: figure(said), text: said.text.clone() };
    let told = differences.iter().map(|difference| DifferenceSaid {
        was: difference.was.iter().map(line).collect(),
        now: difference.now.iter().map(line).collect(),
    });
    told.collect()
}

/// Numbers that need a word beside them, and words that stand for a message: its id.
fn figure(said: &Said) -> Option<&'static str> {
    const WORDS: [&str; 7] = [
        "who-anyone",
        "who-supervised",
        "who-adult",
        "signal-danger",
        "signal-warning",
        "signal-caution",
        "signal-notice",
    ];
    match said.what.as_str() {
        "minutes" => Some("said-minutes"),
        "wait" | "waiting" => Some("said-waiting"),
        "who" | "signal" => WORDS.into_iter().find(|word| *word == format!("{}-{}", said.what, said.text)),
        _ => None,
    }
}

/// A kind that came from a file, as a message id that there is.
pub fn known(kind: &str) -> &'static str {
    static KINDS: LazyLock<Vec<&'static str>> = LazyLock::new(|| {
        messages::ids(messages::ENGLISH).into_iter().map(|(id, _)| id).filter(|id| id.starts_with("kind-")).collect()
    });
    KINDS.iter().find(|known| **known == kind).copied().unwrap_or("kind-front")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str) -> Vec<Said> {
        text.split(' ').map(|word| Said { what: "step".into(), text: word.into() }).collect()
    }

    fn shown(was: &str, now: &str) -> Vec<String> {
        let words = |lines: &[Said]| lines.iter().map(|said| said.text.clone()).collect::<Vec<_>>().join(" ");
        let found = differences(&lines(was), &lines(now));
        found.iter().map(|one| format!("{} > {}", words(&one.was), words(&one.now))).collect()
    }

    #[test]
    fn only_what_was_replaced_is_told() {
        assert_eq!(shown("a b c d", "a x c d e"), ["b > x", " > e"]);
        assert_eq!(shown("a b c", "a c"), ["b > "]);
        assert_eq!(shown("a b", "a b"), [""; 0]);
    }
}
