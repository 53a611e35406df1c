//! A bind that is killed leaves a whole handbook, whichever moment it was.
//!
//! A child of this very test program presses two handbooks in turn into one folder and is killed without warning, fifty
//! times for each way. The exchange way has to be whole as it lies there; the journal way after the next command.

#![allow(clippy::unwrap_used, reason = "in a test's own small functions a panic is the report, as in the tests")]

use coquille::press::{Address, CONTENTS, Contents, Manner, Recovered, Strangers, Way};
use coquille::press::{press, recover};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

const KILLS: u64 = 50;
const WAY: &str = "COQUILLE_TEST_WAY";
const FIRST: &str = "COQUILLE_TEST_FIRST";
const FOLDER: &str = "COQUILLE_TEST_FOLDER";
type Files = BTreeMap<Address, Vec<u8>>;
/// What no bind wrote: in the root, in a folder of ours, in a folder of its own.
const STRANGERS: [&str; 3] = ["notes.txt", "pages/mine.txt", "photos/evening/tip.jpg"];

#[test]
fn fifty_kills_of_the_exchange_way_leave_a_whole_handbook_each_time() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("site");
    let span = start_with(&out, Way::Exchange);
    let mut seen = Seen::default();
    for round in 0..4 * KILLS {
        if round >= KILLS && seen.enough() {
            break;
        }
        kill_a_press(folder.path(), "exchange", round, span);
        let cut_short = folder.path().join(".site.binding").exists();
        // No recovery before the look: this is what a reader has who opens the folder now.
        seen.note(which(&out), cut_short);
        strangers_are_there(&out);
        if round.is_multiple_of(3) {
            recover(&out).unwrap();
            seen.note(which(&out), false);
        }
    }
    assert!(seen.enough(), "both handbooks and some half-done binds have to be met: {seen:?}");
    recover(&out).unwrap();
    strangers_are_there(&out);
    assert!(!folder.path().join(".site.binding").exists());
}

#[test]
fn after_fifty_kills_of_the_journal_way_the_next_command_makes_the_handbook_whole() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("site");
    let span = start_with(&out, Way::Journal);
    let mut seen = Seen::default();
    let mut finished = 0;
    for round in 0..4 * KILLS {
        if round >= KILLS && seen.enough() && finished > 0 {
            break;
        }
        kill_a_press(folder.path(), "journal", round, span);
        let cut_short = folder.path().join(".site.binding").exists();
        strangers_are_there(&out);
        finished += usize::from(recover(&out).unwrap() == Recovered::Finished);
        seen.note(which(&out), cut_short);
        strangers_are_there(&out);
        assert!(!folder.path().join(".site.binding").exists());
    }
    assert!(seen.enough(), "both handbooks and some half-done binds have to be met: {seen:?}");
    assert!(finished > 0, "no kill came while the journal was at work");
}

/// Not a test of its own: what the two tests above start and kill.
#[test]
#[ignore = "runs until it is killed"]
fn the_child_presses_two_handbooks_in_turn() {
    let Ok(folder) = std::env::var(FOLDER) else {
        return;
    };
    let out = PathBuf::from(folder).join("site");
    let way = match std::env::var(WAY).unwrap().as_str() {
        "exchange" => Way::Exchange,
        _ => Way::Journal,
    };
    let mut handbooks = [handbook_a(), handbook_b()];
    if std::env::var(FIRST).unwrap() == "b" {
        handbooks.reverse();
    }
    loop {
        for files in &handbooks {
            let pressed = press(&out, files, manner(way), &()).unwrap();
            assert!(pressed.way.is_none() || pressed.way == Some(way));
        }
    }
}

/// What the looks after the kills have found.
#[derive(Debug, Default)]
struct Seen {
    a: usize,
    b: usize,
    cut_short: usize,
}

impl Seen {
    fn note(&mut self, which: char, cut_short: bool) {
        match which {
            'a' => self.a += 1,
            _ => self.b += 1,
        }
        self.cut_short += usize::from(cut_short);
    }

