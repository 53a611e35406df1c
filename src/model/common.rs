//! Keys that several kinds of guide share: safety notes, pictures, waivers, where a guide comes from.

use super::Minutes;
use super::value::{Line, Many, Named, Prose, Told, or_text};
use crate::source::{Placed, Tolerant};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A safety note. Exactly one of the four signal words (ANSI Z535.6), most serious first.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Safety {
    /// It will kill or injure seriously if it is not avoided.
    pub danger: Option<Prose>,
    /// It could kill or injure seriously.
    pub warning: Option<Prose>,
    /// It could injure lightly or moderately.
    pub caution: Option<Prose>,
    /// It could spoil the kit; nobody is hurt.
    pub notice: Option<Prose>,
}

/// A signal word, most serious first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Signal {
    /// Will kill or injure seriously.
    Danger,
    /// Could kill or injure seriously.
    Warning,
    /// Could injure lightly or moderately.
    Caution,
    /// Not related to injury.
    Notice,
}

impl Safety {
    /// The signal word with its note: the most serious one given.
    pub fn note(&self) -> Option<(Signal, &Prose)> {
        let words = [
            (Signal::Danger, &self.danger),
            (Signal::Warning, &self.warning),
            (Signal::Caution, &self.caution),
            (Signal::Notice, &self.notice),
        ];
        words.into_iter().find_map(|(signal, note)| note.as_ref().map(|note| (signal, note)))
    }

    /// How many signal words were given: one is right.
    pub fn count(&self) -> usize {
        [&self.danger, &self.warning, &self.caution, &self.notice].into_iter().flatten().count()
    }
}

/// A picture that the guides of this handbook may show by its id.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Picture {
    /// Its id.
    pub picture: Named,
    /// The file, by its path inside the handbook's folder. A translation may name another, with the words in the picture in its language.
    pub file: Line,
    /// What the picture tells somebody who cannot see it.
    pub alt: Option<Line>,
    /// A line under the picture.
    pub caption: Option<Prose>,
}

/// Why a finding about this guide is accepted. *About this edition* prints it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Waiver {
    /// The finding's code, such as `unused-part`.
    pub finding: Line,
    /// The id that the finding is about, if it should be accepted for that one only.
    pub of: Option<Named>,
    /// The reason, for the reader of *About this edition*.
    pub because: Line,
}

/// What a lamp does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub enum LampState {
    /// It burns.
    #[serde(rename = "lit")]
    Lit,
    /// It does not.
    #[serde(rename = "dark")]
    Dark,
    /// Now one, now the other.
    #[serde(rename = "comes and goes")]
    ComesAndGoes,
}

/// Who may do a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Who {
    /// Anyone.
    Anyone,
    /// Anyone, with somebody beside them who can do it.
    Supervised,
    /// Adults only.
    Adult,
}

impl Who {
    /// The word for it.
    pub fn as_str(self) -> &'static str {
        match self {
            Who::Anyone => "anyone",
            Who::Supervised => "supervised",
            Who::Adult => "adult",
        }
    }
}

/// What is needed of the stores. May be written as a bare id.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename = "short Need")]
#[schemars(rename = "Need", transform = or_text)]
pub struct Need {
    /// The id in the stores.
    pub id: Named,
    /// How many, or how much: `2`, `120 cm`.
    pub quantity: Option<Line>,
    /// A word on which, or what for.
    pub note: Option<Prose>,
}

/// What a job needs, by the three lists of the stores.
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Needs {
    /// Tools to lay out.
    #[serde(default)]
    pub tools: Many<Tolerant<Need>>,
    /// Parts that stay in or on the item.
    #[serde(default)]
    pub parts: Many<Tolerant<Need>>,
    /// What is used up.
    #[serde(default)]
    pub consumables: Many<Tolerant<Need>>,
}

/// An instruction inside a step. May be written as a bare text.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename = "short SubStep")]
#[schemars(rename = "SubStep", transform = or_text)]
pub struct SubStep {
    /// What to do, in full.
    #[serde(rename = "do")]
    pub full: Prose,
    /// The same for the practised hand.
    pub short: Option<Prose>,
}

/// A cause that an answer leaves possible. May be written as a bare id.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename = "short Meant")]
#[schemars(rename = "Meant", transform = or_text)]
pub struct Meant {
    /// The cause, or `otherwise` for all that no other answer names and for what is not on the list.
    pub cause: Named,
    /// For a cause that does not always answer so: how often it does, such as `2 in 3`.
    pub times: Option<Placed<Told<Odds>>>,
}

/// So many times in so many.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Odds {
    /// How many times.
    pub times: u32,
    /// In how many.
    pub of: u32,
}

impl super::value::Written for Odds {
    fn read(text: &str) -> Result<Self, super::value::Misread> {
        let numbers = text
            .split_once(" in ")
            .and_then(|(times, of)| Some((times.trim().parse::<u32>().ok()?, of.trim().parse::<u32>().ok()?)));
        match numbers {
            Some((times, of)) if 0 < times && times <= of && of <= 1000 => Ok(Odds { times, of }),
            _ => Err(super::value::Misread {
                kind: super::value::MisreadKind::Other,
                help: format!("`{text}` is no odds: write how often in how many, such as `2 in 3`"),
            }),
        }
    }
}

impl JsonSchema for Told<Odds> {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Odds".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "So many times in so many, such as `2 in 3`.",
            "type": "string", "pattern": "^[0-9]+ in [0-9]+$"
        })
    }
}

/// Waiting in a job, with what for.
pub type Time = Placed<Told<Minutes>>;
