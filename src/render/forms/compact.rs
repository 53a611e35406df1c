//! HTML written as short as the standard allows: no quotes where none are needed, no end tags that the next tag implies, no blanks
//! that nobody sees. For the form that has to fit into a mail.
//!
//! In: tags and texts. Out: HTML that reads as the same tree (HTML Living Standard, "optional tags" and "attributes").

use super::markup::{Tag, is_void};

/// Writes short HTML.
#[derive(Debug, Default)]
pub struct Compact {
    /// What was written.
    pub out: String,
    /// An end tag that may turn out to be implied, with the blanks after it.
    held: Option<(String, String)>,
    /// How many elements that keep their blanks we are in.
    kept: usize,
}

impl Compact {
    /// Writes a start tag.
    pub fn open(&mut self, tag: &Tag) {
        self.settle(Next::Start(&tag.name));
        self.kept += usize::from(tag.name == "pre");
        self.out.push('<');
        self.out.push_str(&tag.name);
        for (name, value) in &tag.attributes {
            self.out.push(' ');
            self.out.push_str(name);
            attribute(&mut self.out, value);
        }
        if tag.closed && !is_void(&tag.name) {
            // An unquoted value would take the slash for its own.
            self.out.push_str(if self.out.ends_with('"') { "/" } else { " /" });
        }
        self.out.push('>');
    }

    /// Writes an end tag, or keeps it back if the next one may imply it.
    pub fn close(&mut self, name: &str) {
        self.settle(Next::End);
        self.kept -= usize::from(name == "pre" && self.kept > 0);
        if matches!(name, "li" | "dt" | "dd") {
            self.held = Some((name.to_owned(), String::new()));
        } else {
            self.end(name);
        }
    }

    /// Writes a text.
    pub fn text(&mut self, text: &str) {
        let shown = if self.kept > 0 { text.to_owned() } else { narrowed(text) };
        match &mut self.held {
            Some((_, blanks)) if shown.trim().is_empty() => blanks.push_str(&shown),
            _ => {
                self.settle(Next::Text);
                self.out.push_str(&shown.replace('&', "&amp;").replace('<', "&lt;"));
            }
        }
    }

    /// The end: what was kept back is written.
    pub fn finish(mut self) -> String {
        self.settle(Next::Text);
        self.out
    }

    fn settle(&mut self, next: Next<'_>) {
        let Some((name, blanks)) = self.held.take() else { return };
        let implied = match (name.as_str(), next) {
            ("li", Next::Start("li")) | ("dt" | "dd", Next::Start("dt" | "dd")) => true,
            ("li" | "dd", Next::End) => true,
            _ => false,
        };
        if !implied {
            self.end(&name);
        }
        self.out.push_str(&blanks);
    }

    fn end(&mut self, name: &str) {
        self.out.push_str("</");
        self.out.push_str(name);
        self.out.push('>');
    }
}

/// What comes after an end tag.
enum Next<'n> {
    Start(&'n str),
    End,
    Text,
}

fn attribute(out: &mut String, value: &str) {
    if value.is_empty() {
        return;
    }
    out.push('=');
    let bare = |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_' | b'.' | b'#' | b':');
    if value.bytes().all(bare) {
        out.push_str(value);
    } else {
        out.push('"');
        out.push_str(&value.replace('&', "&amp;").replace('"', "&quot;"));
        out.push('"');
    }
}

/// Blanks around a line's end are one line's end.
fn narrowed(text: &str) -> String {
    if !text.contains('\n') {
        return text.to_owned();
    }
    let lines: Vec<&str> = text.split('\n').collect();
    let last = lines.len() - 1;
    let trimmed = lines.iter().enumerate().map(|(at, line)| match at {
        0 => line.trim_end_matches(' '),
        at if at == last => line.trim_start_matches(' '),
        _ => line.trim_matches(' '),
    });
    let mut out = String::new();
    for (at, line) in trimmed.enumerate() {
        if at > 0 && !out.ends_with('\n') {
            out.push('\n');
        }
        out.push_str(line);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::markup::{Scribe, read};
    use super::*;

    impl Scribe for Compact {
        fn open(&mut self, tag: Tag) {
            Compact::open(self, &tag);
        }
        fn close(&mut self, name: &str) {
            Compact::close(self, name);
        }
        fn text(&mut self, text: &str) {
            Compact::text(self, text);
        }
    }

    fn short(html: &str) -> String {
        let mut compact = Compact::default();
        read(html, &mut compact);
        compact.finish()
    }

    #[test]
    fn quotes_and_end_tags_go_where_nothing_is_lost() {
        assert_eq!(
            short("<ul class=\"a b\"><li id=\"x\">1</li>\n <li>2</li></ul>"),
            "<ul class=\"a b\"><li id=x>1\n<li>2</ul>"
        );
        assert_eq!(short("<dl><div><dt>a</dt><dd>b</dd></div></dl>"), "<dl><div><dt>a<dd>b</div></dl>");
        assert_eq!(short("<li>a</li>text"), "<li>a</li>text");
    }

    #[test]
    fn a_slash_never_joins_a_value() {
        assert_eq!(
            short("<svg><use href=\"#a\"/><path d=\"M0 0\"/></svg>"),
            "<svg><use href=#a /><path d=\"M0 0\"/></svg>"
        );
        assert_eq!(short("<input type=\"checkbox\" hidden>"), "<input hidden type=checkbox>");
    }

    #[test]
    fn what_is_preformatted_keeps_its_blanks_and_text_its_meaning() {
        assert_eq!(short("<pre>a\n   b</pre>"), "<pre>a\n   b</pre>");
        assert_eq!(short("<p>2 &lt; 3 &amp; \"4\"</p>"), "<p>2 &lt; 3 &amp; \"4\"</p>");
        assert_eq!(short("<p title=\"&quot;&amp;\">\n\n  x</p>"), "<p title=\"&quot;&amp;\">\nx</p>");
    }
}
