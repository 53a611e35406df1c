//! Markdown of the guides as HTML.
//!
//! In: a text, and what short links lead to. Out: HTML in which raw HTML is shown as text and every link is one of ours, or to the
//! net. Links inside the handbook start with a mark that [`rooted`] replaces by the page's way to the top folder.

use super::words::Words;
use crate::handbook::{Target, Targets};
use crate::model::prose::{LinkTo, events, link_to};
use fluent_bundle::FluentArgs;
use pulldown_cmark::{CowStr, Event, HeadingLevel, LinkType, Tag, TagEnd, html};

/// Stands for the way to the top folder; a private-use character that no guide is likely to have, and harmless if one does.
/// It is written as it stands in HTML, where an address has no letters outside ASCII: the way in and the way out are one.
pub(super) const ROOT: &str = "%EF%A3%BFroot/";

/// Replaces the marks of a page's links by its way to the top folder.
pub fn rooted(html: &str, root: &str) -> String {
    html.replace(ROOT, root)
}

/// A text as blocks.
pub fn block(text: &str, targets: &Targets, words: &Words) -> String {
    let mut out = String::new();
    html::push_html(&mut out, Safe { events: events(text), targets, words, held: None }.map(lowered));
    out
}

/// A text as one line: paragraphs lose their tags.
pub fn line(text: &str, targets: &Targets, words: &Words) -> String {
    let mut out = String::new();
    let events = Safe { events: events(text), targets, words, held: None };
    let inline = events.filter_map(|event| match event {
        Event::Start(Tag::Paragraph) => None,
        Event::End(TagEnd::Paragraph) => Some(Event::Text(" ".into())),
        other => Some(lowered(other)),
    });
    html::push_html(&mut out, inline);
    out.trim().to_owned()
}

/// Headings inside a guide's text stand below those of the page.
fn lowered(event: Event<'_>) -> Event<'_> {
    match event {
        Event::Start(Tag::Heading { .. }) => {
            Event::Start(Tag::Heading { level: HeadingLevel::H4, id: None, classes: Vec::new(), attrs: Vec::new() })
        }
        Event::End(TagEnd::Heading(_)) => Event::End(TagEnd::Heading(HeadingLevel::H4)),
        other => other,
    }
}

struct Safe<'s, I> {
    events: I,
    targets: &'s Targets,
    words: &'s Words,
    /// Inside a bare link: its words are replaced by the name of what it leads to.
    held: Option<String>,
}

impl<'s, I: Iterator<Item = Event<'s>>> Iterator for Safe<'s, I> {
    type Item = Event<'s>;

    fn next(&mut self) -> Option<Event<'s>> {
        let event = self.events.next()?;
        Some(match event {
            Event::Html(text) | Event::InlineHtml(text) => Event::Text(text),
            Event::Text(text) => Event::Text(self.held.take().map_or(text, CowStr::from)),
            Event::Start(Tag::Link { link_type, dest_url, title, id }) => {
                let dest_url = self.opened(link_type, &dest_url);
                Event::Start(Tag::Link { link_type: LinkType::Inline, dest_url, title, id })
            }
            Event::Start(Tag::Image { .. }) => Event::Start(Tag::Emphasis),
            Event::End(TagEnd::Image) => Event::End(TagEnd::Emphasis),
            other => other,
        })
    }
}

impl<'s, I> Safe<'s, I> {
    /// The address of a link; a bare one holds its name for the text that follows.
    fn opened(&mut self, link_type: LinkType, address: &str) -> CowStr<'s> {
        match link_to(address) {
            LinkTo::Outside(address) => address.into(),
            LinkTo::Refused(_) => "".into(),
            LinkTo::Short(kind, id) => match self.targets.get(&(kind, id)) {
                None => "".into(),
                Some(target) => {
                    if link_type == LinkType::Autolink {
                        self.held = Some(link_words(target, self.words));
                    }
                    format!("{ROOT}{}", target.address).into()
                }
            },
        }
    }
}

/// What a bare link prints: a name, or a limit's value with its source.
pub(super) fn link_words(target: &Target, words: &Words) -> String {
    let Some(limit) = &target.limit else { return target.title.clone() };
    let mut args = FluentArgs::new();
    let figures = words.figures(&limit.value);
    args.set("value", figures.clone());
    let bound = words.say_with(&format!("bound-{}", limit.bound), &args);
    let value = if bound.contains(&figures) { bound } else { format!("{bound} {figures}") };
    let source = if limit.shop { words.say("shop-value") } else { limit.source.clone() };
    format!("{value} ({source})")
}
