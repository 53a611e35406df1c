//! How long the lectern takes to show a page after one guide was edited, against a full bind, as a ratio; medians.
//!
//! A generated handbook (`bind_support`) is bound as `bind` does it, written to a folder, and then edited a few times; after each
//! edit the guides are read and proofed again and the guide's page is laid out and set, as the lectern does it for the page that is open,
//! with what was reckoned before at hand. The other pages follow; that is timed beside it. Reports; holds nobody to anything.
//!
//! `cargo bench --bench rebind -- [GUIDES ...]`, 50 and 1000 by default.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark: a panic is the report, and so is what it prints"
)]

mod bind_support;

use coquille::handbook::{lay_out_all, lay_out_guide};
use coquille::press::{Address, Manner, press};
use coquille::proof::{Proofed, proof_again};
use coquille::render::{Setting, Theme, render_all};
use coquille::source::read;
use std::collections::BTreeMap;
use std::path::Path;
use std::time::{Duration, Instant};

const ROUNDS: usize = 5;

fn main() {
    let asked: Vec<usize> = std::env::args().skip(1).filter_map(|argument| argument.parse().ok()).collect();
    for guides in if asked.is_empty() { vec![50, 1000] } else { asked } {
        measure(guides);
    }
}

fn measure(guides: usize) {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path().join("guides");
    bind_support::write(&at, &bind_support::handbook(guides, "spring"));
    let theme = Theme::with(BTreeMap::new()).unwrap();
    let started = Instant::now();
    let former = full(&at, &folder.path().join("site"), &theme);
    let full = started.elapsed();
    println!("{guides} guides: a full bind takes {:.2} s", full.as_secs_f64());
    let symptom = first_of(&at.join("faults"));
    let id = symptom.file_stem().unwrap().to_string_lossy().into_owned();
    let mut known = read_again(&at, Some(&former)).1;
    let handbooks = lay_out_all(&known, &read(&at).unwrap());
    let mut setting = Setting::of_all(handbooks, &theme).unwrap().remove(0);
    for (what, file, from) in [
        ("a job's words", at.join("jobs/mend-foil-fault-0.yaml"), "next: "),
        ("a fault's words", symptom, "Seen on the tester "),
    ] {
        let mut parts: Vec<[Duration; 5]> = Vec::new();
        for _ in 0..ROUNDS {
            let text = std::fs::read_to_string(&file).unwrap();
            std::fs::write(&file, text.replacen(from, &format!("{from}again "), 1)).unwrap();
            let (proofed, times) = again(&at, &id, &theme, &known, &mut setting);
            known = proofed;
            parts.push(times);
        }
        report(what, &parts, full);
    }
}

fn first_of(folder: &Path) -> std::path::PathBuf {
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files.remove(0)
}

/// As `bind` does it.
fn full(guides: &Path, out: &Path, theme: &Theme) -> Proofed {
    let folder = read(guides).unwrap();
    let proofed = proof_again(&folder, None);
    assert_eq!(proofed.errors(), 0);
    let files = render_all(lay_out_all(&proofed, &folder), theme).unwrap();
    let files = files.into_iter().map(|(address, bytes)| (Address::parse(&address).unwrap(), bytes)).collect();
    press(out, &files, Manner::default(), &()).unwrap();
    proofed
}

fn read_again(guides: &Path, former: Option<&Proofed>) -> (Duration, Proofed) {
    let started = Instant::now();
    let folder = read(guides).unwrap();
    let reading = started.elapsed();
    let proofed = proof_again(&folder, former);
    assert_eq!(proofed.errors(), 0, "{:?}", proofed.findings.first());
    (reading, proofed)
}

/// As the lectern does it: the time of reading, proofing, laying out the guide, and setting its page; and of laying out the others.
fn again(guides: &Path, id: &str, theme: &Theme, former: &Proofed, setting: &mut Setting) -> (Proofed, [Duration; 5]) {
    let started = Instant::now();
    let (reading, proofed) = read_again(guides, Some(former));
    let proofing = started.elapsed() - reading;
    let folder = read(guides).unwrap();
    let mut started = Instant::now();
    let mut lap = || std::mem::replace(&mut started, Instant::now()).elapsed();
    setting.put(lay_out_guide(&proofed, &folder, id).pages);
    let laying = lap();
    assert!(setting.file(&format!("faults/{id}.html")).unwrap().is_some());
    let set = lap();
    *setting = Setting::of_all(lay_out_all(&proofed, &folder), theme).unwrap().remove(0);
    (proofed, [reading, proofing, laying, set, lap()])
}

fn report(what: &str, parts: &[[Duration; 5]], full: Duration) {
    let median = |mut times: Vec<Duration>| {
        times.sort_unstable();
        times[times.len() / 2].as_secs_f64()
    };
    let all = median(parts.iter().map(|parts| parts.iter().take(4).sum()).collect());
    let part = |at: usize| median(parts.iter().map(|parts| parts[at]).collect());
    println!(
        "  {what}: {all:.3} s, {:.1} in 100 of a full bind (read {:.3}, proof {:.3}, lay out {:.3}, set {:.3}); the others follow after {:.3} s",
        all / full.as_secs_f64() * 100.0,
        part(0),
        part(1),
        part(2),
        part(3),
        part(4)
    );
}
