//! What each page says, as data that a template can print without deciding anything.
//!
//! Texts marked *Markdown* are printed with the filters `prose` (block) or `line` (inline). Addresses start at the handbook's
//! top folder; a template puts the page's `root` before them. Words of the program's own are message ids, never text.

use crate::model::{LampState, Paper, Shares, Signal, ThreadState, Who};
use serde::Serialize;

/// Markdown, to be printed with `prose` or `line`.
pub type Markdown = String;
/// An address inside the handbook, from its top folder: `jobs/rewire-foil.html`, perhaps with `#an-id`.
pub type Address = String;

/// A page of the handbook.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Page {
    /// Where it is.
    pub address: Address,
    /// `""` at the top, `"../"` one folder down, and so on.
    pub root: String,
    /// A short name that is unique over the handbook; ids on the page start with it.
    pub key: String,
    /// What kind of page it is: a message id, such as `kind-symptom`.
    pub kind: &'static str,
    /// Its name.
    pub title: String,
    /// Where it hangs, from the front page down, without itself.
    pub trail: Vec<Link>,
    /// The item down the side, if the page is about one.
    pub rail: Option<Rail>,
    /// Its sheet, if it has one.
    pub sheet: Option<Address>,
    /// What it says.
    pub body: Body,
    /// What links here.
    pub linked_from: Vec<Link>,
    /// Its code: a short hash of what it says, eight letters.
    pub code: String,
    /// Who wrote it, as far as it came from elsewhere.
    pub source_file: Option<String>,
}

/// A link with its words.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Link {
    /// The words: plain text.
    pub title: String,
    /// Where to.
    pub address: Address,
}

/// The item down the side of a page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Rail {
    /// The item's id: the render stage draws it.
    pub item: String,
    /// What people call it.
    pub title: String,
    /// Its places, from tip to plug.
    pub places: Vec<RailPlace>,
    /// Whether the notes are shares in 100.
    pub shares: bool,
}

/// A place on the rail.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RailPlace {
    /// Its id.
    pub place: String,
    /// What people call it.
    pub title: String,
    /// `plain`, `here` or `out`.
    pub state: &'static str,
    /// Its share in 100, if the page has shares.
    pub share: Option<InHundred>,
    /// Where the place leads.
    pub address: Option<Address>,
}

/// A share for people: in 100, never 0 for what is possible nor 100 for what is not sure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct InHundred {
    /// The whole number.
    pub n: u32,
    /// `about`, `under` (less than `n`) or `over` (more than `n`).
    pub sign: &'static str,
    /// For bars: in hundredths of a percent.
    pub fine: u32,
}

/// What kind of body a page has, and the body.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Body {
    /// The front page: *What do you see?*
    Front(Front),
    /// An item of kit.
    Kit(Kit),
    /// By what the lamp does.
    Lamps(Lamps),
    /// A fault-finding guide.
    Symptom(Box<Symptom>),
    /// A question of one.
    Question(Box<Question>),
    /// An ending of one.
    Ending(Box<Ending>),
    /// A job.
    Procedure(Box<Procedure>),
    /// A checklist.
    Checklist(Box<Checklist>),
    /// A circuit.
    Circuit(Box<Circuit>),
    /// All limits.
    Limits(Limits),
    /// All parts, tools and consumables.
    Stores(Stores),
    /// All words.
    Words(Words),
    /// A printable sheet.
    Sheet(Box<Sheet>),
    /// All sheets.
    Sheets(Rows),
    /// All jobs and checklists.
    Jobs(Jobs),
    /// *About this edition*.
    About(About),
    /// *Writing guides*.
    Writing(Writing),
    /// Every page.
    All(AllPages),
}

/// The front page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Front {
    /// A line under the heading: *Markdown*.
    pub says: Option<Markdown>,
    /// The places of the chain drawing that lead somewhere.
    pub chain: Vec<ChainPlace>,
    /// What is seen, by item.
    pub kits: Vec<KitRows>,
    /// What is seen, by what the lamp does.
    pub lamps: Vec<LampGroup>,
    /// Where every lamp's patterns stand by item and instrument, if a circuit knows some.
    pub lamps_by_kit: Option<Address>,
    /// The first few jobs.
    pub jobs: Vec<JobRow>,
    /// Checklists.
    pub checks: Vec<JobRow>,
}

