//! `circuit:` an electrical model of a set-up: what is joined to what, what touches when, what can break, what is read.
//!
//! Leaves to others: whether names exist and figures make sense (`proof::network`), what is shown (`reckoning::circuit`).

use super::common::Waiver;
use super::electric::{Current, Resistance, ResistanceRange, Voltage};
use super::symptom::SeenOn;
use super::value::{Line, Many, Named, Prose, Told, or_text};
use crate::source::{Placed, Tolerant};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An electrical model of a set-up: an item of kit, an item on a tester, or two fencers at the apparatus.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Circuit {
    /// Its id.
    pub circuit: Named,
    /// What it is, in words.
    pub title: Line,
    /// The item it is about.
    pub kit: Option<Named>,
    /// How to read it.
    pub says: Option<Prose>,
    /// Where the figures come from that name no source of their own.
    pub source: Option<Line>,
    /// Other circuits that this one is made of.
    #[serde(default)]
    pub uses: Many<Tolerant<Use>>,
    /// Points of them that are one, as when a plug goes into its socket.
    #[serde(default)]
    pub joins: Many<Tolerant<Join>>,
    /// Its points: where wires, contacts and metal parts meet.
    #[serde(default)]
    pub points: Many<Tolerant<Point>>,
    /// What conducts between two points: wires, springs, threads, blades, leads.
    #[serde(default)]
    pub pieces: Many<Tolerant<Piece>>,
    /// Where two points touch or do not, by position.
    #[serde(default)]
    pub touching: Many<Tolerant<Touching>>,
    /// How the set-up is held. `rest`, where nothing is pressed or touched, is always there.
    #[serde(default)]
    pub positions: Many<Tolerant<Position>>,
    /// What can be wrong.
    #[serde(default)]
    pub faults: Many<Tolerant<Fault>>,
    /// Testers whose lamps share one battery.
    #[serde(default)]
    pub testers: Many<Tolerant<Tester>>,
    /// What the scoring apparatus looks at.
    #[serde(default)]
    pub apparatus: Many<Tolerant<Fact>>,
    /// The fencers, where the apparatus has two: `[red, green]`. In `apparatus`, `own-` and `other-` stand for them.
    #[serde(default)]
    pub sides: Many<Named>,
    /// The lamps of the scoring apparatus, each once for both sides.
    #[serde(default)]
    pub lamps: Many<Tolerant<Lamp>>,
    /// What is read with tester and meter.
    #[serde(default)]
    pub readings: Many<Tolerant<Reading>>,
    /// What sound kit shows: it must, over the whole range of every figure.
    #[serde(default)]
    pub healthy: Many<Tolerant<Healthy>>,
    /// What there is to learn from it: it makes a page *How it works*.
    pub teaches: Option<Teaches>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// Another circuit that this one is made of. May be written as a bare id.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename = "short Use")]
#[schemars(rename = "Use", transform = or_text)]
pub struct Use {
    /// The circuit's id.
    #[serde(rename = "use")]
    pub circuit: Named,
    /// What all its names start with here: with `red`, its `tip` is `red-tip`.
    #[serde(rename = "as")]
    pub prefix: Option<Named>,
    /// The words for that, for pages: `Red's`.
    pub title: Option<Line>,
    /// Whether its faults come along. The sound side of a bout leaves them out.
    #[serde(default)]
    pub faults: FaultsOfUse,
}

/// Whether the faults of a used circuit come along.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum FaultsOfUse {
    /// They do.
    #[default]
    #[serde(rename = "taken along")]
    TakenAlong,
    /// They do not.
    #[serde(rename = "left out")]
    LeftOut,
}

/// Points that are one.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Join {
    /// Two points or more.
    pub join: Many<Named>,
}

/// A point.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Point {
    /// Its id.
    pub point: Named,
    /// What it is, in words.
    pub title: Line,
    /// The place on the item.
    pub place: Option<Named>,
}

/// What conducts between two points.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Piece {
    /// Its id.
    pub piece: Named,
    /// What it is, in words.
    pub title: Line,
    /// The same in a word or two, for the drawing.
    pub short: Option<Line>,
    /// The point it starts at.
    pub from: Named,
    /// The point it ends at.
    pub to: Named,
    /// Its resistance when it is sound.
    pub ohms: Placed<Told<ResistanceRange>>,
    /// The place on the item.
    pub place: Option<Named>,
    /// Where the figure comes from.
    pub source: Option<Line>,
}

