//! Findings for people: the line with the place marked, what is wrong, and what to do.

use super::{count, typed};
use crate::cli::terminal::Colour;
use crate::proof::{Finding, Proofed, Severity};
use crate::source::{Place, Text, Texts};
use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use std::collections::BTreeSet;
use std::path::Path;

/// Widest line that is shown around a mark, in characters.
const WIDEST: usize = 110;

/// Draws one finding.
pub fn finding(finding: &Finding, texts: &Texts, folder: &Path, colour: Colour) -> String {
    let renderer = match colour {
        Colour::Coloured => Renderer::styled(),
        Colour::Plain => Renderer::plain(),
    };
    let renderer = renderer.decor_style(DecorStyle::Unicode).term_width(WIDEST);
    let level = match finding.severity() {
        Severity::Error => Level::ERROR,
        Severity::Advice => Level::WARNING.with_name("advice"),
    };
    let title = level.primary_title(shown(&finding.message)).id(finding.code.as_str());
    let mut group = Group::with_title(title);
    let label = if finding.also.is_empty() { None } else { Some("here") };
    group = snippet(group, texts, folder, finding.place, AnnotationKind::Primary, label);
    for (place, word) in &finding.also {
        group = snippet(group, texts, folder, *place, AnnotationKind::Context, Some(word));
    }
    // A help may show lines to paste; nothing else of a control character goes to a terminal.
    let help = finding.help.lines().map(shown).collect::<Vec<_>>().join("\n");
    // Proofing knows no folder: here the command is made one that can be typed.
    let help = help.replace("coquille proof --mend", &format!("coquille proof {} --mend", shown(&typed(folder))));
    group = group.element(Level::HELP.message(help));
    renderer.render(&[group])
}

fn snippet<'a>(
    group: Group<'a>,
    texts: &'a Texts,
    folder: &Path,
    place: Place,
    kind: AnnotationKind,
    label: Option<&'a str>,
) -> Group<'a> {
    let Some(text) = texts.get(place.file) else { return group };
    let (line, bytes) = marked_line(text, place);
    let mark = kind.span(bytes).label(label.map(str::to_owned));
    let path = folder.join(&text.name).to_string_lossy().replace('\\', "/");
    group.element(Snippet::source(line).line_start(place.line as usize).path(path).annotation(mark))
}

/// The line at a place, and the bytes of it to mark: a place of several lines is marked to the end of its first.
fn marked_line(text: &Text, place: Place) -> (String, std::ops::Range<usize>) {
    let line = text.line(place.line);
    let start = line.char_indices().nth(place.column as usize - 1).map_or(line.len(), |(at, _)| at);
    let length = (place.end - place.start) as usize;
    let end = (start + length).min(line.len()).max(start);
    let (line, start, end) = windowed(line, start, end);
    // What is shown instead of a sign may be shorter than the sign.
    let before = |byte: usize| line.get(..byte).map_or(0, |part| shown(part).len());
    (shown(&line), before(start)..before(end))
}

/// A very long line is cut down to the part around the mark.
fn windowed(line: &str, start: usize, end: usize) -> (String, usize, usize) {
    if line.len() <= WIDEST * 4 {
        return (line.to_owned(), start, end);
    }
    let floor = |mut at: usize| {
        while !line.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let from = floor(start.saturating_sub(40));
    let to = floor((from + WIDEST).min(line.len())).max(from);
    let end = floor(end.min(to));
    (line[from..to].to_owned(), start - from, end.max(start) - from)
}

/// Words from a guide as a terminal may show them: a guide cannot drive the reader's terminal.
pub(in crate::cli) fn shown(words: &str) -> String {
    let harmless = |letter: char| match letter {
        '\t' => ' ',
        letter
            if letter.is_control()
                || matches!(letter, '\u{200e}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}') =>
        {
            '?'
        }
        letter => letter,
    };
    words.chars().map(harmless).collect()
}

/// A line that says which guides of packs the club's own stand in place of; nothing if none do.
pub fn in_place(proofed: &Proofed) -> String {
    let ids: BTreeSet<&str> = proofed.guides.replaced.iter().map(|replaced| replaced.id.as_str()).collect();
    let listed = ids.iter().copied().collect::<Vec<_>>().join(", ");
    match ids.len() {
        0 => String::new(),
        1 => format!("1 guide of yours stands in place of the pack's: {}\n", shown(&listed)),
        number => format!("{number} guides of yours stand in place of the packs': {}\n", shown(&listed)),
    }
}

/// The summary in a line: how many errors and how much advice in how many guides.
pub fn summary(proofed: &Proofed, guides: usize) -> String {
    let accepted = match proofed.accepted.len() {
        0 => String::new(),
        number => format!(", {} accepted with a reason", number),
    };
    format!(
        "{}{}, {} in {}{accepted}.",
        in_place(proofed),
        count(proofed.errors(), "error", "errors"),
        count(proofed.advice(), "piece of advice", "pieces of advice"),
        count(guides, "guide", "guides"),
    )
}
