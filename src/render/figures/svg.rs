//! A small writer of SVG: elements as a tree, escaped when they are printed.
//!
//! In: names and classes of ours, numbers, words of anybody's. Out: well-formed XML whose bytes depend on the input alone.
//! Numbers keep two decimals at most. What an id means and what a class looks like is left to others.

use std::fmt::Write as _;

/// Whether a drawing carries its shapes in itself or refers to shapes that stand once in the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shapes {
    /// Written out in the drawing.
    Own,
    /// Referred to by `<use>`: the `shapes` of the same kind must stand somewhere in the same file.
    Shared,
}

/// One element with its attributes and what stands in it.
#[derive(Clone, Debug)]
pub(super) struct Element {
    name: &'static str,
    attributes: Vec<(&'static str, String)>,
    children: Vec<Child>,
}

#[derive(Clone, Debug)]
enum Child {
    Element(Element),
    Text(String),
}

/// An element without attributes.
pub(super) fn element(name: &'static str) -> Element {
    Element { name, attributes: Vec::new(), children: Vec::new() }
}

/// A drawing of its own, `width` by `height` units.
pub(super) fn drawing(width: f64, height: f64) -> Element {
    element("svg").with("viewBox", format!("0 0 {} {}", number(width), number(height)))
}

/// A group of the given class.
pub(super) fn group(class: &str) -> Element {
    element("g").class(class)
}

/// A path whose data are already written.
pub(super) fn path(class: &str, data: impl Into<String>) -> Element {
    element("path").class(class).with("d", data)
}

/// A rectangle.
pub(super) fn rect(class: &str, x: f64, y: f64, width: f64, height: f64) -> Element {
    // At nought is where a rectangle is if nothing is said, and there are some thousand of them.
    let placed = |element: Element, name, at: f64| if at == 0.0 { element } else { element.at(name, at) };
    placed(placed(element("rect").class(class), "x", x), "y", y).at("width", width).at("height", height)
}

/// A circle.
pub(super) fn circle(class: &str, x: f64, y: f64, r: f64) -> Element {
    element("circle").class(class).at("cx", x).at("cy", y).at("r", r)
}

/// One line of words that starts at `x` on the base line `y`.
pub(super) fn words(class: &str, x: f64, y: f64, text: &str) -> Element {
    element("text").class(class).at("x", x).at("y", y).text(text)
}

/// A reference to the shape with this id.
pub(super) fn reference(id: &str) -> Element {
    element("use").with("href", format!("#{id}"))
}

impl Element {
    /// Adds an attribute.
    pub(super) fn with(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.attributes.push((name, value.into()));
        self
    }

    /// Adds an attribute that is a number.
    pub(super) fn at(self, name: &'static str, value: f64) -> Self {
        self.with(name, number(value))
    }

    /// Adds the class; none if it is empty.
    pub(super) fn class(self, class: &str) -> Self {
        if class.is_empty() { self } else { self.with("class", class) }
    }

    /// Puts an element last in this one.
    pub(super) fn add(mut self, child: Element) -> Self {
        self.children.push(Child::Element(child));
        self
    }

    /// Puts elements last in this one, in their order.
    pub(super) fn all(mut self, children: impl IntoIterator<Item = Element>) -> Self {
        self.children.extend(children.into_iter().map(Child::Element));
        self
    }

    /// Puts words last in this element.
    pub(super) fn text(mut self, text: &str) -> Self {
        self.children.push(Child::Text(text.to_owned()));
        self
    }

    /// Makes this a picture that is read out as `title`; its title's id starts with `prefix`.
    pub(super) fn titled(self, prefix: &str, title: &str) -> Self {
        let id = format!("{}-title", id(prefix));
        let named = self.with("role", "img").with("aria-labelledby", id.clone());
        let mut named = named.add(element("title").with("id", id).text(title));
        named.children.rotate_right(1);
        named
    }

    /// Makes this a picture that is not read out: what it shows is said beside it.
    pub(super) fn silent(self) -> Self {
        self.with("aria-hidden", "true")
    }

    /// The element as text.
    pub(super) fn print(&self) -> String {
        let mut out = String::new();
        self.write(&mut out);
        out
    }

