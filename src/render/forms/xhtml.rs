//! HTML as XML, for readers of EPUB: every element closed, every attribute quoted, the mixed case of SVG's names restored.
//!
//! In: tags and texts of a page. Out: well-formed XHTML, or the element that a theme's part left open.

use super::markup::{Tag, is_void};
use std::fmt::Write;

/// Writes XHTML.
#[derive(Debug, Default)]
pub struct Xhtml {
    out: String,
    open: Vec<String>,
    flaw: Option<String>,
}

/// Elements whose end tag HTML lets out (HTML Living Standard, "optional tags").
const MAY_STAY_OPEN: [&str; 11] = ["li", "dt", "dd", "p", "option", "tr", "td", "th", "thead", "tbody", "tfoot"];

/// Names of SVG with capitals, as HTML's parser restores them ("adjust SVG attributes", "adjusted current node"), as far as drawings
/// of ours or of a club's parts can have use of them.
const CAPITALS: [&str; 26] = [
    "viewBox",
    "preserveAspectRatio",
    "patternUnits",
    "patternTransform",
    "patternContentUnits",
    "gradientUnits",
    "gradientTransform",
    "clipPathUnits",
    "maskUnits",
    "maskContentUnits",
    "markerWidth",
    "markerHeight",
    "markerUnits",
    "refX",
    "refY",
    "textLength",
    "lengthAdjust",
    "startOffset",
    "pathLength",
    "spreadMethod",
    "clipPath",
    "linearGradient",
    "radialGradient",
    "textPath",
    "foreignObject",
    "tableValues",
];

impl Xhtml {
    /// Writes a start tag.
    pub fn open(&mut self, tag: &Tag) {
        let svg = tag.name == "svg" || self.open.iter().any(|name| name == "svg");
        let spelled = |name: &str| if svg { capitals(name) } else { name.to_owned() };
        let name = spelled(&tag.name);
        self.implied_before(&name);
        self.out.push('<');
        self.out.push_str(&name);
        if tag.name == "svg" {
            self.out.push_str(" xmlns=\"http://www.w3.org/2000/svg\"");
        }
        for (key, value) in &tag.attributes {
            if key == "xmlns" || (svg && key == "focusable") {
                continue;
            }
            let bare = value.is_empty() && is_switch(key);
            let value = if bare { key } else { value };
            // Writing to a string does not fail.
            let _ = write!(self.out, " {}=\"{}\"", spelled(key), escaped(value).replace('"', "&quot;"));
        }
        if tag.closed && svg || is_void(&tag.name) {
            self.out.push_str("/>");
        } else {
            self.out.push('>');
            self.open.push(name);
        }
    }

    /// Writes an end tag, and those that HTML lets out before it.
    pub fn close(&mut self, name: &str) {
        if is_void(name) {
            return;
        }
        while let Some(open) = self.open.pop() {
            let _ = write!(self.out, "</{open}>");
            if open.eq_ignore_ascii_case(name) {
                return;
            }
            if !MAY_STAY_OPEN.contains(&open.as_str()) {
                self.flaw.get_or_insert(open);
            }
        }
        self.flaw.get_or_insert(name.to_owned());
    }

    /// Writes a text.
    pub fn text(&mut self, text: &str) {
        self.out.push_str(&escaped(text));
    }

    /// What was written.
    ///
    /// # Errors
    /// The name of an element that was opened and not closed, or closed and not opened.
    pub fn finish(mut self) -> Result<String, String> {
        self.flaw.or_else(|| self.open.pop()).map_or(Ok(self.out), Err)
    }

    /// Ends an element that this one implies the end of: an item before the next item.
    fn implied_before(&mut self, name: &str) {
        let ends = |open: &str| match name {
            "li" | "option" | "tr" => open == name,
            "dt" | "dd" => matches!(open, "dt" | "dd"),
            "td" | "th" => matches!(open, "td" | "th"),
            _ => false,
        };
        if self.open.last().is_some_and(|open| ends(open))
            && let Some(open) = self.open.pop()
        {
            let _ = write!(self.out, "</{open}>");
        }
    }
}

/// Attributes that are there or not.
fn is_switch(name: &str) -> bool {
    matches!(name, "hidden" | "checked" | "disabled" | "open" | "required" | "readonly" | "reversed")
}

fn capitals(name: &str) -> String {
    let known = CAPITALS.iter().find(|known| known.eq_ignore_ascii_case(name));
    known.map_or_else(|| name.to_owned(), |known| (*known).to_owned())
}

/// Text as XML has it; what XML cannot hold at all is left out.
pub fn escaped(text: &str) -> String {
    let allowed = |letter: &char| !letter.is_control() || matches!(letter, '\t' | '\n' | '\r');
    let mut out = String::with_capacity(text.len());
    for letter in text.chars().filter(allowed) {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            letter => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::markup::{Scribe, read};
    use super::*;

    impl Scribe for Xhtml {
        fn open(&mut self, tag: Tag) {
            Xhtml::open(self, &tag);
        }
        fn close(&mut self, name: &str) {
            Xhtml::close(self, name);
        }
        fn text(&mut self, text: &str) {
            Xhtml::text(self, text);
        }
    }

    fn set(html: &str) -> Result<String, String> {
        let mut xhtml = Xhtml::default();
        read(html, &mut xhtml);
        xhtml.finish()
    }

    #[test]
    fn what_html_lets_out_is_written() {
        assert_eq!(set("<ul><li>a<li>b<br></ul>").as_deref(), Ok("<ul><li>a</li><li>b<br/></li></ul>"));
        assert_eq!(set("<input checked>").as_deref(), Ok("<input checked=\"checked\"/>"));
        assert_eq!(set("<img alt=\"\">").as_deref(), Ok("<img alt=\"\"/>"));
    }

    #[test]
    fn drawings_have_their_capitals_back_and_say_what_they_are() {
        let drawn = set("<svg viewBox=\"0 0 1 1\"><clipPath id=\"a\"><path d=\"M0\"/></clipPath></svg>").unwrap();
        roxmltree::Document::parse(&drawn).unwrap();
        assert!(drawn.contains("viewBox=") && drawn.contains("<clipPath") && drawn.contains("</clipPath>"), "{drawn}");
    }

    #[test]
    fn an_element_left_open_is_named() {
        assert_eq!(set("<div><span>a</div>"), Err("span".to_owned()));
        assert_eq!(set("a</div>"), Err("div".to_owned()));
        assert_eq!(set("<section>"), Err("section".to_owned()));
    }
}
