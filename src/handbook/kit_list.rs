//! Kit lists: what to fetch for one guide or several together, and how long it takes for several pieces.
//!
//! In: guides by their ids, and for how many pieces. Out: parts and consumables summed, tools merged, hazards, times.
//! The model of time: one pair of hands. Hands-on times add up, over guides and pieces; waiting goes on beside other work and beside
//! other waiting, so that only the longest is added.

use super::laying::{Laying, most_serious_first, safety};
use super::page::{Body, KitLine, KitList, KitTime, KitTimes, Link, Need, Needs, Page, SafetyNote, Sheet, SheetOf};
use super::{addresses, frame, guides};
use crate::model::Kind;
use crate::proof::Thing;
use crate::reckoning::quantity::{Decimal, Ratio, Unit};
use std::collections::BTreeMap;

/// For how many pieces the handbook's page says how long a job takes.
const PIECES: [u32; 4] = [1, 2, 5, 10];

/// A guide's needs and times.
struct Fetched {
    link: Link,
    needs: Needs,
    minutes: u32,
    waiting: u32,
    notes: Vec<SafetyNote>,
}

/// The kit list of guides as a sheet. Ids that are no job or checklist add nothing.
pub fn sheet(laying: &Laying<'_>, ids: &[&str], pieces: u32) -> Page {
    let fetched: Vec<Fetched> = ids.iter().filter_map(|id| fetched(laying, id)).collect();
    let titles: Vec<&str> = fetched.iter().map(|one| one.link.title.as_str()).collect();
    let title = titles.join(", ");
    let paper = laying.proofed.guides.handbook.as_ref().map(|(_, file)| file.paper).unwrap_or_default();
    let guide = fetched
        .first()
        .map_or_else(|| Link { title: String::new(), address: addresses::JOBS.to_owned() }, |first| first.link.clone());
    let of = SheetOf::Kit(Box::new(list(&fetched, pieces)));
    let sheet = Sheet { guide, paper, pdf: None, of };
    frame::page(addresses::FETCH, "kind-fetch", &title, Body::Sheet(Box::new(sheet)))
}

/// The page that says for every job and checklist what to fetch and how long it takes.
pub fn page(laying: &Laying<'_>) -> Page {
    let guides = &laying.proofed.guides;
    let jobs = guides.procedures.iter().map(|(_, guide)| guide.procedure.value.as_str());
    let checks = guides.checklists.iter().map(|(_, guide)| guide.checklist.value.as_str());
    let mut all: Vec<Fetched> = jobs.chain(checks).filter_map(|id| fetched(laying, id)).collect();
    all.sort_by_key(|one| (one.link.title.to_lowercase(), one.link.address.clone()));
    let rows = all.iter().map(|one| KitTimes {
        link: one.link.clone(),
        minutes: one.minutes,
        waiting: one.waiting,
        totals: PIECES.iter().map(|pieces| total(std::slice::from_ref(one), *pieces)).collect(),
        list: list(std::slice::from_ref(one), 1),
    });
    let body = super::page::Fetch { pieces: PIECES.to_vec(), rows: rows.collect() };
    frame::page(addresses::FETCH, "kind-fetch", "", Body::Fetch(Box::new(body)))
}

fn fetched(laying: &Laying<'_>, id: &str) -> Option<Fetched> {
    if let Some(guide) = laying.procedure(id) {
        let job = guides::procedure(laying, guide);
        let steps = job.steps.iter().flat_map(|step| step.safety.clone());
        let notes = most_serious_first(safety(&guide.safety).into_iter().chain(steps));
        let link = laying.link(Thing::Guide(Kind::Procedure), id);
        return Some(Fetched { link, needs: job.needs, minutes: job.minutes, waiting: job.waiting, notes });
    }
    let all = &laying.proofed.guides.checklists;
    let (_, guide) = all.iter().find(|(_, guide)| guide.checklist.value.as_str() == id)?;
    let check = guides::checklist(laying, guide);
    let link = laying.link(Thing::Guide(Kind::Checklist), id);
    Some(Fetched { link, needs: check.needs, minutes: check.minutes, waiting: 0, notes: check.safety })
}

fn list(fetched: &[Fetched], pieces: u32) -> KitList {
    let merged =
        |of: fn(&Needs) -> &Vec<Need>, times: u32| merged(fetched.iter().flat_map(|one| of(&one.needs)), times);
    KitList {
        pieces,
        parts: merged(|needs| &needs.parts, pieces),
        tools: merged(|needs| &needs.tools, 1),
        consumables: merged(|needs| &needs.consumables, pieces),
        guides: fetched
            .iter()
            .map(|one| KitTime { link: one.link.clone(), minutes: one.minutes, waiting: one.waiting })
            .collect(),
        minutes: hands_on(fetched, pieces),
        waiting: longest_wait(fetched),
        total: total(fetched, pieces),
        safety: most_serious_first(fetched.iter().flat_map(|one| one.notes.clone())),
    }
}

fn hands_on(fetched: &[Fetched], pieces: u32) -> u32 {
    fetched.iter().map(|one| one.minutes).fold(0, u32::saturating_add).saturating_mul(pieces)
}

fn longest_wait(fetched: &[Fetched]) -> u32 {
    fetched.iter().map(|one| one.waiting).max().unwrap_or(0)
}

