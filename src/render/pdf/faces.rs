//! The faces of PDF sheets: a legible one with distinct `1 l I` and `0 O`, and a wide one for the letters that it lacks.
//!
//! Out: the faces, read once. Their licences lie beside them in `faces/`.

use std::sync::LazyLock;
use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// Atkinson Hyperlegible Next (SIL OFL 1.1), then DejaVu Sans (Bitstream Vera licence), in the order in which they are asked.
static FILES: [&[u8]; 3] = [
    include_bytes!("faces/AtkinsonHyperlegibleNext_400Regular.ttf"),
    include_bytes!("faces/AtkinsonHyperlegibleNext_700Bold.ttf"),
    include_bytes!("faces/DejaVuSans.ttf"),
];

/// The faces and their list.
pub struct Faces {
    /// The faces.
    pub fonts: Vec<Font>,
    /// Their list, which the typesetter chooses from.
    pub book: LazyHash<FontBook>,
}

/// The faces that come with the program.
pub static FACES: LazyLock<Faces> = LazyLock::new(|| {
    let fonts: Vec<Font> = FILES.iter().flat_map(|file| Font::iter(Bytes::new(*file))).collect();
    let book = LazyHash::new(FontBook::from_fonts(&fonts));
    Faces { fonts, book }
});

/// Whether some face has this letter.
pub fn have(letter: char) -> bool {
    FACES.fonts.iter().any(|font| font.info().coverage.contains(u32::from(letter)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_faces_have_what_a_bench_writes() {
        assert_eq!(FACES.fonts.len(), FILES.len());
        for letter in "Aa01lIΩ≤≥±×·½°µ–—’“”…→✓ß\u{e9}אب".chars() {
            assert!(have(letter), "{letter}");
        }
        assert!(!have('\u{4e00}'), "or the test for missing letters would be idle");
    }
}
