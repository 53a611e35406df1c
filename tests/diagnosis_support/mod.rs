//! Random small cases, always the same ones, and how to hand them to the Python references.

#![allow(dead_code, reason = "each test file uses its part")]

use coquille::reckoning::diagnosis::*;
use serde_json::{Value, json};
use std::io::Write;
use std::process::{Command, Stdio};

/// Whole numbers that look random and never change (SplitMix64; Steele, Lea & Flood 2014).
pub struct Numbers(pub u64);

impl Numbers {
    pub fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) % bound.max(1) as u64) as usize
    }

    /// True so many times in a hundred.
    pub fn chance(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }

    /// Some of the numbers below `bound`, each so many times in a hundred.
    pub fn some(&mut self, bound: usize, percent: usize) -> Vec<usize> {
        (0..bound).filter(|_| self.chance(percent)).collect()
    }
}

/// How large a random case may be.
#[derive(Clone, Copy)]
pub struct Size {
    pub causes: usize,
    pub probes: usize,
    pub jobs: usize,
}

/// A sound case that is expanded exactly, with everything in it: nested jobs, jobs that must be shut, `after`, unsure answers, trial fixes, shared remedies.
pub fn any_case(numbers: &mut Numbers, size: Size) -> Case {
    loop {
        let case = any_case_perhaps_unsound(numbers, size);
        if Diagnosis::of(case.clone()).is_ok_and(|ready| ready.approximated().is_empty()) {
            return case;
        }
    }
}

fn any_case_perhaps_unsound(numbers: &mut Numbers, size: Size) -> Case {
    let (causes, probes, jobs) = (
        1 + numbers.below(size.causes),
        numbers.below(size.probes + 1),
        numbers.below(size.jobs + 1),
    );
    let remedies = 1 + numbers.below(causes + 1);
    let job_indices = |places: Vec<usize>| places.into_iter().map(JobIndex).collect::<Vec<_>>();
    let mut case = Case {
        tell_apart: if numbers.chance(25) {
            TellApart::Causes
        } else {
            TellApart::Remedies
        },
        ..Case::default()
    };
    for _ in 0..causes {
        let weight = Weight(1 + numbers.below(40) as u32);
        case.causes.push(Cause {
            weight,
            remedy: RemedyIndex(numbers.below(remedies)),
        });
    }
    if numbers.chance(60) {
        let remedy = numbers
            .chance(30)
            .then(|| RemedyIndex(numbers.below(remedies)));
        case.rest = Some(Rest {
            weight: Weight(1 + numbers.below(20) as u32),
            remedy,
        });
    }
    for index in 0..jobs {
        let needs = job_indices(numbers.some(index, 40));
        let (open, close) = (
            Minutes(numbers.below(60) as u64),
            Minutes(numbers.below(40) as u64),
        );
        case.jobs.push(Job { open, close, needs });
    }
    for _ in 0..remedies {
        let needs = job_indices(numbers.some(jobs, 30));
        case.remedies.push(Remedy {
            minutes: Minutes(numbers.below(100) as u64),
            needs,
        });
    }
    for index in 0..probes {
        let probe = any_probe(numbers, &case, index, probes);
        case.probes.push(probe);
    }
    case
}

fn any_probe(numbers: &mut Numbers, case: &Case, index: usize, probes: usize) -> Probe {
    let answers = 1 + numbers.below(3);
    let jobs = case.jobs.len();
    let mut probe = Probe {
        minutes: Minutes(numbers.below(80) as u64),
        needs: numbers.some(jobs, 35).into_iter().map(JobIndex).collect(),
        shut: numbers.some(jobs, 12).into_iter().map(JobIndex).collect(),
        after: numbers
            .some(probes, 12)
            .into_iter()
            .filter(|other| *other != index)
            .map(ProbeIndex)
            .collect(),
        answers: vec![Answer::default(); answers],
        otherwise: AnswerIndex(numbers.below(answers)),
        works_now: None,
    };
    let suspects = (0..case.causes.len()).map(|i| Suspect::Cause(CauseIndex(i)));
    for suspect in suspects.chain(case.rest.map(|_| Suspect::Rest)) {
        let percent = if suspect == Suspect::Rest { 6 } else { 25 };
        for answer in numbers.some(answers, percent) {
            probe.answers[answer].named.push(Named {
                suspect,
                parts: 1 + numbers.below(5) as u32,
            });
        }
    }
    if answers > 1 && numbers.chance(30) {
        probe.works_now = (0..answers)
            .map(AnswerIndex)
            .find(|answer| *answer != probe.otherwise);
    }
    probe
}

