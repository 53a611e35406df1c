//! Texts of guides as runs of letters: Markdown is read here, so that the typesetter never reads anything.
//!
//! In: Markdown or plain text. Out: [`Para`]s of [`Run`]s. Words too long for a line get places where they may break; letters that no
//! face has become an empty square and are remembered; control characters go.

use super::super::{Words, prose};
use super::faces;
use crate::handbook::Targets;
use crate::model::prose::{LinkTo, events, link_to};
use fluent_bundle::FluentArgs;
use pulldown_cmark::{Event, LinkType, Tag, TagEnd};
use serde::Serialize;
use std::collections::BTreeSet;

/// Letters in one voice.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Run {
    /// The letters.
    pub text: String,
    /// Whether they are heavier than what stands around them.
    pub strong: bool,
}

/// A paragraph.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Para {
    /// What stands before it: a number or a bullet of a list.
    pub mark: Option<String>,
    /// Its runs.
    pub runs: Vec<Run>,
}

/// A word with more letters than this gets places to break.
const LONG: usize = 20;
/// How many letters of a long word stay together.
const PIECE: usize = 10;
/// A place where a line may break, without a letter.
const BREAK: char = '\u{200b}';
/// Stands for a letter that no face has.
const SQUARE: char = '\u{25a1}';

/// Sets texts, and remembers which letters it had no face for.
#[derive(Debug)]
pub struct Setter<'s> {
    targets: &'s Targets,
    /// The program's own words.
    pub words: &'s Words,
    /// Letters that no face has.
    pub without_letter: BTreeSet<char>,
}

