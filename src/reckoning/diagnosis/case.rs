//! A symptom's case as plain data, and what can be wrong with it.
//!
//! In: causes, probes, access jobs and remedies by index, from whoever read the guide. Out: the same, or every reason why it is unsound.
//! Leaves names and places in files to the caller, who turns an index back into both. Not promised: that the shares are true.

use super::units::*;

/// Everything that is known about one symptom.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Case {
    /// The listed causes, in the author's order.
    pub causes: Vec<Cause>,
    /// *Not on this list*; `None` if the list claims to be complete.
    pub rest: Option<Rest>,
    /// The lasting remedies that causes name.
    pub remedies: Vec<Remedy>,
    /// Access jobs.
    pub jobs: Vec<Job>,
    /// Probes, in the author's order.
    pub probes: Vec<Probe>,
    /// When a run ends.
    pub tell_apart: TellApart,
}

/// When a run ends: as soon as one remedy serves all that is left, or only at a single cause.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TellApart {
    /// All that is left is mended by the same lasting remedy.
    #[default]
    Remedies,
    /// One cause is left.
    Causes,
}

/// A listed cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cause {
    /// Its share, above 0.
    pub weight: Weight,
    /// Its lasting remedy.
    pub remedy: RemedyIndex,
}

/// What is *not on this list*.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rest {
    /// Its share, above 0.
    pub weight: Weight,
    /// The remedy that the advice for it names, if it names one.
    pub remedy: Option<RemedyIndex>,
}

/// A lasting remedy: counts in *to working again* only.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Remedy {
    /// How long it takes.
    pub minutes: Minutes,
    /// Access jobs that must be open for it.
    pub needs: Vec<JobIndex>,
}

/// An access job: done once, closed once.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Job {
    /// Time to open.
    pub open: Minutes,
    /// Time to close.
    pub close: Minutes,
    /// Jobs that must be open before this one.
    pub needs: Vec<JobIndex>,
}

/// One look, test or trial fix.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Probe {
    /// How long it takes, without opening and closing.
    pub minutes: Minutes,
    /// Jobs that must be open.
    pub needs: Vec<JobIndex>,
    /// Jobs that must be shut; what is nested in them is shut too.
    pub shut: Vec<JobIndex>,
    /// Probes that come first as long as they can split what is left.
    pub after: Vec<ProbeIndex>,
    /// What may be seen. At least one.
    pub answers: Vec<Answer>,
    /// The unremarkable answer: takes every suspect that no answer names.
    pub otherwise: AnswerIndex,
    /// For a trial fix, the answer *now it works*: the run ends, mended.
    pub works_now: Option<AnswerIndex>,
}

/// One answer of a probe.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answer {
    /// The suspects that may give it.
    pub named: Vec<Named>,
}

/// A suspect that may give an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named {
    /// Who.
    pub suspect: Suspect,
    /// How often, beside the other answers of this probe that name the same suspect: 9 here and 1 there is nine times in ten.
    pub parts: u32,
}

impl Named {
    /// The cause gives this answer, as often as any other that names it.
    pub const fn cause(index: usize) -> Self {
        Named { suspect: Suspect::Cause(CauseIndex(index)), parts: 1 }
    }
}

/// How much a case may hold: beyond it is an error, never a guess.
pub mod most {
    /// Listed causes.
    pub const CAUSES: usize = 200;
    /// Probes.
    pub const PROBES: usize = 256;
    /// Access jobs.
    pub const JOBS: usize = 64;
    /// Answers of one probe.
    pub const ANSWERS: usize = 64;
    /// Parts of one answer.
    pub const PARTS: u32 = 10_000;
    /// Unreliable or intermittent answers of one cause that are expanded exactly.
    pub const UNSURE_PROBES: usize = 4;
    pub(crate) const CLASSES: usize = 256;
}

