//! The typed guide formats: what a volunteer may write, key by key.
//!
//! In: placed trees. Out: [`Guides`]. The doc comments here are the descriptions in the JSON Schema.
//! Leaves to others: whether guides agree with one another (`proof`).

mod blank;
mod calendar;
mod checklist;
pub mod circuit;
mod common;
mod electric;
mod fill;
mod handbook_file;
mod kit;
mod learning;
mod limits;
pub mod messages;
mod pack;
mod procedure;
pub mod prose;
mod schema;
mod stores;
mod symptom;
pub mod translation;
mod value;
mod words;

pub use blank::{blank, unfilled};
pub use calendar::{is_day, is_iso_day};
pub use checklist::{CheckItem, Checklist, Pieces, SheetLayout};
pub use circuit::Circuit;
pub use common::{LampState, Meant, Need, Needs, Odds, Picture, Safety, Signal, SubStep, Time, Waiver, Who};
pub use electric::{Current, Resistance, ResistanceRange, Voltage};
pub use fill::{InLanguage, fill, translated};
pub use handbook_file::{CODE_LENGTH, CODE_LETTERS, HandbookFile, Item, Paper, Units, Withdrawn, code_of, typed_code};
pub use kit::{BUILT_IN, built_in_places};
pub use learning::{Learning, LearningStop};
pub use limits::{BoundKind, Limit, Limits};
pub use pack::{Pack, Replaced, folder_of};
pub use procedure::{Check, Procedure, Step, ThreadState, Torque};
pub use schema::{any_guide, schema};
pub use stores::{Consumable, Part, Stores, Tool};
pub use symptom::{
    Access, Answer, Cause, First, FirstAnswer, LampSeen, Order, Probe, Reads, Rest, SeenOn, Shares, SignSeen, Symptom,
    TellApart, Unlike,
};
pub use value::{Id, Line, Many, Markdown, Misread, MisreadKind, Named, Prose, Share, Told, Written};
pub use words::{Glossary, Word};

pub use crate::reckoning::quantity::Minutes;

use crate::source::{FileId, Node};
use std::collections::BTreeSet;
use std::sync::Arc;
use translation::Translation;

/// All guides of a handbook, in the order of their files' names.
#[derive(Debug, Clone, Default)]
pub struct Guides {
    /// `handbook.yaml`.
    pub handbook: Option<(FileId, HandbookFile)>,
    /// Fault-finding guides.
    pub symptoms: Vec<(FileId, Symptom)>,
    /// Jobs.
    pub procedures: Vec<(FileId, Procedure)>,
    /// Inspections.
    pub checklists: Vec<(FileId, Checklist)>,
    /// Circuits.
    pub circuits: Vec<(FileId, Circuit)>,
    /// Stores.
    pub stores: Vec<(FileId, Stores)>,
    /// Limits.
    pub limits: Vec<(FileId, Limits)>,
    /// Ways to learn.
    pub learning: Vec<(FileId, Learning)>,
    /// Words.
    pub words: Vec<(FileId, Glossary)>,
    /// Where folders of guides from elsewhere came from.
    pub packs: Vec<(FileId, Pack)>,
    /// Guides of packs that the club's own stand in place of.
    pub replaced: BTreeSet<Replaced>,
    /// The trees that they were filled from, in the order of their files' names: those that stand where a pack gives way to the club.
    pub trees: Arc<Vec<(FileId, Node)>>,
    /// Guides in other languages, in the order of their files' names.
    pub translations: Vec<Translation>,
    /// Ids of guides that could not be filled, so that what points at them is not called unknown.
    pub broken: BTreeSet<String>,
    /// Files beside the guides, by path: what pictures may point at.
    pub others: BTreeSet<String>,
}

/// A kind of guide.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// The handbook as a whole.
    Handbook,
    /// Fault finding.
    Symptom,
    /// A job.
    Procedure,
    /// An inspection.
    Checklist,
    /// An electrical model.
    Circuit,
    /// Parts, tools, consumables.
    Stores,
    /// Limits.
    Limits,
    /// The glossary.
    Words,
    /// Guides from elsewhere.
    Pack,
    /// A way to learn.
    Learning,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Kind; 10] = [
        Kind::Handbook,
        Kind::Symptom,
        Kind::Procedure,
        Kind::Checklist,
        Kind::Circuit,
        Kind::Stores,
        Kind::Limits,
        Kind::Words,
        Kind::Pack,
        Kind::Learning,
    ];

    /// The key that a guide of this kind starts with.
    pub fn key(self) -> &'static str {
        match self {
            Kind::Handbook => "handbook",
            Kind::Symptom => "symptom",
            Kind::Procedure => "procedure",
            Kind::Checklist => "checklist",
            Kind::Circuit => "circuit",
            Kind::Stores => "stores",
            Kind::Limits => "limits",
            Kind::Words => "words",
            Kind::Pack => "pack",
            Kind::Learning => "learning",
        }
    }

    /// The kind that starts with this key.
    pub fn of(key: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|kind| kind.key() == key)
    }
}
