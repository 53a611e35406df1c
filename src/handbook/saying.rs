//! What a page says in plain words: what its code is made from, and what is compared between two editions.
//!
//! In: a page as data, and what short links print. Out: [`Said`] lines. Addresses, ids and everything else that no reader sees are
//! left out, so that a page's code changes if and only if what it says does. A sheet is taken line by line as it is printed:
//! the template `sheet-lines.html` and this file are held together by a test.

use super::links::{Target, Targets};
use super::page::{
    Body, CheckItem, Checklist, LimitRow, Need, Needs, Page, Procedure, Queue, SafetyNote, Sheet, SheetOf, SheetProbe,
    Step, SymptomSheet, Torque, Worded,
};
use crate::model::prose::{LinkTo, events, link_to};
use pulldown_cmark::{Event, LinkType, Tag};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A line of what a page says.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Said {
    /// What it is about: the name of a page's field, or of a line on a sheet.
    pub what: String,
    /// The words.
    pub text: String,
}

/// Fields that no reader sees.
const UNSEEN: [&str; 6] = ["address", "anchor", "id", "is", "key", "paper"];

/// Everything that a page says, in an order that depends on what it says alone.
pub fn said(page: &Page, targets: &Targets) -> Vec<Said> {
    let mut saying = Saying { targets, lines: Vec::new() };
    saying.line("title", &page.title);
    match &page.body {
        Body::Sheet(sheet) => saying.sheet(sheet),
        // What pages say is plain data with text keys: it always serialises.
        body => saying.value("", &serde_json::to_value(body).unwrap_or_default()),
    }
    saying.lines
}

struct Saying<'t> {
    targets: &'t Targets,
    lines: Vec<Said>,
}

impl Saying<'_> {
    fn line(&mut self, what: &str, text: &str) {
        self.lines.push(Said { what: what.to_owned(), text: plainly(text, self.targets) });
    }

    fn maybe(&mut self, what: &str, text: Option<&String>) {
        text.into_iter().for_each(|text| self.line(what, text));
    }

    /// Any data: its texts and numbers, the keys of a map in the order of the alphabet whatever the map's own is.
    fn value(&mut self, what: &str, value: &Value) {
        match value {
            Value::Null => {}
            Value::Bool(yes) => self.lines.push(Said { what: what.to_owned(), text: yes.to_string() }),
            Value::Number(number) => self.lines.push(Said { what: what.to_owned(), text: number.to_string() }),
            Value::String(text) => self.line(what, text),
            Value::Array(values) => values.iter().for_each(|value| self.value(what, value)),
            Value::Object(fields) => {
                let mut fields: Vec<_> = fields.iter().filter(|(key, _)| !UNSEEN.contains(&key.as_str())).collect();
                fields.sort_by_key(|(key, _)| *key);
                fields.into_iter().for_each(|(key, value)| self.value(key, value));
            }
        }
    }

    fn sheet(&mut self, sheet: &Sheet) {
        match &sheet.of {
            SheetOf::Procedure(job) => self.procedure(job),
            SheetOf::Checklist(list) | SheetOf::Rows(list) => self.checklist(list),
            SheetOf::Queue(queue) => self.queue(queue),
            SheetOf::Kit(list) => self.value("kit", &serde_json::to_value(list).unwrap_or_default()),
            SheetOf::Symptom(guide) => self.symptom(guide),
        }
    }

    fn procedure(&mut self, job: &Procedure) {
        self.maybe("who", job.who.map(|who| who.as_str().to_owned()).as_ref());
        self.line("minutes", &job.minutes.to_string());
        self.line("waiting", &job.waiting.to_string());
        job.waiting_for.iter().for_each(|what| self.line("waiting", what));
        self.needs(&job.needs);
        self.notes(&job.safety);
        job.steps.iter().for_each(|step| self.step(step));
        for check in &job.prove {
            match (&check.read, &check.what) {
                (Some(read), _) => self.reading(read, check.limit.as_ref()),
                (None, Some(what)) => self.worded("prove", what),
                (None, None) => {}
            }
        }
    }

    fn step(&mut self, step: &Step) {
        self.line("number", &step.number.to_string());
        self.notes(&step.safety);
        self.worded("step", &step.what);
        step.subs.iter().for_each(|sub| self.worded("sub-step", sub));
        step.torque.iter().for_each(|torque| self.torque(torque));
        self.maybe("wait", step.wait.map(|minutes| minutes.to_string()).as_ref());
    }

    fn torque(&mut self, torque: &Torque) {
        self.line("torque", &torque.value);
        let rest = [&torque.tolerance, &torque.source, &torque.by_feel];
        rest.into_iter().for_each(|text| self.maybe("torque", text.as_ref()));
        if !torque.fastener.is_empty() {
            self.line("torque", &format!("{}, {:?}", torque.fastener.join(", "), torque.state));
        }
    }

    fn checklist(&mut self, list: &Checklist) {
        self.line("minutes", &list.minutes.to_string());
        self.needs(&list.needs);
        self.notes(&list.safety);
        for group in &list.groups {
            self.line("heading", &group.heading);
            group.items.iter().for_each(|item| self.item(item));
        }
    }

    /// A queue's sheet goes by instrument, has a box for each piece, and slips that name what mends it. The index of what failed says
    /// the same once more.
    fn queue(&mut self, queue: &Queue) {
        self.line("minutes", &queue.list.minutes.to_string());
        self.notes(&queue.list.safety);
        for group in &queue.list.groups {
            self.line("heading", &group.heading);
            for item in &group.items {
                self.line("number", &item.number.to_string());
                self.notes(&item.safety);
                self.worded("step", &item.what);
                item.limit.iter().for_each(|limit| self.limit(limit));
                self.line("pieces", &item.pieces.to_string());
                self.maybe("leads", item.if_not.as_ref().map(|guide| &guide.title));
            }
        }
    }

    fn item(&mut self, item: &CheckItem) {
        self.line("number", &item.number.to_string());
        self.notes(&item.safety);
        self.worded("step", &item.what);
        match (&item.read, &item.limit) {
            (Some(read), limit) => self.reading(read, limit.as_ref()),
            (None, Some(limit)) => self.limit(limit),
            (None, None) => {}
        }
    }

    fn symptom(&mut self, guide: &SymptomSheet) {
        for first in &guide.first {
            self.line("ask", &first.ask);
            self.notes(&first.safety);
            for answer in &first.answers {
                self.line("answer", &answer.title);
                self.maybe("leads", answer.link.as_ref().map(|link| &link.title));
            }
        }
        guide.probes.iter().for_each(|probe| self.probe(probe));
        self.maybe("rest_says", guide.rest_says.as_ref());
        guide.causes.iter().for_each(|cause| self.line("cause", &cause.title));
    }

    fn probe(&mut self, probe: &SheetProbe) {
        self.line("number", &probe.number.to_string());
        self.maybe("who", probe.who.map(|who| who.as_str().to_owned()).as_ref());
        self.line("ask", &probe.ask);
        self.notes(&probe.safety);
        probe.how.iter().for_each(|how| self.worded("how", how));
        self.line("minutes", &probe.minutes.to_string());
        self.line("found", &format!("{} {}", probe.found.sign, probe.found.n));
        for job in &probe.open {
            self.line("open", &job.title);
            self.line("minutes", &job.minutes.to_string());
        }
        for answer in &probe.answers {
            self.line("answer", &answer.title);
            self.maybe("answer", answer.message.map(str::to_owned).as_ref());
            answer.means.iter().for_each(|means| self.line("means", means));
            answer.remedies.iter().for_each(|remedy| self.line("leads", &remedy.title));
            self.maybe("next", answer.next.map(|next| next.to_string()).as_ref());
        }
    }

    fn needs(&mut self, needs: &Needs) {
        let all = needs.parts.iter().chain(&needs.tools).chain(&needs.consumables);
        all.for_each(|Need { link, quantity, .. }| {
            self.line("need", &link.title);
            self.maybe("quantity", quantity.as_ref());
        });
    }

    fn notes(&mut self, notes: &[SafetyNote]) {
        for note in notes {
            self.line("signal", &format!("{:?}", note.signal).to_lowercase());
            self.line("safety", &note.says);
        }
    }

    /// A sheet has the short wording where there is one.
    fn worded(&mut self, what: &str, words: &Worded) {
        self.line(what, words.short.as_ref().unwrap_or(&words.full));
    }

    fn reading(&mut self, read: &str, limit: Option<&LimitRow>) {
        self.line("read", read);
        limit.into_iter().for_each(|limit| {
            self.line("unit", &limit.unit);
            self.limit(limit);
        });
    }

    fn limit(&mut self, limit: &LimitRow) {
        self.line("bound", limit.bound);
        self.line("value", &limit.value);
    }
}