/// Where two points touch or do not.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Touching {
    /// Its id.
    pub touching: Named,
    /// What touches what, in words.
    pub title: Line,
    /// The same in a word or two, for the drawing.
    pub short: Option<Line>,
    /// One of the two points.
    pub from: Named,
    /// The other.
    pub to: Named,
    /// The resistance while they touch.
    pub ohms: Placed<Told<ResistanceRange>>,
    /// Whether they touch when nothing is pressed.
    #[serde(rename = "at rest", default)]
    pub at_rest: TouchesAtRest,
    /// The place on the item.
    pub place: Option<Named>,
    /// Where the figure comes from.
    pub source: Option<Line>,
}

/// Whether two points touch when nothing is pressed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum TouchesAtRest {
    /// They do not.
    #[default]
    Apart,
    /// They do.
    Touching,
}

/// How the set-up is held. It lists only what differs from rest.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Position {
    /// Its id; `rest` only to give it other words.
    pub position: Named,
    /// What is done, in words: `Tip pressed on wood`.
    pub title: Line,
    /// What touches now.
    #[serde(default)]
    pub meets: Many<Named>,
    /// What no longer touches.
    #[serde(default)]
    pub parts: Many<Named>,
    /// A word on it.
    pub says: Option<Prose>,
}

/// What can be wrong. At least one of `broken`, `lost`, `touches`, `more ohms`, `never touches`, `always touches`, `changed over`.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Fault {
    /// Its id.
    pub fault: Named,
    /// What is wrong, in words.
    pub title: Line,
    /// The place on the item.
    pub place: Option<Named>,
    /// Why it does what it does.
    pub says: Option<Prose>,
    /// Pieces or touchings that no longer conduct.
    #[serde(default)]
    pub broken: Many<Named>,
    /// Pieces or touchings that are gone.
    #[serde(default)]
    pub lost: Many<Named>,
    /// Two points that touch and should not; `ohms` says how well.
    #[serde(default)]
    pub touches: Many<Named>,
    /// The resistance of what touches.
    pub ohms: Option<Placed<Told<ResistanceRange>>>,
    /// Pieces or touchings that have more ohms than they should; `by` says how many more each has.
    #[serde(rename = "more ohms", default)]
    pub more_ohms: Many<Named>,
    /// How many ohms more.
    pub by: Option<Placed<Told<ResistanceRange>>>,
    /// Touchings that never close.
    #[serde(rename = "never touches", default)]
    pub never_touches: Many<Named>,
    /// Touchings that never open.
    #[serde(rename = "always touches", default)]
    pub always_touches: Many<Named>,
    /// Two pieces that have changed places; `at` says at which two points.
    #[serde(rename = "changed over", default)]
    pub changed_over: Many<Named>,
    /// The two points at which their ends are exchanged.
    #[serde(default)]
    pub at: Many<Named>,
    /// Only while this touching is closed, or in this position.
    #[serde(rename = "while")]
    pub only_while: Option<Named>,
    /// Whether it comes and goes.
    #[serde(rename = "now and then", default)]
    pub now_and_then: bool,
    /// Where the figures come from.
    pub source: Option<Line>,
}

/// A tester whose lamps share one battery: one pole at a pin, the other with a lamp to each of some other pins.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Tester {
    /// Its id.
    pub tester: Named,
    /// What it is, in words.
    pub title: Line,
    /// The point that the battery's one pole is at.
    pub battery: Named,
    /// The battery's voltage without load.
    pub volts: Placed<Told<Voltage>>,
    /// The battery's own resistance.
    pub inside: Placed<Told<Resistance>>,
    /// The points that its lamps lead to.
    pub lamps: Many<Named>,
    /// A lamp's resistance when it glows.
    pub filament: Placed<Told<Resistance>>,
    /// A lamp is lit for certain from here.
    #[serde(rename = "lit from")]
    pub lit_from: Placed<Told<Current>>,
    /// A lamp is dark for certain up to here.
    #[serde(rename = "dark to")]
    pub dark_to: Placed<Told<Current>>,
    /// Where the figures come from.
    pub source: Option<Line>,
}

