//! The lamp glyph: the standard lamp sign, dark, lit, or coming and going.
//!
//! Shape carries the meaning (hollow, full with eight rays, half full with three); colour repeats it. A coloured lamp of the apparatus is
//! red on one side of it and green on the other, so its glyph is parted in two. It is never read out: words stand beside it.

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

/// What light a lamp gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Light {
    /// Yellow: the lamp of a tester, and the apparatus's for the earth.
    Yellow,
    /// White: off target.
    White,
    /// Red or green, by the side: a hit.
    Coloured,
}

const CROSS: &str = "M11.9 11.9l16.2 16.2M28.1 11.9L11.9 28.1";
const EIGHT_RAYS: &str =
    "M20 1v4.5M20 34.5v4.5M1 20h4.5M34.5 20h4.5M6.6 6.6l3.2 3.2M30.2 30.2l3.2 3.2M33.4 6.6l-3.2 3.2M9.8 30.2l-3.2 3.2";
const LEFT_HALF: &str = "M20 8.5a11.5 11.5 0 0 0 0 23z";
const RIGHT_HALF: &str = "M20 8.5a11.5 11.5 0 0 1 0 23z";
const UPPER_QUARTER: &str = "M20 8.5a11.5 11.5 0 0 1 11.5 11.5H20z";
const LOWER_QUARTER: &str = "M31.5 20a11.5 11.5 0 0 1-11.5 11.5V20z";
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

    fn class(self, light: Light) -> String {
        let state = match self {
            Lamp::Lit => "lit",
            Lamp::Dark => "dark",
            Lamp::ComesAndGoes => "flicker",
        };
        format!("lamp {state} {}", light.name()).trim_end().to_owned()
    }

    fn strokes(self, light: Light) -> Vec<Element> {
        let rim = svg::circle("", 20.0, 20.0, 11.5);
        let cross = svg::path("cross", CROSS);
        let fills = match (self, light) {
            (Lamp::Dark, _) | (Lamp::Lit, Light::Yellow | Light::White) => Vec::new(),
            (Lamp::Lit, Light::Coloured) => {
                vec![svg::path("half red", LEFT_HALF), svg::path("half green", RIGHT_HALF)]
            }
            (Lamp::ComesAndGoes, Light::Coloured) => {
                vec![svg::path("half red", UPPER_QUARTER), svg::path("half green", LOWER_QUARTER)]
            }
            (Lamp::ComesAndGoes, _) => vec![svg::path("half", RIGHT_HALF)],
        };
        let rays = match self {
            Lamp::Dark => None,
            Lamp::Lit => Some(EIGHT_RAYS),
            Lamp::ComesAndGoes => Some(THREE_RAYS),
        };
        let rays = rays.map(|rays| svg::path("rays", rays));
        [rim].into_iter().chain(fills).chain([cross]).chain(rays).collect()
    }
}

impl Light {
    /// Every light.
    pub const ALL: [Light; 3] = [Light::Yellow, Light::White, Light::Coloured];

    fn name(self) -> &'static str {
        match self {
            Light::Yellow => "",
            Light::White => "white",
            Light::Coloured => "coloured",
        }
    }
}

/// The glyph, 40 by 40 units.
pub fn lamp(state: Lamp, light: Light, shapes: Shapes) -> String {
    let light = seen(state, light);
    let glyph = svg::drawing(40.0, 40.0).silent().class(&state.class(light));
    match (shapes, light) {
        (Shapes::Shared, Light::Yellow) => glyph.add(svg::reference(state.id())).print(),
        // The apparatus's other lights stand on few pages: shapes of theirs on every page would cost a megabyte.
        _ => glyph.all(state.strokes(light)).print(),
    }
}

/// A dark lamp gives no light to tell it by.
fn seen(state: Lamp, light: Light) -> Light {
    if state == Lamp::Dark { Light::Yellow } else { light }
}

/// The yellow glyphs as shapes, to stand once inside `<defs>`; ids start with `lamp-`.
pub fn shapes() -> String {
    Lamp::ALL.map(shape).concat()
}

fn shape(state: Lamp) -> String {
    svg::group(&state.class(Light::Yellow)).with("id", state.id()).all(state.strokes(Light::Yellow)).print()
}

/// A page without the shapes of lamps that it does not show.
pub fn without_idle_shapes(mut html: String) -> String {
    for state in Lamp::ALL {
        if !html.contains(&format!("\"#{}\"", state.id())) {
            html = html.replacen(&shape(state), "", 1);
        }
    }
    html
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lamp_tells_its_state_by_shape() {
        for light in Light::ALL {
            assert!(!lamp(Lamp::Dark, light, Shapes::Own).contains("rays"));
            assert!(lamp(Lamp::Lit, light, Shapes::Own).contains(EIGHT_RAYS));
            assert!(lamp(Lamp::ComesAndGoes, light, Shapes::Own).contains("half"));
        }
        assert_ne!(lamp(Lamp::Lit, Light::White, Shapes::Own), lamp(Lamp::Lit, Light::Coloured, Shapes::Own));
    }

    #[test]
    fn a_shared_lamp_points_at_a_shape_that_is_there() {
        for state in Lamp::ALL {
            assert!(lamp(state, Light::Yellow, Shapes::Shared).contains(&format!("href=\"#{}\"", state.id())));
            assert!(shapes().contains(&format!("id=\"{}\"", state.id())));
        }
    }
}
