//! The lamp glyph: the standard lamp sign, dark, lit, or coming and going.
//!
//! Shape carries the meaning (hollow, full with eight rays, half full with three); colour repeats it. It is never read out:
//! words stand beside it.

use super::svg::{self, Element, Shapes};

/// What a lamp does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lamp {
    /// It burns.
    Lit,
    /// It does not burn.
    Dark,
    /// Now this, now that.
    ComesAndGoes,
}

const CROSS: &str = "M11.9 11.9l16.2 16.2M28.1 11.9L11.9 28.1";
const EIGHT_RAYS: &str = "M20 1v4.5M20 34.5v4.5M1 20h4.5M34.5 20h4.5M6.6 6.6l3.2 3.2M30.2 30.2l3.2 3.2M33.4 6.6l-3.2 3.2M9.8 30.2l-3.2 3.2";
const THREE_RAYS: &str = "M20 1v4.5M33.4 6.6l-3.2 3.2M34.5 20h4.5";

impl Lamp {
    /// Every state.
    pub const ALL: [Lamp; 3] = [Lamp::Lit, Lamp::Dark, Lamp::ComesAndGoes];

    fn id(self) -> &'static str {
        match self {
            Lamp::Lit => "lamp-lit",
            Lamp::Dark => "lamp-dark",
            Lamp::ComesAndGoes => "lamp-comes-and-goes",
        }
    }

    fn class(self) -> &'static str {
        match self {
            Lamp::Lit => "lamp lit",
            Lamp::Dark => "lamp dark",
            Lamp::ComesAndGoes => "lamp flicker",
        }
    }

    fn strokes(self) -> Vec<Element> {
        let rim = svg::circle("", 20.0, 20.0, 11.5);
        let cross = svg::path("cross", CROSS);
        match self {
            Lamp::Dark => vec![rim, cross],
            Lamp::Lit => vec![rim, cross, svg::path("rays", EIGHT_RAYS)],
            Lamp::ComesAndGoes => {
                let half = svg::path("half", "M20 8.5a11.5 11.5 0 0 1 0 23z");
                vec![rim, half, cross, svg::path("rays", THREE_RAYS)]
            }
        }
    }
}

/// The glyph, 40 by 40 units.
pub fn lamp(state: Lamp, shapes: Shapes) -> String {
    let glyph = svg::drawing(40.0, 40.0).silent().class(state.class());
    match shapes {
        Shapes::Own => glyph.all(state.strokes()).print(),
        Shapes::Shared => glyph.add(svg::reference(state.id())).print(),
    }
}

/// The three glyphs as shapes, to stand once inside `<defs>`; ids start with `lamp-`.
pub fn shapes() -> String {
    Lamp::ALL
        .map(|state| {
            svg::group(state.class())
                .with("id", state.id())
                .all(state.strokes())
                .print()
        })
        .concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lamp_tells_its_state_by_shape() {
        assert!(!lamp(Lamp::Dark, Shapes::Own).contains("rays"));
        assert!(lamp(Lamp::Lit, Shapes::Own).contains(EIGHT_RAYS));
        assert!(lamp(Lamp::ComesAndGoes, Shapes::Own).contains("half"));
    }

    #[test]
    fn a_shared_lamp_points_at_a_shape_that_is_there() {
        for state in Lamp::ALL {
            assert!(lamp(state, Shapes::Shared).contains(&format!("href=\"#{}\"", state.id())));
            assert!(shapes().contains(&format!("id=\"{}\"", state.id())));
        }
    }
}