/// A place of the chain.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChainPlace {
    /// `weapon`, `body-cord`, `jacket`, `mask`, `reel`, `floor-cable`, `apparatus`, `tester`, `meter`.
    pub place: &'static str,
    /// Where it leads, if the club keeps such an item.
    pub address: Option<Address>,
}

/// An item with its symptoms.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KitRows {
    /// Its id.
    pub item: String,
    /// What people call it.
    pub title: String,
    /// Its page.
    pub address: Address,
    /// What is seen on it.
    pub symptoms: Vec<SymptomRow>,
}

/// A symptom in a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SymptomRow {
    /// Its title.
    pub title: String,
    /// Its page.
    pub address: Address,
    /// The item.
    pub kit: String,
    /// On what it is seen: a message id, such as `seen-on-tester`.
    pub seen_on: &'static str,
    /// What the lamp does, in the order at rest, pressed.
    pub lamps: Vec<LampShown>,
    /// How many causes are listed.
    pub causes: usize,
    /// Expected minutes, whole.
    pub minutes: u32,
}

/// What a lamp does in some state.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampShown {
    /// `at-rest`, `pressed`, or `in-position`.
    pub when: &'static str,
    /// The position's id, for `in-position`.
    pub position: Option<String>,
    /// The lamp: drawn by the function `lamp`.
    pub state: LampState,
}

/// Symptoms with the same sight of the lamp.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampGroup {
    /// `always-lit`, `never-lit`, `comes-and-goes`, `other`: a message id after `lamp-group-`.
    pub group: &'static str,
    /// The lamp to draw, if one stands for the group.
    pub lamp: Option<LampState>,
    /// The section of the page *By what the lamp does*.
    pub address: Address,
    /// The symptoms.
    pub symptoms: Vec<SymptomRow>,
}

/// By what the lamp does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Lamps {
    /// The groups.
    pub groups: Vec<LampGroup>,
    /// The items with lamps whose patterns a circuit knows.
    pub kits: Vec<KitLamps>,
}

/// The lamps by which an item is judged.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KitLamps {
    /// The item.
    pub item: String,
    /// Its name.
    pub title: String,
    /// The lamps with what each can show.
    pub lamps: Vec<Patterns>,
}

/// A job or checklist in a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JobRow {
    /// Its title.
    pub title: String,
    /// Its page.
    pub address: Address,
    /// Minutes at the bench.
    pub minutes: u32,
    /// Minutes of waiting.
    pub waiting: u32,
    /// Whether it is a stop-gap.
    pub stop_gap: bool,
    /// For a checklist: how many items it has.
    pub items: usize,
}

/// An item of kit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Kit {
    /// Its id.
    pub item: String,
    /// What is seen on it.
    pub symptoms: Vec<SymptomRow>,
    /// Jobs on it.
    pub jobs: Vec<JobRow>,
    /// Checklists for it.
    pub checks: Vec<JobRow>,
    /// Its circuits.
    pub circuits: Vec<Link>,
    /// Its limits.
    pub limits: Vec<LimitRow>,
}

/// Jobs and checklists, by item.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Jobs {
    /// The groups; the title is empty for jobs on no one item.
    pub groups: Vec<JobGroup>,
}

/// Jobs and checklists of one item.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JobGroup {
    /// The item.
    pub title: String,
    /// Jobs.
    pub jobs: Vec<JobRow>,
    /// Checklists.
    pub checks: Vec<JobRow>,
}

/// A plain list of links.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Rows {
    /// The links.
    pub rows: Vec<Link>,
}

/// Words in two lengths. Either serves both if the other is missing: then `full` has it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Worded {
    /// The full wording: *Markdown*.
    pub full: Markdown,
    /// The short one: *Markdown*.
    pub short: Option<Markdown>,
}

/// A safety note.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SafetyNote {
    /// The signal word: a message id after `signal-`.
    pub signal: Signal,
    /// *Markdown*.
    pub says: Markdown,
}

