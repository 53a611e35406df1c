//! The kit list as a sheet: boxes for what to fetch, and how long it takes.
//!
//! In: a kit list's page data. Out: its facts and blocks.

use super::lines::{Block, Fact, Line};
use super::parts::{duration, fact, heavy, line, safety};
use super::text::{Para, Run, Setter};
use crate::handbook::page::{KitLine, KitList};

/// For how many pieces, and how long it takes.
pub fn facts(list: &KitList, setter: &mut Setter<'_>) -> Vec<Fact> {
    let mut facts = vec![fact(setter, "hands-on", duration(setter, list.minutes))];
    if list.waiting > 0 {
        facts.push(fact(setter, "waiting", duration(setter, list.waiting)));
        facts.push(fact(setter, "fetch-in-all", duration(setter, list.total)));
    }
    facts
}

/// What to fetch, kind by kind.
pub fn blocks(list: &KitList, setter: &mut Setter<'_>) -> Vec<Block> {
    let mut blocks = vec![asked_for(list, setter)];
    for (heading, lines) in [("parts", &list.parts), ("tools", &list.tools), ("consumables", &list.consumables)] {
        if lines.is_empty() {
            continue;
        }
        let boxes = lines.iter().map(|one| vec![Run { text: thing(one, setter), strong: false }]).collect();
        blocks.push(line(Line { does: heavy(setter.say(heading)), boxes, ..Line::default() }));
    }
    let notes = safety(&list.safety, setter);
    if !notes.is_empty() {
        blocks.push(Block::Heading { words: setter.say("before-you-start") });
        blocks.extend(notes.into_iter().map(|note| line(Line { notes: vec![note], ..Line::default() })));
    }
    blocks
}

/// The guides with their times, and how the times are added up.
fn asked_for(list: &KitList, setter: &mut Setter<'_>) -> Block {
    let mut says: Vec<Para> = Vec::new();
    for guide in &list.guides {
        let minutes = format!("{} {}", setter.say("hands-on"), duration(setter, guide.minutes));
        let waiting =
            (guide.waiting > 0).then(|| format!(", {} {}", setter.say("waiting"), duration(setter, guide.waiting)));
        let text = format!("{}: {minutes}{}", setter.plain(&guide.link.title), waiting.unwrap_or_default());
        says.push(Para { mark: Some("\u{2013}".to_owned()), runs: vec![Run { text, strong: false }] });
    }
    says.push(Para { mark: None, runs: vec![Run { text: setter.say("fetch-model"), strong: false }] });
    line(Line { does: heavy(setter.say_n("fetch-for", list.pieces)), says, ..Line::default() })
}

fn thing(one: &KitLine, setter: &mut Setter<'_>) -> String {
    let quantity = one.quantity.as_ref().map_or_else(String::new, |quantity| format!(", {quantity}"));
    let hazards = if one.hazards.is_empty() { String::new() } else { format!(" ({})", one.hazards.join(", ")) };
    setter.plain(&format!("{}{quantity}{hazards}", one.link.title))
}
