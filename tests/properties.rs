//! What holds for any bytes and any spoiled guide: nothing panics, places lie inside their files, names are safe everywhere, and
//! a second YAML reader sees the same values.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod proof_support;

use coquille::cli::{Colour, Terminal};
use coquille::handbook::lay_out;
use coquille::model::Kind;
use coquille::proof::{Proofed, proof, why_no_id};
use coquille::render::{Theme, render};
use coquille::source::{FileId, Folder, Node, NodeKind, Place, Text, parse, read, read_texts};
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::io::Write;
use std::path::Path;
use std::sync::{Arc, LazyLock, Mutex};
use std::time::{Duration, Instant};

/// A fault-finding guide with every key, and small enough to be reckoned a thousand times.
const FAULT: &str = "symptom: dark
title: It is dark
kit: foil
seen on: tester
lamps: {at rest: dark}
says: 'It is dark. See <word:loop>, <limit:travel> and [the job](procedure:mend).'
also: [no light, dead]
first:
  - first: cord
    ask: Does another cord help?
    do: Take another cord.
    minutes: 0.5
    answers:
      - {answer: no, then: go on}
      - {answer: yes, then: mend, says: It is the cord.}
shares: estimated
causes:
  - {cause: dirt, title: Dirt, place: tip, share: 50, lasting: mend, stop-gap: shake, says: It is dirty.}
  - {cause: break, title: Break, place: blade, share: 30.5, lasting: renew}
  - {cause: loose, title: Loose, share: 10, lasting: mend}
access:
  - {access: tape-off, title: Tape off, closing: Tape on, open: 1, close: 2, procedure: mend}
  - {access: tip-out, title: Tip out, open: 1, close: 2, needs: tape-off}
order: as written
tell apart: causes
why: From the tip on.
probes:
  - probe: look
    ask: Is it dirty?
    minutes: 30 s
    needs: tip-out
    safety: {caution: It is sharp.}
    answers: [{answer: dirty, means: [{cause: dirt, times: 2 in 3}]}, {answer: clean, means: otherwise}]
  - {probe: swap, ask: Does a swap help?, minutes: 2, after: look, mends: loose}
not on this list: {says: Ask., lasting: renew}
accepts: [{finding: no-minutes, because: It is quick.}]
";
const SHAKE: &str = "procedure: shake
title: Shake it
kit: foil
place: tip
for: A day.
holds: a day
lasting: mend
hands-on: 1
steps:
  - do: Shake it.
    short: Shake.
    steps: [Up., {do: Down., short: Down}]
    torque: {torque: 3 N·m, tolerance: ± 10 %, thread: M6, class: '4.8', state: dry}
    wait: 1 h
    wait for: luck
prove: [{read: Travel, limit: travel}]
";
const LIMITS: &str = "limits: shop
title: Ours
source: shop
entries:
  - {limit: travel, title: Travel, kit: foil, between: 0.5 .. 1 mm, how: With a gauge.}
  - {limit: weight, title: Weight, must lift: 500 g}
";
const WORDS: &str = "words: trade\ntitle: Words\nentries:\n  - {word: loop, says: Out and back., also: [round]}\n";
const CHECKLIST: &str = "checklist: look-over
title: Look it over
kit: foil
for: The day.
minutes: 5
items:
  - {item: tip, heading: Front, do: Look at the tip., place: tip, read: Travel, limit: travel, if not: mend}
";

const LEARNING: &str = "learning: first-steps
title: First steps
for: Beginners.
stops:
  - {stop: tip, title: The tip, says: It moves., minutes: 20, read: [mend, look-over], you can: See., practise: dark}
  - {stop: after, title: After, read: [shake, foil]}
done: Go on.
";

/// A small sound handbook, by name: the fixtures' base with a guide of every kind.
static SMALL: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| {
    let base = proof_support::base().into_iter().map(|(name, bytes)| (name, String::from_utf8(bytes).unwrap()));
    let circuit = std::fs::read_to_string("guides/circuits/foil.yaml").unwrap();
    let more = [
        ("dark", FAULT),
        ("shake", SHAKE),
        ("shop", LIMITS),
        ("trade", WORDS),
        ("look-over", CHECKLIST),
        ("first-steps", LEARNING),
        ("foil", &circuit),
    ];
    let more: Vec<_> = more.map(|(name, text)| (format!("{name}.yaml"), text.to_owned())).into();
    base.chain(more).collect()
});

