//! The handbook as one HTML file: every page is a section, and the address bar says which one is shown.
//!
//! In: a handbook and a theme. Out: the file's bytes. A section is shown when the address leads to it or into it, by `:target`
//! alone; the front page is shown when it does not. Scripts add what they add to the folder's pages. A browser without `:has` shows
//! all sections one after the other. The file asks for nothing outside itself, and its policy allows only its own scripts, by
//! their hashes.

use super::super::prose::ROOT;
use super::super::{Frame, RenderFailed, Setting, Theme, search};
use super::compact::{self, Compact};
use super::markup::{self, LeftOut, Scribe, Tag};
use super::names::Names;
use super::sections::Links;
use super::{SIGN, Stock, pictures};
use crate::handbook::Handbook;
use crate::handbook::page::Body;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::read::DeflateEncoder;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::io::Read;
use std::sync::Arc;
use tera::Context;

/// Scripts that others lean on, in their order; the rest follows by name. A reading is judged when it has been recalled.
const SCRIPTS_FIRST: [&str; 5] =
    ["look/keep.js", "look/ticks.js", "look/minisearch.js", "look/search-index.js", "look/practice.js"];

/// Scripts that unfold what is folded when it is asked for, before all others.
const UNFOLDING: [&str; 2] = ["fflate/fflate", "unfold"];

/// Scripts of the folder's pages that have nothing to do in one file.
const SCRIPTS_LEFT_OUT: [&str; 2] = ["look/here.js", "look/offline.js"];

/// What the script that keeps a reader's place reads on a page.
const WHERE_ONE_STANDS: [&str; 4] = ["data-here", "data-symptom", "data-title", "data-address"];

/// The handbook as one file.
///
/// # Errors
/// When a template of the theme is faulty, and when two pages would have one id.
pub fn single(handbook: Handbook, theme: &Theme) -> Result<Vec<u8>, RenderFailed> {
    let stock = Arc::new(Stock::default());
    let setting = Setting::of(handbook, theme, Frame::Section(stock.clone()), &Arc::default())?;
    let sections = sections(&setting)?;
    let links = Links::of(&setting, &sections);
    if let Some((one, other)) = links.twins() {
        let message = format!(
            "In one file `{one}` and `{other}` would have the same name.\nGive one of the two another id, or bind a folder."
        );
        return Err(RenderFailed { message });
    }
    let scripts = scripts(&setting, &links, theme);
    let css = setting.files.get("look/marking-blue.css").map_or_else(String::new, |css| compact::style(&text(css)));
    let around = |part: &str| setting.around(part, &Context::new());
    let (top, foot) = (around("pages/single-top.html")?, around("pages/single-foot.html")?);
    let notice = folded_notice(&setting)?;
    let names = names(&sections, &css, &scripts, &around("pages/shared-drawings.html")?);
    let styles = names.styled(&css);
    let mut shown = Shown::default();
    let mut set = |html: &str, page| {
        rewritten(html, &Whole { page, links: &links, names: &names, setting: &setting }, &mut shown)
    };
    let (top, foot, shapes) = (set(&top, None), set(&foot, None), set(&stock.shapes(), None));
    let notice = set(&notice, None);
    let [mut plain, mut folded] = [String::new(), String::new()];
    for (address, html) in &sections {
        let kind = if links.is_folded(address) { &mut folded } else { &mut plain };
        kind.push_str(&set(html, Some(address)));
        kind.push('\n');
    }
    let mut context = Context::new();
    context.insert("policy", &policy(&styles, &scripts));
    context.insert("sign", SIGN);
    context.insert("css", &styles);
    context.insert("drawings", &(shapes + &shown.symbols));
    context.insert("sections", &plain);
    context.insert("folded", &deflated(&folded));
    context.insert("notice", &notice);
    context.insert("top", &top);
    context.insert("foot", &foot);
    context.insert("scripts", &scripts);
    Ok(setting.around("pages/single.html", &context)?.into_bytes())
}

