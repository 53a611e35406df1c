//! Pictures: there, inside the folder, of a kind that pages can show, harmless, and told in words.

use crate::model::{Guides, Picture};
use crate::proof::finding::Finding;
use crate::proof::findings::pictures;
use crate::proof::{photo, walk};
use crate::source::Tolerant;
use std::collections::BTreeMap;

/// Pictures as they are shown, by the path of their file.
pub type Shown = BTreeMap<String, Vec<u8>>;

/// Checks every picture against the files beside the guides; the sound ones as they are shown.
pub fn check(guides: &Guides, others: &BTreeMap<String, Vec<u8>>, findings: &mut Vec<Finding>) -> Shown {
    check_more(guides, others, &Shown::new(), findings)
}

/// The same for the guides in another language: the pictures that they show in place of those that are known.
pub fn check_more(
    guides: &Guides,
    others: &BTreeMap<String, Vec<u8>>,
    known: &Shown,
    findings: &mut Vec<Finding>,
) -> Shown {
    let mut shown = Shown::new();
    for picture in walk::pictures(guides).into_iter().flat_map(|(_, list)| list.iter().filter_map(Tolerant::sound)) {
        if !known.contains_key(&picture.file.value) {
            match fit(picture, others) {
                Ok(bytes) => drop(shown.insert(picture.file.value.clone(), bytes)),
                Err(finding) => findings.push(finding),
            }
        }
        if picture.alt.as_ref().is_none_or(|alt| alt.value.trim().is_empty()) {
            findings.push(pictures::without_alt(&picture.picture));
        }
    }
    shown
}

/// A picture as it is shown, or what is wrong with it.
fn fit(picture: &Picture, others: &BTreeMap<String, Vec<u8>>) -> Result<Vec<u8>, Finding> {
    let file = &picture.file;
    if leaves(&file.value) {
        return Err(pictures::outside(file));
    }
    let Some(kind) = kind(&file.value) else { return Err(pictures::kind(file)) };
    match others.get(&file.value) {
        None => Err(pictures::missing(file, others.keys().map(String::as_str))),
        Some(bytes) if bytes.is_empty() => Err(pictures::too_large(file)),
        Some(bytes) if kind == "svg" => match why_bytes_unsafe(bytes) {
            Some(what) => Err(pictures::unsafe_svg(file, what)),
            None => Ok(bytes.clone()),
        },
        Some(bytes) => photo::fit(bytes, kind).map_err(|why| pictures::unfit(file, &why)),
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

/// The same from bytes: what cannot be read as UTF-8 could hide anything from this look and nothing from a browser.
fn why_bytes_unsafe(bytes: &[u8]) -> Option<&'static str> {
    match std::str::from_utf8(bytes) {
        Ok(svg) if !svg.contains('\0') => why_unsafe(svg),
        _ => Some("another encoding than UTF-8"),
    }
}

/// What makes an SVG unsafe. Shown as an image a browser runs none of it; it is refused all the same, since people open files.
fn why_unsafe(svg: &str) -> Option<&'static str> {
    let lower = one_line(svg);
    let tags = [
        ("<script", "a script"),
        ("<foreignobject", "foreign content"),
        ("<iframe", "a frame"),
        ("<!entity", "an entity"),
        ("attributename=\"href", "a link that changes"),
        ("attributename='href", "a link that changes"),
        ("attributename=\"xlink:href", "a link that changes"),
        ("attributename='xlink:href", "a link that changes"),
    ];
    // A name space may stand before a tag's name: `<svg:script`.
    let bare = without_name_spaces(&lower);
    if let Some((_, what)) = tags.into_iter().find(|(tag, _)| lower.contains(tag) || bare.contains(tag)) {
        return Some(what);
    }
    if handlers(&lower) {
        return Some("an event handler");
    }
    outside(&lower).then_some("an outside reference")
}

/// Small letters, every gap one space, and none round an equals sign.
fn one_line(svg: &str) -> String {
    let words: Vec<&str> = svg.split_whitespace().collect();
    words.join(" ").replace(" = ", "=").replace(" =", "=").replace("= ", "=").to_ascii_lowercase()
}

/// The tags without what stands before a colon in their names.
fn without_name_spaces(lower: &str) -> String {
    let mut bare = String::with_capacity(lower.len());
    for (number, part) in lower.split('<').enumerate() {
        let name = part.find(|letter: char| !letter.is_ascii_alphanumeric() && letter != ':').unwrap_or(part.len());
        let cut = part[..name].rfind(':').map_or(0, |colon| colon + 1);
        bare.push_str(if number == 0 { "" } else { "<" });
        bare.push_str(&part[cut..]);
    }
    bare
}

/// An attribute that starts with `on`: ` onload=`, `"onload=`, `/onload=`.
fn handlers(lower: &str) -> bool {
    lower.match_indices("on").any(|(at, _)| {
        let begins = lower[..at].ends_with([' ', '"', '\'', '/']);
        let rest = &lower[at + 2..];
        let name = rest.find(|letter: char| !letter.is_ascii_alphabetic()).unwrap_or(rest.len());
        begins && name > 0 && rest[name..].starts_with('=')
    })
}

/// Kinds of pictures that may stand inside an SVG: those that hold nothing but dots.
const INSIDE: [&str; 5] = ["data:image/png", "data:image/jpeg", "data:image/jpg", "data:image/gif", "data:image/webp"];

fn outside(lower: &str) -> bool {
    let quoted = ["href=\"", "href='", "src=\"", "src='", "url(", "@import"];
    quoted.into_iter().any(|start| {
        lower.match_indices(start).any(|(at, _)| {
            let target = lower[at + start.len()..].trim_start_matches(['"', '\'', ' ']);
            !target.starts_with('#') && !INSIDE.iter().any(|kind| target.starts_with(kind))
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
        assert_eq!(why_unsafe("<s:svg><s:script/></s:svg>"), Some("a script"));
        assert_eq!(why_unsafe("<svg\nonload='x()'/>"), Some("an event handler"));
        assert_eq!(why_unsafe("<svg><a href = 'x.html'/></svg>"), Some("an outside reference"));
        assert_eq!(why_unsafe("<svg><use href='data:image/svg+xml,x'/></svg>"), Some("an outside reference"));
        assert_eq!(why_bytes_unsafe(b"\xff\xfe<\0s\0"), Some("another encoding than UTF-8"));
    }

    #[test]
    fn no_path_leaves_the_folder_on_any_system() {
        for bad in ["../a.png", "a/../../b.png", "/etc/a.png", "C:\\a.png", "a\\..\\b.png"] {
            assert!(leaves(bad), "{bad}");
        }
        assert!(!leaves("pictures/tip.svg"));
    }
}
