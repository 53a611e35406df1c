//! What the handbook says, set as HTML and drawn as SVG.
//!
//! In: a [`Handbook`] as data, and a [`Theme`]. Out: the bytes of every file of the site, by address.
//! Leaves to others: what pages say (`handbook`), writing the files (`press`).

mod code;
pub mod figures;
pub mod forms;
mod functions;
mod inside;
mod lean;
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
use crate::handbook::{Cover, Entry, Handbook, record};
use forms::Stock;
use inside::Inside;
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
    online: bool,
    jobs: Option<&'static str>,
    limits: Option<&'static str>,
    changes: Option<&'static str>,
    notice: Option<&'static str>,
    index: Vec<IndexGroup>,
    search_index: String,
}

/// A group of links at the foot of a page.
#[derive(Debug, Serialize)]
struct IndexGroup {
    title: Option<String>,
    links: Vec<Link>,
}

/// What stands around a page.
#[derive(Debug, Clone)]
pub(crate) enum Frame {
    /// All that a page needs to stand by itself.
    Page,
    /// Nothing: it is a section of a file that has its own frame; drawings share what they have in common.
    Section(Arc<Stock>),
    /// Nothing: it is a chapter of a book, in which no script runs.
    Chapter,
}

/// A handbook ready to be set, page by page and whenever a page is wanted.
pub struct Setting {
    tera: Tera,
    indexes: BTreeMap<String, Value>,
    words: Arc<Words>,
    title: String,
    edition: String,
    language: String,
    inside: Inside,
    pages: BTreeMap<String, Page>,
    /// For chapters: what is read in place of a page that is nothing without its script.
    instead: BTreeMap<String, String>,
    search: Vec<Entry>,
    files: BTreeMap<String, Vec<u8>>,
}

impl std::fmt::Debug for Setting {
    fn fmt(&self, words: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(words, "Setting({}, {} pages)", self.title, self.pages.len())
    }
}

impl Setting {
    /// Makes ready what is set when it is wanted: the pages of a folder, a setting a language.
    ///
    /// # Errors
    /// When a template of the theme is faulty.
    pub fn of_all(handbooks: Vec<Handbook>, theme: &Theme) -> Result<Vec<Setting>, RenderFailed> {
        let names = language_names(&handbooks);
        handbooks.into_iter().map(|handbook| Setting::of(handbook, theme, Frame::Page, &names)).collect()
    }

    /// `names`: what the handbook's languages are called.
    pub(crate) fn of(
        mut handbook: Handbook,
        theme: &Theme,
        frame: Frame,
        names: &Arc<BTreeMap<String, String>>,
    ) -> Result<Setting, RenderFailed> {
        let words = Arc::new(Words::of(&handbook.cover.language, &handbook.messages));
        let (template, stock) = match &frame {
            Frame::Page => (theme::FRAME, None),
            Frame::Section(stock) => ("pages/frame-section.html", Some(stock)),
            Frame::Chapter => ("pages/frame-section.html", None),
        };
        let mut tera = theme.templates(template)?;
        let home = qr::home(&handbook);
        functions::register(&mut tera, &words, std::mem::take(&mut handbook.targets), stock, home.as_deref());
        functions::languages(&mut tera, names);
        let mut pages = std::mem::take(&mut handbook.pages);
        pages.iter_mut().filter(|page| page.title.is_empty()).for_each(|page| page.title = own_title(page, &words));
        let inside = Inside::of(handbook.folder.as_deref(), handbook.elsewhere.as_deref(), &mut pages);
        let mut instead = BTreeMap::new();
        if let Frame::Chapter = &frame {
            pages.retain(|page| match in_place_of(page) {
                Some(other) => {
                    instead.insert(page.address.clone(), other);
                    false
                }
                None => true,
            });
        }
        if let Frame::Section(_) | Frame::Chapter = &frame {
            pages.iter_mut().for_each(|page| page.root = prose::ROOT.to_owned());
        }
        let book = book(&handbook, &pages, &words, theme);
        tera.global_context().insert("book", &book);
        let indexes = indexes(&tera, &book, &pages)?;
        let index = search::index(&handbook.search, &words, &|to| Some(inside.address(to)));
        let mut files = BTreeMap::from([(book.search_index.clone(), index)]);
        files.append(&mut match &frame {
            Frame::Page => theme.assets_of_pages(),
            Frame::Section(_) | Frame::Chapter => theme.assets(),
        });
        files.append(&mut handbook.pictures);
        let pages = pages.into_iter().map(|page| (inside.address(&page.address), page)).collect();
        let (cover, search) = (handbook.cover, handbook.search);
        let (title, edition, language) = (cover.title, cover.edition, cover.language);
        Ok(Setting { tera, indexes, words, title, edition, language, inside, pages, instead, search, files })
    }

