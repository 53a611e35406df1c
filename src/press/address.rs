//! Where a file of the handbook stands: a relative path that means the same file on every system and in every link.
//!
//! In: text. Out: an [`Address`], or the reason why not. Leaves to others: choosing names. Not promised: that a name
//! with spaces, umlauts or the like gets in; who makes addresses out of people's file names has to respell them first.

use super::system;
use std::collections::BTreeMap;
use std::fmt;
use std::path::{Path, PathBuf};

/// A relative path with `/`, made of the characters of POSIX's portable file names (IEEE Std 1003.1, 3.282): letters,
/// digits, `.`, `_`, `-`.
///
/// So it needs no escaping in a link, and no file system has its own opinion on its case folding or Unicode form. On
/// top of that no part is a name that Windows reserves, ends with a dot or opens with a hyphen.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Address(String);

/// Why a text is no address. The text is given back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AddressRefused {
    /// The text as it came.
    pub text: String,
    /// What is wrong with it.
    pub why: Flaw,
}

/// What can be wrong with an address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Flaw {
    /// Nothing at all, or nothing between two slashes, before the first or after the last.
    EmptyPart,
    /// Longer than [`Address::LONGEST`].
    TooLong,
    /// A character other than letters, digits, `.`, `_`, `-`.
    Character(char),
    /// `.` or `..`.
    Dots,
    /// A part that ends with a dot, which Windows drops.
    TrailingDot,
    /// A part that opens with a hyphen, which commands take for an option.
    LeadingHyphen,
    /// A name that Windows keeps for a device.
    Reserved,
}

/// Two addresses that cannot stand in one folder on every system.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clash {
    /// The first of the two in order.
    pub first: Address,
    /// The other.
    pub second: Address,
}

impl Address {
    /// The most characters of an address: leaves a hundred for the folder on a Windows that opens 259.
    pub const LONGEST: usize = 150;

    /// Takes a text as an address.
    ///
    /// # Errors
    /// The first [`Flaw`] found.
    pub fn parse(text: &str) -> Result<Address, AddressRefused> {
        if text.len() > Address::LONGEST {
            return Err(refused(text, Flaw::TooLong));
        }
        Address::parse_of_any_length(text)
    }

    /// For what was put aside: its name has grown by an ending.
    pub(super) fn parse_of_any_length(text: &str) -> Result<Address, AddressRefused> {
        match text.split('/').find_map(flaw) {
            Some(why) => Err(refused(text, why)),
            None => Ok(Address(text.to_owned())),
        }
    }

    /// The address as text, with `/`.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The file's path in a folder, with the system's own separators.
    pub fn within(&self, folder: &Path) -> PathBuf {
        self.0.split('/').fold(folder.to_path_buf(), |path, part| path.join(part))
    }

    /// The relative path, with the system's own separators.
    pub fn to_path(&self) -> PathBuf {
        self.0.split('/').collect()
    }

    /// The folders that the file stands in, the outermost first: `a`, `a/b` for `a/b/c.html`.
    pub fn folders(&self) -> impl DoubleEndedIterator<Item = &str> {
        let text = self.as_str();
        text.match_indices('/').map(|(at, _)| &text[..at])
    }

    /// The address in the one case in which twins are the same.
    pub fn folded(&self) -> String {
        self.0.to_ascii_lowercase()
    }
}

impl fmt::Display for Address {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::str::FromStr for Address {
    type Err = AddressRefused;

