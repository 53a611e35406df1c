//! The handbook as an EPUB 3.3: what goes into the package, in its order.
//!
//! In: a handbook and a theme. Out: the files of the package, the media type first, as it has to be. Leaves to others: packing them
//! (`press`). Decision pages are plain links and stand outside the order of reading, so that turning the page goes from guide to
//! guide. No page has a script. Nothing in it depends on the day on which it was made.

use super::super::prose::ROOT;
use super::super::{Frame, RenderFailed, Setting, Theme};
use super::markup::{self, LeftOut, Scribe, Tag};
use super::pictures::media_type;
use super::xhtml::{Xhtml, escaped};
use crate::handbook::Handbook;
use crate::handbook::page::{Body, Page};
use std::collections::BTreeMap;
use std::fmt::Write;
use std::sync::Arc;
use tera::Context;

const CONTAINER: &str = "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n\
    <container version=\"1.0\" xmlns=\"urn:oasis:names:tc:opendocument:xmlns:container\"><rootfiles>\
    <rootfile full-path=\"EPUB/package.opf\" media-type=\"application/oebps-package+xml\"/></rootfiles></container>\n";

const XHTML: &str = "application/xhtml+xml";

/// The files of the package, in the order in which they are packed.
///
/// # Errors
/// When a template of the theme is faulty, or leaves an element open that XML wants closed.
pub fn epub(handbook: Handbook, theme: &Theme) -> Result<Vec<(String, Vec<u8>)>, RenderFailed> {
    let day = handbook.cover.day.clone();
    let setting = Setting::of(handbook, theme, Frame::Chapter, &Arc::default())?;
    let order = Order::of(&setting);
    let mut files = BTreeMap::new();
    for (address, html) in setting.all()? {
        let page = page(&setting, &address, &String::from_utf8_lossy(&html))?;
        files.insert(renamed(&address), page.into_bytes());
    }
    files.insert("look/book.css".to_owned(), theme.book_style().into_bytes());
    // The icon is for a browser's tab.
    let is_shown = |name: &str| media_type(name).starts_with("image/") && name != "look/icon.svg";
    let shown = setting.files.iter().filter(|(name, _)| is_shown(name));
    files.extend(shown.map(|(name, bytes)| (name.clone(), bytes.clone())));
    files.insert("nav.xhtml".to_owned(), nav(&setting, &order).into_bytes());
    let package = package(&setting, &order, &files, &day);
    let first = [
        ("mimetype".to_owned(), b"application/epub+zip".to_vec()),
        ("META-INF/container.xml".to_owned(), CONTAINER.as_bytes().to_vec()),
        ("EPUB/package.opf".to_owned(), package.into_bytes()),
    ];
    let rest = files.into_iter().map(|(name, bytes)| (format!("EPUB/{name}"), bytes));
    Ok(first.into_iter().chain(rest).collect())
}

fn renamed(address: &str) -> String {
    address.strip_suffix(".html").map_or_else(|| address.to_owned(), |name| format!("{name}.xhtml"))
}

/// A page with its head.
fn page(setting: &Setting, address: &str, html: &str) -> Result<String, RenderFailed> {
    let root = "../".repeat(address.matches('/').count());
    let title = setting.pages.get(address).map_or("", |page| page.title.as_str());
    let shapes = setting.around("pages/shared-drawings.html", &Context::new())?;
    let law = setting.around("pages/law.html", &Context::new())?;
    let mut writing = Rewriting { setting, root: &root, out: Xhtml::default(), left: LeftOut::default() };
    markup::read(&format!("{shapes}{html}{law}"), &mut writing);
    let body = writing.out.finish().map_err(|open| RenderFailed {
        message: format!("`{address}`: the element `{open}` is not closed where XML wants it. An EPUB needs that: close it in the theme's part."),
    })?;
    Ok(format!(
        "{}<head><title>{}</title><link rel=\"stylesheet\" type=\"text/css\" href=\"{root}look/book.css\"/></head>\n<body>{body}</body></html>\n",
        opened(setting),
        escaped(title),
    ))
}

fn opened(setting: &Setting) -> String {
    let language = escaped(&setting.language);
    let direction = if setting.words.right_to_left() { " dir=\"rtl\"" } else { "" };
    format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" \
         xmlns:epub=\"http://www.idpf.org/2007/ops\" lang=\"{language}\" xml:lang=\"{language}\"{direction}>\n"
    )
}

