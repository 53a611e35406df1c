//! Which pages there are, what each says, and who links to whom; still data.
//!
//! In: sound, proofed guides. Out: [`Handbook`]. Leaves to others: templates, Markdown, drawings (`render`), files (`press`).
//! Promise: the same guides give the same pages, in the same order, with the same codes.

mod about;
mod addresses;
mod circuit_drawing;
mod circuits;
mod codes;
mod directory;
mod frame;
mod front;
mod guides;
mod kit_list;
mod lamps;
mod languages;
mod laying;
mod learning;
mod lessons;
mod limits;
mod links;
mod lists;
pub(crate) mod numbers;
pub mod page;
mod patterns;
mod places;
mod practice;
mod questions;
mod rehearsal;
mod search;
mod self_check;
mod sheets;
mod symptom;
mod ways;
mod writing;

pub use languages::lay_out_all;
pub use links::{LinkedLimit, Target, Targets};
pub use search::Entry;

use crate::model::Units;
use crate::proof::Proofed;
use crate::proof::cases::sound;
use crate::source::Folder;
use directory::Directory;
use laying::Laying;
use page::Page;
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;

/// A handbook as data.
#[derive(Debug, Clone)]
pub struct Handbook {
    /// What stands on every page.
    pub cover: Cover,
    /// For another language than the handbook's own: the folder that its pages are in.
    pub folder: Option<String>,
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
}

/// Lays out a proofed handbook.
pub fn lay_out(proofed: &Proofed, folder: &Folder) -> Handbook {
    let units = proofed.guides.handbook.as_ref().map_or(Units::Metric, |(_, file)| file.units);
    let directory = Directory::of(proofed);
    let laying = Laying { proofed, texts: &folder.texts, directory: &directory, units };
    let mut pages = pages(&laying);
    codes::give(&mut pages);
    let mut about = vec![about::page(&laying, codes::of_all(&pages))];
    codes::give(&mut about);
    pages.append(&mut about);
    links::give_back(&laying, &mut pages);
    pages.sort_by(|one, other| one.address.cmp(&other.address));
    let search = search::entries(&laying, &pages);
    let cover = cover(proofed);
    Handbook {
        messages: languages::messages(folder, &cover.language),
        folder: None,
        cover,
        search,
        targets: links::targets(&laying),
        pictures: pictures(proofed, folder),
        pages,
    }
}

/// The sheet that says what to fetch for these guides, and how long they take for so many pieces.
pub fn kit_sheet(proofed: &Proofed, folder: &Folder, guides: &[&str], pieces: u32) -> Page {
    let units = proofed.guides.handbook.as_ref().map_or(Units::Metric, |(_, file)| file.units);
    let directory = Directory::of(proofed);
    let laying = Laying { proofed, texts: &folder.texts, directory: &directory, units };
    let mut pages = vec![kit_list::sheet(&laying, guides, pieces)];
    codes::give(&mut pages);
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
    let mut pages = vec![front::front_page(laying, &faults, &doors), front::lamps_page(&faults, &doors)];
    pages.extend(lamps);
    pages.extend(lessons::pages(laying));
    pages.extend(front::kit_pages(laying, &faults));
    pages.extend(of_faults.into_iter().flatten());
    pages.par_extend(guides.procedures.par_iter().map(|(_, guide)| guides::procedure_page(laying, guide)));
    pages.extend(guides.checklists.iter().map(|(_, guide)| guides::checklist_page(laying, guide)));
    pages.par_extend(guides.circuits.par_iter().map(|(_, guide)| circuits::page(laying, guide)));
    pages.extend(guides.learning.iter().flat_map(|(_, guide)| learning::pages(laying, guide)));
    if !guides.symptoms.is_empty() {
        pages.push(practice::index(laying));
    }
    pages.push(lists::limits_page(laying));
    pages.push(lists::stores_page(laying));
    pages.push(lists::words_page(laying));
    pages.push(lists::jobs_page(laying));
    pages.push(kit_list::page(laying));
    pages.extend(sheets::pages(laying).into_iter().chain(sheets.into_iter().flatten()));
    pages.push(lists::sheets_page(&pages));
    pages.push(writing::page(laying));
    pages.push(lists::all_page(laying, &pages));
    pages
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
    }
}

/// The pictures that guides may show, by the address that they get.
fn pictures(proofed: &Proofed, folder: &Folder) -> BTreeMap<String, Vec<u8>> {
    let lists = crate::proof::all_pictures(&proofed.guides);
    let pictures = lists.into_iter().flat_map(|(_, list)| sound(list));
    let with_bytes = pictures.filter_map(|picture| {
        let bytes = folder.others.get(&picture.file.value)?;
        Some((addresses::picture(&picture.file.value), bytes.clone()))
    });
    with_bytes.collect()
}