/// The theme that comes with the program.
static THEME: LazyLock<Theme> = LazyLock::new(|| Theme::with(BTreeMap::new()).unwrap());

/// All demo guides, by name.
static DEMO: LazyLock<Vec<(String, String)>> = LazyLock::new(|| {
    let folder = read(Path::new("guides")).unwrap();
    folder.texts.iter().map(|(_, text)| (text.name.clone(), text.text.clone())).collect()
});

/// Signs that mean something in YAML or in Markdown, and a few that mean something to a terminal or a file system.
const SIGNS: &[&str] = &[
    ":",
    ": ",
    "-",
    "- ",
    "#",
    " #",
    "{",
    "}",
    "[",
    "]",
    ",",
    "&a",
    "*a",
    "!b",
    "|",
    ">",
    "%",
    "@",
    "`",
    "'",
    "\"",
    "\\",
    "\n",
    "\n  ",
    "\t",
    "\r\n",
    "\u{feff}",
    "\u{1b}[31m",
    "\u{202e}",
    "\u{85}",
    "\0",
    "<b>",
    "](x:y)",
    "<word:",
    "~",
    "---",
    "...",
    "<<: ",
    "é",
    "中",
    "🤺",
    "..",
    "/",
    "0",
    "-1",
    "99999999999",
    "1e9",
    "yes",
    "null",
    "otherwise",
    "go on",
    "index",
    "nul",
];

/// A cut and a sign at a place of a text.
#[derive(Debug, Clone)]
struct Spoil {
    at: prop::sample::Index,
    cut: usize,
    sign: &'static str,
}

fn spoils() -> impl Strategy<Value = Vec<Spoil>> {
    let one = (any::<prop::sample::Index>(), 0..40_usize, prop::sample::select(SIGNS));
    prop::collection::vec(one.prop_map(|(at, cut, sign)| Spoil { at, cut, sign }), 1..4)
}

fn spoiled(text: &str, spoils: &[Spoil]) -> String {
    let mut letters: Vec<char> = text.chars().collect();
    for spoil in spoils {
        let at = spoil.at.index(letters.len() + 1);
        let end = (at + spoil.cut).min(letters.len());
        letters.splice(at..end, spoil.sign.chars());
    }
    letters.into_iter().collect()
}

/// Proofs a handbook as far as it goes and looks at everything that came out.
fn all_the_way(folder: &Folder) {
    let proofed = proof(folder);
    places_lie_inside(folder, &proofed);
    if proofed.errors() == 0 {
        let files = render(lay_out(&proofed, folder), &THEME).unwrap();
        assert!(files.contains_key("index.html"));
    }
}

fn places_lie_inside(folder: &Folder, proofed: &Proofed) {
    for finding in &proofed.findings {
        inside(folder, finding.place);
        finding.also.iter().for_each(|(place, _)| inside(folder, *place));
    }
}

fn inside(folder: &Folder, place: Place) {
    let Some(text) = folder.texts.get(place.file) else { return assert_eq!(place, Place::top(FileId(0))) };
    assert!(text.text.get(place.bytes()).is_some(), "{place:?} in {} bytes", text.text.len());
    assert_eq!(text.line_column(place.start as usize), (place.line, place.column));
}

/// What the command prints for people about a handbook.
fn shown(name: &str, text: &str) -> String {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join(name), text).unwrap();
    let out = Buffer::default();
    let mut terminal = Terminal { out: Box::new(out.clone()), err: Box::new(std::io::sink()), colour: Colour::Plain };
    coquille::cli::run(["coquille".into(), "proof".into(), folder.path().into()], &mut terminal);
    String::from_utf8(out.0.lock().unwrap().clone()).unwrap()
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

