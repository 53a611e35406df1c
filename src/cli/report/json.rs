//! Findings for programs, as JSON. `"format": 1` changes when a reader would break.

use super::region;
use crate::proof::{Finding, Proofed};
use crate::source::{Place, Texts};
use serde_json::{Value, json};

/// The whole report.
pub fn report(proofed: &Proofed, texts: &Texts) -> Value {
    let findings: Vec<Value> = proofed.findings.iter().map(|found| finding(found, texts)).collect();
    let accepted: Vec<Value> = proofed
        .accepted
        .iter()
        .map(|accepted| {
            let mut value = finding(&accepted.finding, texts);
            value["because"] = json!(accepted.because);
            value
        })
        .collect();
    json!({
        "format": 1,
        "errors": proofed.errors(),
        "advice": proofed.advice(),
        "findings": findings,
        "accepted": accepted,
    })
}

fn finding(finding: &Finding, texts: &Texts) -> Value {
    let mut value = place(texts, finding.place);
    value["code"] = json!(finding.code.as_str());
    value["severity"] = json!(finding.severity().as_str());
    value["message"] = json!(finding.message);
    value["help"] = json!(finding.help);
    let also = finding.also.iter().map(|(at, word)| {
        let mut also = place(texts, *at);
        also["message"] = json!(word);
        also
    });
    value["also"] = also.collect();
    value
}

fn place(texts: &Texts, place: Place) -> Value {
    let region = region(texts, place);
    json!({
        "file": region.file,
        "line": region.line,
        "column": region.column,
        "end_line": region.end_line,
        "end_column": region.end_column,
    })
}
