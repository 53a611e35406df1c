//! The self-check after a stop: questions made from what its guides say, never from anything else.
//!
//! In: the guides that a stop names. Out: questions with one right choice each: limits, what a lamp does, which comes first, what the
//! danger is. Which are asked, and in which order choices stand, is that of a hash, so that the same guides give the same page.
//! Promise: a wrong choice is never also right; where that cannot be said for certain, the question is not asked.

use super::laying::Laying;
use super::page::{CheckQuestion, Choice, LimitRow, Link, PatternRow, Patterns, Said};
use super::{patterns, questions};
use crate::model::prose::plain;
use crate::model::{self, Kind, Safety};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::source::Tolerant;
use std::collections::BTreeSet;

/// Questions of one sort at a stop, at most.
const OF_A_SORT: usize = 2;
/// Choices of a question, at most.
const CHOICES: usize = 4;

/// The questions of a stop.
pub fn questions(laying: &Laying<'_>, stop: &model::LearningStop) -> Vec<CheckQuestion> {
    let asking = Asking { laying, guides: guides(laying, stop) };
    let sorts = [asking.limits(), asking.lamps(), asking.order(), asking.dangers()];
    let some = |sort: Vec<CheckQuestion>| {
        let salt = stop.stop.value.as_str();
        mixed(salt, sort, |question| format!("{}/{}/{}", question.ask, question.about, question.of))
    };
    sorts.into_iter().flat_map(|sort| some(sort).into_iter().take(OF_A_SORT)).collect()
}

/// The guides that a stop names, each once, in its order.
fn guides<'a>(laying: &Laying<'a>, stop: &'a model::LearningStop) -> Vec<(Kind, &'a str)> {
    let mut found: Vec<(Kind, &str)> = Vec::new();
    for named in stop.read.iter().chain(&*stop.practise) {
        let id = named.value.as_str();
        let kind = laying.proofed.index.guide(id).map(|(kind, _)| kind);
        found.extend(kind.map(|kind| (kind, id)).filter(|guide| !found.contains(guide)));
    }
    found
}

/// In the order of a hash that nobody can guess from the words.
fn mixed<T>(salt: &str, mut items: Vec<T>, name: impl Fn(&T) -> String) -> Vec<T> {
    items.sort_by_cached_key(|item| *blake3::hash(format!("{salt}/{}", name(item)).as_bytes()).as_bytes());
    items
}

struct Asking<'a> {
    laying: &'a Laying<'a>,
    guides: Vec<(Kind, &'a str)>,
}

/// A question, if there is something to choose from.
fn question(
    ask: &'static str,
    (about, of): (&str, &str),
    right: Said,
    wrong: Vec<Said>,
    told: Link,
) -> Option<CheckQuestion> {
    let mut choices = vec![Choice { says: right, right: true }];
    for says in wrong {
        if choices.len() < CHOICES && choices.iter().all(|choice| choice.says != says) {
            choices.push(Choice { says, right: false });
        }
    }
    let salt = format!("{ask}/{about}/{of}");
    let choices = mixed(&salt, choices, |choice| format!("{:?}", choice.says));
    (choices.len() > 1).then(|| CheckQuestion {
        ask,
        about: about.to_owned(),
        of: of.to_owned(),
        seen_on: None,
        choices,
        told,
    })
}

impl<'a> Asking<'a> {
    fn of_kind(&self, kind: Kind) -> impl Iterator<Item = &'a str> + '_ {
        self.guides.iter().filter(move |guide| guide.0 == kind).map(|guide| guide.1)
    }

    fn symptoms(&self) -> impl Iterator<Item = &'a model::Symptom> + '_ {
        let all = &self.laying.proofed.guides.symptoms;
        self.of_kind(Kind::Symptom).filter_map(|id| all.iter().map(|(_, g)| g).find(|g| g.symptom.value.as_str() == id))
    }

    fn procedures(&self) -> impl Iterator<Item = &'a model::Procedure> + '_ {
        self.of_kind(Kind::Procedure).filter_map(|id| self.laying.procedure(id))
    }

    // ---- limits ----

