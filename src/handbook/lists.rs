//! The pages that list: limits, stores, words, jobs, sheets, every page.

use super::laying::{Laying, lines, markdown};
use super::page::{
    AllPages, AllRow, Body, JobGroup, Jobs, Letter, Limits, Link, Page, SheetGroup, Sheets, StoreGroup, StoreRow,
    Stores, WordRow, Words,
};
use super::search::{self, Entry};
use super::{addresses, frame, limits};
use crate::model::{Consumable, Kind, Line, Many, Named, Part, Prose, Signal, Tool, Who};
use crate::proof::Thing;
use crate::proof::cases::sound;
use std::collections::BTreeMap;

/// The titles of pages that no guide names are message ids; the render stage puts the words in.
fn own(address: &str, kind: &'static str, body: Body) -> Page {
    frame::page(address, kind, "", body)
}

/// All limits.
pub fn limits_page(laying: &Laying<'_>) -> Page {
    let lists = laying.proofed.guides.limits.iter();
    let groups = lists.map(|(_, list)| limits::group(laying, list)).collect();
    own(addresses::LIMITS, "kind-limits", Body::Limits(Limits { groups }))
}

/// All stores.
pub fn stores_page(laying: &Laying<'_>) -> Page {
    let stores = || laying.proofed.guides.stores.iter().map(|(_, stores)| stores);
    let parts = stores().flat_map(|s| sound(&s.parts)).map(|part| row(laying, Thing::Part, Stored::part(part)));
    let tools = stores().flat_map(|s| sound(&s.tools)).map(|tool| row(laying, Thing::Tool, Stored::tool(tool)));
    let consumables = stores()
        .flat_map(|s| sound(&s.consumables))
        .map(|item| row(laying, Thing::Consumable, Stored::consumable(item)));
    let groups = vec![
        StoreGroup { list: "parts", rows: by_title(parts.collect()) },
        StoreGroup { list: "tools", rows: by_title(tools.collect()) },
        StoreGroup { list: "consumables", rows: by_title(consumables.collect()) },
    ];
    own(addresses::STORES, "kind-stores", Body::Stores(Stores { groups }))
}

fn by_title(mut rows: Vec<StoreRow>) -> Vec<StoreRow> {
    rows.sort_by_key(|row| (row.title.to_lowercase(), row.anchor.clone()));
    rows
}

/// What the three lists of the stores have in common.
struct Stored<'s> {
    id: &'s Named,
    title: &'s Line,
    says: &'s Option<Prose>,
    also: &'s Many<Line>,
    substitute: &'s Option<Prose>,
    hazards: Vec<String>,
    signal: Option<Signal>,
    who: Option<Who>,
}

impl<'s> Stored<'s> {
    fn part(part: &'s Part) -> Self {
        let Part { part: id, title, says, also, substitute } = part;
        Stored { id, title, says, also, substitute, hazards: Vec::new(), signal: None, who: None }
    }

    fn tool(tool: &'s Tool) -> Self {
        let Tool { tool: id, title, says, also, substitute, who, uncertainty: _ } = tool;
        let who = who.as_ref().map(|who| who.value);
        Stored { id, title, says, also, substitute, hazards: Vec::new(), signal: None, who }
    }

    fn consumable(item: &'s Consumable) -> Self {
        let Consumable { consumable: id, title, says, also, substitute, hazards, signal, who } = item;
        let who = who.as_ref().map(|who| who.value);
        let signal = signal.as_ref().map(|signal| signal.value);
        Stored { id, title, says, also, substitute, hazards: lines(hazards), signal, who }
    }
}

fn row(laying: &Laying<'_>, thing: Thing, stored: Stored<'_>) -> StoreRow {
    let id = stored.id.value.as_str();
    let anchor = addresses::of(thing, id).rsplit('#').next().unwrap_or(id).to_owned();
    StoreRow {
        anchor,
        title: stored.title.value.clone(),
        also: lines(stored.also),
        says: markdown(stored.says.as_ref()),
        substitute: markdown(stored.substitute.as_ref()),
        hazards: stored.hazards,
        signal: stored.signal,
        who: stored.who,
        used_in: used_in(laying, thing, id),
    }
}

/// The guides that point at a thing.
pub fn used_in(laying: &Laying<'_>, thing: Thing, id: &str) -> Vec<Link> {
    let pointing = laying.directory.pointing.get(&(thing, id)).into_iter().flatten();
    let has_page = |kind: Kind| !matches!(kind, Kind::Handbook | Kind::Stores | Kind::Limits | Kind::Words);
    let pointing = pointing.filter(|(kind, _)| has_page(*kind));
    let mut links: Vec<Link> = pointing.map(|(kind, from)| laying.link(Thing::Guide(*kind), from)).collect();
    links.sort();
    links.dedup();
    links
}

/// All words.
pub fn words_page(laying: &Laying<'_>) -> Page {
    let lists = laying.proofed.guides.words.iter();
    let words = lists.flat_map(|(_, list)| sound(&list.entries));
    let mut rows: Vec<WordRow> = words
        .map(|word| {
            let id = word.word.value.as_str();
            WordRow {
                anchor: format!("word-{id}"),
                title: laying.link(Thing::Word, id).title,
                also: lines(&word.also),
                says: word.says.value.0.clone(),
                used_in: used_in(laying, Thing::Word, id),
            }
        })
        .collect();
    rows.sort_by_key(|row| (row.title.to_lowercase(), row.anchor.clone()));
    own(addresses::WORDS, "kind-words", Body::Words(Words { rows }))
}

