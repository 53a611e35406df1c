//! Bench sheets as PDF, measured in the file itself: sound, tagged, embedded, legible, whole steps, nothing over the margin.
//!
//! Sizes: NASA CR-177605 (*On the Typography of Flight-Deck Documentation*, 1992) and CAA CAP 676 (*Guidance on the Design, Presentation
//! and Use of Emergency and Abnormal Checklists*) for x-height, leading, case and face; both read from memory. PDF/UA-1: ISO 14289-1.

#![cfg(feature = "pdf")]
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::handbook::page::{Body, Page, SheetOf};
use coquille::handbook::{Handbook, kit_sheet, lay_out};
use coquille::model::Paper;
use coquille::proof::proof;
use coquille::render::pdf::{Made, Printer};
use coquille::source::read;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;

/// A millimetre in points.
const MM: f64 = 72.0 / 25.4;

static CLUB: LazyLock<Handbook> = LazyLock::new(|| handbook(Path::new("guides")));

fn handbook(guides: &Path) -> Handbook {
    let folder = read(guides).unwrap();
    let proofed = proof(&folder);
    assert_eq!(proofed.errors(), 0, "{:?}", proofed.findings);
    lay_out(&proofed, &folder)
}

fn sheet<'h>(handbook: &'h Handbook, id: &str) -> &'h Page {
    let address = format!("sheets/{id}.html");
    handbook.pages.iter().find(|page| page.address == address).unwrap()
}

fn printed(handbook: &Handbook, pages: &[&Page], paper: Paper, numbers: &[&str]) -> Made {
    let numbers: Vec<String> = numbers.iter().map(|number| (*number).to_owned()).collect();
    Printer::of(handbook).print(pages, paper, &numbers).unwrap()
}

/// The sheet of each kind, as a file in a folder of its own.
struct Filed {
    _folder: tempfile::TempDir,
    path: PathBuf,
}

fn filed(made: &Made) -> Filed {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.pdf");
    std::fs::write(&path, &made.bytes).unwrap();
    Filed { _folder: folder, path }
}

/// A job, a fault, a checklist, a bag, a queue.
const KINDS: [&str; 5] =
    ["rewire-foil", "foil-stays-lit", "foil-before-an-event", "foils-in-a-row", "weapon-control-foil"];

static FILED: LazyLock<Vec<(&'static str, Filed)>> = LazyLock::new(|| {
    KINDS.iter().map(|id| (*id, filed(&printed(&CLUB, &[sheet(&CLUB, id)], Paper::A4, &[])))).collect()
});

/// What a tool says; it must succeed.
fn said(tool: &str, args: &[&str], file: &Path) -> String {
    let done = Command::new(tool).args(args).arg(file).output().unwrap();
    let words = String::from_utf8_lossy(&done.stdout).into_owned();
    assert!(done.status.success(), "{tool}: {words}{}", String::from_utf8_lossy(&done.stderr));
    words
}

/// The text of every page, in reading order.
fn texts(file: &Path) -> Vec<String> {
    let done = Command::new("pdftotext").args(["-raw", "-enc", "UTF-8"]).arg(file).arg("-").output().unwrap();
    assert!(done.status.success());
    let text = String::from_utf8(done.stdout).unwrap();
    let mut pages: Vec<String> = text.split('\u{c}').map(str::to_owned).collect();
    assert_eq!(pages.pop().as_deref(), Some(""), "each page ends with a form feed");
    pages
}

/// Letters and figures alone: what a line says, wherever it is broken.
fn letters(text: &str) -> String {
    text.chars().filter(|letter| letter.is_alphanumeric()).collect()
}

/// A word and its box in points, from the top left.
struct Word {
    text: String,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
    page: usize,
}