/// Looks at causes of their own behind nested jobs, in whole minutes.
pub fn own_looks(seed: u64, jobs: usize, complete: bool) -> Case {
    let mut numbers = Numbers(seed);
    let causes = 2 + numbers.below(6);
    let mut case = Case {
        remedies: vec![Remedy::default(); causes],
        ..Case::default()
    };
    case.rest = (!complete).then_some(Rest {
        weight: Weight(1 + numbers.below(30) as u32),
        remedy: None,
    });
    for index in 0..jobs {
        let needs = if index > 0 && numbers.chance(60) {
            vec![JobIndex(numbers.below(index))]
        } else {
            Vec::new()
        };
        let (open, close) = (
            Minutes(numbers.below(60) as u64),
            Minutes(numbers.below(40) as u64),
        );
        case.jobs.push(Job { open, close, needs });
    }
    for index in 0..causes {
        case.causes.push(Cause {
            weight: Weight(1 + numbers.below(50) as u32),
            remedy: RemedyIndex(index),
        });
        let needs = if jobs > 0 && numbers.chance(70) {
            vec![JobIndex(numbers.below(jobs))]
        } else {
            Vec::new()
        };
        case.probes.push(Probe {
            minutes: Minutes(1 + numbers.below(80) as u64),
            needs,
            shut: Vec::new(),
            after: Vec::new(),
            answers: vec![
                Answer {
                    named: vec![Named::cause(index)],
                },
                Answer::default(),
            ],
            otherwise: AnswerIndex(1),
            works_now: None,
        });
    }
    case
}

/// The case as the Python references read it.
pub fn as_json(case: &Case, orders: &[Vec<ProbeIndex>], permute: usize) -> Value {
    let jobs = |jobs: &[JobIndex]| jobs.iter().map(|job| job.0).collect::<Vec<_>>();
    let who = |suspect: Suspect| match suspect {
        Suspect::Cause(cause) => cause.0 as i64,
        Suspect::Rest => -1,
    };
    let answer = |a: &Answer| {
        a.named
            .iter()
            .map(|n| json!([who(n.suspect), n.parts]))
            .collect::<Vec<_>>()
    };
    let probe = |p: &Probe| {
        json!({
            "minutes": p.minutes.0, "needs": jobs(&p.needs), "shut": jobs(&p.shut),
            "after": p.after.iter().map(|p| p.0).collect::<Vec<_>>(),
            "answers": p.answers.iter().map(answer).collect::<Vec<_>>(),
            "otherwise": p.otherwise.0, "works_now": p.works_now.map(|a| a.0),
        })
    };
    json!({
        "causes": case.causes.iter().map(|c| json!({"weight": c.weight.0, "remedy": c.remedy.0})).collect::<Vec<_>>(),
        "rest": case.rest.map(|r| json!({"weight": r.weight.0, "remedy": r.remedy.map(|r| r.0)})),
        "remedies": case.remedies.iter().map(|r| json!({"minutes": r.minutes.0, "needs": jobs(&r.needs)})).collect::<Vec<_>>(),
        "jobs": case.jobs.iter().map(|j| json!({"open": j.open.0, "close": j.close.0, "needs": jobs(&j.needs)})).collect::<Vec<_>>(),
        "probes": case.probes.iter().map(probe).collect::<Vec<_>>(),
        "tell_apart": if case.tell_apart == TellApart::Causes { "causes" } else { "remedies" },
        "orders": orders.iter().map(|o| o.iter().map(|p| p.0).collect::<Vec<_>>()).collect::<Vec<_>>(),
        "permute": permute,
    })
}

/// Runs a script of `tests/reference` on this input and gives what it answers.
pub fn ask_python(python: &str, script: &str, input: &Value) -> Value {
    let script = std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/reference")
        .join(script);
    let mut child = Command::new(python)
        .arg(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("python3 is there: tests/run looks for it first");
    let mut stdin = child.stdin.take().expect("it was asked for");
    let input = input.to_string();
    let writer = std::thread::spawn(move || stdin.write_all(input.as_bytes()));
    let output = child
        .wait_with_output()
        .expect("the script runs to its end");
    writer
        .join()
        .expect("the writer does not panic")
        .expect("the script reads all its input");
    assert!(output.status.success(), "the script failed");
    serde_json::from_slice(&output.stdout).expect("the script writes JSON")
}
