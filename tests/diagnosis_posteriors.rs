//! What is believed on each decision page against a general-purpose library for Bayesian networks.

mod diagnosis_support;

use coquille::reckoning::diagnosis::*;
use diagnosis_support::{Numbers, Size, any_case, ask_python};
use serde_json::{Value, json};

/// Every belief of a tree with the answers that led to it.
fn beliefs(node: &Node, given: &mut Vec<(usize, usize)>, found: &mut Vec<(Vec<(usize, usize)>, Belief)>) {
    match node {
        Node::Ending(ending) => found.push((given.clone(), ending.belief.clone())),
        Node::Decision(decision) => {
            found.push((given.clone(), decision.belief.clone()));
            for branch in &decision.branches {
                given.push((decision.probe.0, branch.answer.0));
                beliefs(&branch.node, given, found);
                given.pop();
            }
        }
    }
}

fn suspects(case: &Case) -> Vec<(Suspect, u32)> {
    let causes = case.causes.iter().enumerate().map(|(i, c)| (Suspect::Cause(CauseIndex(i)), c.weight.0));
    causes.chain(case.rest.map(|rest| (Suspect::Rest, rest.weight.0))).collect()
}

/// How likely each answer of a probe is for a suspect, from the case alone.
fn answers(probe: &Probe, suspect: Suspect) -> Vec<f64> {
    let parts = |answer: &Answer| answer.named.iter().find(|n| n.suspect == suspect).map_or(0, |n| n.parts);
    let parts: Vec<u32> = probe.answers.iter().map(parts).collect();
    match parts.iter().sum::<u32>() {
        0 => (0..parts.len()).map(|answer| if answer == probe.otherwise.0 { 1.0 } else { 0.0 }).collect(),
        total => parts.iter().map(|part| f64::from(*part) / f64::from(total)).collect(),
    }
}

fn question(case: &Case, given: &[(usize, usize)]) -> Value {
    let suspects = suspects(case);
    let table = |probe: &Probe| suspects.iter().map(|(who, _)| answers(probe, *who)).collect::<Vec<_>>();
    json!({
        "weights": suspects.iter().map(|(_, weight)| weight).collect::<Vec<_>>(),
        "probes": case.probes.iter().map(table).collect::<Vec<_>>(),
        "evidence": given,
    })
}

#[test]
#[ignore = "needs python3 with pyagrum: run by tests/run"]
fn beliefs_are_the_posteriors_of_a_bayesian_network() {
    let python = std::env::var("COQUILLE_PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let mut numbers = Numbers(7);
    let (mut questions, mut mine) = (Vec::new(), Vec::new());
    while questions.len() < 2000 {
        let case = any_case(&mut numbers, Size { causes: 5, probes: 4, jobs: 0 });
        let ready = Diagnosis::of(case.clone()).expect("checked when it was made");
        let mut found = Vec::new();
        beliefs(&ready.as_written_tree().root, &mut Vec::new(), &mut found);
        for (given, belief) in found.into_iter().filter(|(_, belief)| !belief.possible.is_empty()) {
            questions.push(question(&case, &given));
            mine.push((suspects(&case), belief));
        }
    }
    let answers = ask_python(&python, "posteriors.py", &Value::Array(questions));
    let answers: Vec<Vec<f64>> = serde_json::from_value(answers).expect("a list of posteriors");
    for ((suspects, belief), posterior) in mine.iter().zip(&answers) {
        for ((who, _), theirs) in suspects.iter().zip(posterior) {
            let ours = belief.possible.iter().find(|(other, _)| other == who).map_or(0.0, |(_, share)| share.as_f64());
            assert!((ours - theirs).abs() < 1e-9, "{who:?}: {ours} here, {theirs} there");
        }
    }
}
