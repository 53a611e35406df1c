//! Which pages there are, what each says, and who links to whom; still data.
//!
//! In: sound, proofed guides. Out: [`Handbook`]. Leaves to others: templates, Markdown, drawings (`render`), files (`press`).
//! Promise: the same guides give the same pages, in the same order, with the same codes.

mod about;
mod addresses;
mod changes;
mod circuit_drawing;
mod circuits;
mod codes;
mod directory;
mod frame;
mod front;
mod guides;
mod juniors;
mod kit_list;
mod lamps;
mod languages;
mod laying;
mod leads;
mod learning;
mod lessons;
mod likeness;
mod limits;
mod links;
mod lists;
pub(crate) mod numbers;
mod origins;
pub mod page;
mod patterns;
mod places;
mod practice;
mod prints;
mod questions;
pub mod record;
mod rehearsal;
mod saying;
mod search;
mod self_check;
mod sheets;
mod symptom;
mod ways;
mod writing;

pub use addresses::guide as page_of;
pub use languages::{lay_out_all, lay_out_all_since};
pub use links::{LinkedLimit, Target, Targets};
pub use search::Entry;

use crate::model::is_iso_day;
use crate::proof::Proofed;
use crate::source::Folder;
use directory::Directory;
use laying::Laying;
use page::Page;
use rayon::prelude::*;
use record::{Recast, Record};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// A handbook as data.
#[derive(Debug, Clone)]
pub struct Handbook {
    /// What stands on every page.
    pub cover: Cover,
    /// For another language than the handbook's own: the folder that its pages are in.
    pub folder: Option<String>,
    /// The language of what this one has no page for; none for the handbook's own language.
    pub elsewhere: Option<String>,
    /// The club's own message files for this language, in Fluent's syntax; the last has the last word.
    pub messages: Vec<String>,
    /// The pages.
    pub pages: Vec<Page>,
    /// What short links in texts lead to.
    pub targets: Targets,
    /// What the search finds.
    pub search: Vec<Entry>,
    /// Pictures, by the address that they get.
    pub pictures: BTreeMap<String, Vec<u8>>,
    /// What a later edition is compared with.
    pub record: Record,
    /// What changed since the edition that this one was compared with; nothing if none was, or nothing did.
    pub recast: Option<Recast>,
}

/// Words as they are compared: small letters, no signs, one gap between two.
pub fn plain_words(text: &str) -> String {
    let plain = |letter: char| if letter.is_alphanumeric() { letter } else { ' ' };
    let text: String = text.chars().map(plain).flat_map(char::to_lowercase).collect();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What stands on every page.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct Cover {
    /// The club's name.
    pub title: String,
    /// The club's label for this edition.
    pub edition: String,
    /// The language of the guides.
    pub language: String,
    /// Who decides: *Markdown*.
    pub caution: String,
    /// Where the handbook can be found on the net.
    pub address: Option<String>,
    /// The theme.
    pub theme: String,
    /// The last day that the handbook itself names, as `2026-11-25`: an edition has one even where nobody wrote it down.
    pub day: String,
}

/// Lays out a proofed handbook.
pub fn lay_out(proofed: &Proofed, folder: &Folder) -> Handbook {
    laid_out(proofed, folder, None, None)
}

/// Lays out a proofed handbook, and says what changed since an earlier one.
pub fn lay_out_since(proofed: &Proofed, folder: &Folder, earlier: &Record) -> Handbook {
    laid_out(proofed, folder, None, Some(earlier))
}

/// Lays out the pages of some guides, or of all, and the lists.
fn laid_out(proofed: &Proofed, folder: &Folder, only: Option<&BTreeSet<String>>, earlier: Option<&Record>) -> Handbook {
    let directory = Directory::of(proofed);
    let laying = Laying::of(proofed, folder, &directory, only);
    let targets = links::targets(&laying);
    let coding = Coding { cover: cover(proofed), targets: &targets, pictures: pictures(proofed) };
    let mut pages = pages(&laying);
    origins::mark(&laying, &mut pages);
    let says = coding.give(&mut pages);
    let mut record = Record::of(&coding.cover.edition, &pages, says, Vec::new());
    let recast = earlier.and_then(|earlier| changes::step(earlier, &record));
    record.steps = earlier.map_or_else(Vec::new, |earlier| earlier.steps.iter().chain(&recast).cloned().collect());
    coding.editions(&laying, &mut pages, &record.steps);
    changes::mark(&record.steps, &mut pages);
    links::give_back(&laying, &mut pages);
    pages.sort_by(|one, other| one.address.cmp(&other.address));
    let search = search::entries(&laying, &pages);
    let Coding { cover, pictures, .. } = coding;
    let messages = languages::messages(folder, &cover.language);
    Handbook { cover, folder: None, elsewhere: None, messages, search, targets, pictures, pages, record, recast }
}

/// What goes into codes beside the pages themselves.
struct Coding<'c> {
    cover: Cover,
    targets: &'c Targets,
    pictures: BTreeMap<String, Vec<u8>>,
}

