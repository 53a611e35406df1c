//! The pages of a fault-finding guide's questions and endings.
//!
//! In: the guide's ways. Out: one page a stop: what to do, what each answer means, what is still possible, how to end.

use super::laying::{Laying, maybe_worded, safety};
use super::numbers::{in_hundred, tenths, told, whole};
use super::page::{
    Answer, Answered, Body, Ending, JobLine, Link, Page, Question, RemedyChoice, RuledOut, ShareRow, Standing,
};
use super::symptom::{self, Remedies};
use super::ways::{At, Given, Ways};
use super::{addresses, circuits, frame};
use crate::model::{self, Kind, Named};
use crate::proof::cases::{Case, sound};
use crate::reckoning::diagnosis::{Belief, Decision, Ending as End, EndingKind, JobIndex, Node, Suspect, Tree};

/// A guide being laid out.
#[derive(Clone, Copy)]
pub struct Asking<'a> {
    /// What pages are made from.
    pub laying: Laying<'a>,
    /// The guide.
    pub guide: &'a model::Symptom,
    /// Its reckoning.
    pub case: &'a Case,
    /// Its ways.
    pub ways: &'a Ways,
}

/// The page of a stop. The first stop stands on the guide's own page.
pub fn page(asking: &Asking<'_>, stop: usize) -> Option<Page> {
    let here = asking.ways.stops.get(stop)?;
    let (kind, title, body) = match &here.what {
        At::Question(decision, ..) => {
            let title = asking.probe(decision.probe.0)?.ask.value.clone();
            ("kind-question", title, Body::Question(Box::new(asking.question(stop)?)))
        }
        At::End(_) => ("kind-ending", asking.ending_title(stop), Body::Ending(Box::new(asking.ending(stop)?))),
    };
    let mut page = frame::page(&here.address, kind, &title, body);
    page.trail = frame::trail_to_kit(&asking.laying, Some(&asking.guide.kit));
    page.trail.push(asking.symptom_link());
    let place = match &here.what {
        At::Question(decision, ..) => asking.probe(decision.probe.0).and_then(|probe| probe.place.as_ref()),
        _ => None,
    };
    let places = symptom::belief_by_place(asking, &here.belief().possible);
    let only = if here.ending().is_some() && places.len() == 1 {
        places.first().map(|(place, _)| place.as_str())
    } else {
        None
    };
    page.rail = symptom::rail(asking, &places, place.map(|named| named.value.as_str()).or(only));
    Some(page)
}

/// A few words for maps and lists.
pub fn short_title(probe: &model::Probe) -> String {
    probe.title.as_ref().map_or_else(|| probe.ask.value.clone(), |title| title.value.clone())
}

/// The first question of a tree, in words.
pub fn first_of(asking: &Asking<'_>, tree: &Tree) -> Option<String> {
    match &tree.root {
        Node::Decision(decision) => asking.probe(decision.probe.0).map(|probe| probe.ask.value.clone()),
        Node::Ending(_) => None,
    }
}

impl<'a> Asking<'a> {
    /// The start of every id on the guide's pages.
    pub fn key(&self) -> String {
        addresses::key(&addresses::guide(Kind::Symptom, self.guide.symptom.value.as_str()))
    }

