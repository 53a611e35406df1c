//! A fault-finding guide's own page: what is seen, the first question, the shares, the map, why this order.
//!
//! Leaves to others: the pages of the questions and endings (`questions`).

use super::laying::{self, Laying, markdown, maybe_worded, safety};
use super::numbers::{in_hundred, tenths, told, whole};
use super::page::{
    Body, FewRow, First, FirstAnswer, InHundred, MapAnswer, MapBranch, MapNode, MapWords, OrderCost, Orders, Page,
    Rail, ShareRow, Symptom, Unlike,
};
use super::questions::{self, Asking};
use super::ways::{self, At};
use super::{addresses, circuits, frame, lessons, practice, sheets};
use crate::model::{self, Kind, Order};
use crate::proof::Thing;
use crate::proof::cases::sound;
use crate::reckoning::counts;
use crate::reckoning::diagnosis::{Fraction, Limits, Suspect, Tree};

/// A guide laid out.
#[derive(Default)]
pub struct Laid {
    /// Its pages: its own, and one for each question and ending.
    pub pages: Vec<Page>,
    /// Its sheet.
    pub sheet: Option<Page>,
    /// Whole minutes that its questions take on average.
    pub minutes: u32,
}

/// Lays out a guide: its ways are reckoned once for all of it.
pub fn lay(laying: &Laying<'_>, guide: &model::Symptom) -> Laid {
    let Some(case) = laying.case(guide) else { return Laid::default() };
    if !laying.lays(&guide.symptom) {
        return Laid { minutes: whole(tenths(ways::tree(guide, case).expected)), ..Laid::default() };
    }
    let ways = ways::ways(guide, case);
    let asking = Asking { laying: *laying, guide, case, ways: &ways };
    let least = match guide.order {
        Order::AsWritten => case.diagnosis.quickest_tree(Limits::default()),
        Order::Quickest => ways.tree.clone(),
    };
    let mut pages = vec![own_page(&asking, &least)];
    pages.extend(practice::pages(&asking, &least));
    pages.extend((1..ways.stops.len()).filter_map(|stop| questions::page(&asking, stop)));
    Laid { pages, sheet: Some(sheets::fault_page(&asking)), minutes: whole(tenths(ways.tree.expected)) }
}

fn own_page(asking: &Asking<'_>, least: &Tree) -> Page {
    let Asking { laying, guide, case, ways } = asking;
    let id = guide.symptom.value.as_str();
    let belief = case.diagnosis.belief();
    let shares = asking.share_rows(&belief, Remedies::Told);
    let listed = belief.possible.iter().filter(|(who, _)| *who != Suspect::Rest).map(|(_, share)| *share);
    let body = Symptom {
        seen_on: laying::seen_on(guide.seen_on.value),
        lamps: laying::lamps(guide),
        says: guide.says.value.0.clone(),
        unlike: unlike(laying, guide),
        first: first(laying, guide),
        question: asking.question(0),
        ending: asking.ending(0),
        listed: in_hundred(sum(listed)),
        shares,
        shares_from: if case.counted > 0 { model::Shares::Counted } else { guide.shares },
        counted: case.counted,
        few: few(guide, case.counted),
        map: map(asking, 0, Fraction::ONE),
        words: words(asking),
        orders: orders(asking, &ways.tree, least),
        why: markdown(guide.why.as_ref()),
        groups: groups(asking),
        dead: dead(asking),
        comes_and_goes: comes_and_goes(guide),
        figure: circuits::figure(laying, guide, None),
        circuit: guide.circuit.as_ref().map(|named| laying.link(Thing::Guide(Kind::Circuit), named.value.as_str())),
        how: lessons::links(laying, guide.kit.value.as_str()).into_iter().next(),
    };
    let address = addresses::guide(Kind::Symptom, id);
    let mut page = frame::page(&address, "kind-symptom", &guide.title.value, Body::Symptom(Box::new(body)));
    page.trail = frame::trail_to_kit(laying, Some(&guide.kit));
    page.rail = rail(asking, &belief_by_place(asking, &belief.possible), None);
    page.sheet = Some(addresses::sheet(id));
    page
}

/// Whether a share row names the remedies.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Remedies {
    /// It does.
    Told,
    /// It does not.
    Untold,
}

fn sum(shares: impl Iterator<Item = Fraction>) -> Fraction {
    shares.fold(Fraction::ZERO, |sum, share| sum + share)
}

