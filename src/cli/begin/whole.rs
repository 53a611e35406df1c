//! `coquille begin DIR --whole`: the whole trade's handbook under the name of a club.
//!
//! In: the guides that the program carries, and what the club is called and prints on. Out: files by name: the guides as a pack in
//! a folder `whole`, and beside it the handbook's own file, which is the club's. Leaves to others: writing them.

use crate::cli::args::{BeginJob, PaperName, UnitsName};
use crate::cli::terminal::Terminal;
use crate::proof::why_no_id;
use flate2::read::ZlibDecoder;
use std::collections::BTreeMap;
use std::io::{BufRead, IsTerminal, Read};

/// The guides that the program carries, packed as `carried` packs a folder; nothing in a program that carries none.
#[derive(Debug, Clone, Copy, Default)]
pub struct Trade(&'static [u8]);

impl Trade {
    /// The files of a folder that is carried in the program.
    pub fn packed(bytes: &'static [u8]) -> Trade {
        Trade(bytes)
    }

    /// The files by name; nothing where what is carried is no such folder.
    fn files(&self) -> BTreeMap<String, Vec<u8>> {
        let mut plain = Vec::new();
        let read = ZlibDecoder::new(self.0).read_to_end(&mut plain);
        read.ok().and_then(|_| unpacked(&plain)).unwrap_or_default()
    }
}

/// The files of a folder: for each the length of its name in four bytes, the least first, its name, and its text in the same way.
fn unpacked(plain: &[u8]) -> Option<BTreeMap<String, Vec<u8>>> {
    let (mut files, mut rest) = (BTreeMap::new(), plain);
    while !rest.is_empty() {
        let (name, after) = part(rest)?;
        let (text, after) = part(after)?;
        files.insert(String::from_utf8(name.to_vec()).ok()?, text.to_vec());
        rest = after;
    }
    Some(files)
}

fn part(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let (length, rest) = bytes.split_first_chunk()?;
    rest.split_at_checked(usize::try_from(u32::from_le_bytes(*length)).ok()?)
}

/// Whose handbook it is to be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Club {
    name: String,
    paper: PaperName,
    units: UnitsName,
}

/// Longest name of a club, in letters: it stands at the top of every page.
const LONGEST: usize = 80;

/// What was given, and what is asked for where somebody sits at a terminal; otherwise what to do.
pub(super) fn club(job: &BeginJob, terminal: &mut Terminal) -> Result<Club, String> {
    let given = Club {
        name: job.club.clone().unwrap_or_default(),
        paper: job.paper.unwrap_or(PaperName::A4),
        units: job.units.unwrap_or(UnitsName::Metric),
    };
    let stdin = std::io::stdin();
    let club = match job.club {
        Some(_) => given,
        None if stdin.is_terminal() => asked(job, given, &mut stdin.lock(), terminal)?,
        None => return Err("Say what your club is called: --club \"Our Fencing Club\"".to_owned()),
    };
    sound(club)
}

/// How often a question is asked before it is given up.
const TIMES: usize = 3;

/// Asks for what was not given. An empty answer takes what is in brackets; one that is no choice is asked for again.
fn asked(job: &BeginJob, mut club: Club, answers: &mut dyn BufRead, terminal: &mut Terminal) -> Result<Club, String> {
    club.name = answered("What is your club called?", answers, terminal);
    if job.paper.is_none() {
        let papers = [("A4", PaperName::A4), ("Letter", PaperName::Letter)];
        club.paper = chosen("Which paper do you print on", "--paper", papers, answers, terminal)?;
    }
    if job.units.is_none() {
        let units = [("metric", UnitsName::Metric), ("imperial", UnitsName::Imperial)];
        club.units = chosen("Which units come first", "--units", units, answers, terminal)?;
    }
    Ok(club)
}

fn answered(question: &str, answers: &mut dyn BufRead, terminal: &mut Terminal) -> String {
    terminal.tell(question);
    let mut answer = String::new();
    let read = answers.read_line(&mut answer);
    read.map(|_| answer.trim().to_owned()).unwrap_or_default()
}

