//! Every link of every page leads somewhere, ids are unique, and no page carries what its own policy forbids.
//!
//! The pages are read by a tokenizer of HTML that is not ours (html5gum, after the WHATWG standard), not as text.

mod site_support;

use html5gum::{DefaultEmitter, Token, Tokenizer};
use site_support::{bound, held, project};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// The frame of every page: in one file that holds all pages, the frame stands once.
const FRAME: &[&str] = &["main", "find", "all"];

/// Shapes and patterns that drawings refer to by name; one file that holds all pages has them once.
const SHARED_SHAPES: &[&str] =
    &["hatch", "hatch-blue", "weave", "mesh", "lamp-lit", "lamp-dark", "lamp-comes-and-goes"];

/// The switch between the wordings: a page has one, and all pages share what it is set to.
const WORDING: &[&str] = &["wording-full", "wording-short"];

/// Attributes that hold one address.
const ADDRESSES: &[&str] = &["href", "src", "xlink:href", "poster", "action", "cite", "data", "formaction", "manifest"];

/// Attributes that name elements of the same page by their ids.
const NAMES_OF_IDS: &[&str] = &[
    "for",
    "aria-labelledby",
    "aria-describedby",
    "aria-controls",
    "aria-owns",
    "aria-details",
    "aria-flowto",
    "aria-errormessage",
    "aria-activedescendant",
    "headers",
    "list",
    "popovertarget",
];

/// A start tag, its attributes by name.
#[derive(Debug)]
struct Tag {
    name: String,
    attributes: BTreeMap<String, String>,
}

#[derive(Debug, Default)]
struct Page {
    tags: Vec<Tag>,
    /// Text inside `script` and `style` elements, with the element's name.
    inline: Vec<(String, String)>,
}

impl Page {
    fn read(html: &str) -> Page {
        let mut page = Page::default();
        let mut inside = None;
        let mut emitter = DefaultEmitter::default();
        emitter.naively_switch_states(true);
        for token in Tokenizer::new_with_emitter(html, emitter).flatten() {
            match token {
                Token::StartTag(tag) => {
                    let name = text(&tag.name);
                    inside = ["script", "style"].contains(&name.as_str()).then(|| name.clone());
                    let attributes = tag.attributes.iter().map(|(name, value)| (text(name), text(value))).collect();
                    page.tags.push(Tag { name, attributes });
                }
                Token::EndTag(_) => inside = None,
                Token::String(words) => {
                    page.inline.extend(inside.iter().map(|name: &String| (name.clone(), text(&words))))
                }
                _ => {}
            }
        }
        page
    }

    fn ids(&self) -> impl Iterator<Item = &str> {
        self.tags.iter().filter_map(|tag| tag.attributes.get("id")).map(String::as_str)
    }

    fn has_class(&self, class: &str) -> bool {
        let classes = self.tags.iter().filter_map(|tag| tag.attributes.get("class"));
        classes.flat_map(|classes| classes.split_whitespace()).any(|one| one == class)
    }
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// Every file of the demo handbook.
static SITE: LazyLock<BTreeMap<String, Vec<u8>>> = LazyLock::new(|| bound(&project().join("guides"), "2"));

/// Every page of the demo handbook, and every picture that is itself made of tags, by address.
static PAGES: LazyLock<BTreeMap<&'static str, Page>> = LazyLock::new(|| {
    let tagged = SITE.iter().filter(|(name, _)| name.ends_with(".html") || name.ends_with(".svg"));
    tagged.map(|(name, bytes)| (name.as_str(), Page::read(&text(bytes)))).collect()
});

fn html() -> impl Iterator<Item = (&'static str, &'static Page)> {
    PAGES.iter().filter(|(name, _)| name.ends_with(".html")).map(|(name, page)| (*name, page))
}

/// The addresses that a style sheet or a presentation attribute refers to.
fn addresses_in_style(style: &str) -> Vec<String> {
    let inside = style.split("url(").skip(1).filter_map(|rest| rest.split_once(')'));
    let imported = style.split("@import").skip(1).filter_map(|rest| rest.split(['"', '\'']).nth(1)).map(str::to_owned);
    inside.map(|(address, _)| address.trim().trim_matches(['"', '\'']).to_owned()).chain(imported).collect()
}

/// Every address that a tag refers to.
fn addresses(tag: &Tag) -> Vec<String> {
    let mut all = Vec::new();
    for (name, value) in &tag.attributes {
        match name.as_str() {
            name if ADDRESSES.contains(&name) => all.push(value.clone()),
            "srcset" | "imagesrcset" => {
                all.extend(value.split(',').filter_map(|one| one.split_whitespace().next()).map(str::to_owned));
            }
            "data-scripts" => {
                let root = tag.attributes.get("data-root").map_or("", String::as_str);
                all.extend(value.split('|').map(|script| format!("{root}{script}")));
            }
            _ => all.extend(addresses_in_style(value).into_iter().filter(|_| value.contains("url("))),
        }
    }
    all
}