/// A picture on a page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Picture {
    /// Where it lies.
    pub address: Address,
    /// What it tells somebody who cannot see it.
    pub alt: String,
    /// A line under it: *Markdown*.
    pub caption: Option<Markdown>,
}

/// A fault-finding guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Symptom {
    /// On what it is seen: a message id.
    pub seen_on: &'static str,
    /// What the lamp does.
    pub lamps: Vec<LampShown>,
    /// *Markdown*.
    pub says: Markdown,
    /// Guides that are taken for this one.
    pub unlike: Vec<Unlike>,
    /// Steps that isolate the fault to this item.
    pub first: Vec<First>,
    /// The first question, if there is any to ask.
    pub question: Option<Question>,
    /// The ending, if no question is needed.
    pub ending: Option<Ending>,
    /// The causes, in the author's order, *not on this list* last.
    pub shares: Vec<ShareRow>,
    /// The causes of the list together.
    pub listed: InHundred,
    /// Where the shares come from.
    pub shares_from: Shares,
    /// How many cases were counted.
    pub counted: u32,
    /// The map of the questions.
    pub map: MapNode,
    /// The same in words.
    pub words: Vec<MapWords>,
    /// What the orders cost.
    pub orders: Orders,
    /// Why the author's order is what it is: *Markdown*.
    pub why: Option<Markdown>,
    /// Causes that no probe tells apart, though their remedies differ.
    pub groups: Vec<Vec<String>>,
    /// Probes that tell nothing.
    pub dead: Vec<String>,
    /// Whether a cause may answer a probe in more than one way.
    pub comes_and_goes: bool,
    /// The circuit behind it.
    pub circuit: Option<Link>,
    /// The circuit drawn sound, held as it is when the symptom is seen.
    pub figure: Option<CircuitFigure>,
}

/// A guide that is taken for this one.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Unlike {
    /// The question that tells them apart.
    pub ask: String,
    /// The other guide.
    pub link: Link,
}

/// A step that isolates the fault.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct First {
    /// The question.
    pub ask: String,
    /// How to answer it.
    pub how: Option<Worded>,
    /// Whole minutes; 0 is less than one.
    pub minutes: u32,
    /// Caution before it.
    pub safety: Vec<SafetyNote>,
    /// The answers.
    pub answers: Vec<FirstAnswer>,
}

/// An answer to an isolating step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FirstAnswer {
    /// The answer.
    pub title: String,
    /// What it means: *Markdown*.
    pub says: Option<Markdown>,
    /// The guide it leads to; nothing to go on here.
    pub link: Option<Link>,
}

/// A cause with its share.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShareRow {
    /// What is wrong; empty for *not on this list*.
    pub title: String,
    /// Whether this is *not on this list*.
    pub rest: bool,
    /// The place in words.
    pub place: Option<String>,
    /// The share now.
    pub share: InHundred,
    /// Where the cause is told in full.
    pub address: Option<Address>,
    /// Why it does what is seen: *Markdown*.
    pub says: Option<Markdown>,
    /// The id of the row on its symptom's page.
    pub anchor: String,
    /// The remedies, where the page names them.
    pub lasting: Option<Link>,
    /// The stop-gap.
    pub stop_gap: Option<Link>,
}

/// What the orders cost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Orders {
    /// The order of the pages: `as-written` or `quickest`.
    pub used: &'static str,
    /// The author's order.
    pub as_written: OrderCost,
    /// The least-cost way of asking.
    pub quickest: OrderCost,
    /// Whether the quickest is proved to be.
    pub proved: bool,
    /// Whole minutes between the two; 0 if they round to the same.
    pub saves: u32,
    /// The questions of the quickest way, as far as one branch goes.
    pub quickest_first: Option<String>,
}

/// What an order costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OrderCost {
    /// On average, whole minutes.
    pub average: u32,
    /// At most, whole minutes.
    pub most: u32,
}

