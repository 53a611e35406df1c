//! The self-check after a stop: questions made from what its guides say, never from anything else.
//!
//! In: the guides that a stop names. Out: questions with one right choice each: limits, what a lamp does, which comes first, what the
//! danger is. Which are asked, and in which order choices stand, is that of a hash, so that the same guides give the same page.
//! Promise: a wrong choice is never also right, and has the form of the right one: the same unit, signal word or kind of question, about
//! as long, with a figure or without. Where that cannot be had for two wrong choices at least, the question is not asked.

use super::laying::Laying;
use super::likeness::{self, Beginnings, alike, beginnings};
use super::page::{CheckQuestion, Choice, LimitRow, Link, PatternRow, Patterns, Said};
use super::{patterns, questions};
use crate::model::prose::{LinkTo, links};
use crate::model::{self, Kind, Safety, Signal};
use crate::proof::{self, cases::sound};
use crate::source::Tolerant;
use std::collections::BTreeSet;

/// Questions of one sort at a stop, at most.
const OF_A_SORT: usize = 2;
/// Choices of a question, at most.
const CHOICES: usize = 4;
/// Choices of a question, at least: between two one may toss a coin.
const FEWEST: usize = 3;
/// From so many of the nearest values of a limit the wrong choices are taken: if they were the nearest of all, the right one would
/// always stand in their middle.
const NEAREST: usize = 6;
/// A value so many times as large or as small is no choice for anybody, and is offered only where there is none nearer.
const FAR: f64 = 10.0;

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
    (choices.len() >= FEWEST).then(|| CheckQuestion {
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
            let to = references.filter(|reference| reference.to == (proof::Thing::Limit, row.id.clone()));
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
            let asked = order.iter().filter_map(|probe| written.get(probe.0));
            let things = asked.map(|probe| Thing::of_probe(probe)).collect();
            let link = self.laying.link(proof::Thing::Guide(Kind::Symptom), guide.symptom.value.as_str());
            first_of("check-first-question", things, link)
        });
        let steps = self.procedures().filter_map(|guide| {
            let steps = sound(&guide.steps).into_iter().map(|step| step.short.as_ref().unwrap_or(&step.full));
            let things = steps.map(|step| Thing { says: step.value.0.clone(), asks: Asks::Nothing }).collect();
            let link = self.laying.link(proof::Thing::Guide(Kind::Procedure), guide.procedure.value.as_str());
            first_of("check-first-step", things, link)
        });
        probes.chain(steps).collect()
    }

    // ---- dangers ----

    /// What the safety notes of the jobs warn of.
    fn dangers(&self) -> Vec<CheckQuestion> {
        let jobs: Vec<&model::Procedure> =
            self.laying.proofed.guides.procedures.iter().map(|(_, guide)| guide).collect();
        let all: Vec<(Signal, String)> = jobs.iter().flat_map(|job| notes(job)).collect();
        let common = likeness::common(all.iter().map(|(_, says)| says.as_str()));
        let asked = self.procedures().filter_map(|job| {
            let own = notes(job);
            let (signal, right) = own.first().filter(|(signal, _)| *signal != Signal::Notice)?;
            let strange = all.iter().filter(|(other, says)| other == signal && alike(right, says));
            let strange =
                mixed(job.procedure.value.as_str(), strange.map(|(_, says)| says).collect(), |says| (*says).clone());
            let mut wrong =
                Wrong { at_hand: self.at_hand(job, &all), told: self.told_in(job), common: &common, taken: Vec::new() };
            strange.into_iter().for_each(|says| wrong.take(says));
            let link = self.laying.link(proof::Thing::Guide(Kind::Procedure), job.procedure.value.as_str());
            question(
                "check-danger",
                ("", &link.title),
                text(right),
                wrong.taken.iter().map(|says| text(says)).collect(),
                link.clone(),
            )
        });
        asked.collect()
    }

    /// What the notes of a job and of the jobs that it leads to speak of.
    fn told_in(&self, job: &model::Procedure) -> Beginnings {
        let from = (Kind::Procedure, job.procedure.value.0.clone());
        let references = self.laying.proofed.references.iter().filter(|reference| reference.from == from);
        let led = references.filter(|reference| reference.to.0 == proof::Thing::Guide(Kind::Procedure));
        let led = led.filter_map(|reference| self.laying.procedure(&reference.to.1));
        led.chain([job]).flat_map(notes).flat_map(|(_, says)| beginnings(&says)).collect()
    }

    /// What is at hand in a job: what it needs, and the places of its item of kit. What notes tell to wear is left out: it helps
    /// against many dangers and is none.
    fn at_hand(&self, job: &model::Procedure, notes: &[(Signal, String)]) -> Beginnings {
        let worn: BTreeSet<String> = notes
            .iter()
            .flat_map(|(_, says)| links(says))
            .filter_map(|link| if let LinkTo::Short(_, id) = link.to { Some(id) } else { None })
            .collect();
        let lists = [
            (proof::Thing::Part, &job.needs.parts),
            (proof::Thing::Tool, &job.needs.tools),
            (proof::Thing::Consumable, &job.needs.consumables),
        ];
        let needs =
            lists.into_iter().flat_map(|(thing, needs)| sound(needs).into_iter().map(move |need| (thing, need)));
        let needs = needs.filter(|(_, need)| !worn.contains(need.id.value.as_str()));
        let titles = needs.map(|(thing, need)| self.laying.link(thing, need.id.value.as_str()).title);
        let kit = job.kit.iter().flat_map(|kit| self.laying.proofed.index.places(kit.value.as_str()));
        titles.chain(kit.map(|place| place.replace('-', " "))).flat_map(|title| beginnings(&title)).collect()
    }
}

