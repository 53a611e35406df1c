//! The real program, killed a hundred times while it binds: the output folder is always a whole handbook.
//!
//! Two editions are bound in turn into one folder. Half of the kills come anywhere in the run, half while files are being written.
//! After each kill the folder is looked at as it lies there, before any other command could mend it.

#![allow(clippy::unwrap_used, reason = "in a test's own small functions a panic is the report, as in the tests")]

#[path = "../benches/bind_support/mod.rs"]
mod bind_support;

use coquille::press::{CONTENTS, Contents};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

const KILLS: u32 = 100;
/// How often the folder is looked at while a bind runs.
const MOMENT: Duration = Duration::from_micros(200);
type Files = BTreeMap<String, Vec<u8>>;

/// An edition: its guides, and what a bind that nobody disturbs makes of them.
struct Edition {
    guides: PathBuf,
    whole: Files,
    takes: Duration,
    /// How long it writes.
    writes: Duration,
}

/// What the kills have met.
#[derive(Debug, Default)]
struct Met {
    editions: [u32; 2],
    at_work: u32,
    writing: u32,
}

impl Met {
    /// Both editions, fifty kills at work, twenty while files are written: half and a fifth of a hundred kills, less of more.
    fn enough(&self) -> bool {
        self.editions.iter().all(|times| *times > 0) && self.at_work >= KILLS / 2 && self.writing >= KILLS / 5
    }
}

#[test]
fn a_bind_killed_at_any_of_a_hundred_moments_leaves_a_whole_handbook() {
    let folder = tempfile::tempdir().unwrap();
    let editions = [edition(folder.path(), "spring", 2), edition(folder.path(), "autumn", 3)];
    let (out, beside) = (folder.path().join("site"), folder.path().join(".site.binding"));
    finish(bind(&editions[0].guides, &out));
    let mut met = Met::default();
    for round in 0..4 * KILLS {
        // On a busy machine more kills come too late: then there are more of them.
        if round >= KILLS && met.enough() {
            break;
        }
        let edition = &editions[(round / 2 + 1) as usize % 2];
        met.at_work += kill(edition, &out, &beside, round);
        met.writing += u32::from(beside.exists());
        met.editions[which(&out, &editions)] += 1;
    }
    assert!(met.enough(), "too many kills came too early or too late to show anything: {met:?}");
    finish(bind(&editions[1].guides, &out));
    assert_eq!(which(&out, &editions), 1);
    assert!(!beside.exists(), "a bind that ends tidies up after those that were killed");
}

/// Writes an edition's guides and binds them undisturbed.
fn edition(folder: &Path, name: &str, guides: usize) -> Edition {
    let (written, out) = (folder.join(name), folder.join(format!("{name}-whole")));
    bind_support::write(&written, &bind_support::handbook(guides, name));
    // The first bind warms up; into a folder that is there the second writes beside it, as all later ones do.
    finish(bind(&written, &out));
    std::fs::remove_file(out.join("index.html")).unwrap();
    let beside = folder.join(format!(".{name}-whole.binding"));
    let start = Instant::now();
    let mut child = bind(&written, &out);
    let mut seen: Option<(Instant, Instant)> = None;
    while child.try_wait().unwrap().is_none() {
        if beside.exists() {
            let now = Instant::now();
            seen = Some((seen.map_or(now, |(first, _)| first), now));
        }
        std::thread::sleep(MOMENT);
    }
    let takes = start.elapsed();
    let writes = seen.map_or(MOMENT, |(first, last)| last - first);
    Edition { guides: written, whole: all_files(&out), takes, writes }
}

fn bind(guides: &Path, out: &Path) -> Child {
    let mut command = Command::new(env!("CARGO_BIN_EXE_coquille"));
    command.arg("bind").arg(guides).arg("--out").arg(out);
    command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
}

fn finish(mut child: Child) {
    assert!(child.wait().unwrap().success(), "a bind that nobody kills succeeds");
}

/// Starts a bind and kills it at the round's moment; 1 if it was still at work.
fn kill(edition: &Edition, out: &Path, beside: &Path, round: u32) -> u32 {
    // A former kill's leftovers would look like writing: they go, and the handbook itself is not touched.
    let _ = std::fs::remove_dir_all(beside);
    let mut child = bind(&edition.guides, out);
    // A multiplicative sequence spreads the moments evenly.
    let part = f64::from((round * 618) % 1000) / 1000.0;
    if round.is_multiple_of(2) {
        // Some moments lie after the end on any machine, however busy, so that the other edition gets its turn.
        if part > 0.8 {
            child.wait().unwrap();
        }
        std::thread::sleep(edition.takes.mul_f64(1.25 * part));
    } else {
        while !beside.exists() && child.try_wait().unwrap().is_none() {
            std::thread::sleep(MOMENT);
        }
        std::thread::sleep(edition.writes.mul_f64(part));
    }
    let at_work = child.try_wait().unwrap().is_none();
    child.kill().unwrap();
    child.wait().unwrap();
    u32::from(at_work)
}

/// Which of the editions stands in the folder, wholly and with nothing else.
fn which(out: &Path, editions: &[Edition; 2]) -> usize {
    let found = all_files(out);
    let files = found.iter().filter(|(name, _)| *name != CONTENTS);
    let named = |(name, bytes): (&String, &Vec<u8>)| (coquille::press::Address::parse(name).unwrap(), bytes.clone());
    let listed = Contents::read(out).unwrap().expect("the folder has its list of contents");
    assert_eq!(listed, Contents::of(&files.map(named).collect()), "the list of contents names every file as it is");
    editions.iter().position(|edition| edition.whole == found).expect("the folder holds one of the editions, wholly")
}

fn all_files(out: &Path) -> Files {
    let entries = walkdir::WalkDir::new(out).into_iter().map(Result::unwrap);
    let files = entries.filter(|entry| entry.file_type().is_file());
    files
        .map(|entry| {
            let relative = entry.path().strip_prefix(out).unwrap().to_str().unwrap();
            (relative.to_owned(), std::fs::read(entry.path()).unwrap())
        })
        .collect()
}
