//! Where links lead inside the one file: which section a page has become, which number an id, and what is folded.
//!
//! In: the pages and their HTML. Out: [`Links`]. A section's id is the page's key and stays the same from edition to edition; ids
//! inside are numbered. Leaves to others: rewriting what refers to them (`single`).

use super::super::Setting;
use super::super::prose::ROOT;
use super::{markup, short};
use crate::handbook::page::{Body, Page, Standing};
use std::collections::{BTreeMap, BTreeSet};

/// Where links lead inside the file.
pub(super) struct Links {
    /// A page's section, by the page's address.
    keys: BTreeMap<String, String>,
    /// The number of an id, by the page's address and the id on it.
    ids: BTreeMap<(String, String), String>,
    /// The addresses of the pages that are folded.
    folded: BTreeSet<String>,
}

impl Links {
    /// The links between these sections.
    pub fn of(setting: &Setting, sections: &[(String, String)]) -> Links {
        let keys = keys(setting);
        let mut ids = BTreeMap::new();
        for (address, html) in sections {
            // The first id is the section's own.
            for id in markup::ids(html).skip(1) {
                let number = format!("i{}", short(ids.len()));
                ids.entry((address.clone(), id.to_owned())).or_insert(number);
            }
        }
        let folded = setting.pages.iter().filter(|(_, page)| is_folded(page)).map(|(address, _)| address.clone());
        Links { keys, ids, folded: folded.collect() }
    }

    /// Whether a page is folded.
    pub fn is_folded(&self, page: &str) -> bool {
        self.folded.contains(page)
    }

    /// The id of a page's section.
    pub fn key(&self, page: Option<&str>) -> Option<&String> {
        self.keys.get(page?)
    }

    /// The number of an id on a page; an id that nobody gave a number stays as it is.
    pub fn id<'i>(&'i self, page: Option<&str>, id: &'i str) -> &'i str {
        let known = page.and_then(|page| self.ids.get(&(page.to_owned(), id.to_owned())));
        known.map_or(id, String::as_str)
    }

    /// Where a link leads: a section, a place in one, or outside as it stands. Nothing when there is no such page.
    pub fn lead(&self, page: Option<&str>, href: &str) -> Option<String> {
        if let Some(id) = href.strip_prefix('#') {
            return Some(format!("#{}", self.id(page, id)));
        }
        let Some(address) = href.strip_prefix(ROOT) else { return Some(href.to_owned()) };
        let (address, id) = address.split_once('#').map_or((address, None), |(address, id)| (address, Some(id)));
        let key = self.keys.get(address)?;
        let inside = id.and_then(|id| self.ids.get(&(address.to_owned(), id.to_owned())));
        Some(format!("#{}", inside.unwrap_or(key)))
    }
}

/// Whether a page is folded: one past "I cannot tell", of which there are three for each without, a sheet, and what is nothing without
/// its script. The cards are not: they are what there is of the practice bench where no script runs.
fn is_folded(page: &Page) -> bool {
    let unsure = |standing: &Standing| standing.way.iter().any(|step| step.message == Some("cannot-tell"));
    match &page.body {
        Body::Question(question) => unsure(&question.standing),
        Body::Ending(ending) => unsure(&ending.standing),
        Body::Sheet(_) | Body::Sheets(_) | Body::Practice(_) | Body::Prints(_) | Body::Writing(_) => true,
        _ => false,
    }
}

impl Links {
    /// Two pages whose sections have the same id, if there are such: `new/hand-tools` and `new-hand/tools` have.
    pub fn twins(&self) -> Option<(&str, &str)> {
        let mut seen: BTreeMap<&str, &str> = BTreeMap::new();
        self.keys.iter().find_map(|(address, key)| Some((seen.insert(key, address)?, address.as_str())))
    }
}

/// The id of each page's section: its key, and for a question or an ending the last part alone, which has the hash of the answers
/// in it, unless two guides would share it.
fn keys(setting: &Setting) -> BTreeMap<String, String> {
    let last = |page: &Page| match page.body {
        Body::Question(_) | Body::Ending(_) => {
            page.address.rsplit('/').next().unwrap_or("").trim_end_matches(".html").to_owned()
        }
        _ => page.key.clone(),
    };
    let mut times: BTreeMap<String, usize> = BTreeMap::new();
    setting.pages.values().for_each(|page| *times.entry(last(page)).or_default() += 1);
    let key =
        |page: &Page| Some(last(page)).filter(|last| times.get(last) == Some(&1)).unwrap_or_else(|| page.key.clone());
    setting.pages.iter().map(|(address, page)| (address.clone(), key(page))).collect()
}