/// What is read in place of a folded section until a script unfolds it.
fn folded_notice(setting: &Setting) -> Result<String, RenderFailed> {
    let mut context = Context::new();
    let practices = setting.pages.values().find(|page| matches!(page.body, Body::Practices(_)));
    context.insert("practices", &practices.map(|page| &page.address));
    setting.around("pages/single-folded.html", &context)
}

/// Text as data that a script unfolds; nothing for no text.
fn deflated(text: &str) -> String {
    let mut bytes = Vec::new();
    // Bytes are read from memory into memory, which does not fail.
    let read = DeflateEncoder::new(text.as_bytes(), Compression::best()).read_to_end(&mut bytes);
    if text.is_empty() || read.is_err() { String::new() } else { STANDARD.encode(bytes) }
}

/// Short names for the classes of the sections; what scripts and the file's own frame speak of keeps its name.
fn names(sections: &[(String, String)], css: &str, scripts: &[String], drawings: &str) -> Names {
    let mut spoken: Vec<&str> = scripts.iter().map(String::as_str).collect();
    spoken.extend([drawings, "one-file leaf out-of-sight"]);
    Names::of(sections.iter().map(|(_, html)| html.as_str()), css, &spoken)
}

/// Every page set as a section, the front page first.
fn sections(setting: &Setting) -> Result<Vec<(String, String)>, RenderFailed> {
    let mut sections = setting.all()?;
    sections.sort_by_key(|(address, _)| address != "index.html");
    Ok(sections.into_iter().map(|(address, bytes)| (address, text(&bytes))).collect())
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// The scripts in the order in which they have to run. Each stands at the end of the body, when all else is there.
fn scripts(setting: &Setting, links: &Links, theme: &Theme) -> Vec<String> {
    let index =
        search::index(&setting.search, &setting.words, &|address| links.lead(None, &format!("{ROOT}{address}")));
    let mut scripts: BTreeMap<&str, String> = BTreeMap::new();
    for (name, bytes) in setting.files.iter().filter(|(name, _)| name.ends_with(".js")) {
        scripts.insert(name, text(bytes));
    }
    scripts.insert("look/search-index.js", text(&index));
    SCRIPTS_LEFT_OUT.iter().for_each(|name| drop(scripts.remove(name)));
    let first: Vec<String> = SCRIPTS_FIRST.iter().filter_map(|name| scripts.remove(name)).collect();
    let own = |name: &&str| theme.single_script(name);
    let unfolding = UNFOLDING.iter().map(own);
    unfolding.chain(first).chain(scripts.into_values()).chain(std::iter::once(own(&"one-file"))).collect()
}

/// What the file may do: its own styles and scripts, by their hashes (Content Security Policy Level 3, 2.3.1), and data.
fn policy(styles: &str, scripts: &[String]) -> String {
    let hash = |text: &str| format!("'sha256-{}'", STANDARD.encode(Sha256::digest(text.as_bytes())));
    let scripts: Vec<String> = scripts.iter().map(|script| hash(script)).collect();
    format!(
        "default-src 'none'; style-src {}; script-src {}; img-src data:; font-src data:; base-uri 'none'; form-action 'none'",
        hash(styles),
        scripts.join(" ")
    )
}

/// The pictures shown so far.
#[derive(Default)]
struct Shown {
    /// By address: the symbol's id and the picture's size.
    known: BTreeMap<String, (String, (f64, f64))>,
    symbols: String,
}

impl Shown {
    fn picture(&mut self, setting: &Setting, address: &str) -> Option<(String, (f64, f64))> {
        if let Some(known) = self.known.get(address) {
            return Some(known.clone());
        }
        let bytes = setting.files.get(address)?;
        let size = pictures::size(address, bytes)?;
        let id = format!("p{}", self.known.len() + 1);
        self.symbols.push_str(&pictures::symbol(&id, address, bytes, size));
        self.known.insert(address.to_owned(), (id.clone(), size));
        Some((id, size))
    }
}

/// What a piece of the file is rewritten by.
struct Whole<'w> {
    /// The page whose section it is, if it is one.
    page: Option<&'w str>,
    links: &'w Links,
    names: &'w Names,
    setting: &'w Setting,
}

