//! The practice bench: for every fault-finding guide a bench and its cards, and the page on which to choose among them.
//!
//! In: a guide with its reckoning. Out: pages. What the bench looks up comes from `rehearsal`.
//! Leaves to others: drawing a fault, adding up and judging (`practice.js`).

use super::laying::{self, Laying, maybe_worded};
use super::numbers::{exact, told};
use super::page::{
    Body, Card, CardStep, Cards, Link, Page, Practice, PracticeAnswer, PracticeJob, PracticeKit, PracticeProbe,
    PracticeReading, PracticeRemedy, PracticeRow, Practices,
};
use super::questions::Asking;
use super::{addresses, frame, front, rehearsal};
use crate::model::{self, Kind, Named, Paper};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::proof::network::Wired;
use crate::reckoning::circuit::{PositionId, Reading, ReadingId};
use crate::reckoning::diagnosis::{Ending, Hypothesis, Node, Suspect, Tree};

/// Cards of a guide at most: one a cause, then other ways in which a cause can behave.
const MOST_CARDS: usize = 16;

/// The bench and the cards of a guide. `least` is its least-cost tree.
pub fn pages(asking: &Asking<'_>, least: &Tree) -> [Page; 2] {
    let id = asking.guide.symptom.value.as_str();
    let hypotheses = asking.case.diagnosis.hypotheses();
    let dealt = dealt(id, &hypotheses);
    let bench = Body::Practice(Box::new(bench(asking, least, &dealt)));
    let cards = Body::Cards(Box::new(cards(asking, least, &hypotheses, &dealt)));
    let title = &asking.guide.title.value;
    let mut pages = [
        frame::page(&addresses::practice(id), "kind-practice", title, bench),
        frame::page(&addresses::cards(id), "kind-cards", title, cards),
    ];
    for page in &mut pages {
        page.trail = frame::trail_to_kit(&asking.laying, Some(&asking.guide.kit));
        page.trail.push(asking.symptom_link());
    }
    pages
}

/// Where an exercise is chosen.
pub fn index(laying: &Laying<'_>) -> Page {
    let guides = &laying.proofed.guides.symptoms;
    let row = |guide: &model::Symptom| {
        let id = guide.symptom.value.as_str();
        let case = laying.case(guide)?;
        Some(PracticeRow {
            title: guide.title.value.clone(),
            levels: [1, 2, 3].map(|level| addresses::practice_at(id, level)).into(),
            cards: addresses::cards(id),
            count: dealt(id, &case.diagnosis.hypotheses()).len(),
        })
    };
    let kits = front::items(laying).into_iter().map(|item| PracticeKit {
        title: laying.item_title(item),
        rows: guides.iter().filter(|(_, g)| g.kit.value.as_str() == item).filter_map(|(_, g)| row(g)).collect(),
    });
    let kits = kits.filter(|kit| !kit.rows.is_empty()).collect();
    frame::page(addresses::PRACTICE, "kind-practices", "", Body::Practices(Practices { kits }))
}

/// The hypotheses that have a card, in the order of the cards: each suspect in the way that it behaves most often, then other ways. The
/// order is that of a hash, so that a card's number tells nothing, and stays the same for the same guide.
fn dealt(guide: &str, hypotheses: &[Hypothesis]) -> Vec<usize> {
    let first_of = |at: &usize| {
        let here = hypotheses.get(*at);
        let same =
            hypotheses.iter().enumerate().filter(|(_, one)| here.is_some_and(|here| one.suspect == here.suspect));
        same.min_by_key(|(at, one)| (std::cmp::Reverse(one.weight), *at)).is_some_and(|(first, _)| first == *at)
    };
    let (mut chosen, mut others): (Vec<usize>, Vec<usize>) = (0..hypotheses.len()).partition(first_of);
    others.sort_by_key(|at| std::cmp::Reverse(hypotheses.get(*at).map_or(0, |one| one.weight)));
    let room = MOST_CARDS.saturating_sub(chosen.len());
    chosen.extend(others.into_iter().take(room));
    chosen.sort_by_cached_key(|at| *blake3::hash(format!("{guide}/{at}").as_bytes()).as_bytes());
    chosen
}

