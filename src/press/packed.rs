//! Many files in one: a zip whose bytes depend on nothing but the files.
//!
//! In: names and bytes, in the order in which they are to stand. Out: the archive. Every file has the first day that a zip can name
//! and the same rights; nothing of the machine or the day gets in. Leaves to others: the names.

use std::io::{Cursor, Write};
use zip::result::ZipError;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

/// Packs files, with a comment at the end. A file named `mimetype` is stored as it is, as EPUB wants it (EPUB 3.3, OCF 4.2.2).
///
/// # Errors
/// When there are more or larger files than a zip can hold; in words.
pub fn pack<'f>(files: impl IntoIterator<Item = (&'f str, &'f [u8])>, comment: &str) -> Result<Vec<u8>, String> {
    let packed = || -> Result<Vec<u8>, ZipError> {
        let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
        zip.set_comment(comment)?;
        for (name, bytes) in files {
            let method = if name == "mimetype" { CompressionMethod::Stored } else { CompressionMethod::Deflated };
            let options = SimpleFileOptions::default()
                .compression_method(method)
                .last_modified_time(DateTime::default())
                .unix_permissions(0o644);
            zip.start_file(name, options)?;
            zip.write_all(bytes)?;
        }
        Ok(zip.finish()?.into_inner())
    };
    packed().map_err(|error| format!("the archive cannot be made: {error}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    #[test]
    fn what_was_packed_comes_out_again_and_twice_is_the_same() {
        let files = [("mimetype", &b"application/epub+zip"[..]), ("a/b.txt", &[b'x'; 5000][..])];
        let packed = pack(files, "ours").unwrap();
        assert_eq!(packed, pack(files, "ours").unwrap());
        assert!(packed.len() < 1000 && packed.ends_with(b"ours"));
        let mut zip = zip::ZipArchive::new(Cursor::new(&packed)).unwrap();
        for (name, bytes) in files {
            let mut file = zip.by_name(name).unwrap();
            let mut out = Vec::new();
            file.read_to_end(&mut out).unwrap();
            assert_eq!(out, bytes);
        }
        // EPUB 3.3, OCF 4.2.2: the media type stands at offset 38, where programs that know files by their first bytes look.
        assert_eq!(&packed[30..58], b"mimetypeapplication/epub+zip");
    }
}
