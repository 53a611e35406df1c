//! What the system refuses, in words for somebody who never met an error number.
//!
//! In: an error of the system. Out: half a sentence. Leaves to others: which file it is about, and what to do.

use std::io::{Error, ErrorKind};

/// What is the matter: `it is a file, not a folder`. Never with the number that the system gives it.
pub fn in_words(error: &Error) -> String {
    let words = match error.kind() {
        ErrorKind::NotFound => "it is not there",
        ErrorKind::NotADirectory => "it is a file, not a folder",
        ErrorKind::IsADirectory => "it is a folder, not a file",
        ErrorKind::PermissionDenied => "this computer does not let you; ask whoever owns it",
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "the disk is full",
        ErrorKind::ReadOnlyFilesystem => "the disk can only be read",
        ErrorKind::AddrInUse => "another program has it",
        ErrorKind::InvalidFilename => "the name is too long, or has a sign that no file may have",
        _ => return bare(&error.to_string()).to_owned(),
    };
    words.to_owned()
}

/// The system's own words without their number.
fn bare(words: &str) -> &str {
    words.split_once(" (os error").map_or(words, |(bare, _)| bare)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_number_of_the_system_is_ever_said() {
        // Numbers of errno.h on Linux; other systems have other words for them.
        for number in [2, 5, 13, 17, 20, 21, 28, 30, 36, 98] {
            let said = in_words(&Error::from_raw_os_error(number));
            assert!(!said.contains("os error") && !said.is_empty(), "{said}");
        }
        assert_eq!(in_words(&ErrorKind::NotADirectory.into()), "it is a file, not a folder");
    }
}