    /// What the limits are that the guides name. Wrong choices are other limits' values in the same unit.
    fn limits(&self) -> Vec<CheckQuestion> {
        let all: Vec<LimitRow> = self.laying.directory.limits.keys().filter_map(|id| self.laying.limit(id)).collect();
        let named = |row: &&LimitRow| {
            let references = self.laying.proofed.references.iter();
            let to = references.filter(|reference| reference.to == (Thing::Limit, row.id.clone()));
            to.into_iter().any(|reference| self.guides.contains(&(reference.from.0, reference.from.1.as_str())))
        };
        all.iter().filter(named).filter_map(|row| limit(row, &all)).collect()
    }

    // ---- lamps ----

    /// What the lamps of the guides' circuits do, as computed.
    fn lamps(&self) -> Vec<CheckQuestion> {
        let circuits = &self.laying.proofed.guides.circuits;
        let named = self.symptoms().filter_map(|guide| guide.circuit.as_ref()).map(|named| named.value.as_str());
        let ids: BTreeSet<&str> = named.chain(self.of_kind(Kind::Circuit)).collect();
        let guides =
            ids.iter().filter_map(|id| circuits.iter().map(|(_, c)| c).find(|c| c.circuit.value.as_str() == *id));
        let wired =
            guides.filter_map(|guide| Some((guide, self.laying.proofed.circuits.get(guide.circuit.value.as_str())?)));
        let whole = wired.filter(|(_, wired)| wired.is_whole());
        whole
            .flat_map(|(guide, wired)| patterns::patterns(self.laying, guide, wired))
            .flat_map(|lamp| self.lamp(&lamp))
            .collect()
    }

    /// Of sound kit, and of one fault that the guides look into and that shows in one way only.
    fn lamp(&self, lamp: &Patterns) -> Vec<CheckQuestion> {
        let rows = |right: &PatternRow| {
            let wrong = lamp.rows.iter().filter(|row| row.lamps != right.lamps).map(said_of).collect();
            (said_of(right), wrong)
        };
        let asked = |ask, about: &str, right: &PatternRow| {
            let (right, wrong) = rows(right);
            let made = question(ask, (about, &lamp.title), right, wrong, lamp.circuit.clone())?;
            Some(CheckQuestion { seen_on: Some(lamp.seen_on), ..made })
        };
        let only = |is: &dyn Fn(&&PatternRow) -> bool| {
            let mut fitting = lamp.rows.iter().filter(is);
            fitting.next().filter(|_| fitting.next().is_none())
        };
        let sound = only(&|row| row.sound).and_then(|row| asked("check-lamp-sound", &lamp.circuit.title, row));
        let faults: BTreeSet<&Link> = lamp.rows.iter().flat_map(|row| &row.faults).collect();
        let faults = mixed(&lamp.anchor, faults.into_iter().collect(), |link| link.address.clone());
        let looked_into = faults.into_iter().filter(|fault| self.looks_into(fault));
        let fault = looked_into
            .filter_map(|fault| asked("check-lamp-fault", &fault.title, only(&|row| row.faults.contains(fault))?))
            .next();
        sound.into_iter().chain(fault).collect()
    }

    /// Whether a cause of the guides stands for a fault; any fault will do where no guide is for fault finding.
    fn looks_into(&self, fault: &Link) -> bool {
        let mut guides = self.symptoms().peekable();
        guides.peek().is_none()
            || guides.any(|guide| {
                let named = sound(&guide.causes).into_iter().flat_map(|cause| cause.fault.iter());
                named.into_iter().any(|named| fault.address.ends_with(&format!("-fault-{}", named.value)))
            })
    }

    // ---- order ----

    /// Which question or step comes first, in the author's order.
    fn order(&self) -> Vec<CheckQuestion> {
        let probes = self.symptoms().filter_map(|guide| {
            let case = self.laying.case(guide)?;
            let written = sound(&guide.probes);
            let order = case.diagnosis.as_written_order();
            let titles =
                order.iter().filter_map(|probe| written.get(probe.0)).map(|probe| questions::short_title(probe));
            let link = self.laying.link(Thing::Guide(Kind::Symptom), guide.symptom.value.as_str());
            first_of("check-first-question", titles.collect(), link)
        });
        let steps = self.procedures().filter_map(|guide| {
            let steps = sound(&guide.steps).into_iter().map(|step| step.short.as_ref().unwrap_or(&step.full));
            let link = self.laying.link(Thing::Guide(Kind::Procedure), guide.procedure.value.as_str());
            first_of("check-first-step", steps.map(|step| step.value.0.clone()).collect(), link)
        });
        probes.chain(steps).collect()
    }

