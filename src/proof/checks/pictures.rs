//! Pictures: there, inside the folder, of a kind that pages can show, harmless, and told in words.

use crate::model::{Guides, Picture};
use crate::proof::finding::Finding;
use crate::proof::findings::pictures;
use crate::proof::walk;
use crate::source::Tolerant;
use std::collections::BTreeMap;

/// Checks every picture against the files beside the guides.
pub fn check(guides: &Guides, others: &BTreeMap<String, Vec<u8>>, findings: &mut Vec<Finding>) {
    for (_, list) in walk::pictures(guides) {
        for picture in list.iter().filter_map(Tolerant::sound) {
            findings.extend(trouble(picture, others));
            if picture.alt.as_ref().is_none_or(|alt| alt.value.trim().is_empty()) {
                findings.push(pictures::without_alt(&picture.picture));
            }
        }
    }
}

fn trouble(picture: &Picture, others: &BTreeMap<String, Vec<u8>>) -> Option<Finding> {
    let file = &picture.file;
    if leaves(&file.value) {
        return Some(pictures::outside(file));
    }
    if kind(&file.value).is_none() {
        return Some(pictures::kind(file));
    }
    match others.get(&file.value) {
        None => Some(pictures::missing(file, others.keys().map(String::as_str))),
        Some(bytes) if bytes.is_empty() => Some(pictures::too_large(file)),
        Some(bytes) if kind(&file.value) == Some("svg") => {
            why_unsafe(&String::from_utf8_lossy(bytes)).map(|what| pictures::unsafe_svg(file, what))
        }
        Some(_) => None,
    }
}

/// Whether a path would leave the handbook's folder on any system.
fn leaves(path: &str) -> bool {
    let absolute = path.starts_with(['/', '\\']) || path.contains(':');
    absolute || path.split(['/', '\\']).any(|part| part == "..")
}

/// The kind of a picture that pages can show, by its name.
pub fn kind(path: &str) -> Option<&'static str> {
    let ending = path.rsplit_once('.')?.1.to_ascii_lowercase();
    match ending.as_str() {
        "svg" => Some("svg"),
        "png" => Some("png"),
        "jpg" | "jpeg" => Some("jpeg"),
        "webp" => Some("webp"),
        _ => None,
    }
}

/// What makes an SVG unsafe. Shown as an image a browser runs none of it; it is refused all the same, since people open files.
fn why_unsafe(svg: &str) -> Option<&'static str> {
    let lower = svg.to_ascii_lowercase();
    let tags = [
        ("<script", "a script"),
        ("<foreignobject", "foreign content"),
        ("<iframe", "a frame"),
        ("<!entity", "an entity"),
    ];
    if let Some((_, what)) = tags.into_iter().find(|(tag, _)| lower.contains(tag)) {
        return Some(what);
    }
    if handlers(&lower) {
        return Some("an event handler");
    }
    outside(&lower).then_some("an outside reference")
}

/// An attribute that starts with `on`: ` onload=`.
fn handlers(lower: &str) -> bool {
    lower.match_indices(" on").any(|(at, _)| {
        let rest = &lower[at + 3..];
        let name = rest.find(|letter: char| !letter.is_ascii_alphabetic()).unwrap_or(rest.len());
        name > 0 && rest[name..].trim_start().starts_with('=')
    })
}

fn outside(lower: &str) -> bool {
    let quoted = ["href=\"", "href='", "src=\"", "src='", "url(", "@import"];
    quoted.into_iter().any(|start| {
        lower.match_indices(start).any(|(at, _)| {
            let target = lower[at + start.len()..].trim_start_matches(['"', '\'', ' ']);
            !target.starts_with('#') && !target.starts_with("data:image/")
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_svg_may_only_point_inside_itself() {
        assert_eq!(why_unsafe("<svg><use href=\"#tip\"/><path fill='url(#h)'/></svg>"), None);
        assert_eq!(why_unsafe("<svg><image href='https://a.example/x.png'/></svg>"), Some("an outside reference"));
        assert_eq!(why_unsafe("<svg onload = 'x()'/>"), Some("an event handler"));
        assert_eq!(why_unsafe("<svg><SCRIPT/></svg>"), Some("a script"));
    }

    #[test]
    fn no_path_leaves_the_folder_on_any_system() {
        for bad in ["../a.png", "a/../../b.png", "/etc/a.png", "C:\\a.png", "a\\..\\b.png"] {
            assert!(leaves(bad), "{bad}");
        }
        assert!(!leaves("pictures/tip.svg"));
    }
}