struct Rewriting<'r> {
    setting: &'r Setting,
    root: &'r str,
    out: Xhtml,
    left: LeftOut,
}

impl Scribe for Rewriting<'_> {
    fn open(&mut self, mut tag: Tag) {
        let unwanted = markup::is_of_a_frame(&tag) || tag.name == "button";
        if self.left.opens(&tag, unwanted) {
            return;
        }
        for lazy in ["loading", "decoding", "data-root"] {
            tag.remove(lazy);
        }
        if let Some(src) = tag.get("src").and_then(|src| src.strip_prefix(ROOT)) {
            let src = format!("{}{src}", self.root);
            tag.set("src", src);
        }
        if let Some(href) = tag.get("href").and_then(|href| href.strip_prefix(ROOT)) {
            let (address, id) = href.split_once('#').map_or((href, None), |(address, id)| (address, Some(id)));
            // What is read instead has other places in it.
            let (address, id) = match self.setting.instead.get(address) {
                Some(other) => (other.as_str(), None),
                None => (address, id),
            };
            if self.setting.pages.contains_key(address) {
                let id = id.map_or_else(String::new, |id| format!("#{id}"));
                tag.set("href", format!("{}{}{id}", self.root, renamed(address)));
            } else {
                tag.remove("href");
            }
        }
        self.out.open(&tag);
    }

    fn close(&mut self, name: &str) {
        if !self.left.closes(name) {
            self.out.close(name);
        }
    }

    fn text(&mut self, text: &str) {
        if !self.left.is_inside() {
            self.out.text(text);
        }
    }
}

/// An entry of the contents, with what stands under it.
struct Entry<'p> {
    page: &'p Page,
    under: Vec<&'p Page>,
}

/// The order of reading.
struct Order<'p> {
    /// What is read one after the other: the contents say the same.
    read: Vec<Entry<'p>>,
    /// What only links lead to: questions, endings, sheets.
    linked: Vec<&'p Page>,
}

impl<'p> Order<'p> {
    fn of(setting: &'p Setting) -> Order<'p> {
        let pages = || setting.pages.values();
        let at = |address: &str| setting.pages.get(address);
        let mut read: Vec<Entry<'p>> = Vec::new();
        let add = |read: &mut Vec<Entry<'p>>, page: Option<&'p Page>, under: Vec<&'p Page>| {
            read.extend(page.map(|page| Entry { page, under }));
        };
        add(&mut read, at("index.html"), Vec::new());
        for kit in pages().filter(|page| matches!(page.body, Body::Kit(_))) {
            let of_kit = |page: &&Page| {
                matches!(page.body, Body::Symptom(_)) && page.trail.iter().any(|link| link.address == kit.address)
            };
            add(&mut read, Some(kit), pages().filter(of_kit).collect());
        }
        let jobs = pages().filter(|page| matches!(page.body, Body::Procedure(_) | Body::Checklist(_))).collect();
        add(&mut read, at("jobs.html"), jobs);
        for page in pages().filter(|page| matches!(page.body, Body::Circuit(_))) {
            add(&mut read, Some(page), Vec::new());
        }
        let told = |read: &[Entry<'p>], page: &Page| {
            read.iter().any(|entry| {
                entry.page.address == page.address || entry.under.iter().any(|under| under.address == page.address)
            })
        };
        let on_the_way = |page: &Page| matches!(page.body, Body::Question(_) | Body::Ending(_) | Body::Sheet(_));
        let rest: Vec<&Page> = pages().filter(|page| !told(&read, page) && !on_the_way(page)).collect();
        for page in rest {
            add(&mut read, Some(page), Vec::new());
        }
        Order { read, linked: pages().filter(|page| on_the_way(page)).collect() }
    }

    fn in_order(&self) -> impl Iterator<Item = &'p Page> {
        self.read.iter().flat_map(|entry| std::iter::once(entry.page).chain(entry.under.iter().copied()))
    }
}

fn nav(setting: &Setting, order: &Order<'_>) -> String {
    let link = |page: &Page| format!("<a href=\"{}\">{}</a>", renamed(&page.address), escaped(&page.title));
    let heading = escaped(&setting.words.say("all-pages"));
    let mut list = String::new();
    for Entry { page, under } in &order.read {
        let under: String = under.iter().map(|page| format!("<li>{}</li>\n", link(page))).collect();
        let under = if under.is_empty() { under } else { format!("\n<ol>\n{under}</ol>") };
        // Writing to a string does not fail.
        let _ = writeln!(list, "<li>{}{under}</li>", link(page));
    }
    format!(
        "{}<head><title>{heading}</title><link rel=\"stylesheet\" type=\"text/css\" href=\"look/book.css\"/></head>\n\
         <body><nav epub:type=\"toc\" class=\"main\"><h1>{heading}</h1>\n<ol>\n{list}</ol></nav></body></html>\n",
        opened(setting)
    )
}

