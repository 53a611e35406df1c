//! Counts that were tallied move the minutes as another share does, and no cell that a spreadsheet would run comes out again.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::cli::{Colour, Terminal};
use coquille::handbook::page::{Body, SheetOf};
use std::io::Write;
use std::path::Path;
use std::sync::{Arc, Mutex};

/// A guide whose counts add up to 40, so that ten more of the first make its share 40 in 100 and leave the others' as they were.
const FAULT: &str = "symptom: dark
title: It is dark
kit: foil
seen on: tester
says: It is dark.
shares: counted
causes:
  - {cause: dirt, title: Dirt, seen: 10, lasting: mend}
  - {cause: break, title: A break, seen: 15, lasting: renew}
  - {cause: bend, title: A bend, seen: 15, lasting: straighten}
probes:
  - probe: look
    ask: Is it dirty?
    minutes: 3
    answers: [{answer: dirty, means: dirt}, {answer: clean, means: otherwise}]
  - probe: feel
    ask: Is it bent?
    minutes: 7
    answers: [{answer: bent, means: bend}, {answer: straight, means: otherwise}]
not on this list: {says: Ask., lasting: renew, seen: 0}
";

fn handbook() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let put = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
    put(
        "handbook.yaml",
        "handbook: club\ntitle: A club\nedition: Autumn\nlanguage: en\ncaution: Ask.\nkit: [foil, tester]\n",
    );
    put("dark.yaml", FAULT);
    for job in ["mend", "renew", "straighten"] {
        let text =
            format!("procedure: {job}\ntitle: Do it\nkit: foil\nfor: It.\nhands-on: 5\nsteps: [{{do: Do it.}}]\n");
        put(&format!("{job}.yaml"), &text);
    }
    folder
}

/// A stream whose words can be read afterwards.
#[derive(Clone, Default)]
struct Buffer(Arc<Mutex<Vec<u8>>>);

impl Write for Buffer {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.lock().unwrap().extend_from_slice(bytes);
        Ok(bytes.len())
    }
    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// What a command says, on both streams.
fn said(args: &[&str]) -> String {
    let (out, notes) = streams(args);
    out + &notes
}

/// What a command says: what it was asked for, and its notes.
fn streams(args: &[&str]) -> (String, String) {
    let (out, err) = (Buffer::default(), Buffer::default());
    let mut terminal = Terminal { out: Box::new(out.clone()), err: Box::new(err.clone()), colour: Colour::Plain };
    coquille::cli::run(std::iter::once("coquille").chain(args.iter().copied()).map(Into::into), &mut terminal);
    let text = |buffer: Buffer| String::from_utf8(buffer.0.lock().unwrap().clone()).unwrap();
    (text(out), text(err))
}

fn tallied(folder: &Path, rows: &str) -> String {
    let (counts, notes) = counted(folder, rows);
    counts + &notes
}

fn counted(folder: &Path, rows: &str) -> (String, String) {
    let table = folder.join("bench.csv");
    std::fs::write(&table, format!("date,item number,guide,cause,minutes\n{rows}")).unwrap();
    streams(&["tally", table.to_str().unwrap(), "--in", folder.to_str().unwrap()])
}

/// Minutes of a line of the tally, before and now.
fn minutes(said: &str, line: &str) -> (String, String) {
    let line = said.lines().find(|known| known.contains(line)).unwrap();
    let numbers: Vec<&str> = line.split_whitespace().filter(|word| word.parse::<f64>().is_ok()).collect();
    (numbers[0].to_owned(), numbers[1].to_owned())
}

