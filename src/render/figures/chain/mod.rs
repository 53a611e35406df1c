//! The chain: one line of current from the weapon to the lamp, with the bench beside it.
//!
//! In: which of the two arrangements. Out: one SVG; it is not read out, as nine links lie over it. Each object stands in a
//! group of class `o` and `o-` with its id, which the style sheet paints when its link (class `to-` with the id) is pointed
//! at, and places the link. Left to others: the words, the links, and which items a club keeps. A right-handed foilist
//! seen from the front, so the weapon is on the left; of all the lamps only one is lit.

mod objects;

use super::svg::{self, Element};
use objects::*;

/// How the objects are arranged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arrangement {
    /// In one row, 1264 by 400 units, for wide screens and paper.
    Wide,
    /// The line goes out above and comes back below, 360 by 528 units, for phones.
    Tall,
}

/// A place on the chain, or on the bench beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Object {
    /// ASCII; the classes are `o-ID` in the drawing and `to-ID` on the link.
    pub id: &'static str,
    /// The id of the message that names it.
    pub title: &'static str,
    /// Whether the line of current runs through it.
    pub stands: Stands,
}

/// Where an object of the drawing stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// On the line from weapon to lamp.
    OnTheLine,
    /// On the bench, apart from it.
    OnTheBench,
}

/// The nine objects in the order of the line, then the bench.
pub const OBJECTS: [Object; 9] = [
    on_the_line("weapon", "chain-weapon"),
    on_the_line("cord", "chain-cord"),
    on_the_line("jacket", "chain-jacket"),
    on_the_line("mask", "chain-mask"),
    on_the_line("reel", "chain-reel"),
    on_the_line("floor", "chain-floor"),
    on_the_line("apparatus", "chain-apparatus"),
    Object {
        id: "tester",
        title: "chain-tester",
        stands: Stands::OnTheBench,
    },
    Object {
        id: "meter",
        title: "chain-meter",
        stands: Stands::OnTheBench,
    },
];

const fn on_the_line(id: &'static str, title: &'static str) -> Object {
    Object {
        id,
        title,
        stands: Stands::OnTheLine,
    }
}

/// The drawing of the chain.
pub fn chain(arrangement: Arrangement) -> String {
    let drawn = match arrangement {
        Arrangement::Wide => wide(),
        Arrangement::Tall => tall(),
    };
    drawn.print()
}

fn wide() -> Element {
    svg::element("svg")
        .class("chain-wide")
        .with("viewBox", "-12 0 1264 400")
        .silent()
        .add(svg::path("d-c", "M2 172H316"))
        .add(svg::path("d-ground", "M612 352H1012"))
        .add(svg::path("d-part", "M1024 176V396"))
        .add(svg::path("d-bench", "M1036 352H1238"))
        .add(object("jacket", JACKET))
        .add(object("mask", MASK))
        .add(object("weapon", WEAPON))
        .add(object("cord", CORD).all(CORD_END.iter().map(shape)))
        .add(object("cord", CLIP))
        .add(object("cord", CORD_PLUG))
        .add(object("reel", REEL_SOCKET))
        .add(object("reel", REEL_CABLE))
        .all(far_side())
        .add(object("tester", TESTER))
        .add(object("meter", METER))
}

/// Reel, apparatus and floor cable, in the order they hide each other.
fn far_side() -> [Element; 3] {
    [
        object("reel", REEL),
        object("apparatus", APPARATUS),
        object("floor", FLOOR),
    ]
}

fn tall() -> Element {
    let outfit = moved("translate(2 6) scale(.6)")
        .add(svg::path("d-c", "M2 172H316"))
        .add(object("jacket", JACKET))
        .add(object("mask", MASK))
        .add(object("weapon", WEAPON))
        .add(object("cord", CORD))
        .add(object("cord", CLIP));
    svg::drawing(360.0, 528.0)
        .class("chain-tall")
        .silent()
        .add(outfit)
        .add(svg::path("d-ground", "M14 378.6H350"))
        .add(object("reel", REEL_CABLE_DOWN))
        .add(object("cord", CORD_DOWN))
        .add(object("reel", REEL_SOCKET_DOWN))
        .add(moved("translate(874 90) scale(-.82 .82)").all(far_side()))
        .add(svg::path("d-part", "M4 416H356"))
        .add(svg::path("d-bench", "M14 518H346"))
        .add(moved("translate(-1024 166)").add(object("tester", TESTER)))
        .add(moved("translate(-968 166)").add(object("meter", METER)))
}

