//! The list of what we wrote: `handbook.contents` in the handbook's own folder.
//!
//! In: the files of a handbook, or the text of such a list. Out: addresses with the BLAKE3 hash of what was written
//! there. It is how the next bind knows which files are ours to change or remove. A list that is cut short or was
//! meddled with is refused as a whole: better no list than half of one.

use super::address::Address;
use super::failure::{PressFailed, Why};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::Path;

/// The file's name in the handbook's folder.
pub const NAME: &str = "handbook.contents";

const HEAD: &str = "coquille contents 1, files: ";
const HEAD_OF_ANY: &str = "coquille contents ";

/// The hash of a file's bytes: BLAKE3, 64 hexadecimal digits when written.
pub type Hash = blake3::Hash;

/// What a bind wrote: every file but the list itself.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Contents {
    hashes: BTreeMap<Address, Hash>,
}

impl Contents {
    /// The list of these files.
    pub fn of(files: &BTreeMap<Address, Vec<u8>>) -> Contents {
        let hashed = files.par_iter();
        let hashed = hashed.map(|(address, bytes)| (address.clone(), blake3::hash(bytes)));
        Contents { hashes: hashed.collect() }
    }

    /// The list in this folder, `None` if there is none.
    ///
    /// # Errors
    /// [`Why::DamagedContents`] or [`Why::NewerContents`] if it cannot be understood, else what the system says.
    pub fn read(folder: &Path) -> Result<Option<Contents>, PressFailed> {
        let path = folder.join(NAME);
        match fs::symlink_metadata(&path) {
            // A link or a folder of that name is none of ours.
            Ok(found) if !found.is_file() => return Ok(None),
            Err(error) if is_absent(&error) => return Ok(None),
            Err(error) => return Err(PressFailed::of_system(&path, &error)),
            Ok(_) => {}
        }
        let bytes = fs::read(&path).map_err(|error| PressFailed::of_system(&path, &error))?;
        let text = String::from_utf8_lossy(&bytes);
        Contents::parse(&text).map(Some).map_err(|why| PressFailed { path: folder.to_path_buf(), why })
    }

    /// The hash of what was written at this address.
    pub fn hash(&self, address: &Address) -> Option<&Hash> {
        self.hashes.get(address)
    }

    /// Addresses and hashes, in the order of the addresses.
    pub fn iter(&self) -> impl Iterator<Item = (&Address, &Hash)> {
        self.hashes.iter()
    }

    /// The list as text: a head with the count, then a line a file, sorted.
    pub fn to_text(&self) -> String {
        let head = format!("{HEAD}{}\n", self.hashes.len());
        let lines = self.hashes.iter();
        let lines = lines.map(|(address, hash)| format!("{} {address}\n", hash.to_hex()));
        std::iter::once(head).chain(lines).collect()
    }

    fn parse(text: &str) -> Result<Contents, Why> {
        // `lines` also takes the CRLF that a version control system may have put in.
        let mut lines = text.lines();
        let head = lines.next().unwrap_or_default();
        let Some(count) = head.strip_prefix(HEAD) else {
            let ours = head.starts_with(HEAD_OF_ANY);
            return Err(if ours { Why::NewerContents } else { Why::DamagedContents });
        };
        let hashes: Option<BTreeMap<_, _>> = lines.map(entry).collect();
        match hashes {
            Some(hashes) if hashes.len().to_string() == count => Ok(Contents { hashes }),
            _ => Err(Why::DamagedContents),
        }
    }
}

/// Whether an error says no more than that there is nothing there.
pub(super) fn is_absent(error: &io::Error) -> bool {
    use io::ErrorKind::{NotADirectory, NotFound};
    matches!(error.kind(), NotFound | NotADirectory)
}

fn entry(line: &str) -> Option<(Address, Hash)> {
    let (hash, address) = line.split_once(' ')?;
    let hash = Hash::from_hex(hash).ok()?;
    Some((Address::parse(address).ok()?, hash))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn contents(texts: &[(&str, &str)]) -> Contents {
        let file = |(address, text): &(&str, &str)| {
            let address = Address::parse(address).expect("a good address");
            (address, text.as_bytes().to_vec())
        };
        Contents::of(&texts.iter().map(file).collect())
    }

    #[test]
    fn the_list_is_text_a_person_can_read() {
        // The hash of nothing is the first published test vector of BLAKE3 (test_vectors.json, input_len 0).
        assert_eq!(
            contents(&[("a/empty.txt", "")]).to_text(),
            "coquille contents 1, files: 1\n\
             af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262 a/empty.txt\n"
        );
    }

    #[test]
    fn a_list_cut_short_is_no_list() {
        let text = contents(&[("a", "1"), ("b", "2")]).to_text();
        let cut = text.trim_end().rsplit_once('\n').expect("three lines").0;
        assert_eq!(Contents::parse(cut), Err(Why::DamagedContents));
        assert_eq!(Contents::parse(""), Err(Why::DamagedContents));
    }

    #[test]
    fn a_list_that_leads_out_of_the_folder_is_no_list() {
        let text = contents(&[("a", "1")]).to_text().replace(" a\n", " ../a\n");
        assert_eq!(Contents::parse(&text), Err(Why::DamagedContents));
    }

    #[test]
    fn a_list_of_a_newer_program_is_told_apart_from_a_damaged_one() {
        let parsed = Contents::parse("coquille contents 2, files: 0\n");
        assert_eq!(parsed, Err(Why::NewerContents));
    }

    #[test]
    fn line_ends_of_windows_do_no_harm() {
        let list = contents(&[("a", "1"), ("b", "2")]);
        let text = list.to_text().replace('\n', "\r\n");
        assert_eq!(Contents::parse(&text), Ok(list));
    }

    proptest! {
        #[test]
        fn what_was_written_is_read_back(names in prop::collection::btree_map("[a-c]{1,3}", "[x-z]{0,4}", 0..6)) {
            let files = names.iter().map(|(n, t)| (Address::parse(n).unwrap(), t.clone().into_bytes()));
            let list = Contents::of(&files.collect());
            prop_assert_eq!(Contents::parse(&list.to_text()), Ok(list));
        }

        #[test]
        fn no_text_panics(text in "\\PC{0,60}") {
            let _ = Contents::parse(&text);
            let _ = Contents::parse(&format!("{HEAD}1\n{text}"));
        }
    }
}