fn bench(asking: &Asking<'_>, least: &Tree, dealt: &[usize]) -> Practice {
    let (laying, guide) = (&asking.laying, asking.guide);
    let id = guide.symptom.value.as_str();
    let remedies = remedies(asking);
    let ids: Vec<&str> = remedies.iter().map(|(id, _)| *id).collect();
    let data = rehearsal::rehearsal(asking, least, &ids, dealt.to_vec());
    let mut causes: Vec<String> = sound(&guide.causes).into_iter().map(|cause| cause.title.value.clone()).collect();
    causes.extend(asking.case.diagnosis.case().rest.map(|_| String::new()));
    Practice {
        guide: asking.symptom_link(),
        cards: addresses::cards(id),
        all: addresses::PRACTICE.to_owned(),
        seen_on: laying::seen_on(guide.seen_on.value),
        lamps: laying::lamps(guide),
        says: guide.says.value.0.clone(),
        isolated: !guide.first.is_empty(),
        probes: probes(asking),
        jobs: jobs(asking),
        readings: readings(asking),
        causes,
        remedies: remedies
            .iter()
            .map(|(id, own)| PracticeRemedy { link: laying.link(Thing::Guide(Kind::Procedure), id), own: *own })
            .collect(),
        data: block(&data),
    }
}

/// Data as JSON that can stand in a page: no sign in it ends or opens anything there.
fn block(data: &rehearsal::Rehearsal) -> String {
    let json = serde_json::to_string(data).unwrap_or_default();
    json.replace('&', "\\u0026").replace('<', "\\u003c").replace('>', "\\u003e")
}

/// The jobs that can be named: those of the guide, then all others on the same item.
fn remedies<'a>(asking: &Asking<'a>) -> Vec<(&'a str, bool)> {
    let guide = asking.guide;
    let causes = sound(&guide.causes).into_iter().flat_map(|cause| cause.lasting.iter().chain(&cause.stop_gap));
    let rest = guide.rest.iter().filter_map(|rest| rest.lasting.as_ref());
    let mut own: Vec<&str> = causes.chain(rest).map(|named: &Named| named.value.as_str()).collect();
    own.sort_unstable();
    own.dedup();
    let jobs = asking.laying.proofed.guides.procedures.iter().map(|(_, job)| job);
    let same_item = |job: &&model::Procedure| job.kit.as_ref().is_some_and(|kit| kit.value == guide.kit.value);
    let others = jobs.filter(same_item).map(|job| job.procedure.value.as_str()).filter(|id| !own.contains(id));
    let others: Vec<&str> = others.collect();
    own.iter().map(|id| (*id, true)).chain(others.into_iter().map(|id| (id, false))).collect()
}

fn probes(asking: &Asking<'_>) -> Vec<PracticeProbe> {
    let case = asking.case.diagnosis.case();
    let jobs = sound(&asking.guide.access);
    let probe = |(index, reckoned): (usize, &crate::reckoning::diagnosis::Probe)| {
        let written = asking.probe(index)?;
        let wants = asking.case.diagnosis.wants(crate::reckoning::diagnosis::ProbeIndex(index));
        let open = wants.open.iter().filter_map(|job| jobs.get(job.0)).map(|job| job.title.value.clone());
        Some(PracticeProbe {
            ask: written.ask.value.clone(),
            how: maybe_worded(written.full.as_ref(), written.short.as_ref()),
            minutes: exact(told(&written.minutes)),
            open: open.collect(),
            trial: !written.mends.is_empty(),
            answers: (0..reckoned.answers.len()).map(|answer| said(asking, index, answer)).collect(),
        })
    };
    case.probes.iter().enumerate().filter_map(probe).collect()
}

fn said(asking: &Asking<'_>, probe: usize, answer: usize) -> PracticeAnswer {
    let written = asking.probe(probe).and_then(|probe| sound(&probe.answers).get(answer).copied());
    PracticeAnswer {
        title: asking.answer_title(probe, answer),
        message: asking.answer_message(probe, Some(answer)),
        lamp: written.and_then(|answer| answer.lamp.as_ref()).map(|lamp| lamp.value),
    }
}

fn jobs(asking: &Asking<'_>) -> Vec<PracticeJob> {
    let line = |job: &model::Access| PracticeJob {
        title: job.title.value.clone(),
        open: exact(told(&job.open)),
        close: exact(told(&job.close)),
    };
    sound(&asking.guide.access).into_iter().map(line).collect()
}

fn readings(asking: &Asking<'_>) -> Vec<PracticeReading> {
    let sight = asking.laying.proofed.sights.get(asking.guide.symptom.value.as_str());
    let wired = sight.and_then(|sight| asking.laying.proofed.circuits.get(&sight.circuit));
    let Some(wired) = wired else { return Vec::new() };
    rehearsal::pairs(asking).iter().map(|pair| reading(asking, wired, pair)).collect()
}

