//! *Writing guides*: every kind of guide with its keys and a real example, and every finding with what to do about it.
//!
//! The keys and their words come from the JSON Schema, which comes from the model's doc comments: one list, many readers.

use super::laying::Laying;
use super::page::{Body, FindingPage, Page, Writing, WritingKey, WritingKind};
use super::{addresses, frame};
use crate::model::{Kind, schema};
use crate::proof::{Code, all_guides};
use serde_json::Value;

/// The page.
pub fn page(laying: &Laying<'_>) -> Page {
    let kinds = Kind::ALL.into_iter().map(|kind| section(laying, kind)).collect();
    let findings = Code::ALL.iter().map(|code| finding(*code)).collect();
    frame::page(addresses::WRITING, "kind-writing", "", Body::Writing(Writing { kinds, findings }))
}

fn section(laying: &Laying<'_>, kind: Kind) -> WritingKind {
    let (file, source) = example(laying, kind).unwrap_or_default();
    WritingKind { kind: kind.key(), keys: keys(&schema(kind)), file, source }
}

/// The shortest guide of a kind is the easiest to learn from.
fn example(laying: &Laying<'_>, kind: Kind) -> Option<(String, String)> {
    let guides = all_guides(&laying.proofed.guides).into_iter().filter(|guide| guide.kind == kind);
    let texts = guides.filter_map(|guide| laying.texts.get(guide.file));
    let text = texts.min_by_key(|text| (text.text.len(), text.name.clone()))?;
    Some((text.name.clone(), text.text.clone()))
}

fn keys(schema: &Value) -> Vec<WritingKey> {
    let must: Vec<&str> = schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    let Some(properties) = schema["properties"].as_object() else { return Vec::new() };
    let says = |value: &Value| value["description"].as_str().unwrap_or_default().to_owned();
    let key = |(key, value): (&String, &Value)| WritingKey {
        key: key.clone(),
        says: says(value),
        must: must.contains(&key.as_str()),
    };
    properties.iter().map(key).collect()
}

fn finding(code: Code) -> FindingPage {
    let explained = code.explained();
    FindingPage {
        code: code.as_str(),
        severity: code.severity().as_str(),
        what: explained.what,
        why: explained.why,
        mend: explained.mend,
    }
}
