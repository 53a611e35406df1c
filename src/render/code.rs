//! Guide source, highlighted: classes only, the style sheet has the looks.

use std::sync::LazyLock;
use syntect::html::{ClassStyle, ClassedHTMLGenerator};
use syntect::parsing::SyntaxSet;
use syntect::util::LinesWithEndings;

static SYNTAXES: LazyLock<SyntaxSet> = LazyLock::new(SyntaxSet::load_defaults_newlines);

/// YAML as HTML with classes that start with `y-`. What cannot be highlighted is shown plain.
pub fn yaml(source: &str) -> String {
    let Some(syntax) = SYNTAXES.find_syntax_by_extension("yaml") else { return escaped(source) };
    let style = ClassStyle::SpacedPrefixed { prefix: "y-" };
    let mut generator = ClassedHTMLGenerator::new_with_class_style(syntax, &SYNTAXES, style);
    for line in LinesWithEndings::from(source) {
        if generator.parse_html_for_line_which_includes_newline(line).is_err() {
            return escaped(source);
        }
    }
    generator.finalize()
}

/// Source as plain text in HTML.
pub fn escaped(source: &str) -> String {
    source.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
