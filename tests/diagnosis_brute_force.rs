//! Trees and orders against a brute force in Python that was written from the model alone.

mod diagnosis_support;

use coquille::reckoning::diagnosis::*;
use diagnosis_support::{Numbers, Size, any_case, as_json, ask_python, own_looks};
use serde_json::Value;

/// Three orders to price: as written, and two shuffled ones (which may break `after`).
fn orders(numbers: &mut Numbers, ready: &Diagnosis) -> Vec<Vec<ProbeIndex>> {
    let written = ready.as_written_order();
    let mut orders = vec![written.clone()];
    for _ in 0..2 {
        let mut shuffled = written.clone();
        for place in (1..shuffled.len()).rev() {
            shuffled.swap(place, numbers.below(place + 1));
        }
        orders.push(shuffled);
    }
    orders
}

fn agree(case: &Case, orders: &[Vec<ProbeIndex>], second: &Value) {
    let ready = Diagnosis::of(case.clone()).expect("checked when it was made");
    let tree = ready.quickest_tree(Limits::default());
    assert_eq!(
        tree.expected.to_string(),
        second["tree"]["expected"],
        "tree of {case:#?}"
    );
    assert_eq!(
        tree.worst.0, second["tree"]["worst"],
        "worst case of the tree of {case:#?}"
    );
    assert_eq!(
        tree.to_working_again.to_string(),
        second["tree"]["working_again"],
        "working again: {case:#?}"
    );
    assert_eq!(
        (tree.gap, tree.at_least),
        (0.0, tree.expected),
        "small trees are proved"
    );
    for (order, second) in orders
        .iter()
        .zip(second["orders"].as_array().expect("a list of orders"))
    {
        let priced = ready.price(order);
        assert_eq!(
            priced.expected.to_string(),
            second["expected"],
            "{order:?} of {case:#?}"
        );
        assert_eq!(
            priced.worst.0, second["worst"],
            "worst case of {order:?} of {case:#?}"
        );
        assert_eq!(
            priced.to_working_again.to_string(),
            second["working_again"],
            "{order:?} of {case:#?}"
        );
        let found: Vec<String> = priced
            .found_by_step
            .iter()
            .map(ToString::to_string)
            .collect();
        assert_eq!(
            serde_json::json!(found),
            second["found"],
            "found by {order:?} of {case:#?}"
        );
    }
    unread(case, &ready, &tree, second);
    if let Some(least) = second["quickest_order"].as_str() {
        let quickest = ready.quickest_order(Limits::default());
        assert_eq!(
            quickest.priced.expected.to_string(),
            least,
            "{quickest:?} of {case:#?}"
        );
        assert!(quickest.priced.breaks.is_empty() && quickest.priced.expected >= tree.expected);
    }
}

/// *I cannot tell* at the first probe leads to the best tree without it.
fn unread(case: &Case, ready: &Diagnosis, tree: &Tree, second: &Value) {
    let Node::Decision(first) = &tree.root else {
        assert!(
            second["tree"]["first"].is_null(),
            "nothing to do: {case:#?}"
        );
        return;
    };
    assert_eq!(
        first.probe.0, second["tree"]["first"],
        "first probe of {case:#?}"
    );
    match ready.cannot_tell(first, Plan::Quickest(Limits::default())) {
        Node::Decision(next) => {
            assert_eq!(
                next.probe.0, second["unread"]["first"],
                "second best of {case:#?}"
            );
            let whole = next.to_go.as_f64() + next.closing_up.as_f64();
            let expected: Vec<f64> =
                second["unread"]["expected"]
                    .as_str()
                    .map_or_else(Vec::new, |text| {
                        text.split('/')
                            .map(|part| part.parse().expect("a whole number"))
                            .collect()
                    });
            let expected = expected.first().copied().unwrap_or(f64::NAN)
                / expected.get(1).copied().unwrap_or(1.0);
            assert!(
                (whole - expected).abs() < 1e-9,
                "{whole} is not {expected} in {case:#?}"
            );
        }
        Node::Ending(_) => assert!(
            second["unread"]["first"].is_null(),
            "nothing is left to do: {case:#?}"
        ),
    }
}

fn compare(seed: u64, count: usize, size: Size, permute: usize) {
    let mut numbers = Numbers(seed);
    let cases: Vec<Case> = (0..count).map(|_| any_case(&mut numbers, size)).collect();
    compare_all(&mut numbers, &cases, permute);
}

fn compare_all(numbers: &mut Numbers, cases: &[Case], permute: usize) {
    let mut asked = Vec::new();
    for case in cases {
        let ready = Diagnosis::of(case.clone()).expect("checked when it was made");
        asked.push((case, orders(numbers, &ready)));
    }
    let input = asked
        .iter()
        .map(|(case, orders)| as_json(case, orders, permute))
        .collect();
    let answers = ask_python("python3", "brute_force_diagnosis.py", &Value::Array(input));
    let answers = answers.as_array().expect("a list of results");
    assert_eq!(answers.len(), cases.len());
    for ((case, orders), second) in asked.iter().zip(answers) {
        agree(case, orders, second);
    }
}

/// Where every probe looks at a cause of its own the search leaves most of them out: that must change nothing, not even ties.
#[test]
#[ignore = "needs python3: run by tests/run"]
fn guides_of_looks_at_single_causes_cost_what_trying_everything_costs() {
    let cases: Vec<Case> = (0..400).map(looks_behind_any_jobs).collect();
    compare_all(&mut Numbers(3), &cases, 5);
}

/// Looks that need any of four jobs, so that the cluster rule does not hold.
fn looks_behind_any_jobs(seed: u64) -> Case {
    let mut case = own_looks(seed, 4, seed.is_multiple_of(4));
    let mut numbers = Numbers(seed + 1000);
    for probe in &mut case.probes {
        probe.needs = numbers.some(4, 35).into_iter().map(JobIndex).collect();
        // Few different figures, so that there are ties.
        probe.minutes = Minutes(10 * (1 + numbers.below(3)) as u64);
    }
    case.causes
        .iter_mut()
        .for_each(|cause| cause.weight = Weight(1 + numbers.below(3) as u32));
    case
}

#[test]
#[ignore = "needs python3: run by tests/run"]
fn three_thousand_small_cases_cost_what_trying_everything_costs() {
    compare(
        1,
        3000,
        Size {
            causes: 5,
            probes: 5,
            jobs: 3,
        },
        0,
    );
}

#[test]
#[ignore = "needs python3: run by tests/run"]
fn three_hundred_larger_cases_cost_what_trying_everything_costs() {
    compare(
        2,
        300,
        Size {
            causes: 8,
            probes: 7,
            jobs: 4,
        },
        0,
    );
}
