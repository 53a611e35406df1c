//! Where the rows of a map stand: one row a question or an ending, from above to below.

use super::{APART, Branch, Ending, FULL, LEADING, Question, RIGHT, SIZE, SOURCE};
use crate::render::figures::svg;
use crate::render::figures::words::{Weight, fitted, width, wrap};

/// How a row's cases reach it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Arrival {
    /// It is the first question.
    Source,
    /// A question straight below the one before.
    StraightOn,
    /// A question beside the one before.
    SetAside,
    /// An ending.
    Ending,
}

/// One row of the map.
pub(super) struct Row {
    pub(super) arrival: Arrival,
    /// Where the stream's left bank is.
    pub(super) x: f64,
    /// How wide the stream is.
    pub(super) width: f64,
    /// The height of the question before.
    pub(super) from: f64,
    /// The height of the question's cross line, or of the middle of the ending's bar.
    pub(super) y: f64,
    /// Minutes so far, as printed; empty if the row above says it.
    pub(super) minute: String,
    /// Minutes that the question takes; 0 for an ending.
    pub(super) minutes: f64,
    /// The question's number or the ending's share.
    pub(super) figure: String,
    /// How wide the figure is.
    pub(super) figure_width: f64,
    /// The label in lines that fit.
    pub(super) lines: Vec<String>,
}

/// A label takes as many lines as its words need, up to these.
const LINES: usize = 4;

/// All rows and what they have in common.
pub(super) struct Placed {
    /// From above to below.
    pub(super) rows: Vec<Row>,
    /// Where the bars of the endings stand.
    pub(super) bars: f64,
    /// How wide the column of shares is.
    pub(super) figures: f64,
    /// Height of a minute.
    pub(super) minute: f64,
    /// Height of the whole map.
    pub(super) height: f64,
}

/// Places a tree that has been folded to a size that can be read.
pub(super) fn placed(first: &Question, figure: &dyn Fn(f64) -> String) -> Placed {
    let all = first.cases();
    let unit = if all > 0.0 { FULL / all } else { 0.0 };
    let bars = (reach(first, SOURCE, unit) + 22.0).min(RIGHT - 130.0);
    let minute = (360.0 / total_minutes(first).max(1.0)).clamp(2.5, 12.0);
    let placed = Placed { rows: Vec::new(), bars, figures: widest_figure(first, figure), minute, height: 36.0 };
    let mut layout = Layout { placed, unit, figure };
    layout.ask(first, Stream { x: SOURCE, from: 36.0, at: 0.0 }, Arrival::Source);
    layout.placed.height += 6.0;
    layout.placed
}

/// The words cut to one line of this width.
pub(super) fn one_line(text: &str, room: f64) -> String {
    fitted(text, Weight::Plain, SIZE, room).unwrap_or_default()
}

/// A stream on its way down.
#[derive(Clone, Copy)]
struct Stream {
    x: f64,
    from: f64,
    at: f64,
}

struct Layout<'a> {
    placed: Placed,
    unit: f64,
    figure: &'a dyn Fn(f64) -> String,
}

