//! What every page's making needs at hand: the proofed guides and how to find things in them.

use super::addresses;
use super::directory::Directory;
use super::page::{
    Check, InHundred, JobRow, LampShown, LimitRow, Link, Need, Needs, Picture, Rail, RailPlace, Remedy, SafetyNote,
    SymptomRow, Worded,
};
use super::{limits, numbers};
use crate::model::{self, Id, Kind, Line, Many, Named, Prose, Safety};
use crate::proof::cases::{Case, sound, waiting};
use crate::proof::{Proofed, Thing};
use crate::source::{Folder, Texts, Tolerant};
use std::collections::BTreeSet;

/// What pages are made from.
#[derive(Clone, Copy)]
pub struct Laying<'a> {
    /// The guides.
    pub proofed: &'a Proofed,
    /// Their texts.
    pub texts: &'a Texts,
    /// Where to find things in the guides.
    pub directory: &'a Directory<'a>,
    /// Which units come first.
    pub units: model::Units,
    /// The guides that get pages, by id; all of them where none is named. Lists name the others all the same.
    pub only: Option<&'a BTreeSet<String>>,
}

impl<'a> Laying<'a> {
    /// What pages are made from; `only` as in [`Laying::only`].
    pub fn of(
        proofed: &'a Proofed,
        folder: &'a Folder,
        directory: &'a Directory<'a>,
        only: Option<&'a BTreeSet<String>>,
    ) -> Laying<'a> {
        let units = proofed.guides.handbook.as_ref().map_or(model::Units::Metric, |(_, file)| file.units);
        Laying { proofed, texts: &folder.texts, directory, units, only }
    }

    /// Whether a guide gets pages.
    pub fn lays(&self, guide: &Named) -> bool {
        self.only.is_none_or(|only| only.contains(guide.value.as_str()))
    }

    /// The words and address of a thing.
    pub fn link(&self, thing: Thing, id: &str) -> Link {
        let title =
            self.proofed.index.get(thing, id).map_or_else(|| Id(id.to_owned()).spoken(), |entry| entry.title.clone());
        Link { title, address: addresses::of(thing, id) }
    }

    /// The words and address of a guide of any kind.
    pub fn guide_link(&self, id: &str) -> Option<Link> {
        let (kind, entry) = self.proofed.index.guide(id)?;
        Some(Link { title: entry.title.clone(), address: addresses::guide(kind, id) })
    }

    /// The words and address of a guide that something names.
    pub fn named_guide(&self, named: Option<&Named>) -> Option<Link> {
        self.guide_link(named?.value.as_str())
    }

    /// The job with this id.
    pub fn procedure(&self, id: &str) -> Option<&'a model::Procedure> {
        self.directory.procedures.get(id).copied()
    }

    /// The reckoning of a fault-finding guide.
    pub fn case(&self, guide: &model::Symptom) -> Option<&'a Case> {
        self.proofed.cases.get(guide.symptom.value.as_str())
    }

    /// A limit as a row.
    pub fn limit(&self, id: &str) -> Option<LimitRow> {
        let (list, limit) = self.directory.limits.get(id)?;
        Some(limits::row(self, list, limit))
    }

    /// The title of an item of kit.
    pub fn item_title(&self, item: &str) -> String {
        self.link(Thing::Item, item).title
    }

    /// The rail of an item, with each place as `state` says.
    pub fn rail(&self, item: &str, state: impl Fn(&str) -> (&'static str, Option<InHundred>, Option<String>)) -> Rail {
        let places = self.proofed.index.places(item);
        let places: Vec<RailPlace> = places
            .into_iter()
            .map(|place| {
                let (state, share, address) = state(place);
                RailPlace { place: place.to_owned(), title: place.to_owned(), state, share, address }
            })
            .collect();
        let shares = places.iter().any(|place| place.share.is_some());
        Rail { item: item.to_owned(), title: self.item_title(item), places, shares }
    }

    /// The rail with one place marked, for a guide that is about one.
    pub fn rail_at(&self, kit: Option<&Named>, here: Option<&Named>) -> Option<Rail> {
        let item = kit?.value.as_str();
        let here = here.map(|named| named.value.as_str());
        let state = |place: &str| if Some(place) == here { "here" } else { "plain" };
        let rail = self.rail(item, |place| (state(place), None, Some(super::places::address(item, place))));
        (!rail.places.is_empty()).then_some(rail)
    }

    /// A picture by its id.
    pub fn picture(&self, named: Option<&Named>) -> Option<Picture> {
        let picture = self.directory.pictures.get(named?.value.as_str())?;
        Some(Picture {
            address: addresses::picture(&picture.file.value),
            alt: picture.alt.as_ref().map_or_else(String::new, |alt| alt.value.clone()),
            caption: markdown(picture.caption.as_ref()),
        })
    }

    /// What to lay out.
    pub fn needs(&self, needs: &model::Needs) -> Needs {
        Needs {
            parts: self.need_list(Thing::Part, &needs.parts),
            tools: self.need_list(Thing::Tool, &needs.tools),
            consumables: self.need_list(Thing::Consumable, &needs.consumables),
        }
    }

    fn need_list(&self, thing: Thing, needs: &[Tolerant<model::Need>]) -> Vec<Need> {
        let needs = sound(needs).into_iter().map(|need| Need {
            link: self.link(thing, need.id.value.as_str()),
            quantity: need.quantity.as_ref().map(|quantity| quantity.value.clone()),
            note: markdown(need.note.as_ref()),
            hazards: self.hazards(need.id.value.as_str()),
        });
        needs.collect()
    }

    fn hazards(&self, id: &str) -> Vec<String> {
        self.directory.consumables.get(id).map_or_else(Vec::new, |consumable| lines(&consumable.hazards))
    }

    /// What proves a job done.
    pub fn checks(&self, guide: &model::Procedure) -> Vec<Check> {
        let checks = sound(&guide.prove).into_iter().enumerate().map(|(index, check)| Check {
            id: format!("{}-prove-{}", guide.procedure.value, index + 1),
            what: check.full.as_ref().or(check.short.as_ref()).map(|full| worded(full, check.short.as_ref())),
            read: check.read.as_ref().map(|read| read.value.clone()),
            limit: check.limit.as_ref().and_then(|limit| self.limit(limit.value.as_str())),
        });
        checks.collect()
    }

    /// A remedy.
    pub fn remedy(&self, id: &str) -> Remedy {
        let job = self.procedure(id);
        Remedy {
            link: self.link(Thing::Guide(Kind::Procedure), id),
            minutes: job.map_or(0, |job| numbers::whole(numbers::told(&job.hands_on))),
            waiting: job.map_or(0, |job| numbers::whole(waiting(job))),
            holds: job.and_then(|job| job.holds.as_ref()).map(|holds| holds.value.clone()),
            prove: job.map_or_else(Vec::new, |job| self.checks(job)),
        }
    }

    /// A job in a list.
    pub fn job_row(&self, guide: &model::Procedure) -> JobRow {
        let link = self.link(Thing::Guide(Kind::Procedure), guide.procedure.value.as_str());
        JobRow {
            title: link.title,
            address: link.address,
            minutes: numbers::whole(numbers::told(&guide.hands_on)),
            waiting: numbers::whole(waiting(guide)),
            stop_gap: guide.holds.is_some(),
            items: 0,
        }
    }

    /// A checklist in a list.
    pub fn check_row(&self, guide: &model::Checklist) -> JobRow {
        let link = self.link(Thing::Guide(Kind::Checklist), guide.checklist.value.as_str());
        let minutes = numbers::whole(numbers::told(&guide.minutes));
        JobRow {
            title: link.title,
            address: link.address,
            minutes,
            waiting: 0,
            stop_gap: false,
            items: sound(&guide.items).len(),
        }
    }

    /// A symptom in a list, with the whole minutes that its questions take on average.
    pub fn symptom_row(&self, guide: &model::Symptom, minutes: u32) -> SymptomRow {
        SymptomRow {
            title: guide.title.value.clone(),
            address: addresses::guide(Kind::Symptom, guide.symptom.value.as_str()),
            kit: self.item_title(guide.kit.value.as_str()),
            seen_on: seen_on(guide.seen_on.value),
            lamps: lamps(guide),
            causes: sound(&guide.causes).len(),
            minutes,
        }
    }
}

