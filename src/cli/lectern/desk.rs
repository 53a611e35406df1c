//! The guides as they were last read, the pages as they were last good, and what was found.
//!
//! In: the guides' folder. Out: a file when it is asked for, with the findings that belong there. Each reading is a *turn* with a
//! number, so that a page knows whether it is of the last one.

use super::super::{bind, report};
use crate::handbook::{Cover, Handbook, Targets, lay_out_all, lay_out_guide};
use crate::model::Kind;
use crate::proof::{Finding, Proofed, Severity, proof_again};
use crate::render::{Setting, Theme};
use crate::source::{Folder, in_words, read};
use serde::Serialize;
use std::collections::BTreeMap;
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

/// A finding as it is shown on a page.
#[derive(Debug, Clone, Serialize)]
struct Panel {
    code: &'static str,
    message: String,
    help: String,
    place: String,
    #[serde(skip)]
    severity: &'static str,
    /// The page of the guide that it is in, and the id of the thing that it is about, where there is one.
    #[serde(skip)]
    at: (Option<String>, Option<String>),
}

#[derive(Default)]
struct State {
    turn: u64,
    /// The last good guides: what was reckoned of them is taken again where nothing changed.
    proofed: Option<Proofed>,
    /// The pages, a setting a language; none while there are no good ones.
    settings: Vec<Setting>,
    findings: Vec<Panel>,
    trouble: Option<String>,
    theme: Option<String>,
    /// What the pages have in common: where it changes, all of them are laid out again before one is shown.
    common: Option<Common>,
    /// The page that was asked for last.
    open: Option<String>,
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
        let Some(guide) = open.and_then(|address| guide_of(&read.proofed, &address)) else { return false };
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
        // The page that is open is the same already.
        if !is_shown {
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
    let mut parts = address.split('/');
    parts.next().filter(|folder| FOLDERS.contains(folder))?;
    let id = parts.next()?.trim_end_matches(".html");
    let guides = &proofed.guides;
    let ids = guides.symptoms.iter().map(|(_, guide)| &guide.symptom);
    let ids = ids.chain(guides.procedures.iter().map(|(_, guide)| &guide.procedure));
    let ids = ids.chain(guides.checklists.iter().map(|(_, guide)| &guide.checklist));
    let mut ids = ids.chain(guides.circuits.iter().map(|(_, guide)| &guide.circuit));
    ids.any(|known| known.value.as_str() == id).then(|| id.to_owned())
}

impl State {
    /// A page with the findings that belong to it, each at its place, and the script that reloads it.
    fn with_findings(&self, address: &str, html: &str) -> String {
        let mut html = html.replacen("form-action 'none'", "form-action 'none'; connect-src 'self'", 1);
        let script = format!("<script src=\"/lectern/reload.js\" data-turn=\"{}\"></script>\n</head>", self.turn);
        html = html.replacen("</head>", &script, 1);
        let mut on_top = self.trouble.as_deref().map_or_else(String::new, told);
        for finding in &self.findings {
            let panel = self.panel(finding);
            match self.spot(&html, address, finding) {
                Spot::Before(at) => html.insert_str(at, &panel),
                Spot::Top => on_top.push_str(&panel),
                Spot::Elsewhere => {}
            }
        }
        let elsewhere =
            self.findings.iter().filter(|finding| matches!(self.spot(&html, address, finding), Spot::Elsewhere));
        on_top.push_str(&self.listed(&elsewhere.collect::<Vec<_>>(), address));
        match html.find("<main").and_then(|at| Some(at + html[at..].find('>')? + 1)) {
            Some(at) => html.insert_str(at, &on_top),
            None => html.push_str(&on_top),
        }
        html
    }

