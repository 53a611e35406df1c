//! YAML text to a tree in which every key and every value knows its place.
//!
//! In: one text. Out: a [`Node`], or nothing, and all flaws of the text up to the first that stops the parser.
//! Leaves to others: what keys mean. Refused where they stand: anchors, aliases, tags, merge keys, second documents,
//! directives, equal keys, more than [`MAX_DEPTH`] levels or [`MAX_NODES`] values. A number keeps its text as written.

use super::flaw::{Flaw, What};
use super::garbled::{garbled, opened_above};
use super::place::{FileId, Place, Text};
use granit_parser::{ErrorKind, Event, Options, Parser, ScanError, Span};
use std::collections::BTreeMap;

/// Levels of lists and maps in one another.
pub const MAX_DEPTH: usize = 64;
/// Values in one file.
pub const MAX_NODES: usize = 200_000;

/// A value with its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Node {
    /// Where it stands.
    pub place: Place,
    /// What it is.
    pub kind: NodeKind,
}

/// What a value is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NodeKind {
    /// No value: `key:` and nothing after it, or `~`.
    Nothing,
    /// Text, numbers and yes/no alike, as written.
    Scalar(String),
    /// A list.
    List(Vec<Node>),
    /// A map, in the order written.
    Map(Vec<(Key, Node)>),
}

/// The key of a map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key {
    /// Its text.
    pub text: String,
    /// Where it stands.
    pub place: Place,
}

impl Node {
    /// The value in words, for a message.
    pub fn described(&self) -> &'static str {
        match self.kind {
            NodeKind::Nothing => "nothing",
            NodeKind::Scalar(_) => "a text or number",
            NodeKind::List(_) => "a list",
            NodeKind::Map(_) => "a map with keys",
        }
    }

    /// The text of a scalar.
    pub fn text(&self) -> Option<&str> {
        match &self.kind {
            NodeKind::Scalar(text) => Some(text),
            _ => None,
        }
    }

    /// Every scalar inside with the key that it stands under, in the order written; those of a list stand under the list's.
    pub fn texts_under_keys(&self) -> Vec<(&str, &Node)> {
        let mut found = Vec::new();
        self.gather("", &mut found);
        found
    }

    fn gather<'n>(&'n self, key: &'n str, found: &mut Vec<(&'n str, &'n Node)>) {
        match &self.kind {
            NodeKind::Nothing => {}
            NodeKind::Scalar(_) => found.push((key, self)),
            NodeKind::List(items) => items.iter().for_each(|item| item.gather(key, found)),
            NodeKind::Map(entries) => entries.iter().for_each(|(key, value)| value.gather(&key.text, found)),
        }
    }

    /// The first key of a map, with its value.
    pub fn first_entry(&self) -> Option<&(Key, Node)> {
        match &self.kind {
            NodeKind::Map(entries) => entries.first(),
            _ => None,
        }
    }
}

/// Reads one text.
pub fn parse(file: FileId, text: &Text) -> (Option<Node>, Vec<Flaw>) {
    let mut grower = Grower { file, text, flaws: odd_breaks(file, text), nodes: 0 };
    if !grower.flaws.is_empty() {
        return (None, grower.flaws);
    }
    let root = grower.document();
    (root, grower.flaws)
}

/// Characters that other YAML programs take for line breaks: places would not mean the same to every reader.
fn odd_breaks(file: FileId, text: &Text) -> Vec<Flaw> {
    let odd = |letter: char| matches!(letter, '\u{85}' | '\u{2028}' | '\u{2029}' | '\0');
    let found = text.text.char_indices().filter(|(_, letter)| odd(*letter)).take(20);
    found.map(|(at, letter)| Flaw::new(text.place(file, at..at + letter.len_utf8()), What::OddBreak(letter))).collect()
}

type Events<'a> = Parser<'a, granit_parser::StrInput<'a>>;

struct Grower<'a> {
    file: FileId,
    text: &'a Text,
    flaws: Vec<Flaw>,
    nodes: usize,
}

/// Nothing more can be read: the flaw has been noted.
struct Stopped;

impl<'a> Grower<'a> {
    fn document(&mut self) -> Option<Node> {
        let mut options = Options::default();
        options.set_emit_comments(false);
        options.disallow_directives = true;
        options.strict_indentation = false;
        options.emit_unresolved_aliases = true;
        let mut events = Parser::new_from_str_with_options(&self.text.text, options);
        let mut root = None;
        loop {
            match self.next(&mut events) {
                // A lone text before the flaw is the start of what could not be made out, not a guide.
                Err(Stopped) => return root.filter(|node: &Node| node.text().is_none()),
                Ok(None) | Ok(Some((Event::StreamEnd, _))) => break,
                Ok(Some((Event::StreamStart | Event::DocumentEnd, _))) => {}
                Ok(Some((Event::DocumentStart(..), span))) if root.is_some() => {
                    self.note(span, What::SecondDocument);
                    return root;
                }
                Ok(Some((Event::DocumentStart(..), _))) => {}
                Ok(Some((event, span))) => match self.node(&mut events, event, span, 0) {
                    Ok(node) => root = Some(node),
                    Err(Stopped) => return root,
                },
            }
        }
        if root.is_none() && self.flaws.is_empty() {
            self.flaws.push(Flaw::new(Place::top(self.file), What::Empty));
        }
        root
    }