/// The wrong dangers of a job, taken one after the other: each speaks of nothing that is at hand in the job, and of nothing that its
/// own notes or another wrong one speak of.
struct Wrong<'a> {
    at_hand: Beginnings,
    told: Beginnings,
    common: &'a Beginnings,
    taken: Vec<&'a String>,
}

impl<'a> Wrong<'a> {
    fn take(&mut self, says: &'a String) {
        let all = beginnings(says);
        let telling: Beginnings = all.difference(self.common).cloned().collect();
        if !telling.is_empty() && all.is_disjoint(&self.at_hand) && telling.is_disjoint(&self.told) {
            self.told.extend(telling);
            self.taken.push(says);
        }
    }
}

fn limit(right: &LimitRow, all: &[LimitRow]) -> Option<CheckQuestion> {
    let shape = |row: &LimitRow| (row.unit.clone(), row.least.is_some() && row.most.is_some());
    let other = |row: &&LimitRow| {
        !right.unit.is_empty() && shape(row) == shape(right) && row.value != right.value && row.title != right.title
    };
    let mut others: Vec<&LimitRow> = all.iter().filter(other).collect();
    others.sort_by(|one, other| farness(right, one).total_cmp(&farness(right, other)).then(one.id.cmp(&other.id)));
    let mut values = BTreeSet::new();
    others.retain(|row| values.insert(&row.value));
    let near = others.iter().take_while(|row| farness(right, row) <= FAR).count();
    others.truncate(if near + 1 < FEWEST { FEWEST - 1 } else { near.min(NEAREST) });
    let wrong = mixed(&right.id, others, |row| row.id.clone());
    let wrong = wrong.into_iter().map(|row| Said::bound(right, row)).collect();
    let told = Link { title: right.title.clone(), address: right.address.clone() };
    let at = right.at.clone().unwrap_or_default();
    question("check-limit", (&right.title, &at), Said::bound(right, right), wrong, told)
}

/// How many times as large the larger of two limits is.
fn farness(one: &LimitRow, other: &LimitRow) -> f64 {
    let size = |row: &LimitRow| row.most.as_ref().or(row.least.as_ref()).and_then(|value| value.parse::<f64>().ok());
    match (size(one), size(other)) {
        (Some(one), Some(other)) if one > 0.0 && other > 0.0 => one.max(other) / one.min(other),
        _ => f64::INFINITY,
    }
}

fn said_of(row: &PatternRow) -> Said {
    Said::Lamps { lamps: row.lamps.clone() }
}

/// A question or step of a guide.
struct Thing {
    says: String,
    asks: Asks,
}

/// What sort of question it is, as far as its answers show.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Asks {
    /// It is a step.
    Nothing,
    /// One of two.
    Whether,
    /// One of several.
    Which,
}

impl Thing {
    fn of_probe(probe: &model::Probe) -> Thing {
        let asks = if sound(&probe.answers).len() > 2 { Asks::Which } else { Asks::Whether };
        Thing { says: questions::short_title(probe), asks }
    }

    fn like(&self, other: &Thing) -> bool {
        self.asks == other.asks && alike(&self.says, &other.says)
    }
}

/// Of things in their order the first is asked for; the others are of its kind and form.
fn first_of(ask: &'static str, things: Vec<Thing>, link: Link) -> Option<CheckQuestion> {
    let (first, rest) = things.split_first()?;
    let like = rest.iter().filter(|other| first.like(other) && first.says != other.says);
    let wrong = mixed(&link.address, like.collect(), |thing| thing.says.clone());
    let wrong = wrong.into_iter().map(|thing| text(&thing.says)).collect();
    question(ask, ("", &link.title.clone()), text(&first.says), wrong, link)
}

fn text(says: &str) -> Said {
    Said::Text { text: says.to_owned() }
}

/// The safety notes of a job and of its steps, the job's own first.
fn notes(guide: &model::Procedure) -> Vec<(Signal, String)> {
    let of_steps = sound(&guide.steps).into_iter().flat_map(|step| step.safety.iter());
    let all = guide.safety.iter().chain(of_steps).filter_map(Tolerant::sound);
    all.filter_map(Safety::note).map(|(signal, says)| (signal, says.value.0.clone())).collect()
}
