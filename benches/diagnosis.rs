//! How long orders and trees take, as a report: nothing here fails for being slow.
//!
//! The guides are made like real ones: two thirds of the probes look at one cause, the others part many; minutes from half a minute to
//! twenty, shares falling off as 1/k. `COQUILLE_PYTHON` names a Python with OR-Tools for the comparison; without it that part is left out.

#![allow(clippy::print_stdout, reason = "a report is printed")]

use coquille::reckoning::diagnosis::*;
use std::time::{Duration, Instant};

fn main() {
    trees(16, 16, 5, 100_000);
    trees(20, 20, 5, 100_000);
    trees(32, 32, 6, 100_000);
    trees(60, 60, 6, 10_000);
    trees(60, 60, 6, 60_000);
    for (looks_at, jobs) in [(8, 3), (10, 4), (12, 4), (16, 6), (20, 6), (24, 6)] {
        orders(looks_at, jobs);
    }
}

/// Whole numbers that look random and never change (SplitMix64).
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) % bound.max(1) as u64) as usize
    }
}

fn guide(numbers: &mut Numbers, causes: usize, probes: usize, jobs: usize) -> Case {
    let mut case = looks(numbers, causes, jobs);
    case.probes.truncate(probes * 2 / 3);
    while case.probes.len() < probes {
        let named = (0..causes)
            .filter(|_| numbers.below(100) < 40)
            .map(Named::cause)
            .collect();
        let needs = needs(numbers, jobs);
        case.probes.push(probe(numbers, named, needs));
    }
    case
}

/// A look at each cause.
fn looks(numbers: &mut Numbers, causes: usize, jobs: usize) -> Case {
    let mut case = Case {
        remedies: vec![Remedy::default(); causes],
        ..Case::default()
    };
    for job in 0..jobs {
        let (open, close) = (
            Minutes(5 + numbers.below(50) as u64),
            Minutes(5 + numbers.below(30) as u64),
        );
        let needs = if job % 3 == 2 {
            vec![JobIndex(job - 1)]
        } else {
            Vec::new()
        };
        case.jobs.push(Job { open, close, needs });
    }
    for cause in 0..causes {
        let place = numbers.below(causes);
        let weight = Weight(3000 / (place as u32 + 2) + 1);
        case.causes.push(Cause {
            weight,
            remedy: RemedyIndex(cause),
        });
        let needs = needs(numbers, jobs);
        case.probes
            .push(probe(numbers, vec![Named::cause(cause)], needs));
    }
    case.rest = Some(Rest {
        weight: Weight(400),
        remedy: None,
    });
    case
}

fn needs(numbers: &mut Numbers, jobs: usize) -> Vec<JobIndex> {
    let count = if jobs == 0 {
        0
    } else {
        [0, 1, 1, 2][numbers.below(4)]
    };
    (0..count).map(|_| JobIndex(numbers.below(jobs))).collect()
}

fn probe(numbers: &mut Numbers, named: Vec<Named>, needs: Vec<JobIndex>) -> Probe {
    let minutes = Minutes([5, 10, 10, 20, 20, 30, 50, 80, 120, 200][numbers.below(10)]);
    let answers = vec![Answer { named }, Answer::default()];
    Probe {
        minutes,
        needs,
        shut: Vec::new(),
        after: Vec::new(),
        answers,
        otherwise: AnswerIndex(1),
        works_now: None,
    }
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, Duration) {
    let start = Instant::now();
    let made = work();
    (made, start.elapsed())
}

fn trees(causes: usize, probes: usize, jobs: usize, states: usize) {
    let mut line = format!("tree {causes} x {probes}, {jobs} jobs, {states} states at most:");
    for seed in 1..=6 {
        let ready = Diagnosis::of(guide(&mut Numbers(seed), causes, probes, jobs))
            .expect("the guide is sound");
        let (tree, time) = timed(|| ready.quickest_tree(Limits { states }));
        line += &format!("  {:.0} ms {} st", time.as_secs_f64() * 1e3, tree.states);
        if tree.gap > 0.0 {
            line += &format!(" gap {:.1} %", tree.gap * 100.0);
        }
    }
    println!("{line}");
}

/// Tells the same model to CP-SAT: minutes and weights of jobs and looks, and what each needs.
fn as_json(case: &Case) -> serde_json::Value {
    let places = |jobs: &[JobIndex]| jobs.iter().map(|job| job.0).collect::<Vec<_>>();
    let job =
        |j: &Job| serde_json::json!({"minutes": j.open.0 + j.close.0, "needs": places(&j.needs)});
    let look = |(p, c): (&Probe, &Cause)| serde_json::json!({"minutes": p.minutes.0, "needs": places(&p.needs), "weight": c.weight.0});
    serde_json::json!({
        "jobs": case.jobs.iter().map(job).collect::<Vec<_>>(),
        "looks": case.probes.iter().zip(&case.causes).map(look).collect::<Vec<_>>(),
        "rest": case.rest.map_or(0, |rest| rest.weight.0),
        "seconds": 30,
    })
}

fn orders(looks_at: usize, jobs: usize) {
    let case = looks(&mut Numbers(11), looks_at, jobs);
    let model = as_json(&case);
    let ready = Diagnosis::of(case).expect("the guide is sound");
    let (order, time) = timed(|| ready.quickest_order(Limits::default()));
    let mut line = format!(
        "order of {looks_at} looks, {jobs} jobs: {} minutes by {:?} in {:.2} ms",
        order.priced.expected,
        order.found_by,
        time.as_secs_f64() * 1e3
    );
    if let Ok(python) = std::env::var("COQUILLE_PYTHON") {
        let other = ask(&python, &model);
        let ratio = other["seconds"].as_f64().unwrap_or(0.0) / time.as_secs_f64();
        line += &format!(
            "; CP-SAT {} minutes, {}, {} s: {ratio:.0} times as long",
            other["minutes"], other["status"], other["seconds"]
        );
    }
    println!("{line}");
}

fn ask(python: &str, model: &serde_json::Value) -> serde_json::Value {
    let script =
        std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/cp_sat_order.py");
    let output = std::process::Command::new(python)
        .arg(script)
        .arg(model.to_string())
        .output();
    let output = output.expect("COQUILLE_PYTHON names a Python");
    serde_json::from_slice(&output.stdout)
        .expect("the script writes JSON; does this Python have OR-Tools?")
}
