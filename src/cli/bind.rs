//! `coquille bind`: proof the guides, then lay out, render and press the handbook.

use super::args::{BindJob, Form};
use super::forms;
use super::proof::{findings, opened, outcome};
use super::report::{count, human};
use super::since;
use super::terminal::{Outcome, Terminal};
use crate::handbook::record::Record;
use crate::handbook::{Handbook, lay_out_all, lay_out_all_since};
use crate::press::{self, Address, Manner, Pressed, Progress, Way};
use crate::proof::{Proofed, proof};
use crate::render::{Theme, render_all};
use crate::source::{in_words, read_theme};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// The files of a folder.
type Site = BTreeMap<Address, Vec<u8>>;

/// Runs it.
pub fn run(job: &BindJob, terminal: &mut Terminal) -> Outcome {
    let started = Instant::now();
    if let Some(why) = refused(job) {
        terminal.tell(why);
        return Outcome::CouldNotRun;
    }
    let earlier = match job.since.as_deref().map(earlier).transpose() {
        Ok(earlier) => earlier,
        Err(why) => {
            terminal.tell(why);
            return Outcome::CouldNotRun;
        }
    };
    let Some(folder) = opened(&job.guides, terminal) else { return Outcome::CouldNotRun };
    let proofed = proof(&folder);
    findings(&proofed, &folder, &job.guides, terminal);
    if outcome(&proofed, job.strict) == Outcome::Faulty {
        terminal.say(format!("{} Nothing was written.", human::summary(&proofed, folder.trees.len())));
        return Outcome::Faulty;
    }
    let handbooks = match &earlier {
        Some(earlier) => lay_out_all_since(&proofed, &folder, earlier),
        None => lay_out_all(&proofed, &folder),
    };
    let prints = handbooks.first().map_or_else(Vec::new, |own| since::report(job, own, earlier.as_ref()));
    match passed_on(job, &proofed, handbooks, terminal) {
        Ok(pages) => {
            prints.into_iter().for_each(|line| terminal.say(line));
            terminal.say(summary(job, &proofed, pages, started.elapsed()));
            Outcome::Good
        }
        Err(why) => {
            terminal.tell(why);
            Outcome::CouldNotRun
        }
    }
}

/// What a handbook remembers, once a bind that was cut short is finished or undone.
fn earlier(handbook: &Path) -> Result<Record, String> {
    press::recover(handbook).map_err(|failed| format!("{failed}.\n{}", failed.help()))?;
    since::record(handbook)
}

/// Writes every form that was asked for; how many pages there are. A form that cannot be written is refused before any is.
fn passed_on(
    job: &BindJob,
    proofed: &Proofed,
    mut handbooks: Vec<Handbook>,
    terminal: &mut Terminal,
) -> Result<usize, String> {
    let sheets = if job.pdf { sheets_as_pdf(&mut handbooks)? } else { Site::new() };
    let theme = theme(&job.guides, proofed)?;
    let pages = handbooks.iter().map(|handbook| handbook.pages.len()).sum();
    let folder = |handbooks| -> Result<Site, String> {
        let mut site = rendered(handbooks, &theme)?;
        site.extend(sheets.clone());
        Ok(site)
    };
    let forms = forms_asked(job);
    forms.iter().try_for_each(|form| forms::may_write(job, *form))?;
    let mut books = std::iter::repeat_n(handbooks, forms.len());
    let mut made = Vec::new();
    let mut site = None;
    for form in &forms {
        let Some(handbooks) = books.next() else { break };
        match form {
            Form::Folder => site = Some(folder(handbooks)?),
            Form::Zip if site.is_some() => made.push((*form, forms::zip(job, site.iter().flatten())?)),
            Form::Zip => made.push((*form, forms::zip(job, &folder(handbooks)?)?)),
            Form::Single => made.push((*form, forms::single(own(handbooks)?, &theme)?)),
            Form::Epub => made.push((*form, forms::epub(own(handbooks)?, &theme)?)),
        }
    }
    if let Some(site) = site {
        let long = too_long(&job.out, &site);
        let pressed = pressed(job, site)?;
        report(job, &pressed, terminal);
        if long > 0 {
            terminal.tell(format!(
                "{} longer than every program on Windows opens: bind into a folder with a shorter path.",
                count(long, "page has a path", "pages have paths")
            ));
        }
    }
    made.iter().try_for_each(|(form, bytes)| forms::write(job, *form, bytes, terminal))?;
    Ok(pages)
}