    /// A probe by its index.
    pub fn probe(&self, index: usize) -> Option<&'a model::Probe> {
        sound(&self.guide.probes).get(index).copied()
    }

    /// A cause; nothing for *not on this list*.
    pub fn cause(&self, who: &Suspect) -> Option<&'a model::Cause> {
        match who {
            Suspect::Cause(index) => sound(&self.guide.causes).get(index.0).copied(),
            Suspect::Rest => None,
        }
    }

    fn job(&self, index: &JobIndex) -> Option<&'a model::Access> {
        sound(&self.guide.access).get(index.0).copied()
    }

    /// The guide's page.
    pub fn symptom_link(&self) -> Link {
        let address = addresses::guide(Kind::Symptom, self.guide.symptom.value.as_str());
        Link { title: self.guide.title.value.clone(), address }
    }

    /// A stop's words and address.
    pub fn stop_link(&self, stop: usize) -> Link {
        let here = self.ways.stops.get(stop);
        let title = match here.map(|stop| &stop.what) {
            Some(At::Question(decision, ..)) => {
                self.probe(decision.probe.0).map_or_else(String::new, |p| p.ask.value.clone())
            }
            _ => self.ending_title(stop),
        };
        let address = here.map_or_else(String::new, |stop| stop.address.clone());
        let anchor = if stop == 0 { format!("#{}-question", self.key()) } else { String::new() };
        Link { title, address: address + &anchor }
    }

    /// Whether a stop is a question on a way without *I cannot tell*.
    pub fn on_map(&self, stop: usize) -> bool {
        self.ways.stops.get(stop).is_some_and(|stop| {
            matches!(stop.what, At::Question(..)) && stop.way.iter().all(|given| given.answer.is_some())
        })
    }

    /// Whole minutes spent when one comes to a stop.
    pub fn minutes_at(&self, stop: usize) -> u32 {
        match self.ways.stops.get(stop).map(|stop| &stop.what) {
            Some(At::Question(decision, ..)) => whole(decision.so_far.0),
            Some(At::End(ending)) => whole(ending.so_far.0),
            None => 0,
        }
    }

    /// Tenths of a minute that asking takes here, with what is opened and shut for it.
    pub fn asking_takes(&self, decision: &Decision) -> u64 {
        let probe = self.probe(decision.probe.0).map_or(0, |probe| told(&probe.minutes));
        let opening: u64 =
            decision.newly_opened.iter().filter_map(|job| self.job(job)).map(|job| told(&job.open)).sum();
        let shutting: u64 =
            decision.shut_first.iter().filter_map(|job| self.job(job)).map(|job| told(&job.close)).sum();
        probe + opening + shutting
    }

    /// An answer in words; empty for those of a trial fix.
    pub fn answer_title(&self, probe: usize, answer: usize) -> String {
        let Some(probe) = self.probe(probe) else { return String::new() };
        let answers = sound(&probe.answers);
        match answers.get(answer) {
            Some(answer) => {
                answer.title.as_ref().map_or_else(|| answer.answer.value.spoken(), |title| title.value.clone())
            }
            None => String::new(),
        }
    }

    /// The message of an answer without words of its own: those of a trial fix.
    pub fn answer_message(&self, probe: usize, answer: Option<usize>) -> Option<&'static str> {
        let Some(answer) = answer else { return Some("cannot-tell") };
        let probe = self.probe(probe)?;
        let unnamed = !probe.mends.is_empty() && sound(&probe.answers).get(answer).is_none();
        unnamed.then_some(if answer == 0 { "answer-works" } else { "answer-no-change" })
    }

    /// The rows of what is possible.
    pub fn share_rows(&self, belief: &Belief, remedies: Remedies) -> Vec<ShareRow> {
        let own = addresses::guide(Kind::Symptom, self.guide.symptom.value.as_str());
        let rows = belief.possible.iter().map(|(who, share)| match self.cause(who) {
            None => symptom::rest_row(*share, format!("{}-rest", self.key())),
            Some(cause) => {
                let anchor = format!("{}-cause-{}", self.key(), cause.cause.value);
                let told = remedies == Remedies::Told;
                ShareRow {
                    title: cause.title.value.clone(),
                    rest: false,
                    place: cause.place.as_ref().map(|place| place.value.0.clone()),
                    share: in_hundred(*share),
                    address: Some(format!("{own}#{anchor}")),
                    says: cause.says.as_ref().filter(|_| told).map(|says| says.value.0.clone()),
                    lasting: self.laying.named_guide(cause.lasting.as_ref().filter(|_| told)),
                    stop_gap: self.laying.named_guide(cause.stop_gap.as_ref().filter(|_| told)),
                    anchor,
                }
            }
        });
        rows.collect()
    }

    /// The question at a stop; nothing for an ending.
    pub fn question(&self, stop: usize) -> Option<Question> {
        let here = self.ways.stops.get(stop)?;
        let At::Question(decision, next, cannot_tell) = &here.what else { return None };
        let unsure = cannot_tell.and_then(|stop| self.ways.stops.get(stop));
        let probe = self.probe(decision.probe.0)?;
        let opened = decision.newly_opened.iter().filter_map(|job| self.job(job));
        Some(Question {
            number: here.way.len() + 1,
            of: self.ways.questions_through(stop),
            ask: probe.ask.value.clone(),
            how: maybe_worded(probe.full.as_ref(), probe.short.as_ref()),
            safety: safety(opened.flat_map(|job| &job.safety).chain(&probe.safety)),
            shut: decision.shut_first.iter().filter_map(|job| self.closing(job)).collect(),
            open: decision.newly_opened.iter().filter_map(|job| self.opening(job)).collect(),
            who: probe.who.as_ref().map(|who| who.value),
            picture: self.laying.picture(probe.picture.as_ref()),
            answers: decision
                .branches
                .iter()
                .zip(next)
                .map(|(branch, next)| self.answer(probe, decision.probe.0, branch.answer.0, *next))
                .collect(),
            cannot_tell: unsure.map(|stop| stop.address.clone()),
            hands_over: unsure.and_then(super::ways::Stop::ending) == Some(EndingKind::HandOver),
            procedure: self.laying.named_guide(probe.procedure.as_ref()),
            trial: !probe.mends.is_empty(),
            standing: self.standing(stop, Some(decision)),
            back: self.back(&here.way),
            symptom: self.symptom_link(),
        })
    }

    fn opening(&self, index: &JobIndex) -> Option<JobLine> {
        let job = self.job(index)?;
        Some(self.job_line(job, job.title.value.clone(), told(&job.open)))
    }

    fn closing(&self, index: &JobIndex) -> Option<JobLine> {
        let job = self.job(index)?;
        let title = job.closing.as_ref().unwrap_or(&job.title).value.clone();
        Some(self.job_line(job, title, told(&job.close)))
    }

    fn job_line(&self, job: &model::Access, title: String, minutes: u64) -> JobLine {
        JobLine { title, minutes: whole(minutes), procedure: self.laying.named_guide(job.procedure.as_ref()) }
    }

    fn answer(&self, probe: &model::Probe, index: usize, answer: usize, next: usize) -> Answer {
        let stop = self.ways.stops.get(next);
        let end = stop.and_then(super::ways::Stop::ending);
        let lamp = sound(&probe.answers).get(answer).and_then(|answer| answer.lamp.as_ref()).map(|lamp| lamp.value);
        let possible = stop.map_or(&[][..], |stop| &stop.belief().possible);
        let left = possible.iter().filter(|(who, _)| *who != Suspect::Rest).count();
        Answer {
            title: self.answer_title(index, answer),
            message: self.answer_message(index, Some(answer)),
            address: stop.map_or_else(String::new, |stop| stop.address.clone()),
            lamp,
            follows: follows(end),
            found: end.map(|_| self.ending_title(next)).filter(|title| !title.is_empty()),
            left,
            next: stop.map_or(0, |stop| stop.way.len() + 1),
        }
    }

    fn back(&self, way: &[Given]) -> Link {
        way.last().map_or_else(|| self.symptom_link(), |given| self.stop_link(given.stop))
    }

    /// The ending at a stop; nothing for a question.
    pub fn ending(&self, stop: usize) -> Option<Ending> {
        let here = self.ways.stops.get(stop)?;
        let kind = here.ending()?;
        let close: &[JobIndex] = match &here.what {
            At::End(end) => &end.close,
            _ => &[],
        };
        let rest = self.guide.rest.as_ref();
        let rest_possible = here.belief().possible.iter().any(|(who, _)| *who == Suspect::Rest);
        Some(Ending {
            kind: ending_kind(kind, here.belief()),
            remedies: if kind == EndingKind::HandOver { Vec::new() } else { self.remedies(here.belief()) },
            rest_says: rest.map(|rest| rest.says.value.0.clone()),
            rest_lasting: rest
                .and_then(|rest| rest.lasting.as_ref())
                .map(|named| self.laying.remedy(named.value.as_str())),
            // What is advised for the rest holds once the list is gone through; handed over, it is not.
            rest_possible: rest_possible && kind != EndingKind::HandOver,
            close: close.iter().filter_map(|job| self.closing(job)).collect(),
            figure: self
                .only_cause(here.belief())
                .and_then(|cause| circuits::figure(&self.laying, self.guide, Some(cause))),
            standing: self.standing(stop, None),
            back: self.back(&here.way),
            symptom: self.symptom_link(),
        })
    }

    /// The cause, if only one of the list is left.
    fn only_cause(&self, belief: &Belief) -> Option<&'a model::Cause> {
        let mut causes = belief.possible.iter().filter_map(|(who, _)| self.cause(who));
        causes.next().filter(|_| causes.next().is_none())
    }

    /// The remedies of what is possible, the likeliest first, each with its causes.
    fn remedies(&self, belief: &Belief) -> Vec<RemedyChoice> {
        let rows = self.share_rows(belief, Remedies::Told);
        let causes = belief.possible.iter().map(|(who, _)| self.cause(who));
        let mut choices: Vec<(Option<&Named>, RemedyChoice)> = Vec::new();
        for (cause, row) in causes.zip(rows).filter_map(|(cause, row)| cause.map(|cause| (cause, row))) {
            let lasting = cause.lasting.as_ref();
            let same = |known: &Option<&Named>| known.map(|named| &named.value) == lasting.map(|named| &named.value);
            let stop_gap = cause.stop_gap.as_ref().map(|named| self.laying.remedy(named.value.as_str()));
            match choices.iter_mut().find(|(known, _)| same(known)) {
                Some((_, choice)) => {
                    choice.causes.push(row);
                    choice.stop_gaps.extend(stop_gap.filter(|gap| !choice.stop_gaps.contains(gap)));
                }
                None => {
                    let lasting_remedy = lasting.map(|named| self.laying.remedy(named.value.as_str()));
                    let choice = RemedyChoice {
                        causes: vec![row],
                        lasting: lasting_remedy,
                        stop_gaps: stop_gap.into_iter().collect(),
                    };
                    choices.push((lasting, choice));
                }
            }
        }
        let weight = |choice: &RemedyChoice| choice.causes.iter().map(|cause| cause.share.fine).sum::<u32>();
        let mut choices: Vec<RemedyChoice> = choices.into_iter().map(|(_, choice)| choice).collect();
        choices.sort_by_key(|choice| std::cmp::Reverse(weight(choice)));
        choices
    }

    /// What an ending is called: its cause, or its causes, or nothing where a message says it.
    pub fn ending_title(&self, stop: usize) -> String {
        let Some(here) = self.ways.stops.get(stop) else { return String::new() };
        if here.ending() == Some(EndingKind::HandOver) {
            return String::new();
        }
        let causes: Vec<&str> = here
            .belief()
            .possible
            .iter()
            .filter_map(|(who, _)| self.cause(who))
            .map(|c| c.title.value.as_str())
            .collect();
        match causes.as_slice() {
            [only] => (*only).to_owned(),
            several => several.join(" / "),
        }
    }

    fn standing(&self, stop: usize, decision: Option<&Decision>) -> Standing {
        let Some(here) = self.ways.stops.get(stop) else { return nowhere() };
        let end = match &here.what {
            At::End(end) => Some(&**end),
            _ => None,
        };
        let times = Times::of(decision, end);
        let open = match &here.what {
            At::Question(decision, ..) => &decision.open,
            At::End(end) => &end.close,
        };
        Standing {
            way: here.way.iter().filter_map(|given| self.answered(given)).collect(),
            possible: self.share_rows(here.belief(), Remedies::Untold),
            ruled_out: self.ruled_out(here.belief(), &here.way),
            so_far: times.so_far,
            to_go: times.to_go,
            most: times.most,
            closing: times.closing,
            so_far_whole: whole(times.so_far),
            // Rounded so that the two add up to what is shown for both together.
            to_go_whole: whole(times.so_far + times.to_go).saturating_sub(whole(times.so_far)),
            most_whole: whole(times.most),
            closing_whole: whole(times.closing),
            open: open.iter().filter_map(|job| self.job(job)).map(|job| job.title.value.clone()).collect(),
        }
    }

    fn answered(&self, given: &Given) -> Option<Answered> {
        let message = self.answer_message(given.probe, given.answer);
        Some(Answered {
            ask: self.probe(given.probe)?.ask.value.clone(),
            answer: given.answer.map_or_else(String::new, |answer| self.answer_title(given.probe, answer)),
            message,
            address: self.stop_link(given.stop).address,
        })
    }

    fn ruled_out(&self, belief: &Belief, way: &[Given]) -> Vec<RuledOut> {
        let number = |probe: usize| way.iter().position(|given| given.probe == probe).map_or(0, |at| at + 1);
        let rows = belief.ruled_out.iter().map(|(who, probe)| RuledOut {
            title: self.cause(who).map_or_else(String::new, |cause| cause.title.value.clone()),
            rest: *who == Suspect::Rest,
            question: number(probe.0),
        });
        rows.collect()
    }
}

