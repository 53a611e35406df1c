//! Findings on the pages that they belong to: at their place, on top, or in a list of what is wrong elsewhere.
//!
//! In: what was found, and a page as it was set. Out: the page with panels. Leaves to others: when a page is set (`desk`).

use super::super::report;
use super::desk::State;
use crate::model::Kind;
use crate::proof::{Finding, Proofed, Severity};
use crate::source::Folder;
use serde::Serialize;
use std::collections::BTreeMap;

/// A finding as it is shown on a page.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Panel {
    code: &'static str,
    pub(super) message: String,
    help: String,
    pub(super) place: String,
    #[serde(skip)]
    pub(super) severity: &'static str,
    /// The page of the guide that it is in, and the id of the thing that it is about, where there is one.
    #[serde(skip)]
    at: (Option<String>, Option<String>),
}

impl State {
    /// A page with the findings that belong to it, each at its place, and the script that reloads it.
    pub(super) fn with_findings(&self, address: &str, html: &str) -> String {
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
        on_top.push_str(&self.listed(&elsewhere.collect::<Vec<_>>()));
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

    /// Findings on other pages: errors first, a line each. The lectern's pages begin at the top of its address.
    fn listed(&self, findings: &[&Panel]) -> String {
        if findings.is_empty() {
            return String::new();
        }
        let mut findings = findings.to_vec();
        findings.sort_by_key(|finding| finding.severity != "error");
        let line = |finding: &&Panel| {
            let words = escaped(&format!("{}: {}", finding.place, finding.message));
            match &finding.at.0 {
                Some(page) => format!("<li><a href=\"/{}\">{words}</a></li>", escaped(page)),
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
    pub(super) fn page(&self, words: &str) -> String {
        let findings: Vec<&Panel> = self.findings.iter().collect();
        let html = format!(
            "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\
             <title>Lectern</title><link rel=\"stylesheet\" href=\"/look/marking-blue.css\"></head>\n<body><main class=\"main page\">\
             <h1>{}</h1>{}{}<p><a href=\"/\">/</a></p></main></body></html>\n",
            escaped(words),
            self.trouble.as_deref().map_or_else(String::new, told),
            self.listed(&findings),
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

/// Everything that was found, as it is shown.
pub(super) fn panels(proofed: &Proofed, folder: &Folder) -> Vec<Panel> {
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