fn moved(how: &'static str) -> Element {
    svg::element("g").with("transform", how)
}

fn object(id: &str, shapes: &[Shape]) -> Element {
    svg::group(&format!("o o-{id}")).all(shapes.iter().map(shape))
}

fn shape(shape: &Shape) -> Element {
    match *shape {
        Shape::Path(class, data) => svg::path(class, data),
        Shape::Ring(class, x, y, r) => svg::circle(class, x, y, r),
        Shape::Dark(x, y) => lamp(x, y, ["lamp-o", "lamp-x"]),
        Shape::Lit(x, y) => {
            let rays = "M0-13.5v-5M9.5-9.5l3.5-3.5M-9.5-9.5l-3.5-3.5";
            lamp(x, y, ["lamp-o on", "lamp-x on"]).add(svg::path("d-ray", rays))
        }
    }
}

fn lamp(x: f64, y: f64, [rim, cross]: [&str; 2]) -> Element {
    svg::element("g")
        .with(
            "transform",
            format!("translate({} {})", svg::number(x), svg::number(y)),
        )
        .add(svg::element("circle").class(rim).at("r", 10.0))
        .add(svg::path(cross, "M-7-7l14 14M7-7l-14 14"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_arrangements_show_all_nine_objects_and_one_lit_lamp() {
        for drawn in [chain(Arrangement::Wide), chain(Arrangement::Tall)] {
            for object in OBJECTS {
                assert!(
                    drawn.contains(&format!("class=\"o o-{}\"", object.id)),
                    "{}",
                    object.id
                );
            }
            assert_eq!(drawn.matches("lamp-o on").count(), 1);
        }
    }

    /// The ends of the strokes of class `thread` in the wide drawing, by `(x, y)`.
    fn thread_ends(shapes: &[&[Shape]]) -> Vec<[(f64, f64); 2]> {
        let mut ends = Vec::new();
        for shape in shapes.iter().copied().flatten() {
            if let Shape::Path(class, data) = shape
                && class.starts_with("thread")
            {
                ends.push(ends_of(data));
            }
        }
        ends
    }

    /// First and last point of a path of absolute commands.
    fn ends_of(data: &str) -> [(f64, f64); 2] {
        let starts: Vec<(usize, &str)> = data.match_indices(char::is_alphabetic).collect();
        let stops = starts.iter().skip(1).map(|(at, _)| *at).chain([data.len()]);
        let mut points = vec![];
        for ((start, command), stop) in starts.iter().zip(stops) {
            let numbers: Vec<f64> = data[start + 1..stop]
                .split(' ')
                .filter_map(|n| n.parse().ok())
                .collect();
            let (x, y) = points.last().copied().unwrap_or_default();
            points.push(match (*command, numbers.as_slice()) {
                ("H", [.., x]) => (*x, y),
                ("V", [.., y]) => (x, *y),
                (_, [.., x, y]) => (*x, *y),
                _ => (x, y),
            });
        }
        [points[0], points[points.len() - 1]]
    }

    #[test]
    fn the_line_never_breaks_but_where_a_drawn_plug_or_part_hides_it() {
        let way = thread_ends(&[CORD, CORD_END]);
        for pair in way.windows(2) {
            assert_eq!(pair[0][1], pair[1][0], "the cord breaks");
        }
        let near = |a: (f64, f64), b: (f64, f64), most: f64| {
            (a.0 - b.0).abs() <= most && (a.1 - b.1).abs() <= most
        };
        let weapon = thread_ends(&[WEAPON])[0];
        assert!(near(weapon[1], way[0][0], 8.0), "weapon to cord");
        let cable = thread_ends(&[REEL_CABLE])[0];
        assert!(
            near(cable[1], thread_ends(&[REEL])[0][0], 8.0),
            "cable to drum"
        );
        let floor = thread_ends(&[FLOOR])[0];
        assert!(
            near(floor[1], thread_ends(&[APPARATUS])[0][0], 12.0),
            "floor cable to apparatus"
        );
    }
}