/// One of two choices; nothing typed is the first.
fn chosen<T: Copy>(
    question: &str,
    option: &str,
    choices: [(&str, T); 2],
    answers: &mut dyn BufRead,
    terminal: &mut Terminal,
) -> Result<T, String> {
    let [(first, usual), (second, _)] = choices;
    for _ in 0..TIMES {
        let answer = answered(&format!("{question}, {first} or {second}? [{first}]"), answers, terminal);
        let choice = choices.iter().find(|(word, _)| answer.eq_ignore_ascii_case(word)).map(|(_, choice)| *choice);
        match choice {
            Some(choice) => return Ok(choice),
            None if answer.is_empty() => return Ok(usual),
            None => terminal
                .tell(format!("`{answer}` is neither. Type {first} or {second}, or just press Enter for {first}.")),
        }
    }
    let (first, second) = (first.to_lowercase(), second.to_lowercase());
    Err(format!("Nothing was written. Begin again with {option} {first} or {option} {second}."))
}

fn sound(mut club: Club) -> Result<Club, String> {
    club.name = club.name.split_whitespace().collect::<Vec<_>>().join(" ");
    if club.name.is_empty() || club.name.chars().any(char::is_control) {
        return Err("The club needs a name: it stands at the top of every page. --club \"Our Fencing Club\"".to_owned());
    }
    if club.name.chars().count() > LONGEST {
        return Err(format!("The club's name is longer than {LONGEST} letters: give a shorter one with --club."));
    }
    Ok(club)
}

/// The files of the handbook by name, or why there are none.
pub(super) fn files(trade: &Trade, club: &Club) -> Result<BTreeMap<String, Vec<u8>>, String> {
    let carried = trade.files();
    if carried.is_empty() {
        return Err(
            "This build of the program carries no guides. Begin a small handbook: leave out --whole.".to_owned()
        );
    }
    let mut files = BTreeMap::from([("whole/pack.yaml".to_owned(), PACK.as_bytes().to_vec())]);
    for (name, bytes) in carried {
        let (name, bytes) = match (is_handbook(&name), std::str::from_utf8(&bytes)) {
            (true, Ok(text)) => (name.clone(), of_the_club(&name, text, club).into_bytes()),
            _ => (format!("whole/{name}"), bytes),
        };
        files.insert(name, bytes);
    }
    Ok(files)
}

/// Where the guides came from, as their pages say it.
const PACK: &str = "\
# Everything in this folder came with the program. You may change it, delete what you have no use for, or leave it as it is
# and write a guide of your own outside this folder: with the same id it stands in place of the one here.
pack: whole
title: The whole trade
by: The Coquille authors
licence: MIT
from: it comes with the program
";

/// `handbook.yaml` and its translations.
fn is_handbook(name: &str) -> bool {
    !name.contains('/') && name.starts_with("handbook.")
}

const HEAD: &str = "\
# Your handbook as a whole. The guides that came with the program are in the folder `whole`; yours go beside it, in any
# folder: `coquille begin --guide symptom` shows one to fill in.
";

/// The handbook's own file with the club's name, paper and units; pictures are where the guides went.
fn of_the_club(name: &str, text: &str, club: &Club) -> String {
    let (id, title) = (id(&club.name), quoted(&club.name));
    let translation = name != "handbook.yaml";
    let head = if translation { "" } else { HEAD };
    let line = |line: &str| match line.split_once(':').map(|(key, _)| key) {
        Some(key @ ("handbook" | "translation")) => Some(format!("{key}: {id}")),
        Some("title") => Some(format!("title: {title}")),
        Some("edition") => Some("edition: First edition".to_owned()),
        Some("units") => Some(format!("units: {}", units(club.units))),
        Some("paper") => Some(format!("paper: {}", paper(club.paper))),
        Some("address") => None,
        _ => Some(line.replacen("    file: ", "    file: whole/", 1)),
    };
    let lines = text.lines().filter_map(line).map(|line| line + "\n");
    std::iter::once(head.to_owned()).chain(lines).collect()
}

fn paper(paper: PaperName) -> &'static str {
    match paper {
        PaperName::A4 => "A4",
        PaperName::Letter => "Letter",
    }
}

fn units(units: UnitsName) -> &'static str {
    match units {
        UnitsName::Metric => "metric",
        UnitsName::Imperial => "imperial",
    }
}