impl<'s> Setter<'s> {
    /// For a handbook.
    pub fn new(targets: &'s Targets, words: &'s Words) -> Setter<'s> {
        Setter { targets, words, without_letter: BTreeSet::new() }
    }

    /// One of the program's own messages.
    pub fn say(&self, id: &str) -> String {
        self.words.say(id)
    }

    /// One with a number.
    pub fn say_n(&self, id: &str, n: u32) -> String {
        self.words.say_n(id, f64::from(n))
    }

    /// One with texts in it.
    pub fn say_with(&self, id: &str, given: &[(&'static str, &str)]) -> String {
        let mut args = FluentArgs::new();
        for (name, value) in given {
            args.set(*name, (*value).to_owned());
        }
        self.words.say_with(id, &args)
    }

    /// Plain text, safe to set.
    pub fn plain(&mut self, text: &str) -> String {
        let mut out = String::with_capacity(text.len());
        for letter in text.chars() {
            match letter {
                '\n' | '\t' => out.push(' '),
                letter if letter.is_control() || unseen(letter) => {}
                letter if faces::have(letter) => out.push(letter),
                letter => {
                    self.without_letter.insert(letter);
                    out.push(SQUARE);
                }
            }
        }
        breakable(&out)
    }

    /// Markdown on one line: paragraphs and lists run on.
    pub fn line(&mut self, text: &str) -> Vec<Run> {
        let mut runs: Vec<Run> = Vec::new();
        for para in self.paras(text) {
            if !runs.is_empty() {
                runs.push(Run { text: " ".to_owned(), strong: false });
            }
            runs.extend(para.mark.map(|mark| Run { text: format!("{mark} "), strong: false }));
            runs.extend(para.runs);
        }
        runs
    }

    /// Markdown as paragraphs.
    pub fn paras(&mut self, text: &str) -> Vec<Para> {
        let mut reading = Reading::default();
        for event in events(text) {
            self.read(event, &mut reading);
        }
        reading.close();
        reading.paras
    }

    fn read(&mut self, event: Event<'_>, reading: &mut Reading) {
        match event {
            Event::Start(Tag::Strong | Tag::Emphasis | Tag::Image { .. }) => reading.strong += 1,
            Event::End(TagEnd::Strong | TagEnd::Emphasis | TagEnd::Image) => {
                reading.strong = reading.strong.saturating_sub(1);
            }
            Event::Start(Tag::Heading { .. }) => {
                reading.close();
                reading.strong += 1;
            }
            Event::End(TagEnd::Heading(_)) => {
                reading.close();
                reading.strong = reading.strong.saturating_sub(1);
            }
            Event::Start(Tag::List(first)) => reading.open_list(first),
            Event::End(TagEnd::List(_)) => reading.close_list(),
            Event::Start(Tag::Item) => reading.item(),
            Event::End(TagEnd::Paragraph | TagEnd::Item | TagEnd::CodeBlock) => reading.close(),
            Event::Start(Tag::Link { link_type, dest_url, .. }) => {
                let named = self.named(&dest_url).filter(|_| link_type == LinkType::Autolink);
                reading.held = named;
            }
            Event::Text(text) => {
                let text = reading.held.take().unwrap_or_else(|| text.into_string());
                let text = self.plain(&text);
                reading.push(text);
            }
            Event::Code(text) | Event::Html(text) | Event::InlineHtml(text) => {
                let text = self.plain(&text);
                reading.push(text);
            }
            Event::SoftBreak | Event::HardBreak => reading.push(" ".to_owned()),
            _ => {}
        }
    }

    /// What a bare link of ours prints.
    fn named(&self, address: &str) -> Option<String> {
        match link_to(address) {
            LinkTo::Short(kind, id) => {
                self.targets.get(&(kind, id)).map(|target| prose::link_words(target, self.words))
            }
            _ => None,
        }
    }
}

/// What is read of a text so far.
#[derive(Default)]
struct Reading {
    paras: Vec<Para>,
    open: Para,
    strong: usize,
    /// The next number of each open list; nothing for one with bullets.
    lists: Vec<Option<u64>>,
    held: Option<String>,
}

impl Reading {
    fn push(&mut self, text: String) {
        let strong = self.strong > 0;
        match self.open.runs.last_mut() {
            Some(last) if last.strong == strong => last.text.push_str(&text),
            _ => self.open.runs.push(Run { text, strong }),
        }
    }

    fn close(&mut self) {
        if !self.open.runs.is_empty() {
            self.paras.push(std::mem::take(&mut self.open));
        }
    }

    fn open_list(&mut self, first: Option<u64>) {
        self.close();
        self.lists.push(first);
    }

    fn close_list(&mut self) {
        self.close();
        self.lists.pop();
    }

    fn item(&mut self) {
        self.close();
        let mark = self.lists.last_mut().map(|next| match next {
            Some(number) => {
                *number += 1;
                format!("{}.", *number - 1)
            }
            None => "\u{2013}".to_owned(),
        });
        self.open.mark = mark;
    }
}

/// Letters that are not drawn and that some faces have no sign for: joiners stay, since they shape their neighbours.
fn unseen(letter: char) -> bool {
    matches!(letter, '\u{feff}' | '\u{fe00}'..='\u{fe0f}' | '\u{2060}'..='\u{2064}' | '\u{200b}' | '\u{ad}'
        | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{206f}' | '\u{e0000}'..='\u{e0fff}' | '\u{2028}' | '\u{2029}')
}

/// The text with places to break inside words that no line can hold.
fn breakable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for word in text.split_inclusive(char::is_whitespace) {
        if word.chars().count() <= LONG {
            out.push_str(word);
            continue;
        }
        for (at, letter) in word.chars().enumerate() {
            if at > 0 && at % PIECE == 0 && !letter.is_whitespace() {
                out.push(BREAK);
            }
            out.push(letter);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(text: &str) -> (Vec<Para>, BTreeSet<char>) {
        let (targets, words) = (Targets::new(), Words::of("en", &[]));
        let mut setter = Setter::new(&targets, &words);
        (setter.paras(text), setter.without_letter)
    }

    fn letters(paras: &[Para]) -> Vec<String> {
        paras.iter().map(|para| para.runs.iter().map(|run| run.text.as_str()).collect()).collect()
    }

    #[test]
    fn markdown_becomes_runs_and_raw_html_stays_text() {
        let (paras, _) = set("Wipe **twice**, then <b>wait</b>.\n\n1. One.\n2. Two.");
        assert_eq!(letters(&paras), ["Wipe twice, then <b>wait</b>.", "One.", "Two."]);
        assert_eq!(paras[0].runs[1], Run { text: "twice".into(), strong: true });
        assert_eq!([paras[1].mark.as_deref(), paras[2].mark.as_deref()], [Some("1."), Some("2.")]);
    }

    #[test]
    fn the_typesetters_own_signs_stay_letters() {
        let (paras, _) = set("#pagebreak() $x$ @label \\*stars\\* [a] = b");
        assert_eq!(letters(&paras), ["#pagebreak() $x$ @label *stars* [a] = b"]);
    }

    #[test]
    fn a_letter_without_a_face_is_an_empty_square_and_is_named() {
        let (paras, without) = set("Tip \u{4e00}\u{202e} on");
        assert_eq!(letters(&paras), ["Tip \u{25a1} on"]);
        assert_eq!(without, BTreeSet::from(['\u{4e00}']));
    }

    #[test]
    fn only_words_that_no_line_holds_may_break_inside() {
        assert_eq!(breakable("electromagnetically fine"), "electromagnetically fine");
        assert_eq!(breakable(&"x".repeat(21)), format!("{0}\u{200b}{0}\u{200b}x", "x".repeat(10)));
    }
}
