//! What each page says, as data that a template can print without deciding anything.
//!
//! Texts marked *Markdown* are printed with the filters `prose` (block) or `line` (inline). Addresses start at the handbook's
//! top folder; a template puts the page's `root` before them. Words of the program's own are message ids, never text.

mod about;
mod circuit;
mod edition;
mod front;
mod juniors;
mod learning;
mod lists;
mod practice;
mod procedure;
mod question;
mod shared;
mod sheet;
mod symptom;

pub use about::{About, AcceptedFinding, FindingPage, OpenFinding, Writing, WritingKey, WritingKind};
pub use circuit::{
    Circuit, CircuitFigure, CircuitPart, DrawnPiece, DrawnPoint, DrawnPosition, How, LampDoing, LampSaid, PatternRow,
    Patterns, TaughtPosition, Together, TogetherRow,
};
pub use edition::{ChangeRow, Changes, CodeRow, DifferenceSaid, Notice, PrintOf, Prints, SaidLine, StepRow, Withdrawn};
pub use front::{
    ChainPlace, Front, JobGroup, JobRow, Jobs, Kit, KitPlace, KitRows, LampDoor, LampDoors, LampGroup, LampShown,
    Lamps, LampsOf, PlaceCause, SymptomRow,
};
pub use juniors::{JuniorFault, JuniorJob, JuniorProbe, Juniors};
pub use learning::{CheckQuestion, Choice, LearningStop, Practised, Said, Way, WayStop};
pub use lists::{AllPages, AllRow, Letter, LimitGroup, Limits, StoreGroup, StoreRow, Stores, WordRow, Words};
pub use practice::{
    Card, CardStep, Cards, Practice, PracticeAnswer, PracticeJob, PracticeKit, PracticeProbe, PracticeReading,
    PracticeRemedy, PracticeRow, Practices,
};
pub use procedure::{Check, CheckGroup, CheckItem, Checklist, Doubt, LimitRow, Need, Needs, Procedure, Step, Torque};
pub use question::{Answer, Answered, Ending, JobLine, Question, Remedy, RemedyChoice, RuledOut, Standing};
pub use shared::{Picture, SafetyNote, Worded};
pub use sheet::{
    Fetch, KitLine, KitList, KitTime, KitTimes, Sheet, SheetAnswer, SheetGroup, SheetOf, SheetProbe, Sheets,
    SymptomSheet,
};
pub use symptom::{
    FewRow, First, FirstAnswer, MapAnswer, MapBranch, MapNode, MapWords, OrderCost, Orders, ShareRow, Symptom, Unlike,
};

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
    /// Where its guide came from, if from elsewhere.
    pub origin: Option<Origin>,
    /// If the last edition changed it: since which, and where that is told.
    pub changed: Option<Link>,
    /// The same page in other languages.
    pub languages: Vec<OtherLanguage>,
}

/// A link with its words.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Link {
    /// The words: plain text.
    pub title: String,
    /// Where to.
    pub address: Address,
}

/// Where a guide came from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Origin {
    /// The pack's name.
    pub title: String,
    /// Who wrote it.
    pub by: String,
    /// Under which licence.
    pub licence: String,
    /// Where it was got from: an address on the net or words.
    pub from: Option<String>,
}

/// The same page in another language.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OtherLanguage {
    /// The language, such as `fr`.
    pub language: String,
    /// Where it is, from the top of all languages.
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
    /// What the lamps by which an item is judged can show on one instrument.
    LampsOf(Box<LampsOf>),
    /// *How it works*.
    How(Box<How>),
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
    Sheets(Sheets),
    /// All jobs and checklists.
    Jobs(Jobs),
    /// What to fetch for them.
    Fetch(Box<Fetch>),
    /// A way to learn.
    Way(Box<Way>),
    /// A stop of one.
    Stop(Box<LearningStop>),
    /// Where an exercise is chosen.
    Practices(Practices),
    /// The practice bench of a guide.
    Practice(Box<Practice>),
    /// The exercise cards of a guide.
    Cards(Box<Cards>),
    /// *About this edition*.
    About(About),
    /// What changed since the last edition.
    Changes(Changes),
    /// *Is my print current?*
    Prints(Prints),
    /// The notice of what was withdrawn.
    Notice(Notice),
    /// What needs no adult.
    Juniors(Juniors),
    /// *Writing guides*.
    Writing(Writing),
    /// Every page.
    All(AllPages),
}