fn words(file: &Path) -> Vec<Word> {
    let done = Command::new("pdftotext").arg("-bbox").arg(file).arg("-").output().unwrap();
    let text = String::from_utf8_lossy(&done.stdout).into_owned();
    let mut page = 0;
    let mut words = Vec::new();
    for line in text.lines() {
        if line.contains("<page ") {
            page += 1;
        }
        let Some(at) = line.find("<word ") else { continue };
        let number = |name: &str| -> f64 {
            let from = line.find(&format!("{name}=\"")).unwrap() + name.len() + 2;
            line[from..].split('"').next().unwrap().parse().unwrap()
        };
        let inner = line[at..].split_once('>').unwrap().1.split("</word>").next().unwrap();
        words.push(Word {
            text: inner.to_owned(),
            left: number("xMin"),
            top: number("yMin"),
            right: number("xMax"),
            bottom: number("yMax"),
            page,
        });
    }
    assert!(!words.is_empty());
    words
}

/// A page as grey dots.
struct Dots {
    width: usize,
    grey: Vec<u8>,
    per_point: f64,
}

impl Dots {
    fn of(file: &Path, page: usize, dpi: u32) -> Dots {
        let (number, dpi_text) = (page.to_string(), dpi.to_string());
        let done = Command::new("pdftoppm")
            .args(["-gray", "-r", &dpi_text, "-f", &number, "-l", &number])
            .arg(file)
            .output()
            .unwrap();
        assert!(done.status.success());
        // P5, width, height, 255, then a byte a dot.
        let mut at = 0;
        let mut field = || {
            let from = at;
            while !done.stdout[at].is_ascii_whitespace() {
                at += 1;
            }
            at += 1;
            String::from_utf8_lossy(&done.stdout[from..at - 1]).into_owned()
        };
        assert_eq!(field(), "P5");
        let (width, _height, most): (usize, usize, String) =
            (field().parse().unwrap(), field().parse().unwrap(), field());
        assert_eq!(most, "255");
        Dots { width, grey: done.stdout[at..].to_vec(), per_point: f64::from(dpi) / 72.0 }
    }

    /// How many rows inside a box have ink, in points.
    fn inked_height(&self, word: &Word) -> f64 {
        let dot = |points: f64| (points * self.per_point) as usize;
        let inked = (dot(word.top)..dot(word.bottom))
            .filter(|row| (dot(word.left)..dot(word.right)).any(|column| self.grey[row * self.width + column] < 128));
        inked.count() as f64 / self.per_point
    }
}

/// A small handbook with one job whose texts a test may choose.
fn with_job(job: &str) -> Handbook {
    let folder = tempfile::tempdir().unwrap();
    for entry in std::fs::read_dir("tests/proof/base").unwrap() {
        let path = entry.unwrap().path();
        std::fs::copy(&path, folder.path().join(path.file_name().unwrap())).unwrap();
    }
    std::fs::write(folder.path().join("job.yaml"), job).unwrap();
    handbook(folder.path())
}

#[test]
fn the_same_sheet_is_the_same_bytes() {
    let once = printed(&CLUB, &[sheet(&CLUB, "re-tape-foil")], Paper::A4, &["F1"]);
    printed(&CLUB, &[sheet(&CLUB, "clean-cord-pins")], Paper::Letter, &[]);
    let again = printed(&CLUB, &[sheet(&CLUB, "re-tape-foil")], Paper::A4, &["F1"]);
    assert!(once.bytes == again.bytes);
    let other = printed(&CLUB, &[sheet(&CLUB, "re-tape-foil")], Paper::A4, &["F2"]);
    assert!(once.bytes != other.bytes, "or nothing would be told by that");
}

#[test]
fn a_letter_without_a_face_is_named() {
    let made =
        with_job("procedure: job\ntitle: A job\nkit: foil\nfor: It.\nhands-on: 5\nsteps: [{do: \"Set 剣 up.\"}]\n");
    let set = printed(&made, &[sheet(&made, "job")], Paper::A4, &[]);
    assert_eq!(set.without_letter.into_iter().collect::<String>(), "剣");
    assert!(printed(&CLUB, &[sheet(&CLUB, "re-tape-foil")], Paper::A4, &[]).without_letter.is_empty());
}