    /// Where on a page a finding belongs.
    fn spot(&self, html: &str, address: &str, finding: &Panel) -> Spot {
        let (page, id) = &finding.at;
        let Some(page) = page else { return Spot::Elsewhere };
        // A guide's questions are pages below its own: `faults/a/…` below `faults/a.html`.
        let own = page == address;
        let below = page.strip_suffix(".html").is_some_and(|folder| address.starts_with(&format!("{folder}/")));
        let on_the_way = below && id.as_ref().is_some_and(|id| address.contains(&format!("/{id}-")));
        match id {
            _ if on_the_way => Spot::Top,
            Some(id) if own => place_of(html, id).map_or(Spot::Top, Spot::Before),
            None if own => Spot::Top,
            _ => Spot::Elsewhere,
        }
    }

    fn panel(&self, finding: &Panel) -> String {
        #[derive(Serialize)]
        struct Given<'g> {
            finding: &'g Panel,
        }
        let set = self.settings.first().map(|setting| setting.part("finding_panel", &Given { finding }));
        match set {
            Some(Ok(panel)) => panel,
            _ => told(&format!("{}: {}; {}", finding.place, finding.message, finding.help)),
        }
    }

    /// Findings on other pages: errors first, a line each.
    fn listed(&self, findings: &[&Panel], address: &str) -> String {
        if findings.is_empty() {
            return String::new();
        }
        let root = "../".repeat(address.matches('/').count());
        let mut findings = findings.to_vec();
        findings.sort_by_key(|finding| finding.severity != "error");
        let line = |finding: &&Panel| {
            let words = escaped(&format!("{}: {}", finding.place, finding.message));
            match &finding.at.0 {
                Some(page) => format!("<li><a href=\"{root}{page}\">{words}</a></li>"),
                None => format!("<li>{words}</li>"),
            }
        };
        let lines: String = findings.iter().take(MOST_LISTED).map(line).collect();
        let more = report::count(findings.len(), "finding", "findings");
        format!(
            "<div class=\"finding advice\"><p class=\"finding-what\">{more} in other guides</p><ul class=\"plainly\">{lines}</ul></div>"
        )
    }

    /// A page of the lectern's own.
    fn page(&self, words: &str) -> String {
        let findings: Vec<&Panel> = self.findings.iter().collect();
        let html = format!(
            "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\
             <title>Lectern</title><link rel=\"stylesheet\" href=\"/look/marking-blue.css\"></head>\n<body><main class=\"main page\">\
             <h1>{}</h1>{}{}<p><a href=\"/\">/</a></p></main></body></html>\n",
            escaped(words),
            self.trouble.as_deref().map_or_else(String::new, told),
            self.listed(&findings, ""),
        );
        let script = format!("<script src=\"/lectern/reload.js\" data-turn=\"{}\"></script></head>", self.turn);
        html.replacen("</head>", &script, 1)
    }
}

/// How many findings of other guides a page lists.
const MOST_LISTED: usize = 12;

/// Where a finding belongs.
enum Spot {
    /// Before the byte at which the element begins that it is about.
    Before(usize),
    /// At the top of the page.
    Top,
    /// On another page.
    Elsewhere,
}

/// The byte at which an element begins whose id ends with this name, before which a panel can stand: a block in the main part.
fn place_of(html: &str, id: &str) -> Option<usize> {
    let main = html.find("<main")?;
    let ending = format!("-{id}\"");
    let is_id = |at: &usize| html[..*at].rfind('"').is_some_and(|quote| html[..quote].ends_with(" id="));
    let at = html[main..].match_indices(&ending).map(|(at, _)| main + at).find(is_id)?;
    let tag = html[..at].rfind('<')?;
    // A panel cannot stand between the items of a list: it goes before the list.
    let list = |name: &str| html[main..tag].rfind(&format!("<{name}")).map(|at| main + at);
    match html[tag..].starts_with("<li") {
        true => [list("ul"), list("ol")].into_iter().flatten().max(),
        false => Some(tag),
    }
}

