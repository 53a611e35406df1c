//! From a folder on disk to texts, trees and pictures.
//!
//! In: a path. Out: [`Folder`]. The only place where guides are read from disk.
//! Leaves to others: which files a handbook may point at. Links are not followed; hidden files are not guides.

use super::flaw::{Flaw, What};
use super::in_words::in_words;
use super::place::{FileId, Place, Text, Texts};
use super::tree::{Node, parse};
use std::collections::BTreeMap;
use std::path::Path;
use walkdir::WalkDir;

/// Largest guide, in bytes.
pub const MAX_GUIDE: u64 = 1 << 20;
/// Largest picture, in bytes.
pub const MAX_PICTURE: u64 = 20 << 20;

/// Everything that was read of a handbook.
#[derive(Debug, Clone, Default)]
pub struct Folder {
    /// The texts.
    pub texts: Texts,
    /// One tree per text that could be made out.
    pub trees: Vec<(FileId, Node)>,
    /// Files beside the guides, by path inside the folder with `/`. A picture over the largest size has no bytes.
    pub others: BTreeMap<String, Vec<u8>>,
    /// What was wrong.
    pub flaws: Vec<Flaw>,
}

/// Reads a handbook's folder.
///
/// # Errors
/// When the folder itself cannot be read; whatever is wrong with a file in it is a flaw.
pub fn read(folder: &Path) -> std::io::Result<Folder> {
    std::fs::read_dir(folder)?;
    let mut read = Folder::default();
    let visible = |entry: &walkdir::DirEntry| entry.depth() == 0 || !hidden(entry);
    for entry in WalkDir::new(folder).sort_by_file_name().into_iter().filter_entry(visible) {
        let entry = entry.map_err(std::io::Error::from)?;
        if entry.file_type().is_file() {
            read.take(name_inside(folder, entry.path()), entry.path());
        }
    }
    Ok(read)
}

/// Reads the files of a club's theme, by their path inside its folder.
///
/// # Errors
/// When the folder or a file in it cannot be read.
pub fn read_theme(folder: &Path) -> std::io::Result<BTreeMap<String, Vec<u8>>> {
    std::fs::read_dir(folder)?;
    let mut files = BTreeMap::new();
    let visible = |entry: &walkdir::DirEntry| entry.depth() == 0 || !hidden(entry);
    for entry in WalkDir::new(folder).sort_by_file_name().into_iter().filter_entry(visible) {
        let entry = entry.map_err(std::io::Error::from)?;
        if entry.file_type().is_file() {
            let name = name_inside(folder, entry.path());
            let bytes = plain(&name, std::fs::read(entry.path())?);
            files.insert(name, bytes);
        }
    }
    Ok(files)
}

/// Reads one file of a bound handbook: what it remembers of itself.
///
/// # Errors
/// When it is not there or cannot be read.
pub fn read_record(handbook: &Path, name: &str) -> std::io::Result<Vec<u8>> {
    std::fs::read(handbook.join(name))
}

/// Largest table, in bytes.
const MAX_TABLE: u64 = 10 << 20;

/// Reads a table that a spreadsheet saved.
///
/// # Errors
/// Why it cannot be read, in words.
pub fn read_table(path: &Path) -> Result<String, String> {
    let found = std::fs::metadata(path).map_err(|error| match error.kind() {
        std::io::ErrorKind::NotFound => "there is no such file".to_owned(),
        _ => in_words(&error),
    })?;
    if !found.is_file() || found.len() > MAX_TABLE {
        return Err("it is no file, or one larger than 10 MiB".to_owned());
    }
    let bytes = std::fs::read(path).map_err(|error| in_words(&error))?;
    String::from_utf8(bytes).map_err(|_| "it is not UTF-8; save it again as “CSV UTF-8”".to_owned())
}

/// The same from texts in memory: for tests, and for what the program carries in itself.
pub fn read_texts<'a>(texts: impl IntoIterator<Item = (&'a str, &'a str)>) -> Folder {
    let mut read = Folder::default();
    for (name, text) in texts {
        read.take_bytes(name.to_owned(), text.as_bytes().to_vec());
    }
    read
}

