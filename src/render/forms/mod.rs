//! The handbook in the other forms that it is passed on in: one HTML file, one EPUB.
//!
//! In: a handbook and a theme, as for the folder. Out: the bytes of the file, or what goes into it. Leaves to others: packing and
//! writing (`press`). Promise: the same pages with the same words, figures, cautions and ticks; nothing is fetched from outside.

mod compact;
mod epub;
mod markup;
mod names;
mod net;
mod pictures;
mod sections;
mod single;
mod stock;
mod xhtml;

pub use epub::epub;
pub use net::online;
pub use single::single;
pub(super) use stock::Stock;

/// What every file of ours says of itself near its beginning or at its end, so that a later bind knows it again.
pub const SIGN: &str = "made by Coquille, to be bound again";

/// Whether these bytes are a single file, an EPUB or a zip of ours: the sign stands in the head of the first and in the comment at
/// the end of the others.
pub fn is_ours(bytes: &[u8]) -> bool {
    let near = |part: &[u8]| part.windows(SIGN.len()).any(|window| window == SIGN.as_bytes());
    near(&bytes[..bytes.len().min(1024)]) || near(&bytes[bytes.len().saturating_sub(256)..])
}

/// A number in few letters.
fn short(mut number: usize) -> String {
    const DIGITS: &[u8; 36] = b"0123456789abcdefghijklmnopqrstuvwxyz";
    let mut out = Vec::<u8>::new();
    loop {
        out.extend(DIGITS.get(number % 36));
        number /= 36;
        if number == 0 {
            break;
        }
    }
    out.iter().rev().map(|digit| char::from(*digit)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_differ() {
        assert_eq!([short(0), short(35), short(36), short(1295)], ["0", "z", "10", "zz"]);
    }

    #[test]
    fn a_file_of_somebody_elses_is_not_ours_though_it_speaks_of_us_in_its_middle() {
        let middle = format!("{}{SIGN}{}", "a".repeat(2000), "b".repeat(2000));
        assert!(!is_ours(middle.as_bytes()));
        assert!(!is_ours(b""));
        assert!(is_ours(format!("<!-- {SIGN} -->{}", "a".repeat(3000)).as_bytes()));
        assert!(is_ours(format!("{}{SIGN}", "a".repeat(3000)).as_bytes()));
    }
}