/// Something that the scoring apparatus looks at: one of `under` and `over`.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Fact {
    /// Its id.
    pub fact: Named,
    /// What it means, in words: `The loop is open`.
    pub title: Line,
    /// The two lines it looks at.
    pub between: Many<Named>,
    /// For a difference: the two lines whose resistance is taken off.
    #[serde(default)]
    pub less: Many<Named>,
    /// It holds under these ohms: for certain up to the first, never from the second.
    pub under: Option<Placed<Told<ResistanceRange>>>,
    /// It holds over these ohms: never up to the first, for certain from the second.
    pub over: Option<Placed<Told<ResistanceRange>>>,
    /// Where the figures come from, one for each.
    #[serde(default)]
    pub source: Many<Line>,
}

/// A lamp of the scoring apparatus.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Lamp {
    /// Its id; with sides, the reading's is `red-` and `green-` before it.
    pub lamp: Named,
    /// What it is called, in words.
    pub title: Line,
    /// When it is lit.
    #[serde(rename = "lit when")]
    pub lit_when: When,
    /// What cannot be computed of it: how long a contact must last, whether it stays lit.
    pub says: Option<Prose>,
    /// Whether only some machines have it.
    #[serde(rename = "if fitted", default)]
    pub if_fitted: bool,
    /// Where the condition comes from.
    pub source: Option<Line>,
}

/// A condition. May be written as a bare fact; else exactly one of these.
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename = "short When")]
#[schemars(rename = "When", transform = or_text)]
pub struct When {
    /// This fact holds.
    pub fact: Option<Named>,
    /// This does not hold.
    pub not: Option<Box<When>>,
    /// All of these hold.
    #[serde(rename = "all of", default)]
    pub all_of: Many<When>,
    /// At least one of these holds.
    #[serde(rename = "any of", default)]
    pub any_of: Many<When>,
    /// Machines differ: certain only if all of these agree.
    #[serde(rename = "machines differ", default)]
    pub machines_differ: Many<When>,
}

/// A lamp, a buzzer, a meter, or a lamp of a tester above.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Reading {
    /// Its id.
    pub reading: Named,
    /// What is read, in words.
    pub title: Line,
    /// On what.
    pub on: Placed<SeenOn>,
    /// The two points that are probed.
    #[serde(default)]
    pub between: Many<Named>,
    /// A lamp is lit for certain up to here.
    #[serde(rename = "lit under")]
    pub lit_under: Option<Placed<Told<Resistance>>>,
    /// A lamp is dark for certain from here.
    #[serde(rename = "dark over")]
    pub dark_over: Option<Placed<Told<Resistance>>>,
    /// A buzzer sounds for certain up to here.
    #[serde(rename = "sounds under")]
    pub sounds_under: Option<Placed<Told<Resistance>>>,
    /// A buzzer is silent for certain from here.
    #[serde(rename = "silent over")]
    pub silent_over: Option<Placed<Told<Resistance>>>,
    /// A meter: the limit of what is measured, leads included.
    #[serde(rename = "at most")]
    pub at_most: Option<Placed<Told<Resistance>>>,
    /// A meter: from here on it shows no figure; 2 MΩ if nothing is said.
    #[serde(rename = "open from")]
    pub open_from: Option<Placed<Told<Resistance>>>,
    /// A meter read twice: in this position …
    pub first: Option<Named>,
    /// … less the same in this one.
    pub less: Option<Named>,
    /// A lamp of a tester: the tester.
    pub tester: Option<Named>,
    /// A lamp of a tester: the point that it leads to.
    pub lamp: Option<Named>,
    /// How it is done.
    pub says: Option<Prose>,
    /// Where the figures come from.
    pub source: Option<Line>,
}

/// What sound kit shows.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Healthy {
    /// On which reading.
    pub reading: Named,
    /// In which position; `rest` if nothing is said.
    pub when: Option<Named>,
    /// What it shows.
    pub shows: Placed<Shows>,
}

/// What there is to learn from a circuit.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Teaches {
    /// Its heading: `How a foil works`.
    pub title: Line,
    /// The idea of it, in a sentence or two.
    pub says: Option<Prose>,
    /// The positions to look at, one after the other.
    pub lessons: Many<Tolerant<Lesson>>,
}

/// One thing to learn: a position to look at, and what to see in it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Lesson {
    /// The position: `rest`, or its id.
    pub lesson: Named,
    /// A heading: `A hit off target`. The position's own words if there is none.
    pub title: Option<Line>,
    /// What to see in it, in a few plain sentences.
    pub says: Prose,
    /// The two points between which the current is looked for, if not those that the first lamp looks at.
    #[serde(rename = "loop", default)]
    pub between: Many<Named>,
}

/// What a reading shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Shows {
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
    /// It may go either way, and that is known.
    May,
}
