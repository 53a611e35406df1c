//! Codes of pages: a printed sheet can be held against today's handbook.
//!
//! A code is a hash of what a page says ([`super::saying`]): not of the theme, the program's version, what links to it, or the code
//! itself. A sheet's says the club's name and its caution too, since they are printed on it.

use super::Cover;
use super::page::{Body, Page, Picture};
use super::saying::Said;
use crate::model::code_of;
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;

/// Gives every page its code. `says` is what each page says, in their order; `pictures` are those that pages may show.
pub fn give(pages: &mut [Page], says: &[Vec<Said>], cover: &Cover, pictures: &BTreeMap<String, Vec<u8>>) {
    let pictures: BTreeMap<&str, String> =
        pictures.iter().map(|(address, bytes)| (address.as_str(), code_of(blake3::hash(bytes).as_bytes()))).collect();
    pages.par_iter_mut().zip(says).for_each(|(page, says)| {
        let printed = matches!(page.body, Body::Sheet(_)).then_some((&cover.title, &cover.caution));
        page.code = code(&(page.kind, says, printed, &page.origin, shown(page, &pictures)));
    });
}

/// The pictures on a page, by the hash of their bytes.
fn shown<'p>(page: &Page, pictures: &'p BTreeMap<&str, String>) -> Vec<&'p str> {
    let on_page: Vec<&Picture> = match &page.body {
        Body::Procedure(job) => job.steps.iter().filter_map(|step| step.picture.as_ref()).collect(),
        Body::Checklist(list) => {
            list.groups.iter().flat_map(|group| &group.items).filter_map(|item| item.picture.as_ref()).collect()
        }
        Body::Question(question) => question.picture.iter().collect(),
        _ => Vec::new(),
    };
    let known = on_page.into_iter().filter_map(|picture| pictures.get(picture.address.as_str()));
    let mut shown: Vec<&str> = known.map(String::as_str).collect();
    shown.sort_unstable();
    shown
}

/// The code of the whole handbook: of the codes of its pages.
pub fn of_all(pages: &[Page]) -> String {
    let codes: Vec<(&str, &str)> = pages.iter().map(|page| (page.address.as_str(), page.code.as_str())).collect();
    code(&codes)
}

fn code(says: &impl Serialize) -> String {
    // What pages say is plain data with text keys: it always serialises.
    let bytes = serde_json::to_vec(says).unwrap_or_default();
    code_of(blake3::hash(&bytes).as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{CODE_LENGTH, CODE_LETTERS};

    #[test]
    fn a_code_has_eight_letters_that_cannot_be_misread() {
        let one = code(&"rewire");
        assert_eq!(one.len(), CODE_LENGTH);
        assert!(one.bytes().all(|letter| CODE_LETTERS.contains(&letter)));
        assert_ne!(one, code(&"rewired"));
    }
}