/// Words in two lengths.
pub fn worded(full: &Prose, short: Option<&Prose>) -> Worded {
    Worded { full: full.value.0.clone(), short: markdown(short) }
}

/// Words in two lengths, of which either may be missing.
pub fn maybe_worded(full: Option<&Prose>, short: Option<&Prose>) -> Option<Worded> {
    match (full, short) {
        (Some(full), short) => Some(worded(full, short)),
        (None, Some(short)) => Some(worded(short, None)),
        (None, None) => None,
    }
}

/// Markdown that may be missing.
pub fn markdown(text: Option<&Prose>) -> Option<String> {
    text.map(|text| text.value.0.clone())
}

/// Lines as plain text.
pub fn lines(lines: &Many<Line>) -> Vec<String> {
    lines.iter().map(|line| line.value.clone()).collect()
}

/// Safety notes, the most serious first.
pub fn safety<'s>(notes: impl IntoIterator<Item = &'s Tolerant<Safety>>) -> Vec<SafetyNote> {
    let notes = notes.into_iter().filter_map(Tolerant::sound).filter_map(Safety::note);
    most_serious_first(notes.map(|(signal, says)| SafetyNote { signal, says: says.value.0.clone() }))
}

/// The same of notes that are made already: each once beside its like.
pub fn most_serious_first(notes: impl Iterator<Item = SafetyNote>) -> Vec<SafetyNote> {
    let mut notes: Vec<SafetyNote> = notes.collect();
    notes.sort_by_key(|note| note.signal);
    notes.dedup();
    notes
}

/// On what a symptom is seen: a message id.
pub fn seen_on(seen: model::SeenOn) -> &'static str {
    match seen {
        model::SeenOn::Tester => "seen-on-tester",
        model::SeenOn::Apparatus => "seen-on-apparatus",
        model::SeenOn::Meter => "seen-on-meter",
        model::SeenOn::EyeAndHand => "seen-on-eye-and-hand",
    }
}

/// The light of a lamp of the apparatus, by the last word of its id: each side has its own `red-white` and `green-white`.
pub fn light_of(reading: &str) -> Option<&'static str> {
    match reading.rsplit('-').next()? {
        "white" => Some("white"),
        "coloured" => Some("coloured"),
        "yellow" | "orange" => Some("yellow"),
        _ => None,
    }
}

/// What the lamps of a symptom do.
pub fn lamps(guide: &model::Symptom) -> Vec<LampShown> {
    let mut shown = Vec::new();
    for lamp in sound(&guide.lamps) {
        let light = lamp.reading.as_ref().and_then(|reading| light_of(reading.value.as_str()));
        let rest = lamp.at_rest.as_ref().map(|state| ("at-rest", None, state.value));
        let pressed = lamp.pressed.as_ref().map(|state| ("pressed", None, state.value));
        let other = lamp.when.as_ref().zip(lamp.shows.as_ref());
        let other = other.map(|(when, state)| ("in-position", Some(when.value.spoken()), state.value));
        let all = [rest, pressed, other].into_iter().flatten();
        shown.extend(all.map(|(when, position, state)| LampShown { when, position, state, light }));
    }
    shown
}