fn package(setting: &Setting, order: &Order<'_>, files: &BTreeMap<String, Vec<u8>>, day: &str) -> String {
    let mut manifest = String::new();
    let ids: BTreeMap<&str, String> =
        files.keys().enumerate().map(|(at, name)| (name.as_str(), format!("f{at}"))).collect();
    for (name, id) in &ids {
        let (kind, properties) = match name.rsplit('.').next() {
            _ if *name == "nav.xhtml" => (XHTML, " properties=\"nav\""),
            Some("xhtml") => (XHTML, " properties=\"svg\""),
            Some("css") => ("text/css", ""),
            _ => (media_type(name), ""),
        };
        let _ = writeln!(manifest, "<item id=\"{id}\" href=\"{name}\" media-type=\"{kind}\"{properties}/>");
    }
    let id_of = |page: &Page| ids.get(renamed(&page.address).as_str()).cloned().unwrap_or_default();
    let read = order.in_order().map(|page| format!("<itemref idref=\"{}\"/>\n", id_of(page)));
    let linked = order.linked.iter().map(|page| format!("<itemref idref=\"{}\" linear=\"no\"/>\n", id_of(page)));
    let spine: String = read.chain(linked).collect();
    format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<package xmlns=\"http://www.idpf.org/2007/opf\" version=\"3.0\" unique-identifier=\"book\" xml:lang=\"{language}\">\n\
         {metadata}<manifest>\n{manifest}</manifest>\n<spine>\n{spine}</spine>\n</package>\n",
        language = escaped(&setting.language),
        metadata = metadata(setting, files, day),
    )
}

/// What the book is. Its name is a hash of all that it holds, so that a reader never takes a new edition for the old one.
fn metadata(setting: &Setting, files: &BTreeMap<String, Vec<u8>>, day: &str) -> String {
    let mut said = String::new();
    for (name, value) in [
        ("accessMode", "textual"),
        ("accessMode", "visual"),
        ("accessModeSufficient", "textual"),
        ("accessibilityFeature", "alternativeText"),
        ("accessibilityFeature", "tableOfContents"),
        ("accessibilityHazard", "none"),
    ] {
        let _ = writeln!(said, "<meta property=\"schema:{name}\">{value}</meta>");
    }
    format!(
        "<metadata xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n<dc:identifier id=\"book\">urn:uuid:{id}</dc:identifier>\n\
         <dc:title>{title}</dc:title>\n<dc:language>{language}</dc:language>\n<dc:description>{edition}</dc:description>\n\
         <meta property=\"dcterms:modified\">{day}T00:00:00Z</meta>\n{said}</metadata>\n",
        id = uuid(files),
        title = escaped(&setting.title),
        language = escaped(&setting.language),
        edition = escaped(&setting.edition),
    )
}

/// A UUID of one's own making (RFC 9562, 5.8: version 8) out of a hash of the files.
fn uuid(files: &BTreeMap<String, Vec<u8>>) -> String {
    let mut hasher = blake3::Hasher::new();
    for (name, bytes) in files {
        hasher.update(name.as_bytes()).update(&[0]).update(blake3::hash(bytes).as_bytes());
    }
    let mut bytes = [0; 16];
    bytes.copy_from_slice(&hasher.finalize().as_bytes()[..16]);
    bytes[6] = bytes[6] & 0x0f | 0x80;
    bytes[8] = bytes[8] & 0x3f | 0x80;
    let digits: String = bytes.iter().map(|byte| format!("{byte:02x}")).collect();
    [&digits[..8], &digits[8..12], &digits[12..16], &digits[16..20], &digits[20..]].join("-")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_book_with_other_bytes_has_another_name() {
        let book = |text: &str| BTreeMap::from([("a".to_owned(), text.as_bytes().to_vec())]);
        let (one, other) = (uuid(&book("1")), uuid(&book("2")));
        assert_ne!(one, other);
        assert_eq!((&one[14..15], one.len()), ("8", 36));
    }
}