impl Coding<'_> {
    /// Gives pages their codes; what each says, in their order.
    fn give(&self, pages: &mut [Page]) -> Vec<Vec<saying::Said>> {
        let says: Vec<Vec<saying::Said>> = pages.par_iter().map(|page| saying::said(page, self.targets)).collect();
        codes::give(pages, &says, &self.cover, &self.pictures);
        says
    }

    /// Adds the pages about this edition and those before it. Each lists codes of the ones before.
    fn editions(&self, laying: &Laying<'_>, pages: &mut Vec<Page>, steps: &[Recast]) {
        let add = |pages: &mut Vec<Page>, page: Option<Page>| {
            let mut page: Vec<Page> = page.into_iter().collect();
            self.give(&mut page);
            pages.append(&mut page);
        };
        let changed = changes::page(steps, pages);
        add(pages, changed);
        let notice = prints::notice(laying, pages, steps);
        add(pages, notice);
        let about = about::page(laying, codes::of_all(pages));
        add(pages, Some(about));
        let prints = prints::page(laying, pages, steps);
        add(pages, Some(prints));
    }
}

/// The sheet that says what to fetch for these guides, and how long they take for so many pieces.
pub fn kit_sheet(proofed: &Proofed, folder: &Folder, guides: &[&str], pieces: u32) -> Page {
    let directory = Directory::of(proofed);
    let laying = Laying::of(proofed, folder, &directory, None);
    let mut pages = vec![kit_list::sheet(&laying, guides, pieces)];
    let targets = links::targets(&laying);
    Coding { cover: cover(proofed), targets: &targets, pictures: pictures(proofed) }.give(&mut pages);
    pages.swap_remove(0)
}

fn pages(laying: &Laying<'_>) -> Vec<Page> {
    let guides = &laying.proofed.guides;
    let laid: Vec<symptom::Laid> = guides.symptoms.par_iter().map(|(_, guide)| symptom::lay(laying, guide)).collect();
    let faults = guides.symptoms.iter().zip(&laid);
    let faults: Vec<_> = faults.map(|((_, guide), laid)| (guide, laying.symptom_row(guide, laid.minutes))).collect();
    let (of_faults, sheets): (Vec<_>, Vec<_>) = laid.into_iter().map(|laid| (laid.pages, laid.sheet)).unzip();
    let lamps = lamps::pages(laying, &faults);
    let doors = lamps::doors(&lamps);
    let mut pages = vec![front::front_page(laying, &faults, &doors), front::lamps_page(laying, &faults, &doors)];
    pages.extend(lamps);
    pages.extend(lessons::pages(laying));
    pages.extend(front::kit_pages(laying, &faults));
    pages.extend(of_faults.into_iter().flatten());
    pages.extend(of_jobs_checks_and_circuits(laying));
    pages.extend(guides.learning.iter().flat_map(|(_, guide)| learning::pages(laying, guide)));
    if !guides.symptoms.is_empty() {
        pages.push(practice::index(laying));
    }
    pages.push(lists::limits_page(laying));
    pages.push(lists::stores_page(laying));
    pages.push(lists::words_page(laying));
    pages.push(lists::jobs_page(laying));
    pages.push(kit_list::page(laying));
    pages.extend(sheets::pages(laying, |_| true).into_iter().chain(sheets.into_iter().flatten()));
    pages.push(lists::sheets_page(laying, &pages));
    pages.push(juniors::page(laying));
    pages.push(writing::page(laying));
    pages.push(lists::all_page(laying, &pages));
    pages
}