    fn next(&mut self, events: &mut Events<'a>) -> Result<Option<(Event<'a>, Span)>, Stopped> {
        match events.next_event() {
            None => Ok(None),
            Some(Ok(pair)) => Ok(Some(pair)),
            Some(Err(error)) => {
                self.note_error(&error);
                Err(Stopped)
            }
        }
    }

    fn node(&mut self, events: &mut Events<'a>, event: Event<'a>, span: Span, depth: usize) -> Result<Node, Stopped> {
        self.nodes += 1;
        if depth > MAX_DEPTH || self.nodes > MAX_NODES {
            self.note(span, if depth > MAX_DEPTH { What::TooDeep } else { What::TooMany });
            return Err(Stopped);
        }
        self.refuse_marks(&event, span);
        match event {
            Event::Scalar(text, style, ..) => Ok(self.scalar(&text, style, span)),
            Event::SequenceStart(..) => self.list(events, span, depth),
            Event::MappingStart(..) => self.map(events, span, depth),
            // What an alias stands for is not read: its own words stand in for it, so that it is found once and not twice.
            _ => {
                let place = self.place(span);
                let words = self.text.text.get(place.bytes()).unwrap_or("").to_owned();
                Ok(Node { place, kind: NodeKind::Scalar(words) })
            }
        }
    }

    /// Notes anchors, aliases and tags: they are refused, but what they stand on is read all the same.
    fn refuse_marks(&mut self, event: &Event<'a>, span: Span) {
        if matches!(event, Event::Alias(_) | Event::UnresolvedAlias(_)) {
            self.note(span, What::Alias);
        }
        if event.anchor_id().is_some() {
            let at = self.anchor_before(span);
            self.flaws.push(Flaw::new(at, What::Anchor));
        }
        if event.tag().is_some() {
            self.note(span.tag_span().unwrap_or(span), What::Tag);
        }
    }

    /// The anchor's token stands before the value; its last `&` is where a person would look.
    fn anchor_before(&self, span: Span) -> Place {
        let value = self.place(span);
        let before = self.text.text.get(..value.start as usize).unwrap_or("");
        match before.rfind('&') {
            Some(at) => self.text.place(self.file, at..at + before[at..].trim_end().len()),
            None => value,
        }
    }

    fn scalar(&mut self, text: &str, style: granit_parser::ScalarStyle, span: Span) -> Node {
        let plain = style == granit_parser::ScalarStyle::Plain;
        let nothing = plain && matches!(text, "" | "~" | "null");
        let kind = if nothing { NodeKind::Nothing } else { NodeKind::Scalar(text.to_owned()) };
        Node { place: self.place(span), kind }
    }

    fn list(&mut self, events: &mut Events<'a>, start: Span, depth: usize) -> Result<Node, Stopped> {
        let mut items = Vec::new();
        loop {
            match self.next(events)? {
                None | Some((Event::SequenceEnd, _)) => break,
                Some((event, span)) => items.push(self.node(events, event, span, depth + 1)?),
            }
        }
        let place = self.spanning(start, items.last().map(|item| item.place));
        Ok(Node { place, kind: NodeKind::List(items) })
    }

    fn map(&mut self, events: &mut Events<'a>, start: Span, depth: usize) -> Result<Node, Stopped> {
        let mut entries: Vec<(Key, Node)> = Vec::new();
        let mut taken = BTreeMap::new();
        loop {
            let key = match self.next(events)? {
                None | Some((Event::MappingEnd, _)) => break,
                Some((event, span)) => self.node(events, event, span, depth + 1)?,
            };
            let Some((event, span)) = self.next(events)? else { break };
            let mut value = self.node(events, event, span, depth + 1)?;
            if value.kind == NodeKind::Nothing && value.place.start == value.place.end {
                // A value that is not there is shown at its key.
                value.place = key.place;
                if self.stands_alone(&key) {
                    if self.continues_a_figure(&mut entries, &key) {
                        continue;
                    }
                    self.flaws.push(Flaw::new(key.place, What::KeyAlone(key.text().unwrap_or("").to_owned())));
                    continue;
                }
            }
            entries.extend(self.entered(&mut taken, key, value));
        }
        let place = self.spanning(start, entries.last().map(|(_, value)| value.place));
        Ok(Node { place, kind: NodeKind::Map(entries) })
    }