    /// The bytes of a file of the folder: a page, set now, or one that stands beside the pages. Nothing when there is none.
    ///
    /// # Errors
    /// When the page's template is faulty.
    pub fn file(&self, address: &str) -> Result<Option<Vec<u8>>, RenderFailed> {
        match self.pages.get(address) {
            Some(page) => one(&self.tera, &self.indexes, &self.inside, &self.words, page).map(|(_, bytes)| Some(bytes)),
            None => Ok(self.files.get(address).cloned()),
        }
    }

    /// The pages, by address.
    pub fn pages(&self) -> &BTreeMap<String, Page> {
        &self.pages
    }

    /// Puts the pages of a guide in place of those that have the same address. What an edition or another language added to a page stays.
    pub fn put(&mut self, pages: Vec<Page>) {
        for mut page in pages {
            if page.title.is_empty() {
                page.title = own_title(&page, &self.words);
            }
            if let Some(former) = self.pages.remove(&page.address) {
                (page.languages, page.changed) = (former.languages, former.changed);
            }
            self.pages.insert(page.address.clone(), page);
        }
    }

    /// A part of the theme by itself, given what its template calls it by.
    ///
    /// # Errors
    /// When the part is faulty.
    pub fn part(&self, name: &str, given: &impl Serialize) -> Result<String, RenderFailed> {
        let given = Context::from_serialize(given).map_err(|error| faulty(name, &error))?;
        let set = self.tera.render_component(name, &given, None, true);
        set.map_err(|error| faulty(name, &error))
    }

    /// Every page, set.
    pub(crate) fn all(&self) -> Result<Vec<(String, Vec<u8>)>, RenderFailed> {
        let pages: Vec<&Page> = self.pages.values().collect();
        pages.into_par_iter().map(|page| one(&self.tera, &self.indexes, &self.inside, &self.words, page)).collect()
    }

    /// A template that is no page's: what a form has around its sections.
    pub(crate) fn around(&self, name: &str, given: &Context) -> Result<String, RenderFailed> {
        let mut context = given.clone();
        context.insert("root", prose::ROOT);
        context.insert_value("index", self.indexes.get(prose::ROOT).cloned().unwrap_or_else(Value::none));
        self.tera.render(name, &context).map_err(|error| faulty(name, &error))
    }
}

/// What is read instead of a page that is nothing without its script: a practice bench's cards do the same on paper.
fn in_place_of(page: &Page) -> Option<String> {
    match &page.body {
        Body::Practice(practice) => Some(practice.cards.clone()),
        _ => None,
    }
}

/// What each language is called, in its own words.
fn language_names(handbooks: &[Handbook]) -> Arc<BTreeMap<String, String>> {
    let named = |book: &Handbook| {
        let words = Words::of(&book.cover.language, &book.messages);
        (book.cover.language.clone(), words.say("language-name"))
    };
    Arc::new(handbooks.iter().map(named).collect())
}

/// Renders every file of the site, from the handbook in each of its languages.
///
/// # Errors
/// When a template of the theme is faulty.
pub fn render_all(handbooks: Vec<Handbook>, theme: &Theme) -> Result<BTreeMap<String, Vec<u8>>, RenderFailed> {
    let names = language_names(&handbooks);
    let cover = handbooks.first().map(|handbook| handbook.cover.clone()).unwrap_or_default();
    let mut files = BTreeMap::new();
    for handbook in handbooks {
        files.extend(in_one_language(handbook, theme, &names)?);
    }
    if is_online(&cover) {
        forms::online(&cover.title, &cover.language, &mut files);
    }
    Ok(files)
}

/// Renders every file of a handbook in one language.
///
/// # Errors
/// When a template of the theme is faulty.
pub fn render(handbook: Handbook, theme: &Theme) -> Result<BTreeMap<String, Vec<u8>>, RenderFailed> {
    render_all(vec![handbook], theme)
}

/// Each page's data are let go as soon as it is rendered.
fn in_one_language(
    handbook: Handbook,
    theme: &Theme,
    names: &Arc<BTreeMap<String, String>>,
) -> Result<BTreeMap<String, Vec<u8>>, RenderFailed> {
    let record = handbook.folder.is_none().then(|| (record::NAME.to_owned(), handbook.record.bytes()));
    let Setting { tera, indexes, words, inside, pages, mut files, .. } =
        Setting::of(handbook, theme, Frame::Page, names)?;
    let pages: Vec<Page> = pages.into_values().collect();
    let rendered: Result<Vec<_>, _> =
        pages.into_par_iter().map(|page| one(&tera, &indexes, &inside, &words, &page)).collect();
    files.extend(rendered?);
    files.extend(record);
    Ok(files)
}

