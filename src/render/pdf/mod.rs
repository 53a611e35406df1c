//! Bench sheets as PDF: one column of lines to tick with a pen, tagged, with its faces embedded; no browser needed.
//!
//! In: the page data that HTML sheets are made from, and the numbers to print in. Out: the bytes of one file: A4 or Letter, PDF/UA-1.
//! Leaves to others: which sheets there are (`handbook`), where the bytes go (`cli`, `press`).
//! Promise: the same input gives the same bytes, with no clock in them; what a guide says is handed over as data and cannot become
//! markup; a letter that no face has is printed as an empty square and named in [`Made::without_letter`].

mod faces;
mod kit;
mod lines;
mod parts;
mod table;
mod text;
mod world;

use super::{Words, qr};
use crate::handbook::page::{Body, Page, Sheet};
use crate::handbook::{Cover, Handbook, Targets};
use crate::model::Paper;
use fluent_bundle::FluentArgs;
use lines::{Form, Printed};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use text::Setter;

/// A file of sheets, made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Made {
    /// The file.
    pub bytes: Vec<u8>,
    /// Letters of the guides that no face has: they stand as empty squares.
    pub without_letter: BTreeSet<char>,
}

/// Why there is no file: a fault of the program, in the typesetter's words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PdfFailed {
    /// What it says.
    pub message: String,
}

impl std::fmt::Display for PdfFailed {
    fn fmt(&self, words: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(words, "the sheet could not be typeset: {}", self.message)
    }
}

impl std::error::Error for PdfFailed {}

/// What is said of a handbook on every sheet.
#[derive(Debug)]
pub struct Printer<'h> {
    cover: &'h Cover,
    targets: &'h Targets,
    home: Option<String>,
    words: Words,
}

/// What is handed to the typesetter.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct File<'f> {
    title: &'f str,
    book: &'f str,
    language: String,
    region: Option<String>,
    paper: &'static str,
    page_of: String,
    signed: String,
    edition_word: String,
    sheets: Vec<Printed>,
}

impl<'h> Printer<'h> {
    /// For the sheets of this handbook.
    pub fn of(handbook: &'h Handbook) -> Printer<'h> {
        Printer {
            cover: &handbook.cover,
            targets: &handbook.targets,
            home: qr::home(handbook),
            words: Words::of(&handbook.cover.language, &handbook.messages),
        }
    }

    /// One file with these sheets, each once for every number; without numbers, once with a blank for it. Every sheet starts on an
    /// odd page and counts its own. Pages that are no sheets are left out.
    ///
    /// # Errors
    /// When the typesetter refuses: a fault of the program.
    pub fn print(&self, pages: &[&Page], paper: Paper, numbers: &[String]) -> Result<Made, PdfFailed> {
        let mut setter = Setter::new(self.targets, &self.words);
        let sheets: Vec<(&Page, &Sheet)> = pages.iter().filter_map(|page| Some((*page, sheet_of(page)?))).collect();
        let title = setter.plain(&self.title(&sheets));
        let book = setter.plain(&self.cover.title);
        let mut printed = Vec::new();
        for (page, sheet) in sheets {
            printed.extend(
                Form { cover: self.cover, home: self.home.as_deref(), page, sheet, numbers }.printed(&mut setter),
            );
        }
        let (language, region) = language(&self.cover.language);
        let file = File {
            title: &title,
            book: &book,
            language,
            region,
            paper: paper_name(paper),
            page_of: self.page_of(),
            signed: self.words.say("sheet-signed"),
            edition_word: self.words.say("link-edition"),
            sheets: printed,
        };
        let data = serde_json::to_vec(&file).map_err(|error| PdfFailed { message: error.to_string() })?;
        let bytes = world::typeset(data)?;
        Ok(Made { bytes, without_letter: setter.without_letter })
    }

    fn title(&self, sheets: &[(&Page, &Sheet)]) -> String {
        match sheets {
            [(page, _)] => page.title.clone(),
            _ => self.words.say("kind-sheets"),
        }
    }

    /// "Page n of m" with marks where the typesetter puts the numbers.
    fn page_of(&self) -> String {
        let mut args = FluentArgs::new();
        args.set("n", "{n}");
        args.set("m", "{m}");
        self.words.say_with("sheet-page-of", &args)
    }
}

/// Files by their addresses, and letters that no face of ours has.
type Sheets = (BTreeMap<String, Vec<u8>>, BTreeSet<char>);

/// A PDF for every sheet of a handbook, by the address beside it; the sheets' pages get links to them. Which letters have no face is
/// said for all of them.
///
/// # Errors
/// When the typesetter refuses: a fault of the program.
pub fn beside_sheets(handbook: &mut Handbook) -> Result<Sheets, PdfFailed> {
    let printer = Printer::of(handbook);
    let sheets = handbook.pages.iter().filter_map(|page| Some((page, sheet_of(page)?)));
    let mut files = BTreeMap::new();
    let mut without_letter = BTreeSet::new();
    for (page, sheet) in sheets {
        let made = printer.print(&[page], sheet.paper, &[])?;
        without_letter.extend(made.without_letter);
        files.insert(address_beside(handbook.folder.as_deref(), &page.address), made.bytes);
    }
    let folder = handbook.folder.clone();
    for page in &mut handbook.pages {
        if let Body::Sheet(sheet) = &mut page.body {
            sheet.pdf = Some(address_beside(folder.as_deref(), &page.address));
        }
    }
    Ok((files, without_letter))
}

/// The address from the top folder; that of another language begins with the language's folder.
fn address_beside(folder: Option<&str>, sheet: &str) -> String {
    let folder = folder.map_or_else(String::new, |folder| format!("{folder}/"));
    format!("{folder}{}.pdf", sheet.trim_end_matches(".html"))
}

fn sheet_of(page: &Page) -> Option<&Sheet> {
    match &page.body {
        Body::Sheet(sheet) => Some(sheet),
        _ => None,
    }
}

/// The name of the paper, as the typesetter knows it.
fn paper_name(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "a4",
        Paper::Letter => "us-letter",
    }
}

/// A language tag in two: `en-GB` is `en` and `GB`. What is no tag is taken as English, which the program's own words are in.
fn language(tag: &str) -> (String, Option<String>) {
    let mut parts = tag.split('-');
    let letters = |part: &&str, lengths: std::ops::RangeInclusive<usize>| {
        lengths.contains(&part.len()) && part.bytes().all(|letter| letter.is_ascii_alphabetic())
    };
    let language = parts.next().filter(|part| letters(part, 2..=3)).unwrap_or("en").to_lowercase();
    let region = parts.find(|part| letters(part, 2..=2)).map(str::to_uppercase);
    (language, region)
}

#[cfg(test)]
mod tests {
    use super::language;

    #[test]
    fn a_language_tag_is_taken_apart() {
        assert_eq!(language("en-GB"), ("en".into(), Some("GB".into())));
        assert_eq!(language("de"), ("de".into(), None));
        assert_eq!(language("zh-Hant-TW"), ("zh".into(), Some("TW".into())));
        assert_eq!(language("nonsense"), ("en".into(), None));
    }
}