#[test]
#[ignore = "needs qpdf"]
fn every_kind_of_sheet_is_a_sound_pdf() {
    for (id, file) in FILED.iter() {
        let words = said("qpdf", &["--check"], &file.path);
        assert!(words.contains("No syntax or stream encoding errors found"), "{id}: {words}");
    }
}

#[test]
#[ignore = "needs poppler-utils and qpdf"]
fn every_kind_of_sheet_claims_pdf_ua_and_has_what_that_asks_for() {
    for (id, file) in FILED.iter() {
        let info = said("pdfinfo", &[], &file.path);
        let line = |name: &str| info.lines().find(|line| line.starts_with(name)).unwrap_or("").to_owned();
        assert!(line("Tagged:").ends_with("yes"), "{id}: {info}");
        assert!(line("Title:").contains(&sheet(&CLUB, id).title), "{id}: {info}");
        assert_eq!(line("CreationDate:"), "", "{id}: no clock in it");
        let metadata = said("pdfinfo", &["-meta"], &file.path);
        assert!(metadata.contains("pdfuaid:part") && metadata.contains(">1<"), "{id}: {metadata}");
        assert!(metadata.contains("en-GB"), "{id}: {metadata}");
        let tags = said("pdfinfo", &["-struct"], &file.path);
        assert!(tags.contains("Document") && tags.contains("H1") && tags.contains('P'), "{id}: {tags}");
        assert!(tags.contains("Figure"), "{id}: the QR code is a figure");
        let structure = said("qpdf", &["--json=1", "--json-key=objects"], &file.path);
        for key in ["\"/MarkInfo\"", "\"/StructTreeRoot\"", "\"/DisplayDocTitle\": true", "\"/Lang\"", "\"/Alt\""] {
            assert!(structure.contains(key), "{id} has no {key}");
        }
    }
}

#[test]
#[ignore = "needs poppler-utils"]
fn all_faces_are_embedded() {
    for (id, file) in FILED.iter() {
        let fonts = said("pdffonts", &[], &file.path);
        let rows: Vec<&str> = fonts.lines().skip(2).collect();
        assert!(rows.iter().any(|row| row.contains("AtkinsonHyperlegibleNext")), "{id}: {fonts}");
        for row in rows {
            // name, type, encoding, emb, sub, uni, object, ID
            let from_right: Vec<&str> = row.split_whitespace().rev().collect();
            assert_eq!(from_right[2..5], ["yes", "yes", "yes"], "{id}: {row}");
        }
    }
}

/// The lines of work of a sheet, as letters, in the order of the page data.
fn lines(page: &Page) -> Vec<String> {
    let Body::Sheet(sheet) = &page.body else { panic!("a sheet") };
    let said = |what: &coquille::handbook::page::Worded| what.short.clone().unwrap_or_else(|| what.full.clone());
    let lines: Vec<String> = match &sheet.of {
        SheetOf::Procedure(job) => job
            .steps
            .iter()
            .map(|step| {
                let subs: String = step.subs.iter().map(said).collect();
                said(&step.what) + &subs
            })
            .collect(),
        SheetOf::Symptom(guide) => guide.probes.iter().map(|probe| probe.ask.clone()).collect(),
        SheetOf::Checklist(list) | SheetOf::Rows(list) => {
            list.groups.iter().flat_map(|group| &group.items).map(|item| said(&item.what)).collect()
        }
        SheetOf::Queue(queue) => {
            queue.list.groups.iter().flat_map(|group| &group.items).map(|item| said(&item.what)).collect()
        }
        SheetOf::Kit(_) => Vec::new(),
    };
    // Links print their words alone.
    lines.iter().map(|line| letters(&without_addresses(line))).collect()
}

fn without_addresses(markdown: &str) -> String {
    let mut out = String::new();
    let mut rest = markdown;
    while let Some((before, after)) = rest.split_once("](") {
        out.push_str(before);
        rest = after.split_once(')').map_or("", |(_, after)| after);
    }
    out + rest
}

