//! Findings about texts.

use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean};
use crate::source::Place;

/// A short link that leads nowhere.
pub fn dead_link<'a>(place: Place, link: &str, id: &str, known: impl IntoIterator<Item = &'a str>) -> Finding {
    Finding::new(
        Code::DeadLink,
        place,
        format!("the link `{link}` leads nowhere"),
        did_you_mean(id, known, "correct the id behind the colon, or write what it names"),
    )
}

/// A link of a kind that pages do not carry.
pub fn refused_link(place: Place, link: &str) -> Finding {
    Finding::new(
        Code::RefusedLink,
        place,
        format!("a link to `{link}` is refused"),
        "use `https:` or `mailto:`, or a short link such as `<procedure:rewire-foil>`",
    )
}

/// Raw HTML.
pub fn raw_html(place: Place, html: &str) -> Finding {
    Finding::new(
        Code::RawHtml,
        place,
        format!("raw HTML, `{}`", html.trim()),
        "use Markdown; for the signs themselves use backticks",
    )
}
