//! Codes of pages: a printed sheet can be held against today's handbook.
//!
//! A code is a hash of what a page says ([`super::saying`]): not of the theme, the program's version, what links to it, or the code
//! itself. A sheet's says the club's name and its caution too, since they are printed on it.

use super::Cover;
use super::page::{Body, Page};
use super::saying::Said;
use crate::model::{CODE_LENGTH, CODE_LETTERS};
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;

/// Gives every page its code. `says` is what each page says, in their order; `pictures` are those that pages may show.
pub fn give(pages: &mut [Page], says: &[Vec<Said>], cover: &Cover, pictures: &BTreeMap<String, Vec<u8>>) {
    let pictures: BTreeMap<&str, String> =
        pictures.iter().map(|(address, bytes)| (address.as_str(), letters(blake3::hash(bytes).as_bytes()))).collect();
    pages.par_iter_mut().zip(says).for_each(|(page, says)| {
        let printed = matches!(page.body, Body::Sheet(_)).then_some((&cover.title, &cover.caution));
        page.code = code(&(page.kind, says, printed, &page.origin, shown(page, &pictures)));
    });
}

/// The pictures on a page, by the hash of their bytes.
fn shown<'p>(page: &Page, pictures: &'p BTreeMap<&str, String>) -> Vec<&'p str> {
    let mut shown = Vec::new();
    if !pictures.is_empty() && matches!(page.body, Body::Procedure(_) | Body::Checklist(_) | Body::Question(_)) {
        // What pages say is plain data with text keys: it always serialises.
        pictures_in(&serde_json::to_value(&page.body).unwrap_or_default(), pictures, &mut shown);
    }
    shown
}

fn pictures_in<'p>(value: &serde_json::Value, pictures: &'p BTreeMap<&str, String>, shown: &mut Vec<&'p str>) {
    use serde_json::Value::{Array, Object, String};
    match value {
        String(text) => shown.extend(pictures.get(text.as_str()).map(std::string::String::as_str)),
        Array(values) => values.iter().for_each(|value| pictures_in(value, pictures, shown)),
        Object(fields) => fields.values().for_each(|value| pictures_in(value, pictures, shown)),
        _ => {}
    }
    shown.sort_unstable();
}

/// The code of the whole handbook: of the codes of its pages.
pub fn of_all(pages: &[Page]) -> String {
    let codes: Vec<(&str, &str)> = pages.iter().map(|page| (page.address.as_str(), page.code.as_str())).collect();
    code(&codes)
}

fn code(says: &impl Serialize) -> String {
    // What pages say is plain data with text keys: it always serialises.
    let bytes = serde_json::to_vec(says).unwrap_or_default();
    letters(blake3::hash(&bytes).as_bytes())
}

fn letters(hash: &[u8; 32]) -> String {
    let mut number = hash.iter().take(16).fold(0_u128, |number, byte| number << 8 | u128::from(*byte));
    let mut code = String::with_capacity(CODE_LENGTH);
    for _ in 0..CODE_LENGTH {
        let at = (number % CODE_LETTERS.len() as u128) as usize;
        code.push(CODE_LETTERS.get(at).copied().map_or('3', char::from));
        number /= CODE_LETTERS.len() as u128;
    }
    code
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_has_eight_letters_that_cannot_be_misread() {
        let one = code(&"rewire");
        assert_eq!(one.len(), CODE_LENGTH);
        assert!(one.bytes().all(|letter| CODE_LETTERS.contains(&letter)));
        assert_ne!(one, code(&"rewired"));
    }
}