fn reading(asking: &Asking<'_>, wired: &Wired, (reading, position): &(ReadingId, PositionId)) -> PracticeReading {
    let (network, labels) = (&wired.network, &wired.labels);
    let worded = |labels: &std::collections::BTreeMap<_, crate::proof::network::Label>, id: &str| {
        labels.get(id).map_or_else(|| model::Id(id.to_owned()).spoken(), |label| label.title.clone())
    };
    let id = network.reading_name(*reading);
    let circuits = asking.laying.proofed.guides.circuits.iter().flat_map(|(_, circuit)| sound(&circuit.readings));
    let sounds = circuits.filter(|other| other.sounds_under.is_some()).any(|other| other.reading.value.as_str() == id);
    PracticeReading {
        title: worded(&labels.readings, id),
        position: worded(&labels.positions, network.position_name(*position)),
        on: match network.reading_of(*reading) {
            Some(Reading::Ohmmeter { .. }) => "meter",
            _ if sounds => "buzzer",
            _ => "lamp",
        },
    }
}

fn cards(asking: &Asking<'_>, least: &Tree, hypotheses: &[Hypothesis], dealt: &[usize]) -> Cards {
    let guide = asking.guide;
    let paper = asking.laying.proofed.guides.handbook.as_ref().map_or(Paper::A4, |(_, file)| file.paper);
    let all = dealt.iter().enumerate().filter_map(|(at, one)| Some(card(asking, least, at + 1, hypotheses.get(*one)?)));
    Cards {
        guide: asking.symptom_link(),
        bench: addresses::practice(guide.symptom.value.as_str()),
        paper,
        seen_on: laying::seen_on(guide.seen_on.value),
        lamps: laying::lamps(guide),
        probes: probes(asking),
        jobs: jobs(asking),
        cards: all.collect(),
    }
}

fn card(asking: &Asking<'_>, least: &Tree, number: usize, one: &Hypothesis) -> Card {
    let cause = asking.cause(&one.suspect);
    let rest = asking.guide.rest.as_ref().filter(|_| cause.is_none());
    let named = |named: Option<&Named>| -> Option<Link> { asking.laying.named_guide(named) };
    let (way, ending) = way(asking, &least.root, one);
    let left = ending.map_or(&[][..], |ending| ending.belief.possible.as_slice());
    let title = |suspect: &Suspect| asking.cause(suspect).map_or_else(String::new, |cause| cause.title.value.clone());
    let closing = ending.map_or(0, |ending| ending.closing_up.0);
    Card {
        number,
        cause: cause.map_or_else(String::new, |cause| cause.title.value.clone()),
        rest: cause.is_none(),
        lasting: named(cause.map_or_else(|| rest.and_then(|r| r.lasting.as_ref()), |cause| cause.lasting.as_ref())),
        stop_gap: named(cause.and_then(|cause| cause.stop_gap.as_ref())),
        rest_says: rest.map(|rest| rest.says.value.0.clone()),
        answers: one.answers.iter().enumerate().map(|(probe, answer)| said(asking, probe, answer.0)).collect(),
        way,
        beside: left.iter().filter(|(suspect, _)| *suspect != one.suspect).map(|(suspect, _)| title(suspect)).collect(),
        closing: exact(closing),
        minutes: exact(closing + ending.map_or(0, |ending| ending.so_far.0)),
    }
}

/// The least-cost way as it goes for a hypothesis, and where it ends.
fn way<'t>(asking: &Asking<'_>, root: &'t Node, one: &Hypothesis) -> (Vec<CardStep>, Option<&'t Ending>) {
    let mut steps = Vec::new();
    let mut node = root;
    loop {
        match node {
            Node::Ending(ending) => return (steps, Some(ending)),
            Node::Decision(decision) => {
                let answer = one.answers.get(decision.probe.0);
                let branch = decision.branches.iter().find(|branch| Some(&branch.answer) == answer);
                let (Some(answer), Some(branch)) = (answer, branch) else { return (steps, None) };
                let so_far = match &branch.node {
                    Node::Ending(ending) => ending.so_far.0,
                    Node::Decision(next) => next.so_far.0,
                };
                steps.push(CardStep {
                    ask: asking.probe(decision.probe.0).map_or_else(String::new, |probe| probe.ask.value.clone()),
                    answer: said(asking, decision.probe.0, answer.0),
                    so_far: exact(so_far),
                });
                node = &branch.node;
            }
        }
    }
}
