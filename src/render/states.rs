//! Every state of every part of a theme, drawn on pages that are looked at and checked, never shipped.
//!
//! In: a [`Theme`], whose parts have a `states.yaml` each. Out: the bytes of the pages and of what they refer to, by address.
//! A state says what a part is given; what it does not say it takes from the part's first state. Four keys are for the page:
//! `width` (in CSS pixels) and `direction` lay the state out, `typed` and `focused` tell a checker what to do with its field.

use super::functions;
use super::theme::FRAME;
use super::words::Words;
use super::{RenderFailed, Theme, faulty};
use crate::handbook::Targets;
use serde::Deserialize;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;

/// What a state says to the page and not to the part.
const FOR_THE_PAGE: [&str; 4] = ["width", "direction", "typed", "focused"];

/// The narrow states' width; a policy against inline styles holds on these pages too.
const STYLE: &str = ".state-320 { inline-size: 320px; }\n.state { padding: 1rem; }\n";

/// The search box fetches its index as soon as its field has the focus.
const NOTHING_TO_FIND: &str = "window.searchIndex = { names: {}, pages: [] };\n";

#[derive(Deserialize)]
struct Part {
    part: String,
    about: String,
    component: String,
    /// Why each state needs a page of its own; nothing when all can stand on one.
    alone: Option<String>,
    states: serde_yaml::Mapping,
}

/// A state with what it takes from the first.
struct State {
    name: String,
    given: Map<String, Value>,
}

impl State {
    fn direction(&self) -> &str {
        self.given.get("direction").and_then(Value::as_str).unwrap_or("ltr")
    }

    /// The part's own arguments, as a template writes them.
    fn arguments(&self, at: usize) -> String {
        let names = self.given.keys().filter(|name| !FOR_THE_PAGE.contains(&name.as_str()));
        names.map(|name| format!(" {name}={{states[{at}].given.{name}}}")).collect()
    }
}

/// Draws every state of every part; nothing of a guide is needed.
///
/// # Errors
/// When a `states.yaml` cannot be read, or a part cannot be drawn with what a state gives it.
pub fn states(theme: &Theme) -> Result<BTreeMap<String, Vec<u8>>, RenderFailed> {
    let mut files = theme.assets_of_pages();
    files.insert("look/states.css".to_owned(), STYLE.as_bytes().to_vec());
    files.insert("look/search-index.js".to_owned(), NOTHING_TO_FIND.as_bytes().to_vec());
    for (name, bytes) in theme.part_states() {
        let failed = |error: &dyn std::fmt::Display| RenderFailed { message: format!("`{name}`: {error}") };
        let part: Part = serde_yaml::from_slice(bytes).map_err(|error| failed(&error))?;
        let states = given(&part).map_err(|error| failed(&error))?;
        for (address, states) in pages(&part, states) {
            let html = draw(theme, &part, &states)?;
            files.insert(address, html.into_bytes());
        }
    }
    Ok(files)
}

/// The states in their order, each laid over the first.
fn given(part: &Part) -> Result<Vec<State>, serde_json::Error> {
    let mut states: Vec<State> = Vec::new();
    for (name, own) in &part.states {
        let mut given = states.first().map(|first| first.given.clone()).unwrap_or_default();
        for key in FOR_THE_PAGE {
            given.remove(key);
        }
        if let Value::Object(own) = serde_json::to_value(own)? {
            given.extend(own);
        }
        states.push(State { name: name.as_str().unwrap_or_default().to_owned(), given });
    }
    Ok(states)
}

/// Which states stand on which page: one page a direction, or one a state where the part has fixed ids.
fn pages(part: &Part, states: Vec<State>) -> BTreeMap<String, Vec<State>> {
    let mut pages: BTreeMap<String, Vec<State>> = BTreeMap::new();
    for (number, state) in states.into_iter().enumerate() {
        let address = match part.alone {
            Some(_) => format!("{}-{}-{number}.html", part.part, state.direction()),
            None => format!("{}-{}.html", part.part, state.direction()),
        };
        pages.entry(address).or_default().push(state);
    }
    pages
}

fn draw(theme: &Theme, part: &Part, states: &[State]) -> Result<String, RenderFailed> {
    let name = format!("states/{}.html", part.part);
    let words = Arc::new(Words::of("en", &[]));
    let mut tera = theme.templates(FRAME)?;
    functions::register(&mut tera, &words, Targets::new(), None, None);
    tera.add_raw_templates(vec![(name.clone(), template(part, states))]).map_err(|error| faulty(&name, &error))?;
    let context = tera::Context::from_serialize(&seen(part, states)).map_err(|error| faulty(&name, &error))?;
    tera.render(&name, &context).map_err(|error| faulty(&name, &error))
}

fn seen(part: &Part, states: &[State]) -> Value {
    let states: Vec<Value> = states.iter().map(|state| json!({"name": state.name, "given": state.given})).collect();
    let direction = states.first().and_then(|state| state["given"]["direction"].as_str()).map(str::to_owned);
    json!({
        "page": {"title": part.part, "code": "STATES00", "key": part.part, "kind": "kind-about"},
        "book": {"title": "States", "language": "en", "direction": direction},
        "body": {"is": "states"},
        "about": part.about,
        "states": states,
        "root": "",
    })
}

/// The page's template: the head is the one of every page, the states stand below one another.
fn template(part: &Part, states: &[State]) -> String {
    let mut text = String::from(concat!(
        "{% extends \"pages/frame.html\" %}{% block whole %}",
        "<link rel=\"stylesheet\" href=\"look/states.css\"><main class=\"main\"><h1>{{ page.title }}</h1><p>{{ about }}</p>\n"
    ));
    for (at, state) in states.iter().enumerate() {
        text.push_str(&format!(
            "<h2>{{{{ states[{at}].name }}}}</h2>\n<div class=\"state state-{}\" data-typed=\"{{{{ states[{at}].given?.typed or \"\" }}}}\"{}>\n",
            state.given.get("width").map_or_else(|| "any".to_owned(), Value::to_string),
            if state.given.contains_key("focused") { " data-focused" } else { "" },
        ));
        text.push_str(&format!("{{{{ <{}{} /> }}}}\n</div>\n", part.component, state.arguments(at)));
    }
    text.push_str("</main>{% endblock whole %}\n");
    text
}
