//! The schemas that `coquille schema` prints, against guides and by a validator of others.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod proof_support;

use assert_cmd::Command;
use coquille::model::{Kind, any_guide, schema};
use jsonschema::Validator;
use proof_support::Case;
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::LazyLock;

/// The demo guides by their path, as JSON.
fn guides() -> BTreeMap<PathBuf, Value> {
    let files = walkdir::WalkDir::new("guides").into_iter().map(|entry| entry.unwrap().into_path());
    let guides = files.filter(|path| path.extension().is_some_and(|ending| ending == "yaml"));
    let read = guides.map(|path| (path.clone(), json(&std::fs::read_to_string(&path).unwrap()).unwrap()));
    read.filter(|(_, guide)| guide.get("translation").is_none()).collect()
}

/// A guide as another YAML program reads it; nothing when that cannot.
fn json(yaml: &str) -> Option<Value> {
    serde_yaml::from_str(yaml).ok()
}

fn kind_of(guide: &Value) -> Option<Kind> {
    Kind::ALL.into_iter().find(|kind| guide.get(kind.key()).is_some())
}

/// The validator of any guide.
static ANY: LazyLock<Validator> = LazyLock::new(|| compiled(&any_guide()));

fn compiled(schema: &Value) -> Validator {
    jsonschema::draft202012::new(schema).unwrap()
}

fn faults(validator: &Validator, guide: &Value) -> Vec<String> {
    validator.iter_errors(guide).map(|fault| format!("{} at {}", fault, fault.instance_path)).collect()
}

#[test]
fn every_demo_guide_fits_the_schema_of_its_kind_and_the_one_for_any() {
    let kinds: BTreeMap<Kind, Validator> = Kind::ALL.into_iter().map(|kind| (kind, compiled(&schema(kind)))).collect();
    let guides = guides();
    assert!(guides.len() > 50, "the guides were not found");
    for (path, guide) in guides {
        let kind = kind_of(&guide).unwrap();
        assert_eq!(faults(&kinds[&kind], &guide), Vec::<String>::new(), "{}", path.display());
        assert_eq!(faults(&ANY, &guide), Vec::<String>::new(), "{}", path.display());
    }
}

#[test]
fn the_command_prints_the_schemas() {
    let printed = |args: &[&str]| -> Value {
        let done = Command::cargo_bin("coquille").unwrap().arg("schema").args(args).output().unwrap();
        serde_json::from_slice(&done.stdout).unwrap()
    };
    assert_eq!(printed(&[]), any_guide());
    for kind in Kind::ALL {
        assert_eq!(printed(&[kind.key()]), schema(kind));
    }
}

#[test]
fn every_schema_is_a_schema() {
    let all = Kind::ALL.map(schema).into_iter().chain([any_guide()]);
    for schema in all {
        assert!(jsonschema::draft202012::meta::is_valid(&schema));
        assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    }
}

#[test]
fn every_key_is_described() {
    for kind in Kind::ALL {
        let mut bare = Vec::new();
        undescribed(&schema(kind), kind.key(), &mut bare);
        assert_eq!(bare, Vec::<String>::new());
    }
}

fn undescribed(value: &Value, at: &str, bare: &mut Vec<String>) {
    if let Some(properties) = value.get("properties").and_then(Value::as_object) {
        let without = properties.iter().filter(|(_, property)| property.get("description").is_none());
        bare.extend(without.map(|(key, _)| format!("{at}/{key}")));
    }
    match value {
        Value::Object(map) => map.iter().for_each(|(key, inner)| undescribed(inner, &format!("{at}/{key}"), bare)),
        Value::Array(items) => items.iter().for_each(|inner| undescribed(inner, at, bare)),
        _ => {}
    }
}

#[test]
fn what_proofing_refuses_for_its_shape_the_schema_refuses_too() {
    let mut compared = 0;
    for suite in proof_support::suites() {
        let shapely = ["unknown-key", "missing-key", "wrong-type", "unknown-kind"].contains(&suite.name.as_str());
        for case in suite.cases.iter().filter(|_| shapely) {
            let refused = files(case).into_iter().map(|text| json(&text).is_none_or(|guide| !fits(&guide)));
            let refused: Vec<bool> = refused.collect();
            // The order of keys is nothing that a schema can see.
            let by_order = case.title == "a title before the kind";
            assert_eq!(
                refused.contains(&true),
                !case.drawn().is_empty() && !by_order,
                "{}: {}",
                suite.name,
                case.title
            );
            compared += 1;
        }
    }
    assert!(compared > 20);
}

/// The guides of a case.
fn files(case: &Case) -> Vec<String> {
    let contents = case.contents().into_iter().filter(|(name, _)| name.ends_with(".yaml"));
    contents.map(|(_, bytes)| String::from_utf8(bytes).unwrap()).collect()
}

fn fits(guide: &Value) -> bool {
    faults(&ANY, guide).is_empty()
}

#[test]
fn what_proofing_accepts_the_schema_accepts() {
    for suite in proof_support::suites() {
        for case in suite.cases.iter().filter(|case| case.drawn().is_empty()) {
            let guides =
                case.contents().into_iter().filter(|(name, _)| name.ends_with(".yaml") || name.ends_with(".yml"));
            for (name, bytes) in guides {
                let text = String::from_utf8(bytes).unwrap();
                let Some(guide) = json(text.trim_start_matches('\u{feff}')) else { continue };
                assert_eq!(faults(&ANY, &guide), Vec::<String>::new(), "{}: {name}", case.title);
            }
        }
    }
}

/// The same by a second validator, Python's `jsonschema`: `cargo test --test schema -- --ignored` where it is installed.
#[test]
#[ignore = "needs Python with jsonschema"]
fn a_second_validator_agrees() {
    let folder = tempfile::tempdir().unwrap();
    let (schema, guides_at) = (folder.path().join("schema.json"), folder.path().join("guides.json"));
    std::fs::write(&schema, any_guide().to_string()).unwrap();
    let all: Vec<Value> = guides().into_values().collect();
    std::fs::write(&guides_at, Value::from(all).to_string()).unwrap();
    let program = "import json, sys, jsonschema
check = jsonschema.Draft202012Validator(json.load(open(sys.argv[1])))
faults = [f.message for g in json.load(open(sys.argv[2])) for f in check.iter_errors(g)]
sys.exit('\\n'.join(faults) if faults else 0)";
    let done = std::process::Command::new("python3").args(["-c", program]).arg(schema).arg(guides_at).output().unwrap();
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
}