fn unlike(laying: &Laying<'_>, guide: &model::Symptom) -> Vec<Unlike> {
    let others = sound(&guide.unlike).into_iter();
    others
        .filter_map(|other| {
            Some(Unlike { ask: other.ask.value.clone(), link: laying.guide_link(other.guide.value.as_str())? })
        })
        .collect()
}

/// The steps that isolate the fault to this item.
pub fn first(laying: &Laying<'_>, guide: &model::Symptom) -> Vec<First> {
    let steps = sound(&guide.first).into_iter().map(|first| First {
        ask: first.ask.value.clone(),
        how: maybe_worded(first.full.as_ref(), first.short.as_ref()),
        minutes: whole(told(&first.minutes)),
        safety: safety(&first.safety),
        answers: sound(&first.answers)
            .into_iter()
            .map(|answer| FirstAnswer {
                title: answer.title.as_ref().map_or_else(|| answer.answer.value.spoken(), |title| title.value.clone()),
                says: markdown(answer.says.as_ref()),
                link: laying.guide_link(&answer.then.value),
            })
            .collect(),
    });
    steps.collect()
}

fn orders(asking: &Asking<'_>, used: &Tree, quickest: &Tree) -> Orders {
    let case = asking.case;
    let written = match asking.guide.order {
        Order::AsWritten => used.clone(),
        Order::Quickest => case.diagnosis.as_written_tree(),
    };
    let cost = |tree: &Tree| OrderCost { average: whole(tenths(tree.expected)), most: whole(tree.worst.0) };
    let (as_written, least) = (cost(&written), cost(quickest));
    Orders {
        used: match asking.guide.order {
            Order::AsWritten => "as-written",
            Order::Quickest => "quickest",
        },
        saves: as_written.average.saturating_sub(least.average),
        proved: quickest.gap == 0.0,
        quickest_first: questions::first_of(asking, quickest),
        as_written,
        quickest: least,
    }
}

fn groups(asking: &Asking<'_>) -> Vec<Vec<String>> {
    let groups = asking.case.diagnosis.groups();
    let parted = groups.iter().filter(|group| group.one_remedy.is_none());
    parted
        .map(|group| {
            group.suspects.iter().filter_map(|who| asking.cause(who)).map(|cause| cause.title.value.clone()).collect()
        })
        .filter(|titles: &Vec<String>| !titles.is_empty())
        .collect()
}

fn dead(asking: &Asking<'_>) -> Vec<String> {
    let probes = sound(&asking.guide.probes);
    let dead = asking.case.diagnosis.dead_probes();
    dead.iter().filter_map(|probe| probes.get(probe.0)).map(|probe| probe.ask.value.clone()).collect()
}

fn comes_and_goes(guide: &model::Symptom) -> bool {
    sound(&guide.probes).into_iter().any(|probe| {
        let meant: Vec<&str> = sound(&probe.answers)
            .into_iter()
            .flat_map(|answer| sound(&answer.means))
            .map(|meant| meant.cause.value.as_str())
            .collect();
        let timed = sound(&probe.answers).into_iter().flat_map(|a| sound(&a.means)).any(|meant| meant.times.is_some());
        timed || meant.iter().any(|id| *id != "otherwise" && meant.iter().filter(|other| *other == id).count() > 1)
    })
}

/// The map from a stop on.
fn map(asking: &Asking<'_>, stop: usize, chance: Fraction) -> MapNode {
    let Some(here) = asking.ways.stops.get(stop) else { return nowhere() };
    let share = in_hundred(chance).fine;
    let node = |title, so_far, minutes, branches| MapNode {
        title,
        address: (stop > 0).then(|| here.address.clone()),
        share,
        so_far,
        minutes,
        rest: false,
        branches,
    };
    match &here.what {
        At::Question(decision, next, _) => {
            let branches = decision.branches.iter().zip(next).map(|(branch, next)| MapBranch {
                answer: asking.answer_title(decision.probe.0, branch.answer.0),
                node: map(asking, *next, chance * branch.chance),
            });
            let title = asking.probe(decision.probe.0).map_or_else(String::new, questions::short_title);
            node(title, decision.so_far.0, Some(asking.asking_takes(decision)), branches.collect())
        }
        At::End(ending) => {
            let rest = ending.belief.possible.iter().any(|(who, _)| *who == Suspect::Rest);
            let also = ending.belief.possible.len() > 1;
            MapNode { rest: rest && also, ..node(asking.ending_title(stop), ending.so_far.0, None, Vec::new()) }
        }
    }
}

