//! `symptom:` a fault-finding guide: what is seen, what it can be, and the probes that tell.
//!
//! Leaves to others: the best order of the probes (`reckoning::diagnosis`), whether the circuit agrees (`proof`).

use super::common::{LampState, Meant, Picture, Safety, Time, Waiver, Who};
use super::value::{Line, Many, Named, Prose, Share, Told};
use crate::source::{Placed, Tolerant};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A fault-finding guide.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Symptom {
    /// Its id.
    pub symptom: Named,
    /// What is seen, as a person would say it: `Lamp stays lit when the tip is pressed`.
    pub title: Line,
    /// The item it is seen on.
    pub kit: Named,
    /// On what it is seen.
    #[serde(rename = "seen on")]
    pub seen_on: Placed<SeenOn>,
    /// What the lamp does.
    #[serde(default)]
    pub lamps: Many<Tolerant<LampSeen>>,
    /// What is read, where several sights are one and the same symptom: any one of these is it.
    #[serde(default)]
    pub signs: Many<Tolerant<SignSeen>>,
    /// The circuit that proofs this guide.
    pub circuit: Option<Named>,
    /// What is going on, in a sentence or two.
    pub says: Prose,
    /// Other words for the same sight, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// Guides that are taken for this one: each is linked at the top.
    #[serde(default)]
    pub unlike: Many<Tolerant<Unlike>>,
    /// First isolate: is it this item at all?
    #[serde(default)]
    pub first: Many<Tolerant<First>>,
    /// What it can be, each with its share. What is left over is *not on this list*.
    pub causes: Many<Tolerant<Cause>>,
    /// Where the shares come from.
    #[serde(default)]
    pub shares: Shares,
    /// Opening jobs that several probes share: done once, closed once.
    #[serde(default)]
    pub access: Many<Tolerant<Access>>,
    /// The order of the pages.
    #[serde(default)]
    pub order: Order,
    /// When to stop asking.
    #[serde(rename = "tell apart", default)]
    pub tell_apart: TellApart,
    /// Why the author's order is what it is.
    pub why: Option<Prose>,
    /// Looks, tests and trial fixes, in the author's order.
    pub probes: Many<Tolerant<Probe>>,
    /// What to do when it is none of the causes.
    #[serde(rename = "not on this list")]
    pub rest: Option<Rest>,
    /// Pictures of this guide.
    #[serde(default)]
    pub pictures: Many<Tolerant<Picture>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// On what a symptom is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub enum SeenOn {
    /// A bench tester.
    #[serde(rename = "tester")]
    Tester,
    /// The scoring apparatus.
    #[serde(rename = "apparatus")]
    Apparatus,
    /// A meter.
    #[serde(rename = "meter")]
    Meter,
    /// Neither: it is seen or felt.
    #[serde(rename = "eye and hand")]
    EyeAndHand,
}

/// What one lamp does.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct LampSeen {
    /// Which lamp, where there are several: the reading's id in the circuit.
    pub reading: Option<Named>,
    /// With nothing touched.
    #[serde(rename = "at rest")]
    pub at_rest: Option<Placed<LampState>>,
    /// With the tip pressed.
    pub pressed: Option<Placed<LampState>>,
    /// In another position of the circuit: its id.
    pub when: Option<Named>,
    /// What the lamp does in that position.
    pub shows: Option<Placed<LampState>>,
}

/// One of the sights by which a symptom is known.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct SignSeen {
    /// The reading's id in the circuit.
    pub reading: Named,
    /// The position of the circuit in which it is taken; `rest` if nothing is said.
    pub when: Option<Named>,
    /// What it shows; several if each of them is the symptom.
    pub reads: Many<Placed<Reads>>,
}

/// A guide that is taken for this one.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Unlike {
    /// The other guide.
    pub guide: Named,
    /// The question that tells them apart: `Does the white lamp burn at the scoring apparatus?`
    pub ask: Line,
}

/// A step that isolates the fault to this item. It comes before every probe.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct First {
    /// Its id.
    pub first: Named,
    /// The question.
    pub ask: Line,
    /// What to do to answer it, in full.
    #[serde(rename = "do")]
    pub full: Option<Prose>,
    /// The same for the practised hand.
    pub short: Option<Prose>,
    /// How long it takes.
    pub minutes: Time,
    /// Caution before it.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// The answers; one goes on, the others lead to other guides.
    pub answers: Many<Tolerant<FirstAnswer>>,
}

/// An answer to an isolating step.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct FirstAnswer {
    /// Its id, such as `yes`.
    pub answer: Named,
    /// The answer in words.
    pub title: Option<Line>,
    /// `go on`, or the guide to go to.
    pub then: Placed<String>,
    /// What that means, in a sentence.
    pub says: Option<Prose>,
}

