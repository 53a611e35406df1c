//! The rail: an item drawn from tip to plug, or from fencer to apparatus, with the places in question marked.
//!
//! In: an item and the state of its places. Out: one SVG of 700 by 132 units, axis at 60, first place at the left. The style
//! sheet turns it upright on wide screens, so the side of small y is where the labels stand. Labels and links are HTML
//! that the page lays over it, in as many equal bands as there are places.
//! Left to others: the words of the places, and which place is in question.

mod bench;
mod cords;
mod epee;
mod foil;
mod outfit;
mod sabre;
mod strip;

pub use strip::strip;

use super::svg::{self, Element, Shapes};

/// The items whose rails are drawn here. A club's own item gets a plain [`strip`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Item {
    /// From tip to pommel.
    Foil,
    /// From tip to pommel.
    Epee,
    /// From point to pommel.
    Sabre,
    /// From weapon plug to reel plug.
    BodyCord,
    /// From the mask's clip to the jacket's.
    MaskCord,
    /// From the strap to the clip's place on the bib.
    Mask,
    /// From collar to hem.
    Jacket,
    /// From the cable's socket to the outlet.
    Reel,
    /// From the sockets to the battery.
    Tester,
}

impl Item {
    /// Every item.
    pub const ALL: [Item; 9] = [
        Item::Foil,
        Item::Epee,
        Item::Sabre,
        Item::BodyCord,
        Item::MaskCord,
        Item::Mask,
        Item::Jacket,
        Item::Reel,
        Item::Tester,
    ];

    /// The item's id, as guides and addresses spell it.
    pub fn id(self) -> &'static str {
        self.entry().0
    }

    /// The item with this id.
    pub fn by_id(id: &str) -> Option<Item> {
        Item::ALL.into_iter().find(|item| item.id() == id)
    }

    fn plan(self) -> &'static Plan {
        self.entry().1
    }

    fn entry(self) -> (&'static str, &'static Plan) {
        match self {
            Item::Foil => ("foil", &foil::PLAN),
            Item::Epee => ("epee", &epee::PLAN),
            Item::Sabre => ("sabre", &sabre::PLAN),
            Item::BodyCord => ("body-cord", &cords::BODY),
            Item::MaskCord => ("mask-cord", &cords::MASK),
            Item::Mask => ("mask", &outfit::MASK),
            Item::Jacket => ("jacket", &outfit::JACKET),
            Item::Reel => ("reel", &bench::REEL),
            Item::Tester => ("tester", &bench::TESTER),
        }
    }
}

/// A place on an item.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// ASCII words with hyphens; an item has it once.
    pub id: &'static str,
    /// The id of the message that names the place.
    pub title: &'static str,
    /// Where the bracket goes, along the axis.
    span: (f64, f64),
    /// The point that the leader leaves.
    lead: (f64, f64),
}

/// How a place stands in the question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum State {
    /// Nothing is said of it.
    #[default]
    Plain,
    /// This is where to look: painted, with a bracket alongside.
    Here,
    /// Ruled out: a thin outline.
    Out,
}

/// The state of one place. Places without a mark are plain; a mark for a place that the item has not is passed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mark<'a> {
    /// The place's id.
    pub place: &'a str,
    /// Its state.
    pub state: State,
}

/// One stroke: the class and the path's data.
type Stroke = (&'static str, &'static str);

/// The drawing of an item, as data.
struct Plan {
    /// In the order of the bands.
    places: &'static [Place],
    /// Under everything.
    under: &'static [Stroke],
    /// Parts by place, in the order they are drawn: later ones hide earlier ones.
    parts: &'static [(&'static str, &'static [Stroke])],
    /// Over everything: wires.
    over: &'static [Stroke],
}

const WIDTH: f64 = 700.0;
const HEIGHT: f64 = 132.0;

/// The places of an item in the order of the bands, at most seven.
pub fn places(item: Item) -> &'static [Place] {
    item.plan().places
}

