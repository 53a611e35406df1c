//! The reckoning for programs. `"format": 1` changes when a reader would break.
//!
//! Minutes and shares are numbers; beside an expected value stands its exact fraction, `…_exact`.

use super::sums::Sums;
use crate::reckoning::diagnosis::{Fraction, Hypothesis, Node, Priced, ProbeIndex, Sensitivity};
use serde_json::{Map, Value, json};

/// The whole report.
pub fn report(sums: &Sums<'_>) -> Value {
    let sought = sums.sought;
    let mut report = json!({
        "format": 1,
        "guide": sought.guide.symptom.value.as_str(),
        "title": sought.guide.title.value,
        "what_if": sums.what_if.as_ref().map(|asked| json!({
            "cause": sought.suspect(asked.suspect),
            "share": asked.share.as_f64(),
        })),
        "shares": shares(sums),
        "first_minutes": sums.first.as_f64(),
        "tree": tree(sums),
        "ways": ways(sums),
        "orders": { "found_by_step": found_by_step(sums) },
        "groups": groups(sums),
        "dead_probes": sums.ids(&sums.dead),
        "sensitivity": sums.sensitivity.as_ref().map(|moves| moves.iter().map(|m| sensitivity(sums, m)).collect::<Value>()),
        "approximate": !sought.case.diagnosis.approximated().is_empty(),
    });
    figure(&mut report, "listed_share", sums.listed_share());
    for (name, _, priced) in sums.orders() {
        report[name] = order(sums, priced);
    }
    report["quickest"]["gap"] = json!(sums.quickest.gap);
    figure(&mut report["quickest"], "at_least_minutes", sums.quickest.at_least);
    report
}

/// A number, and its exact fraction beside it.
fn figure(into: &mut Value, name: &str, exact: Fraction) {
    into[name] = json!(exact.as_f64());
    into[format!("{name}_exact")] = json!(exact.to_string());
}

fn shares(sums: &Sums<'_>) -> Value {
    let share = |(who, share): &(_, Fraction)| {
        let mut row = json!({
            "cause": sums.sought.suspect(*who),
            "title": sums.sought.title(*who),
            "lasting": sums.sought.remedy(*who),
        });
        figure(&mut row, "share", *share);
        row
    };
    sums.belief.possible.iter().map(share).collect()
}

/// Every way in which the case can behave: who, its share, and its answer to each question.
fn ways(sums: &Sums<'_>) -> Value {
    let all = sums.sought.case.diagnosis.hypotheses();
    let total: u64 = all.iter().map(|one| one.weight).sum();
    let way = |one: &Hypothesis| {
        let answers = one.answers.iter().enumerate().map(|(probe, answer)| {
            let probe = ProbeIndex(probe);
            (sums.sought.probe(probe).to_owned(), json!(sums.sought.answer(probe, *answer)))
        });
        let answers = Value::Object(answers.collect::<Map<_, _>>());
        let mut row = json!({ "cause": sums.sought.suspect(one.suspect), "answers": answers });
        figure(&mut row, "share", Fraction::new(one.weight, total));
        row
    };
    all.iter().map(way).collect()
}

fn order(sums: &Sums<'_>, priced: &Priced) -> Value {
    let breaks = priced.breaks.iter().map(|(early, late)| sums.ids(&[*early, *late]));
    let mut order = json!({
        "order": sums.ids(&priced.order),
        "most_minutes": priced.worst.as_f64(),
        "out_of_turn": breaks.collect::<Vec<_>>(),
    });
    figure(&mut order, "expected_minutes", priced.expected);
    figure(&mut order, "working_again_minutes", priced.to_working_again);
    order
}

fn tree(sums: &Sums<'_>) -> Value {
    let first = match &sums.tree.root {
        Node::Decision(decision) => Some(sums.sought.probe(decision.probe)),
        Node::Ending(_) => None,
    };
    let mut tree = json!({ "first": first, "most_minutes": sums.tree.worst.as_f64(), "gap": sums.tree.gap });
    figure(&mut tree, "expected_minutes", sums.tree.expected);
    figure(&mut tree, "at_least_minutes", sums.tree.at_least);
    figure(&mut tree, "working_again_minutes", sums.tree.to_working_again);
    tree
}

fn found_by_step(sums: &Sums<'_>) -> Value {
    let steps = |priced: &Priced| priced.found_by_step.iter().map(|share| share.as_f64()).collect::<Value>();
    let orders = sums.orders().into_iter().map(|(name, _, priced)| (name.to_owned(), steps(priced)));
    Value::Object(orders.collect::<Map<_, _>>())
}

fn groups(sums: &Sums<'_>) -> Value {
    let ids = |group: &crate::reckoning::diagnosis::Group| {
        group.suspects.iter().map(|who| sums.sought.suspect(*who)).collect::<Value>()
    };
    sums.groups.iter().map(ids).collect()
}

fn sensitivity(sums: &Sums<'_>, moved: &Sensitivity) -> Value {
    let change = |change: &Option<(Fraction, ProbeIndex)>| {
        change.map(|(share, first)| json!({ "share": share.as_f64(), "first": sums.sought.probe(first) }))
    };
    json!({
        "cause": sums.sought.suspect(moved.suspect),
        "share": moved.share.as_f64(),
        "below": change(&moved.below),
        "above": change(&moved.above),
    })
}
