//! `procedure:` a job: what it is for, what to fetch, the steps, and what proves it done.

use super::common::{Needs, Picture, Safety, SubStep, Time, Waiver, Who};
use super::value::{Line, Many, Named, Prose};
use crate::source::{Placed, Tolerant};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A job.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Procedure {
    /// Its id.
    pub procedure: Named,
    /// The job as an instruction: `Tighten a loose barrel`.
    pub title: Line,
    /// The item it is done on.
    pub kit: Option<Named>,
    /// The place on the item.
    pub place: Option<Named>,
    /// What it is for.
    #[serde(rename = "for")]
    pub purpose: Prose,
    /// When not to do it.
    #[serde(rename = "not when", default)]
    pub not_when: Many<Prose>,
    /// Other words for the job, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// For a stop-gap: how long it holds, in words, such as `weeks to months`. A stop-gap names the lasting remedy.
    pub holds: Option<Line>,
    /// The lasting remedy, if this is a stop-gap.
    pub lasting: Option<Named>,
    /// What to lay out.
    #[serde(default)]
    pub needs: Needs,
    /// Minutes at the bench.
    #[serde(rename = "hands-on")]
    pub hands_on: Time,
    /// Who may do it.
    pub who: Option<Placed<Who>>,
    /// Safety notes that hold for the whole job.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// The steps.
    pub steps: Many<Tolerant<Step>>,
    /// What proves the job done.
    #[serde(default)]
    pub prove: Many<Tolerant<Check>>,
    /// What to do next.
    pub next: Option<Prose>,
    /// Pictures of this guide.
    #[serde(default)]
    pub pictures: Many<Tolerant<Picture>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// A step.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Step {
    /// What to do, in full.
    #[serde(rename = "do")]
    pub full: Prose,
    /// The same for the practised hand.
    pub short: Option<Prose>,
    /// Why, and what goes wrong: for the learner only.
    pub learner: Option<Prose>,
    /// Single instructions inside the step.
    #[serde(default)]
    pub steps: Many<Tolerant<SubStep>>,
    /// Caution before this step.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// Consumables used in this step, by their ids in the stores.
    #[serde(default)]
    pub uses: Many<Named>,
    /// A picture.
    pub picture: Option<Named>,
    /// How tight.
    pub torque: Option<Torque>,
    /// How long to wait before the next step.
    pub wait: Option<Time>,
    /// What the waiting is for: `the glue sets`.
    #[serde(rename = "wait for")]
    pub wait_for: Option<Line>,
}

/// How tight a fastener is to be.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Torque {
    /// The torque with its unit: `3 N·m`.
    pub torque: Line,
    /// How far it may be off: `± 10 %`.
    pub tolerance: Option<Line>,
    /// The thread: `M6`.
    pub thread: Option<Line>,
    /// The property class of the steel: `4.8`.
    #[serde(rename = "class")]
    pub property_class: Option<Line>,
    /// The material, if it is no steel of a listed class.
    pub material: Option<Line>,
    /// Dry or oiled.
    #[serde(default)]
    pub state: ThreadState,
    /// How it feels, for those without a torque driver.
    #[serde(rename = "by feel")]
    pub by_feel: Option<Prose>,
    /// Where the figure comes from.
    pub source: Option<Line>,
}

/// The state of a thread.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum ThreadState {
    /// As it comes.
    #[default]
    Dry,
    /// With a drop of oil.
    Oiled,
}

/// A check that proves a job done: something to do and see, or something to read against a limit.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Check {
    /// What to do and what must be seen.
    #[serde(rename = "do")]
    pub full: Option<Prose>,
    /// The same for the practised hand.
    pub short: Option<Prose>,
    /// Instead: what to read, such as `Resistance from the tip to the socket`.
    pub read: Option<Line>,
    /// The limit that the reading is held against: the figure stands there and nowhere else.
    pub limit: Option<Named>,
}
