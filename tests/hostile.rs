//! Guides that somebody made to do harm: a pack is read, proofed and refused, and nothing outside its folder is read or written.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::proof::{Code, Finding, proof};
use coquille::source::{Folder, read};
use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

/// A sound handbook in the folder `guides` of a folder of its own; what is put there besides is what a test is about.
struct Club {
    folder: tempfile::TempDir,
}

impl Club {
    fn new() -> Club {
        let club = Club { folder: tempfile::tempdir().unwrap() };
        let handbook = "handbook: club\ntitle: A club\nedition: Autumn\nlanguage: en\ncaution: Ask.\nkit: [foil]\n";
        club.put("guides/handbook.yaml", handbook);
        club.put("guides/theirs/pack.yaml", "pack: theirs\ntitle: Theirs\nby: Combe\nlicence: CC0\n");
        assert_eq!(club.found(), []);
        club
    }

    fn path(&self, name: &str) -> std::path::PathBuf {
        self.folder.path().join(name)
    }

    fn put(&self, name: &str, text: impl AsRef<[u8]>) {
        fs::create_dir_all(self.path(name).parent().unwrap()).unwrap();
        fs::write(self.path(name), text).unwrap();
    }

    /// A job of the pack that shows a picture and says something.
    fn job(&self, file: &str, says: &str) {
        let text = format!(
            "procedure: polish\ntitle: Polish it\nkit: foil\nfor: '{says}'\nhands-on: 5\n\
             steps: [{{do: Polish it., picture: tip}}]\npictures: [{{picture: tip, file: '{file}', alt: The tip.}}]\n"
        );
        self.put("guides/theirs/polish.yaml", text);
    }

    fn read(&self) -> Folder {
        read(&self.path("guides")).unwrap()
    }

    fn found(&self) -> Vec<Finding> {
        proof(&self.read()).findings
    }

    fn codes(&self) -> Vec<Code> {
        self.found().into_iter().map(|finding| finding.code).collect()
    }

    /// What `bind` says; the handbook must not be there afterwards.
    fn refused(&self) -> String {
        let (said, code) = self.run(&["bind", "guides"], "");
        assert_eq!((code, self.path("site").exists()), (Some(1), false), "{said}");
        said
    }

    fn run(&self, args: &[&str], typed: &str) -> (String, Option<i32>) {
        let mut command = Command::new(env!("CARGO_BIN_EXE_coquille"));
        command.args(args).current_dir(self.folder.path());
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn().unwrap();
        child.stdin.take().unwrap().write_all(typed.as_bytes()).unwrap();
        let told = child.wait_with_output().unwrap();
        (String::from_utf8(told.stdout).unwrap(), told.status.code())
    }
}

const DRAWING: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 4 4\"><path d=\"M0 0h4\"/></svg>";

#[test]
fn the_pack_to_begin_with_is_sound() {
    let club = Club::new();
    club.job("pictures/tip.svg", "Looks.");
    club.put("guides/theirs/pictures/tip.svg", DRAWING);
    assert_eq!(club.found(), []);
}

#[test]
fn a_picture_of_a_pack_is_never_taken_from_outside() {
    for (there, named) in [
        ("secret.svg", "../secret.svg"),
        ("secret.svg", "../../secret.svg"),
        ("secret.svg", "pictures/../../../secret.svg"),
        ("guides/theirs/tip.svg", "..\\theirs\\tip.svg"),
    ] {
        let club = Club::new();
        club.put(there, DRAWING);
        club.job(named, "Looks.");
        assert_eq!(club.codes(), [Code::PictureOutside], "{named}");
        club.refused();
    }
    let club = Club::new();
    club.put("secret.svg", DRAWING);
    club.job(club.path("secret.svg").to_str().unwrap(), "Looks.");
    assert_eq!(club.codes(), [Code::PictureOutside], "a path from the root");
}

#[test]
fn a_packs_name_is_no_way_out_of_the_folder_not_even_when_files_are_written_for_it() {
    for name in ["../../evil", "a/../../../evil", "..", "/tmp/evil", "C:evil", "NUL"] {
        let club = Club::new();
        club.put("guides/theirs/pack.yaml", format!("pack: '{name}'\ntitle: Theirs\nby: Combe\nlicence: CC0\n"));
        let job =
            "procedure: oil\ntitle: Oil\nkit: foil\nfor: It.\nhands-on: 5\nneeds: {parts: ring}\nsteps: {do: Oil.}\n";
        club.put("guides/theirs/oil.yaml", job);
        assert!(club.codes().contains(&Code::BadId), "{name}");
        assert_eq!(proof(&club.read()).mends, [], "{name}");
        let before = names(club.folder.path());
        club.run(&["proof", "--mend", "guides"], "yes\n");
        assert_eq!(names(club.folder.path()), before, "{name}");
    }
}

fn names(folder: &Path) -> Vec<std::path::PathBuf> {
    walkdir::WalkDir::new(folder).sort_by_file_name().into_iter().map(|entry| entry.unwrap().into_path()).collect()
}

#[cfg(unix)]
#[test]
fn a_link_in_a_pack_is_followed_neither_to_a_file_nor_to_a_folder() {
    use std::os::unix::fs::symlink;
    let club = Club::new();
    club.put("outside/tip.svg", DRAWING);
    club.put("outside/secret.yaml", "words: secret\ntitle: Secret\nentries: {word: secret, says: It.}\n");
    fs::create_dir(club.path("guides/theirs/pictures")).unwrap();
    symlink(club.path("outside/tip.svg"), club.path("guides/theirs/pictures/tip.svg")).unwrap();
    symlink(club.path("outside/secret.yaml"), club.path("guides/theirs/secret.yaml")).unwrap();
    symlink(club.path("outside"), club.path("guides/theirs/more")).unwrap();
    club.job("pictures/tip.svg", "Looks.");
    assert_eq!(club.codes(), [Code::MissingPicture]);
    assert!(club.read().texts.iter().all(|(_, text)| !text.name.contains("secret")));
    club.refused();
}

