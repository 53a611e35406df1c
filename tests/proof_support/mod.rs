//! Fixtures of `tests/proof`: small handbooks with the findings drawn under the lines they are about.
//!
//! A file holds cases, each begun by `--- case: what is shown`; a case holds files, each begun by `--- file: its name`. The
//! files of `tests/proof/base`, a sound handbook, are there too unless the case says `--- alone`; one of the same name goes before.
//! A finding is drawn as a comment: carets under the range, then severity, code and message; a second comment may give the help.
//! Where carets follow the `#` at once, the `#` stands for the range's first column. Where no comment can stand, the case says
//! `--- expect: file:line:first-last severity code: message` before its files. `--- bytes:` instead of `--- file:` takes
//! `\t`, `\r`, `\xNN`, `\u{NNNN}` and `\repeat{N}{text}`.

#![allow(dead_code, reason = "each test file that takes this module uses a part of it")]

use coquille::proof::{Proofed, proof};
use coquille::source::{Folder, Place, Texts, read};
use std::collections::BTreeMap;
use std::fmt;
use std::path::{Path, PathBuf};

/// A file of fixtures.
pub struct Suite {
    pub path: PathBuf,
    pub name: String,
    pub cases: Vec<Case>,
}

/// A small handbook.
pub struct Case {
    pub title: String,
    pub line: usize,
    pub alone: bool,
    pub expects: Vec<Drawn>,
    pub files: Vec<File>,
}

/// A file of a case, with the comments that draw its findings.
pub struct File {
    pub name: String,
    pub escaped: bool,
    pub text: String,
}

/// A finding as it is drawn or found.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Drawn {
    pub file: String,
    pub line: usize,
    pub first: usize,
    pub end: usize,
    /// Severity, code and message.
    pub words: String,
    pub help: Option<String>,
}

impl fmt::Display for Drawn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}:{}-{} {}", self.file, self.line, self.first, self.end, self.words)
    }
}

impl Drawn {
    /// The same with the help left out: what two must agree on.
    fn bare(&self) -> Drawn {
        Drawn { help: None, ..self.clone() }
    }

    /// The code alone.
    pub fn code(&self) -> &str {
        self.words.split([' ', ':']).nth(1).unwrap_or("")
    }
}

/// All fixtures, in the order of their names.
pub fn suites() -> Vec<Suite> {
    let folder = Path::new("tests/proof");
    let mut paths: Vec<PathBuf> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.retain(|path| path.extension().is_some_and(|ending| ending == "yaml"));
    paths.sort();
    paths.iter().map(|path| suite(path)).collect()
}

fn suite(path: &Path) -> Suite {
    let mut cases: Vec<Case> = Vec::new();
    for (number, line) in std::fs::read_to_string(path).unwrap().lines().enumerate() {
        take(&mut cases, number + 1, line).unwrap_or_else(|why| panic!("{}:{}: {why}", path.display(), number + 1));
    }
    Suite { path: path.to_owned(), name: path.file_stem().unwrap().to_string_lossy().into_owned(), cases }
}

fn take(cases: &mut Vec<Case>, number: usize, line: &str) -> Result<(), &'static str> {
    let file = |name: &str, escaped| File { name: name.to_owned(), escaped, text: String::new() };
    if let Some(title) = line.strip_prefix("--- case: ") {
        let title = title.to_owned();
        cases.push(Case { title, line: number, alone: false, expects: Vec::new(), files: Vec::new() });
        return Ok(());
    }
    let case = cases.last_mut().ok_or("a fixture starts with `--- case:`")?;
    match line.strip_prefix("--- ").and_then(|rest| rest.split_once(": ")) {
        Some(("file", name)) => case.files.push(file(name, false)),
        Some(("bytes", name)) => case.files.push(file(name, true)),
        Some(("expect", words)) => case.expects.push(expected(words).ok_or("file:line:first-last words")?),
        Some(("help", words)) => {
            case.expects.last_mut().ok_or("help for nothing")?.help = Some(words.to_owned());
        }
        _ if line == "--- alone" => case.alone = true,
        _ => {
            let file = case.files.last_mut().ok_or("a text without its `--- file:`")?;
            file.text.push_str(line);
            file.text.push('\n');
        }
    }
    Ok(())
}

fn expected(words: &str) -> Option<Drawn> {
    let (place, words) = words.split_once(' ')?;
    let mut parts = place.rsplitn(3, ':');
    let (first, end) = parts.next()?.split_once('-')?;
    let (line, file) = (parts.next()?.parse().ok()?, parts.next()?.to_owned());
    Some(Drawn { file, line, first: first.parse().ok()?, end: end.parse().ok()?, words: words.to_owned(), help: None })
}

