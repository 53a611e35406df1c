//! The guides as they were last read, the pages as they were last good, and what was found.
//!
//! In: the guides' folder. Out: a file when it is asked for, with the findings that belong there. Each reading is a *turn* with a
//! number, so that a page knows whether it is of the last one.

use super::super::bind;
use super::panels::{Panel, panels};
use crate::handbook::{Cover, Handbook, Targets, lay_out_all, lay_out_guide};
use crate::model::Kind;
use crate::proof::{Proofed, all_guides, proof_again};
use crate::render::{Setting, Theme};
use crate::source::{Folder, in_words, read};
use std::path::PathBuf;
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// What came of reading the guides.
pub enum Turn {
    /// New pages.
    Bound {
        /// How many there are.
        pages: usize,
        /// How much advice there is.
        advice: usize,
        /// How long it took until the page that is open could be shown.
        took: Duration,
    },
    /// The guides have errors.
    Faulty {
        /// How many.
        errors: usize,
        /// The first, with its place.
        first: String,
    },
    /// The folder or the theme cannot be read.
    Failed(String),
}

/// What is shown at an address.
pub enum Shown {
    /// A file.
    File(Vec<u8>),
    /// A page that says that there is none.
    Gone(String),
}

/// What lies on the desk.
#[derive(Default)]
pub(super) struct State {
    pub(super) turn: u64,
    /// The last good guides: what was reckoned of them is taken again where nothing changed.
    proofed: Option<Proofed>,
    /// The pages, a setting a language; none while there are no good ones.
    pub(super) settings: Vec<Setting>,
    pub(super) findings: Vec<Panel>,
    pub(super) trouble: Option<String>,
    theme: Option<String>,
    /// What the pages have in common: where it changes, all of them are laid out again before one is shown.
    common: Option<Common>,
    /// The page that was asked for last.
    open: Option<String>,
    /// While all other pages are still those of the turn before: the page that is new already.
    ahead: Option<String>,
    /// Whether another page was shown in that time: it has to hear of the turn once more.
    behind: bool,
}

/// What pages are set with beside themselves.
#[derive(PartialEq)]
struct Common {
    cover: Cover,
    targets: Targets,
    theme: Theme,
    /// Pictures and everything else beside the guides.
    others: [u8; 32],
}

/// The desk.
pub struct Desk {
    guides: PathBuf,
    state: Mutex<State>,
    turned: Condvar,
}

impl Desk {
    /// A desk with nothing on it yet.
    pub fn new(guides: PathBuf) -> Desk {
        Desk { guides, state: Mutex::default(), turned: Condvar::new() }
    }

    fn state(&self) -> MutexGuard<'_, State> {
        // A page that could not be set leaves the state as it was.
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// The folders whose files matter.
    pub fn folders(&self) -> Vec<PathBuf> {
        let theme = self.state().theme.clone();
        let theme = theme.map(|name| bind::theme_folder(&self.guides, &name));
        std::iter::once(self.guides.clone()).chain(theme).collect()
    }

    /// Reads the guides again. The page that is open is laid out before all others, and shown as soon as that is done.
    pub fn turn(&self) -> Turn {
        let started = Instant::now();
        let former = self.state().proofed.take();
        let read = self.read(former.as_ref());
        match read {
            Err(why) => {
                self.keep(former, None, Some(why.clone()));
                Turn::Failed(why)
            }
            Ok(Read { proofed, findings, .. }) if proofed.errors() > 0 => {
                let first = findings.iter().find(|finding| finding.severity == "error");
                let first = first.map_or_else(String::new, |finding| format!("{}: {}", finding.place, finding.message));
                self.keep(former, Some(findings), None);
                Turn::Faulty { errors: proofed.errors(), first }
            }
            Ok(read) => match bind::theme(&self.guides, &read.proofed) {
                Ok(theme) => self.show(read, theme, former, started),
                Err(why) => {
                    self.keep(former, Some(read.findings), Some(why.clone()));
                    Turn::Failed(why)
                }
            },
        }
    }

    /// The page that is open first, then all.
    fn show(&self, read: Read, theme: Theme, former: Option<Proofed>, started: Instant) -> Turn {
        let shown_first = self.show_open_page(&read, &theme).then(|| started.elapsed());
        match self.show_all(read, theme, former, shown_first.is_some()) {
            Ok((pages, advice)) => {
                Turn::Bound { pages, advice, took: shown_first.unwrap_or_else(|| started.elapsed()) }
            }
            Err(why) => Turn::Failed(why),
        }
    }

    /// The pages stay as they were, with what was found now.
    fn keep(&self, former: Option<Proofed>, findings: Option<Vec<Panel>>, trouble: Option<String>) {
        let mut state = self.state();
        state.proofed = former;
        state.findings = findings.unwrap_or_else(|| std::mem::take(&mut state.findings));
        state.trouble = trouble;
        self.next(state);
    }

    /// Tells whoever waits that there is something new.
    fn next(&self, mut state: MutexGuard<'_, State>) {
        state.turn += 1;
        drop(state);
        self.turned.notify_all();
    }