/// Why a case cannot be reckoned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unsound {
    /// No cause is listed.
    NoCauses,
    /// More of something than `most` allows; the bound stands beside it.
    TooMany(&'static str, usize),
    /// A suspect without a share.
    NoShare(Suspect),
    /// A cause, the rest, a probe, a job or a remedy points at something that is not there.
    Unknown(&'static str, usize),
    /// A job needs itself, by way of others.
    JobCycle(JobIndex),
    /// A probe comes after itself, by way of others.
    AfterCycle(ProbeIndex),
    /// A probe has no answers, or no unremarkable one among them.
    NoOtherwise(ProbeIndex),
    /// The unremarkable answer of a trial fix cannot be *now it works*.
    MendsTheUnlisted(ProbeIndex),
    /// The same suspect twice in one answer.
    NamedTwice(ProbeIndex, AnswerIndex, Suspect),
    /// An answer that a suspect gives no part of the time, or more parts than `most::PARTS`.
    BadParts(ProbeIndex, AnswerIndex, Suspect),
    /// The probe needs a job open and shut, perhaps by way of others.
    OpenAndShut(ProbeIndex, JobIndex),
    /// Minutes or shares are so large or fine that exact sums would not fit.
    TooLarge,
}

/// All reasons why the case is unsound, in the order of its parts; none if it is sound.
pub(super) fn reasons(case: &Case) -> Vec<Unsound> {
    let mut found = Vec::new();
    sizes(case, &mut found);
    if found.is_empty() {
        suspects(case, &mut found);
        indices(case, &mut found);
    }
    if found.is_empty() {
        for probe in 0..case.probes.len() {
            answers(case, ProbeIndex(probe), &mut found);
        }
    }
    found
}

fn sizes(case: &Case, found: &mut Vec<Unsound>) {
    if case.causes.is_empty() {
        found.push(Unsound::NoCauses);
    }
    let longest = case.probes.iter().map(|p| p.answers.len()).max().unwrap_or(0);
    for (what, count, most) in [
        ("causes", case.causes.len(), most::CAUSES),
        ("probes", case.probes.len(), most::PROBES),
        ("jobs", case.jobs.len(), most::JOBS),
        ("answers", longest, most::ANSWERS),
    ] {
        if count > most {
            found.push(Unsound::TooMany(what, most));
        }
    }
}

fn suspects(case: &Case, found: &mut Vec<Unsound>) {
    for (index, cause) in case.causes.iter().enumerate() {
        if cause.weight.0 == 0 {
            found.push(Unsound::NoShare(Suspect::Cause(CauseIndex(index))));
        }
    }
    if case.rest.is_some_and(|rest| rest.weight.0 == 0) {
        found.push(Unsound::NoShare(Suspect::Rest));
    }
}

fn indices(case: &Case, found: &mut Vec<Unsound>) {
    let jobs = case.jobs.iter().flat_map(|j| &j.needs);
    let jobs = jobs.chain(case.probes.iter().flat_map(|p| p.needs.iter().chain(&p.shut)));
    let jobs = jobs.chain(case.remedies.iter().flat_map(|r| &r.needs)).map(|j| ("job", j.0, case.jobs.len()));
    let after = case.probes.iter().flat_map(|p| &p.after).map(|p| ("probe", p.0, case.probes.len()));
    let remedies = case.causes.iter().map(|c| c.remedy).chain(case.rest.and_then(|r| r.remedy));
    let remedies = remedies.map(|r| ("remedy", r.0, case.remedies.len()));
    for (what, index, count) in jobs.chain(after).chain(remedies) {
        if index >= count {
            found.push(Unsound::Unknown(what, index));
        }
    }
}

fn answers(case: &Case, index: ProbeIndex, found: &mut Vec<Unsound>) {
    let probe = &case.probes[index.0];
    if probe.otherwise.0 >= probe.answers.len() {
        found.push(Unsound::NoOtherwise(index));
    }
    match probe.works_now {
        Some(works) if works == probe.otherwise => found.push(Unsound::MendsTheUnlisted(index)),
        Some(works) if works.0 >= probe.answers.len() => found.push(Unsound::Unknown("answer", works.0)),
        _ => {}
    }
    for (place, answer) in probe.answers.iter().enumerate() {
        named(case, index, AnswerIndex(place), answer, found);
    }
}

fn named(case: &Case, probe: ProbeIndex, place: AnswerIndex, answer: &Answer, found: &mut Vec<Unsound>) {
    let mut seen = std::collections::BTreeSet::new();
    for named in &answer.named {
        match named.suspect {
            Suspect::Cause(cause) if cause.0 >= case.causes.len() => found.push(Unsound::Unknown("cause", cause.0)),
            Suspect::Rest if case.rest.is_none() => found.push(Unsound::NoShare(Suspect::Rest)),
            _ => {}
        }
        if !seen.insert(named.suspect) {
            found.push(Unsound::NamedTwice(probe, place, named.suspect));
        }
        if named.parts == 0 || named.parts > most::PARTS {
            found.push(Unsound::BadParts(probe, place, named.suspect));
        }
    }
}
