//! Codes of pages: a printed sheet can be held against today's handbook.
//!
//! A code is a hash of what a page says: not of the theme, the program's version, what links to it, or the code itself.

use super::page::Page;
use rayon::prelude::*;
use serde::Serialize;

/// Letters without look-alikes and vowels: 18⁸ codes are about eleven thousand million.
const LETTERS: &[u8; 18] = b"34679CFHJKMPQRTWXY";
/// How long a code is.
const LENGTH: usize = 8;

/// Gives every page its code.
pub fn give(pages: &mut [Page]) {
    pages.par_iter_mut().for_each(|page| page.code = code(&(page.kind, &page.title, &page.body)));
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
    let mut code = String::with_capacity(LENGTH);
    for _ in 0..LENGTH {
        let at = (number % LETTERS.len() as u128) as usize;
        code.push(LETTERS.get(at).copied().map_or('3', char::from));
        number /= LETTERS.len() as u128;
    }
    code
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_has_eight_letters_that_cannot_be_misread() {
        let one = code(&"rewire");
        assert_eq!(one.len(), LENGTH);
        assert!(one.bytes().all(|letter| LETTERS.contains(&letter)));
        assert_ne!(one, code(&"rewired"));
    }
}
