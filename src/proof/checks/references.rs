//! Everything that points at something must point at something that is there, and of the kind that fits.
//!
//! Out: the findings, and the list of references that holds: what links to what.

use crate::model::Guides;
use crate::model::prose::{Link, LinkTo, links, raw_html};
use crate::model::{Kind, Named, Prose};
use crate::proof::finding::Finding;
use crate::proof::findings::{ids, prose};
use crate::proof::index::{Index, Thing, Wanted, why_no_id};
use crate::proof::packs::{Lacking, Packs, is_left_to_the_club};
use crate::proof::walk::{GuideRef, Leaf, walk};
use crate::source::{Place, Texts, Tolerant};
use std::collections::BTreeMap;

/// A reference from a guide to a thing.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Reference {
    /// The guide that points.
    pub from: (Kind, String),
    /// What it points at.
    pub to: (Thing, String),
}

/// Checks all references; what packs need that is not here is no finding yet.
pub fn check(
    guides: &Guides,
    index: &Index,
    packs: &Packs<'_>,
    texts: &Texts,
    findings: &mut Vec<Finding>,
) -> (Vec<Reference>, Lacking) {
    let mut checking = Checking { index, packs, texts, findings, references: Vec::new(), lacking: Lacking::new() };
    walk(guides, &mut |me, leaf| match leaf {
        Leaf::Points(wanted, named) => checking.points(me, wanted, named),
        Leaf::Prose(text) => checking.prose(me, text),
        _ => {}
    });
    checking.first_answers(guides);
    let Checking { mut references, lacking, .. } = checking;
    references.sort();
    references.dedup();
    (references, lacking)
}

struct Checking<'c> {
    index: &'c Index,
    packs: &'c Packs<'c>,
    texts: &'c Texts,
    findings: &'c mut Vec<Finding>,
    references: Vec<Reference>,
    lacking: Lacking,
}

impl Checking<'_> {
    fn points(&mut self, me: GuideRef<'_>, wanted: Wanted, named: &Named) {
        match self.found(wanted, named) {
            Ok(Some(thing)) => self.note(me, thing, named.value.as_str()),
            Ok(None) => {}
            Err(_) if self.lacks(wanted, named.value.as_str(), named.place) => {}
            Err(finding) => self.findings.push(*finding),
        }
    }

    /// What is pointed at; nothing when it is there but could not be read.
    fn found(&self, wanted: Wanted, named: &Named) -> Result<Option<Thing>, Box<Finding>> {
        let id = named.value.as_str();
        let fitting = match wanted {
            Wanted::One(thing) => self.index.get(thing, id).map(|_| thing),
            Wanted::AnyGuide => {
                self.index.guide(id).map(|(kind, _)| Thing::Guide(kind)).filter(|thing| wanted.takes(*thing))
            }
        };
        let unread = wanted == Wanted::One(Thing::Item) && !self.index.knows_kit();
        if fitting.is_some() || unread || self.index.is_broken(id) {
            return Ok(fitting);
        }
        Err(Box::new(match self.index.anything(id) {
            Some((other, entry)) => ids::wrong_kind(named, wanted, &Wanted::One(other).words(), entry.named.place),
            None => ids::unknown_reference(named, wanted, self.index.ids(wanted)),
        }))
    }

    /// Whether a pack asks for something that nobody has: noted for the pack's one finding.
    fn lacks(&mut self, wanted: Wanted, id: &str, place: Place) -> bool {
        let Wanted::One(thing) = wanted else { return false };
        let Some(pack) = self.packs.of_file(place.file).filter(|_| is_left_to_the_club(thing)) else { return false };
        let free = self.index.anything(id).is_none() && why_no_id(id).is_none();
        if free {
            let things = self.lacking.entry(pack.pack.value.0.clone()).or_default();
            things.entry((thing, id.to_owned())).or_insert(place);
        }
        free
    }

    fn note(&mut self, me: GuideRef<'_>, thing: Thing, id: &str) {
        self.references.push(Reference { from: (me.kind, me.id.value.0.clone()), to: (thing, id.to_owned()) });
    }

    fn prose(&mut self, me: GuideRef<'_>, text: &Prose) {
        let mut seen = BTreeMap::<String, usize>::new();
        for link in links(&text.value.0) {
            let place = self.counted(text.place, &link.written, &mut seen);
            self.link(me, &link, place);
        }
        for html in raw_html(&text.value.0) {
            let place = self.counted(text.place, &html, &mut seen);
            self.findings.push(prose::raw_html(place, &html));
        }
    }

    /// The place of a part of a text; the same words again are looked for behind the first.
    fn counted(&self, place: Place, part: &str, seen: &mut BTreeMap<String, usize>) -> Place {
        let from = seen.entry(part.to_owned()).or_default();
        let found = self.texts.within_from(place, part, *from);
        *from = found.map_or(*from, |(_, after)| after);
        found.map_or(place, |(place, _)| place)
    }

    fn link(&mut self, me: GuideRef<'_>, link: &Link, place: Place) {
        match &link.to {
            LinkTo::Outside(_) => {}
            LinkTo::Refused(address) => self.findings.push(prose::refused_link(place, address)),
            LinkTo::Short(kind, id) => {
                let thing = Thing::from(*kind);
                if self.index.get(thing, id).is_some() {
                    self.note(me, thing, id);
                } else if !self.index.is_broken(id) && !self.lacks(Wanted::One(thing), id, place) {
                    let known = self.index.ids(Wanted::One(thing));
                    self.findings.push(prose::dead_link(place, &link.written, id, known));
                }
            }
        }
    }

    /// Answers to isolating steps say `go on`, or name a guide.
    fn first_answers(&mut self, guides: &Guides) {
        for (file, guide) in &guides.symptoms {
            let me = GuideRef { kind: Kind::Symptom, id: &guide.symptom, file: *file };
            let answers = guide.first.iter().filter_map(Tolerant::sound).flat_map(|first| &first.answers);
            for answer in answers.filter_map(Tolerant::sound).filter(|answer| answer.then.value != "go on") {
                let named = Named { value: crate::model::Id(answer.then.value.clone()), place: answer.then.place };
                self.points(me, Wanted::AnyGuide, &named);
            }
        }
    }
}
