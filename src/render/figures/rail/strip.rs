//! The plain strip: the rail of an item that a club named itself.
//!
//! Nothing is known of its shape, so nothing is pretended: one block a place on a bar, in the order given.

use super::{HEIGHT, State, WIDTH, bracket, class_of, leaders};
use crate::render::figures::svg::{self, Element, Trace};

/// From where to where a block goes, along the axis.
type Span = (f64, f64);

/// The strip with one block a place, in order. Any number of places is drawn; more than seven are hard to tell apart on a phone.
pub fn strip(places: &[State]) -> String {
    let spans = spans(places.len());
    let blocks = || spans.iter().copied().zip(places.iter().copied());
    let here = blocks().filter(|(_, state)| *state == State::Here);
    svg::drawing(WIDTH, HEIGHT)
        .silent()
        .add(svg::path("d-c", "M8 60h684"))
        .add(svg::group("st").all(spans.windows(2).filter_map(bar)))
        .all(blocks().map(|(span, state)| block(span, state)))
        .all(here.map(|(span, _)| bracket(span)))
        .add(leaders(
            spans.iter().map(|(from, to)| ((from + to) / 2.0, 36.0)),
        ))
        .print()
}

fn spans(count: usize) -> Vec<Span> {
    let band = WIDTH / count.max(1) as f64;
    (0..count)
        .map(|index| ((index as f64 + 0.14) * band, (index as f64 + 0.86) * band))
        .collect()
}

/// The bar from one block to the next, not behind them: it must not show through one that is ruled out.
fn bar(pair: &[Span]) -> Option<Element> {
    match pair {
        [(_, from), (to, _)] => Some(svg::rect("d-o", *from, 53.0, to - from, 14.0)),
        _ => None,
    }
}

fn block((from, to): Span, state: State) -> Element {
    let band = |x: f64| svg::path("d-t", Trace::from(x, 36.0).line(x, 84.0).open());
    svg::group(class_of(state))
        .add(svg::rect("d-o", from, 36.0, to - from, 48.0))
        .all([band(from + 6.0), band(to - 6.0)])
}