    fn from_str(text: &str) -> Result<Address, AddressRefused> {
        Address::parse(text)
    }
}

impl fmt::Display for AddressRefused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}` cannot be a file's address: ", self.text)?;
        match self.why {
            Flaw::EmptyPart => f.write_str("a part of it is empty"),
            Flaw::TooLong => write!(f, "it has more than {} characters", Address::LONGEST),
            Flaw::Character(wrong) => write!(f, "{wrong:?} is none of letters, digits, dot, underscore and hyphen"),
            Flaw::Dots => f.write_str("`.` and `..` are no names"),
            Flaw::TrailingDot => f.write_str("Windows drops a dot at the end of a name"),
            Flaw::LeadingHyphen => f.write_str("a name must not begin with a hyphen"),
            Flaw::Reserved => f.write_str("Windows keeps that name for a device"),
        }
    }
}

impl std::error::Error for AddressRefused {}

/// The first two addresses that some system cannot hold side by side: they (or folders of theirs) differ in case only,
/// or one is a folder of the other.
pub fn clash<'a>(addresses: impl IntoIterator<Item = &'a Address>) -> Option<Clash> {
    let mut seen: BTreeMap<String, (&str, Part, &Address)> = BTreeMap::new();
    for address in addresses {
        let folders = address.folders().map(|folder| (folder, Part::Folder));
        for (spelling, part) in folders.chain([(address.as_str(), Part::File)]) {
            let (first_spelling, first_part, first) =
                *seen.entry(spelling.to_ascii_lowercase()).or_insert((spelling, part, address));
            if first_spelling != spelling || first_part != part {
                let (first, second) = (first.clone(), address.clone());
                return Some(Clash { first, second });
            }
        }
    }
    None
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Part {
    File,
    Folder,
}

fn refused(text: &str, why: Flaw) -> AddressRefused {
    let text = text.to_owned();
    AddressRefused { text, why }
}

fn flaw(part: &str) -> Option<Flaw> {
    let portable = |c: &char| c.is_ascii_alphanumeric() || matches!(c, '.' | '_' | '-');
    if let Some(wrong) = part.chars().find(|c| !portable(c)) {
        return Some(Flaw::Character(wrong));
    }
    match part {
        "" => Some(Flaw::EmptyPart),
        "." | ".." => Some(Flaw::Dots),
        _ if part.ends_with('.') => Some(Flaw::TrailingDot),
        _ if part.starts_with('-') => Some(Flaw::LeadingHyphen),
        _ if system::is_reserved_on_windows(part) => Some(Flaw::Reserved),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn why(text: &str) -> Flaw {
        Address::parse(text).unwrap_err().why
    }

    fn clash_of(texts: &[&str]) -> Option<Clash> {
        let addresses: Vec<_> = texts.iter().map(|t| Address::parse(t).unwrap()).collect();
        clash(&addresses)
    }

    #[test]
    fn ordinary_addresses_are_taken_as_they_are() {
        for text in ["index.html", "symptoms/foil-stays-lit.html", "a/b/c_1.svg", ".nojekyll"] {
            assert_eq!(Address::parse(text).unwrap().as_str(), text);
        }
    }

    #[test]
    fn what_some_system_would_twist_is_refused_with_the_reason() {
        assert_eq!(why(""), Flaw::EmptyPart);
        assert_eq!(why("/etc/passwd"), Flaw::EmptyPart);
        assert_eq!(why("a//b"), Flaw::EmptyPart);
        assert_eq!(why("a/"), Flaw::EmptyPart);
        assert_eq!(why("../guides/foil.yaml"), Flaw::Dots);
        assert_eq!(why("a/./b"), Flaw::Dots);
        assert_eq!(why("notes."), Flaw::TrailingDot);
        assert_eq!(why("notes /a"), Flaw::Character(' '));
        assert_eq!(why("C:/x"), Flaw::Character(':'));
        assert_eq!(why(r"a\b"), Flaw::Character('\\'));
        assert_eq!(why("a\u{7}"), Flaw::Character('\u{7}'));
        assert_eq!(why("spitze-schräg.jpg"), Flaw::Character('ä'));
        assert_eq!(why("parts/aux.html"), Flaw::Reserved);
        assert_eq!(why("-rf"), Flaw::LeadingHyphen);
        assert_eq!(why(&"x".repeat(Address::LONGEST + 1)), Flaw::TooLong);
    }

    #[test]
    fn names_that_differ_in_case_only_clash() {
        let clash = clash_of(&["Foil.html", "foil.html"]).expect("the same file on Windows");
        assert_eq!(clash.first.as_str(), "Foil.html");
        assert!(clash_of(&["Parts/a.html", "parts/b.html"]).is_some());
        assert!(clash_of(&["foil.html", "foil-2.html", "foil/a.html"]).is_none());
    }

    #[test]
    fn a_file_cannot_be_a_folder_too() {
        assert!(clash_of(&["foil", "foil/tip.html"]).is_some());
        assert!(clash_of(&["foil", "Foil/tip.html"]).is_some());
    }

    #[test]
    fn folders_come_from_the_outermost_in() {
        let address = Address::parse("a/b/c.html").unwrap();
        assert_eq!(address.folders().collect::<Vec<_>>(), ["a", "a/b"]);
    }

    proptest! {
        #[test]
        fn no_text_panics_and_none_that_is_taken_leaves_the_folder(text in "\\PC{0,40}|[./a-cC\\\\: -]{0,12}") {
            if let Ok(address) = Address::parse(&text) {
                let path = address.within(Path::new("site"));
                prop_assert!(path.starts_with("site"));
                prop_assert!(path.components().all(|c| matches!(c, std::path::Component::Normal(_))));
                prop_assert_eq!(path.components().count(), 1 + text.split('/').count());
            }
        }

        #[test]
        fn a_set_without_a_clash_stays_apart_when_case_is_ignored(
            texts in prop::collection::btree_set("[aAbB]{1,2}(/[aAbB]){0,2}", 1..8)
        ) {
            let addresses: Vec<_> = texts.iter().map(|t| Address::parse(t).unwrap()).collect();
            let folded: std::collections::BTreeSet<_> = addresses.iter().map(Address::folded).collect();
            if clash(&addresses).is_none() {
                prop_assert_eq!(folded.len(), addresses.len());
                let inside = |a: &String| folded.iter().any(|b| b.starts_with(&format!("{a}/")));
                prop_assert!(!folded.iter().any(inside));
            }
        }
    }
}
