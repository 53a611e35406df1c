//! `coquille schema`: JSON Schema for editors.

use super::args::{KindName, SchemaJob};
use super::terminal::{Outcome, Terminal};
use crate::model::{Kind, any_guide, schema};

/// Runs it.
pub fn run(job: &SchemaJob, terminal: &mut Terminal) -> Outcome {
    let value = job.kind.map_or_else(any_guide, |kind| schema(kind.into()));
    terminal.say(format!("{value:#}"));
    Outcome::Good
}

impl From<KindName> for Kind {
    fn from(name: KindName) -> Kind {
        match name {
            KindName::Handbook => Kind::Handbook,
            KindName::Symptom => Kind::Symptom,
            KindName::Procedure => Kind::Procedure,
            KindName::Checklist => Kind::Checklist,
            KindName::Circuit => Kind::Circuit,
            KindName::Stores => Kind::Stores,
            KindName::Limits => Kind::Limits,
            KindName::Words => Kind::Words,
            KindName::Learning => Kind::Learning,
        }
    }
}