#[test]
fn a_text_of_a_pack_links_nowhere_but_to_guides_and_the_open_net() {
    for (link, code) in [
        ("[read](javascript:alert(1))", Code::RefusedLink),
        ("[read](data:text/html,x)", Code::RefusedLink),
        ("[read](file:///etc/passwd)", Code::RefusedLink),
        ("[read](../../../etc/passwd)", Code::RefusedLink),
        ("![read](https://example.org/pixel.png)", Code::RefusedLink),
        ("<script>alert(1)</script>", Code::RawHtml),
    ] {
        let club = Club::new();
        club.job("pictures/tip.svg", link);
        club.put("guides/theirs/pictures/tip.svg", DRAWING);
        assert_eq!(club.codes(), [code], "{link}");
    }
}

#[test]
fn a_drawing_with_a_script_is_refused_and_none_of_it_is_written() {
    for inside in [
        "<script>alert(1)</script>",
        "<path onclick='alert(1)'/>",
        "<image href='https://example.org/pixel.png'/>",
        "<foreignObject><p>x</p></foreignObject>",
    ] {
        let club = Club::new();
        club.job("pictures/tip.svg", "Looks.");
        club.put("guides/theirs/pictures/tip.svg", DRAWING.replace("<path d=\"M0 0h4\"/>", inside));
        assert_eq!(club.codes(), [Code::UnsafeSvg], "{inside}");
        club.refused();
    }
}

/// A PNG that says it is of this size, with a pixel or two in it (ISO/IEC 15948).
fn png(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n".to_vec();
    let head = [&width.to_be_bytes()[..], &height.to_be_bytes()[..], &[8, 2, 0, 0, 0]].concat();
    for (kind, body) in [(b"IHDR", &head[..]), (b"IDAT", b"\x78\x9c\x03\0\0\0\0\x01"), (b"IEND", b"")] {
        bytes.extend(u32::try_from(body.len()).unwrap().to_be_bytes());
        let summed = [&kind[..], body].concat();
        bytes.extend(&summed);
        bytes.extend(crc(&summed).to_be_bytes());
    }
    bytes
}

/// The checksum of a PNG's chunk (ISO/IEC 15948, annex D).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(*byte), |sum, _| if sum & 1 == 1 { 0xedb8_8320 ^ (sum >> 1) } else { sum >> 1 })
    })
}

#[test]
fn a_picture_of_fifty_thousand_by_fifty_thousand_is_refused_by_its_head() {
    let club = Club::new();
    club.job("pictures/tip.png", "Looks.");
    club.put("guides/theirs/pictures/tip.png", png(50_000, 50_000));
    let found = club.found();
    assert_eq!(found.iter().map(|finding| finding.code).collect::<Vec<_>>(), [Code::PictureVast]);
    assert!(found[0].message.contains("50"), "{}", found[0].message);
    club.refused();
}

#[test]
fn a_file_of_two_gigabytes_is_never_read_into_memory() {
    let club = Club::new();
    club.job("pictures/tip.jpg", "Looks.");
    for name in ["guides/theirs/pictures/tip.jpg", "guides/theirs/long.yaml"] {
        club.put(name, "");
        // Nothing but holes: it takes no room on the disk.
        fs::File::options().write(true).open(club.path(name)).unwrap().set_len(2 << 30).unwrap();
    }
    let read = club.read();
    assert_eq!(read.others["theirs/pictures/tip.jpg"].len(), 0);
    assert!(read.texts.iter().all(|(_, text)| text.text.len() < 1000));
    let mut codes = club.codes();
    codes.sort();
    assert_eq!(codes, [Code::TooLarge, Code::PictureKind]);
    club.refused();
}

#[cfg(target_os = "linux")]
#[test]
fn files_whose_names_differ_in_case_or_in_unicode_form_only_are_refused() {
    for (one, other) in [("pictures/Tip.svg", "pictures/tip.svg"), ("pictures/e\u{301}.svg", "pictures/\u{e9}.svg")] {
        let club = Club::new();
        club.job(other, "Looks.");
        club.put(&format!("guides/theirs/{one}"), DRAWING);
        club.put(&format!("guides/theirs/{other}"), DRAWING);
        assert_eq!(club.codes(), [Code::NamesAlike], "{one}");
        club.refused();
    }
}

#[test]
fn circuits_that_use_each_other_without_end_are_refused_before_they_are_all_made() {
    let club = Club::new();
    for level in 0..5 {
        let uses: String = (0..60).map(|at| format!("  - {{use: level-{}, as: p{at}}}\n", level + 1)).collect();
        let uses = if level < 4 { format!("uses:\n{uses}") } else { String::new() };
        let text = format!(
            "circuit: level-{level}\ntitle: Level {level}\nkit: foil\n{uses}points: [{{point: a, title: A}}, {{point: b, title: B}}]\n\
             pieces: [{{piece: wire, title: Wire, from: a, to: b, ohms: 1}}]\n"
        );
        club.put(&format!("guides/theirs/level-{level}.yaml"), text);
    }
    let said: Vec<String> =
        proof(&read(&club.path("guides")).unwrap()).findings.into_iter().map(|found| found.message).collect();
    let refused = said.iter().any(|message| message.contains("is made of more than 100 circuits"));
    assert!(refused, "{:?}", said.first());
}