#[test]
#[ignore = "needs poppler-utils"]
fn every_line_stands_whole_on_one_page_in_the_order_of_the_guide() {
    for (id, file) in FILED.iter() {
        let pages: Vec<String> = texts(&file.path).iter().map(|page| letters(page)).collect();
        let mut place = (0, 0);
        for line in lines(sheet(&CLUB, id)) {
            let found = pages.iter().enumerate().skip(place.0).find_map(|(number, page)| {
                let from = if number == place.0 { place.1 } else { 0 };
                page[from..].find(&line).map(|at| (number, from + at + line.len()))
            });
            place = found.unwrap_or_else(|| panic!("{id}: `{line}` after {place:?} in {pages:#?}"));
        }
    }
}

#[test]
#[ignore = "needs poppler-utils"]
fn a_queue_ends_with_one_index_of_what_failed_however_many_fencers_there_are() {
    let page = sheet(&CLUB, "weapon-control-foil");
    let Body::Sheet(sheet) = &page.body else { panic!("a sheet") };
    let SheetOf::Queue(queue) = &sheet.of else { panic!("a queue") };
    for numbers in [&[][..], &["1", "2"]] {
        let file = filed(&printed(&CLUB, &[page], Paper::A4, numbers));
        let pages = texts(&file.path);
        let indexed: Vec<usize> =
            (0..pages.len()).filter(|at| letters(&pages[*at]).contains(&letters("with the most strokes"))).collect();
        assert_eq!(indexed, [pages.len() - 1], "one page, and the last: {pages:#?}");
        let last = letters(&pages[pages.len() - 1]);
        for row in &queue.failures {
            let guide = letters(&row.guide.as_ref().unwrap().title);
            assert!(last.contains(&guide), "{guide}: {last}");
        }
        assert!(last.contains("Page1of1"), "it counts its own pages: {last}");
    }
}

#[test]
#[ignore = "needs poppler-utils"]
fn the_x_height_of_a_step_is_at_least_two_and_a_half_millimetres() {
    let step = "xxxxxxxxx zzzzzzzzz ".repeat(12);
    let made =
        with_job(&format!("procedure: job\ntitle: A job\nkit: foil\nfor: It.\nhands-on: 5\nsteps: [{{do: {step}}}]\n"));
    let file = filed(&printed(&made, &[sheet(&made, "job")], Paper::A4, &[]));
    let (words, dots) = (words(&file.path), Dots::of(&file.path, 1, 600));
    let steps: Vec<&Word> = words.iter().filter(|word| word.text.starts_with("xxxx")).collect();
    assert!(steps.len() >= 12);
    let height = dots.inked_height(steps[0]) / MM;
    assert!((2.5..3.0).contains(&height), "{height} mm");
    // Leading: from one line to the next at least 1.25 of the size, 14.5 pt.
    let first = steps[0];
    let below = steps.iter().find(|word| word.top > first.top + 1.0).unwrap();
    let leading = below.top - first.top;
    assert!((18.0..20.0).contains(&leading), "{leading} pt");
}

/// The sides of all stroked rectangles of a page in millimetres, from the drawing that poppler makes of it.
fn rectangles(file: &Path) -> Vec<(f64, f64)> {
    let done = Command::new("pdftocairo").args(["-svg", "-f", "1", "-l", "1"]).arg(file).arg("-").output().unwrap();
    let svg = String::from_utf8_lossy(&done.stdout).into_owned();
    let mut sides = Vec::new();
    for path in svg.split("<path ").skip(1).filter(|path| path.contains("fill:none") && path.contains('Z')) {
        let d = path.split(" d=\"").nth(1).unwrap_or("").split('"').next().unwrap();
        let numbers: Vec<f64> = d.split_whitespace().filter_map(|part| part.parse().ok()).collect();
        if d.contains('C') || numbers.len() < 8 {
            continue;
        }
        let span = |first: usize| {
            let all = numbers.iter().skip(first).step_by(2);
            all.clone().fold(f64::MIN, |a, b| a.max(*b)) - all.fold(f64::MAX, |a, b| a.min(*b))
        };
        sides.push((span(0) / MM, span(1) / MM));
    }
    sides
}