    // ---- dangers ----

    /// What the safety notes of the jobs warn of. A wrong choice is a note of a job that shares no tool and no consumable with this one,
    /// says it in other words and stands in no job that this one leads to.
    fn dangers(&self) -> Vec<CheckQuestion> {
        let jobs = || self.laying.proofed.guides.procedures.iter().map(|(_, guide)| guide);
        let asked = self.procedures().filter_map(|guide| {
            let own = notes(guide);
            let right = own.first()?;
            let strange = jobs().filter(|other| shares_nothing(guide, other)).flat_map(notes);
            let wrong = strange.filter(|note| own.iter().all(|own| differ(own, note)));
            let wrong = mixed(guide.procedure.value.as_str(), wrong.collect(), Clone::clone);
            let link = self.laying.link(Thing::Guide(Kind::Procedure), guide.procedure.value.as_str());
            let says = |text: &String| Said::Text { text: text.clone() };
            let wrong = wrong.iter().take(2).map(says).collect();
            question("check-danger", ("", &link.title), says(right), wrong, link.clone())
        });
        asked.collect()
    }
}

fn limit(right: &LimitRow, all: &[LimitRow]) -> Option<CheckQuestion> {
    let shape = |row: &LimitRow| (row.unit.clone(), row.least.is_some() && row.most.is_some());
    let other = |row: &&LimitRow| {
        !right.unit.is_empty() && shape(row) == shape(right) && row.value != right.value && row.title != right.title
    };
    let others: Vec<&LimitRow> = all.iter().filter(other).collect();
    let wrong = mixed(&right.id, others, |row| row.id.clone());
    let wrong = wrong.into_iter().map(|row| Said::bound(right, row)).collect();
    let told = Link { title: right.title.clone(), address: right.address.clone() };
    let at = right.at.clone().unwrap_or_default();
    question("check-limit", (&right.title, &at), Said::bound(right, right), wrong, told)
}

fn said_of(row: &PatternRow) -> Said {
    Said::Lamps { lamps: row.lamps.clone() }
}

/// Three things in their order, far apart, of which the first is asked for.
fn first_of(ask: &'static str, things: Vec<String>, link: Link) -> Option<CheckQuestion> {
    let (first, rest) = things.split_first()?;
    let middle = rest.get(rest.len() / 2)?;
    let last = rest.last()?;
    let says = |text: &String| Said::Text { text: text.clone() };
    question(ask, ("", &link.title.clone()), says(first), vec![says(middle), says(last)], link)
}

/// The safety notes of a job and of its steps, the job's own first.
fn notes(guide: &model::Procedure) -> Vec<String> {
    let of_steps = sound(&guide.steps).into_iter().flat_map(|step| step.safety.iter());
    let all = guide.safety.iter().chain(of_steps).filter_map(Tolerant::sound);
    all.filter_map(Safety::note).map(|(_, says)| says.value.0.clone()).collect()
}

fn shares_nothing(one: &model::Procedure, other: &model::Procedure) -> bool {
    let used = |guide: &model::Procedure| -> BTreeSet<String> {
        let needs = guide.needs.tools.iter().chain(&*guide.needs.consumables).filter_map(Tolerant::sound);
        needs.map(|need| need.id.value.0.clone()).collect()
    };
    used(one).is_disjoint(&used(other))
}

/// Whether two notes share no word of five letters or more: then they speak of different dangers.
fn differ(one: &str, other: &str) -> bool {
    let words = |text: &str| -> BTreeSet<String> {
        let text = plain(text).to_lowercase();
        let words = text.split(|letter: char| !letter.is_alphanumeric());
        words.filter(|word| word.chars().count() > 4).map(str::to_owned).collect()
    };
    words(one).is_disjoint(&words(other))
}
