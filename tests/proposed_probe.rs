//! The probe that a finding proposes is pasted back into its guide, and the guide is proofed again: it must be sound, and parted.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::proof::{Code, Finding, Proofed, proof};
use coquille::source::read_texts;
use std::collections::BTreeMap;
use std::path::Path;

/// A probe that tells nothing, so that the guide has one.
const TELLS_NOTHING: &str = "probes:\n  - probe: look\n    ask: Does it look well?\n    minutes: 1\n    answers:\n      - {answer: well, title: It does, means: otherwise}\n      - {answer: not-well, title: It does not}\n";

#[test]
fn each_probe_that_is_proposed_can_be_pasted_in_and_parts_causes() {
    let texts = demo();
    let mut pasted = BTreeMap::new();
    for guide in ["foil-dark-on-tester", "foil-white-burns", "body-cord-dead"] {
        pasted.insert(guide, paste_all(&texts, guide));
    }
    // A guide without a reading to take would prove nothing here.
    assert!(pasted.values().all(|count| *count > 0), "{pasted:?}");
}

/// Pastes what is proposed until nothing more is; tells how many probes that were.
fn paste_all(texts: &BTreeMap<String, String>, guide: &str) -> usize {
    let name = format!("faults/{guide}.yaml");
    let mut text = without_probes(&texts[&name]);
    let mut pasted = 0;
    let mut before = parted(&proofed(texts, &name, &text), guide);
    while let Some(probe) = proposed(&proofed(texts, &name, &text)) {
        text = text.replacen("\nnot on this list:", &format!("\n{}\nnot on this list:", indented(&probe)), 1);
        let now = proofed(texts, &name, &text);
        let wrong: Vec<&Finding> = now.findings.iter().filter(|finding| is_about_the_probe(finding)).collect();
        assert!(wrong.is_empty(), "{guide}: {wrong:#?}\n{text}");
        let after = parted(&now, guide);
        assert!(after > before, "{guide}: the probe parts nothing\n{probe}");
        (before, pasted) = (after, pasted + 1);
    }
    pasted
}

/// The guide with its probes left out, and its waivers, which would no longer bite.
fn without_probes(text: &str) -> String {
    let (head, rest) = text.split_once("\nprobes:").unwrap();
    let (_, tail) = rest.split_once("\nnot on this list:").unwrap();
    let tail = tail.split("\naccepts:").next().unwrap();
    format!("{head}\n{TELLS_NOTHING}\nnot on this list:{tail}")
}

/// The first probe that a finding proposes.
fn proposed(proofed: &Proofed) -> Option<String> {
    let proposes =
        |finding: &&Finding| finding.code == Code::Inseparable && finding.help.contains("add under `probes:`");
    let finding = proofed.findings.iter().find(proposes)?;
    Some(finding.help.split_once('\n').unwrap().1.to_owned())
}

fn indented(probe: &str) -> String {
    probe.lines().map(|line| format!("  {line}\n")).collect()
}

fn is_about_the_probe(finding: &Finding) -> bool {
    let about =
        [Code::ProbeContradicted, Code::AnswerReadsNothing, Code::YamlSyntax, Code::UnknownKey, Code::WrongType];
    about.contains(&finding.code)
}

/// A number that rises as causes are told apart.
fn parted(proofed: &Proofed, guide: &str) -> usize {
    proofed.cases[guide]
        .diagnosis
        .groups()
        .iter()
        .map(|group| group.suspects.len())
        .fold(100, |left, size| left - (size - 1))
}

/// The guide by itself, with everything in the handbook that is no fault-finding guide. Bouts, which none of them rests on, are
/// left out: they take long.
fn proofed(texts: &BTreeMap<String, String>, name: &str, text: &str) -> Proofed {
    let left_out = |other: &str| other.starts_with("faults/") || other.contains("-bout") || other.contains("-fencer");
    let others = texts.iter().filter(|(other, _)| !left_out(other));
    let all = others.map(|(name, text)| (name.as_str(), text.as_str())).chain([(name, text)]);
    proof(&read_texts(all))
}

/// The demo handbook's guides, by name.
fn demo() -> BTreeMap<String, String> {
    let folder = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/guides"));
    let mut texts = BTreeMap::new();
    for part in ["", "faults", "jobs", "checks", "circuits", "stores", "limits", "words"] {
        for entry in std::fs::read_dir(folder.join(part)).into_iter().flatten() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|kind| kind == "yaml") {
                let name = path.strip_prefix(folder).unwrap().to_string_lossy().replace('\\', "/");
                texts.insert(name, std::fs::read_to_string(&path).unwrap());
            }
        }
    }
    texts
}