#[test]
#[ignore = "needs poppler-utils"]
fn boxes_are_large_enough_for_a_pen_and_blanks_for_a_figure() {
    for (id, file) in FILED.iter().filter(|(id, _)| ["rewire-foil", "foil-before-an-event"].contains(id)) {
        let sides = rectangles(&file.path);
        let near = |wanted: (f64, f64)| {
            sides.iter().filter(|side| (side.0 - wanted.0).abs() < 0.05 && (side.1 - wanted.1).abs() < 0.05).count()
        };
        // From middle to middle of a line of 0.7 mm: 5.5 mm are free inside.
        assert!(near((6.2, 6.2)) >= 5, "{id}: {sides:?}");
        let small = sides.iter().find(|side| side.0 > 3.0 && side.0 < 6.1 && (side.0 - side.1).abs() < 0.1);
        assert_eq!(small, None, "{id}: a box that is too small");
    }
    let blanks = filed(&printed(&CLUB, &[sheet(&CLUB, "body-cord-check")], Paper::A4, &[]));
    assert!(rectangles(&blanks.path).iter().any(|side| (side.0 - 26.0).abs() < 0.05 && (side.1 - 9.0).abs() < 0.05));
}

const HOSTILE: &str = r##"procedure: job
title: "Rekordverdächtigtiefentladungsschutzschaltungsprüfgerätehandbuchverzeichnis #pagebreak() $x$"
kit: foil
for: It.
hands-on: 5
who: supervised
needs: {tools: [{id: pliers, quantity: "MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMM"}]}
safety: [{warning: "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW #read(\"/etc/passwd\")"}]
steps:
  - do: "#set page(margin: 0pt) [brackets] *stars* `code` $ math $ @ref label // no comment /* none */ \\ = heading"
  - do: "הרם את הסיף ובדוק את הנורה LED 500 g ואז כתוב את המספר. ارفع السيف واختبر المصباح ثم اكتب الرقم."
  - do: "MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMM"
    steps: ["https://club.example/a/very/long/address/that/nobody/would/want/to/type/but/somebody/pasted/into/a/guide.html"]
  - do: "LONG"
  - do: "Last."
"##;

#[test]
#[ignore = "needs poppler-utils and qpdf"]
fn hostile_text_stays_text_and_inside_the_margins() {
    // One step that no page can hold: it may be parted, but nothing of it may be lost.
    let long = "One word after the other fills the page. ".repeat(120);
    let made = with_job(&HOSTILE.replace("LONG", &long));
    for paper in [Paper::A4, Paper::Letter] {
        let file = filed(&printed(&made, &[sheet(&made, "job")], paper, &["F1"]));
        said("qpdf", &["--check"], &file.path);
        let (width, height) = if paper == Paper::A4 { (210.0, 297.0) } else { (215.9, 279.4) };
        for word in words(&file.path) {
            let (left, right) = (word.left / MM, word.right / MM);
            assert!(left >= 13.9 && right <= width - 13.9, "{paper:?}: `{}` from {left} to {right} mm", word.text);
            let (top, bottom) = (word.top / MM, word.bottom / MM);
            assert!(
                top >= 5.0 && bottom <= height - 12.0,
                "{paper:?}, page {}: `{}` {top} {bottom}",
                word.page,
                word.text
            );
        }
        let text = letters(&texts(&file.path).concat());
        assert!(text.contains("setpagemargin0ptbracketsstarscodemathreflabelnocommentnoneheading"), "{text}");
        assert!(text.contains("readetcpasswd") && !text.contains("root0"));
        // A page may end within a sentence, never within a word.
        let all = words(&file.path);
        for word in ["One", "word", "after", "other", "fills", "page."] {
            assert_eq!(all.iter().filter(|found| found.text == word).count(), 120, "{paper:?}: `{word}`");
        }
        assert!(text.contains("Last"));
    }
}

