//! Torques: readable, of a thread and class that are known, and no more than the thread bears.

use crate::model::{Guides, ThreadState, Torque};
use crate::proof::finding::Finding;
use crate::proof::findings::{quantities, safety};
use crate::reckoning::quantity::{
    Condition, Dimension, Expect, Figure, Joint, Load, Material, PropertyClass, Ratio, System, Thread, Tolerance,
    TorqueVerdict,
};
use crate::source::{Texts, Tolerant};

/// Checks the torque of every step.
pub fn check(guides: &Guides, texts: &Texts, findings: &mut Vec<Finding>) {
    let steps = guides.procedures.iter().flat_map(|(_, guide)| guide.steps.iter().filter_map(Tolerant::sound));
    for torque in steps.filter_map(|step| step.torque.as_ref()) {
        let joint = joint(torque, findings);
        if let (Some(figure), Some(joint)) = (figure(torque, texts, findings), joint) {
            findings.extend(judged(torque, &joint, figure));
        }
    }
}

/// The torque with its tolerance; nothing when one of them cannot be read.
fn figure(torque: &Torque, texts: &Texts, findings: &mut Vec<Finding>) -> Option<Figure> {
    let wanted = Expect::of(Dimension::Torque);
    let figure = Figure::parse(&torque.torque.value, wanted)
        .map_err(|why| findings.push(quantities::unreadable(&torque.torque, &why, texts)));
    let tolerance = torque.tolerance.as_ref().map(|line| {
        Tolerance::parse(&line.value, wanted).map_err(|why| findings.push(quantities::unreadable(line, &why, texts)))
    });
    let figure = figure.ok()?;
    if figure.value.number.exact() <= Ratio::ZERO {
        findings.push(quantities::no_torque(&torque.torque));
        return None;
    }
    match tolerance {
        Some(tolerance) => Some(Figure { tolerance: Some(tolerance.ok()?), ..figure }),
        None => Some(figure),
    }
}

/// The joint, if thread and class were said; where `material` is said, there is nothing to hold the torque against.
fn joint(torque: &Torque, findings: &mut Vec<Finding>) -> Option<Joint> {
    if torque.material.is_some() {
        return None;
    }
    let thread = torque.thread.as_ref().map(|line| {
        let known = Thread::named(&line.value);
        findings.extend(known.is_none().then(|| quantities::unknown_thread(line)));
        known
    });
    let class = torque.property_class.as_ref().map(|line| {
        let known = PropertyClass::named(&line.value);
        findings.extend(known.is_none().then(|| quantities::unknown_class(line)));
        known
    });
    if let (Some(thread), None) = (&torque.thread, &torque.property_class) {
        findings.push(quantities::thread_without_class(thread));
    }
    let condition = match torque.state {
        ThreadState::Dry => Condition::Dry,
        ThreadState::Oiled => Condition::Oiled,
    };
    Some(Joint { thread: thread??, material: Material::Class(class??), condition })
}

/// What the torque does to the thread, and how high it may go.
fn judged(torque: &Torque, joint: &Joint, figure: Figure) -> Option<Finding> {
    let place = torque.torque.place;
    let most = || joint.highest_that_passes(figure).map(|most| most.show(System::Metric));
    match joint.judge(figure) {
        Ok(TorqueVerdict::OverProof(load)) => {
            let numbers = numbers(joint, &load, &format!("at least {}", pull(load.least)));
            Some(safety::torque_over_proof(place, &numbers, most().as_deref()))
        }
        Ok(TorqueVerdict::NearProof(load)) => {
            let numbers = numbers(joint, &load, &format!("about {}", pull(load.usual)));
            Some(safety::torque_near_proof(place, &numbers, most().as_deref()))
        }
        Ok(TorqueVerdict::Bears(_) | TorqueVerdict::NotJudged) | Err(_) => None,
    }
}

fn numbers(joint: &Joint, load: &Load, pulls: &str) -> String {
    let class = match joint.material {
        Material::Class(class) => class.name,
        Material::Other => "",
    };
    format!("it pulls with {pulls}, and {} of class {class} bears {}", joint.thread.name, pull(load.proof))
}

fn pull(force: crate::reckoning::quantity::Quantity) -> String {
    force.show(System::Metric)
}
