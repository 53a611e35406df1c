//! The patterns that drawings are filled with: hatching, conductive weave, mesh.
//!
//! The style sheet refers to them by id, so they stand once in a file, in a drawing that is out of sight but not
//! `display: none`, where some browsers would drop them.

use super::svg::{self, Element};

/// Hatching of cut walls and of minutes to go, the square weave of conductive cloth, the mesh of a mask: to stand once inside `<defs>`.
pub fn patterns() -> String {
    let shapes = [
        hatching("hatch", 6.0, "hatch-line"),
        hatching("hatch-blue", 7.0, "hatch-blue-line"),
        pattern("weave", 5.0).add(svg::path("weave-line", "M0 2.5H5M2.5 0V5")),
        pattern("mesh", 6.0).add(svg::path("mesh-line", "M0 0L6 6M6 0L0 6")),
    ];
    shapes.iter().map(Element::print).collect()
}

fn hatching(id: &'static str, size: f64, class: &str) -> Element {
    let line = svg::path(class, svg::Trace::from(0.0, 0.0).line(0.0, size).open());
    pattern(id, size).with("patternTransform", "rotate(45)").add(line)
}

fn pattern(id: &'static str, size: f64) -> Element {
    let square = svg::element("pattern").with("id", id).at("width", size).at("height", size);
    square.with("patternUnits", "userSpaceOnUse")
}