/// The file that an address on a page leads to, and the fragment; or why it is none.
fn resolved(page: &str, address: &str) -> Result<(String, Option<String>), String> {
    let (path, fragment) = match address.split_once('#') {
        Some((path, fragment)) => (path, Some(fragment.to_owned())),
        None => (address, None),
    };
    if path.contains(':') || path.starts_with('/') || path.contains('\\') || path.contains('?') {
        return Err("leaves the folder".to_owned());
    }
    if path.is_empty() {
        return Ok((page.to_owned(), fragment));
    }
    let mut at: Vec<&str> = page.split('/').collect();
    at.pop();
    for part in path.split('/') {
        match part {
            "." => {}
            ".." => drop(at.pop().ok_or_else(|| "climbs out of the folder".to_owned())?),
            _ => at.push(part),
        }
    }
    Ok((at.join("/"), fragment))
}

/// What is wrong with an address on a page.
fn wrong(page: &str, tag: &str, address: &str, said: &str) -> Option<String> {
    if address.starts_with("data:") {
        return ["a", "script", "use", "link"].contains(&tag).then(|| format!("{page}: <{tag}> refers to data"));
    }
    if address.starts_with("https://") && tag == "a" {
        return (!said.contains(address)).then(|| format!("{page}: {address} is in no guide"));
    }
    let told = match resolved(page, address) {
        Err(why) => why,
        Ok((file, _)) if !SITE.contains_key(&file) => "leads to no file".to_owned(),
        Ok((_, None)) => return None,
        Ok((file, Some(fragment))) => {
            let there = PAGES.get(file.as_str()).is_some_and(|page| page.ids().any(|id| id == fragment));
            (!there).then(|| format!("there is no `{fragment}` on that page"))?
        }
    };
    Some(format!("{page}: <{tag}> {address}: {told}"))
}

fn none(what: &str, wrong: impl IntoIterator<Item = String>) {
    let wrong: BTreeSet<String> = wrong.into_iter().collect();
    let first: Vec<&str> = wrong.iter().take(20).map(String::as_str).collect();
    assert!(wrong.is_empty(), "{what}: {} times, first\n  {}", wrong.len(), first.join("\n  "));
}

#[test]
fn every_address_on_every_page_leads_to_a_file_and_a_place() {
    assert!(html().count() > 300, "the demo handbook has hundreds of pages");
    let guides: String = held(&project().join("guides")).values().map(|bytes| text(bytes)).collect();
    let every = PAGES.iter().flat_map(|(name, page)| page.tags.iter().map(move |tag| (*name, tag)));
    none(
        "an address leads nowhere",
        every.flat_map(|(name, tag)| {
            let wrong = |address: &String| wrong(name, &tag.name, address, &guides);
            addresses(tag).iter().filter_map(wrong).collect::<Vec<_>>()
        }),
    );
}

#[test]
fn style_sheets_refer_to_nothing_outside_and_fill_with_what_is_on_the_page() {
    let sheets = SITE.iter().filter(|(name, _)| name.ends_with(".css"));
    let mut filled = BTreeSet::new();
    none(
        "a style sheet refers to what is not there",
        sheets.flat_map(|(name, bytes)| {
            let sheet = text(bytes);
            filled.extend(filled_with(&sheet));
            let shapes: BTreeSet<String> = filled.iter().map(|(_, shape)| format!("#{shape}")).collect();
            let kept = |address: &String| !address.starts_with("data:") && !shapes.contains(address);
            let told = |address: String| format!("{name}: {address}");
            addresses_in_style(&sheet).into_iter().filter(kept).map(told).collect::<Vec<_>>()
        }),
    );
    assert!(filled.len() >= 4, "{filled:?}");
    none(
        "a page lacks what something on it is filled with",
        html().flat_map(|(name, page)| {
            let ids: BTreeSet<&str> = page.ids().collect();
            let lacks = |(class, shape): &&(String, String)| page.has_class(class) && !ids.contains(shape.as_str());
            filled.iter().filter(lacks).map(|(class, _)| format!("{name}: {class}")).collect::<Vec<_>>()
        }),
    );
}

/// The classes that a style sheet fills with a shape, each with the shape's id: `.hatched { fill: url(#hatch)`.
fn filled_with(sheet: &str) -> Vec<(String, String)> {
    let rules = sheet.split('}').filter_map(|rule| rule.rsplit_once('{'));
    let filled = rules.filter_map(|(selector, rule)| {
        let shape = rule.split("url(#").nth(1)?.split(')').next()?.trim_matches('"');
        let class = selector.trim().rsplit('.').next()?.trim();
        Some((class.to_owned(), shape.to_owned()))
    });
    filled.collect()
}