/// A node of the map of questions: drawn by the function `map`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapNode {
    /// The question's or ending's words.
    pub title: String,
    /// Where it leads.
    pub address: Option<Address>,
    /// The share of all cases that come here, in hundredths of a percent.
    pub share: u32,
    /// Tenths of a minute spent when one comes here.
    pub so_far: u64,
    /// For a question: tenths of a minute that asking it costs, opening included. For an ending nothing.
    pub minutes: Option<u64>,
    /// The answers.
    pub branches: Vec<MapBranch>,
}

/// An answer on the map.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapBranch {
    /// The answer's words.
    pub answer: String,
    /// Where it leads.
    pub node: MapNode,
}

/// A question of the map in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapWords {
    /// Its number.
    pub number: usize,
    /// The question.
    pub ask: Link,
    /// What each answer leads to.
    pub answers: Vec<MapAnswer>,
}

/// An answer of the map in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapAnswer {
    /// The answer.
    pub title: String,
    /// The question that follows, by its number.
    pub question: Option<usize>,
    /// Or the ending.
    pub ending: Option<Link>,
    /// Whole minutes spent then.
    pub minutes: u32,
}

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

/// A job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Procedure {
    /// What it is for: *Markdown*.
    pub purpose: Markdown,
    /// When not to do it: *Markdown* each.
    pub not_when: Vec<Markdown>,
    /// Who may do it.
    pub who: Option<Who>,
    /// Minutes at the bench, whole.
    pub minutes: u32,
    /// Minutes of waiting, whole.
    pub waiting: u32,
    /// What the waiting is for.
    pub waiting_for: Vec<String>,
    /// For a stop-gap: how long it holds.
    pub holds: Option<String>,
    /// The lasting remedy.
    pub lasting: Option<Link>,
    /// What proves it done.
    pub prove: Vec<Check>,
    /// What to lay out.
    pub needs: Needs,
    /// Safety notes for the whole job.
    pub safety: Vec<SafetyNote>,
    /// The steps.
    pub steps: Vec<Step>,
    /// What to do next: *Markdown*.
    pub next: Option<Markdown>,
    /// The symptoms that it mends.
    pub mends: Vec<Link>,
}

/// What to lay out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Needs {
    /// Parts.
    pub parts: Vec<Need>,
    /// Tools.
    pub tools: Vec<Need>,
    /// Consumables.
    pub consumables: Vec<Need>,
}

/// Something to lay out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Need {
    /// What it is.
    pub link: Link,
    /// How many, or how much.
    pub quantity: Option<String>,
    /// Which, or what for: *Markdown*.
    pub note: Option<Markdown>,
    /// What it can do to people.
    pub hazards: Vec<String>,
}

/// A step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Its number.
    pub number: usize,
    /// What to do.
    pub what: Worded,
    /// Why, for the learner: *Markdown*.
    pub learner: Option<Markdown>,
    /// Single instructions.
    pub subs: Vec<Worded>,
    /// Caution before it.
    pub safety: Vec<SafetyNote>,
    /// A picture.
    pub picture: Option<Picture>,
    /// How tight.
    pub torque: Option<Torque>,
    /// Minutes to wait after it, whole.
    pub wait: Option<u32>,
    /// What for.
    pub wait_for: Option<String>,
}

/// How tight.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Torque {
    /// The value in the handbook's unit.
    pub value: String,
    /// In the other unit.
    pub other: Option<String>,
    /// How far it may be off.
    pub tolerance: Option<String>,
    /// The fastener in words: thread, class or material.
    pub fastener: Vec<String>,
    /// Dry or oiled.
    pub state: ThreadState,
    /// How it feels: *Markdown*.
    pub by_feel: Option<Markdown>,
    /// Where the figure comes from; `shop` for the club's own.
    pub source: Option<String>,
}

/// A check: something to do and see, or something to read against a limit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// A name for its reading field, unique over the handbook.
    pub id: String,
    /// What to do and see.
    pub what: Option<Worded>,
    /// What to read.
    pub read: Option<String>,
    /// Its limit.
    pub limit: Option<LimitRow>,
}