fn rewritten(html: &str, whole: &Whole<'_>, shown: &mut Shown) -> String {
    let mut writing = Rewriting {
        page: whole.page,
        links: whole.links,
        names: whole.names,
        setting: whole.setting,
        shown,
        out: Compact::default(),
        left: LeftOut::default(),
        spans: Vec::new(),
        wire: None,
        hands_over: false,
        first: true,
    };
    markup::read(html, &mut writing);
    writing.flush();
    writing.out.finish()
}

struct Rewriting<'r> {
    page: Option<&'r str>,
    links: &'r Links,
    names: &'r Names,
    setting: &'r Setting,
    shown: &'r mut Shown,
    out: Compact,
    left: LeftOut,
    /// For each `span` that is open, whether it is written.
    spans: Vec<bool>,
    /// A wire of a circuit: the next one is drawn in the same stroke.
    wire: Option<Tag>,
    /// Whether we are where a reader hands over.
    hands_over: bool,
    /// Whether the section's own tag is still to come.
    first: bool,
}

impl Scribe for Rewriting<'_> {
    fn open(&mut self, mut tag: Tag) {
        if self.left.opens(&tag, self.page.is_some() && self.is_unwanted(&tag)) {
            return;
        }
        self.hands_over |= tag.has_class("handover");
        if tag.name == "span" {
            // The cell around a place that leads nowhere is there for links alone to have something beside them.
            let written = !(tag.has_class("rail-cell") && tag.get("aria-current").is_none());
            self.spans.push(written);
            if !written {
                return;
            }
        }
        // There is one `main` in a file, and the sections stand in it.
        if tag.name == "main" && self.page.is_some() {
            tag.name = "div".to_owned();
            tag.remove("id");
            tag.remove("tabindex");
        }
        tag.remove("focusable");
        if tag.name == "img" {
            return self.image(&tag);
        }
        self.relink(&mut tag);
        if let Some(classes) = tag.get("class") {
            let classes = self.names.listed(classes);
            tag.set("class", classes);
        }
        self.draw(tag);
    }

    fn close(&mut self, name: &str) {
        if self.left.closes(name) || name == "span" && self.spans.pop() == Some(false) {
            return;
        }
        self.hands_over &= name != "section";
        self.flush();
        self.out.close(if name == "main" && self.page.is_some() { "div" } else { name });
    }

    fn text(&mut self, text: &str) {
        if !self.left.is_inside() {
            if !text.trim().is_empty() {
                self.flush();
            }
            self.out.text(text);
        }
    }
}

