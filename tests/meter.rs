//! `coquille meter` as a session: command, both outputs, outcome.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::cli::{Colour, Outcome, Terminal, run};
use std::ffi::OsString;
use std::io::Write;
use std::sync::{Arc, Mutex};

const GUIDES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/guides");

#[test]
fn one_fault_in_one_position_is_shown_beside_sound_kit() {
    let (outcome, out, err) = meter(&["foil-on-the-bench", "--fault", "worn-at-barrel", "--position", "pressed"]);
    assert_eq!((outcome, err.as_str()), (Outcome::Good, ""));
    let line = |start: &str| out.lines().find(|line| line.trim_start().starts_with(start)).unwrap().to_owned();
    assert!(out.starts_with("A foil on the bench (foil-on-the-bench)\n"), "{out}");
    assert!(line("lamp ").contains("lit (0.39 to 3.5 Ω)") && line("lamp ").contains("sound: dark"), "{out}");
    assert!(line("buzzer").contains("sounds") && line("buzzer").contains("sound: silent"), "{out}");
    assert!(line("ohms-b-tip").contains("as sound kit"), "{out}");
}

#[test]
fn no_line_of_any_table_is_wider_than_80_columns() {
    // The corners of a tester with two lamps are many: one position of each circuit that has one.
    let tables: [&[&str]; 5] = [
        &["foil-on-the-bench", "--position", "pressed"],
        &["foil-on-the-bench", "--fault", "dirty-tip", "--position", "rest"],
        &["foil-at-the-apparatus", "--position", "rest"],
        &["sabre-on-the-bench"],
        &["jacket"],
    ];
    for table in tables {
        let (outcome, out, _) = meter(table);
        assert_eq!(outcome, Outcome::Good, "{table:?}");
        let wide: Vec<&str> = out.lines().filter(|line| line.chars().count() > 80).collect();
        assert!(wide.is_empty(), "{table:?}: {wide:#?}");
    }
}

#[test]
fn a_prefix_can_be_left_out_where_one_name_fits() {
    let (outcome, out, _) = meter(&["foil-bout", "--fault", "no-tip", "--position", "rest"]);
    assert_eq!(outcome, Outcome::Good);
    assert!(out.lines().any(|line| line.contains("red-white") && line.contains("lit")), "{out}");
}

#[test]
fn programs_get_every_reading_with_its_answers_and_figure() {
    let (outcome, out, _) = meter(&["foil-on-the-bench", "--fault", "dirty-tip", "--format", "json"]);
    assert_eq!(outcome, Outcome::Good);
    let table: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!(table["format"], 1);
    assert_eq!(table["circuit"], "foil-on-the-bench");
    let rows = table["rows"].as_array().unwrap();
    let row = |fault: &serde_json::Value| {
        let is =
            |row: &&serde_json::Value| row["fault"] == *fault && row["position"] == "rest" && row["reading"] == "lamp";
        rows.iter().find(is).unwrap()
    };
    assert_eq!(row(&"dirty-tip".into())["shows"], serde_json::json!(["lit", "dark", "comes and goes"]));
    assert_eq!(row(&"dirty-tip".into())["away"], serde_json::json!(["lit"]));
    assert_eq!(row(&serde_json::Value::Null)["shows"], serde_json::json!(["lit"]));
    assert!(row(&serde_json::Value::Null)["figure"]["least"].as_f64().unwrap() > 0.4);
}

#[test]
fn a_name_that_is_not_there_says_the_nearest_and_could_not_run() {
    let (outcome, out, err) = meter(&["foil-on-the-bensh"]);
    assert_eq!((outcome, out.as_str()), (Outcome::CouldNotRun, ""));
    assert!(err.contains("did you mean `foil-on-the-bench`?"), "{err}");
    let (outcome, _, err) = meter(&["foil-on-the-bench", "--fault", "worn-at-barel"]);
    assert_eq!(outcome, Outcome::CouldNotRun);
    assert!(err.contains("did you mean `worn-at-barrel`?"), "{err}");
}

fn meter(args: &[&str]) -> (Outcome, String, String) {
    let (out, err) = (Heard::default(), Heard::default());
    let mut terminal = Terminal { out: Box::new(out.clone()), err: Box::new(err.clone()), colour: Colour::Plain };
    let line = ["coquille", "meter"].iter().chain(args).chain(&["--in", GUIDES]).map(OsString::from);
    let outcome = run(line.collect::<Vec<_>>(), &mut terminal);
    (outcome, out.text(), err.text())
}

/// A stream that a test listens to.
#[derive(Clone, Default)]
struct Heard(Arc<Mutex<Vec<u8>>>);

impl Heard {
    fn text(&self) -> String {
        String::from_utf8(self.0.lock().unwrap().clone()).unwrap()
    }
}

impl Write for Heard {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.lock().unwrap().extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}