    /// Whether no colon follows a key: `{says: Out, and back}` has a key `and back`.
    fn stands_alone(&self, key: &Node) -> bool {
        let after = self.text.text.get(key.place.end as usize..).unwrap_or("");
        let explicit = self.text.text.get(..key.place.start as usize).unwrap_or("").trim_end().ends_with('?');
        key.text().is_some() && !explicit && !after.trim_start().starts_with(':')
    }

    /// `{at most: 6,5 mm}`: the comma has ended the value, and `5 mm` is a key to YAML. The value is read as it was meant, so that
    /// nothing else is said about it.
    fn continues_a_figure(&mut self, entries: &mut [(Key, Node)], key: &Node) -> bool {
        let Some((_, Node { place, kind: NodeKind::Scalar(value) })) = entries.last_mut() else { return false };
        let (Some(more), true) = (key.text(), place.end + 1 == key.place.start) else { return false };
        let figure = |byte: Option<u8>| byte.is_some_and(|byte| byte.is_ascii_digit());
        if !figure(value.bytes().last()) || !figure(more.bytes().next()) {
            return false;
        }
        *value = format!("{value}.{more}");
        place.end = key.place.end;
        let whole = self.text.text.get(place.bytes()).unwrap_or("").to_owned();
        // `5,5 .. 6,5 mm` has two: it is said once.
        let said = |flaw: &Flaw| flaw.place.start == place.start && matches!(flaw.what, What::DecimalComma(_));
        self.flaws.retain(|flaw| !said(flaw));
        self.flaws.push(Flaw::new(*place, What::DecimalComma(whole)));
        true
    }

    /// The entry, unless its key cannot be one or is taken.
    fn entered(&mut self, taken: &mut BTreeMap<String, Place>, key: Node, value: Node) -> Option<(Key, Node)> {
        let text = match key.kind {
            NodeKind::Scalar(text) => text,
            NodeKind::Nothing => "~".to_owned(),
            _ => return self.refused(key.place, What::KeyNotText),
        };
        if text == "<<" {
            return self.refused(key.place, What::MergeKey);
        }
        if let Some(first) = taken.get(&text) {
            return self.refused(key.place, What::DuplicateKey { key: text, first: *first });
        }
        taken.insert(text.clone(), key.place);
        Some((Key { text, place: key.place }, value))
    }

    fn refused(&mut self, place: Place, what: What) -> Option<(Key, Node)> {
        self.flaws.push(Flaw::new(place, what));
        None
    }

    /// A collection runs from its own start to the end of its last value.
    fn spanning(&self, start: Span, last: Option<Place>) -> Place {
        let start = self.place(start);
        let end = last.map_or(start.end, |last| last.end.max(start.end));
        Place { end, ..start }
    }

    fn place(&self, span: Span) -> Place {
        let bytes = span.byte_range().unwrap_or(0..0);
        let slice = self.text.text.get(bytes.clone()).unwrap_or("");
        let end = bytes.start + slice.trim_end().len();
        self.text.place(self.file, bytes.start..end)
    }

    fn note(&mut self, span: Span, what: What) {
        let place = self.place(span);
        self.flaws.push(Flaw::new(place, what));
    }

    fn note_error(&mut self, error: &ScanError) {
        let (bytes, garbled) = garbled(error, self.text);
        let place = self.text.place(self.file, bytes);
        let marked =
            |flaw: &Flaw| matches!(flaw.what, What::Alias | What::Anchor | What::Tag) && flaw.place.line == place.line;
        if self.flaws.iter().any(marked) {
            // A text that starts with `*`, `&` or `!`: what follows from that is not said again.
            return;
        }
        let what = match error.kind() {
            ErrorKind::TabInIndentation
            | ErrorKind::TabInBlockIndentation
            | ErrorKind::TabNotAllowed
            | ErrorKind::TabInPlainScalar
            | ErrorKind::TabAtBlockScalarStart => return self.note_tab(place),
            _ if self.set_in_by_tab(place.line) => return self.note_tab(place),
            ErrorKind::RecursionLimitExceeded => What::TooDeep,
            ErrorKind::DirectiveDisallowed => What::Directive,
            _ => {
                let opened = opened_above(self.text, place.start as usize);
                What::Syntax { garbled, opened: opened.map(|at| self.text.place(self.file, at..at + 1)) }
            }
        };
        self.flaws.push(Flaw::new(place, what));
    }

    fn set_in_by_tab(&self, line: u32) -> bool {
        self.text.line(line).chars().take_while(|letter| letter.is_whitespace()).any(|letter| letter == '\t')
    }

    /// The tab itself: on the error's line or the next, wherever the parser stopped.
    fn note_tab(&mut self, near: Place) {
        let start = near.start as usize - (near.column as usize - 1).min(near.start as usize);
        let from = self.text.text.get(start..).map_or(near.start as usize, |_| start);
        let tab = self.text.text.get(from..).and_then(|rest| rest.find('\t'));
        let place = tab.map_or(near, |at| self.text.place(self.file, from + at..from + at + 1));
        self.flaws.push(Flaw::new(place, What::Tab));
    }
}