#[test]
fn an_attribute_that_names_an_element_names_one_of_its_page() {
    none(
        "no such element",
        PAGES.iter().flat_map(|(name, page)| {
            let ids: BTreeSet<&str> = page.ids().collect();
            let named = page
                .tags
                .iter()
                .flat_map(|tag| NAMES_OF_IDS.iter().filter_map(|name| tag.attributes.get_key_value(*name)));
            let lost = named.flat_map(|(attribute, value)| value.split_whitespace().map(move |id| (attribute, id)));
            lost.filter(|(_, id)| !ids.contains(id))
                .map(|(attribute, id)| format!("{name}: {attribute}=\"{id}\""))
                .collect::<Vec<_>>()
        }),
    );
}

#[test]
fn ids_are_unique_on_their_page() {
    none(
        "an id stands twice",
        PAGES.iter().flat_map(|(name, page)| {
            let mut seen = BTreeSet::new();
            page.ids().filter(|id| !seen.insert(*id)).map(|id| format!("{name}: {id}")).collect::<Vec<_>>()
        }),
    );
}

#[test]
fn ids_are_unique_in_a_language_so_that_one_file_can_hold_all_its_pages() {
    let mut first: BTreeMap<(bool, &str), &str> = BTreeMap::new();
    let mut twice = Vec::new();
    for (name, page) in html() {
        let french = name.starts_with("fr/");
        for id in page.ids().filter(|id| !FRAME.contains(id) && !SHARED_SHAPES.contains(id) && !WORDING.contains(id)) {
            if let Some(other) = first.insert((french, id), name) {
                twice.push(format!("{id}: {other} and {name}"));
            }
        }
    }
    none("an id stands on two pages", twice);
}

#[test]
fn no_page_has_inline_style_or_script() {
    let refused = |tag: &Tag, attribute: &str| {
        attribute == "style" || attribute.starts_with("on") || (tag.name == "a" && attribute == "ping")
    };
    none(
        "a page carries what its policy forbids",
        PAGES.iter().flat_map(|(name, page)| {
            let attributes =
                page.tags.iter().flat_map(|tag| tag.attributes.keys().map(move |attribute| (tag, attribute)));
            let attributes = attributes.filter(|(tag, attribute)| refused(tag, attribute));
            let attributes = attributes.map(|(tag, attribute)| format!("{name}: <{} {attribute}>", tag.name));
            let schemes = page.tags.iter().flat_map(|tag| tag.attributes.values());
            let schemes = schemes.filter(|value| value.trim_start().to_ascii_lowercase().starts_with("javascript:"));
            // A picture is a document of its own, shown as an image: it may have style, but no script.
            let inline = page.inline.iter().filter(|(element, words)| {
                !words.trim().is_empty() && (element == "script" || name.ends_with(".html"))
            });
            let inline = inline.map(|(element, _)| format!("{name}: text in a {element} element"));
            attributes.chain(schemes.map(|value| format!("{name}: {value}"))).chain(inline).collect::<Vec<_>>()
        }),
    );
}

#[test]
fn every_page_carries_the_content_security_policy() {
    const STRICT: &[&str] =
        &["default-src 'none'", "style-src 'self'", "script-src 'self'", "base-uri 'none'", "form-action 'none'"];
    none("the policy is missing or loose", html().flat_map(|(name, page)| {
        let metas = page.tags.iter().filter(|tag| tag.attributes.get("http-equiv").is_some_and(|what| what == "Content-Security-Policy"));
        let policies: Vec<&str> = metas.filter_map(|tag| tag.attributes.get("content")).map(String::as_str).collect();
        let strict = matches!(policies.as_slice(), [policy] if STRICT.iter().all(|part| policy.split(';').any(|own| own.trim() == *part)) && !policy.contains("unsafe"));
        (!strict).then(|| format!("{name}: {policies:?}"))
    }));
}

#[test]
fn what_the_checks_above_look_for_they_find() {
    let page = Page::read(
        "<a href='x.html#y' onclick=z><img srcset='a.png 1x, b.png 2x'><p style=c fill='url(#d)'><script>e<b></script>",
    );
    let all: Vec<String> = page.tags.iter().flat_map(addresses).collect();
    assert_eq!(all, ["x.html#y", "a.png", "b.png", "#d"]);
    assert_eq!(page.inline, [("script".to_owned(), "e<b>".to_owned())]);
    assert_eq!(resolved("a/b.html", "../c.html#d"), Ok(("c.html".to_owned(), Some("d".to_owned()))));
    assert!(
        resolved("a.html", "../c.html").is_err()
            && resolved("a.html", "http://x/").is_err()
            && resolved("a.html", "//x/").is_err()
    );
    assert!(wrong("index.html", "a", "nowhere.html", "").is_some());
    assert!(wrong("index.html", "a", "#nowhere", "").is_some());
    assert!(wrong("index.html", "a", "https://example.org/", "").is_some());
    assert_eq!(addresses_in_style("a{b:url('c.png')}@import \"d.css\";"), ["c.png", "d.css"]);
}