impl Layout<'_> {
    fn ask(&mut self, question: &Question, stream: Stream, arrival: Arrival) {
        let y = self.placed.height;
        let wide = question.cases() * self.unit;
        let figure_width = width(&question.number, Weight::Bold, SIZE);
        let room = RIGHT - (stream.x + wide + 20.0 + figure_width);
        let lines = wrap(&question.label, Weight::Plain, SIZE, room, LINES);
        let minutes = sane(question.minutes);
        let written = 10.0 + LEADING * lines.len().max(1) as f64 - 4.0;
        self.placed.height += written.max(minutes * self.placed.minute + 4.0);
        self.placed.rows.push(Row {
            arrival,
            x: stream.x,
            width: wide,
            from: stream.from,
            y,
            minute: svg::number(stream.at.round()),
            minutes,
            figure: question.number.clone(),
            figure_width,
            lines,
        });
        self.branches(question, Stream { x: stream.x + wide, from: y, at: stream.at + minutes });
    }

    /// The branches of a question; `stream.x` is the right bank, from where they leave one by one.
    fn branches(&mut self, question: &Question, stream: Stream) {
        let mut right = stream.x;
        let order = in_order(&question.branches);
        for (index, branch) in order.iter().enumerate() {
            right -= branch.cases() * self.unit;
            match branch {
                Branch::End(ending) => self.end(ending, Stream { x: right, ..stream }),
                Branch::Ask(next) if index + 1 == order.len() => {
                    self.placed.height += 10.0;
                    self.ask(next, Stream { x: right, ..stream }, Arrival::StraightOn);
                }
                Branch::Ask(next) => {
                    self.placed.height += 28.0;
                    self.ask(next, Stream { x: right + APART, ..stream }, Arrival::SetAside);
                }
            }
        }
    }

    /// Whether the row above is an ending of the same question, so that the minute need not be said again.
    fn said(&self, stream: Stream) -> bool {
        let above = self.placed.rows.last();
        above.is_some_and(|row| row.arrival == Arrival::Ending && row.from.total_cmp(&stream.from).is_eq())
    }

    fn end(&mut self, ending: &Ending, stream: Stream) {
        let wide = ending.cases() * self.unit;
        let figure = (self.figure)(ending.cases());
        let room = RIGHT - (self.placed.bars + 17.0 + self.placed.figures);
        let lines = wrap(&ending.label, Weight::Plain, SIZE, room, LINES);
        let high = (LEADING * lines.len().max(1) as f64 + 6.0).max(wide + 12.0);
        let minute = if self.said(stream) { String::new() } else { svg::number(stream.at.round()) };
        self.placed.rows.push(Row {
            arrival: Arrival::Ending,
            x: stream.x,
            width: wide,
            from: stream.from,
            y: self.placed.height + high / 2.0,
            minute,
            minutes: 0.0,
            figure_width: width(&figure, Weight::Bold, SIZE),
            figure,
            lines,
        });
        self.placed.height += high;
    }
}

/// The branches in the order they leave: the question with the most cases goes straight on and comes last.
fn in_order(branches: &[Branch]) -> Vec<&Branch> {
    let is_question = |branch: &&Branch| matches!(branch, Branch::Ask(_));
    let heaviest = branches.iter().filter(is_question).map(Branch::cases).fold(-1.0, f64::max);
    let straight = branches.iter().position(|branch| is_question(&branch) && branch.cases() >= heaviest);
    let mut order: Vec<&Branch> = branches.iter().collect();
    if let Some(index) = straight {
        let last = order.remove(index);
        order.push(last);
    }
    order
}

/// How far right any stream gets.
fn reach(question: &Question, x: f64, unit: f64) -> f64 {
    let mut right = x + question.cases() * unit;
    let mut furthest = right;
    let order = in_order(&question.branches);
    for (index, branch) in order.iter().enumerate() {
        right -= branch.cases() * unit;
        if let Branch::Ask(next) = branch {
            let aside = if index + 1 == order.len() { 0.0 } else { APART };
            furthest = furthest.max(reach(next, right + aside, unit));
        }
    }
    furthest
}

fn total_minutes(question: &Question) -> f64 {
    let below = question.branches.iter().map(|branch| match branch {
        Branch::Ask(next) => total_minutes(next),
        Branch::End(_) => 0.0,
    });
    sane(question.minutes) + below.sum::<f64>()
}

fn widest_figure(question: &Question, figure: &dyn Fn(f64) -> String) -> f64 {
    let widths = question.branches.iter().map(|branch| match branch {
        Branch::Ask(next) => widest_figure(next, figure),
        Branch::End(ending) => width(&figure(ending.cases()), Weight::Bold, SIZE),
    });
    widths.fold(0.0, f64::max)
}

fn sane(minutes: f64) -> f64 {
    if minutes.is_finite() { minutes.max(0.0) } else { 0.0 }
}
