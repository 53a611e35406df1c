//! Findings as SARIF 2.1.0 (OASIS standard, 27 March 2020). Columns are code points from 1 (`columnKind`).

use super::region;
use crate::proof::{Code, Finding, Proofed, Severity};
use crate::source::{Place, Texts};
use serde_json::{Value, json};

/// The whole log.
pub fn log(proofed: &Proofed, texts: &Texts) -> Value {
    let rules: Vec<Value> = Code::ALL.iter().map(|code| rule(*code)).collect();
    let open = proofed.findings.iter().map(|finding| result(finding, texts, None));
    let accepted = proofed.accepted.iter().map(|a| result(&a.finding, texts, Some(&a.because)));
    let results: Vec<Value> = open.chain(accepted).collect();
    json!({
        "$schema": "https://json.schemastore.org/sarif-2.1.0.json",
        "version": "2.1.0",
        "runs": [{
            "tool": { "driver": { "name": "coquille", "version": env!("CARGO_PKG_VERSION"), "rules": rules } },
            "columnKind": "unicodeCodePoints",
            "results": results,
        }],
    })
}

fn level(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "error",
        Severity::Advice => "note",
    }
}

fn rule(code: Code) -> Value {
    let explained = code.explained();
    json!({
        "id": code.as_str(),
        "shortDescription": { "text": explained.what },
        "fullDescription": { "text": format!("{} {}", explained.what, explained.why) },
        "help": { "text": explained.mend },
        "defaultConfiguration": { "level": level(code.severity()) },
    })
}

fn result(finding: &Finding, texts: &Texts, because: Option<&str>) -> Value {
    let rule_index = Code::ALL.iter().position(|code| *code == finding.code);
    let related: Vec<Value> = finding
        .also
        .iter()
        .map(|(place, word)| {
            let mut location = location(texts, *place);
            location["message"] = json!({ "text": word });
            location
        })
        .collect();
    let mut result = json!({
        "ruleId": finding.code.as_str(),
        "ruleIndex": rule_index,
        "level": level(finding.severity()),
        "message": { "text": format!("{}; {}", finding.message, finding.help) },
        "locations": [location(texts, finding.place)],
        "relatedLocations": related,
    });
    if let Some(because) = because {
        result["suppressions"] = json!([{ "kind": "inSource", "justification": because }]);
    }
    result
}

fn location(texts: &Texts, place: Place) -> Value {
    let region = region(texts, place);
    json!({ "physicalLocation": {
        "artifactLocation": { "uri": percent(region.file) },
        "region": {
            "startLine": region.line, "startColumn": region.column,
            "endLine": region.end_line, "endColumn": region.end_column,
        },
    }})
}

/// A path as a relative URI reference (RFC 3986): everything but unreserved letters and `/` is percent-encoded.
fn percent(path: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~/".contains(&byte);
    path.bytes().map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}