/// A cause.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Cause {
    /// Its id.
    pub cause: Named,
    /// What is wrong, in words.
    pub title: Line,
    /// The place on the item.
    pub place: Option<Named>,
    /// How many in 100 cases it is.
    pub share: Option<Placed<Told<Share>>>,
    /// Instead of a share: how many cases the club has counted.
    pub seen: Option<Placed<u32>>,
    /// The fault in the guide's circuit; several if the cause stands for them all, such as either of two wires.
    #[serde(default)]
    pub fault: Many<Named>,
    /// Why it does what is seen.
    pub says: Option<Prose>,
    /// The remedy that lasts.
    pub lasting: Option<Named>,
    /// A remedy that buys time.
    #[serde(rename = "stop-gap")]
    pub stop_gap: Option<Named>,
}

/// Where the shares of a guide come from.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Shares {
    /// An armourer's estimate.
    #[default]
    Estimated,
    /// Counted at the club.
    Counted,
}

/// An opening job.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Access {
    /// Its id.
    pub access: Named,
    /// What is opened, as an instruction: `Take the tape off the blade`.
    pub title: Line,
    /// How it is closed again: `Tape the first 15 cm again`.
    pub closing: Option<Line>,
    /// Minutes to open.
    pub open: Time,
    /// Minutes to close.
    pub close: Time,
    /// Opening jobs that must be open first.
    #[serde(default)]
    pub needs: Many<Named>,
    /// Caution before it.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// The guide that tells how.
    pub procedure: Option<Named>,
}

/// Which order the pages follow.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Order {
    /// The author's.
    #[default]
    #[serde(rename = "as written")]
    AsWritten,
    /// The order with the least expected minutes.
    #[serde(rename = "quickest")]
    Quickest,
}

/// When fault-finding is done.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum TellApart {
    /// When the remedy is known.
    #[default]
    Remedies,
    /// When the cause itself is known.
    Causes,
}

/// A look, a test, or a trial fix.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Probe {
    /// Its id.
    pub probe: Named,
    /// The question.
    pub ask: Line,
    /// A few words for maps and lists, if the question is long.
    pub title: Option<Line>,
    /// What to do to answer it, in full.
    #[serde(rename = "do")]
    pub full: Option<Prose>,
    /// The same for the practised hand.
    pub short: Option<Prose>,
    /// The place on the item.
    pub place: Option<Named>,
    /// How long it takes, without opening and closing.
    pub minutes: Time,
    /// Opening jobs that must be open.
    #[serde(default)]
    pub needs: Many<Named>,
    /// Opening jobs that must be shut.
    #[serde(default)]
    pub shut: Many<Named>,
    /// Probes that come before this one.
    #[serde(default)]
    pub after: Many<Named>,
    /// Caution before it.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// Who may do it.
    pub who: Option<Placed<Who>>,
    /// A picture.
    pub picture: Option<Named>,
    /// The reading of the circuit that this probe takes.
    pub reading: Option<Named>,
    /// The position of the circuit in which it is taken.
    pub when: Option<Named>,
    /// The answers. A trial fix may leave them out.
    #[serde(default)]
    pub answers: Many<Tolerant<Answer>>,
    /// For a trial fix: the causes that it mends.
    #[serde(default)]
    pub mends: Many<Named>,
    /// The guide that tells how.
    pub procedure: Option<Named>,
}

/// An answer to a probe.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Answer {
    /// Its id, such as `yes`.
    pub answer: Named,
    /// The answer in words.
    pub title: Option<Line>,
    /// The causes that answer so, or `otherwise`.
    #[serde(default)]
    pub means: Many<Tolerant<Meant>>,
    /// What the lamp does, for the picture on the answer.
    pub lamp: Option<Placed<LampState>>,
    /// What the circuit's reading shows with this answer; several if the answer stands for them all.
    #[serde(default)]
    pub reads: Many<Placed<Reads>>,
}

/// What a reading shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Reads {
    /// The lamp is lit.
    Lit,
    /// The lamp is dark.
    Dark,
    /// The buzzer sounds.
    Sounds,
    /// The buzzer is silent.
    Silent,
    /// A figure within the limit.
    In,
    /// A figure over the limit.
    Over,
    /// No connection.
    Open,
    /// It comes and goes.
    #[serde(rename = "comes and goes")]
    ComesAndGoes,
}

/// *Not on this list*.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Rest {
    /// What to do then.
    pub says: Prose,
    /// The remedy that most likely cures it all the same.
    pub lasting: Option<Named>,
    /// With counted cases: how many were on no list.
    pub seen: Option<Placed<u32>>,
}
