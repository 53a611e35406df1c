//! stub
use super::args::LecternJob;
use super::terminal::{Outcome, Terminal};
/// Runs it.
pub fn run(_job: &LecternJob, _terminal: &mut Terminal) -> Outcome {
    Outcome::CouldNotRun
}
