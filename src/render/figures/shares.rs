//! The bar of a share: how many cases in 100, drawn.
//!
//! The width is an attribute, not a style, so that it holds under a strict security policy and prints without backgrounds.
//! It is not read out: the figure stands beside it.

use super::svg;

/// What a bar stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bar {
    /// A cause of the list: solid.
    Cause,
    /// Not on this list: hollow with an inked edge.
    Rest,
}

/// The bar of `share` cases in 100 on a scale that ends at `scale`, drawn to half a hundredth of the scale: nobody sees finer, and pages
/// share more of their drawings. A share past the end fills the bar.
pub fn bar(share: f64, scale: f64, kind: Bar) -> String {
    let full = if scale > 0.0 { share / scale * 100.0 } else { 0.0 };
    let full = (full * 2.0).ceil() / 2.0;
    let class = match kind {
        Bar::Cause => "fill",
        Bar::Rest => "rest",
    };
    // No view box is needed, and the theme draws the track around the whole: there are thousands of bars.
    let width = format!("{}%", full.clamp(0.0, 100.0));
    svg::element("svg")
        .class("bar")
        .silent()
        .add(svg::element("rect").class(class).with("width", width).with("height", "100%"))
        .print()
}

/// Where the scale of a list of bars ends: the next full ten at or above the greatest share, at least 10, at most 100.
pub fn scale(shares: &[f64]) -> f64 {
    let greatest = shares.iter().copied().fold(0.0, f64::max);
    ((greatest / 10.0).ceil() * 10.0).clamp(10.0, 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_is_as_long_as_its_share_of_the_scale() {
        assert!(bar(27.0, 30.0, Bar::Cause).contains("class=\"fill\" width=\"90%\""));
        assert!(bar(7.0, 30.0, Bar::Rest).contains("class=\"rest\" width=\"23.5%\""));
        assert!(bar(50.0, 30.0, Bar::Cause).contains("width=\"100%\" height=\"100%\"/></svg>"));
    }

    #[test]
    fn the_scale_ends_at_a_full_ten() {
        assert_eq!(
            [scale(&[27.0, 12.0]), scale(&[30.0]), scale(&[]), scale(&[3.0]), scale(&[99.5])],
            [30.0, 30.0, 10.0, 10.0, 100.0]
        );
    }
}