/// The rail of an item. It is not read out: the links over it say the same.
pub fn rail(item: Item, marks: &[Mark<'_>], shapes: Shapes) -> String {
    let plan = item.plan();
    let parts: Vec<Element> = match shapes {
        Shapes::Own => of_one_state(plan.parts, marks),
        Shapes::Shared => {
            let shared = |place| svg::reference(&part_id(item, place, state_of(place, marks)));
            plan.parts.iter().map(|(place, _)| shared(place)).collect()
        }
    };
    let brackets =
        plan.places.iter().filter(|place| state_of(place.id, marks) == State::Here).map(|place| bracket(place.span));
    svg::drawing(WIDTH, HEIGHT)
        .silent()
        .all(drawn(plan.under))
        .all(parts)
        .all(drawn(plan.over))
        .all(brackets)
        .add(leaders(plan.places.iter().map(|place| place.lead)))
        .print()
}

/// The shapes of an item's rail in all their states, to stand once inside `<defs>`; ids start with `rail-`.
pub fn shapes(item: Item) -> String {
    let states = [State::Plain, State::Here, State::Out];
    let parts = item.plan().parts.iter();
    parts
        .flat_map(|(place, strokes)| states.map(|state| part(strokes, state).with("id", part_id(item, place, state))))
        .map(|shape| shape.print())
        .collect()
}

fn state_of(place: &str, marks: &[Mark<'_>]) -> State {
    marks.iter().find(|mark| mark.place == place).map_or(State::Plain, |mark| mark.state)
}

fn class_of(state: State) -> &'static str {
    match state {
        State::Plain => "st",
        State::Here => "st is-here",
        State::Out => "st is-out",
    }
}

fn part_id(item: Item, place: &str, state: State) -> String {
    let state = match state {
        State::Plain => "plain",
        State::Here => "here",
        State::Out => "out",
    };
    format!("rail-{}-{place}-{state}", item.id())
}

/// The parts, those in one group that follow one another in the same state.
fn of_one_state(parts: &'static [(&'static str, &'static [Stroke])], marks: &[Mark<'_>]) -> Vec<Element> {
    let state = |(place, _): &(&str, &[Stroke])| state_of(place, marks);
    let runs = parts.chunk_by(|one, next| state(one) == state(next));
    let group = |run: &'static [(&'static str, &'static [Stroke])]| {
        let of = run.first().map_or(State::Plain, state);
        svg::group(class_of(of)).all(run.iter().flat_map(|(_, strokes)| drawn(strokes)))
    };
    runs.map(group).collect()
}

fn part(strokes: &'static [Stroke], state: State) -> Element {
    svg::group(class_of(state)).all(drawn(strokes))
}

/// Strokes, thin lines that follow one another as one path.
fn drawn(strokes: &'static [Stroke]) -> impl Iterator<Item = Element> {
    let runs = strokes.chunk_by(|(class, _), (next, _)| class == next && *class == "d-t");
    runs.filter_map(|run| {
        let (class, _) = run.first()?;
        Some(svg::path(class, run.iter().map(|(_, data)| *data).collect::<String>()))
    })
}

/// The bracket beside a place, on the side away from the labels.
fn bracket((from, to): (f64, f64)) -> Element {
    svg::path("d-mark", svg::Trace::from(from, 119.0).line(from, 128.0).line(to, 128.0).line(to, 119.0).open())
}

/// Thin lines from each part to the middle of its band; the style sheet shows them when the rail is upright.
fn leaders(ends: impl ExactSizeIterator<Item = (f64, f64)>) -> Element {
    let band = WIDTH / ends.len().max(1) as f64;
    let lines =
        ends.enumerate().map(|(index, (x, y))| svg::Trace::from(x, y).line((index as f64 + 0.5) * band, 0.0).open());
    svg::group("d-leads").add(svg::path("d-lead", lines.collect::<String>()))
}

#[cfg(test)]
mod tests;
