//! What a person did where YAML cannot be made out, as far as the line tells.
//!
//! In: the parser's error and the text. Out: the range to mark, and a [`Garbled`]. Leaves to others: words (`proof`).
//! Not promised: that the guess is right. It is made from the line and the one above it, as a person would make it.

use super::place::Text;
use granit_parser::{ErrorKind, ScanError};
use std::ops::Range;

/// What is the matter with YAML that cannot be made out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Garbled {
    /// A quote that is opened and not closed.
    UnclosedQuote,
    /// Words behind a closing quote or bracket: the whole was meant as a text.
    AfterClosing,
    /// A bracket that is not closed.
    UnclosedBracket(char),
    /// A bracket that is closed by another kind.
    WrongBracket(char, char),
    /// A closing bracket without an opening one.
    StrayBracket,
    /// A colon and a space inside a text.
    ColonInText,
    /// A colon without a space behind it.
    NoSpaceAfterColon,
    /// A word where a key is wanted, without its colon.
    KeyWithoutColon,
    /// A line that is set in otherwise than those it belongs to.
    SetIn,
    /// A line that, as it is set in, belongs to the text above it.
    BelongsAbove,
    /// A text that starts with a sign that means something to YAML.
    OddStart(char),
    /// A backslash in double quotes that means nothing.
    Escape,
    /// A comma or a closing bracket is missing.
    NoComma,
    /// A list that begins beside its key.
    ListBeside,
    /// Anything else: the parser's words.
    Other(String),
}

/// What happened at an error, and the bytes to mark.
pub(super) fn garbled(error: &ScanError, text: &Text) -> (Range<usize>, Garbled) {
    let at = error.marker().byte_offset().unwrap_or(0).min(text.text.len());
    let here = sign_at(text, at);
    let what = match error.kind() {
        ErrorKind::UnclosedQuotedScalar
        | ErrorKind::DocumentIndicatorInQuotedScalar
        | ErrorKind::InvalidQuotedScalarIndent => Garbled::UnclosedQuote,
        ErrorKind::InvalidTrailingSingleQuotedScalar | ErrorKind::InvalidTrailingDoubleQuotedScalar => {
            Garbled::AfterClosing
        }
        ErrorKind::UnclosedFlowCollection { open } => Garbled::UnclosedBracket(*open),
        ErrorKind::MismatchedFlowCollectionEnd { open, close } => Garbled::WrongBracket(*open, *close),
        ErrorKind::MisplacedFlowCollectionEnd => Garbled::StrayBracket,
        ErrorKind::UnexpectedCharacter { character } => Garbled::OddStart(*character),
        ErrorKind::InvalidBlockScalarHeader => Garbled::OddStart(text.text[at..].chars().next().unwrap_or('>')),
        ErrorKind::UnknownQuotedScalarEscape | ErrorKind::InvalidQuotedScalarHexEscape => Garbled::Escape,
        ErrorKind::ExpectedFlowMappingSeparator | ErrorKind::ExpectedFlowSequenceSeparator => Garbled::NoComma,
        ErrorKind::BlockSequenceEntryNotAllowed => Garbled::ListBeside,
        ErrorKind::SimpleKeyExpected => return (word_at(text, at), Garbled::KeyWithoutColon),
        ErrorKind::MappingValueNotAllowed => return stray_colon(text, at),
        ErrorKind::ExpectedBlockMappingKey | ErrorKind::ExpectedBlockSequenceEntry => odd_line(text, at),
        _ => Garbled::Other(error.info()),
    };
    (here, what)
}

