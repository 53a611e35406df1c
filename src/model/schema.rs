//! JSON Schema (2020-12) of every kind of guide, for editors.
//!
//! Out: the schema as a JSON value; the descriptions are the doc comments of the model.

use super::{Checklist, Circuit, Glossary, HandbookFile, Kind, Learning, Limits, Pack, Procedure, Stores, Symptom};
use schemars::generate::SchemaSettings;
use serde_json::Value;

/// The schema of one kind.
pub fn schema(kind: Kind) -> Value {
    let generator = SchemaSettings::draft2020_12().into_generator();
    let schema = match kind {
        Kind::Handbook => generator.into_root_schema_for::<HandbookFile>(),
        Kind::Symptom => generator.into_root_schema_for::<Symptom>(),
        Kind::Procedure => generator.into_root_schema_for::<Procedure>(),
        Kind::Checklist => generator.into_root_schema_for::<Checklist>(),
        Kind::Circuit => generator.into_root_schema_for::<Circuit>(),
        Kind::Stores => generator.into_root_schema_for::<Stores>(),
        Kind::Limits => generator.into_root_schema_for::<Limits>(),
        Kind::Words => generator.into_root_schema_for::<Glossary>(),
        Kind::Pack => generator.into_root_schema_for::<Pack>(),
        Kind::Learning => generator.into_root_schema_for::<Learning>(),
    };
    closed(schema.to_value())
}

/// One schema for any guide: which kind holds is told by the kind's own key.
pub fn any_guide() -> Value {
    let kinds: Vec<Value> = Kind::ALL
        .into_iter()
        .map(|kind| serde_json::json!({ "if": told_by(kind), "then": { "$ref": format!("#/$defs/{}", kind.key()) } }))
        .collect();
    // A translation repeats a guide's ids and gives other words; which keys it may have depends on the guide.
    let translation = serde_json::json!({ "required": ["translation", "language"] });
    let kinds_told = Kind::ALL.into_iter().map(|kind| serde_json::json!({ "required": [kind.key()] }));
    let one_of: Vec<Value> = kinds_told.chain([translation]).collect();
    let defs: serde_json::Map<String, Value> =
        Kind::ALL.into_iter().map(|kind| (kind.key().to_owned(), rooted(schema(kind), kind))).collect();
    serde_json::json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A guide of a handbook",
        "type": "object",
        "allOf": kinds,
        "anyOf": one_of,
        "$defs": defs,
    })
}

/// What tells a kind: its own key. A fault-finding guide names its circuit, so `circuit` tells one only where no other does.
fn told_by(kind: Kind) -> Value {
    let others = Kind::ALL.into_iter().filter(|other| *other != Kind::Circuit);
    let others: Vec<Value> = others.map(|other| serde_json::json!({ "required": [other.key()] })).collect();
    match kind {
        Kind::Circuit => serde_json::json!({ "required": [kind.key()], "not": { "anyOf": others } }),
        _ => serde_json::json!({ "required": [kind.key()] }),
    }
}

/// Moves the references of a schema to where it stands inside [`any_guide`].
fn rooted(mut value: Value, kind: Kind) -> Value {
    redirect(&mut value, &format!("#/$defs/{}/$defs/", kind.key()));
    if let Some(map) = value.as_object_mut() {
        map.remove("$schema");
    }
    value
}

fn redirect(value: &mut Value, to: &str) {
    match value {
        Value::Object(map) => {
            for (key, inner) in map.iter_mut() {
                match inner {
                    Value::String(text) if key == "$ref" => *text = text.replacen("#/$defs/", to, 1),
                    other => redirect(other, to),
                }
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| redirect(item, to)),
        _ => {}
    }
}

/// An unknown key is an error to `proof`, so it is one to the schema; and a number or a yes where a text is wanted is that
/// text as written.
fn closed(mut value: Value) -> Value {
    close(&mut value);
    value
}

fn close(value: &mut Value) {
    match value {
        Value::Object(map) => {
            if map.get("type").and_then(Value::as_str) == Some("object") && map.contains_key("properties") {
                map.insert("additionalProperties".into(), Value::Bool(false));
            }
            widen(map);
            map.values_mut().for_each(close);
        }
        Value::Array(items) => items.iter_mut().for_each(close),
        _ => {}
    }
}

/// Lets numbers and yes or no stand for texts, and `yes` and `no` for a boolean. Words from a list stay as they are.
fn widen(map: &mut serde_json::Map<String, Value>) {
    let listed = map.contains_key("enum") || map.contains_key("const");
    let names = |named: &Value| {
        named.as_str().map_or_else(|| named.as_array().cloned().unwrap_or_default(), |one| vec![one.into()])
    };
    let Some(types) = map.get("type").map(names) else { return };
    if types == ["boolean"] {
        map.remove("type");
        map.insert("enum".into(), serde_json::json!([true, false, "yes", "no"]));
    } else if types.contains(&"string".into()) && !listed {
        let all = types.into_iter().chain(["number".into(), "boolean".into()]);
        let all: std::collections::BTreeSet<String> = all.filter_map(|name| name.as_str().map(str::to_owned)).collect();
        map.insert("type".into(), serde_json::json!(all));
    }
}
