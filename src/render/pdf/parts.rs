//! What stands on each kind of sheet: jobs, checklists, fault finding.
//!
//! In: a sheet's page data. Out: its facts, fields and blocks. Wording: the short one of a guide where it has both, since who holds
//! the sheet has read the guide.

use super::lines::{Blank, Block, Fact, Field, Line, Note, Told};
use super::table;
use super::text::{Para, Run, Setter};
use crate::handbook::page::{
    Check, CheckItem, Checklist, First, LimitRow, Need, Needs, Procedure, SafetyNote, Sheet, SheetAnswer, SheetOf,
    SheetProbe, Step, SymptomSheet, Torque, Worded,
};
use crate::model::{Signal, ThreadState, Who};

/// Whether a sheet is one for all pieces.
pub fn has_rows(sheet: &Sheet) -> bool {
    matches!(sheet.of, SheetOf::Rows(_) | SheetOf::Kit(_))
}

/// What is said at the top.
pub fn facts(sheet: &Sheet, setter: &mut Setter<'_>) -> Vec<Fact> {
    match &sheet.of {
        SheetOf::Procedure(job) => facts_of_job(job, setter),
        SheetOf::Checklist(list) | SheetOf::Rows(list) => vec![fact(setter, "takes", duration(setter, list.minutes))],
        SheetOf::Queue(queue) => vec![fact(setter, "takes", duration(setter, queue.list.minutes))],
        SheetOf::Symptom(guide) => facts_of_fault(guide, setter),
        SheetOf::Kit(list) => super::kit::facts(list, setter),
    }
}

/// A fact under one of the program's own words.
pub fn fact(setter: &Setter<'_>, what: &str, value: String) -> Fact {
    Fact { what: setter.say(what), value }
}

fn facts_of_job(job: &Procedure, setter: &mut Setter<'_>) -> Vec<Fact> {
    let mut facts = vec![fact(setter, "hands-on", duration(setter, job.minutes))];
    if job.waiting > 0 {
        let what_for = setter.plain(&job.waiting_for.join(", "));
        let time = duration(setter, job.waiting);
        let value = if what_for.is_empty() { time } else { format!("{time} ({what_for})") };
        facts.push(fact(setter, "waiting", value));
    }
    match job.who {
        Some(Who::Adult) => facts.push(fact(setter, "who", setter.say("who-adult"))),
        Some(Who::Supervised) => facts.push(fact(setter, "who", setter.say("who-supervised"))),
        Some(Who::Anyone) | None => {}
    }
    if let Some(holds) = &job.holds {
        let holds = setter.plain(holds);
        facts
            .push(Fact { what: setter.say("stop-gap"), value: setter.say_with("stop-gap-holds", &[("time", &holds)]) });
    }
    facts
}

fn facts_of_fault(guide: &SymptomSheet, setter: &mut Setter<'_>) -> Vec<Fact> {
    let lamps = guide.lamps.iter().map(|lamp| {
        let state = setter.say(match lamp.state {
            crate::model::LampState::Lit => "lamp-lit",
            crate::model::LampState::Dark => "lamp-dark",
            crate::model::LampState::ComesAndGoes => "lamp-comes-and-goes",
        });
        let position = lamp.position.clone().unwrap_or_default();
        setter.say_with(&format!("lamp-{}", lamp.when), &[("state", &state), ("position", &position)])
    });
    let lamps: Vec<String> = lamps.collect();
    let seen = setter.say(guide.seen_on);
    let value = if lamps.is_empty() { seen } else { format!("{}; {seen}", lamps.join(", ")) };
    vec![Fact { what: setter.say("sheet-seen"), value: setter.plain(&value) }]
}

/// Whole minutes as people say them.
pub fn duration(setter: &Setter<'_>, minutes: u32) -> String {
    match (minutes, minutes % 60) {
        (..100, _) => setter.say_n("n-min", minutes),
        (_, 0) => setter.say_n("n-h", minutes / 60),
        (_, rest) => {
            let (hours, rest) = ((minutes / 60).to_string(), rest.to_string());
            setter.say_with("n-h-min", &[("h", &hours), ("n", &rest)])
        }
    }
}

