//! What makes an SVG from a guide unsafe to hand on.
//!
//! In: the bytes of a file. Out: what is wrong with it, in words. Shown as an image a browser runs none of it; it is refused all the same,
//! since people open files, and since the lectern serves them. Read as XML, so that no way of writing a name hides it.
//! Leaves to others: how it looks.

use roxmltree::{Document, Node, ParsingOptions};

/// Why a drawing is not shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refused {
    /// It is no SVG, or not whole.
    Broken,
    /// It has something that no picture needs.
    Has(&'static str),
}

/// Elements that run or load something, by what they are called whatever their name space.
const ELEMENTS: [(&str, &str); 8] = [
    ("script", "a script"),
    ("handler", "a script"),
    ("listener", "a script"),
    ("foreignobject", "foreign content"),
    ("iframe", "a frame"),
    ("embed", "a frame"),
    ("object", "a frame"),
    ("link", "an outside reference"),
];

/// Kinds of pictures that may stand inside an SVG: those that hold nothing but dots.
const INSIDE: [&str; 5] = ["data:image/png", "data:image/jpeg", "data:image/jpg", "data:image/gif", "data:image/webp"];

/// Why the drawing is refused; nothing if it may be shown.
pub fn refused(bytes: &[u8]) -> Option<Refused> {
    // What is read here as UTF-8 and by a browser as something else could hide anything.
    let other_encoding = Some(Refused::Has("another encoding than UTF-8"));
    let Ok(text) = std::str::from_utf8(bytes) else { return other_encoding };
    let text = text.trim_start_matches('\u{feff}');
    if text.contains('\0') || declared_encoding(text).is_some_and(|named| !named.eq_ignore_ascii_case("utf-8")) {
        return other_encoding;
    }
    if text.to_ascii_lowercase().contains("<!entity") {
        return Some(Refused::Has("an entity"));
    }
    let options = ParsingOptions { allow_dtd: true, ..ParsingOptions::default() };
    let Ok(document) = Document::parse_with_options(text, options) else { return Some(Refused::Broken) };
    if document.root_element().tag_name().name() != "svg" {
        return Some(Refused::Broken);
    }
    document.descendants().find_map(unsafe_node).map(Refused::Has)
}

/// The encoding that the first line says the file is in.
fn declared_encoding(text: &str) -> Option<&str> {
    let declaration = text.strip_prefix("<?xml")?.split_once("?>")?.0;
    let value = declaration.split_once("encoding")?.1.trim_start().strip_prefix('=')?.trim_start();
    let quote = value.chars().next().filter(|quote| matches!(quote, '"' | '\''))?;
    value[1..].split(quote).next()
}

fn unsafe_node(node: Node<'_, '_>) -> Option<&'static str> {
    if node.is_pi() {
        return Some("an instruction to programs");
    }
    if node.is_text() && node.parent().is_some_and(|parent| parent.tag_name().name().eq_ignore_ascii_case("style")) {
        return node.text().filter(|style| loads(style)).map(|_| "an outside reference");
    }
    let name = node.tag_name().name().to_ascii_lowercase();
    let element = ELEMENTS.into_iter().find(|(element, _)| *element == name).map(|(_, what)| what);
    element.or_else(|| node.attributes().find_map(|attribute| unsafe_attribute(attribute.name(), attribute.value())))
}

fn unsafe_attribute(name: &str, value: &str) -> Option<&'static str> {
    let (name, value) = (name.to_ascii_lowercase(), value.trim());
    match name.as_str() {
        _ if name.starts_with("on") => Some("an event handler"),
        "attributename" if value.to_ascii_lowercase().ends_with("href") => Some("a link that changes"),
        "href" | "src" => leads_out(value).then_some("an outside reference"),
        // Where editors keep the name of the file they came from; nothing reads it.
        "docname" | "export-filename" => None,
        _ => loads(value).then_some("an outside reference"),
    }
}

/// Whether a style loads something.
fn loads(style: &str) -> bool {
    let lower = style.to_ascii_lowercase();
    let reached = lower
        .match_indices("url(")
        .any(|(at, start)| leads_out(lower[at + start.len()..].trim_start_matches(['"', '\'', ' ', '\t', '\n', '\r'])));
    // A backslash can spell `url` in a way of its own.
    reached || lower.contains("@import") || lower.contains("image-set(") || lower.contains('\\')
}

fn leads_out(target: &str) -> bool {
    let lower = target.to_ascii_lowercase();
    !lower.is_empty() && !lower.starts_with('#') && !INSIDE.iter().any(|kind| lower.starts_with(kind))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SVG: &str = "xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'";

    fn drawn(inside: &str) -> Option<Refused> {
        refused(format!("<svg {SVG}>{inside}</svg>").as_bytes())
    }

    #[test]
    fn a_drawing_may_only_point_inside_itself() {
        let within = "<style>path { fill: url(#h) }</style><use xlink:href='#tip'/><path style='fill:url( \"#h\" )'/>";
        assert_eq!(drawn(within), None);
        assert_eq!(drawn("<image href='data:image/png;base64,AA=='/>"), None);
        for out in [
            "<image href='https://a.example/x.png'/>",
            "<a xlink:href = 'x.html'><path/></a>",
            "<use href='data:image/svg+xml,x'/>",
            "<style>@import 'x.css';</style>",
            "<path style='fill:URL(http://a.example/)'/>",
            "<path style='fill:\\75rl(http://a.example/)'/>",
        ] {
            assert_eq!(drawn(out), Some(Refused::Has("an outside reference")), "{out}");
        }
    }

    #[test]
    fn nothing_in_it_runs_however_it_is_spelled() {
        assert_eq!(drawn("<SCRIPT/>"), Some(Refused::Has("a script")));
        let prefixed = "<s_.-é:script xmlns:s_.-é='http://www.w3.org/2000/svg'/>";
        assert_eq!(drawn(prefixed), Some(Refused::Has("a script")));
        assert_eq!(drawn("<path\nonload = 'x()'/>"), Some(Refused::Has("an event handler")));
        assert_eq!(drawn("<set attributeName='xlink:href' to='x'/>"), Some(Refused::Has("a link that changes")));
        let hidden = "<?xml version='1.0' encoding = 'ISO-2022-JP'?><svg xmlns='http://www.w3.org/2000/svg'/>";
        assert_eq!(refused(hidden.as_bytes()), Some(Refused::Has("another encoding than UTF-8")));
        assert_eq!(refused(b"\xff\xfe<\0s\0"), Some(Refused::Has("another encoding than UTF-8")));
        let style = "<?xml-stylesheet href='x.css'?><svg xmlns='http://www.w3.org/2000/svg'/>";
        assert_eq!(refused(style.as_bytes()), Some(Refused::Has("an instruction to programs")));
    }

    #[test]
    fn what_is_no_drawing_is_told_apart() {
        assert_eq!(refused(b"hello"), Some(Refused::Broken));
        assert_eq!(refused(b"<svg xmlns='http://www.w3.org/2000/svg'><path"), Some(Refused::Broken));
        assert_eq!(refused(b"<html/>"), Some(Refused::Broken));
    }
}