/// Whether the handbook is also on the net, where a phone may keep it.
fn is_online(cover: &Cover) -> bool {
    cover.address.as_deref().is_some_and(|address| address.starts_with("https://"))
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
fn one(
    tera: &Tera,
    indexes: &BTreeMap<String, Value>,
    inside: &Inside,
    words: &Words,
    page: &Page,
) -> Result<(String, Vec<u8>), RenderFailed> {
    let seen = Value::try_from_serializable(page).map_err(|error| faulty(&page.address, &error))?;
    let mut context = Context::new();
    context.insert_value("body", seen.get_from_path("body").cloned().unwrap_or_else(Value::none));
    context.insert_value("page", seen);
    context.insert("root", &page.root);
    context.insert_value("index", indexes.get(&page.root).cloned().unwrap_or_else(Value::none));
    let name = format!("pages/{}.html", template(&page.body));
    let html = tera.render(&name, &context).map_err(|error| faulty(&name, &error))?;
    let address = inside.address(&page.address);
    let mut html = words.set(inside.led(prose::rooted(&html, &page.root), &page.root));
    // A section of a file of many pages has its ways and shapes in common with the others.
    if page.root != prose::ROOT {
        html = lean::lean(html, &address, &page.root);
    }
    let mut bytes = html.into_bytes();
    bytes.shrink_to_fit();
    Ok((address, bytes))
}

/// The template of a body.
fn template(body: &Body) -> &'static str {
    match body {
        Body::Front(_) => "front",
        Body::Kit(_) => "kit",
        Body::Lamps(_) => "lamps",
        Body::LampsOf(_) => "lamps-of",
        Body::How(_) => "how",
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
        Body::Way(_) => "way",
        Body::Stop(_) => "stop",
        Body::Practices(_) => "practices",
        Body::Practice(_) => "practice",
        Body::Cards(_) => "cards",
        Body::About(_) => "about",
        Body::Changes(_) => "changes",
        Body::Prints(_) => "prints",
        Body::Notice(_) => "notice",
        Body::Juniors(_) => "juniors",
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

fn book<'b>(handbook: &'b Handbook, pages: &[Page], words: &Words, theme: &Theme) -> Book<'b> {
    let cover = &handbook.cover;
    let has = |address: &str| pages.iter().any(|page| page.address == address);
    Book {
        title: &cover.title,
        language: &cover.language,
        direction: words.right_to_left().then_some("rtl"),
        edition: &cover.edition,
        caution: &cover.caution,
        logo: theme.logo(),
        online: is_online(cover),
        jobs: has("jobs.html").then_some("jobs.html"),
        limits: has("limits.html").then_some("limits.html"),
        changes: has("changes.html").then_some("changes.html"),
        notice: has("notice.html").then_some("notice.html"),
        index: index(pages),
        search_index: handbook
            .folder
            .as_ref()
            .map_or_else(|| "look/search-index.js".to_owned(), |folder| format!("look/search-index-{folder}.js")),
    }
}

/// The index at the foot: the items of kit, then the lists.
fn index(pages: &[Page]) -> Vec<IndexGroup> {
    let link = |page: &Page| Link { title: page.title.clone(), address: page.address.clone() };
    let of = |address: &&str| pages.iter().find(|page| page.address == **address).map(link);
    let kits = pages.iter().filter(|page| matches!(page.body, Body::Kit(_))).map(link).collect();
    let finding = ["index.html", "lamps.html", "jobs.html", "fetch.html", "all.html"];
    let lists = ["limits.html", "stores.html", "words.html", "sheets.html"];
    let about = ["about.html", "changes.html", "prints.html", "juniors.html", "writing.html"];
    let group = |links: Vec<Link>| IndexGroup { title: None, links };
    let groups = vec![
        group(finding.iter().filter_map(of).collect()),
        group(kits),
        group(pages.iter().filter(|page| matches!(page.body, Body::Way(_) | Body::Practices(_))).map(link).collect()),
        group(lists.iter().filter_map(of).collect()),
        group(about.iter().filter_map(of).collect()),
    ];
    groups.into_iter().filter(|group| !group.links.is_empty()).collect()
}
