//! `coquille schema`: JSON Schema for editors.

use super::args::{KindName, SchemaJob};
use super::terminal::{Outcome, Terminal};
use crate::model::{any_guide, schema};

/// Runs it.
pub fn run(job: &SchemaJob, terminal: &mut Terminal) -> Outcome {
    let value = job.kind.map_or_else(any_guide, |KindName(kind)| schema(kind));
    terminal.say(format!("{value:#}"));
    Outcome::Good
}
