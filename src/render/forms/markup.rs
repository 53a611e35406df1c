//! Pages as a stream of tags and texts, so that a form can rewrite links and set them down its own way.
//!
//! In: HTML that the templates made, a club's parts among it. Out: calls of a [`Scribe`], which writes. Leaves to others: what
//! becomes of a tag. Not promised: repairing a page that is not HTML; the HTML checker looks at the pages themselves.

use html5gum::{Token, Tokenizer};

/// A start tag, with its attributes sorted by name. Names are in lower case, as HTML has them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tag {
    /// The element.
    pub name: String,
    /// Its attributes; one without a value has an empty one.
    pub attributes: Vec<(String, String)>,
    /// Whether it ends at once: `<path/>`.
    pub closed: bool,
}

impl Tag {
    /// An attribute's value.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
    }

    /// Sets an attribute that is there, or adds it.
    pub fn set(&mut self, name: &str, value: String) {
        match self.attributes.iter_mut().find(|(known, _)| known == name) {
            Some((_, old)) => *old = value,
            None => self.attributes.push((name.to_owned(), value)),
        }
    }

    /// Takes an attribute away.
    pub fn remove(&mut self, name: &str) {
        self.attributes.retain(|(known, _)| known != name);
    }

    /// Whether it has this class.
    pub fn has_class(&self, class: &str) -> bool {
        self.get("class").is_some_and(|classes| classes.split_ascii_whitespace().any(|known| known == class))
    }
}

/// Somebody who writes down what [`read`] reads.
pub trait Scribe {
    /// A start tag.
    fn open(&mut self, tag: Tag);
    /// An end tag.
    fn close(&mut self, name: &str);
    /// Text, without entities.
    fn text(&mut self, text: &str);
}

/// Elements that have no end tag (HTML Living Standard, "void elements").
const VOID: [&str; 13] =
    ["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"];

/// Whether an element has no end tag.
pub fn is_void(name: &str) -> bool {
    VOID.contains(&name)
}

/// Reads a page's HTML to a scribe. Comments are left out.
pub fn read(html: &str, scribe: &mut dyn Scribe) {
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    for token in Tokenizer::new(html) {
        let Ok(token) = token;
        match token {
            Token::StartTag(tag) => scribe.open(Tag {
                name: text(&tag.name),
                attributes: tag.attributes.iter().map(|(name, value)| (text(name), text(value))).collect(),
                closed: tag.self_closing,
            }),
            Token::EndTag(tag) => scribe.close(&text(&tag.name)),
            Token::String(string) => scribe.text(&text(&string)),
            Token::Comment(_) | Token::Doctype(_) | Token::Error(_) => {}
        }
    }
}

/// The ids that stand in a page's HTML, in their order.
pub fn ids(html: &str) -> impl Iterator<Item = &str> {
    html.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next())
}

/// Leaves elements out with all that stands in them: counts how deep inside one we are.
#[derive(Debug, Default)]
pub struct LeftOut {
    name: String,
    depth: usize,
}

impl LeftOut {
    /// Whether this tag is left out: the first of an element that is unwanted, or one inside of it.
    pub fn opens(&mut self, tag: &Tag, unwanted: bool) -> bool {
        if self.depth > 0 {
            self.depth += usize::from(tag.name == self.name && !tag.closed);
        } else if unwanted && !is_void(&tag.name) && !tag.closed {
            self.name.clone_from(&tag.name);
            self.depth = 1;
        }
        self.depth > 0 || unwanted
    }

    /// Whether this end tag is left out.
    pub fn closes(&mut self, name: &str) -> bool {
        let inside = self.depth > 0;
        self.depth -= usize::from(inside && name == self.name);
        inside
    }

    /// Whether text is left out here.
    pub fn is_inside(&self) -> bool {
        self.depth > 0
    }
}

/// What only a page with its own frame and scripts has: the switch of wording and the search box.
pub fn is_of_a_frame(tag: &Tag) -> bool {
    matches!(tag.name.as_str(), "form" | "fieldset") && (tag.has_class("wording") || tag.has_class("search"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Default)]
    struct Heard(Vec<String>);

    impl Scribe for Heard {
        fn open(&mut self, tag: Tag) {
            self.0.push(format!("<{} {:?}", tag.name, tag.attributes));
        }
        fn close(&mut self, name: &str) {
            self.0.push(format!(">{name}"));
        }
        fn text(&mut self, text: &str) {
            self.0.push(text.to_owned());
        }
    }

    #[test]
    fn entities_are_read_and_attributes_come_sorted() {
        let mut heard = Heard::default();
        read("<p id=\"a\" class='b' hidden>2 &lt; 3 &amp; 4</p><!-- no -->", &mut heard);
        assert_eq!(heard.0, ["<p [(\"class\", \"b\"), (\"hidden\", \"\"), (\"id\", \"a\")]", "2 < 3 & 4", ">p"]);
    }

    #[test]
    fn what_is_left_out_goes_with_all_that_stands_in_it() {
        let mut out = LeftOut::default();
        let tag = |name: &str| Tag { name: name.into(), attributes: Vec::new(), closed: false };
        assert!(out.opens(&tag("form"), true));
        assert!(out.opens(&tag("p"), false));
        assert!(out.closes("p"));
        assert!(out.is_inside());
        assert!(out.closes("form"));
        assert!(!out.opens(&tag("p"), false));
    }
}