/// What is filled in at the top.
pub fn fields(sheet: &Sheet, number: Option<&str>, setter: &mut Setter<'_>) -> Vec<Field> {
    let first = match sheet.of {
        SheetOf::Rows(_) => &["sheet-owner", "sheet-date", "sheet-name"][..],
        SheetOf::Queue(_) => &["sheet-queue-number", "sheet-fencer", "sheet-date", "sheet-name"],
        SheetOf::Kit(_) => &["sheet-date", "sheet-name"],
        _ => &["sheet-number", "sheet-owner", "sheet-date", "sheet-name"],
    };
    let number = number.map(|number| setter.plain(number));
    let fields = first
        .iter()
        .map(|what| Field { what: setter.say(what), value: number.clone().filter(|_| what.ends_with("number")) });
    fields.collect()
}

/// What stands below.
pub fn blocks(sheet: &Sheet, numbers: &[String], setter: &mut Setter<'_>) -> Vec<Block> {
    match &sheet.of {
        SheetOf::Procedure(job) => of_job(job, setter),
        SheetOf::Checklist(list) => of_checklist(list, setter),
        SheetOf::Rows(list) => table::of_rows(list, numbers, setter),
        SheetOf::Queue(queue) => table::of_queue(&queue.list, setter),
        SheetOf::Symptom(guide) => of_fault(guide, setter),
        SheetOf::Kit(list) => super::kit::blocks(list, setter),
    }
}

fn of_job(job: &Procedure, setter: &mut Setter<'_>) -> Vec<Block> {
    let mut blocks = Vec::new();
    if !job.not_when.is_empty() {
        let cases = job.not_when.iter().flat_map(|case| setter.paras(case)).collect::<Vec<Para>>();
        let dashed = |para: Para| Para { mark: para.mark.or(Some("\u{2013}".to_owned())), ..para };
        let says = cases.into_iter().map(dashed).collect();
        blocks.push(line(Line { does: heavy(setter.say("not-when")), says, ..Line::default() }));
    }
    blocks.extend(needs(&job.needs, setter));
    blocks.extend(before(&job.safety, setter));
    blocks.extend(job.steps.iter().map(|one| step(one, setter)));
    blocks.extend(proof(&job.prove, setter));
    if let Some(next) = &job.next {
        blocks.push(line(Line { does: heavy(setter.say("then")), says: setter.paras(next), ..Line::default() }));
    }
    blocks.push(told(setter, 2));
    blocks
}

/// A line as a block.
pub fn line(line: Line) -> Block {
    Block::Line(Box::new(line))
}

/// The program's own words as a run.
pub fn heavy(text: String) -> Vec<Run> {
    vec![Run { text, strong: true }]
}

/// A guide's words in the wording of the practised hand.
pub fn wording(what: &Worded, setter: &mut Setter<'_>) -> Vec<Run> {
    setter.line(what.short.as_ref().unwrap_or(&what.full))
}

/// What to lay out, a box for each thing.
pub fn needs(needs: &Needs, setter: &mut Setter<'_>) -> Option<Block> {
    let lists = [("parts", &needs.parts), ("tools", &needs.tools), ("consumables", &needs.consumables)];
    let mut boxes = Vec::new();
    for (_, list) in lists {
        boxes.extend(list.iter().map(|need| vec![Run { text: needed(need, setter), strong: false }]));
    }
    if boxes.is_empty() {
        return None;
    }
    Some(line(Line { does: heavy(setter.say("lay-out")), boxes, ..Line::default() }))
}

fn needed(need: &Need, setter: &mut Setter<'_>) -> String {
    let title = setter.plain(&need.link.title);
    let quantity = need.quantity.as_ref().map(|quantity| setter.plain(quantity));
    quantity.map_or(title.clone(), |quantity| format!("{title}, {quantity}"))
}

/// Safety notes for the whole of a guide.
pub fn before(notes: &[SafetyNote], setter: &mut Setter<'_>) -> Option<Block> {
    let notes = safety(notes, setter);
    (!notes.is_empty()).then(|| line(Line { notes, ..Line::default() }))
}

/// Safety notes.
pub fn safety(notes: &[SafetyNote], setter: &mut Setter<'_>) -> Vec<Note> {
    let notes = notes.iter().map(|note| {
        let signal = match note.signal {
            Signal::Danger => "danger",
            Signal::Warning => "warning",
            Signal::Caution => "caution",
            Signal::Notice => "notice",
        };
        Note { signal, word: setter.say(&format!("signal-{signal}")), says: setter.paras(&note.says) }
    });
    notes.collect()
}

