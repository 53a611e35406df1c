//! Findings about YAML that cannot be made out, in the words of somebody who looks at the line.

use crate::proof::code::Code;
use crate::proof::finding::Finding;
use crate::source::{Garbled, Place};

/// YAML that cannot be made out, and the quote or bracket on a line above that was perhaps never closed.
pub fn garbled(place: Place, what: &Garbled, opened: Option<Place>) -> Finding {
    let (message, help) = words(what);
    match opened {
        None => Finding::new(Code::YamlSyntax, place, message, help),
        Some(opened) => {
            let help = format!("look at line {} first: what is opened there is not closed on its line", opened.line);
            Finding::new(Code::YamlSyntax, place, message, help).also(opened, "opened here")
        }
    }
}

fn words(what: &Garbled) -> (String, &'static str) {
    let (message, help) = match what {
        Garbled::UnclosedBracket(open) => {
            return (
                format!("a `{open}` that is not closed"),
                "close it; a text that starts with a bracket needs quotes",
            );
        }
        Garbled::WrongBracket(open, close) => {
            return (format!("`{open}` is closed by `{close}`"), "write the closing bracket that belongs to it");
        }
        Garbled::OddStart('`') => ("a text cannot start with a backtick", "put the whole text in quotes"),
        Garbled::OddStart(sign) => {
            return (format!("a text cannot start with `{sign}`"), "put the whole text in quotes");
        }
        Garbled::Other(why) => return (format!("cannot make out the YAML: {why}"), OTHER),
        Garbled::UnclosedQuote => {
            ("a quote that is not closed", "put the same quote at the end of the text; inside a text it stands twice")
        }
        Garbled::AfterClosing => (
            "words behind a closing quote or bracket",
            "put the whole text in quotes that it does not hold: `'…'` round one with \", `\"…\"` round one with '",
        ),
        Garbled::StrayBracket => ("a closing bracket that closes nothing", "take it out, or put the text in quotes"),
        Garbled::ColonInText => ("a colon inside a text", "a text with a colon and a space in it needs quotes"),
        Garbled::NoSpaceAfterColon => {
            ("a colon without a space behind it", "write a space between the colon and the value")
        }
        Garbled::KeyWithoutColon => {
            ("a key without its colon", "write a colon behind it, and a space before its value")
        }
        Garbled::SetIn => (
            "this line is set in otherwise than its neighbours",
            "set keys of one thing in equally far; a text over several lines needs `>-`",
        ),
        Garbled::BelongsAbove => (
            "as set in, this belongs to the text above",
            "set the key in as far as the one above; a list or keys go under a key without a text",
        ),
        Garbled::Escape => {
            ("a backslash that means nothing", "write two backslashes, or put the text in single quotes")
        }
        Garbled::NoComma => {
            ("a comma or a closing bracket is missing", "a text with brackets, quotes or a colon in it needs quotes")
        }
        Garbled::ListBeside => ("a list cannot begin here", "begin it on the next line, each item with `- `"),
    };
    (message.to_owned(), help)
}

const OTHER: &str =
    "compare this line and the one above with a guide that binds; a text with `: ` or ` #` in it needs quotes";