fn total(fetched: &[Fetched], pieces: u32) -> u32 {
    hands_on(fetched, pieces).saturating_add(longest_wait(fetched))
}

/// The needs of all guides, each thing once, in the order in which they come up.
fn merged<'n>(needs: impl Iterator<Item = &'n Need>, times: u32) -> Vec<KitLine> {
    let mut order: Vec<&Need> = Vec::new();
    let mut amounts: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for need in needs {
        let address = need.link.address.as_str();
        if !amounts.contains_key(address) {
            order.push(need);
        }
        amounts.entry(address).or_default().extend(need.quantity.as_deref());
    }
    let line = |need: &Need| KitLine {
        link: need.link.clone(),
        quantity: amounts.get(need.link.address.as_str()).and_then(|amounts| summed(amounts, times)),
        hazards: need.hazards.clone(),
    };
    order.into_iter().map(line).collect()
}

/// An amount as a guide says it, if it can be counted: `about 10 ml`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Amount<'t> {
    about: bool,
    number: Ratio,
    unit: &'t str,
}

/// Units of amounts that are no bench measure.
const VOLUMES: [&str; 3] = ["ml", "cl", "l"];

impl<'t> Amount<'t> {
    fn read(text: &'t str) -> Option<Amount<'t>> {
        let (about, rest) = text.trim().strip_prefix("about ").map_or((false, text.trim()), |rest| (true, rest.trim()));
        let end = rest.find(|letter: char| !letter.is_ascii_digit() && letter != '.').unwrap_or(rest.len());
        let (figures, unit) = rest.split_at(end);
        let number = Decimal::plainly(figures)?.exact();
        let unit = unit.trim();
        let known = unit.is_empty() || VOLUMES.contains(&unit) || Unit::named(unit).is_ok();
        known.then_some(Amount { about, number, unit })
    }

    /// Both together; nothing if they have not the same unit, or are too much for anything at a bench.
    fn plus(self, other: Amount<'_>) -> Option<Amount<'t>> {
        let number = self.number.plus(other.number).filter(|_| self.unit == other.unit)?;
        Some(Amount { about: self.about || other.about, number, ..self })
    }

    /// So many times as much, in words.
    fn times(self, times: u32) -> Option<String> {
        let number = Decimal::shortest(self.number.times(Ratio::new(times.into(), 1)?)?)?;
        let about = if self.about { "about " } else { "" };
        Some(format!("{about}{} {}", number.plain(), self.unit).trim_end().to_owned())
    }
}

/// Amounts added up where they have the same unit; what cannot be counted stands as it was said, as often as it is needed.
fn summed(amounts: &[&str], times: u32) -> Option<String> {
    let mut sums: Vec<Amount<'_>> = Vec::new();
    let mut words: Vec<(&str, u32)> = Vec::new();
    for text in amounts {
        match Amount::read(text) {
            Some(amount) => match sums.iter_mut().find_map(|sum| Some((sum.plus(amount)?, sum))) {
                Some((both, sum)) => *sum = both,
                None => sums.push(amount),
            },
            None => match words.iter_mut().find(|(known, _)| known == text) {
                Some((_, often)) => *often += 1,
                None => words.push((text, 1)),
            },
        }
    }
    let counted = sums.into_iter().filter_map(|sum| sum.times(times));
    let said = words.into_iter().map(|(text, often)| match often.saturating_mul(times) {
        1 => text.to_owned(),
        often => format!("{often} \u{d7} {text}"),
    });
    let all: Vec<String> = counted.chain(said).collect();
    (!all.is_empty()).then(|| all.join(" + "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_with_the_same_unit_add_up() {
        assert_eq!(summed(&["10 cm", "25 cm"], 1).as_deref(), Some("35 cm"));
        assert_eq!(summed(&["about 10 ml", "2.5 ml"], 2).as_deref(), Some("about 25 ml"));
        assert_eq!(summed(&["1", "2"], 12).as_deref(), Some("36"));
        assert_eq!(summed(&["0.75 m", "0.5 m", "10 cm"], 2).as_deref(), Some("2.5 m + 20 cm"));
    }

    #[test]
    fn what_cannot_be_counted_is_said_as_often_as_it_is_needed() {
        assert_eq!(summed(&["1 pair"], 1).as_deref(), Some("1 pair"));
        assert_eq!(summed(&["1 pair", "1 pair"], 3).as_deref(), Some("6 \u{d7} 1 pair"));
        assert_eq!(summed(&["a strip", "10 cm"], 1).as_deref(), Some("10 cm + a strip"));
        assert_eq!(summed(&[], 5), None);
    }

    fn job(minutes: u32, waiting: u32) -> Fetched {
        let link = Link { title: String::new(), address: String::new() };
        let needs = Needs { parts: Vec::new(), tools: Vec::new(), consumables: Vec::new() };
        Fetched { link, needs, minutes, waiting, notes: Vec::new() }
    }

    #[test]
    fn hands_on_adds_up_and_waiting_overlaps() {
        // Three blades of 45 minutes that each set for eight hours: the first hour and a quarter of work comes for all, the night once.
        assert_eq!(total(&[job(45, 485)], 3), 3 * 45 + 485);
        assert_eq!(total(&[job(45, 485), job(10, 20)], 2), 2 * 55 + 485);
    }
}