    /// Lays out the guide whose page is open, if nothing else changed that the page is set with; whether it did.
    fn show_open_page(&self, read: &Read, theme: &Theme) -> bool {
        let open = self.state().open.clone();
        let Some(guide) = open.as_ref().and_then(|address| guide_of(&read.proofed, address)) else { return false };
        let laid = lay_out_guide(&read.proofed, &read.folder, &guide);
        let mut state = self.state();
        let common = state.common.as_ref();
        let same = common.is_some_and(|common| {
            (&common.cover, &common.targets, &common.theme, &common.others)
                == (&laid.cover, &laid.targets, theme, &read.others)
        });
        if !same || laid.pages.is_empty() {
            return false;
        }
        if let Some(own) = state.settings.first_mut() {
            own.put(laid.pages);
        }
        (state.findings, state.trouble) = (read.findings.clone(), None);
        (state.ahead, state.behind) = (open, false);
        self.next(state);
        true
    }

    /// Lays out everything; how many pages there are, and how much advice.
    fn show_all(
        &self,
        read: Read,
        theme: Theme,
        former: Option<Proofed>,
        is_shown: bool,
    ) -> Result<(usize, usize), String> {
        let Read { folder, proofed, findings, others } = read;
        let handbooks = lay_out_all(&proofed, &folder);
        let in_common = |own: &Handbook| (own.cover.clone(), own.targets.clone());
        let common = handbooks.first().map(in_common);
        let settings = match Setting::of_all(handbooks, &theme) {
            Ok(settings) => settings,
            Err(failed) => {
                self.keep(former, Some(findings), Some(failed.to_string()));
                return Err(failed.to_string());
            }
        };
        let counts = (settings.iter().map(|setting| setting.pages().len()).sum(), proofed.advice());
        let mut state = self.state();
        state.theme = proofed.guides.handbook.as_ref().and_then(|(_, file)| Some(file.theme.as_ref()?.value.clone()));
        state.common = common.map(|(cover, targets)| Common { cover, targets, theme, others });
        state.settings = settings;
        (state.proofed, state.findings, state.trouble) = (Some(proofed), findings, None);
        // The page that was shown first is the same already.
        state.ahead = None;
        if !is_shown || state.behind {
            self.next(state);
        }
        Ok(counts)
    }

    fn read(&self, former: Option<&Proofed>) -> Result<Read, String> {
        let folder = read(&self.guides).map_err(|error| {
            format!("The guides' folder `{}` cannot be read: {}.", self.guides.display(), in_words(&error))
        })?;
        if folder.trees.is_empty() {
            return Err(format!("There is no guide in `{}`.", self.guides.display()));
        }
        let proofed = proof_again(&folder, former);
        let findings = panels(&proofed, &folder);
        let mut others = blake3::Hasher::new();
        for (name, bytes) in folder.others.iter().chain(&proofed.pictures) {
            others.update(name.as_bytes()).update(&bytes.len().to_le_bytes()).update(bytes);
        }
        Ok(Read { folder, findings, others: *others.finalize().as_bytes(), proofed })
    }

    /// Waits until the turn is another than this, for so long at most; the turn then.
    pub fn wait_for_other_than(&self, turn: u64, most: Duration) -> u64 {
        let waited = self.turned.wait_timeout_while(self.state(), most, |state| state.turn == turn);
        waited.unwrap_or_else(PoisonError::into_inner).0.turn
    }

    /// What is at an address.
    pub fn shown(&self, address: &str) -> Shown {
        let mut state = self.state();
        if address.ends_with(".html") {
            state.behind |= state.ahead.as_deref().is_some_and(|ahead| ahead != address);
            state.open = Some(address.to_owned());
        }
        let files = state.settings.iter().map(|setting| setting.file(address));
        let file = files.reduce(|one, other| if matches!(one, Ok(None)) { other } else { one });
        match file {
            Some(Ok(Some(bytes))) if address.ends_with(".html") => {
                Shown::File(state.with_findings(address, &String::from_utf8_lossy(&bytes)).into_bytes())
            }
            Some(Ok(Some(bytes))) => Shown::File(bytes),
            Some(Err(failed)) => Shown::Gone(state.page(&failed.to_string())),
            Some(Ok(None)) => Shown::Gone(state.page("There is no such page in the handbook as it is now.")),
            None => Shown::Gone(state.page("The guides have not been without errors yet.")),
        }
    }
}

struct Read {
    folder: Folder,
    proofed: Proofed,
    findings: Vec<Panel>,
    others: [u8; 32],
}

/// The guide that a page of the handbook's own language belongs to: its own page, one of its questions, its sheet.
fn guide_of(proofed: &Proofed, address: &str) -> Option<String> {
    const FOLDERS: [&str; 5] = ["faults", "jobs", "checks", "circuits", "sheets"];
    const WITH_PAGES: [Kind; 4] = [Kind::Symptom, Kind::Procedure, Kind::Checklist, Kind::Circuit];
    let mut parts = address.split('/');
    parts.next().filter(|folder| FOLDERS.contains(folder))?;
    let id = parts.next()?.trim_end_matches(".html");
    let guides = all_guides(&proofed.guides).into_iter().filter(|guide| WITH_PAGES.contains(&guide.kind));
    guides.map(|guide| guide.id.value.as_str()).find(|known| *known == id).map(str::to_owned)
}