/// Markdown as the words that a reader sees: a bare link prints the name of what it leads to, or a limit's value.
pub fn plainly(text: &str, targets: &Targets) -> String {
    let mut words = String::new();
    let mut named: Option<String> = None;
    for event in events(text) {
        match event {
            Event::Start(Tag::Link { link_type: LinkType::Autolink, dest_url, .. }) => {
                named = name(&dest_url, targets);
            }
            Event::Text(text) => words.push_str(&named.take().unwrap_or_else(|| text.into_string())),
            Event::Code(text) | Event::Html(text) | Event::InlineHtml(text) => words.push_str(&text),
            Event::SoftBreak | Event::HardBreak => words.push(' '),
            Event::End(end) if !inline(end) => words.push(' '),
            _ => {}
        }
    }
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn inline(end: pulldown_cmark::TagEnd) -> bool {
    use pulldown_cmark::TagEnd::{Emphasis, Image, Link, Strong};
    matches!(end, Emphasis | Strong | Link | Image)
}

fn name(address: &str, targets: &Targets) -> Option<String> {
    let LinkTo::Short(kind, id) = link_to(address) else { return None };
    let Target { title, limit, .. } = targets.get(&(kind, id))?;
    Some(limit.as_ref().map_or_else(
        || title.clone(),
        |limit| format!("{} {} ({})", limit.bound.replace('-', " "), limit.value, limit.source),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::prose::LinkKind;

    #[test]
    fn a_bare_link_says_the_name_of_what_it_leads_to() {
        let spring = Target { title: "Contact spring".into(), address: "stores.html".into(), limit: None };
        let targets = Targets::from([((LinkKind::Part, "spring".to_owned()), spring)]);
        assert_eq!(plainly("Fit the <part:spring>, *gently*.", &targets), "Fit the Contact spring, gently.");
        assert_eq!(plainly("Fit [it](part:spring).", &targets), "Fit it.");
    }
}