#[test]
#[ignore = "needs poppler-utils"]
fn every_number_has_a_sheet_that_starts_on_an_odd_page_and_counts_its_own() {
    let page = sheet(&CLUB, "foil-before-an-event");
    let pages = texts(&filed(&printed(&CLUB, &[page], Paper::A4, &["F1", "F2", "F3"])).path);
    let starts: Vec<usize> = (0..pages.len()).filter(|at| pages[*at].contains("Page 1 of ")).collect();
    assert_eq!(starts.len(), 3, "{pages:#?}");
    for (at, number) in starts.iter().zip(["F1", "F2", "F3"]) {
        assert_eq!(at % 2, 0, "page {} is a left-hand one", at + 1);
        assert!(
            pages[*at].lines().any(|line| line.trim() == number || line.trim().ends_with(number)),
            "{}",
            pages[*at]
        );
    }
    let of = pages[0].split("Page 1 of ").nth(1).unwrap().split_whitespace().next().unwrap();
    let own = starts[1] - starts[0];
    let own = if pages[starts[1] - 1].trim().is_empty() { own - 1 } else { own };
    assert_eq!(of, own.to_string());
}

#[test]
#[ignore = "needs poppler-utils"]
fn every_page_has_the_title_the_code_and_its_number() {
    for (id, file) in FILED.iter() {
        let (page, mut pages) = (sheet(&CLUB, id), texts(&file.path));
        // A page that is left empty before a right-hand one has no head.
        pages.retain(|text| !text.trim().is_empty());
        // The index after a queue counts its own pages.
        let index = usize::from(*id == "weapon-control-foil");
        let count = pages.len() - index;
        for (at, text) in pages.iter().enumerate() {
            let number = if at < count { format!("Page {} of {count}", at + 1) } else { "Page 1 of 1".to_owned() };
            assert!(text.contains(&number), "{id}: {text}");
            assert!(
                letters(text).contains(&page.code) && letters(text).contains(&letters(&page.title)),
                "{id}: {text}"
            );
        }
    }
}

#[test]
#[ignore = "needs poppler-utils and zbar-tools"]
fn the_qr_code_leads_to_the_sheets_address() {
    for (id, file) in FILED.iter() {
        let dots = file.path.with_extension("pgm");
        let done = Command::new("pdftoppm")
            .args(["-gray", "-r", "200", "-f", "1", "-l", "1", "-singlefile"])
            .arg(&file.path)
            .arg(file.path.with_extension(""))
            .status()
            .unwrap();
        assert!(done.success());
        let read = said("zbarimg", &["--quiet", "--raw"], &dots);
        assert_eq!(read.trim(), format!("https://ninebarrow.example/armoury/sheets/{id}.html"));
    }
}

#[test]
#[ignore = "needs poppler-utils"]
fn letter_paper_is_letter_paper() {
    let file = filed(&printed(&CLUB, &[sheet(&CLUB, "re-tape-foil")], Paper::Letter, &[]));
    assert!(said("pdfinfo", &[], &file.path).contains("612 x 792 pts (letter)"));
}

#[test]
#[ignore = "needs poppler-utils"]
fn a_kit_list_sums_parts_and_multiplies_them_by_the_pieces() {
    let folder = read(Path::new("guides")).unwrap();
    let page = kit_sheet(&proof(&folder), &folder, &["rewire-foil", "fit-foil-tip"], 3);
    let text = texts(&filed(&printed(&CLUB, &[&page], Paper::A4, &["F1", "F2", "F3"])).path).concat();
    // Rewiring takes one wire a foil and ten centimetres of sleeve.
    let flat = text.replace('\n', " ");
    assert!(flat.contains("30 cm"), "{text}");
    assert!(flat.contains("For 3 pieces"), "{text}");
}