/// Times at a stop, in tenths of a minute.
struct Times {
    so_far: u64,
    to_go: u64,
    most: u64,
    closing: u64,
}

impl Times {
    fn of(decision: Option<&Decision>, end: Option<&End>) -> Times {
        match (decision, end) {
            (Some(decision), _) => Times {
                so_far: decision.so_far.0,
                to_go: tenths(decision.to_go),
                most: decision.so_far.0 + decision.worst_to_go.0,
                closing: decision.closing_up.0,
            },
            (None, Some(end)) => {
                Times { so_far: end.so_far.0, to_go: 0, most: end.so_far.0, closing: end.closing_up.0 }
            }
            (None, None) => Times { so_far: 0, to_go: 0, most: 0, closing: 0 },
        }
    }
}

fn nowhere() -> Standing {
    Standing {
        way: Vec::new(),
        possible: Vec::new(),
        ruled_out: Vec::new(),
        so_far: 0,
        to_go: 0,
        most: 0,
        closing: 0,
        so_far_whole: 0,
        to_go_whole: 0,
        most_whole: 0,
        closing_whole: 0,
        open: Vec::new(),
    }
}

fn follows(end: Option<EndingKind>) -> &'static str {
    match end {
        None => "goes-on",
        Some(EndingKind::OneRemedy(_)) => "found",
        Some(EndingKind::Mended(_)) => "mended",
        Some(EndingKind::Group) => "choice",
        Some(EndingKind::NotListed) => "not-listed",
        Some(EndingKind::NothingFits) => "nothing-fits",
        Some(EndingKind::HandOver) => "hand-over",
    }
}

fn ending_kind(kind: EndingKind, belief: &Belief) -> &'static str {
    let listed = belief.possible.iter().filter(|(who, _)| *who != Suspect::Rest).count();
    match kind {
        EndingKind::OneRemedy(_) if listed == 1 && belief.possible.len() == 1 => "one-cause",
        EndingKind::OneRemedy(_) => "one-remedy",
        EndingKind::Mended(_) => "mended",
        EndingKind::Group => "choice",
        EndingKind::NotListed => "not-listed",
        EndingKind::NothingFits => "nothing-fits",
        EndingKind::HandOver => "hand-over",
    }
}