fn told(words: &str) -> String {
    format!("<div class=\"finding advice\"><p class=\"finding-what\">{}</p></div>", escaped(words))
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

fn panels(proofed: &Proofed, folder: &Folder) -> Vec<Panel> {
    let pages = pages_of_files(proofed);
    proofed.findings.iter().map(|finding| panel(finding, folder, &pages)).collect()
}

fn panel(finding: &Finding, folder: &Folder, pages: &BTreeMap<u32, String>) -> Panel {
    let text = folder.texts.get(finding.place.file);
    let name = text.map_or("", |text| text.name.as_str());
    let id = text.and_then(|text| thing_above(|line| text.line(line), finding.place.line));
    Panel {
        code: finding.code.as_str(),
        message: finding.message.clone(),
        help: finding.help.clone(),
        place: format!("{name}:{}", finding.place.line),
        severity: match finding.severity() {
            Severity::Error => "error",
            Severity::Advice => "advice",
        },
        at: (pages.get(&finding.place.file.0).cloned(), id),
    }
}

/// The id of the thing that a line of a guide belongs to: that of the nearest item above it that has one.
fn thing_above<'t>(line_at: impl Fn(u32) -> &'t str, line: u32) -> Option<String> {
    const KEYS: [&str; 9] = ["cause", "probe", "part", "tool", "consumable", "limit", "word", "access", "picture"];
    (1..=line).rev().find_map(|number| {
        let text = line_at(number).trim_start().strip_prefix("- ")?;
        let (key, id) = text.trim_start_matches('{').split_once(':')?;
        let id = id.split([',', '}', '#']).next()?.trim();
        (KEYS.contains(&key.trim()) && !id.is_empty()).then(|| id.to_owned())
    })
}

/// The page of each guide, by the number of its file.
fn pages_of_files(proofed: &Proofed) -> BTreeMap<u32, String> {
    let guides = &proofed.guides;
    let mut pages = BTreeMap::new();
    let mut add = |file: u32, kind: Kind, id: &str| {
        pages.insert(file, crate::handbook::page_of(kind, id));
    };
    guides.symptoms.iter().for_each(|(file, guide)| add(file.0, Kind::Symptom, guide.symptom.value.as_str()));
    guides.procedures.iter().for_each(|(file, guide)| add(file.0, Kind::Procedure, guide.procedure.value.as_str()));
    guides.checklists.iter().for_each(|(file, guide)| add(file.0, Kind::Checklist, guide.checklist.value.as_str()));
    guides.circuits.iter().for_each(|(file, guide)| add(file.0, Kind::Circuit, guide.circuit.value.as_str()));
    guides.stores.iter().for_each(|(file, _)| add(file.0, Kind::Stores, ""));
    guides.limits.iter().for_each(|(file, _)| add(file.0, Kind::Limits, ""));
    guides.words.iter().for_each(|(file, _)| add(file.0, Kind::Words, ""));
    guides.handbook.iter().for_each(|(file, _)| add(file.0, Kind::Handbook, ""));
    pages
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_belongs_to_the_nearest_thing_above_it() {
        let lines = ["symptom: a", "causes:", "  - cause: dirt", "    share: 27", "  - {cause: wear, share: x}"];
        let at = |line: u32| lines[line as usize - 1];
        assert_eq!(thing_above(at, 4).as_deref(), Some("dirt"));
        assert_eq!(thing_above(at, 5).as_deref(), Some("wear"));
        assert_eq!(thing_above(at, 2), None);
    }

    #[test]
    fn a_panel_stands_before_the_list_and_never_in_it() {
        let html = "<main><p>a <a href=\"#x-cause-dirt\">a</a></p><ul><li id=\"x-cause-dirt\">b</li></ul><p id=\"x-cause-wear\">c</p></main>";
        assert_eq!(place_of(html, "cause-dirt"), html.find("<ul>"));
        assert_eq!(place_of(html, "wear"), html.find("<p id"));
        assert_eq!(place_of(html, "none"), None);
    }
}