/// All jobs and checklists, by item.
pub fn jobs_page(laying: &Laying<'_>) -> Page {
    let guides = &laying.proofed.guides;
    let mut items: Vec<Option<String>> =
        super::front::items(laying).into_iter().map(|item| Some(item.to_owned())).collect();
    items.push(None);
    let of = |kit: &Option<Named>, item: &Option<String>| kit.as_ref().map(|kit| &kit.value.0) == item.as_ref();
    let groups = items.iter().map(|item| JobGroup {
        title: item.as_ref().map_or_else(String::new, |item| laying.item_title(item)),
        jobs: guides.procedures.iter().filter(|(_, g)| of(&g.kit, item)).map(|(_, g)| laying.job_row(g)).collect(),
        checks: guides.checklists.iter().filter(|(_, g)| of(&g.kit, item)).map(|(_, g)| laying.check_row(g)).collect(),
    });
    let groups = groups.filter(|group| !group.jobs.is_empty() || !group.checks.is_empty()).collect();
    own(addresses::JOBS, "kind-jobs", Body::Jobs(Jobs { groups }))
}

/// All sheets among the pages, by item and by what they are for; those of no one item come first, since they are for a whole bag.
pub fn sheets_page(laying: &Laying<'_>, pages: &[Page]) -> Page {
    let sheets: BTreeMap<&str, Link> = pages
        .iter()
        .filter_map(|page| match &page.body {
            Body::Sheet(_) => Some((&*page.address, Link { title: page.title.clone(), address: page.address.clone() })),
            _ => None,
        })
        .collect();
    let guides = &laying.proofed.guides;
    let faults = guides.symptoms.iter().map(|(_, g)| (Kind::Symptom, g.symptom.value.as_str(), Some(&g.kit)));
    let jobs = guides.procedures.iter().map(|(_, g)| (Kind::Procedure, g.procedure.value.as_str(), g.kit.as_ref()));
    let checks = guides.checklists.iter().map(|(_, g)| (Kind::Checklist, g.checklist.value.as_str(), g.kit.as_ref()));
    let all: Vec<(Kind, Option<&str>, Link)> = checks
        .chain(jobs)
        .chain(faults)
        .filter_map(|(kind, id, kit)| {
            let sheet = sheets.get(addresses::sheet(id).as_str())?.clone();
            Some((kind, kit.map(|kit| kit.value.as_str()), sheet))
        })
        .collect();
    let items = std::iter::once(None).chain(super::front::items(laying).into_iter().map(Some));
    let of = |item: Option<&str>, kind: Kind| {
        let mut rows: Vec<Link> =
            all.iter().filter(|(of, kit, _)| (*of, *kit) == (kind, item)).map(|(.., sheet)| sheet.clone()).collect();
        rows.sort();
        rows
    };
    let groups = items.map(|item| SheetGroup {
        title: item.map_or_else(String::new, |item| laying.item_title(item)),
        checks: of(item, Kind::Checklist),
        jobs: of(item, Kind::Procedure),
        faults: of(item, Kind::Symptom),
    });
    let groups = groups.filter(|group| !(group.checks.is_empty() && group.jobs.is_empty() && group.faults.is_empty()));
    own(addresses::SHEETS, "kind-sheets", Body::Sheets(Sheets { groups: groups.collect() }))
}

/// Everything that people look for by name: pages, words, what is in the stores, limits, and the other names of all these. No questions and
/// endings, no lists of the program's own.
pub fn all_page(laying: &Laying<'_>, pages: &[Page]) -> Page {
    let mut letters: BTreeMap<String, Vec<AllRow>> = BTreeMap::new();
    for row in page_rows(pages).chain(search::entries(laying, pages).iter().flat_map(other_rows)) {
        let first = row.link.title.chars().find(|letter| letter.is_alphanumeric());
        let letter = first.map_or(String::new(), |letter| letter.to_uppercase().collect());
        letters.entry(letter).or_default().push(row);
    }
    let letters = letters.into_iter().map(|(letter, mut rows)| {
        rows.sort_by_key(|row| (row.link.title.to_lowercase(), row.see.clone(), row.link.address.clone()));
        rows.dedup();
        Letter { letter, rows }
    });
    own(addresses::ALL, "kind-all", Body::All(AllPages { letters: letters.collect() }))
}

fn page_rows(pages: &[Page]) -> impl Iterator<Item = AllRow> {
    let hidden = |page: &&Page| {
        matches!(
            page.body,
            Body::Question(_) | Body::Ending(_) | Body::Sheet(_) | Body::Practice(_) | Body::Cards(_) | Body::Stop(_)
        )
    };
    let named = pages.iter().filter(move |page| !page.title.is_empty() && !hidden(page));
    named.map(|page| AllRow {
        link: Link { title: page.title.clone(), address: page.address.clone() },
        kind: page.kind,
        see: None,
    })
}

/// The listed things that have no page of their own, and all other names.
fn other_rows(entry: &Entry) -> Vec<AllRow> {
    let row = |title: &str, see: Option<&str>| AllRow {
        link: Link { title: title.to_owned(), address: entry.address.clone() },
        kind: entry.kind,
        see: see.map(str::to_owned),
    };
    let itself = entry.address.contains('#').then(|| row(&entry.title, None));
    let others = entry.also.iter().map(|other| row(other, Some(&entry.title)));
    itself.into_iter().chain(others).collect()
}
