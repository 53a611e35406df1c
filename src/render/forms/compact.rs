//! HTML written as short as the standard allows: no quotes where none are needed, no end tags that the next tag implies, no blanks
//! that nobody sees. For the form that has to fit into a mail.
//!
//! In: tags and texts. Out: HTML that reads as the same tree (HTML Living Standard, "optional tags" and "attributes").

use super::markup::{Tag, is_void};

/// A style sheet without comments, line breaks and the blanks at the beginnings of lines.
pub fn style(css: &str) -> String {
    let mut uncommented = String::with_capacity(css.len());
    let mut rest = css;
    while let Some((before, after)) = rest.split_once("/*") {
        uncommented.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    uncommented.push_str(rest);
    let mut tight = String::with_capacity(uncommented.len());
    for line in uncommented.lines().map(str::trim).filter(|line| !line.is_empty()) {
        tight.push_str(line);
        if !line.ends_with(['{', '}', ';', ',']) {
            tight.push(' ');
        }
    }
    tight
}

/// Writes short HTML.
#[derive(Debug, Default)]
pub struct Compact {
    /// What was written.
    pub out: String,
    /// An end tag that may turn out to be implied.
    held: Option<String>,
    /// How many elements that keep their blanks we are in.
    kept: usize,
    /// Whether the last tag was one beside which blanks are not seen.
    after_block: bool,
    /// Blanks that are not seen if such a tag follows.
    blank: bool,
}

/// Elements whose end tag may be implied.
const IMPLIED: [&str; 4] = ["li", "dt", "dd", "p"];

/// Elements that begin a line of their own, so that blanks beside their tags are not seen, and shapes.
const BLOCKS: [&str; 40] = [
    "section",
    "nav",
    "div",
    "aside",
    "ol",
    "ul",
    "li",
    "dl",
    "dt",
    "dd",
    "p",
    "h1",
    "h2",
    "h3",
    "h4",
    "main",
    "header",
    "footer",
    "article",
    "figure",
    "figcaption",
    "table",
    "caption",
    "thead",
    "tbody",
    "tr",
    "td",
    "th",
    "details",
    "summary",
    "fieldset",
    "legend",
    "blockquote",
    "path",
    "rect",
    "circle",
    "line",
    "g",
    "use",
    "symbol",
];

impl Compact {
    /// Writes a start tag.
    pub fn open(&mut self, tag: &Tag) {
        self.settle(&Next::Start(&tag.name));
        self.spaced(BLOCKS.contains(&tag.name.as_str()));
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
        self.settle(&Next::End(name));
        self.spaced(BLOCKS.contains(&name));
        self.kept -= usize::from(name == "pre" && self.kept > 0);
        if IMPLIED.contains(&name) {
            self.held = Some(name.to_owned());
        } else {
            self.end(name);
        }
    }

    /// Writes a text.
    pub fn text(&mut self, text: &str) {
        let shown = if self.kept > 0 { text.to_owned() } else { narrowed(text) };
        if self.kept == 0 && shown.trim_matches([' ', '\n']).is_empty() {
            self.blank |= !self.after_block && !shown.is_empty();
            return;
        }
        self.settle(&Next::Text);
        self.spaced(false);
        self.out.push_str(&shown.replace('&', "&amp;").replace('<', "&lt;"));
    }

    /// The end: what was kept back is written.
    pub fn finish(mut self) -> String {
        self.settle(&Next::Text);
        self.out
    }

    /// Writes blanks that were met, if they are seen, before what comes now.
    fn spaced(&mut self, block: bool) {
        if self.blank && !block {
            self.out.push(' ');
        }
        (self.blank, self.after_block) = (false, block);
    }

    /// Writes the end tag that was kept back, unless what comes next implies it.
    fn settle(&mut self, next: &Next<'_>) {
        let Some(name) = self.held.take() else { return };
        let implied = match (name.as_str(), next) {
            ("li", Next::Start("li")) | ("dt" | "dd", Next::Start("dt" | "dd")) | ("li" | "dd", Next::End(_)) => true,
            ("p", Next::Start(next)) => ENDS_A_PARAGRAPH.contains(next),
            ("p", Next::End(parent)) => HOLDS_PARAGRAPHS.contains(parent),
            _ => false,
        };
        if !implied {
            self.end(&name);
        }
    }

    fn end(&mut self, name: &str) {
        self.out.push_str("</");
        self.out.push_str(name);
        self.out.push('>');
    }
}

/// Start tags that end a paragraph (HTML Living Standard, "optional tags"), as far as pages have them.
const ENDS_A_PARAGRAPH: [&str; 16] = [
    "article", "aside", "details", "div", "dl", "fieldset", "figure", "h2", "h3", "h4", "nav", "ol", "p", "section",
    "table", "ul",
];

/// Elements whose end ends a paragraph in them, as far as pages have them.
const HOLDS_PARAGRAPHS: [&str; 10] =
    ["article", "aside", "blockquote", "dd", "details", "div", "figcaption", "li", "section", "td"];

/// What comes after an end tag.
enum Next<'n> {
    Start(&'n str),
    End(&'n str),
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
    fn a_style_sheet_keeps_its_rules_and_loses_its_comments_and_lines() {
        let css = "/* ours */\n.a,\n.b > p {\n  margin: 0 1px;\n}\n@media print\n{ .a { color: red } }\n";
        assert_eq!(style(css), ".a,.b > p {margin: 0 1px;}@media print { .a { color: red } }");
    }

    #[test]
    fn quotes_and_end_tags_go_where_nothing_is_lost() {
        assert_eq!(
            short("<ul class=\"a b\"><li id=\"x\">1</li>\n <li>2</li></ul>"),
            "<ul class=\"a b\"><li id=x>1<li>2</ul>"
        );
        assert_eq!(short("<dl><div><dt>a</dt><dd>b</dd></div></dl>"), "<dl><div><dt>a<dd>b</div></dl>");
        assert_eq!(short("<li>a</li>text"), "<li>a</li>text");
    }

    #[test]
    fn blanks_stay_where_they_are_seen() {
        assert_eq!(short("<p>a <b>b</b>\n<i>c</i></p>\n<p>d</p>"), "<p>a <b>b</b> <i>c</i><p>d</p>");
        assert_eq!(short("<div> <span>a</span> </div>"), "<div><span>a</span></div>");
        assert_eq!(short("<a><p>a</p></a>"), "<a><p>a</p></a>");
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
