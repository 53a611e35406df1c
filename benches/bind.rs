//! How long `bind` takes, as ratios of things measured in one run, one after the other, over and over; medians.
//!
//! A generated handbook of many fault-finding guides with their jobs (`bind_support`) is bound into a fresh folder, again without a
//! change, and again after one edit, by the real program. Beside it: a plain copy of the folder that came out, and the same pages
//! made by a Python script on PyYAML, Markdown and Jinja2 (`benches/python/`). Reports; holds nobody to anything.
//!
//! `cargo bench --bench bind -- [GUIDES [ROUNDS]]`, 1000 and 3 by default. `PYTHON` names a Python that has the three libraries;
//! without one the script is left out. The script runs once a round at a tenth of the size, since it makes no difference to its
//! time per page and saves many minutes; its ratio is that of times per page.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark: a panic is the report, and so is what it prints"
)]

mod bind_support;

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Times of one kind, and the most memory that any of its runs took, in KiB.
#[derive(Default)]
struct Taken {
    times: Vec<Duration>,
    memory: u64,
}

/// What is measured.
#[derive(Default)]
struct Report {
    fresh: Taken,
    unchanged: Taken,
    edited: Taken,
    copy: Taken,
    small: Taken,
    script: Taken,
}

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|argument| argument.parse().ok());
    let (size, rounds) = (numbers.next().unwrap_or(1000), numbers.next().unwrap_or(3));
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    bind_support::write(&at("guides"), &bind_support::handbook(size, "spring"));
    bind_support::write(&at("few"), &bind_support::handbook(size.div_ceil(10), "spring"));
    let mut report = Report::default();
    for round in 0..rounds {
        // Each round has folders of its own: some disks are slow to make files where others have just been removed.
        let round_folder = at(&format!("round-{round}"));
        std::fs::create_dir(&round_folder).unwrap();
        measure(&mut report, &at("guides"), &at("few"), &round_folder);
        if round + 1 < rounds {
            std::fs::remove_dir_all(&round_folder).unwrap();
        }
    }
    print(&report, size, &at(&format!("round-{}", rounds - 1)));
}

/// One round of all.
fn measure(report: &mut Report, guides: &Path, few: &Path, folder: &Path) {
    let out = folder.join("site");
    report.fresh.run(bind(guides, &out));
    report.copy.run(copy(&out, &folder.join("copy")));
    report.unchanged.run(bind(guides, &out));
    edit(guides);
    report.edited.run(bind(guides, &out));
    report.small.run(bind(few, &folder.join("few")));
    if let Some(script) = script(few, &folder.join("script")) {
        report.script.run(script);
    }
}

fn bind(guides: &Path, out: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_coquille"));
    command.arg("bind").arg(guides).arg("--out").arg(out);
    command
}

fn copy(from: &Path, to: &Path) -> Command {
    let mut command = Command::new("cp");
    command.arg("-r").arg(from).arg(to);
    command
}

/// Nothing when there is no Python with the libraries.
fn script(guides: &Path, out: &Path) -> Option<Command> {
    let python = std::env::var_os("PYTHON").unwrap_or_else(|| "python3".into());
    let has = Command::new(&python).args(["-c", "import jinja2, markdown, yaml"]).stderr(Stdio::null()).status();
    if !has.is_ok_and(|status| status.success()) {
        return None;
    }
    let mut command = Command::new(python);
    command.arg(Path::new(env!("CARGO_MANIFEST_DIR")).join("benches/python/bind.py")).arg(guides).arg(out);
    Some(command)
}

/// Changes a few words in one job; every time it is called.
fn edit(guides: &Path) {
    let file = guides.join("jobs/mend-foil-fault-0.yaml");
    let text = std::fs::read_to_string(&file).unwrap();
    std::fs::write(&file, text.replace("next: ", "next: So, ")).unwrap();
}

impl Taken {
    /// Runs it to its end, under `time` where there is one, since that knows how much memory it took.
    fn run(&mut self, command: Command) {
        let mut timed = Command::new("/usr/bin/time");
        timed.args(["-f", "%M"]).arg(command.get_program()).args(command.get_args());
        let mut command = if Path::new("/usr/bin/time").exists() { timed } else { command };
        let start = Instant::now();
        let done = command.stdout(Stdio::null()).output().unwrap();
        self.times.push(start.elapsed());
        let said = String::from_utf8_lossy(&done.stderr).into_owned();
        assert!(done.status.success(), "{said}");
        let memory = said.lines().last().and_then(|line| line.trim().parse().ok());
        self.memory = self.memory.max(memory.unwrap_or(0));
    }

    /// The median, in seconds.
    fn seconds(&self) -> f64 {
        let mut times = self.times.clone();
        times.sort_unstable();
        times.get(times.len() / 2).map_or(f64::NAN, Duration::as_secs_f64)
    }
}

/// How many pages and KiB are in a folder.
fn counted(folder: &Path) -> (f64, f64) {
    let files =
        walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap).filter(|entry| entry.file_type().is_file());
    let files: Vec<(PathBuf, u64)> =
        files.map(|entry| (entry.path().to_path_buf(), entry.metadata().unwrap().len())).collect();
    let pages = files.iter().filter(|(path, _)| path.extension().is_some_and(|ending| ending == "html")).count();
    (pages as f64, files.iter().map(|(_, bytes)| *bytes as f64).sum::<f64>() / 1024.0)
}

fn print(report: &Report, size: usize, folder: &Path) {
    let Report { fresh, unchanged, edited, copy, small, script } = report;
    let (pages, kib) = counted(&folder.join("site"));
    println!("{size} fault-finding guides: {pages} pages, {kib:.0} KiB; medians of {} rounds", fresh.times.len());
    for (what, taken) in [("fresh", fresh), ("no change", unchanged), ("one edit", edited), ("cp -r", copy)] {
        println!("{what:>10}: {:8.2} s, {:5.2} x the copy", taken.seconds(), taken.seconds() / copy.seconds());
    }
    println!("    memory: {:.2} KiB at most for a KiB of output", fresh.memory as f64 / kib);
    if script.times.is_empty() {
        println!("    script: left out, no Python with PyYAML, Markdown and Jinja2 (name one in PYTHON)");
        return;
    }
    let ((few, few_kib), (made, made_kib)) = (counted(&folder.join("few")), counted(&folder.join("script")));
    let (own, theirs) = (small.seconds() / few, script.seconds() / made);
    println!("    script: at {few} pages, {few_kib:.0} KiB: bind {:.2} s", small.seconds());
    println!("            it made {made} pages, {made_kib:.0} KiB in {:.2} s", script.seconds());
    println!("            per page {:.1} x the time of bind", theirs / own);
    println!("            at the full size, by its time per page, {:.1} x", theirs * pages / fresh.seconds());
}
