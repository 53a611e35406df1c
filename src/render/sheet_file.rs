//! Sheets as one HTML file by itself, with its styles in it: to be printed from any browser.
//!
//! In: pages of sheets, and the numbers to print in. Out: the file's bytes. Each sheet begins on a right-hand page.
//! Leaves to others: PDF (`pdf`), where the bytes go (`cli`).

use super::theme::FRAME;
use super::words::Words;
use super::{RenderFailed, Theme, book, faulty, functions, prose, qr};
use crate::handbook::Handbook;
use crate::handbook::page::{Body, Page, SheetOf};
use crate::model::Paper;
use serde::Serialize;
use std::sync::Arc;
use tera::Context;

/// What stands in every such file, so that the program knows its own again.
pub const MARK: &str = "<meta name=\"generator\" content=\"Coquille bench sheets\">";

/// A sheet to print once, or the index of what failed that goes with a queue's.
#[derive(Clone, Copy, Serialize)]
struct Once<'s> {
    page: &'s Page,
    numbers: &'s [String],
    number: Option<&'s str>,
    failures: bool,
}

/// Renders the sheets, each once for every number; without numbers, once with a blank for it.
///
/// # Errors
/// When a template of the theme is faulty.
pub fn sheet_file(
    handbook: &Handbook,
    theme: &Theme,
    pages: &[&Page],
    paper: Paper,
    numbers: &[String],
) -> Result<Vec<u8>, RenderFailed> {
    let words = Arc::new(Words::of(&handbook.cover.language, &handbook.messages));
    let mut tera = theme.templates(FRAME)?;
    let address = qr::home(handbook);
    functions::register(&mut tera, &words, handbook.targets.clone(), None, address.as_deref());
    functions::languages(&mut tera, &Arc::default());
    tera.global_context().insert("book", &book(handbook, &handbook.pages, &words, theme));
    let sheets: Vec<Once<'_>> = pages.iter().flat_map(|page| printed(page, numbers)).collect();
    let title = match pages {
        [page] => page.title.clone(),
        _ => words.say("kind-sheets"),
    };
    let mut context = Context::new();
    context.insert("sheets", &sheets);
    context.insert("title", &title);
    context.insert("css", &css(theme, paper));
    context.insert("mark", MARK);
    context.insert("root", "");
    let name = "pages/sheet-file.html";
    let html = tera.render(name, &context).map_err(|error| faulty(name, &error))?;
    // Paper has no links; those that a reader on a screen sees lead to the net, or nowhere.
    let root = address.map_or_else(|| "#".to_owned(), |address| format!("{}/", address.trim_end_matches('/')));
    Ok(prose::rooted(&html, &root).into_bytes())
}

fn printed<'s>(page: &'s Page, numbers: &'s [String]) -> Vec<Once<'s>> {
    let Body::Sheet(sheet) = &page.body else { return Vec::new() };
    let blank = Once { page, numbers, number: None, failures: false };
    let mut sheets: Vec<Once<'s>> = match &sheet.of {
        SheetOf::Rows(_) | SheetOf::Kit(_) => vec![blank],
        _ if numbers.is_empty() => vec![blank],
        _ => numbers.iter().map(|number| Once { number: Some(number.as_str()), ..blank }).collect(),
    };
    // One for all fencers, after the last of their sheets.
    if matches!(sheet.of, SheetOf::Queue(_)) {
        sheets.push(Once { failures: true, ..blank });
    }
    sheets
}

/// The theme's styles, and the paper.
fn css(theme: &Theme, paper: Paper) -> String {
    let size = match paper {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    // A style sheet that ends its own element would let its text out into the page.
    let styles = theme.style_sheet().replace("</", "<\\/");
    format!("{styles}\n@media print {{ @page {{ size: {size}; }} .sheet {{ break-before: right; }} }}\n")
}
