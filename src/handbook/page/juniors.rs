//! For those who run a juniors' evening.

use super::{JobRow, Link};
use crate::model::Who;
use serde::Serialize;

/// Which jobs and questions need no adult.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Juniors {
    /// Every job, those that anyone may do first.
    pub jobs: Vec<JuniorJob>,
    /// Every fault-finding guide.
    pub faults: Vec<JuniorFault>,
}

/// A job with who may do it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JuniorJob {
    /// Who.
    pub who: Who,
    /// The job.
    pub row: JobRow,
}

/// A fault-finding guide with who may answer its questions.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JuniorFault {
    /// The guide.
    pub link: Link,
    /// Whether anyone may answer all of them.
    pub all: bool,
    /// Its questions.
    pub probes: Vec<JuniorProbe>,
}

/// A question with who may answer it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JuniorProbe {
    /// Who.
    pub who: Who,
    /// The question.
    pub ask: String,
}