/// The quote or bracket that was opened on a line above a byte and holds it, or ends on its line: there the end was forgotten, and
/// the parser took everything up to the next such sign for a text. A guess as a person makes it: only a sign at the head of a value
/// opens, and texts under `>-` or `|` are not told apart.
pub(super) fn opened_above(text: &Text, at: usize) -> Option<usize> {
    let before = text.text.get(..at)?;
    let (start, _) = line_at(text, at);
    let (mut open, mut ended): (Vec<(usize, char)>, Option<usize>) = (Vec::new(), None);
    let mut head = true;
    let mut last = '\n';
    let mut comment = false;
    for (place, sign) in before.char_indices() {
        let quote = open.last().map(|(_, opening)| *opening).filter(|opening| matches!(opening, '"' | '\''));
        match (quote, sign) {
            (_, '\n') => comment = false,
            _ if comment => {}
            (Some(quote), _) if sign == quote && last != '\\' => ended = open.pop().map(|(from, _)| from),
            (Some(_), _) => {}
            (None, '#') if last.is_whitespace() => comment = true,
            (None, '"' | '\'' | '[' | '{') if head => open.push((place, sign)),
            (None, ']' | '}') => drop(open.pop()),
            _ => {}
        }
        // A value begins behind a gap that follows a colon, a hyphen or a comma, and at once behind a bracket.
        head = match sign {
            ' ' => head || matches!(last, ':' | '-' | ','),
            '\n' | '[' | '{' => true,
            _ => false,
        };
        last = sign;
    }
    let holds = open.last().map(|(from, _)| *from);
    ended
        .filter(|from| *from < start && text.text.get(*from..start).is_some() && ends_on_line(before, *from, start))
        .or(holds)
        .filter(|from| *from < start)
}

/// Whether the quote that was opened at `from` ends behind `start`.
fn ends_on_line(before: &str, from: usize, start: usize) -> bool {
    let Some(quote) = before.get(from..from + 1) else { return false };
    before.get(from + 1..start).is_some_and(|between| !between.contains(quote))
}

/// The sign at a byte; nothing at the end of a line.
fn sign_at(text: &Text, at: usize) -> Range<usize> {
    let sign = text.text.get(at..).and_then(|rest| rest.chars().next());
    at..at + sign.filter(|sign| !sign.is_control()).map_or(0, char::len_utf8)
}

/// The words from a byte to the end of the line.
fn word_at(text: &Text, at: usize) -> Range<usize> {
    let rest = text.text.get(at..).unwrap_or("").lines().next().unwrap_or("");
    at..at + rest.trim_end().len()
}

/// The line that a byte stands in, and where it begins.
fn line_at(text: &Text, at: usize) -> (usize, &str) {
    let before = text.text.get(..at).unwrap_or("");
    let start = before.rfind('\n').map_or(0, |brk| brk + 1);
    (start, text.text.get(start..).unwrap_or("").lines().next().unwrap_or(""))
}

/// The last line above that says something, and where it begins.
fn line_above(text: &Text, start: usize) -> Option<(usize, &str)> {
    let mut end = start;
    while end > 0 {
        let (begin, line) = line_at(text, end - 1);
        if !line.trim().is_empty() && !line.trim_start().starts_with('#') {
            return Some((begin, line));
        }
        end = begin;
    }
    None
}

/// A colon that makes no key: in a text, or because the line above is no key, or because of how far the line is set in.
fn stray_colon(text: &Text, at: usize) -> (Range<usize>, Garbled) {
    let (start, line) = line_at(text, at);
    let before = line.get(..at - start).unwrap_or("");
    if before.contains(": ") {
        return (sign_at(text, at), Garbled::ColonInText);
    }
    let tight = line_above(text, start).and_then(|(begin, above)| Some((begin, tight_colon(above)?)));
    match tight {
        Some((begin, colon)) => (begin + colon..begin + colon + 1, Garbled::NoSpaceAfterColon),
        None => {
            let indent = line.len() - line.trim_start().len();
            (start + indent..at, Garbled::BelongsAbove)
        }
    }
}

/// The colon of a key without a space behind it: `word:loop`, but neither `word: a:b` nor an address.
fn tight_colon(line: &str) -> Option<usize> {
    let colon = line.find(':')?;
    let after = line.get(colon + 1..)?;
    let spaced = after.is_empty() || after.starts_with([' ', '/']);
    (!spaced).then_some(colon)
}

/// A line that continues nothing: words behind a closed bracket, or a line set in otherwise than its neighbours.
fn odd_line(text: &Text, at: usize) -> Garbled {
    let (start, line) = line_at(text, at);
    let before = line.get(..at - start).unwrap_or("").trim_end();
    if before.ends_with([']', '}', '"', '\'']) { Garbled::AfterClosing } else { Garbled::SetIn }
}