/// A limit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitRow {
    /// Its id in the limits.
    pub id: String,
    /// What is limited.
    pub title: String,
    /// The kind of bound: a message id after `bound-`, such as `at-most`.
    pub bound: &'static str,
    /// The value in the handbook's unit.
    pub value: String,
    /// In the other unit.
    pub other: Option<String>,
    /// For reading fields: the unit to read in.
    pub unit: String,
    /// For reading fields: the least that is inside, as a plain number in `unit`; nothing if there is none.
    pub least: Option<String>,
    /// The most that is inside.
    pub most: Option<String>,
    /// Whether the bound itself is outside (`less than`, `more than`).
    pub open: bool,
    /// Where and in what state it holds.
    pub at: Option<String>,
    /// Where it comes from, in short: `m.5.4`, or the shop.
    pub source: String,
    /// Whether it is the club's own.
    pub shop: bool,
    /// How it is measured: *Markdown*.
    pub how: Option<Markdown>,
    /// Where it stands.
    pub address: Address,
}

/// A checklist.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Checklist {
    /// What it is for: *Markdown*.
    pub purpose: Markdown,
    /// How long it takes, whole minutes.
    pub minutes: u32,
    /// What to lay out.
    pub needs: Needs,
    /// Safety notes for the whole list.
    pub safety: Vec<SafetyNote>,
    /// The items.
    pub groups: Vec<CheckGroup>,
    /// What is said when the list is complete: *Markdown*.
    pub done: Option<Markdown>,
}

/// Items under one heading.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckGroup {
    /// The heading; empty for items without one.
    pub heading: String,
    /// The items.
    pub items: Vec<CheckItem>,
}

/// An item of a checklist.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckItem {
    /// A name for its boxes and fields, unique over the handbook.
    pub id: String,
    /// Its number.
    pub number: usize,
    /// What to do, and what is wanted.
    pub what: Worded,
    /// The place in words.
    pub place: Option<String>,
    /// What to read.
    pub read: Option<String>,
    /// Its limit.
    pub limit: Option<LimitRow>,
    /// Caution before it.
    pub safety: Vec<SafetyNote>,
    /// A picture.
    pub picture: Option<Picture>,
    /// The guide that mends it.
    pub if_not: Option<Link>,
}

/// A circuit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Circuit {
    /// How to read it: *Markdown*.
    pub says: Option<Markdown>,
    /// The guides that it proofs.
    pub guides: Vec<Link>,
    /// Its drawing in each position.
    pub drawings: Vec<DrawnPosition>,
    /// What each of its lamps shows, and what that means.
    pub lamps: Vec<Patterns>,
    /// Where its figures come from that name no source of their own.
    pub source: Option<String>,
    /// What it is made of: the pieces and touchings of its own file.
    pub parts: Vec<CircuitPart>,
    /// Its faults, in words.
    pub faults: Vec<CircuitPart>,
    /// Its positions, in words.
    pub positions: Vec<CircuitPart>,
}

/// A circuit drawn in a position, with what its guide says to it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnPosition {
    /// The drawing.
    pub figure: CircuitFigure,
    /// What each lamp shows.
    pub shows: Vec<LampSaid>,
    /// *Markdown*.
    pub says: Option<Markdown>,
}

/// What a lamp shows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampSaid {
    /// The lamp.
    pub title: String,
    /// `lamp-lit`, `lamp-dark`, `lamp-may`: a message id.
    pub state: &'static str,
}

/// A circuit in one position: drawn by the function `circuit_drawing`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CircuitFigure {
    /// The position in words; nothing where `at_rest` says it and the guide has no words for it.
    pub position: Option<String>,
    /// Whether nothing is pressed or touched.
    pub at_rest: bool,
    /// The fault in words, if one is drawn.
    pub fault: Option<String>,
    /// Whether the loop is closed.
    pub closed: bool,
    /// Names of the places, tip first.
    pub places: Vec<String>,
    /// The points.
    pub points: Vec<DrawnPoint>,
    /// What joins them, or should.
    pub pieces: Vec<DrawnPiece>,
}

/// A point of a drawn circuit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnPoint {
    /// Index of its place; past the last name for the instrument's pins.
    pub place: usize,
    /// Its column from the left.
    pub way: usize,
    /// The letter of its line, where something is plugged in.
    pub label: Option<String>,
}