fn of_jobs_checks_and_circuits(laying: &Laying<'_>) -> Vec<Page> {
    let guides = &laying.proofed.guides;
    let jobs = guides.procedures.par_iter().filter(|(_, guide)| laying.lays(&guide.procedure));
    let mut pages: Vec<Page> = jobs.map(|(_, guide)| guides::procedure_page(laying, guide)).collect();
    let checks = guides.checklists.iter().filter(|(_, guide)| laying.lays(&guide.checklist));
    pages.extend(checks.map(|(_, guide)| guides::checklist_page(laying, guide)));
    let circuits = guides.circuits.par_iter().filter(|(_, guide)| laying.lays(&guide.circuit));
    pages.par_extend(circuits.map(|(_, guide)| circuits::page(laying, guide)));
    pages
}

/// The pages of one guide, and what all pages of the handbook have in common.
#[derive(Debug, Clone)]
pub struct OfGuide {
    /// What stands on every page.
    pub cover: Cover,
    /// What short links in texts lead to.
    pub targets: Targets,
    /// The pages as they are in the whole handbook, but for what an edition or another language adds to them.
    pub pages: Vec<Page>,
}

/// Lays out the pages of one guide: what somebody who writes it looks at next. There are none if there is no guide with this id.
pub fn lay_out_guide(proofed: &Proofed, folder: &Folder, id: &str) -> OfGuide {
    let (directory, only) = (Directory::of(proofed), BTreeSet::from([id.to_owned()]));
    let laying = Laying::of(proofed, folder, &directory, Some(&only));
    let faults = proofed.guides.symptoms.iter().filter(|(_, guide)| laying.lays(&guide.symptom));
    let mut pages: Vec<Page> = faults
        .map(|(_, guide)| symptom::lay(&laying, guide))
        .flat_map(|laid| laid.pages.into_iter().chain(laid.sheet))
        .collect();
    pages.extend(of_jobs_checks_and_circuits(&laying));
    pages.extend(sheets::pages(&laying, |guide| laying.lays(guide)));
    origins::mark(&laying, &mut pages);
    let targets = links::targets(&laying);
    let cover = cover(proofed);
    Coding { cover: cover.clone(), targets: &targets, pictures: pictures(proofed) }.give(&mut pages);
    links::give_back(&laying, &mut pages);
    OfGuide { cover, targets, pages }
}

fn cover(proofed: &Proofed) -> Cover {
    let Some((_, file)) = &proofed.guides.handbook else { return Cover::default() };
    Cover {
        title: file.title.value.clone(),
        edition: file.edition.value.clone(),
        language: file.language.value.clone(),
        caution: file.caution.value.0.clone(),
        address: file.address.as_ref().map(|address| address.value.clone()),
        theme: file.theme.as_ref().map_or_else(|| "marking-blue".to_owned(), |theme| theme.value.clone()),
        day: day(proofed, &file.edition.value),
    }
}

/// The latest day on which a limit was looked up; else the first day of the year that the edition names. It comes from the guides
/// and never from a clock, so that the same guides have the same day.
fn day(proofed: &Proofed, edition: &str) -> String {
    let looked_up = proofed.guides.limits.iter().filter_map(|(_, limits)| limits.looked_up.as_ref());
    let days = looked_up.map(|day| day.value.as_str()).filter(|day| is_iso_day(day));
    let year = edition.split(|letter: char| !letter.is_ascii_digit()).find(|part| part.len() == 4);
    days.max().map_or_else(|| format!("{}-01-01", year.unwrap_or("2000")), str::to_owned)
}

/// The pictures that guides may show, by the address that they get.
fn pictures(proofed: &Proofed) -> BTreeMap<String, Vec<u8>> {
    proofed.pictures.iter().map(|(file, bytes)| (addresses::picture(file), bytes.clone())).collect()
}
