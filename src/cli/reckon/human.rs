//! The reckoning for people, in a terminal 80 columns wide: whole minutes, shares in 100, bars.

use super::sums::Sums;
use crate::cli::report::count;
use crate::cli::report::human::shown;
use crate::cli::terminal;
use crate::handbook::numbers::{in_hundred, tenths, whole};
use crate::model::Shares;
use crate::proof::cases::sound;
use crate::reckoning::diagnosis::{Fraction, Group, Minutes, Node, Priced, ProbeIndex, Sensitivity, Suspect};

/// Widest name before a bar.
const NAME: usize = 46;
/// Longest bar.
const BAR: usize = 20;

/// The whole report.
pub fn report(sums: &Sums<'_>) -> String {
    let mut lines = head(sums);
    lines.extend(shares(sums));
    lines.extend(minutes(sums));
    for (name, title, priced) in sums.orders() {
        if name != "quickest" || sums.saves() {
            lines.extend(steps(sums, title, priced));
        }
    }
    lines.extend(untold(sums));
    lines.extend(sensitivity(sums));
    lines.join("\n")
}

fn head(sums: &Sums<'_>) -> Vec<String> {
    let guide = sums.sought.guide;
    let from = match guide.shares {
        Shares::Estimated => "shares estimated".to_owned(),
        Shares::Counted => format!("shares of {} counted", count(sums.sought.case.counted as usize, "case", "cases")),
    };
    let mut lines = wrapped("", &guide.title.value);
    lines.push(format!(
        "{}: {}, {}, {from}",
        guide.symptom.value,
        count(sound(&guide.causes).len(), "cause", "causes"),
        count(sound(&guide.probes).len(), "question", "questions"),
    ));
    if let Some(asked) = &sums.what_if {
        let id = sums.sought.suspect(asked.suspect);
        let listed = sums.sought.case.diagnosis.belief();
        let was = listed.possible.iter().find(|(who, _)| *who == asked.suspect).map(|(_, share)| hundred(*share));
        let was = was.unwrap_or_default();
        let text =
            format!("What if `{id}` were {} in 100 instead of {was}? The others are scaled.", hundred(asked.share));
        lines.extend(wrapped("", &text));
    }
    lines
}

fn shares(sums: &Sums<'_>) -> Vec<String> {
    let mut lines = heading("What it can be, in 100 cases");
    let most = sums.belief.possible.iter().map(|(_, share)| *share).max().unwrap_or(Fraction::ONE);
    for (who, share) in &sums.belief.possible {
        lines.push(barred("", sums.sought.title(*who), *share, most));
    }
    lines
}

fn minutes(sums: &Sums<'_>) -> Vec<String> {
    let mut lines = heading(&format!(
        "{:<42}{:>11}{:>10}{:>15}",
        "How many minutes it takes", "on average", "at most", "till it works"
    ));
    let row = |title: &str, average: Fraction, worst: Minutes, works: Fraction| {
        format!("  {title:<40}{:>11}{:>10}{:>15}", rounded(average), whole(worst.0), rounded(works))
    };
    for (_, title, priced) in sums.orders() {
        lines.push(row(title, priced.expected, priced.worst, priced.to_working_again));
    }
    let tree = &sums.tree;
    lines.push(row("Best next question after each answer", tree.expected, tree.worst, tree.to_working_again));
    lines.extend(wrapped(
        "  ",
        "On average and at most: until it is known what to do, and what was opened is closed. Till it works: with the job and its waiting.",
    ));
    lines.extend(compared(sums).iter().flat_map(|said| wrapped("  ", said)));
    lines
}

/// What the figures come to, in sentences.
fn compared(sums: &Sums<'_>) -> Vec<String> {
    let mut said = vec![saved(sums)];
    for (what, gap) in [("order", sums.quickest.gap), ("question", sums.tree.gap)] {
        if gap > 0.0 {
            said.push(unproved(what, gap));
        }
    }
    let quickest = &sums.quickest.priced.order;
    said.extend(sums.quickest_as_listed.as_ref().map(|listed| match listed == quickest {
        true => "With the shares as listed the quickest order is the same.".to_owned(),
        false => format!("With the shares as listed the quickest order is {}.", sums.ids(listed).join(", ")),
    }));
    if sums.first > Minutes(0) {
        let minutes = count(whole(sums.first.0) as usize, "minute", "minutes");
        said.push(format!("Before any order: is it this item at all? About {minutes}, not counted here."));
    }
    said
}

fn saved(sums: &Sums<'_>) -> String {
    let [written, quickest] = [sums.as_written.expected, sums.quickest.priced.expected].map(rounded);
    match (sums.saves(), written.saturating_sub(quickest)) {
        (false, _) => "No order was found that is quicker than the author's.".to_owned(),
        (true, 0) => "The quickest order saves less than a minute.".to_owned(),
        (true, minutes) => format!("The quickest order saves about {}.", count(minutes as usize, "minute", "minutes")),
    }
}

/// How much may still be saved.
fn unproved(what: &str, gap: f64) -> String {
    if gap >= 1.0 {
        return format!("Too many answers come and go for exact sums: the minutes of the best {what} are approximate.");
    }
    let most = libm::ceil(gap * 100.0);
    format!("A better {what} may exist: it could save {most} in 100 of these minutes at most.")
}

