//! What the handbook says, set as HTML and drawn as SVG.
//!
//! In: a [`Handbook`] as data, and a [`Theme`]. Out: the bytes of every file of the site, by address.
//! Leaves to others: what pages say (`handbook`), writing the files (`press`).

mod code;
pub mod figures;
mod functions;
mod prose;
mod search;
mod states;
mod style;
mod theme;
mod words;

pub use states::states;
pub use theme::{Theme, ThemeFailed};
pub use words::Words;

use crate::handbook::page::{Body, Link, Page};
use crate::handbook::{Cover, Handbook};
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;
use std::sync::Arc;
use tera::Tera;

/// Why a handbook could not be rendered: a fault of a theme, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RenderFailed {
    /// The template and what is wrong with it.
    pub message: String,
}

impl std::fmt::Display for RenderFailed {
    fn fmt(&self, words: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        words.write_str(&self.message)
    }
}

impl std::error::Error for RenderFailed {}

/// What a template sees of the handbook as a whole.
#[derive(Debug, Serialize)]
struct Book<'b> {
    title: &'b str,
    language: &'b str,
    direction: Option<&'static str>,
    edition: &'b str,
    caution: &'b str,
    logo: Option<String>,
    jobs: Option<&'static str>,
    limits: Option<&'static str>,
    index: Vec<IndexGroup>,
}

/// A group of links at the foot of a page.
#[derive(Debug, Serialize)]
struct IndexGroup {
    title: Option<String>,
    links: Vec<Link>,
}

/// What a template sees of a page.
#[derive(Debug, Serialize)]
struct Sight<'s> {
    book: &'s Book<'s>,
    page: &'s Page,
    body: &'s Body,
    root: &'s str,
}

/// Renders every file of the site.
///
/// # Errors
/// When a template of the theme is faulty.
pub fn render(handbook: &Handbook, theme: &Theme) -> Result<BTreeMap<String, Vec<u8>>, RenderFailed> {
    let words = Arc::new(Words::of(&handbook.cover.language));
    let mut tera = theme.templates()?;
    functions::register(&mut tera, &words, &handbook.targets, theme);
    let pages = titled(&handbook.pages, &words);
    let book = book(&handbook.cover, &pages, &words, theme);
    let rendered: Result<Vec<_>, _> = pages.par_iter().map(|page| one(&tera, &book, page)).collect();
    let mut files: BTreeMap<String, Vec<u8>> = rendered?.into_iter().collect();
    files.extend(theme.assets());
    files.insert("look/search-index.js".into(), search::index(handbook, &words));
    files.extend(handbook.pictures.iter().map(|(address, bytes)| (address.clone(), bytes.clone())));
    Ok(files)
}

/// Pages that no guide names get their names from the messages.
fn titled(pages: &[Page], words: &Words) -> Vec<Page> {
    let named = pages.iter().map(|page| match (&page.body, page.title.is_empty()) {
        (Body::Ending(ending), true) => Page { title: words.say(&format!("ending-{}", ending.kind)), ..page.clone() },
        (_, true) => Page { title: words.say(page.kind), ..page.clone() },
        _ => page.clone(),
    });
    named.collect()
}

fn one(tera: &Tera, book: &Book<'_>, page: &Page) -> Result<(String, Vec<u8>), RenderFailed> {
    let sight = Sight { book, page, body: &page.body, root: &page.root };
    let context = tera::Context::from_serialize(&sight).map_err(|error| faulty(&page.address, &error))?;
    let name = format!("pages/{}.html", template(&page.body));
    let html = tera.render(&name, &context).map_err(|error| faulty(&name, &error))?;
    Ok((page.address.clone(), prose::rooted(&html, &page.root).into_bytes()))
}

/// The template of a body.
fn template(body: &Body) -> &'static str {
    match body {
        Body::Front(_) => "front",
        Body::Kit(_) => "kit",
        Body::Lamps(_) => "lamps",
        Body::Symptom(_) => "symptom",
        Body::Question(_) => "question",
        Body::Ending(_) => "ending",
        Body::Procedure(_) => "procedure",
        Body::Checklist(_) => "checklist",
        Body::Circuit(_) => "circuit",
        Body::Limits(_) => "limits",
        Body::Stores(_) => "stores",
        Body::Words(_) => "words",
        Body::Sheet(_) => "sheet",
        Body::Sheets(_) => "sheets",
        Body::Jobs(_) => "jobs",
        Body::About(_) => "about",
        Body::Writing(_) => "writing",
        Body::All(_) => "all",
    }
}

fn faulty(name: &str, error: &tera::Error) -> RenderFailed {
    let mut message = format!("the theme's template `{name}` is faulty: {error}");
    let mut cause = std::error::Error::source(error);
    while let Some(deeper) = cause {
        message.push_str(&format!("\n  {deeper}"));
        cause = deeper.source();
    }
    RenderFailed { message }
}

fn book<'b>(cover: &'b Cover, pages: &[Page], words: &Words, theme: &Theme) -> Book<'b> {
    let has = |address: &str| pages.iter().any(|page| page.address == address);
    Book {
        title: &cover.title,
        language: &cover.language,
        direction: words.right_to_left().then_some("rtl"),
        edition: &cover.edition,
        caution: &cover.caution,
        logo: theme.logo(),
        jobs: has("jobs.html").then_some("jobs.html"),
        limits: has("limits.html").then_some("limits.html"),
        index: index(pages),
    }
}

/// The index at the foot: the items of kit, then the lists.
fn index(pages: &[Page]) -> Vec<IndexGroup> {
    let link = |page: &Page| Link { title: page.title.clone(), address: page.address.clone() };
    let of = |address: &&str| pages.iter().find(|page| page.address == **address).map(link);
    let kits = pages.iter().filter(|page| matches!(page.body, Body::Kit(_))).map(link).collect();
    let finding = ["index.html", "lamps.html", "jobs.html", "all.html"];
    let lists = ["limits.html", "stores.html", "words.html", "sheets.html"];
    let about = ["about.html", "writing.html"];
    let group = |links: Vec<Link>| IndexGroup { title: None, links };
    vec![
        group(finding.iter().filter_map(of).collect()),
        group(kits),
        group(lists.iter().filter_map(of).collect()),
        group(about.iter().filter_map(of).collect()),
    ]
}