/// A comment that draws a finding: its range of columns and its words.
pub fn caret(line: &str) -> Option<(usize, usize, &str)> {
    let before = line.len() - line.trim_start().len();
    let rest = line.trim_start().strip_prefix('#')?;
    let blanks = rest.len() - rest.trim_start().len();
    let carets = rest.trim_start().len() - rest.trim_start().trim_start_matches('^').len();
    let words = rest.trim_start().trim_start_matches('^').strip_prefix(' ')?;
    let of_a_finding = words.starts_with("error ") || words.starts_with("advice ");
    if carets == 0 || !of_a_finding {
        return None;
    }
    let first = if blanks == 0 { before + 1 } else { before + blanks + 2 };
    Some((first, before + blanks + 2 + carets, words))
}

/// A comment that gives the help of the finding above it.
fn help(line: &str) -> Option<&str> {
    line.trim_start().strip_prefix('#')?.trim_start().strip_prefix("help: ")
}

impl Case {
    /// All findings that are drawn.
    pub fn drawn(&self) -> Vec<Drawn> {
        let mut all = self.expects.clone();
        self.files.iter().filter(|file| !file.escaped).for_each(|file| all.extend(file.drawn()));
        all
    }

    /// All files of the case as bytes, the base among them.
    pub fn contents(&self) -> BTreeMap<String, Vec<u8>> {
        let mut all = if self.alone { BTreeMap::new() } else { base() };
        all.extend(self.files.iter().map(|file| (file.name.clone(), file.bytes())));
        all
    }

    /// The handbook as a folder, for as long as that is kept.
    pub fn on_disk(&self) -> tempfile::TempDir {
        let folder = tempfile::tempdir().unwrap();
        for (name, bytes) in self.contents() {
            let path = folder.path().join(name);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, bytes).unwrap();
        }
        folder
    }

    /// The handbook as read from disk, and what is found in it.
    pub fn proofed(&self) -> (Folder, Proofed) {
        let read = read(self.on_disk().path()).unwrap();
        let proofed = proof(&read);
        (read, proofed)
    }

    /// All that is found.
    pub fn found(&self) -> Vec<Drawn> {
        let (folder, proofed) = self.proofed();
        let drawn = |finding: &coquille::proof::Finding| {
            let (first, end) = columns(&folder.texts, finding.place);
            Drawn {
                file: folder.texts.get(finding.place.file).map_or_else(String::new, |text| text.name.clone()),
                line: finding.place.line as usize,
                first,
                end,
                words: format!("{} {}: {}", finding.severity().as_str(), finding.code.as_str(), finding.message),
                help: Some(finding.help.clone()),
            }
        };
        proofed.findings.iter().map(drawn).collect()
    }

    /// In what the drawn and the found findings differ, in words.
    pub fn differences(&self) -> Vec<String> {
        let (drawn, found) = (self.drawn(), self.found());
        let mut left: Vec<Drawn> = found.clone();
        let mut all = Vec::new();
        for one in &drawn {
            match left.iter().position(|other| other.bare() == one.bare()) {
                Some(at) => {
                    let other = left.remove(at);
                    if one.help.is_some() && one.help != other.help {
                        all.push(format!("another help: {one}\n    help: {}", other.help.unwrap_or_default()));
                    }
                }
                None => all.push(format!("drawn, not found: {one}")),
            }
        }
        all.extend(left.iter().map(|one| format!("found, not drawn: {one}")));
        all
    }
}

impl File {
    fn bytes(&self) -> Vec<u8> {
        if self.escaped { unescaped(&self.text) } else { self.text.clone().into_bytes() }
    }

    /// The comments of this file that draw findings.
    fn drawn(&self) -> Vec<Drawn> {
        let mut all: Vec<Drawn> = Vec::new();
        let mut under = 0;
        for (number, line) in self.text.lines().enumerate() {
            if let Some((first, end, words)) = caret(line) {
                let (file, words) = (self.name.clone(), words.to_owned());
                all.push(Drawn { file, line: under, first, end, words, help: None });
            } else if let (Some(words), Some(last)) = (help(line), all.last_mut()) {
                last.help = Some(words.to_owned());
            } else {
                under = number + 1;
            }
        }
        all
    }
}