fn steps(sums: &Sums<'_>, title: &str, priced: &Priced) -> Vec<String> {
    let mut lines = heading(&format!("{title}: found after so many questions, in 100 cases"));
    for (place, (probe, found)) in priced.order.iter().zip(&priced.found_by_step).enumerate() {
        lines.push(barred(&format!("{:>2}  ", place + 1), sums.sought.probe(*probe), *found, Fraction::ONE));
    }
    for (early, late) in &priced.breaks {
        let (early, late) = (sums.sought.probe(*early), sums.sought.probe(*late));
        lines.extend(wrapped(
            "  ",
            &format!("The guide wants `{early}` after `{late}`; it is reckoned as you ordered it."),
        ));
    }
    lines
}

/// Causes that nothing tells apart, and questions that tell nothing.
fn untold(sums: &Sums<'_>) -> Vec<String> {
    let groups = sums.groups.iter().map(|group| grouped(sums, group));
    let dead = sums.dead.iter().map(|probe| {
        format!("`{}` tells nothing: each of its answers leaves the same causes.", sums.sought.probe(*probe))
    });
    let said: Vec<String> = groups.chain(dead).collect();
    let mut lines = heading("What the questions cannot tell");
    if said.is_empty() {
        lines.push("  Nothing: each cause can be told from all others.".to_owned());
    }
    lines.extend(said.iter().flat_map(|said| wrapped("  ", said)));
    lines
}

fn grouped(sums: &Sums<'_>, group: &Group) -> String {
    let names: Vec<String> = group.suspects.iter().map(|who| format!("`{}`", sums.sought.suspect(*who))).collect();
    let names = match names.as_slice() {
        [rest @ .., last] => format!("{} from {last}", rest.join(", ")),
        [] => String::new(),
    };
    match group.suspects.first().filter(|_| group.one_remedy.is_some()).and_then(|who| sums.sought.remedy(*who)) {
        Some(job) if group.suspects.len() == 2 => format!("{names}, but `{job}` mends both."),
        Some(job) => format!("{names}, but `{job}` mends all of them."),
        None => format!("{names}, and they need different jobs."),
    }
}

/// When another first question would be better.
fn sensitivity(sums: &Sums<'_>) -> Vec<String> {
    let Node::Decision(first) = &sums.tree.root else { return Vec::new() };
    let first = sums.sought.probe(first.probe);
    let mut lines = heading("If the shares are off");
    let said = match &sums.sensitivity {
        None => vec!["This guide is too large to try other shares quickly. Try some with `--what-if`.".to_owned()],
        Some(moves) => moved(sums, moves, first),
    };
    lines.extend(said.iter().flat_map(|said| wrapped("  ", said)));
    lines
}

fn moved(sums: &Sums<'_>, moves: &[Sensitivity], first: &str) -> Vec<String> {
    let mut said = Vec::new();
    for moved in moves {
        for (share, other) in [moved.below, moved.above].into_iter().flatten() {
            said.push(instead(sums, moved, share, other));
        }
    }
    let best = format!("The best first question is `{first}`");
    match said.is_empty() {
        true => vec![format!("{best}, even if one share is ten times as large or as small.")],
        false => [format!("{best}. Another one is better")].into_iter().chain(said).collect(),
    }
}

fn instead(sums: &Sums<'_>, moved: &Sensitivity, share: Fraction, other: ProbeIndex) -> String {
    let (who, other) = (name(sums, moved.suspect), sums.sought.probe(other));
    format!("- if {who} is {} in 100 instead of {}: `{other}`", hundred(share), hundred(moved.share))
}

fn name(sums: &Sums<'_>, suspect: Suspect) -> String {
    match suspect {
        Suspect::Cause(_) => format!("`{}`", sums.sought.suspect(suspect)),
        Suspect::Rest => "what is not on the list".to_owned(),
    }
}

fn heading(words: &str) -> Vec<String> {
    vec![String::new(), words.to_owned()]
}

/// A name, a bar and a share in 100, with dots to lead the eye.
fn barred(before: &str, name: &str, share: Fraction, full: Fraction) -> String {
    let room = NAME - before.chars().count();
    let name = shortened(&shown(name), room);
    let bar = bar(share, full);
    format!("  {before}{name:<room$}  {bar:<BAR$} {:>8}", hundred(share))
}

fn shortened(name: &str, room: usize) -> String {
    match name.chars().count() > room {
        true => name.chars().take(room - 1).chain(['…']).collect(),
        false => name.to_owned(),
    }
}

/// A bar in half blocks; what is possible has at least half a block.
fn bar(share: Fraction, full: Fraction) -> String {
    let part = share.as_f64() / full.as_f64().max(f64::MIN_POSITIVE);
    let halves = libm::round(part * 2.0 * BAR as f64) as usize;
    let halves = if share > Fraction::ZERO { halves.clamp(1, 2 * BAR) } else { 0 };
    let end = if halves % 2 == 1 { "▌" } else { "" };
    format!("{}{end}", "█".repeat(halves / 2))
}

/// A share in 100: never 0 for what is possible, never 100 for what is unsure.
fn hundred(share: Fraction) -> String {
    let shown = in_hundred(share);
    match shown.sign {
        "about" => shown.n.to_string(),
        sign => format!("{sign} {}", shown.n),
    }
}

/// Expected minutes as whole minutes.
fn rounded(minutes: Fraction) -> u32 {
    whole(tenths(minutes))
}

/// Words of the guide and ours, in lines that fit.
fn wrapped(indent: &str, words: &str) -> Vec<String> {
    terminal::wrapped(indent, &shown(words))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_shows_what_is_possible_and_never_more_than_all() {
        let whole = Fraction::ONE;
        assert_eq!(bar(Fraction::ZERO, whole), "");
        assert_eq!(bar(Fraction::new(1, 10_000), whole), "▌");
        assert_eq!(bar(Fraction::new(3, 40), whole), "█▌");
        assert_eq!(bar(whole, whole).chars().count(), BAR);
    }
}