/// The name as an id: its ASCII letters and digits, with hyphens between words.
fn id(name: &str) -> String {
    let words: Vec<String> = name
        .split(|letter: char| !letter.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_ascii_lowercase)
        .collect();
    let id = words.join("-");
    if why_no_id(&id).is_none() { id } else { "our-club".to_owned() }
}

/// The name as a text of YAML, whatever is in it.
fn quoted(name: &str) -> String {
    // A JSON text is a double-quoted YAML text (YAML 1.2.2, section 1.2).
    serde_json::Value::from(name).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::terminal::Colour;

    fn of(name: &str) -> Club {
        Club { name: name.to_owned(), paper: PaperName::Letter, units: UnitsName::Imperial }
    }

    #[test]
    fn what_is_no_packed_folder_gives_no_files() {
        let one = [1, 0, 0, 0, b'a', 2, 0, 0, 0, b'b', b'c'];
        assert_eq!(unpacked(&one), Some(BTreeMap::from([("a".to_owned(), b"bc".to_vec())])));
        assert!((1..one.len()).all(|end| unpacked(&one[..end]).is_none()), "cut short anywhere");
        for none in [&b""[..], b"no folder"] {
            assert!(Trade::packed(none).files().is_empty());
        }
    }

    const OURS: &str = "handbook: n\ntitle: N\nedition: E\nunits: metric\npaper: A4\naddress: https://n.example\n\
                        pictures:\n  - picture: tip\n    file: pictures/tip.svg\n";

    #[test]
    fn the_handbooks_file_becomes_the_clubs() {
        let text = of_the_club("handbook.yaml", OURS, &of("St. Éloi: \"Lames\" #1"));
        let read: serde_yaml::Value = serde_yaml::from_str(&text).expect("YAML");
        let said = |key: &str| read[key].as_str().map(str::to_owned);
        assert_eq!(said("title").as_deref(), Some("St. Éloi: \"Lames\" #1"));
        assert_eq!(said("handbook").as_deref(), Some("st-loi-lames-1"));
        assert_eq!((said("paper").as_deref(), said("units").as_deref()), (Some("Letter"), Some("imperial")));
        assert_eq!(said("address"), None, "the demo's address is not the club's");
        assert_eq!(read["pictures"][0]["file"].as_str(), Some("whole/pictures/tip.svg"));
    }

    #[test]
    fn a_name_without_ascii_letters_still_has_an_id() {
        assert_eq!(id("剣道"), "our-club");
        assert_eq!(id("NUL"), "our-club");
        assert_eq!(id("Lower  Combe F.C."), "lower-combe-f-c");
    }

    #[test]
    fn who_sits_at_a_terminal_is_asked_and_enter_takes_the_usual() {
        let job = BeginJob { folder: None, guide: None, whole: true, club: None, paper: None, units: None };
        let mut terminal =
            Terminal { out: Box::new(std::io::sink()), err: Box::new(std::io::sink()), colour: Colour::Plain };
        let start = Club { name: String::new(), paper: PaperName::A4, units: UnitsName::Metric };
        let mut answers = |text: &str| asked(&job, start.clone(), &mut text.as_bytes(), &mut terminal);
        assert_eq!(answers("Combe\nletter\nimperial\n"), Ok(of("Combe")));
        assert_eq!(answers("Combe\n\n\n"), Ok(Club { name: "Combe".to_owned(), ..start.clone() }));
        assert!(answers("").and_then(sound).is_err());
    }

    #[test]
    fn an_answer_that_is_no_choice_is_asked_for_again_three_times_in_all() {
        let job = BeginJob { folder: None, guide: None, whole: true, club: None, paper: None, units: None };
        let mut terminal =
            Terminal { out: Box::new(std::io::sink()), err: Box::new(std::io::sink()), colour: Colour::Plain };
        let start = Club { name: String::new(), paper: PaperName::A4, units: UnitsName::Metric };
        let mut answers = |text: &str| asked(&job, start.clone(), &mut text.as_bytes(), &mut terminal);
        assert_eq!(answers("Combe\nA5\nLetter\nletter\ninches\nimperial\n"), Ok(of("Combe")));
        let given_up = answers("Combe\nA5\nA3\nB4\nLetter\n").expect_err("three answers are no choice");
        assert!(given_up.contains("--paper a4 or --paper letter"), "{given_up}");
    }
}