fn step(step: &Step, setter: &mut Setter<'_>) -> Block {
    let mut frames = Vec::new();
    let mut says = Vec::new();
    if let Some(torque) = &step.torque {
        frames.push(tightness(torque, setter));
        says = torque.by_feel.as_ref().map_or_else(Vec::new, |feel| setter.paras(feel));
        if let Some(first) = says.first_mut() {
            first.runs.insert(0, Run { text: format!("{} ", setter.say("by-feel")), strong: true });
        }
        if torque.unjudged {
            says.extend(one_para(plain(setter.say("torque-unjudged"))));
        }
    }
    let mut blanks = Vec::new();
    if let Some(wait) = step.wait {
        let time = duration(setter, wait);
        let why = step.wait_for.as_ref().map(|why| setter.plain(why));
        let why = why.map_or_else(String::new, |why| format!(", {why}"));
        frames.push(format!("{} {time}{why}", setter.say("wait")));
        blanks.push(Blank { label: plain(setter.say("since")), unit: String::new(), limit: None });
    }
    line(Line {
        number: Some(step.number.to_string()),
        notes: safety(&step.safety, setter),
        does: wording(&step.what, setter),
        ticked: true,
        subs: step.subs.iter().map(|sub| wording(sub, setter)).collect(),
        says,
        blanks,
        frames,
        ..Line::default()
    })
}

fn plain(text: String) -> Vec<Run> {
    vec![Run { text, strong: false }]
}

/// How tight: value, tolerance, fastener.
fn tightness(torque: &Torque, setter: &mut Setter<'_>) -> String {
    let mut parts = vec![format!("{} {}", setter.say("torque"), torque.value)];
    if let (Some(tolerance), Some(first)) = (&torque.tolerance, parts.first_mut()) {
        *first = format!("{first} {tolerance}");
    }
    if !torque.fastener.is_empty() {
        parts.extend(torque.fastener.iter().cloned());
        parts.push(setter.say(match torque.state {
            ThreadState::Dry => "thread-dry",
            ThreadState::Oiled => "thread-oiled",
        }));
    }
    parts.extend(torque.source.iter().map(
        |source| {
            if source == "shop" { setter.say("shop-value") } else { source.clone() }
        },
    ));
    setter.plain(&parts.join(", "))
}

/// A limit in words: the bound, where it holds, where it comes from.
pub fn limit_words(limit: &LimitRow, setter: &mut Setter<'_>) -> String {
    let bound = setter.say_with(&format!("bound-{}", limit.bound), &[("value", &limit.value)]);
    let source = if limit.shop { setter.say("shop-value") } else { limit.source.clone() };
    setter.plain(&format!("{bound} ({source})"))
}

fn proof(checks: &[Check], setter: &mut Setter<'_>) -> Option<Block> {
    if checks.is_empty() {
        return None;
    }
    let mut made = Line { does: heavy(setter.say("prove-it")), ..Line::default() };
    for check in checks {
        let limit = check.limit.as_ref().map(|limit| limit_words(limit, setter));
        if let Some(read) = &check.read {
            let label = setter.line(read);
            let unit = check.limit.as_ref().map_or_else(String::new, |limit| limit.unit.clone());
            made.blanks.push(Blank { label, unit, limit });
        } else if let Some(what) = &check.what {
            let mut words = wording(what, setter);
            words.extend(limit.map(|limit| Run { text: format!(" ({limit})"), strong: false }));
            made.subs.push(words);
        }
    }
    Some(line(made))
}

fn told(setter: &Setter<'_>, lines: usize) -> Block {
    let boxes = vec![setter.say("lasting"), setter.say("sheet-stop-gap")];
    Block::Told(Told { heading: setter.say("sheet-done"), boxes, lines })
}

fn of_checklist(list: &Checklist, setter: &mut Setter<'_>) -> Vec<Block> {
    let mut blocks: Vec<Block> = needs(&list.needs, setter).into_iter().chain(before(&list.safety, setter)).collect();
    for group in &list.groups {
        if !group.heading.is_empty() {
            blocks.push(Block::Heading { words: setter.plain(&group.heading) });
        }
        blocks.extend(group.items.iter().map(|item| checked(item, setter)));
    }
    if let Some(done) = &list.done {
        blocks.push(line(Line { does: heavy(setter.say("all-good")), says: setter.paras(done), ..Line::default() }));
    }
    blocks.push(Block::Told(Told { heading: setter.say("sheet-notes"), boxes: Vec::new(), lines: 2 }));
    blocks
}

fn checked(item: &CheckItem, setter: &mut Setter<'_>) -> Block {
    let mut made = Line {
        number: Some(item.number.to_string()),
        notes: safety(&item.safety, setter),
        does: wording(&item.what, setter),
        boxes: vec![plain(setter.say("good")), plain(setter.say("not-good"))],
        ..Line::default()
    };
    let limit = item.limit.as_ref().map(|limit| limit_words(limit, setter));
    match (&item.read, limit) {
        (Some(read), limit) => {
            let unit = item.limit.as_ref().map_or_else(String::new, |limit| limit.unit.clone());
            made.blanks.push(Blank { label: setter.line(read), unit, limit });
        }
        (None, limit) => made.frames.extend(limit),
    }
    line(made)
}

