//! What proofing finds in small handbooks: each finding stands under the line that it is about (`proof_support` tells how).
//!
//! A finding that is not drawn fails, and so does a drawn one that is not found. With `REDRAW=1` in the environment the fixtures
//! are drawn anew: read the difference before you keep it.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod proof_support;

use coquille::model::fill;
use coquille::proof::{Code, check};
use coquille::source::{FileId, Flaw, Place, What, read_texts};
use proof_support::{Suite, redrawn, suites};
use std::collections::BTreeSet;

/// Codes that no file can be made to show, with the reason.
const NOT_FROM_FILES: [(Code, &str); 1] =
    [(Code::Unreadable, "the system must refuse a file, which it never does for an administrator")];

#[test]
fn every_finding_is_drawn_under_the_line_that_it_is_about() {
    if std::env::var_os("REDRAW").is_some() {
        suites().iter().for_each(|suite| std::fs::write(&suite.path, redrawn(suite)).unwrap());
    }
    let wrong: Vec<String> = suites().iter().flat_map(differences).collect();
    assert!(wrong.is_empty(), "\n{}\nTo draw them anew: REDRAW=1 cargo test --test proof\n", wrong.join("\n"));
}

fn differences(suite: &Suite) -> Vec<String> {
    let of_case = |case: &proof_support::Case| {
        let head = format!("{}:{}: {}", suite.path.display(), case.line, case.title);
        let lines = case.differences();
        lines.into_iter().map(move |line| format!("{head}\n  {line}")).collect::<Vec<_>>()
    };
    suite.cases.iter().flat_map(of_case).collect()
}

#[test]
fn every_code_has_a_refused_example_and_an_accepted_one() {
    let suites = suites();
    let mut lacking = Vec::new();
    for code in Code::ALL.iter().filter(|code| !NOT_FROM_FILES.iter().any(|(other, _)| other == *code)) {
        let suite = suites.iter().find(|suite| suite.name == code.as_str());
        let cases = suite.map_or(&[][..], |suite| &suite.cases);
        let refused = cases.iter().any(|case| case.drawn().iter().any(|drawn| drawn.code() == code.as_str()));
        let accepted = cases.iter().any(|case| case.drawn().is_empty());
        if !refused || !accepted {
            lacking.push(format!("tests/proof/{}.yaml: refused {refused}, accepted {accepted}", code.as_str()));
        }
    }
    assert!(lacking.is_empty(), "\n{}", lacking.join("\n"));
}

#[test]
fn every_fixture_is_called_like_the_code_that_it_shows() {
    let known: BTreeSet<&str> = Code::ALL.iter().map(|code| code.as_str()).collect();
    let strange: Vec<String> =
        suites().into_iter().map(|suite| suite.name).filter(|name| !known.contains(&**name)).collect();
    assert!(strange.is_empty(), "{strange:?}");
}

#[test]
fn every_case_has_a_title_of_its_own() {
    let mut seen = BTreeSet::new();
    for suite in suites() {
        for case in suite.cases {
            assert!(seen.insert(case.title.clone()), "{}: {}", suite.path.display(), case.title);
        }
    }
}

#[test]
fn a_file_that_the_system_refuses_is_found() {
    let folder = read_texts([]);
    let (guides, _) = fill(&folder);
    let flaw = Flaw::new(Place::top(FileId(0)), What::Unreadable("permission denied".to_owned()));
    let found = check(&folder, guides, vec![flaw]).findings;
    assert_eq!(found[0].code, Code::Unreadable);
    assert_eq!(found[0].message, "the file cannot be read: permission denied");
}