/// Endings of files that are text: an editor, or whoever copies them from one system to another, may change how their lines end.
const TEXT_ENDINGS: [&str; 8] = ["yaml", "yml", "ftl", "svg", "css", "html", "js", "txt"];

/// The bytes of a text without a byte-order mark and with LF for CRLF: both are habits of plain text editors and no fault, and the
/// same words are to give the same bytes. Anything else as it is.
fn plain(name: &str, bytes: Vec<u8>) -> Vec<u8> {
    let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
    let is_text = TEXT_ENDINGS.iter().any(|known| ending.eq_ignore_ascii_case(known));
    let words = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(&bytes);
    if !is_text || (words.len() == bytes.len() && !bytes.contains(&b'\r')) {
        return bytes;
    }
    let next = words.iter().skip(1).map(Some).chain([None]);
    let kept = words.iter().zip(next).filter(|(byte, next)| !(**byte == b'\r' && *next == Some(&b'\n')));
    kept.map(|(byte, _)| *byte).collect()
}

fn hidden(entry: &walkdir::DirEntry) -> bool {
    entry.file_name().to_string_lossy().starts_with('.')
}

fn name_inside(folder: &Path, path: &Path) -> String {
    let inside = path.strip_prefix(folder).unwrap_or(path);
    let parts: Vec<_> = inside.components().map(|part| part.as_os_str().to_string_lossy()).collect();
    parts.join("/")
}

fn is_guide(name: &str) -> bool {
    let name = name.to_ascii_lowercase();
    name.ends_with(".yaml") || name.ends_with(".yml")
}

/// The language of a club's message file: `messages/ar.ftl` is for Arabic.
pub fn language_of_messages(name: &str) -> Option<&str> {
    name.strip_prefix("messages/").and_then(|file| file.strip_suffix(".ftl")).filter(|language| !language.contains('/'))
}

impl Folder {
    fn take(&mut self, name: String, path: &Path) {
        let size = std::fs::metadata(path).map_or(0, |known| known.len());
        let most = if is_guide(&name) { MAX_GUIDE } else { MAX_PICTURE };
        if size > most {
            return self.too_large(name, size);
        }
        match std::fs::read(path) {
            Ok(bytes) => self.take_bytes(name, bytes),
            Err(error) => self.flawed(name, String::new(), What::Unreadable(in_words(&error))),
        }
    }

    fn too_large(&mut self, name: String, size: u64) {
        if is_guide(&name) {
            self.flawed(name, String::new(), What::TooLarge(size));
        } else {
            self.others.insert(name, Vec::new());
        }
    }

    fn take_bytes(&mut self, name: String, bytes: Vec<u8>) {
        let bytes = plain(&name, bytes);
        if !is_guide(&name) {
            self.take_message_file(&name, &bytes);
            self.others.insert(name, bytes);
            return;
        }
        match String::from_utf8(bytes) {
            Ok(text) => self.take_text(name, &text),
            Err(error) => {
                let upto = error.utf8_error().valid_up_to();
                let text = String::from_utf8_lossy(error.as_bytes()).into_owned();
                self.not_utf8(name, text, upto);
            }
        }
    }

    /// A club's words for pages are kept as a text too, so that a faulty line can be shown.
    fn take_message_file(&mut self, name: &str, bytes: &[u8]) {
        if language_of_messages(name).is_some() {
            self.texts.add(Text::new(name, String::from_utf8_lossy(bytes)));
        }
    }

    fn take_text(&mut self, name: String, text: &str) {
        let file = self.texts.add(Text::new(name, text));
        let Some(text) = self.texts.get(file) else { return };
        let (tree, flaws) = parse(file, text);
        self.trees.extend(tree.map(|tree| (file, tree)));
        self.flaws.extend(flaws);
    }

    fn not_utf8(&mut self, name: String, text: String, upto: usize) {
        let file = self.texts.add(Text::new(name, text));
        if let Some(text) = self.texts.get(file) {
            let place = text.place(file, upto..upto + '\u{fffd}'.len_utf8());
            self.flaws.push(Flaw::new(place, What::NotUtf8));
        }
    }

    fn flawed(&mut self, name: String, text: String, what: What) {
        let file = self.texts.add(Text::new(name, text));
        self.flaws.push(Flaw::new(Place::top(file), what));
    }
}
