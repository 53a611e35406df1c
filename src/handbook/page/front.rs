//! The front page, *what does the lamp do?*, the pages of kit, and the list of jobs.

use super::{Address, LimitRow, Link, Markdown, Patterns, Together};
use crate::model::LampState;
use serde::Serialize;

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
    /// The same by item and instrument.
    pub doors: Vec<LampDoors>,
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
    /// Its light, if its name says it: `white`, `coloured` or `yellow`.
    pub light: Option<&'static str>,
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
    /// The pages that say how each item works.
    pub how: Vec<Link>,
    /// By item and instrument.
    pub doors: Vec<LampDoors>,
}

/// An item with the instruments whose lamps tell of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampDoors {
    /// The item's name.
    pub title: String,
    /// One for each instrument.
    pub doors: Vec<LampDoor>,
}

/// An instrument, and the page that tells what its lamps can show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampDoor {
    /// The instrument: a message id, such as `seen-on-tester`.
    pub seen_on: &'static str,
    /// The page.
    pub address: Address,
}

/// What the lamps by which an item is judged can show on one instrument.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LampsOf {
    /// The instrument: a message id, such as `seen-on-tester`.
    pub seen_on: &'static str,
    /// What the lamps can show together, where an instrument has several, as circuits compute it.
    pub together: Vec<Together>,
    /// The lamps, each with everything that it can show, as circuits compute it.
    pub lamps: Vec<Patterns>,
    /// Guides whose lamps no circuit speaks of.
    pub others: Vec<SymptomRow>,
    /// The same item on other instruments.
    pub doors: Vec<LampDoor>,
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
    /// The pages that teach how it works.
    pub how: Vec<Link>,
    /// Its circuits.
    pub circuits: Vec<Link>,
    /// Its limits.
    pub limits: Vec<LimitRow>,
    /// What there is at each of its places.
    pub places: Vec<KitPlace>,
}

/// A place of an item, with what there is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KitPlace {
    /// Its id on the page.
    pub anchor: String,
    /// What people call it.
    pub title: String,
    /// What can be wrong there.
    pub causes: Vec<PlaceCause>,
    /// Jobs there.
    pub jobs: Vec<Link>,
    /// Parts there.
    pub parts: Vec<Link>,
}

/// Something that can be wrong at a place.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlaceCause {
    /// The cause, where its guide tells it.
    pub cause: Link,
    /// What is then seen.
    pub symptom: String,
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
