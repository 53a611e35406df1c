//! Checklists that are no list for one piece: a row for each piece of a bag, and the queue at an event.
//!
//! In: a checklist's page data. Out: its blocks; for a queue those of the index of what failed too.

use super::lines::{Block, Column, Field, Index, IndexRow, Line, Slip, SlipRow, Table};
use super::parts::{before, limit_words, needs, safety, wording};
use super::text::{Run, Setter};
use crate::handbook::page::{CheckItem, Checklist, Failed, Failures};

/// Rows to fill in where no numbers are printed.
const BLANK_ROWS: usize = 8;
/// Columns that fit beside one another on either paper, each with room for a reading of 26 mm.
const COLUMNS: usize = 5;

/// A row for each weapon: the checks in full above, then the table, parted where it would be too wide.
pub fn of_rows(list: &Checklist, numbers: &[String], setter: &mut Setter<'_>) -> Vec<Block> {
    let mut blocks: Vec<Block> = needs(&list.needs, setter).into_iter().chain(before(&list.safety, setter)).collect();
    let items: Vec<&CheckItem> = list.groups.iter().flat_map(|group| &group.items).collect();
    blocks.extend(items.iter().map(|item| told_in_full(item, setter)));
    let rows: Vec<String> = match numbers {
        [] => vec![String::new(); BLANK_ROWS],
        numbers => numbers.iter().map(|number| setter.plain(number)).collect(),
    };
    let first = setter.say("sheet-number");
    // As many tables as it takes, each about as wide as the others.
    let wide = items.len().div_ceil(items.len().div_ceil(COLUMNS).max(1)).max(1);
    for items in items.chunks(wide) {
        let columns = items.iter().map(|item| column(item, setter)).collect();
        blocks.push(Block::Table(Table { first: first.clone(), columns, rows: rows.clone() }));
    }
    blocks
}

/// A check as it stands above the table.
fn told_in_full(item: &CheckItem, setter: &mut Setter<'_>) -> Block {
    let limit = item.limit.as_ref().map(|limit| limit_words(limit, setter));
    let line = Line {
        number: Some(item.number.to_string()),
        notes: safety(&item.safety, setter),
        does: wording(&item.what, setter),
        aside: limit,
        ..Line::default()
    };
    Block::Line(Box::new(line))
}

fn column(item: &CheckItem, setter: &mut Setter<'_>) -> Column {
    let bound =
        item.limit.as_ref().map(|limit| setter.say_with(&format!("bound-{}", limit.bound), &[("value", &limit.value)]));
    let limit = bound.map(|bound| setter.plain(&bound));
    let unit = item.read.as_ref().map(|_| item.limit.as_ref().map_or_else(String::new, |limit| limit.unit.clone()));
    Column { number: item.number.to_string(), limit, unit }
}

/// What is controlled at an event, by instrument, and a slip to hand back.
pub fn of_queue(list: &Checklist, setter: &mut Setter<'_>) -> Vec<Block> {
    let mut blocks: Vec<Block> = before(&list.safety, setter).into_iter().collect();
    let mut failed = Vec::new();
    for group in &list.groups {
        if !group.heading.is_empty() {
            blocks.push(Block::Heading { words: setter.plain(&group.heading) });
        }
        for item in &group.items {
            blocks.push(controlled(item, setter));
            failed.push(slip_row(item, setter));
        }
    }
    blocks.push(Block::Slip(Slip {
        heading: setter.say("slip-heading"),
        how: setter.say("slip-how"),
        fields: ["sheet-queue-number", "sheet-fencer"].map(|what| Field { what: setter.say(what), value: None }).into(),
        rows: failed,
        mended_by: setter.say("slip-mended-by"),
    }));
    blocks
}

/// A check with a box for each piece, and a line for why one did not pass.
fn controlled(item: &CheckItem, setter: &mut Setter<'_>) -> Block {
    let pieces = (1..=item.pieces).map(|piece| {
        let words = setter.say_with("queue-piece", &[("n", &piece.to_string())]);
        let words = if item.pieces == 1 { setter.say("queue-passed") } else { words };
        vec![Run { text: words, strong: false }]
    });
    let boxes = pieces.collect();
    let limit = item.limit.as_ref().map(|limit| limit_words(limit, setter));
    let line = Line {
        number: Some(item.number.to_string()),
        notes: safety(&item.safety, setter),
        does: wording(&item.what, setter),
        frames: limit.into_iter().collect(),
        boxes,
        why: Some(setter.say("queue-why")),
        ..Line::default()
    };
    Block::Line(Box::new(line))
}

fn slip_row(item: &CheckItem, setter: &mut Setter<'_>) -> SlipRow {
    let mut what = wording(&item.what, setter);
    if let Some(limit) = &item.limit {
        what.push(Run { text: format!(" ({})", limit_words(limit, setter)), strong: false });
    }
    if item.pieces > 1 {
        let numbers: Vec<String> = (1..=item.pieces).map(|number| number.to_string()).collect();
        what.push(Run { text: format!(" {} ", setter.say("slip-which")), strong: false });
        what.push(Run { text: numbers.join("   "), strong: true });
    }
    SlipRow { what, guide: item.if_not.as_ref().map(|link| setter.plain(&link.title)) }
}

/// What is filled in at the top of the index of what failed.
pub fn fields_of_failures(setter: &Setter<'_>) -> Vec<Field> {
    let what = ["failures-event", "sheet-date", "failures-fencers", "sheet-name"];
    what.map(|what| Field { what: setter.say(what), value: None }).into()
}

/// The index of what failed: a row for each guide, with room for strokes and their number.
pub fn of_failures(rows: &[Failures], setter: &mut Setter<'_>) -> Vec<Block> {
    let heads = ["failures-guide", "failures-items", "failures-strokes", "failures-total"];
    let rows = rows.iter().map(|row| IndexRow {
        guide: match &row.guide {
            Some(guide) => setter.plain(&guide.title),
            None => setter.say("failures-no-guide"),
        },
        items: row.items.iter().map(|item| failed(item, setter)).collect(),
    });
    let rows = rows.collect();
    vec![Block::Index(Index {
        how: setter.say("failures-how"),
        heads: heads.map(|head| setter.say(head)).into(),
        rows,
    })]
}

fn failed(item: &Failed, setter: &mut Setter<'_>) -> Vec<Run> {
    let number = Run { text: format!("{} ", item.number), strong: true };
    std::iter::once(number).chain(wording(&item.what, setter)).collect()
}
