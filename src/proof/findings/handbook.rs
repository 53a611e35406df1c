//! Findings about `handbook.yaml`.

use crate::model::Line;
use crate::proof::code::Code;
use crate::proof::finding::Finding;
use crate::source::Placed;

/// A theme's name that is no folder's name.
pub fn bad_theme(line: &Line, why: &str) -> Finding {
    Finding::new(
        Code::BadId,
        line.place,
        format!("`{}` cannot name a theme: {why}", line.value),
        "write the name of a folder in `themes/` beside the guides, or leave `theme` out",
    )
}

/// An address that no browser can fetch.
pub fn bad_address(line: &Line) -> Finding {
    Finding::new(
        Code::BadValue,
        line.place,
        "the address is no address on the net",
        "write it in full, such as `https://club.example/armoury`, or leave `address` out",
    )
}

/// No language tag.
pub fn bad_language(line: &Line) -> Finding {
    Finding::new(
        Code::BadValue,
        line.place,
        format!("`{}` is no language", line.value),
        "write its tag: `en`, `en-GB`, `de`, `fr`",
    )
}

/// No code of a page or sheet.
pub fn bad_code(code: &Placed<String>) -> Finding {
    Finding::new(
        Code::BadValue,
        code.place,
        format!("`{}` is no code of a page or sheet", code.value),
        "copy the eight letters and digits from the foot of the print: no vowels, none of 0, 1, 2, 5, 8",
    )
}
