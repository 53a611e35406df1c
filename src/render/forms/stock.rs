//! Drawings that many pages share: in one file that holds every page, each stands once and is referred to.
//!
//! In: the drawings of rails, bars and minutes as they stand on a page of its own. Out: the same with a reference in place of what
//! repeats, and the shapes to stand once in `<defs>`. A shape keeps the class that its colours come by, on itself, since a style
//! sheet's rule does not reach from the place of use into what is used.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

/// The shapes, by their ids. An id is made from what is drawn, so that it does not matter in which order pages are set.
#[derive(Debug, Default)]
pub struct Stock {
    shapes: Mutex<BTreeMap<String, String>>,
}

impl Stock {
    /// A bar: all of it is shared.
    pub fn bar(&self, svg: &str) -> String {
        let Some((_, body)) = parted(svg) else { return svg.to_owned() };
        let used = self.shared("symbol", "bar", body);
        format!("<svg class=\"bar\" aria-hidden=\"true\">{used}</svg>")
    }

    /// A rail: the item with its marks, and the leaders apart from it, since the style sheet shows them only beside a page.
    pub fn rail(&self, svg: &str) -> String {
        const LEADERS: &str = "<g class=\"d-leads\">";
        let Some((head, body)) = parted(svg) else { return svg.to_owned() };
        let Some((item, leaders)) = body.split_once(LEADERS) else {
            return format!("{head}{}</svg>", self.shared("g", "", body));
        };
        let leaders = leaders.strip_suffix("</g>").unwrap_or(leaders);
        let leaders = self.shared("g", "", leaders).replacen("<use", "<use class=\"d-leads\"", 1);
        format!("{head}{}{leaders}</svg>", self.shared("g", "", item))
    }

    /// A rule of minutes: its scale is shared.
    pub fn minutes(&self, svg: &str) -> String {
        const SCALE: &str = "<g class=\"scale\">";
        let parts = svg.split_once(SCALE).and_then(|(before, rest)| Some((before, rest.split_once("</g>")?)));
        let Some((before, (scale, after))) = parts else { return svg.to_owned() };
        format!("{before}{}{after}", self.shared("g", "minutes", scale))
    }

    /// All shapes, to stand once in the file.
    pub fn shapes(&self) -> String {
        let shapes = self.shapes.lock().unwrap_or_else(PoisonError::into_inner);
        shapes.values().map(String::as_str).collect()
    }

    fn shared(&self, element: &str, class: &str, drawn: &str) -> String {
        let hash = blake3::hash(format!("{class} {drawn}").as_bytes());
        let number = hash.as_bytes().iter().take(5).fold(0, |number: usize, byte| number << 8 | usize::from(*byte));
        let id = format!("d{}", super::short(number));
        let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
        let used = format!("<use href=\"#{id}\"/>");
        let mut shapes = self.shapes.lock().unwrap_or_else(PoisonError::into_inner);
        shapes.entry(id).or_insert_with_key(|id| {
            let name = element.split(' ').next().unwrap_or("g");
            format!("<{element} id=\"{id}\"{class}>{drawn}</{name}>")
        });
        used
    }
}

/// The start tag of a drawing, and what stands in it.
fn parted(svg: &str) -> Option<(&str, &str)> {
    let end = svg.find('>')? + 1;
    let (head, body) = svg.split_at(end);
    Some((head, body.strip_suffix("</svg>")?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_drawing_stands_once_and_another_apart() {
        let stock = Stock::default();
        let bar = |width: u32| format!("<svg class=\"bar\"><rect width=\"{width}\"/></svg>");
        let (one, again, other) = (stock.bar(&bar(1)), stock.bar(&bar(1)), stock.bar(&bar(2)));
        assert_eq!(one, again);
        assert_ne!(one, other);
        assert_eq!(stock.shapes().matches("<symbol ").count(), 2);
        assert!(stock.shapes().contains("class=\"bar\"><rect width=\"1\"/></symbol>"));
    }

    #[test]
    fn leaders_keep_the_class_that_hides_them() {
        let stock = Stock::default();
        let rail =
            stock.rail("<svg viewBox=\"0 0 7 1\"><path d=\"M0\"/><g class=\"d-leads\"><path d=\"M1\"/></g></svg>");
        assert!(rail.contains("<use class=\"d-leads\" href="), "{rail}");
        assert!(!stock.shapes().contains("d-leads"));
    }
}