fn with(changed: &str, text: &str) -> Folder {
    let all = SMALL.iter().map(|(name, sound)| (name.as_str(), if name == changed { text } else { sound.as_str() }));
    read_texts(all)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 120, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("a.yaml"), &bytes).unwrap();
        all_the_way(&read(folder.path()).unwrap());
    }

    #[test]
    fn no_text_of_signs_panics(signs in prop::collection::vec(prop::sample::select(SIGNS), 0..60), kind in prop::sample::select(&Kind::ALL[..])) {
        all_the_way(&with("mend.yaml", &signs.concat()));
        all_the_way(&with("mend.yaml", &format!("{}: {}", kind.key(), signs.concat())));
    }

    #[test]
    fn ids_are_safe_as_names_of_files(id in "[a-zA-Z0-9.\\-_ :/\\\\~é]{0,12}|(con|nul|aux|prn|com[0-9]|LPT[1-9])[.a]?") {
        if why_no_id(&id).is_none() {
            prop_assert!(safe_everywhere(&id), "{}", id);
        }
    }

    #[test]
    fn a_second_reader_sees_the_same_in_spoiled_guides(which in any::<prop::sample::Index>(), spoils in spoils()) {
        let (name, sound) = &DEMO[which.index(DEMO.len())];
        let text = spoiled(sound, &spoils);
        if let (Some(ours), Some(theirs)) = (ours(&text), theirs(&text)) {
            prop_assert_eq!(ours, theirs, "{}", name);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_spoiled_guide_panics(which in any::<prop::sample::Index>(), spoils in spoils()) {
        let (name, sound) = SMALL.iter().nth(which.index(SMALL.len())).unwrap();
        all_the_way(&with(name, &spoiled(sound, &spoils)));
    }

    #[test]
    fn a_guide_cannot_drive_the_terminal(which in any::<prop::sample::Index>(), spoils in spoils()) {
        let (name, sound) = SMALL.iter().nth(which.index(SMALL.len())).unwrap();
        let name = name.rsplit('/').next().unwrap();
        let shown = shown(name, &spoiled(sound, &spoils));
        let harmful = |letter: &char| letter.is_control() && *letter != '\n' || ('\u{202a}'..='\u{202e}').contains(letter);
        prop_assert_eq!(shown.chars().find(harmful), None, "{}", shown);
    }

    #[test]
    fn no_changed_value_panics(which in any::<prop::sample::Index>(), word in any::<prop::sample::Index>(), sign in prop::sample::select(SIGNS)) {
        let (name, sound) = SMALL.iter().nth(which.index(SMALL.len())).unwrap();
        let words: Vec<&str> = sound.split_inclusive([' ', '\n', ',', ']']).collect();
        let at = word.index(words.len());
        let changed: String = words.iter().enumerate().map(|(i, word)| if i == at { format!("{sign} ") } else { (*word).to_owned() }).collect();
        all_the_way(&with(name, &changed));
    }
}

#[test]
fn the_small_handbook_is_sound() {
    let folder = with("", "");
    assert_eq!(
        proof(&folder).findings.iter().map(|found| found.message.clone()).collect::<Vec<_>>(),
        ["no circuit proofs `dark`", "nothing is left of `no-minutes` to accept"]
    );
    all_the_way(&folder);
}

#[test]
fn every_fixture_goes_all_the_way() {
    let cases = proof_support::suites().into_iter().flat_map(|suite| suite.cases);
    cases.for_each(|case| all_the_way(&case.proofed().0));
}

/// The rules for names of Windows, which are the strictest of the three ("Naming Files, Paths, and Namespaces", Microsoft Learn).
fn safe_everywhere(name: &str) -> bool {
    let stem = name.split('.').next().unwrap_or("").to_ascii_uppercase();
    let numbered = ["COM", "LPT"].iter().any(|device| {
        stem.strip_prefix(device).is_some_and(|rest| rest.len() == 1 && rest.bytes().all(|b| b.is_ascii_digit()))
    });
    let reserved = ["CON", "PRN", "AUX", "NUL"].contains(&stem.as_str()) || (numbered && !stem.ends_with('0'));
    let letters =
        name.chars().all(|letter| letter.is_ascii() && !letter.is_control() && !"<>:\"/\\|?* ".contains(letter));
    !name.is_empty() && !reserved && letters && !name.starts_with(['.', '-']) && !name.ends_with(['.', ' '])
}

/// What takes time in proportion to its length ends far below this, even on a busy machine; what takes its square does not.
const PATIENCE: Duration = Duration::from_secs(40);

#[test]
fn what_is_made_to_do_harm_is_refused_at_once() {
    let deep = "[".repeat(100_000);
    let braces = "{a: ".repeat(100_000);
    let dashes = "- ".repeat(100_000);
    let bomb: String = (0..20).map(|n| format!("k{n}: &a{n} [{}]\n", format!("*a{}, ", n - 1).repeat(9))).collect();
    let long = format!("words: {}", "a ".repeat(500_000));
    let keys: String = (0..60_000).map(|n| format!("k{n}: 1\n")).collect();
    let commas = format!("words: [{}]", "a,".repeat(190_000));
    let causes: String =
        (0..12_000).map(|n| format!("  - {{cause: c{n}, title: C, lasting: l{n}, share: 1}}\n")).collect();
    let means: String = (0..12_000).map(|n| format!("d{n}, ")).collect();
    let names = format!(
        "symptom: s\ntitle: S\nkit: foil\nseen on: tester\nsays: S\ncauses:\n{causes}probes: [{{probe: p, ask: P, minutes: 1, answers: [{{answer: a, means: [{means}]}}]}}]"
    );
    let links = format!("words: trade\ntitle: W\nentries: [{{word: a, says: '{}'}}]", "<word:a> <b>".repeat(60_000));
    for (what, text) in [
        ("deep", deep),
        ("braces", braces),
        ("dashes", dashes),
        ("bomb", bomb),
        ("long", long),
        ("keys", keys),
        ("commas", commas),
        ("links", links),
        ("names", names),
    ] {
        let start = Instant::now();
        let folder = read_texts([("a.yaml", text.as_str())]);
        let proofed = proof(&folder);
        assert!(proofed.errors() > 0, "{what}");
        assert!(start.elapsed() < PATIENCE, "{what}: {:?}", start.elapsed());
    }
}

/// A tree of texts: what two readers must agree on.
#[derive(Debug, PartialEq)]
enum Tree {
    Nothing,
    Text(String),
    List(Vec<Tree>),
    Map(Vec<(String, Tree)>),
}

fn ours(text: &str) -> Option<Tree> {
    let (tree, flaws) = parse(FileId(0), &Text::new("a.yaml", text));
    tree.filter(|_| flaws.is_empty()).map(|node| of_ours(&node))
}

fn of_ours(node: &Node) -> Tree {
    match &node.kind {
        NodeKind::Nothing => Tree::Nothing,
        NodeKind::Scalar(text) => Tree::Text(valued(text)),
        NodeKind::List(items) => Tree::List(items.iter().map(of_ours).collect()),
        NodeKind::Map(entries) => {
            Tree::Map(entries.iter().map(|(key, value)| (valued(&key.text), of_ours(value))).collect())
        }
    }
}

fn theirs(text: &str) -> Option<Tree> {
    serde_yaml::from_str::<serde_yaml::Value>(text).ok().map(|value| of_theirs(&value))
}

fn of_theirs(value: &serde_yaml::Value) -> Tree {
    use serde_yaml::Value;
    match value {
        Value::Null => Tree::Nothing,
        Value::Bool(yes) => Tree::Text(valued(&yes.to_string())),
        Value::Number(number) => Tree::Text(valued(&number.to_string())),
        Value::String(text) => Tree::Text(valued(text)),
        Value::Sequence(items) => Tree::List(items.iter().map(of_theirs).collect()),
        Value::Mapping(map) => Tree::Map(map.iter().map(|(key, value)| (key_text(key), of_theirs(value))).collect()),
        Value::Tagged(tagged) => of_theirs(&tagged.value),
    }
}

fn key_text(key: &serde_yaml::Value) -> String {
    match of_theirs(key) {
        Tree::Text(text) => text,
        Tree::Nothing => "~".to_owned(),
        other => format!("{other:?}"),
    }
}

/// A number by its value, so that `2.50` and `2.5` are the same; any other text as it is.
fn valued(text: &str) -> String {
    let lower = text.to_ascii_lowercase();
    if ["true", "false"].contains(&lower.as_str()) {
        return lower;
    }
    let integer = |digits: &str, radix| i128::from_str_radix(digits, radix).ok().map(|number| number as f64);
    let sized = text.trim_start_matches(['+', '-']);
    let number = match sized.get(..2) {
        Some("0x") => integer(&sized[2..], 16),
        Some("0o") => integer(&sized[2..], 8),
        Some("0b") => integer(&sized[2..], 2),
        _ => None,
    };
    let sign = if text.starts_with('-') { -1.0 } else { 1.0 };
    let special = match lower.trim_start_matches(['+', '-']) {
        ".inf" => Some(f64::INFINITY),
        _ => None,
    };
    let number = number.or(special).map(|number| number * sign).or_else(|| text.parse::<f64>().ok());
    number.map_or_else(|| text.to_owned(), |number| number.to_string())
}

#[test]
fn a_second_reader_sees_the_same_in_every_demo_guide() {
    assert!(DEMO.len() > 50, "the guides were not found");
    for (name, text) in DEMO.iter() {
        assert_eq!(ours(text), theirs(text), "{name}");
        assert!(ours(text).is_some(), "{name}");
    }
}