#[test]
fn minutes_move_as_another_share_moves_them() {
    let folder = handbook();
    let at = folder.path().to_str().unwrap().to_owned();
    let said_by_tally = tallied(folder.path(), &"2026-11-02,F3,dark,dirt,4\n".repeat(10));
    let reckoned = |more: &[&str]| -> (f64, f64) {
        let args = ["reckon", "dark", "--in", &at, "--format", "json"].iter().chain(more).copied().collect::<Vec<_>>();
        let json: serde_json::Value = serde_json::from_str(&said(&args)).unwrap();
        let of = |order: &str| json[order]["expected_minutes"].as_f64().unwrap_or_else(|| panic!("{json:#}"));
        (of("as_written"), of("quickest"))
    };
    let (before, after) = (reckoned(&[]), reckoned(&["--what-if", "dirt=40"]));
    let rounded = |minutes: f64| format!("{minutes:.1}");
    assert_eq!(minutes(&said_by_tally, "as written"), (rounded(before.0), rounded(after.0)), "{said_by_tally}");
    assert_eq!(minutes(&said_by_tally, "quickest order"), (rounded(before.1), rounded(after.1)), "{said_by_tally}");
    assert_ne!(before, after);
}

#[test]
fn no_formula_comes_out_again_whatever_cell_it_is_in() {
    let folder = handbook();
    let formulas = ["=cmd|' /C calc'!A0", "+EVIL", "-EVIL", "@EVIL", "\"\tEVIL\"", " =EVIL", "＝EVIL"];
    for formula in formulas {
        let core = formula.trim_matches(['"', ' ', '\t']);
        for cell in 0..5 {
            let mut row = ["2026-11-02", "F3", "dark", "dirt", "4"];
            row[cell] = formula;
            let said = tallied(folder.path(), &format!("{}\n", row.join(",")));
            assert!(said.contains("formula"), "{said}");
            assert!(!said.contains(core), "{said}");
        }
    }
}

#[test]
fn what_is_pasted_proofs_as_it_is() {
    let folder = handbook();
    let rows = "2026-11-02,F3,dark,dirt,4\n3.11.2026,F4,dark,\"a worm, in the \"\"wire\"\"\",\n".repeat(3);
    let (yaml, _) = counted(folder.path(), &rows);
    assert!(yaml.contains("Written in by hand 3 times"), "{yaml}");
    let pasted: serde_yaml::Value = serde_yaml::from_str(&yaml).unwrap();
    assert_eq!(pasted["causes"][0]["seen"], 13, "{yaml}");
    assert_eq!(pasted["not on this list"]["seen"], 3);
}

#[test]
fn a_slip_in_a_causes_id_is_a_finding_and_words_written_in_by_hand_count_as_such() {
    let folder = handbook();
    let rows = "2026-11-02,F3,dark,brake,4\n2026-11-02,F4,dark,brake it was not,4\n2026-11-02,F5,dark,rust,4\n";
    let (counts, notes) = counted(folder.path(), rows);
    // The terminal breaks lines where the width of the path wants it.
    let notes = notes.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        notes.contains("bench.csv:2:20: left out: `brake` is no cause of `dark`: did you mean `break`?"),
        "{notes}"
    );
    assert!(notes.contains("Counted 2 cases in 1 guide, 1 row left out."), "{notes}");
    assert!(counts.contains("# Seen: not on the list 0 to 2."), "{counts}");
}

/// A checklist for a queue: in the file the meter stands first, on the sheet what is looked at.
const CONTROL: &str = "checklist: control
title: Weapon control
for: Before the bouts.
minutes: 5
sheet: queue
items:
  - {item: reading, do: Across the socket., with: meter, if not: dark}
  - {item: blade, do: Blade without crack., if not: straighten}
  - {item: bag, do: 'A bag, any <word:bag>.'}
  - {item: tip, do: Tip holds., with: meter, if not: dark}
";

/// The handbook with a queue, and with a way to learn.
fn with_control() -> tempfile::TempDir {
    let folder = handbook();
    let put = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
    put("control.yaml", CONTROL);
    put("stores.yaml", "stores: bench\ntitle: Bench\ntools: [{tool: meter, title: Meter}]\n");
    put("words.yaml", "words: trade\ntitle: Words\nentries: [{word: bag, title: Bag, says: It.}]\n");
    put(
        "way.yaml",
        "learning: way\ntitle: A season\nfor: All.\nstops: [{stop: first, title: Finding it, read: [mend], practise: dark}]\n",
    );
    folder
}

