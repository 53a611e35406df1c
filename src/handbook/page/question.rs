//! The decision pages: a question with its answers, and an ending with its remedies.

use super::{Address, Check, CircuitFigure, Link, Markdown, Picture, SafetyNote, ShareRow, Worded};
use crate::model::{LampState, Who};
use serde::Serialize;

/// A question.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Question {
    /// Its number on its way.
    pub number: usize,
    /// The most questions on any way through it.
    pub of: usize,
    /// The question.
    pub ask: String,
    /// How to answer it.
    pub how: Option<Worded>,
    /// Caution before it, with that of the jobs to open first.
    pub safety: Vec<SafetyNote>,
    /// What to shut before it.
    pub shut: Vec<JobLine>,
    /// What to open before it.
    pub open: Vec<JobLine>,
    /// Who may do it.
    pub who: Option<Who>,
    /// A picture.
    pub picture: Option<Picture>,
    /// The answers.
    pub answers: Vec<Answer>,
    /// Where *I cannot tell* leads.
    pub cannot_tell: Option<Address>,
    /// Whether it leads to the end: handed over to somebody else.
    pub hands_over: bool,
    /// The guide that tells how.
    pub procedure: Option<Link>,
    /// Whether it is a trial fix.
    pub trial: bool,
    /// Where one stands.
    pub standing: Standing,
    /// The question before, or the symptom's page.
    pub back: Link,
    /// The symptom's page.
    pub symptom: Link,
}

/// An opening job on a page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JobLine {
    /// What to do.
    pub title: String,
    /// Whole minutes; 0 is less than one.
    pub minutes: u32,
    /// The guide that tells how.
    pub procedure: Option<Link>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// Its words; empty for those of a trial fix, then `message` has a message id.
    pub title: String,
    /// `answer-works` or `answer-no-change`.
    pub message: Option<&'static str>,
    /// Where it leads.
    pub address: Address,
    /// The lamp on it.
    pub lamp: Option<LampState>,
    /// `found`, `mended`, `choice`, `not-listed`, `nothing-fits`, or `goes-on`: a message id after `follows-`.
    pub follows: &'static str,
    /// For `found` and `mended`: what it then is.
    pub found: Option<String>,
    /// For `goes-on`: how many causes are left.
    pub left: usize,
    /// For `goes-on`: the number of the next question.
    pub next: usize,
}

/// Where one stands: what is ruled out, what is still possible, how long it took.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Standing {
    /// What was asked and answered, in order.
    pub way: Vec<Answered>,
    /// What is still possible.
    pub possible: Vec<ShareRow>,
    /// What is ruled out.
    pub ruled_out: Vec<RuledOut>,
    /// Tenths of a minute so far: drawn by the function `minutes_rule`.
    pub so_far: u64,
    /// Tenths of a minute still expected.
    pub to_go: u64,
    /// Tenths of a minute at most, from the start.
    pub most: u64,
    /// Tenths of a minute for closing what is open.
    pub closing: u64,
    /// Whole minutes so far.
    pub so_far_whole: u32,
    /// Whole minutes still expected.
    pub to_go_whole: u32,
    /// Whole minutes at most, from the start.
    pub most_whole: u32,
    /// Whole minutes for closing what is open.
    pub closing_whole: u32,
    /// What is open now.
    pub open: Vec<String>,
}

/// A question that was answered.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answered {
    /// The question.
    pub ask: String,
    /// The answer's words; empty with a `message`.
    pub answer: String,
    /// `answer-works`, `answer-no-change` or `cannot-tell`.
    pub message: Option<&'static str>,
    /// The question's page.
    pub address: Address,
}

/// A cause that is ruled out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RuledOut {
    /// What it was.
    pub title: String,
    /// Whether it is *not on this list*.
    pub rest: bool,
    /// By which question: its number.
    pub question: usize,
}

/// An ending.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ending {
    /// `one-cause`, `one-remedy`, `mended`, `choice`, `not-listed`, `nothing-fits`, `hand-over`: a message id after `ending-`.
    pub kind: &'static str,
    /// The remedies, the likeliest first.
    pub remedies: Vec<RemedyChoice>,
    /// What to do when it is not on the list: *Markdown*.
    pub rest_says: Option<Markdown>,
    /// The remedy that most likely cures it all the same.
    pub rest_lasting: Option<Remedy>,
    /// Whether *not on this list* is still possible.
    pub rest_possible: bool,
    /// What to close, in the order in which to do it.
    pub close: Vec<JobLine>,
    /// The circuit with the fault, if only one cause is left and a circuit knows it.
    pub figure: Option<CircuitFigure>,
    /// Where one stands.
    pub standing: Standing,
    /// The question before.
    pub back: Link,
    /// The symptom's page.
    pub symptom: Link,
}

/// A remedy with the causes that it mends.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RemedyChoice {
    /// The causes.
    pub causes: Vec<ShareRow>,
    /// What mends them for good.
    pub lasting: Option<Remedy>,
    /// What buys time.
    pub stop_gaps: Vec<Remedy>,
}

/// A remedy.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Remedy {
    /// The job.
    pub link: Link,
    /// Minutes at the bench.
    pub minutes: u32,
    /// Minutes of waiting.
    pub waiting: u32,
    /// For a stop-gap: how long it holds.
    pub holds: Option<String>,
    /// What proves it done.
    pub prove: Vec<Check>,
}