fn nowhere() -> MapNode {
    MapNode {
        title: String::new(),
        address: None,
        share: 0,
        so_far: 0,
        minutes: None,
        rest: false,
        branches: Vec::new(),
    }
}

/// The map in words: every question on the ways without *I cannot tell*, numbered in the order of the tree.
fn words(asking: &Asking<'_>) -> Vec<MapWords> {
    let on_map: Vec<usize> = (0..asking.ways.stops.len()).filter(|stop| asking.on_map(*stop)).collect();
    let number = |stop: usize| on_map.iter().position(|other| *other == stop).map(|at| at + 1);
    let mut words = Vec::new();
    for stop in &on_map {
        let Some(At::Question(decision, next, _)) = asking.ways.stops.get(*stop).map(|stop| &stop.what) else {
            continue;
        };
        let answers = decision.branches.iter().zip(next).map(|(branch, next)| MapAnswer {
            title: asking.answer_title(decision.probe.0, branch.answer.0),
            question: number(*next),
            ending: number(*next).is_none().then(|| asking.stop_link(*next)),
            minutes: asking.minutes_at(*next),
        });
        words.push(MapWords {
            number: number(*stop).unwrap_or(0),
            ask: asking.stop_link(*stop),
            answers: answers.collect(),
        });
    }
    words
}

/// The shares by place.
pub fn belief_by_place(asking: &Asking<'_>, possible: &[(Suspect, Fraction)]) -> Vec<(String, Fraction)> {
    let mut places: Vec<(String, Fraction)> = Vec::new();
    for (who, share) in possible {
        let Some(place) = asking.cause(who).and_then(|cause| cause.place.as_ref()) else { continue };
        match places.iter_mut().find(|(known, _)| *known == place.value.0) {
            Some((_, sum)) => *sum = *sum + *share,
            None => places.push((place.value.0.clone(), *share)),
        }
    }
    places
}

/// The rail with the shares of its places: those without any are out.
pub fn rail(asking: &Asking<'_>, places: &[(String, Fraction)], here: Option<&str>) -> Option<Rail> {
    let item = asking.guide.kit.value.as_str();
    let own = addresses::guide(Kind::Symptom, asking.guide.symptom.value.as_str());
    let rail = asking.laying.rail(item, |place| {
        let share: Option<InHundred> =
            places.iter().find(|(known, _)| known == place).map(|(_, share)| in_hundred(*share));
        let state = match (Some(place) == here, share) {
            (true, _) => "here",
            (false, Some(_)) => "plain",
            (false, None) => "out",
        };
        let anchor = share
            .and_then(|_| first_cause_at(asking, place))
            .map(|cause| format!("{own}#{}-cause-{cause}", asking.key()));
        (state, share, anchor)
    });
    (!rail.places.is_empty()).then_some(rail)
}

/// The first cause of the guide at a place.
fn first_cause_at<'a>(asking: &Asking<'a>, place: &str) -> Option<&'a str> {
    let at = |cause: &&&model::Cause| cause.place.as_ref().is_some_and(|named| named.value.as_str() == place);
    sound(&asking.guide.causes).iter().find(at).map(|cause| cause.cause.value.as_str())
}

/// A share row's empty form, for *not on this list*.
pub fn rest_row(share: Fraction, anchor: String) -> ShareRow {
    ShareRow {
        title: String::new(),
        rest: true,
        place: None,
        share: in_hundred(share),
        address: None,
        says: None,
        anchor,
        lasting: None,
        stop_gap: None,
    }
}

/// How far each share may be off, when only few cases were counted.
fn few(guide: &model::Symptom, counted: u32) -> Vec<FewRow> {
    if counted == 0 || counted >= counts::FEW {
        return Vec::new();
    }
    let seen = |seen: &Option<crate::source::Placed<u32>>| seen.as_ref().map_or(0, |seen| seen.value);
    let causes = sound(&guide.causes).into_iter().map(|cause| (cause.title.value.clone(), seen(&cause.seen)));
    let rest = guide.rest.iter().map(|rest| (String::new(), seen(&rest.seen)));
    let rows: Vec<(String, u32)> = causes.chain(rest).collect();
    let ranges = counts::ranges(&rows.iter().map(|(_, seen)| *seen).collect::<Vec<_>>());
    let row = |((title, seen), range): ((String, u32), counts::Between)| FewRow {
        title,
        seen,
        low: (range.low * 100.0).floor() as u32,
        high: (range.high * 100.0).ceil() as u32,
    };
    rows.into_iter().zip(ranges).map(row).collect()
}
