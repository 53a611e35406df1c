//! Colours from `colours.yaml` to custom properties, light and dark.
//!
//! In: the file. Out: the head of the style sheet. Promise: a colour is a colour, never another piece of CSS.

use super::theme::ThemeFailed;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The colours of a theme.
#[derive(Debug, Clone, PartialEq)]
pub struct Colours {
    colours: Vec<(String, Colour)>,
}

#[derive(Debug, Clone, PartialEq, Deserialize)]
struct Colour {
    light: String,
    dark: String,
}

#[derive(Debug, Deserialize)]
struct File {
    colours: BTreeMap<String, Colour>,
}

impl Colours {
    /// Reads the file.
    ///
    /// # Errors
    /// When it is no such file, or a value is no colour.
    pub fn read(bytes: &[u8]) -> Result<Colours, ThemeFailed> {
        let failed = |message: String| ThemeFailed { file: "colours.yaml".into(), message };
        let file: File = serde_yaml::from_slice(bytes).map_err(|error| failed(error.to_string()))?;
        for (name, colour) in &file.colours {
            let sound = is_name(name) && is_colour(&colour.light) && is_colour(&colour.dark);
            if !sound {
                return Err(failed(format!("`{name}` must have `light` and `dark` as `#rgb` or `#rrggbb`")));
            }
        }
        Ok(Colours { colours: file.colours.into_iter().collect() })
    }

    /// A style sheet with the light colours in place of `var(--name)`.
    pub fn put_in(&self, css: &str) -> String {
        let put =
            |css: String, (name, colour): &(String, Colour)| css.replace(&format!("var(--{name})"), &colour.light);
        self.colours.iter().fold(css.to_owned(), put)
    }

    /// The custom properties.
    pub fn custom_properties(&self) -> String {
        let set = |value: fn(&Colour) -> &str| -> String {
            self.colours.iter().map(|(name, colour)| format!("  --{name}: {};\n", value(colour))).collect()
        };
        let light = set(|colour| &colour.light);
        let dark = set(|colour| &colour.dark);
        format!(
            ":root {{\n  color-scheme: light dark;\n{light}}}\n@media (prefers-color-scheme: dark) {{ :root {{\n{dark}}} }}\n\
             @media print {{ :root {{\n{light}}} }}\n"
        )
    }
}

fn is_name(name: &str) -> bool {
    !name.is_empty()
        && name.bytes().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == b'-')
}

fn is_colour(value: &str) -> bool {
    let digits = value.strip_prefix('#').unwrap_or("");
    matches!(digits.len(), 3 | 6) && digits.bytes().all(|digit| digit.is_ascii_hexdigit())
}
