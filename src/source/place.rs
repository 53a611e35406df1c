//! Where something stands: a file, a range of bytes, and the line and column a person would count.
//!
//! In: the texts as read. Out: [`Place`], small and `Copy`, that travels with every value to the last check.
//! Leaves to others: drawing the line with its mark (`cli`).

use std::ops::Range;

/// The number of a file in [`Texts`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);

/// A range of a file. Invariant: `start <= end`, both lie on character boundaries inside the file's text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file.
    pub file: FileId,
    /// First byte.
    pub start: u32,
    /// The byte after the last.
    pub end: u32,
    /// Line of the first byte, counted from 1.
    pub line: u32,
    /// Column of the first byte in code points, counted from 1.
    pub column: u32,
}

impl Place {
    /// The start of a file: for what is true of the file as a whole.
    pub fn top(file: FileId) -> Self {
        Place { file, start: 0, end: 0, line: 1, column: 1 }
    }

    /// The bytes as a range.
    pub fn bytes(self) -> Range<usize> {
        self.start as usize..self.end as usize
    }
}

/// One file as read, without a byte-order mark.
#[derive(Debug, Clone)]
pub struct Text {
    /// Path inside the handbook's folder, with `/`.
    pub name: String,
    /// What it says.
    pub text: String,
    line_starts: Vec<usize>,
    /// How many characters begin before each stride of bytes, so that a place on a very long line is found as quickly.
    counted: Vec<usize>,
}

/// Bytes between two counts of characters.
const STRIDE: usize = 256;

impl Text {
    /// Takes a file's name and text.
    pub fn new(name: impl Into<String>, text: impl Into<String>) -> Self {
        let text = text.into();
        let breaks = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n');
        let line_starts = std::iter::once(0).chain(breaks.map(|(at, _)| at + 1)).collect();
        let strides = text.as_bytes().chunks(STRIDE).scan(0, |sum, bytes| {
            let before = *sum;
            *sum += begun(bytes);
            Some(before)
        });
        let counted = strides.collect();
        Text { name: name.into(), text, line_starts, counted }
    }

    /// Line and column, both from 1, of a byte; a byte past the end counts as the end.
    pub fn line_column(&self, byte: usize) -> (u32, u32) {
        let byte = self.boundary(byte);
        let line = self.line_starts.partition_point(|start| *start <= byte).max(1);
        let start = self.line_starts.get(line - 1).copied().unwrap_or(0);
        let column = self.characters(byte) - self.characters(start);
        (line as u32, column as u32 + 1)
    }

    /// The line with this number, counted from 1, without its break.
    pub fn line(&self, number: u32) -> &str {
        let start = self.line_starts.get(number.saturating_sub(1) as usize).copied();
        start.and_then(|start| self.text.get(start..)).and_then(|rest| rest.lines().next()).unwrap_or("")
    }

    /// The place of a range of bytes, pulled onto character boundaries inside the text.
    pub fn place(&self, file: FileId, bytes: Range<usize>) -> Place {
        let start = self.boundary(bytes.start);
        let end = self.boundary(bytes.end).max(start);
        let (line, column) = self.line_column(start);
        Place { file, start: start as u32, end: end as u32, line, column }
    }

    /// How many characters begin before a byte.
    fn characters(&self, byte: usize) -> usize {
        let stride = (byte / STRIDE).min(self.counted.len().saturating_sub(1));
        let rest = self.text.as_bytes().get(stride * STRIDE..byte).unwrap_or(&[]);
        self.counted.get(stride).copied().unwrap_or(0) + begun(rest)
    }

    fn boundary(&self, byte: usize) -> usize {
        let mut at = byte.min(self.text.len());
        while !self.text.is_char_boundary(at) {
            at -= 1;
        }
        at
    }
}

/// How many characters begin in these bytes of UTF-8.
fn begun(bytes: &[u8]) -> usize {
    bytes.iter().filter(|byte| **byte & 0b1100_0000 != 0b1000_0000).count()
}

/// All texts of a handbook, in the order of their names.
#[derive(Debug, Clone, Default)]
pub struct Texts {
    texts: Vec<Text>,
}

impl Texts {
    /// Adds a text and says which number it got.
    pub fn add(&mut self, text: Text) -> FileId {
        self.texts.push(text);
        FileId(self.texts.len() as u32 - 1)
    }

    /// The text with this number; `None` only for a number of another handbook.
    pub fn get(&self, file: FileId) -> Option<&Text> {
        self.texts.get(file.0 as usize)
    }

    /// The words at a place.
    pub fn at(&self, place: Place) -> &str {
        self.get(place.file).and_then(|text| text.text.get(place.bytes())).unwrap_or("")
    }

    /// The place of a part of the words at `place`, found by its own text: the `nth` time it stands there, counted from 0.
    /// Falls back to the whole place when the words were folded or escaped in the file.
    pub fn within(&self, place: Place, part: &str, nth: usize) -> Place {
        let found = self.at(place).match_indices(part).nth(nth);
        match (found, self.get(place.file)) {
            (Some((at, _)), Some(text)) => {
                let start = place.start as usize + at;
                text.place(place.file, start..start + part.len())
            }
            _ => place,
        }
    }

    /// As [`Texts::within`] with the first time from a byte of those words on; and the byte after it, to go on from.
    pub fn within_from(&self, place: Place, part: &str, from: usize) -> Option<(Place, usize)> {
        let at = from + self.at(place).get(from..)?.find(part)?;
        let start = place.start as usize + at;
        let text = self.get(place.file)?;
        Some((text.place(place.file, start..start + part.len()), at + part.len()))
    }

    /// The place of some bytes of a value that was read at `place`. Falls back to the whole place when the value was folded or
    /// escaped in the file, or when no byte is meant.
    pub fn inside(&self, place: Place, value: &str, bytes: Range<usize>) -> Place {
        let found = self.at(place).find(value).filter(|_| !bytes.is_empty());
        match (found, self.get(place.file)) {
            (Some(at), Some(text)) => {
                let start = place.start as usize + at;
                text.place(place.file, start + bytes.start..start + bytes.end)
            }
            _ => place,
        }
    }

    /// Every text with its number.
    pub fn iter(&self) -> impl Iterator<Item = (FileId, &Text)> {
        self.texts.iter().enumerate().map(|(number, text)| (FileId(number as u32), text))
    }

    /// How many texts there are.
    pub fn len(&self) -> usize {
        self.texts.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.texts.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_count_characters_and_lines_count_from_one() {
        let text = Text::new("a.yaml", "é: 1\nΩ: zwei\n");
        assert_eq!(text.line_column(0), (1, 1));
        assert_eq!(text.line_column(4), (1, 4));
        assert_eq!(text.line_column("é: 1\nΩ: ".len()), (2, 4));
        assert_eq!(text.line_column(999), (3, 1));
    }

    #[test]
    fn columns_hold_on_very_long_lines() {
        let text = Text::new("a.yaml", format!("x\n{}b", "Ω1".repeat(1000)));
        let long = 2 + 3 * 1000;
        assert_eq!(text.line_column(long), (2, 2001));
        assert_eq!(text.line_column(long + 1), (2, 2002));
        assert_eq!(text.line_column(2 + 3 * 99), (2, 199));
        assert_eq!(text.line(2).chars().count(), 2001);
    }

    #[test]
    fn a_place_never_cuts_a_character() {
        let text = Text::new("a.yaml", "ΩΩ");
        let place = text.place(FileId(0), 1..3);
        assert_eq!((place.start, place.end), (0, 2));
    }
}
