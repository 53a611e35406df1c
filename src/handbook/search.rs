//! What the search finds: one entry a page or listed thing, with the words that people use for it.

use super::laying::{Laying, lines};
use super::page::{Body, Page};
use crate::model::prose::plain;
use crate::model::{Kind, Line, Many, Prose};
use crate::proof::Thing;
use crate::proof::cases::sound;
use serde::Serialize;

/// An entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Entry {
    /// What it is called.
    pub title: String,
    /// Where it is.
    pub address: String,
    /// Its kind: a message id.
    pub kind: &'static str,
    /// Other names.
    pub also: Vec<String>,
    /// What it says, in short.
    pub says: String,
    /// The item that it is about.
    pub about: String,
}

/// All entries, in the order of the pages, then the listed things.
pub fn entries(laying: &Laying<'_>, pages: &[Page]) -> Vec<Entry> {
    let pages = pages.iter().filter_map(|page| of_page(laying, page));
    pages.chain(of_stores(laying)).chain(of_limits(laying)).chain(of_words(laying)).collect()
}

fn of_page(laying: &Laying<'_>, page: &Page) -> Option<Entry> {
    let id = page.address.rsplit('/').next().unwrap_or("").trim_end_matches(".html");
    let (kind, says) = match &page.body {
        Body::Symptom(body) => {
            let causes: Vec<&str> = body.shares.iter().map(|row| row.title.as_str()).collect();
            (Some(Kind::Symptom), format!("{} {}", plain(&body.says), causes.join(" ")))
        }
        Body::Procedure(body) => (Some(Kind::Procedure), plain(&body.purpose)),
        Body::Checklist(body) => (Some(Kind::Checklist), plain(&body.purpose)),
        Body::Circuit(body) => (Some(Kind::Circuit), body.says.as_deref().map_or_else(String::new, plain)),
        Body::Way(body) => (Some(Kind::Learning), plain(&body.purpose)),
        Body::Stop(body) => (None, body.says.as_deref().map_or_else(String::new, plain)),
        Body::Practice(_) | Body::Kit(_) => (None, String::new()),
        // The handbook's own pages are called by their kind, and found by what they say of themselves.
        Body::Prints(_)
        | Body::Juniors(_)
        | Body::Sheets(_)
        | Body::Practices(_)
        | Body::Lamps(_)
        | Body::LampsOf(_) => (None, String::new()),
        Body::How(body) => (None, body.says.as_deref().map_or_else(String::new, plain)),
        _ => return None,
    };
    let also = kind.and_then(|kind| laying.directory.also.get(&(kind, id)));
    let also = also.map_or_else(Vec::new, |also| lines(also));
    let about = page.trail.first().map_or_else(String::new, |link| link.title.clone());
    let about = if about == page.title { String::new() } else { about };
    Some(Entry { title: page.title.clone(), address: page.address.clone(), kind: page.kind, also, says, about })
}

fn thing(
    laying: &Laying<'_>,
    thing: Thing,
    id: &str,
    kind: &'static str,
    also: &Many<Line>,
    says: Option<&Prose>,
) -> Entry {
    let link = laying.link(thing, id);
    let says = says.map_or_else(String::new, |says| plain(&says.value.0));
    Entry { title: link.title, address: link.address, kind, also: lines(also), says, about: String::new() }
}

fn of_stores(laying: &Laying<'_>) -> Vec<Entry> {
    let stores = laying.proofed.guides.stores.iter().map(|(_, stores)| stores);
    stores
        .flat_map(|stores| {
            let parts = sound(&stores.parts)
                .into_iter()
                .map(|p| thing(laying, Thing::Part, p.part.value.as_str(), "kind-part", &p.also, p.says.as_ref()));
            let tools = sound(&stores.tools)
                .into_iter()
                .map(|t| thing(laying, Thing::Tool, t.tool.value.as_str(), "kind-tool", &t.also, t.says.as_ref()));
            let consumables = sound(&stores.consumables).into_iter().map(|c| {
                thing(
                    laying,
                    Thing::Consumable,
                    c.consumable.value.as_str(),
                    "kind-consumable",
                    &c.also,
                    c.says.as_ref(),
                )
            });
            parts.chain(tools).chain(consumables).collect::<Vec<_>>()
        })
        .collect()
}

fn of_limits(laying: &Laying<'_>) -> Vec<Entry> {
    let lists = laying.proofed.guides.limits.iter().flat_map(|(_, list)| sound(&list.entries));
    lists
        .map(|limit| {
            thing(laying, Thing::Limit, limit.limit.value.as_str(), "kind-limit", &limit.also, limit.how.as_ref())
        })
        .collect()
}

fn of_words(laying: &Laying<'_>) -> Vec<Entry> {
    let lists = laying.proofed.guides.words.iter().flat_map(|(_, list)| sound(&list.entries));
    lists
        .map(|word| thing(laying, Thing::Word, word.word.value.as_str(), "kind-word", &word.also, Some(&word.says)))
        .collect()
}
