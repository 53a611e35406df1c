//! Markdown as the guides may use it: one parser for checks and for pages.
//!
//! In: a text. Out: its events, its links, its raw HTML. A short link is a link whose address is `kind:id`.
//! Leaves to others: whether the thing is there (`proof`), what it looks like (`render`).

use pulldown_cmark::{Event, LinkType, Options, Parser, Tag};

/// What a short link points at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LinkKind {
    /// A guide of any kind that has a page of its own.
    Guide(super::Kind),
    /// A part in the stores.
    Part,
    /// A tool in the stores.
    Tool,
    /// A consumable in the stores.
    Consumable,
    /// A limit.
    Limit,
    /// A word of the glossary.
    Word,
}

impl LinkKind {
    /// The kind with this word before the colon.
    pub fn of(word: &str) -> Option<LinkKind> {
        match word {
            "part" => Some(LinkKind::Part),
            "tool" => Some(LinkKind::Tool),
            "consumable" => Some(LinkKind::Consumable),
            "limit" => Some(LinkKind::Limit),
            "word" => Some(LinkKind::Word),
            "handbook" | "stores" | "limits" | "words" => None,
            other => super::Kind::of(other).map(LinkKind::Guide),
        }
    }
}

/// Where a link goes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LinkTo {
    /// To something of the handbook.
    Short(LinkKind, String),
    /// Out of the handbook, by `https:`, `http:` or `mailto:`.
    Outside(String),
    /// Nowhere that pages carry.
    Refused(String),
}

/// A link in a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Link {
    /// Where it goes.
    pub to: LinkTo,
    /// As written: the address.
    pub written: String,
    /// Whether its words are its address: `<part:contact-spring>`.
    pub bare: Bare,
}

/// Whether a link has words of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bare {
    /// It prints the name of what it points at.
    Bare,
    /// It has words of its own.
    Worded,
}

/// The text as Markdown events. Tables and strikethrough are not for guides; smart quotes come from the language.
pub fn events(text: &str) -> Parser<'_> {
    Parser::new_ext(text, Options::empty())
}

/// Reads the address of a link.
pub fn link_to(address: &str) -> LinkTo {
    let (scheme, rest) = address.split_once(':').unwrap_or(("", address));
    match (LinkKind::of(scheme), scheme) {
        (Some(kind), _) => LinkTo::Short(kind, rest.to_owned()),
        (None, "https" | "http" | "mailto") => LinkTo::Outside(address.to_owned()),
        _ => LinkTo::Refused(address.to_owned()),
    }
}

/// All links of a text, in order. Images are links too: guides show pictures by their ids instead, so these are refused.
pub fn links(text: &str) -> Vec<Link> {
    events(text)
        .filter_map(|event| match event {
            Event::Start(Tag::Link { link_type, dest_url, .. }) => {
                let bare = if link_type == LinkType::Autolink { Bare::Bare } else { Bare::Worded };
                Some(Link { to: link_to(&dest_url), written: dest_url.to_string(), bare })
            }
            Event::Start(Tag::Image { dest_url, .. }) => {
                let written = dest_url.to_string();
                Some(Link { to: LinkTo::Refused(written.clone()), written, bare: Bare::Worded })
            }
            _ => None,
        })
        .collect()
}

/// All raw HTML of a text, in order.
pub fn raw_html(text: &str) -> Vec<String> {
    events(text)
        .filter_map(|event| match event {
            Event::Html(html) | Event::InlineHtml(html) => Some(html.trim().to_owned()),
            _ => None,
        })
        .collect()
}

/// The words alone, for the search and for titles: a bare link gives its id as words.
pub fn plain(text: &str) -> String {
    let mut words = String::new();
    for event in events(text) {
        match event {
            Event::Text(text) | Event::Code(text) => words.push_str(&bare_words(&text)),
            Event::SoftBreak | Event::HardBreak | Event::End(_) => words.push(' '),
            _ => {}
        }
    }
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn bare_words(text: &str) -> String {
    match link_to(text) {
        LinkTo::Short(_, id) if !text.contains(' ') => id.replace('-', " "),
        _ => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn short_links_are_autolinks_with_our_kinds() {
        let found =
            links("Use <part:contact-spring>, then [rewire](procedure:rewire-foil) or [ask](javascript:alert).");
        assert_eq!(found[0].to, LinkTo::Short(LinkKind::Part, "contact-spring".into()));
        assert_eq!(found[0].bare, Bare::Bare);
        assert_eq!(found[1].to, LinkTo::Short(LinkKind::Guide(crate::model::Kind::Procedure), "rewire-foil".into()));
        assert_eq!(found[2].to, LinkTo::Refused("javascript:alert".into()));
    }

    #[test]
    fn raw_html_is_seen_wherever_it_hides() {
        assert_eq!(raw_html("a <b>bold</b>\n\n<script>x</script>"), ["<b>", "</b>", "<script>x</script>"]);
        assert_eq!(raw_html("under `<2 Ω>` or 1 < 2"), Vec::<String>::new());
    }
}
