//! For those who run a juniors' evening: which jobs and questions need no adult.
//!
//! In: `who:` of the guides, and what they use and warn of (`proof::Demands`). A guide that does not say is taken by what it uses.

use super::laying::Laying;
use super::page::{Body, JuniorFault, JuniorJob, JuniorProbe, Juniors, Page};
use super::{addresses, frame};
use crate::model::{self, Kind, Who};
use crate::proof::cases::sound;
use crate::proof::{Demands, Thing};

/// The page.
pub fn page(laying: &Laying<'_>) -> Page {
    let guides = &laying.proofed.guides;
    let demands = Demands::of(guides);
    let mut jobs: Vec<JuniorJob> = guides.procedures.iter().map(|(_, guide)| job(laying, &demands, guide)).collect();
    jobs.sort_by_key(|job| (job.who, job.row.title.to_lowercase()));
    let faults = guides.symptoms.iter().map(|(_, guide)| fault(laying, &demands, guide)).collect();
    frame::page(addresses::JUNIORS, "kind-juniors", "", Body::Juniors(Juniors { jobs, faults }))
}

fn job(laying: &Laying<'_>, demands: &Demands<'_>, guide: &model::Procedure) -> JuniorJob {
    let who = may(guide.who.as_ref().map(|who| who.value), demands.job(guide).map(|demand| demand.who));
    JuniorJob { who, row: laying.job_row(guide) }
}

fn fault(laying: &Laying<'_>, demands: &Demands<'_>, guide: &model::Symptom) -> JuniorFault {
    let probes: Vec<JuniorProbe> = sound(&guide.probes)
        .into_iter()
        .map(|probe| {
            let asked = demands.probe(guide, probe).map(|demand| demand.who);
            JuniorProbe { who: may(probe.who.as_ref().map(|who| who.value), asked), ask: probe.ask.value.clone() }
        })
        .collect();
    JuniorFault {
        link: laying.link(Thing::Guide(Kind::Symptom), guide.symptom.value.as_str()),
        all: probes.iter().all(|probe| probe.who == Who::Anyone),
        probes,
    }
}

/// Who may do it: what the guide says, or more if what it uses asks for more.
fn may(said: Option<Who>, asked: Option<Who>) -> Who {
    said.into_iter().chain(asked).max().unwrap_or(Who::Anyone)
}