/// A piece of a drawn circuit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnPiece {
    /// Index of one point.
    pub from: usize,
    /// Index of the other point.
    pub to: usize,
    /// Index of the place where its symbol stands.
    pub place: usize,
    /// `wire`, `resistor`, `broken`, `push-closed`, `push-open`, `contact-closed`, `contact-open`, `lamp-lit`, `lamp-dark`,
    /// `lamp-comes-and-goes`.
    pub kind: &'static str,
    /// What it does: a message id, for lamps.
    pub value: Option<&'static str>,
    /// What it is.
    pub label: Option<String>,
    /// Whether the loop runs through it.
    pub live: bool,
    /// Whether the fault is here.
    pub faulty: bool,
}

/// A lamp of a circuit with everything that it can show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Patterns {
    /// Its id, unique across the handbook.
    pub anchor: String,
    /// The lamp.
    pub title: String,
    /// On what: a message id, such as `seen-on-tester`.
    pub seen_on: &'static str,
    /// The circuit.
    pub circuit: Link,
    /// What it can show.
    pub rows: Vec<PatternRow>,
}

/// Something that a lamp can show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PatternRow {
    /// What the lamp does in each position.
    pub lamps: Vec<LampShown>,
    /// Whether sound kit shows this.
    pub sound: bool,
    /// The faults that show this, surely or possibly.
    pub faults: Vec<Link>,
    /// The guides that fit.
    pub guides: Vec<Link>,
}

/// A point, piece, fault or position of a circuit in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CircuitPart {
    /// Its id on the page.
    pub anchor: String,
    /// What it is.
    pub title: String,
    /// Its value, if it has one: `0.15 to 0.4 Ω`.
    pub value: Option<String>,
    /// The place in words.
    pub place: Option<String>,
    /// Where its figure comes from.
    pub source: Option<String>,
}

/// All limits.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limits {
    /// One group a source.
    pub groups: Vec<LimitGroup>,
}

/// Limits of one source.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitGroup {
    /// What they are.
    pub title: String,
    /// The source; `shop` for the club's own.
    pub source: String,
    /// Its edition.
    pub edition: Option<String>,
    /// The day they were looked up.
    pub looked_up: Option<String>,
    /// *Markdown*.
    pub says: Option<Markdown>,
    /// The limits.
    pub rows: Vec<LimitRow>,
}

/// All stores.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stores {
    /// One group a list: parts, tools, consumables.
    pub groups: Vec<StoreGroup>,
}

/// A list of the stores.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StoreGroup {
    /// `parts`, `tools` or `consumables`: a message id.
    pub list: &'static str,
    /// What is in it.
    pub rows: Vec<StoreRow>,
}

/// Something in the stores.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StoreRow {
    /// Its id on the page.
    pub anchor: String,
    /// What people call it.
    pub title: String,
    /// Other names.
    pub also: Vec<String>,
    /// *Markdown*.
    pub says: Option<Markdown>,
    /// What does instead: *Markdown*.
    pub substitute: Option<Markdown>,
    /// What it can do to people.
    pub hazards: Vec<String>,
    /// The signal word that goes with it.
    pub signal: Option<Signal>,
    /// Where it is used.
    pub used_in: Vec<Link>,
}

/// All words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Words {
    /// The words, by the alphabet.
    pub rows: Vec<WordRow>,
}

/// A word.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WordRow {
    /// Its id on the page.
    pub anchor: String,
    /// The word.
    pub title: String,
    /// What else people say.
    pub also: Vec<String>,
    /// What it means: *Markdown*.
    pub says: Markdown,
    /// Where it is used.
    pub used_in: Vec<Link>,
}

/// A printable sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// The guide's page.
    pub guide: Link,
    /// The paper.
    pub paper: Paper,
    /// What it is a sheet of.
    pub of: SheetOf,
}

/// What a sheet is of.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum SheetOf {
    /// A job.
    Procedure(Box<Procedure>),
    /// A checklist.
    Checklist(Box<Checklist>),
    /// A fault-finding guide as a list.
    Symptom(SymptomSheet),
}