    fn write(&self, out: &mut String) {
        out.push('<');
        out.push_str(self.name);
        for (name, value) in &self.attributes {
            out.push(' ');
            out.push_str(name);
            out.push_str("=\"");
            escape(value, out);
            out.push('"');
        }
        if self.children.is_empty() {
            out.push_str("/>");
            return;
        }
        out.push('>');
        for child in &self.children {
            match child {
                Child::Element(element) => element.write(out),
                Child::Text(text) => escape(text, out),
            }
        }
        let _ = write!(out, "</{}>", self.name);
    }
}

/// The data of a path, written point by point in whole coordinates of the drawing.
#[derive(Clone, Debug, Default)]
pub(super) struct Trace(String);

impl Trace {
    /// A trace that starts here.
    pub(super) fn from(x: f64, y: f64) -> Self {
        Self::default().to('M', &[x, y])
    }

    /// A straight line to here.
    pub(super) fn line(self, x: f64, y: f64) -> Self {
        self.to('L', &[x, y])
    }

    /// A straight line up or down to here.
    pub(super) fn upright(self, y: f64) -> Self {
        self.to('V', &[y])
    }

    /// A bend to `(x, y)` that leans on `(cx, cy)`.
    pub(super) fn bend(self, cx: f64, cy: f64, x: f64, y: f64) -> Self {
        self.to('Q', &[cx, cy, x, y])
    }

    /// A curve to `(x, y)` that leaves towards the first and comes in from the second of `leans`.
    pub(super) fn curve(self, leans: [(f64, f64); 2], (x, y): (f64, f64)) -> Self {
        let [(ax, ay), (bx, by)] = leans;
        self.to('C', &[ax, ay, bx, by, x, y])
    }

    /// Back to the start.
    pub(super) fn close(mut self) -> String {
        self.0.push('z');
        self.0
    }

    /// The data so far.
    pub(super) fn open(self) -> String {
        self.0
    }

    fn to(mut self, command: char, numbers: &[f64]) -> Self {
        self.0.push(command);
        for (index, value) in numbers.iter().enumerate() {
            if index > 0 {
                self.0.push(' ');
            }
            self.0.push_str(&number(*value));
        }
        self
    }
}

/// A number with two decimals at most, the same on every machine; what is not finite prints as 0.
pub(super) fn number(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// What may stand in an id and in a reference without escapes: ASCII letters, digits, hyphens; anything else is a hyphen.
pub(super) fn id(text: &str) -> String {
    text.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect()
}

/// Escapes for text and for attributes in double quotes; characters that XML cannot hold become U+FFFD.
fn escape(text: &str, out: &mut String) {
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\0'..='\u{1f}' | '\u{7f}'..='\u{9f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            _ => out.push(c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_two_decimals_and_no_idle_zeros() {
        let shown: Vec<String> = [0.0, -0.001, 1.0, 1.5, 2.0 / 3.0, -12.345_6, 1200.0, f64::NAN, f64::INFINITY]
            .into_iter()
            .map(number)
            .collect();
        assert_eq!(shown, ["0", "0", "1", "1.5", "0.67", "-12.35", "1200", "0", "0"]);
    }

    #[test]
    fn markup_in_words_stays_words() {
        let drawn = words("t2", 1.0, 2.0, "<b>\"5\" & more</b>\u{0}").print();
        assert_eq!(
            drawn,
            "<text class=\"t2\" x=\"1\" y=\"2\">&lt;b&gt;&quot;5&quot; &amp; more&lt;/b&gt;\u{fffd}</text>"
        );
    }

    #[test]
    fn an_id_holds_nothing_that_needs_an_escape() {
        assert_eq!(id("foil: stays \"lit\"#é"), "foil--stays--lit---");
    }

    #[test]
    fn a_title_comes_first_and_is_pointed_at() {
        let drawn = drawing(10.0, 20.0).add(circle("", 1.0, 1.0, 1.0)).titled("a b", "What <is> it").print();
        assert_eq!(
            drawn,
            "<svg viewBox=\"0 0 10 20\" role=\"img\" aria-labelledby=\"a-b-title\"><title id=\"a-b-title\">What &lt;is&gt; it\
             </title><circle cx=\"1\" cy=\"1\" r=\"1\"/></svg>"
        );
    }
}