/// The forms that were asked for, each once.
fn forms_asked(job: &BindJob) -> BTreeSet<Form> {
    job.forms.iter().copied().collect()
}

/// The handbook in its own language: a file that is passed on is in one.
fn own(handbooks: Vec<Handbook>) -> Result<Handbook, String> {
    handbooks.into_iter().next().ok_or_else(|| "There is no handbook to bind.".to_owned())
}

fn rendered(handbooks: Vec<Handbook>, theme: &Theme) -> Result<Site, String> {
    addressed(render_all(handbooks, theme).map_err(|error| error.to_string())?)
}

fn addressed(files: BTreeMap<String, Vec<u8>>) -> Result<Site, String> {
    let addressed = files.into_iter().map(|(address, bytes)| {
        let known = Address::parse(&address);
        Ok((known.map_err(|why| format!("`{address}` cannot be the name of a file: {why}"))?, bytes))
    });
    addressed.collect()
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

/// How many pages this system's programs may fail to open.
fn too_long(out: &Path, site: &Site) -> usize {
    let folder = std::path::absolute(out).unwrap_or_else(|_| out.to_path_buf());
    press::system::too_long_to_open(press::system::Family::HERE, &folder, site.keys().map(Address::as_str))
}

/// Writes the folder.
fn pressed(job: &BindJob, site: Site) -> Result<Pressed, String> {
    let manner = Manner { way: Way::Exchange, strangers: forms::strangers(job) };
    press::press(&job.out, &site, manner, &Bar::new()).map_err(|failed| format!("{failed}\n{}", failed.help()))
}

/// A PDF for every sheet, by its address; the sheets get links to them.
#[cfg(feature = "pdf")]
fn sheets_as_pdf(handbooks: &mut [Handbook]) -> Result<Site, String> {
    let mut all = BTreeMap::new();
    for handbook in handbooks {
        let (files, _) = crate::render::pdf::beside_sheets(handbook).map_err(|failed| failed.to_string())?;
        all.extend(files);
    }
    addressed(all)
}

#[cfg(not(feature = "pdf"))]
fn sheets_as_pdf(_: &mut [Handbook]) -> Result<Site, String> {
    Err(super::sheet::NO_PDF.to_owned())
}

/// The theme that the handbook names: the one that comes with the program, or a folder `themes/NAME` beside the guides.
pub(super) fn theme(guides: &Path, proofed: &Proofed) -> Result<Theme, String> {
    let file = proofed.guides.handbook.as_ref().and_then(|(_, file)| file.theme.as_ref());
    theme_called(guides, file.map_or(OUR_THEME, |name| name.value.as_str()))
}

/// The theme that comes with the program.
const OUR_THEME: &str = "marking-blue";

/// The same by its name.
pub(super) fn theme_called(guides: &Path, name: &str) -> Result<Theme, String> {
    if name == OUR_THEME {
        return Theme::with(BTreeMap::new()).map_err(|failed| failed.to_string());
    }
    let beside = theme_folder(guides, name);
    let files = read_theme(&beside).map_err(|error| {
        format!("The theme `{name}` cannot be read from `{}`: {}", beside.display(), in_words(&error))
    })?;
    Theme::with(files).map_err(|failed| format!("The theme `{name}` cannot be used: {failed}"))
}

/// Where a theme of the club's own lies.
pub(super) fn theme_folder(guides: &Path, name: &str) -> PathBuf {
    guides.parent().map_or_else(PathBuf::new, Path::to_path_buf).join("themes").join(name)
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
    let made: Vec<String> = forms_asked(job).into_iter().map(|form| forms::told(job, form)).collect();
    format!(
        "{}Bound {} from {}, {advice}, in {:.1} s.\n{}",
        human::in_place(proofed),
        count(pages, "page", "pages"),
        job.guides.display(),
        took.as_secs_f64(),
        made.join("\n"),
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
