//! `coquille bind`: proof the guides, then lay out, render and press the handbook.

use super::args::BindJob;
use super::proof::{findings, opened, outcome};
use super::report::{count, human};
use super::terminal::{Outcome, Terminal};
use crate::handbook::{Handbook, lay_out_all};
use crate::press::{self, Address, Manner, Pressed, Progress, Strangers, Way};
use crate::proof::{Proofed, proof};
use crate::render::{Theme, render_all};
use crate::source::{Folder, read_theme};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// Runs it.
pub fn run(job: &BindJob, terminal: &mut Terminal) -> Outcome {
    let started = Instant::now();
    if let Some(why) = refused(job) {
        terminal.tell(why);
        return Outcome::CouldNotRun;
    }
    let Some(folder) = opened(&job.guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    findings(&proofed, &folder, &job.guides, terminal);
    if outcome(&proofed, job.strict) == Outcome::Faulty {
        terminal.say(format!("{} Nothing was written.", human::summary(&proofed, folder.trees.len())));
        return Outcome::Faulty;
    }
    match pressed(job, &proofed, &folder) {
        Ok((pages, pressed)) => {
            report(job, &pressed, terminal);
            terminal.say(summary(job, &proofed, pages, started.elapsed()));
            Outcome::Good
        }
        Err(why) => {
            terminal.tell(why);
            Outcome::CouldNotRun
        }
    }
}

/// Why a bind must not even begin.
fn refused(job: &BindJob) -> Option<String> {
    if job.pdf && !cfg!(feature = "pdf") {
        return Some(super::sheet::NO_PDF.to_owned());
    }
    let absolute = |path: &Path| std::path::absolute(path).unwrap_or_else(|_| path.to_path_buf());
    let (guides, out) = (absolute(&job.guides), absolute(&job.out));
    press::stands_inside(&out, &guides).then(|| {
        format!(
            "The handbook would be written into the guides' own folder, `{}`.\nName another folder with `--out`.",
            job.guides.display()
        )
    })
}

/// Renders and writes; how many pages there are, and what was written. What goes wrong comes in words.
fn pressed(job: &BindJob, proofed: &Proofed, folder: &Folder) -> Result<(usize, Pressed), String> {
    let mut handbooks = lay_out_all(proofed, folder);
    let sheets = if job.pdf { sheets_as_pdf(&mut handbooks)? } else { BTreeMap::new() };
    let name = handbooks.first().map_or("", |handbook| &handbook.cover.theme);
    let theme = theme(&job.guides, name)?;
    let pages = handbooks.iter().map(|handbook| handbook.pages.len()).sum();
    let files = render_all(handbooks, &theme).map_err(|error| error.to_string())?;
    let mut addressed = BTreeMap::new();
    for (address, bytes) in files.into_iter().chain(sheets) {
        let known =
            Address::parse(&address).map_err(|why| format!("`{address}` cannot be the name of a file: {why}"))?;
        addressed.insert(known, bytes);
    }
    let strangers = if job.force { Strangers::Keep } else { Strangers::Refuse };
    let manner = Manner { way: Way::Exchange, strangers };
    let pressed = press::press(&job.out, &addressed, manner, &Bar::new())
        .map_err(|failed| format!("{failed}\n{}", failed.help()))?;
    Ok((pages, pressed))
}

/// A PDF for every sheet, by its address; the sheets get links to them.
#[cfg(feature = "pdf")]
fn sheets_as_pdf(handbooks: &mut [Handbook]) -> Result<BTreeMap<String, Vec<u8>>, String> {
    let mut all = BTreeMap::new();
    for handbook in handbooks {
        let (files, _) = crate::render::pdf::beside_sheets(handbook).map_err(|failed| failed.to_string())?;
        all.extend(files);
    }
    Ok(all)
}

#[cfg(not(feature = "pdf"))]
fn sheets_as_pdf(_: &mut [Handbook]) -> Result<BTreeMap<String, Vec<u8>>, String> {
    Err(super::sheet::NO_PDF.to_owned())
}

/// The theme that the handbook names: the one that comes with the program, or a folder `themes/NAME` beside the guides.
pub(super) fn theme(guides: &Path, name: &str) -> Result<Theme, String> {
    if name == "marking-blue" {
        return Theme::with(BTreeMap::new()).map_err(|failed| failed.to_string());
    }
    let beside = guides.parent().map_or_else(PathBuf::new, Path::to_path_buf).join("themes").join(name);
    let files = read_theme(&beside)
        .map_err(|error| format!("The theme `{name}` cannot be read from `{}`: {error}", beside.display()))?;
    Theme::with(files).map_err(|failed| format!("The theme `{name}` cannot be used: {failed}"))
}

/// What a person should know about what was found in the output folder.
fn report(job: &BindJob, pressed: &Pressed, terminal: &mut Terminal) {
    let out = job.out.display();
    for kept in &pressed.kept {
        terminal.tell(format!("Kept `{out}/{}`: it is not from this program.", kept.display()));
    }
    for (at, aside) in &pressed.set_aside {
        terminal.tell(format!("Moved `{out}/{at}` out of the way: it is now `{out}/{aside}`."));
    }
    for restored in &pressed.restored {
        terminal.tell(format!("Rewrote `{out}/{restored}`: somebody had changed it by hand."));
    }
    if let Some(left) = &pressed.left_over {
        terminal.tell(format!("Could not remove `{}`: the next bind will try again.", left.display()));
    }
}

fn summary(job: &BindJob, proofed: &Proofed, pages: usize, took: Duration) -> String {
    let advice = match proofed.advice() {
        0 => "nothing to find fault with".to_owned(),
        number => count(number, "piece of advice", "pieces of advice"),
    };
    format!(
        "Bound {} from {}, {advice}, in {:.1} s.\nOpen {}",
        count(pages, "page", "pages"),
        job.guides.display(),
        took.as_secs_f64(),
        job.out.join("index.html").display(),
    )
}

/// A progress bar that shows itself only on a terminal, and only when it takes more than a second.
struct Bar {
    bar: ProgressBar,
    started: Instant,
}

impl Bar {
    fn new() -> Self {
        let bar = ProgressBar::with_draw_target(Some(0), ProgressDrawTarget::hidden());
        if let Ok(style) = ProgressStyle::with_template("Writing {bar:40} {pos} of {len}") {
            bar.set_style(style);
        }
        Bar { bar, started: Instant::now() }
    }
}

impl Progress for Bar {
    fn begin(&self, files: usize) {
        self.bar.set_length(files as u64);
    }

    fn step(&self) {
        if self.bar.is_hidden() && self.started.elapsed() > Duration::from_secs(1) {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        self.bar.inc(1);
    }
}

impl Drop for Bar {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
