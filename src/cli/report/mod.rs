//! Findings as people and programs read them.

pub mod human;
pub mod json;
pub mod sarif;

use crate::source::{Place, Text, Texts};
use std::path::Path;

/// A place with the end's line and column, for programs.
pub(super) struct Region<'a> {
    pub file: &'a str,
    pub line: u32,
    pub column: u32,
    pub end_line: u32,
    pub end_column: u32,
}

pub(super) fn region(texts: &Texts, place: Place) -> Region<'_> {
    let (end_line, end_column) =
        texts.get(place.file).map_or((place.line, place.column), |text: &Text| text.line_column(place.end as usize));
    let file = texts.get(place.file).map_or("", |text| text.name.as_str());
    Region { file, line: place.line, column: place.column, end_line, end_column }
}

/// A path as it can be typed.
pub(in crate::cli) fn typed(path: &Path) -> String {
    let path = path.display().to_string();
    if path.contains(char::is_whitespace) { format!("\"{path}\"") } else { path }
}

/// How many of a thing, with its plural.
pub fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}