/// First column and the column after the last, on the place's first line.
fn columns(texts: &Texts, place: Place) -> (usize, usize) {
    let Some(text) = texts.get(place.file) else { return (place.column as usize, place.column as usize) };
    let line_end = text.line(place.line).trim_end_matches('\r').chars().count() + 1;
    let (line, column) = text.line_column(place.end as usize);
    (place.column as usize, if line == place.line { column as usize } else { line_end })
}

/// The sound handbook that a case adds to.
pub fn base() -> BTreeMap<String, Vec<u8>> {
    let folder = Path::new("tests/proof/base");
    let files =
        walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap).filter(|entry| entry.file_type().is_file());
    let name = |path: &Path| path.strip_prefix(folder).unwrap().to_string_lossy().replace('\\', "/");
    files.map(|entry| (name(entry.path()), std::fs::read(entry.path()).unwrap())).collect()
}

/// Reads the escapes of a file of bytes.
fn unescaped(text: &str) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find('\\') {
        bytes.extend_from_slice(&rest.as_bytes()[..at]);
        let (made, length) = escape(&rest[at + 1..]);
        bytes.extend(made);
        rest = &rest[at + 1 + length..];
    }
    bytes.extend_from_slice(rest.as_bytes());
    bytes
}

/// The bytes of an escape, and its length without the backslash.
fn escape(after: &str) -> (Vec<u8>, usize) {
    let braced = |from: usize| -> (&str, usize) {
        let inner = after[from..].strip_prefix('{').unwrap();
        let end = inner.find('}').unwrap();
        (&inner[..end], from + end + 2)
    };
    match after.chars().next() {
        Some('t') => (b"\t".to_vec(), 1),
        Some('n') => (b"\n".to_vec(), 1),
        Some('x') => (vec![u8::from_str_radix(&after[1..3], 16).unwrap()], 3),
        Some('u') => {
            let (digits, end) = braced(1);
            let letter = char::from_u32(u32::from_str_radix(digits, 16).unwrap()).unwrap();
            (letter.to_string().into_bytes(), end)
        }
        Some('r') if after.starts_with("repeat{") => {
            let (times, end) = braced("repeat".len());
            let (what, end) = braced(end);
            (unescaped(what).repeat(times.parse().unwrap()), end)
        }
        Some('r') => (b"\r".to_vec(), 1),
        other => panic!("no escape {other:?}"),
    }
}

/// The fixture as it should be, with the findings drawn anew.
pub fn redrawn(suite: &Suite) -> String {
    let mut text = String::new();
    for case in &suite.cases {
        redraw(case, &mut text);
    }
    text
}

fn redraw(case: &Case, text: &mut String) {
    let (found, drawn) = (case.found(), case.drawn());
    let helped = |one: &Drawn| drawn.iter().any(|other| other.help.is_some() && other.code() == one.code());
    let listed = |one: &Drawn| {
        let file = case.files.iter().find(|file| file.name == one.file);
        // A comment cannot mark less than its own `#` and a caret.
        let narrowest = if one.first < 3 { one.first + 2 } else { one.first + 1 };
        !case.expects.is_empty() || file.is_none_or(|file| file.escaped) || one.end < narrowest
    };
    text.push_str(&format!("--- case: {}\n", case.title));
    for one in found.iter().filter(|one| listed(one)) {
        text.push_str(&format!("--- expect: {one}\n"));
        if let (true, Some(help)) = (helped(one), &one.help) {
            text.push_str(&format!("--- help: {help}\n"));
        }
    }
    if case.alone {
        text.push_str("--- alone\n");
    }
    for file in &case.files {
        text.push_str(&format!("--- {}: {}\n", if file.escaped { "bytes" } else { "file" }, file.name));
        for (number, line) in file.text.lines().enumerate() {
            let comment = !file.escaped && (caret(line).is_some() || help(line).is_some());
            if comment {
                continue;
            }
            text.push_str(&format!("{line}\n"));
            let here = found.iter().filter(|one| one.file == file.name && one.line == number + 1 && !listed(one));
            here.for_each(|one| text.push_str(&mark(one, helped(one))));
        }
    }
}

fn mark(one: &Drawn, helped: bool) -> String {
    let (indent, carets) = match one.first {
        1 => ("#".to_owned(), one.end - 2),
        2 => (" #".to_owned(), one.end - 3),
        first => (format!("#{}", " ".repeat(first - 2)), one.end - first),
    };
    let mut comment = format!("{indent}{} {}\n", "^".repeat(carets), one.words);
    if let (true, Some(help)) = (helped, &one.help) {
        comment.push_str(&format!("#{}help: {help}\n", " ".repeat(one.first.saturating_sub(2).max(1))));
    }
    comment
}