/// A fault-finding guide as a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SymptomSheet {
    /// On what it is seen: a message id.
    pub seen_on: &'static str,
    /// What the lamp does.
    pub lamps: Vec<LampShown>,
    /// *Markdown*.
    pub says: Markdown,
    /// Steps that isolate the fault.
    pub first: Vec<First>,
    /// The probes, in the order of the guide.
    pub probes: Vec<SheetProbe>,
    /// What to do when it is not on the list: *Markdown*.
    pub rest_says: Option<Markdown>,
    /// The causes, to tick what it was.
    pub causes: Vec<ShareRow>,
}

/// A probe on a sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetProbe {
    /// Its number.
    pub number: usize,
    /// The question.
    pub ask: String,
    /// How to answer it.
    pub how: Option<Worded>,
    /// Caution before it, with that of the jobs to open.
    pub safety: Vec<SafetyNote>,
    /// What to open before it, the first time.
    pub open: Vec<JobLine>,
    /// Whole minutes; 0 is less than one.
    pub minutes: u32,
    /// The answers, with what each means.
    pub answers: Vec<SheetAnswer>,
    /// The share of all cases found when this probe is done.
    pub found: InHundred,
}

/// An answer on a sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetAnswer {
    /// Its words; empty with a `message`.
    pub title: String,
    /// `answer-works` or `answer-no-change`.
    pub message: Option<&'static str>,
    /// The causes it speaks for; empty for *go on*.
    pub means: Vec<String>,
    /// Their remedies.
    pub remedies: Vec<Link>,
}

/// *About this edition*.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct About {
    /// How many guides of each kind: message id and number.
    pub counts: Vec<(&'static str, usize)>,
    /// The code of the whole handbook.
    pub code: String,
    /// Open advice, in words.
    pub open: Vec<OpenFinding>,
    /// Findings that were accepted.
    pub accepted: Vec<AcceptedFinding>,
    /// The sources of the limits.
    pub sources: Vec<LimitGroup>,
    /// Guides whose shares are estimates.
    pub estimated: Vec<Link>,
    /// Guides whose shares were counted.
    pub counted: Vec<Link>,
    /// Withdrawn sheets.
    pub withdrawn: Vec<Withdrawn>,
}

/// Open advice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OpenFinding {
    /// Its code.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
    /// The guide's file and line.
    pub place: String,
}

/// A finding that was accepted.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AcceptedFinding {
    /// The finding.
    pub finding: OpenFinding,
    /// The reason.
    pub because: String,
}

/// A withdrawn sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Withdrawn {
    /// The code printed on it.
    pub code: String,
    /// Why.
    pub because: String,
    /// What to use instead.
    pub instead: Option<Link>,
}

/// *Writing guides*.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Writing {
    /// One section a kind of guide.
    pub kinds: Vec<WritingKind>,
    /// Every finding.
    pub findings: Vec<FindingPage>,
}

/// A kind of guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WritingKind {
    /// The kind's key: a message id after `writing-`.
    pub kind: &'static str,
    /// Its keys with what they are for.
    pub keys: Vec<WritingKey>,
    /// The file that the example is from.
    pub file: String,
    /// The example's source: printed with the filter `yaml`.
    pub source: String,
}

/// A key.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WritingKey {
    /// The key.
    pub key: String,
    /// What it is for: *Markdown*.
    pub says: Markdown,
    /// Whether it must be there.
    pub must: bool,
}

/// What a finding's code means.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingPage {
    /// The code.
    pub code: &'static str,
    /// `error` or `advice`.
    pub severity: &'static str,
    /// What is found: *Markdown*.
    pub what: &'static str,
    /// Why it matters: *Markdown*.
    pub why: &'static str,
    /// How to mend it: *Markdown*.
    pub mend: &'static str,
}

/// Every page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AllPages {
    /// By the first letter.
    pub letters: Vec<Letter>,
}

/// The pages of a letter.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Letter {
    /// The letter.
    pub letter: String,
    /// The pages.
    pub rows: Vec<AllRow>,
}

/// A page in the list of all.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AllRow {
    /// The page.
    pub link: Link,
    /// Its kind: a message id.
    pub kind: &'static str,
}
