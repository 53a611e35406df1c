//! *About this edition*: what was proofed and what remains open, with sources.

use super::laying::Laying;
use super::page::{About, AcceptedFinding, Body, Link, OpenFinding, Page, Withdrawn};
use super::{addresses, frame, limits, origins};
use crate::model::{Kind, Shares, typed_code};
use crate::proof::cases::sound;
use crate::proof::{Finding, Thing};

/// The page. `code` is that of the whole handbook.
pub fn page(laying: &Laying<'_>, code: String) -> Page {
    let guides = &laying.proofed.guides;
    let by_shares = |shares: Shares| -> Vec<Link> {
        let these = guides.symptoms.iter().filter(|(_, guide)| guide.shares == shares);
        these.map(|(_, guide)| laying.link(Thing::Guide(Kind::Symptom), guide.symptom.value.as_str())).collect()
    };
    let mut sources: Vec<_> = guides.limits.iter().map(|(_, list)| limits::group(laying, list)).collect();
    sources.iter_mut().for_each(|group| group.rows.clear());
    let about = About {
        counts: counts(laying),
        code,
        open: laying.proofed.findings.iter().map(|finding| open(laying, finding)).collect(),
        accepted: accepted(laying),
        sources,
        estimated: by_shares(Shares::Estimated),
        counted: by_shares(Shares::Counted),
        packs: guides.packs.iter().map(|(_, pack)| origins::origin(pack)).collect(),
        withdrawn: withdrawn(laying),
    };
    frame::page(addresses::ABOUT, "kind-about", "", Body::About(about))
}

fn counts(laying: &Laying<'_>) -> Vec<(&'static str, usize)> {
    let guides = &laying.proofed.guides;
    vec![
        ("count-symptoms", guides.symptoms.len()),
        ("count-procedures", guides.procedures.len()),
        ("count-checklists", guides.checklists.len()),
        ("count-circuits", guides.circuits.len()),
        ("count-limits", guides.limits.iter().map(|(_, list)| sound(&list.entries).len()).sum()),
    ]
}

fn open(laying: &Laying<'_>, finding: &Finding) -> OpenFinding {
    let file = laying.texts.get(finding.place.file).map_or("", |text| text.name.as_str());
    OpenFinding {
        code: finding.code.as_str(),
        message: finding.message.clone(),
        help: finding.help.clone(),
        place: format!("{file}:{}", finding.place.line),
    }
}

fn accepted(laying: &Laying<'_>) -> Vec<AcceptedFinding> {
    let accepted = laying.proofed.accepted.iter();
    accepted.map(|a| AcceptedFinding { finding: open(laying, &a.finding), because: a.because.clone() }).collect()
}

/// What was withdrawn; a code that is none was found by `proof`.
pub fn withdrawn(laying: &Laying<'_>) -> Vec<Withdrawn> {
    let Some((_, file)) = &laying.proofed.guides.handbook else { return Vec::new() };
    let list = sound(&file.withdrawn).into_iter().map(|withdrawn| Withdrawn {
        code: typed_code(&withdrawn.code.value).unwrap_or_else(|| withdrawn.code.value.clone()),
        of: None,
        because: withdrawn.because.value.clone(),
        instead: laying.named_guide(withdrawn.instead.as_ref()),
    });
    list.collect()
}
