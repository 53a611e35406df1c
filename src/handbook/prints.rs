//! *Is my print current?* and the notice of what was withdrawn.
//!
//! In: the pages of today, the steps that led to them, `withdrawn:` of the handbook. Out: a list of codes, sorted, in which each can be
//! looked up with a script or without; `prints.html#code-…` leads to its row.

use super::laying::Laying;
use super::page::{Body, CodeRow, Link, Notice, Page, PrintOf, Prints, Withdrawn};
use super::record::{Change, Recast};
use super::{about, addresses, changes, frame};
use std::collections::{BTreeMap, BTreeSet};

/// The page. It lists every page but itself: the template adds its own code.
pub fn page(laying: &Laying<'_>, pages: &[Page], steps: &[Recast]) -> Page {
    let mut rows = BTreeMap::new();
    for page in pages {
        let row: &mut CodeRow = rows.entry(page.code.clone()).or_insert_with(|| row(&page.code, "current"));
        row.of.push(PrintOf { title: title(page), kind: page.kind, address: Some(page.address.clone()) });
    }
    let here: BTreeSet<&str> = pages.iter().map(|page| page.address.as_str()).collect();
    for (number, step) in steps.iter().enumerate() {
        let former = step.changes.iter().filter_map(|change| Some((change.was.as_ref()?, change)));
        for (code, change) in former {
            let row = rows.entry(code.clone()).or_insert_with(|| row(code, "older"));
            if row.state == "older" {
                older(row, number, change, steps, &here);
            }
        }
    }
    for withdrawn in about::withdrawn(laying) {
        let row = rows.entry(withdrawn.code.clone()).or_insert_with(|| row(&withdrawn.code, "withdrawn"));
        row.state = "withdrawn";
        row.because = Some(withdrawn.because);
        row.instead = withdrawn.instead;
        row.since.clear();
        row.differences.clear();
    }
    let body = Prints { rows: rows.into_values().collect(), remembers: !steps.is_empty() };
    frame::page(addresses::PRINTS, "kind-prints", "", Body::Prints(body))
}

/// What a page is called among all: a question or an ending with its guide, since many guides ask the same.
fn title(page: &Page) -> String {
    let guide = match &page.body {
        Body::Question(body) => &body.symptom.title,
        Body::Ending(body) => &body.symptom.title,
        _ => return page.title.clone(),
    };
    if page.title.is_empty() { guide.clone() } else { format!("{guide}: {}", page.title) }
}

fn row(code: &str, state: &'static str) -> CodeRow {
    CodeRow {
        code: code.to_owned(),
        state,
        of: Vec::new(),
        because: None,
        instead: None,
        since: Vec::new(),
        differences: Vec::new(),
        gone: false,
    }
}

/// What changed on a page since it had this code: in this step and in all later ones.
fn older(row: &mut CodeRow, number: usize, change: &Change, steps: &[Recast], here: &BTreeSet<&str>) {
    let address = here.contains(change.address.as_str()).then(|| change.address.clone());
    row.gone |= address.is_none();
    row.of.push(PrintOf { title: change.title.clone(), kind: changes::known(&change.kind), address });
    for (later, step) in steps.iter().enumerate().skip(number) {
        for change in step.changes.iter().filter(|other| other.address == change.address && other.was.is_some()) {
            if changes::is_told(&change.kind) || change.kind == "kind-sheet" {
                let address = changes::anchored(later, &change.address);
                row.since.push(Link { title: step.edition.clone(), address });
            }
            row.differences.extend(changes::told(&change.differences));
        }
    }
}

/// The notice, if anything was withdrawn. `steps` and `pages` tell what a withdrawn code stood on.
pub fn notice(laying: &Laying<'_>, pages: &[Page], steps: &[Recast]) -> Option<Page> {
    let withdrawn = about::withdrawn(laying);
    let named = withdrawn.into_iter().map(|sheet| Withdrawn { of: name(&sheet.code, pages, steps), ..sheet });
    let withdrawn: Vec<Withdrawn> = named.collect();
    let paper = laying.proofed.guides.handbook.as_ref().map(|(_, file)| file.paper).unwrap_or_default();
    let page = |withdrawn| frame::page(addresses::NOTICE, "kind-notice", "", Body::Notice(Notice { paper, withdrawn }));
    (!withdrawn.is_empty()).then(|| page(withdrawn))
}

/// What a code stands or stood on.
fn name(code: &str, pages: &[Page], steps: &[Recast]) -> Option<PrintOf> {
    let today = pages.iter().find(|page| page.code == code);
    let today = today.map(|page| PrintOf { title: title(page), kind: page.kind, address: Some(page.address.clone()) });
    today.or_else(|| {
        let former = steps.iter().flat_map(|step| &step.changes).find(|change| change.was.as_deref() == Some(code))?;
        Some(PrintOf { title: former.title.clone(), kind: changes::known(&former.kind), address: None })
    })
}
