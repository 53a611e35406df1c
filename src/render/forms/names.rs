//! Classes with short names, for the form that has to be small: a name that stands on a thousand elements costs more than a picture.
//!
//! In: what the file will hold. Out: which class is called what, and style sheets and class lists that say so. A class that a script
//! speaks of keeps its name.

use super::short;
use std::collections::{BTreeMap, BTreeSet};

/// Letters that a new name has to save in the whole file to be worth it.
const WORTH: usize = 1_000;

/// The new names.
#[derive(Debug, Default)]
pub struct Names(BTreeMap<String, String>);

impl Names {
    /// Names for the classes of these texts in HTML; `spoken` are the texts whose words keep their meaning.
    pub fn of<'t>(texts: impl Iterator<Item = &'t str>, css: &str, spoken: &[&str]) -> Names {
        let mut counted: BTreeMap<&str, usize> = BTreeMap::new();
        for list in texts.flat_map(|text| text.split(" class=\"").skip(1)).filter_map(|rest| rest.split('"').next()) {
            list.split_ascii_whitespace().for_each(|name| *counted.entry(name).or_default() += 1);
        }
        let taken: BTreeSet<&str> = classes(css).chain(counted.keys().copied()).collect();
        let worth = |(name, times): &(&str, usize)| {
            name.len() > 3 && (name.len() - 2) * times > WORTH && !spoken.iter().any(|text| text.contains(name))
        };
        let mut fresh = (0..).map(|number| format!("z{}", short(number))).filter(|name| !taken.contains(name.as_str()));
        let mut named: Vec<(&str, usize)> = counted.into_iter().filter(worth).collect();
        // The names of two letters are for those that stand most often.
        named.sort_by_key(|(_, times)| std::cmp::Reverse(*times));
        Names(named.into_iter().filter_map(|(name, _)| Some((name.to_owned(), fresh.next()?))).collect())
    }

    /// A list of classes by their new names.
    pub fn listed(&self, list: &str) -> String {
        let names = list.split_ascii_whitespace().map(|name| self.0.get(name).map_or(name, String::as_str));
        names.collect::<Vec<_>>().join(" ")
    }

    /// A style sheet by the new names.
    pub fn styled(&self, css: &str) -> String {
        let mut out = String::with_capacity(css.len());
        let mut rest = css;
        while let Some(at) = rest.find('.') {
            let (before, after) = rest.split_at(at + 1);
            out.push_str(before);
            let end = after.find(|letter: char| !is_name(letter)).unwrap_or(after.len());
            let (name, after) = after.split_at(end);
            out.push_str(self.0.get(name).map_or(name, String::as_str));
            rest = after;
        }
        out + rest
    }
}

/// The names after a full stop: every class of a style sheet, and some things that are none.
fn classes(css: &str) -> impl Iterator<Item = &str> {
    css.split('.').skip(1).map(|rest| rest.split(|letter: char| !is_name(letter)).next().unwrap_or(""))
}

fn is_name(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || letter == '-' || letter == '_'
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_class_is_renamed_on_pages_and_in_styles_alike_and_no_other_is() {
        let page = "<p class=\"long-name other\">".repeat(500);
        let css = ".long-name > .long-name-too { margin: .5rem } .z0 {} :is(.long-name, .verdict) {}";
        let names = Names::of(std::iter::once(page.as_str()), css, &["querySelector(\".other\")"]);
        assert_eq!(names.listed("long-name other"), "z1 other");
        assert_eq!(names.styled(css), ".z1 > .long-name-too { margin: .5rem } .z0 {} :is(.z1, .verdict) {}");
    }
}
