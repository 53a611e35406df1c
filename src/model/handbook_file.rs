//! `handbook.yaml`: what the handbook as a whole is called, and what it keeps.

use super::common::{Picture, Waiver};
use super::value::{Line, Many, Named, Prose, or_text};
use crate::source::{Placed, Tolerant};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The handbook as a whole: one file, `handbook.yaml`, at the top of the guides' folder.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct HandbookFile {
    /// Its id.
    pub handbook: Named,
    /// What stands at the top of every page: most often the club's name.
    pub title: Line,
    /// The club's own label for this edition, such as `Autumn 2026`.
    pub edition: Line,
    /// The language that the guides are written in, such as `en`.
    pub language: Line,
    /// Languages that the whole handbook is to be read in besides: advice then names what has no translation yet.
    #[serde(default)]
    pub languages: Many<Line>,
    /// Which units come first.
    #[serde(default)]
    pub units: Units,
    /// The paper that sheets are printed on.
    #[serde(default)]
    pub paper: Paper,
    /// Where the handbook can be found on the net, if anywhere; printed sheets then carry it.
    pub address: Option<Line>,
    /// What every page says about who decides: the rules in force, local law, qualified people.
    pub caution: Prose,
    /// A line under the front page's heading.
    pub says: Option<Prose>,
    /// The items that the club keeps, in the order in which the handbook shows them.
    pub kit: Many<Tolerant<Item>>,
    /// The look. `marking-blue` comes with the program; another is a folder `themes/NAME` beside the guides' folder.
    pub theme: Option<Line>,
    /// Pictures that any guide may show. If there are words in a picture, a translation names its own `file` under the same id.
    #[serde(default)]
    pub pictures: Many<Tolerant<Picture>>,
    /// Sheets that must not be used any more.
    #[serde(default)]
    pub withdrawn: Many<Tolerant<Withdrawn>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

/// An item of kit. One that the program knows may be written as a bare id; a club's own item names its places.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename = "short Item")]
#[schemars(rename = "Item", transform = or_text)]
pub struct Item {
    /// Its id: `foil`, `epee`, `sabre`, `body-cord`, `mask-cord`, `mask`, `jacket`, `reel`, `tester`, or one of the club's own.
    pub item: Named,
    /// What people call it.
    pub title: Option<Line>,
    /// For an item of the club's own: its places from one end to the other, at most seven.
    #[serde(default)]
    pub places: Many<Named>,
}

/// Which units come first; the others stand in brackets.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Units {
    /// Grams, millimetres, newton metres.
    #[default]
    Metric,
    /// Ounces, inches, pound-force inches.
    Imperial,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Paper {
    /// 210 × 297 mm.
    #[default]
    A4,
    /// 8.5 × 11 in.
    Letter,
}

/// A sheet or page that turned out wrong after it was printed.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Withdrawn {
    /// The code printed on it.
    pub code: Placed<String>,
    /// Why it must not be used.
    pub because: Line,
    /// What to use instead.
    pub instead: Option<Named>,
}

/// The letters of codes: none that look alike, no vowels.
pub const CODE_LETTERS: &[u8; 18] = b"34679CFHJKMPQRTWXY";
/// How long a code is.
pub const CODE_LENGTH: usize = 8;

/// The code of a hash.
pub fn code_of(hash: &[u8; 32]) -> String {
    let mut number = hash.iter().take(16).fold(0_u128, |number, byte| number << 8 | u128::from(*byte));
    let mut code = String::with_capacity(CODE_LENGTH);
    for _ in 0..CODE_LENGTH {
        let at = (number % CODE_LETTERS.len() as u128) as usize;
        code.push(CODE_LETTERS.get(at).copied().map_or('3', char::from));
        number /= CODE_LETTERS.len() as u128;
    }
    code
}

/// A code as it is typed: with a gap or a hyphen, in small letters. Nothing if it is no code.
pub fn typed_code(text: &str) -> Option<String> {
    let letters = text.chars().filter(|letter| !letter.is_whitespace() && *letter != '-');
    let code: String = letters.map(|letter| letter.to_ascii_uppercase()).collect();
    (code.len() == CODE_LENGTH && code.bytes().all(|letter| CODE_LETTERS.contains(&letter))).then_some(code)
}

#[cfg(test)]
mod tests {
    use super::typed_code;

    #[test]
    fn a_code_is_read_as_people_type_it() {
        assert_eq!(typed_code(" 3467 c9fh").as_deref(), Some("3467C9FH"));
        assert_eq!(typed_code("3467-C9FH").as_deref(), Some("3467C9FH"));
        assert_eq!(typed_code("ABCD EFGH"), None, "vowels and look-alikes are in no code");
    }
}