fn failed(folder: &Path, rows: &str) -> (String, String) {
    let table = folder.join("control.csv");
    std::fs::write(&table, format!("date,number,check,item,why\n{rows}")).unwrap();
    let (text, notes) = streams(&["tally", table.to_str().unwrap(), "--in", folder.to_str().unwrap()]);
    (text, notes.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
fn what_failed_is_counted_by_guide_and_the_most_frequent_is_taught_next() {
    let folder = with_control();
    let rows =
        "7.11.2026,4,control,reading,open\n7.11.2026,5,Weapon control,Tip holds,\n7.11.2026,5,control,blade,crack\n";
    let (text, notes) = failed(folder.path(), rows);
    let at = |words: &str| text.find(words).unwrap_or_else(|| panic!("`{words}` in {text}"));
    assert!(at("3 failures of 2 fencers") < at("  2  It is dark (dark)"), "{text}");
    assert!(at("  2  It is dark (dark)") < at("  1  Do it (straighten)"), "{text}");
    assert!(at("Teach next: It is dark.") < at("“A season”, at the stop “Finding it”"), "{text}");
    assert_eq!(notes, "Counted 3 failures. No guide was changed.");
}

#[test]
fn guides_with_as_many_failures_are_named_both_and_an_item_without_a_guide_asks_for_one() {
    let folder = with_control();
    let rows =
        "7.11.2026,4,control,tip,\n7.11.2026,,control,blade,\n7.11.2026,6,control,bag,\n7.11.2026,7,control,bag,\n";
    let (text, _) = failed(folder.path(), rows);
    assert!(text.contains("control.csv: 4 failures.\n"), "one fencer has no number, so nobody counts them: {text}");
    assert!(text.contains("  2  No guide yet: write one, and name it under `if not:`"), "{text}");
    assert!(text.contains("Teach next: It is dark.") && text.contains("Or: Do it."), "{text}");
}

#[test]
fn an_items_number_is_the_one_that_is_printed_on_the_sheet() {
    let folder = with_control();
    let read = coquille::source::read(folder.path()).unwrap();
    let laid = coquille::handbook::lay_out(&coquille::proof::proof(&read), &read);
    let queue = laid.pages.iter().find_map(|page| match &page.body {
        Body::Sheet(sheet) => {
            if let SheetOf::Queue(queue) = &sheet.of {
                Some(queue)
            } else {
                None
            }
        }
        _ => None,
    });
    let items: Vec<_> = queue.unwrap().list.groups.iter().flat_map(|group| &group.items).collect();
    let first = items.iter().map(|item| item.id.as_str()).collect::<Vec<_>>();
    assert_eq!(first, ["control-blade", "control-bag", "control-reading", "control-tip"]);
    for item in items {
        let (text, _) = failed(folder.path(), &format!("7.11.2026,4,control,{},\n", item.number));
        let words = item.what.full.trim_end_matches('.').replace("<word:bag>", "bag");
        assert!(text.contains(&format!("did not pass: {words}")), "{}: {text}", item.number);
    }
    assert!(failed(folder.path(), "7.11.2026,4,control,5,\n").1.contains("write its number on the sheet, 1 to 4"));
}

#[test]
fn no_formula_comes_out_of_a_table_of_failures_either() {
    let folder = with_control();
    for cell in 0..5 {
        let mut row = ["2026-11-02", "4", "control", "tip", "open"];
        row[cell] = "=EVIL()";
        let (text, notes) = failed(folder.path(), &format!("{}\n", row.join(",")));
        assert!(notes.contains("formula") && !text.contains("EVIL") && !notes.contains("EVIL"), "{text}{notes}");
    }
}
