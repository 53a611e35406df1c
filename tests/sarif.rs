//! The SARIF report against the standard's own schema (`tests/schemas/ORIGIN.md`), and what the schema cannot say.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod proof_support;

use assert_cmd::Command;
use serde_json::Value;
use std::path::Path;

fn schema() -> jsonschema::Validator {
    let text = std::fs::read_to_string("tests/schemas/sarif-schema-2.1.0.json").unwrap();
    jsonschema::draft7::new(&serde_json::from_str(&text).unwrap()).unwrap()
}

/// What the command prints for a folder.
fn report(folder: &Path) -> Value {
    let done =
        Command::cargo_bin("coquille").unwrap().args(["proof", "--format", "sarif"]).arg(folder).output().unwrap();
    serde_json::from_slice(&done.stdout).unwrap()
}

fn results(log: &Value) -> &Vec<Value> {
    log["runs"][0]["results"].as_array().unwrap()
}

#[test]
fn the_report_of_the_demo_guides_holds_to_the_standard() {
    let log = report(Path::new("guides"));
    let faults: Vec<String> = schema().iter_errors(&log).map(|fault| fault.to_string()).collect();
    assert_eq!(faults, Vec::<String>::new());
}

#[test]
fn the_report_of_every_fixture_holds_to_the_standard() {
    let schema = schema();
    for suite in proof_support::suites() {
        for case in suite.cases {
            let log = report(case.on_disk().path());
            let faults: Vec<String> = schema.iter_errors(&log).map(|fault| fault.to_string()).collect();
            assert_eq!(faults, Vec::<String>::new(), "{}", case.title);
            results(&log).iter().for_each(|result| sound(&log, result));
        }
    }
}

/// A result's rule is the one it names, and its region does not run backwards.
fn sound(log: &Value, result: &Value) {
    let rules = &log["runs"][0]["tool"]["driver"]["rules"];
    assert_eq!(rules[result["ruleIndex"].as_u64().unwrap() as usize]["id"], result["ruleId"]);
    let region = &result["locations"][0]["physicalLocation"]["region"];
    let at = |key: &str| region[key].as_u64().unwrap();
    assert!((at("startLine"), at("startColumn")) <= (at("endLine"), at("endColumn")), "{region}");
}

#[test]
fn an_accepted_finding_is_told_as_suppressed_with_its_reason() {
    let suites = proof_support::suites();
    let suite = suites.iter().find(|suite| suite.name == "waiver-refused").unwrap();
    let case = suite.cases.iter().find(|case| case.drawn().is_empty()).unwrap();
    let log = report(case.on_disk().path());
    assert_eq!(results(&log)[0]["suppressions"][0]["justification"], "We will need it.");
}

#[test]
fn the_schema_refuses_a_log_that_is_none() {
    let mut log = report(Path::new("guides"));
    log["runs"][0]["results"] = serde_json::json!([{ "level": "terrible" }]);
    assert!(!schema().is_valid(&log));
}