fn of_fault(guide: &SymptomSheet, setter: &mut Setter<'_>) -> Vec<Block> {
    let mut blocks: Vec<Block> = guide.first.iter().map(|first| isolating(first, setter)).collect();
    blocks.extend(guide.probes.iter().map(|probe| asked(probe, setter)));
    if let Some(rest) = &guide.rest_says {
        let does = heavy(setter.say("not-on-this-list"));
        blocks.push(line(Line { does, says: setter.paras(rest), ..Line::default() }));
    }
    let causes = guide.causes.iter().filter(|cause| !cause.rest).map(|cause| setter.plain(&cause.title));
    let mut boxes: Vec<String> = causes.collect();
    boxes.push(setter.say("sheet-another"));
    blocks.push(Block::Told(Told { heading: setter.say("sheet-what-it-was"), boxes, lines: 1 }));
    blocks.push(told(setter, 2));
    blocks
}

fn isolating(first: &First, setter: &mut Setter<'_>) -> Block {
    let boxes = first.answers.iter().map(|answer| {
        let then = answer.link.as_ref().map_or_else(|| setter.say("go-on"), |link| link.title.clone());
        plain(setter.plain(&format!("{}: {then}", answer.title)))
    });
    let boxes = boxes.collect();
    line(Line {
        notes: safety(&first.safety, setter),
        does: heavy(setter.plain(&first.ask)),
        aside: Some(setter.say_n("n-min", first.minutes)),
        says: first.how.as_ref().map_or_else(Vec::new, |how| one_para(wording(how, setter))),
        boxes,
        ..Line::default()
    })
}

fn one_para(runs: Vec<Run>) -> Vec<Para> {
    vec![Para { mark: None, runs }]
}

fn asked(probe: &SheetProbe, setter: &mut Setter<'_>) -> Block {
    let share = probe.found.n.to_string();
    let share = setter.say_with(&format!("share-{}", probe.found.sign), &[("n", &share)]);
    let minutes = setter.say_n("n-min", probe.minutes);
    let opened = probe.open.iter().map(|job| {
        let title = setter.plain(&job.title);
        let minutes = setter.say_n("n-min", job.minutes);
        let words = setter.say_with("sheet-open", &[("job", &title), ("minutes", &minutes)]);
        plain(words)
    });
    let opens: Vec<Vec<Run>> = opened.collect();
    let boxes = probe.answers.iter().map(|answer| answered(answer, setter)).collect();
    line(Line {
        number: Some(probe.number.to_string()),
        notes: safety(&probe.safety, setter),
        does: heavy(setter.plain(&probe.ask)),
        aside: Some(setter.say_with("sheet-found", &[("minutes", &minutes), ("share", &share)])),
        says: probe.how.as_ref().map_or_else(Vec::new, |how| one_para(wording(how, setter))),
        opens,
        boxes,
        ..Line::default()
    })
}

/// An answer, then what it is and what mends it, or the question to go on with.
fn answered(answer: &SheetAnswer, setter: &mut Setter<'_>) -> Vec<Run> {
    let title = match answer.message {
        Some(id) => setter.say(id),
        None => setter.plain(&answer.title),
    };
    let mut follows = Vec::new();
    if !answer.means.is_empty() {
        let causes = setter.plain(&answer.means.join("; "));
        follows.push(setter.say_with("sheet-it-is", &[("causes", &causes)]));
    }
    if !answer.remedies.is_empty() {
        let jobs: Vec<&str> = answer.remedies.iter().map(|remedy| remedy.title.as_str()).collect();
        let jobs = setter.plain(&jobs.join("; "));
        follows.push(setter.say_with("sheet-do", &[("jobs", &jobs)]));
    }
    match (answer.next.map(|next| next.to_string()), follows.is_empty()) {
        (Some(next), true) => follows.push(setter.say_with("sheet-on-to", &[("n", &next)])),
        (Some(next), false) => follows.push(setter.say_with("sheet-else-on-to", &[("n", &next)])),
        (None, true) => follows.push(setter.say("sheet-not-listed")),
        (None, false) => {}
    }
    vec![Run { text: format!("{title}: "), strong: true }, Run { text: follows.join(" "), strong: false }]
}