    /// A test in which every kill came too early or too late would show nothing; on a busy machine there are more of them.
    fn enough(&self) -> bool {
        self.a > 0 && self.b > 0 && self.cut_short >= 10
    }
}

fn manner(way: Way) -> Manner {
    let strangers = Strangers::Refuse;
    Manner { way, strangers }
}

/// Binds both and puts the strangers in; tells how long a child will take for three binds or so on this machine today.
fn start_with(out: &Path, way: Way) -> Duration {
    press(out, &handbook_b(), manner(way), &()).unwrap();
    for name in STRANGERS {
        fs::create_dir_all(out.join(name).parent().unwrap()).unwrap();
        fs::write(out.join(name), name).unwrap();
    }
    let start = Instant::now();
    press(out, &handbook_a(), manner(way), &()).unwrap();
    (start.elapsed() * 3).clamp(Duration::from_millis(60), Duration::from_millis(350))
}

/// When to kill: spread over the span by a multiplicative sequence, so anywhere in the child's work.
fn moment(round: u64, span: Duration) -> Duration {
    let thousandths = (round * 618) % 1000;
    Duration::from_millis(8) + span * u32::try_from(thousandths).unwrap() / 1000
}

/// Starts a child, lets it work until the round's moment and kills it.
fn kill_a_press(folder: &Path, way: &str, round: u64, span: Duration) {
    let first = if round.is_multiple_of(2) { "b" } else { "a" };
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--ignored", "--exact", "the_child_presses_two_handbooks_in_turn"])
        .env(WAY, way)
        .env(FIRST, first)
        .env(FOLDER, folder)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    std::thread::sleep(moment(round, span));
    assert!(is_running(&mut child), "the child failed before it was killed");
    child.kill().unwrap();
    child.wait().unwrap();
}

fn is_running(child: &mut Child) -> bool {
    child.try_wait().unwrap().is_none()
}

/// Which of the two handbooks stands in the folder, wholly and with nothing else but the strangers.
fn which(out: &Path) -> char {
    let found = all_files(out);
    let matching = [('a', handbook_a()), ('b', handbook_b())];
    let matching = matching.into_iter().find(|(_, files)| {
        let mut expected: BTreeMap<String, Vec<u8>> =
            files.iter().map(|(address, bytes)| (address.to_string(), bytes.clone())).collect();
        let list = Contents::of(files).to_text().into_bytes();
        expected.insert(CONTENTS.to_owned(), list);
        expected == found
    });
    matching.expect("the folder holds neither handbook wholly").0
}

fn all_files(out: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries = walkdir::WalkDir::new(out).into_iter().map(Result::unwrap);
    let files = entries.filter(|entry| entry.file_type().is_file());
    files
        .map(|entry| {
            let relative = entry.path().strip_prefix(out).unwrap().to_str().unwrap();
            (relative.to_owned(), fs::read(entry.path()).unwrap())
        })
        .filter(|(name, _)| !STRANGERS.contains(&name.as_str()))
        .collect()
}

fn strangers_are_there(out: &Path) {
    for name in STRANGERS {
        assert_eq!(fs::read_to_string(out.join(name)).unwrap(), name);
    }
}

/// Three hundred files: some the same in both, some with other bytes, some in one only.
fn handbook(own: char) -> Files {
    let common = (0..100).map(|n| (format!("pages/same-{n}.html"), format!("same {n}")));
    let changed = (0..150).map(|n| (format!("pages/{}/page-{n}.html", n % 7), format!("{own} {n}")));
    let alone = (0..50).map(|n| (format!("only-{own}/{n}.html"), format!("only {n}")));
    let files = common.chain(changed).chain(alone);
    files.map(|(address, text)| (Address::parse(&address).unwrap(), text.repeat(40).into_bytes())).collect()
}

fn handbook_a() -> Files {
    handbook('a')
}

fn handbook_b() -> Files {
    handbook('b')
}
