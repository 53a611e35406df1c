//! Everything that can be wrong with guides, and across them.
//!
//! In: what was read, and the typed guides. Out: [`Proofed`]: the guides with their index and references, and all findings of the run.
//! Leaves to others: how findings are drawn (`cli`). Promise: never stops at the first finding; prints nothing.

pub mod cases;
mod checks;
mod code;
mod drawing;
mod finding;
mod findings;
mod index;
pub mod network;
mod odds;
mod packs;
mod photo;
mod proposed;
pub mod shown;
pub mod sights;
mod walk;

pub use checks::pictures::kind as picture_kind;
pub use checks::references::Reference;
pub use checks::waivers::Accepted;
pub use checks::who::{Demand, Demands};
pub use code::{Code, Explained, Waivable};
pub use finding::{Finding, Severity, did_you_mean, listed, nearest};
pub use index::{Entry, Index, Thing, Wanted, reserved as is_device_name, why_no_id};
pub use packs::{Mend, Packs};
pub use walk::{GuideRef, guides as all_guides, pictures as all_pictures};

use crate::model::Guides;
use crate::source::{Flaw, Folder};
use cases::Case;
use network::{Circuits, Wired};
use sights::Sight;
use std::collections::{BTreeMap, BTreeSet};

/// Guides as proofed, with all that was found.
#[derive(Debug, Clone)]
pub struct Proofed {
    /// The guides.
    pub guides: Guides,
    /// What there is to point at.
    pub index: Index,
    /// What points at what.
    pub references: Vec<Reference>,
    /// The fault-finding guides as reckoned, by id.
    pub cases: BTreeMap<String, Case>,
    /// The circuits as networks, by id.
    pub circuits: BTreeMap<String, Wired>,
    /// The fault-finding guides that name a circuit as it sees them, by id.
    pub sights: BTreeMap<String, Sight>,
    /// Files that would give packs what they need.
    pub mends: Vec<Mend>,
    /// The pictures as they are shown, by the path of their file.
    pub pictures: BTreeMap<String, Vec<u8>>,
    /// The guides in other languages.
    pub languages: Vec<Spoken>,
    /// What was found, in the order of the places.
    pub findings: Vec<Finding>,
    /// What was found and accepted with a reason.
    pub accepted: Vec<Accepted>,
}

/// The guides with the words of another language.
#[derive(Debug, Clone)]
pub struct Spoken {
    /// The language, such as `fr`.
    pub language: String,
    /// The guides that have a translation, by id; the others are as in the handbook's own language.
    pub translated: BTreeSet<String>,
    /// The guides.
    pub proofed: Proofed,
}

impl Proofed {
    /// How many findings are errors.
    pub fn errors(&self) -> usize {
        self.findings.iter().filter(|finding| finding.severity() == Severity::Error).count()
    }

    /// How many findings are advice.
    pub fn advice(&self) -> usize {
        self.findings.len() - self.errors()
    }
}

/// Proofs a handbook.
pub fn check(folder: &Folder, guides: Guides, shape: Vec<Flaw>) -> Proofed {
    check_again(folder, guides, shape, None)
}

fn check_again(folder: &Folder, guides: Guides, shape: Vec<Flaw>, former: Option<&Proofed>) -> Proofed {
    let mut findings: Vec<Finding> = Vec::new();
    let flaws = folder.flaws.iter().cloned().chain(shape);
    findings.extend(flaws.map(findings::shape::from_flaw));
    let index = index::index(&guides, &mut findings);
    let packs = Packs::of(&guides, &folder.texts);
    packs::disagree(&packs, &mut findings);
    packs::at_the_top(&guides, &folder.texts, &mut findings);
    checks::names::check(folder, &guides, &mut findings);
    checks::unread::check(folder, &guides, &mut findings);
    checks::values::check(&guides, &mut findings);
    let (references, lacking) = checks::references::check(&guides, &index, &packs, &folder.texts, &mut findings);
    let mends = packs::needs(&packs, &lacking, &mut findings);
    checks::places::check(&guides, &index, &mut findings);
    checks::symptoms::check(&guides, &mut findings);
    checks::procedures::check(&guides, &mut findings);
    checks::learning::check(&guides, &mut findings);
    checks::limits::check(&guides, &folder.texts, &mut findings);
    checks::torques::check(&guides, &folder.texts, &mut findings);
    checks::handbook::check(&guides, &mut findings);
    let pictures = checks::pictures::check(&guides, &folder.others, &mut findings);
    checks::hazards::check(&guides, &folder.texts, &mut findings);
    checks::who::check(&guides, &mut findings);
    checks::reach::check(&guides, &index, &folder.texts, &references, &mut findings);
    let circuits = wired(&guides);
    let sights = sights::sights(&guides, &circuits, &mut findings);
    checks::circuits::check(&guides, &circuits, &sights, &mut findings);
    checks::idle::check(&guides, &circuits, &mut findings);
    let cases = cases::cases(&guides, &circuits, &sights, former.map(|former| &former.cases), &mut findings);
    let languages = checks::translations::check(folder, &guides, &pictures, &mut findings);
    checks::messages::check(folder, &guides, &mut findings);
    let (mut findings, accepted) = checks::waivers::apply(&guides, findings);
    findings.sort_by(|one, other| (one.place, one.code, &one.message).cmp(&(other.place, other.code, &other.message)));
    findings.dedup();
    let mut proofed = Proofed {
        guides,
        index,
        references,
        cases,
        circuits,
        sights,
        mends,
        pictures,
        languages: Vec::new(),
        findings,
        accepted,
    };
    proofed.languages = languages.into_iter().map(|language| spoken(language, &proofed)).collect();
    proofed
}

/// A language's guides with all that does not depend on words. Circuits do: their readings have titles.
fn spoken(language: checks::translations::Language, own: &Proofed) -> Spoken {
    let checks::translations::Language { language, filled, index, references, pictures } = language;
    let words_of_circuits =
        own.guides.circuits.iter().any(|(_, c)| filled.translated.contains(c.circuit.value.as_str()));
    let (circuits, sights) = match words_of_circuits {
        true => {
            let circuits = wired(&filled.guides);
            let sights = sights::sights(&filled.guides, &circuits, &mut Vec::new());
            (circuits, sights)
        }
        false => (own.circuits.clone(), own.sights.clone()),
    };
    let proofed = Proofed {
        guides: filled.guides,
        index,
        references,
        cases: own.cases.clone(),
        circuits,
        sights,
        mends: Vec::new(),
        pictures: own.pictures.clone().into_iter().chain(pictures).collect(),
        languages: Vec::new(),
        findings: own.findings.clone(),
        accepted: own.accepted.clone(),
    };
    Spoken { language, translated: filled.translated, proofed }
}

/// Every circuit as a network.
fn wired(guides: &Guides) -> BTreeMap<String, Wired> {
    let circuits: Circuits<'_> = guides.circuits.iter().map(|(_, c)| (c.circuit.value.as_str(), c)).collect();
    circuits.iter().map(|(id, circuit)| ((*id).to_owned(), network::network(circuit, &circuits))).collect()
}

/// Reads, fills and proofs what is in a folder.
pub fn proof(folder: &Folder) -> Proofed {
    let (guides, shape) = crate::model::fill(folder);
    check(folder, guides, shape)
}

/// Proofs what is in a folder once more. What was reckoned before is taken where a guide asks the same; nothing else is remembered,
/// so that the outcome is that of [`proof`].
pub fn proof_again(folder: &Folder, former: Option<&Proofed>) -> Proofed {
    let (guides, shape) = crate::model::fill(folder);
    check_again(folder, guides, shape, former)
}