impl Rewriting<'_> {
    /// What only a page of its own needs: the switch and the search, the trail's own end, and the advice to send the page's address.
    fn is_unwanted(&self, tag: &Tag) -> bool {
        markup::is_of_a_frame(tag)
            || tag.name == "li" && tag.get("aria-current") == Some("page")
            || tag.name == "p" && self.hands_over && tag.has_class("quiet")
    }

    /// Writes a tag. Wires of a circuit that follow each other are drawn in one stroke.
    fn draw(&mut self, tag: Tag) {
        let is_wire = tag.name == "path" && tag.closed && tag.attributes.len() == 2 && tag.has_class("wire");
        let path = tag.get("d").unwrap_or("");
        match &mut self.wire {
            Some(wire) if is_wire && wire.get("class") == tag.get("class") => {
                let longer = format!("{}{path}", wire.get("d").unwrap_or(""));
                wire.set("d", longer);
            }
            _ => {
                self.flush();
                if is_wire {
                    self.wire = Some(tag);
                } else {
                    self.out.open(&tag);
                }
            }
        }
    }

    fn flush(&mut self) {
        if let Some(wire) = self.wire.take() {
            self.out.open(&wire);
        }
    }

    /// Gives ids their numbers, and whatever refers to them or to a page the new name.
    fn relink(&mut self, tag: &mut Tag) {
        let (links, page) = (self.links, self.page);
        if std::mem::take(&mut self.first)
            && let Some(key) = links.key(page)
        {
            tag.set("id", key.clone());
            return;
        }
        let own = page.and_then(|page| self.setting.pages.get(page)).map_or("", |page| page.key.as_str());
        for (name, value) in &mut tag.attributes {
            match name.as_str() {
                "id" | "for" => *value = links.id(page, value).to_owned(),
                "aria-labelledby" | "aria-describedby" | "aria-controls" | "headers" => {
                    let ids: Vec<&str> = value.split_ascii_whitespace().map(|id| links.id(page, id)).collect();
                    *value = ids.join(" ");
                }
                // It is kept under the section's code: the page's key before it says nothing more.
                "data-keep" => {
                    if let Some(rest) = value.strip_prefix(own).and_then(|rest| rest.strip_prefix('-')) {
                        *value = rest.to_owned();
                    }
                }
                _ => {
                    if let Some(id) = value.strip_prefix("url(#").and_then(|rest| rest.strip_suffix(')')) {
                        *value = format!("url(#{})", links.id(page, id));
                    }
                }
            }
        }
        if let Some(href) = tag.get("href").map(str::to_owned) {
            self.lead(tag, &href);
        }
        if tag.get("data-root").is_some() {
            tag.set("data-root", String::new());
        }
        // What keeps a reader's place has nothing to do here: the address does.
        if tag.get("data-here").is_some() {
            WHERE_ONE_STANDS.iter().for_each(|name| tag.remove(name));
        }
    }

    /// Leads a link to its section; from a section that is not folded to one that is, by way of what is read without scripting.
    fn lead(&self, tag: &mut Tag, href: &str) {
        let Some(lead) = self.links.lead(self.page, href) else { return tag.remove("href") };
        let to = href.strip_prefix(ROOT).map(|to| to.split('#').next().unwrap_or(to));
        let is_folded = |page: Option<&str>| page.is_some_and(|page| self.links.is_folded(page));
        if is_folded(to) && !is_folded(self.page) {
            tag.set("data-unfolded", lead);
            tag.set("href", "#folded".to_owned());
        } else {
            tag.set("href", lead);
        }
    }

    /// A picture becomes a drawing that refers to it; one whose size nobody knows carries its data itself.
    fn image(&mut self, tag: &Tag) {
        let mut tag = tag.clone();
        let address = tag.get("src").and_then(|src| src.strip_prefix(ROOT)).unwrap_or("").to_owned();
        self.flush();
        let Some((id, (width, height))) = self.shown.picture(self.setting, &address) else {
            let bytes = self.setting.files.get(&address).map_or(&[][..], Vec::as_slice);
            tag.set("src", pictures::data_uri(&address, bytes));
            return self.out.open(&tag);
        };
        let mut svg = Tag { name: "svg".to_owned(), attributes: Vec::new(), closed: false };
        svg.set("class", "picture".to_owned());
        svg.set("viewBox", format!("0 0 {width} {height}"));
        svg.set("width", width.to_string());
        match tag.get("alt") {
            Some(alt) if !alt.is_empty() => {
                svg.set("role", "img".to_owned());
                svg.set("aria-label", alt.to_owned());
            }
            _ => svg.set("aria-hidden", "true".to_owned()),
        }
        self.out.open(&svg);
        self.out.open(&Tag {
            name: "use".to_owned(),
            attributes: vec![("href".to_owned(), format!("#{id}"))],
            closed: true,
        });
        self.out.close("svg");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hash_is_that_of_the_standards_example() {
        // Content Security Policy Level 3, 8.3: the hash of `alert('Hello, world.');`.
        let policy = policy("", &["alert('Hello, world.');".to_owned()]);
        assert!(policy.contains("'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"), "{policy}");
    }
}
