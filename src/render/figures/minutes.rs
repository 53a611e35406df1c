//! The minutes rule: a steel rule with the time spent, the time that is expected to go, and the most it can take.
//!
//! In: three numbers of minutes and the words to print. Out: one SVG, 340 units wide, read out as its title. The hatching is a
//! pattern of the page (`#hatch-blue`), which the theme provides once.

use super::svg::{self, Element, Trace};
use super::words::{Weight, fitted, width};

/// What the rule shows. Minutes are never negative; what is not finite counts as 0.
#[derive(Clone, Copy, Debug)]
pub struct Minutes<'a> {
    /// Starts the ids; unique in the file.
    pub prefix: &'a str,
    /// Read out in place of the drawing.
    pub title: &'a str,
    /// Minutes spent so far.
    pub so_far: f64,
    /// Minutes expected to go.
    pub to_go: f64,
    /// Minutes it takes at most, from the start.
    pub at_most: f64,
    /// The word at the end of the time spent: "now".
    pub now: &'a str,
    /// The words at the upright line: "at most 12".
    pub most: &'a str,
}

const WIDTH: f64 = 340.0;
const LEFT: f64 = 10.0;
const SIZE: f64 = 13.0;

/// Minutes from a tick to the next, the finest first.
const STEPS: [f64; 9] = [1.0, 2.0, 5.0, 10.0, 20.0, 60.0, 120.0, 300.0, 1440.0];

/// The rule.
pub fn rule(minutes: &Minutes<'_>) -> String {
    let [so_far, to_go, at_most] = [minutes.so_far, minutes.to_go, minutes.at_most].map(sane);
    let scale = Scale::up_to(at_most.max(so_far + to_go));
    svg::drawing(WIDTH, 74.0)
        .add(scale.drawn())
        .add(svg::rect("done", scale.x(0.0), 23.0, scale.x(so_far) - scale.x(0.0), 11.0))
        .add(svg::rect("togo", scale.x(so_far), 23.0, scale.x(so_far + to_go) - scale.x(so_far), 11.0))
        .all(flags(minutes, scale.x(so_far), scale.x(at_most)))
        .titled(minutes.prefix, minutes.title)
        .print()
}

/// Where minutes lie on the rule.
struct Scale {
    step: f64,
    ticks: u32,
}

impl Scale {
    /// The finest scale with room for its numbers that ends a tick after `most`.
    fn up_to(most: f64) -> Self {
        let count = |step: f64| (most / step).ceil() + 1.0;
        let coarsest = STEPS[STEPS.len() - 1];
        let step = STEPS.into_iter().find(|step| count(*step) <= 48.0).unwrap_or(coarsest);
        // A rule of more than a month is cut: its words still say how long.
        Self { step, ticks: count(step).min(48.0) as u32 }
    }

    fn x(&self, minutes: f64) -> f64 {
        let end = f64::from(self.ticks) * self.step;
        LEFT + minutes.min(end) / end * (WIDTH - 2.0 * LEFT)
    }

    /// The rule itself, its ticks and figures as one group: many rules have the same, and a file that holds them all draws it once.
    fn drawn(&self) -> Element {
        let minutes = |index: u32| f64::from(index) * self.step;
        let tick = |index: u32| {
            let (x, long) = (self.x(minutes(index)), index.is_multiple_of(5));
            Trace::from(x, if long { 40.0 } else { 46.0 }).upright(54.0).open()
        };
        let ticks: String = (0..=self.ticks).map(tick).collect();
        let figure = |index| {
            let number = svg::number(minutes(index));
            let half = width(&number, Weight::Plain, SIZE) / 2.0;
            centred("", self.x(minutes(index)).min(WIDTH - half), 69.0, &number)
        };
        svg::group("scale")
            .add(svg::rect("body", LEFT - 6.0, 20.0, WIDTH - 2.0 * LEFT + 12.0, 34.0))
            .add(svg::path("tick", ticks))
            .all((0..=self.ticks).step_by(5).map(figure))
    }
}

/// The two words above the rule with their lines; they never meet, and stay inside the drawing.
fn flags(minutes: &Minutes<'_>, now: f64, most: f64) -> Vec<Element> {
    let room = WIDTH / 2.0 - 8.0;
    let set = |text: &str| fitted(text, Weight::Plain, SIZE, room).unwrap_or_default();
    let (now_word, most_word) = (set(minutes.now), set(minutes.most));
    let half = |word: &str| width(word, Weight::Plain, SIZE) / 2.0;
    let (now_half, most_half) = (half(&now_word), half(&most_word));
    let mut now_at = now.clamp(now_half, WIDTH - now_half);
    let mut most_at = most.clamp(most_half, WIDTH - most_half);
    let apart = now_half + most_half + 8.0;
    if most_at - now_at < apart {
        now_at = (most_at - apart).max(now_half);
        most_at = most_at.max(now_at + apart);
    }
    vec![
        centred("t2", now_at, 13.0, &now_word),
        stroke(now, 16.0, 36.0),
        centred("t2", most_at, 13.0, &most_word),
        stroke(most, 16.0, 36.0),
    ]
}

fn stroke(x: f64, from: f64, to: f64) -> Element {
    svg::path("tick", Trace::from(x, from).line(x, to).open())
}

fn centred(class: &str, x: f64, y: f64, text: &str) -> Element {
    // The style sheet centres all words on the rule.
    svg::words(class, x, y, text)
}

fn sane(minutes: f64) -> f64 {
    if minutes.is_finite() { minutes.max(0.0) } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ticks(most: f64) -> (f64, u32) {
        let scale = Scale::up_to(most);
        (scale.step, scale.ticks)
    }

    #[test]
    fn there_is_one_tick_a_minute_as_long_as_the_numbers_have_room() {
        assert_eq!(ticks(12.0), (1.0, 13));
        assert_eq!(ticks(47.0), (1.0, 48));
        assert_eq!(ticks(90.0), (2.0, 46));
        assert_eq!(ticks(1e12), (1440.0, 48));
    }

    #[test]
    fn the_bars_are_as_long_as_their_minutes() {
        let drawn = rule(&Minutes {
            prefix: "q3",
            title: "t",
            so_far: 2.0,
            to_go: 8.0,
            at_most: 15.0,
            now: "now",
            most: "at most 15",
        });
        assert!(drawn.contains("class=\"done\" x=\"10\" y=\"23\" width=\"40\""), "{drawn}");
        assert!(drawn.contains("class=\"togo\" x=\"50\" y=\"23\" width=\"160\""), "{drawn}");
    }

    #[test]
    fn words_at_the_same_minute_stand_beside_each_other() {
        let drawn = rule(&Minutes {
            prefix: "q",
            title: "t",
            so_far: 12.0,
            to_go: 0.0,
            at_most: 12.0,
            now: "now",
            most: "at most 12",
        });
        assert!(drawn.contains(">now<") && drawn.contains(">at most 12<"));
        let x: Vec<f64> =
            drawn.split("class=\"t2\" x=\"").skip(1).filter_map(|rest| rest.split('"').next()?.parse().ok()).collect();
        let apart = (width("now", Weight::Plain, SIZE) + width("at most 12", Weight::Plain, SIZE)) / 2.0;
        assert!(x[1] - x[0] > apart, "{x:?}");
    }
}
