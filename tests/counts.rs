//! The ranges of counted shares against a general-purpose library of statistics.

mod diagnosis_support;

use coquille::reckoning::counts::ranges;
use diagnosis_support::{Numbers, ask_python};
use serde_json::json;

#[test]
#[ignore = "needs python3 with scipy: run by tests/run"]
fn ranges_are_the_percentiles_of_beta_distributions() {
    let mut numbers = Numbers(11);
    let mut cases: Vec<Vec<u32>> = vec![vec![0, 1], vec![0, 0, 0], vec![5, 5], vec![1, 2000, 40], vec![4000, 0]];
    for size in 2..40 {
        for most in [3, 30, 300] {
            cases.push((0..size).map(|_| u32::try_from(numbers.below(most)).expect("a small number")).collect());
        }
    }
    let python = std::env::var("COQUILLE_PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let answer = ask_python(&python, "beta_ranges.py", &json!(cases));
    for (case, theirs) in cases.iter().zip(answer.as_array().expect("a list")) {
        for (mine, theirs) in ranges(case).iter().zip(theirs.as_array().expect("a list")) {
            for (mine, theirs) in [(mine.low, &theirs[0]), (mine.high, &theirs[1])] {
                let theirs = theirs.as_f64().expect("a number");
                assert!((mine - theirs).abs() < 1e-9, "{case:?}: {mine} and {theirs}");
            }
        }
    }
}
