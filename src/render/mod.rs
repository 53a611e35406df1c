//! What the handbook says, set as HTML and drawn as SVG.
//!
//! In: a [`Handbook`] as data, and a [`Theme`]. Out: the bytes of every file of the site, by address.
//! Leaves to others: what pages say (`handbook`), writing the files (`press`).

mod code;
pub mod figures;
mod functions;
#[cfg(feature = "pdf")]
pub mod pdf;
mod prose;
mod qr;
mod search;
mod sheet_file;
mod states;
mod style;
mod theme;
mod words;

pub use sheet_file::{MARK as SHEET_MARK, sheet_file};
pub use states::states;
pub use theme::{Theme, ThemeFailed};
pub use words::Words;

use crate::handbook::page::{Body, Link, Page};
use crate::handbook::{Cover, Handbook};
use rayon::prelude::*;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use tera::{Context, Tera, Value};

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

/// Renders every file of the site. Each page's data are let go as soon as it is rendered.
///
/// # Errors
/// When a template of the theme is faulty.
pub fn render(mut handbook: Handbook, theme: &Theme) -> Result<BTreeMap<String, Vec<u8>>, RenderFailed> {
    let words = Arc::new(Words::of(&handbook.cover.language));
    let mut tera = theme.templates()?;
    functions::register(&mut tera, &words, std::mem::take(&mut handbook.targets), handbook.cover.address.as_deref());
    let mut pages = std::mem::take(&mut handbook.pages);
    pages.iter_mut().filter(|page| page.title.is_empty()).for_each(|page| page.title = own_title(page, &words));
    let book = book(&handbook.cover, &pages, &words, theme);
    tera.global_context().insert("book", &book);
    let indexes = indexes(&tera, &book, &pages)?;
    let rendered: Result<Vec<_>, _> = pages.into_par_iter().map(|page| one(&tera, &indexes, &page)).collect();
    let mut files: BTreeMap<String, Vec<u8>> = rendered?.into_iter().collect();
    files.extend(theme.assets());
    files.insert("look/search-index.js".into(), search::index(&handbook, &words));
    files.append(&mut handbook.pictures);
    Ok(files)
}

/// The name of a page that no guide names: from the messages.
fn own_title(page: &Page, words: &Words) -> String {
    match &page.body {
        Body::Ending(ending) => words.say(&format!("ending-{}", ending.kind)),
        _ => words.say(page.kind),
    }
}

/// The index at the foot, set once for all pages that are as deep: by the page's way to the top folder.
fn indexes(tera: &Tera, book: &Book<'_>, pages: &[Page]) -> Result<BTreeMap<String, Value>, RenderFailed> {
    let mut groups = Context::new();
    groups.insert("groups", &book.index);
    let roots: BTreeSet<&str> = pages.iter().map(|page| page.root.as_str()).collect();
    let set = |root: &str| {
        let mut implied = Context::new();
        implied.insert("root", root);
        let html = tera.render_component_with_implicits("foot_index", &groups, &implied, None, true);
        let html = html.map_err(|error| faulty("parts/foot-index/part.html", &error))?;
        Ok((root.to_owned(), Value::safe_string(&html)))
    };
    roots.into_iter().map(set).collect()
}

/// Renders a page. A template sees `book`, `page`, `body` (that of the page), `root` and `index`.
fn one(tera: &Tera, indexes: &BTreeMap<String, Value>, page: &Page) -> Result<(String, Vec<u8>), RenderFailed> {
    let seen = Value::try_from_serializable(page).map_err(|error| faulty(&page.address, &error))?;
    let mut context = Context::new();
    context.insert_value("body", seen.get_from_path("body").cloned().unwrap_or_else(Value::none));
    context.insert_value("page", seen);
    context.insert("root", &page.root);
    context.insert_value("index", indexes.get(&page.root).cloned().unwrap_or_else(Value::none));
    let name = format!("pages/{}.html", template(&page.body));
    let html = tera.render(&name, &context).map_err(|error| faulty(&name, &error))?;
    let mut bytes = prose::rooted(&html, &page.root).into_bytes();
    bytes.shrink_to_fit();
    Ok((page.address.clone(), bytes))
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
        Body::Fetch(_) => "fetch",
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
    let finding = ["index.html", "lamps.html", "jobs.html", "fetch.html", "all.html"];
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
