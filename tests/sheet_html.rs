//! `coquille sheet` as a person uses it, without PDF: one HTML file, numbers printed in, foreign files left alone.

use std::path::Path;
use std::process::{Command, Output};

fn coquille(folder: &Path, args: &[&str]) -> Output {
    let guides = Path::new(env!("CARGO_MANIFEST_DIR")).join("guides");
    let mut command = Command::new(env!("CARGO_BIN_EXE_coquille"));
    command.current_dir(folder).arg("sheet").args(args).arg("--in").arg(guides);
    command.output().expect("coquille can be run")
}

fn told(done: &Output) -> String {
    String::from_utf8_lossy(&done.stderr).into_owned()
}

fn written(folder: &Path, name: &str) -> String {
    std::fs::read_to_string(folder.join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

#[test]
fn a_sheet_is_one_file_that_needs_nothing_beside_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let done = coquille(folder.path(), &["rewire-foil", "--html"]);
    assert_eq!(done.status.code(), Some(0), "{}", told(&done));
    let html = written(folder.path(), "rewire-foil.html");
    assert!(html.contains("Rewire a foil blade") && html.contains("size: A4"));
    for outside in ["<link", "<script", "src=", "url(http"] {
        assert!(!html.contains(outside), "{outside}");
    }
}

#[test]
fn numbers_make_a_sheet_each_and_a_whole_bag_takes_them_as_rows() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["foil-before-an-event", "--for", "F1..F3,F20", "--paper", "letter", "-o", "foils.html"];
    assert!(coquille(folder.path(), &args).status.success());
    let html = written(folder.path(), "foils.html");
    assert_eq!(html.matches("<article class=\"sheet").count(), 4);
    for number in ["F1", "F2", "F3", "F20"] {
        assert_eq!(html.matches(&format!("<dd>{number}</dd>")).count(), 1, "{number}");
    }
    assert!(html.contains("size: letter"));

    assert!(coquille(folder.path(), &["foils-in-a-row", "--for", "F1..F3", "-o", "bag.html"]).status.success());
    let html = written(folder.path(), "bag.html");
    assert_eq!(html.matches("<article class=\"sheet").count(), 1);
    assert_eq!(html.matches("<th scope=\"row\">F").count(), 3);
}

#[test]
fn a_foreign_file_is_never_written_over_and_one_of_ours_is() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("re-tape-foil.html"), "holiday plans").expect("a file");
    let done = coquille(folder.path(), &["re-tape-foil", "--html"]);
    assert_eq!(done.status.code(), Some(2));
    assert!(told(&done).contains("is not from this program and stays"), "{}", told(&done));
    assert_eq!(written(folder.path(), "re-tape-foil.html"), "holiday plans");
    // What browsers call a file that is still coming.
    std::fs::write(folder.path().join("tape.html.part"), "half a film").expect("a file");
    for _ in 0..2 {
        assert!(coquille(folder.path(), &["re-tape-foil", "-o", "tape.html"]).status.success());
    }
    assert_eq!(written(folder.path(), "tape.html.part"), "half a film");
    assert_eq!(std::fs::read_dir(folder.path()).expect("a folder").count(), 3, "no draft is left");
}

#[test]
fn what_has_no_sheet_is_said_with_the_nearest_that_has() {
    let folder = tempfile::tempdir().expect("a folder");
    let said = |args: &[&str]| {
        let done = coquille(folder.path(), args);
        assert_eq!(done.status.code(), Some(2), "{args:?}");
        told(&done).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert!(said(&["rewire-foyl", "--html"]).contains("did you mean `rewire-foil`?"));
    assert!(said(&["foil-bout", "--html"]).contains("has no sheet"));
    assert!(said(&["rewire-foil", "-o", "sheet.txt"]).contains("PDF or HTML"));
    assert!(said(&["rewire-foil", "--html", "--for", "F9..F1"]).contains("no range of numbers"));
}

#[test]
fn a_kit_list_of_several_guides_sums_what_they_need() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["--kit", "rewire-foil", "fit-foil-tip", "--for", "F1..F3", "-o", "kit.html"];
    assert!(coquille(folder.path(), &args).status.success());
    let html = written(folder.path(), "kit.html");
    assert!(html.contains("For 3 pieces"));
    // Ten centimetres of sleeve a foil.
    assert!(html.contains("30 cm"), "{html}");
}

#[cfg(not(feature = "pdf"))]
#[test]
fn without_pdf_the_program_says_how_to_get_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let done = coquille(folder.path(), &["rewire-foil"]);
    assert_eq!(done.status.code(), Some(2));
    assert!(told(&done).contains("--features pdf") && told(&done).contains("--html"), "{}", told(&done));
    assert!(!folder.path().join("rewire-foil.pdf").exists());
}

#[cfg(feature = "pdf")]
#[test]
fn without_a_name_the_sheet_is_a_pdf_of_the_guides_name() {
    let folder = tempfile::tempdir().expect("a folder");
    for _ in 0..2 {
        let done = coquille(folder.path(), &["re-tape-foil"]);
        assert_eq!(done.status.code(), Some(0), "{}", told(&done));
    }
    let bytes = std::fs::read(folder.path().join("re-tape-foil.pdf")).expect("a sheet");
    assert!(bytes.starts_with(b"%PDF-1.7"));
}

#[test]
fn a_queue_sheet_goes_instrument_by_instrument_and_ends_with_a_slip() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(coquille(folder.path(), &["weapon-control-foil", "-o", "queue.html"]).status.success());
    let html = written(folder.path(), "queue.html");
    let (lines, slip) = html.split_once("<section class=\"slip\">").expect("a slip");
    let headings: Vec<&str> =
        lines.split("<h2>").skip(1).map(|after| after.split("</h2>").next().unwrap_or("")).collect();
    let mut once = headings.clone();
    once.dedup();
    once.sort_unstable();
    once.dedup();
    assert_eq!(once.len(), headings.len(), "no instrument comes twice: {headings:?}");
    assert_eq!(headings.first(), Some(&"Meter"));
    // Three foils and two cords: a box for each.
    assert!(lines.contains("no. 3 passed") && lines.contains("no. 2 passed") && !lines.contains("no. 4 passed"));
    for wanted in ["2\u{a0}Ω", "How to mend it:", "Make a new mask wire"] {
        assert!(slip.contains(wanted), "{wanted}: {slip}");
    }
}

/// The index of what failed: each guide with the numbers of the items that lead to it.
fn index(html: &str) -> Vec<(String, Vec<String>)> {
    let (_, table) = html.split_once("<table class=\"bag failures\">").expect("an index");
    let inside = |text: &str, from: &str, to: &str| -> Vec<String> {
        text.split(from).skip(1).filter_map(|after| Some(after.split_once(to)?.0.to_owned())).collect()
    };
    let rows = table.split("<tr><th scope=\"row\">").skip(1);
    rows.map(|row| (row.split('<').next().unwrap_or("").to_owned(), inside(row, "<p><b>", "</b>"))).collect()
}

#[test]
fn a_queue_ends_with_one_index_of_what_failed_however_many_fencers_there_are() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["weapon-control-foil", "--for", "1..3", "-o", "queue.html"];
    assert!(coquille(folder.path(), &args).status.success());
    let html = written(folder.path(), "queue.html");
    assert_eq!(html.matches("<section class=\"slip\">").count(), 3);
    assert_eq!(html.matches("<table class=\"bag failures\">").count(), 1);
    let (before, last) = html.rsplit_once("<article class=\"sheet").expect("sheets");
    assert!(last.contains("bag failures") && !before.contains("bag failures"), "it comes last");
    assert!(last.contains("with the most strokes is what to teach next"), "{last}");
    // What the slip names as the cure of each item, in the order of the items.
    let slip = html.split("<section class=\"slip\">").nth(1).and_then(|slip| slip.split("</section>").next());
    let cures = slip.unwrap_or("").split("How to mend it: ").skip(1);
    let cures: Vec<String> = cures.filter_map(|after| Some(after.split_once("</span>")?.0.to_owned())).collect();
    let led: Vec<(String, Vec<String>)> =
        cures.into_iter().zip(1..).map(|(guide, number): (String, u32)| (guide, vec![number.to_string()])).collect();
    assert_eq!(index(&html), led, "each item of this list has a guide of its own");
}

#[test]
fn items_with_the_same_guide_share_a_row_of_the_index_and_those_without_one_come_last() {
    let folder = tempfile::tempdir().expect("a folder");
    let guides = folder.path().join("guides");
    let run = |args: &[&str]| {
        let done = Command::new(env!("CARGO_BIN_EXE_coquille")).current_dir(folder.path()).args(args).output();
        let done = done.expect("coquille can be run");
        assert!(done.status.success(), "{}", told(&done));
    };
    run(&["begin", "guides"]);
    let file = guides.join("checks/cords-before-training.yaml");
    let text = std::fs::read_to_string(&file).expect("the checklist");
    let queue = text
        .replace("minutes: 3\n", "minutes: 3\nsheet: queue\n")
        .replace("done: ", "  - {item: clip, do: Clip grips., if not: cord-flickers}\ndone: ");
    std::fs::write(&file, queue).expect("the checklist can be written");
    run(&["sheet", "cords-before-training", "-o", "queue.html"]);
    let html = written(folder.path(), "queue.html");
    assert_eq!(html.matches("<article class=\"sheet").count(), 2, "a sheet with blanks, and the index");
    let rows = index(&html);
    let numbers: Vec<Vec<&str>> = rows.iter().map(|(_, items)| items.iter().map(String::as_str).collect()).collect();
    assert_eq!(numbers, [vec!["1", "4"], vec!["3"], vec!["2"]], "{rows:?}");
    assert_eq!(rows.last().map(|(guide, _)| guide.as_str()), Some("No guide yet: write one"));
}

/// The numbers that a line's answers lead on to, and how many answers it has.
fn leads(line: &str) -> (Vec<usize>, usize) {
    let answers = line.split("<div class=\"boxes answered\">").nth(1).unwrap_or("");
    let next = answers.split("→ question ").skip(1).filter_map(|after| after.split('<').next()?.trim().parse().ok());
    (next.collect(), answers.matches("<span class=\"box\">").count())
}

#[test]
fn every_answer_on_a_fault_sheet_leads_on_or_says_what_it_is_and_what_to_do() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(coquille(folder.path(), &["foil-stays-lit", "-o", "fault.html"]).status.success());
    let html = written(folder.path(), "fault.html");
    let lines: Vec<&str> = html.split("<li>").filter(|line| line.contains("<div class=\"boxes answered\">")).collect();
    assert!(lines.len() > 2);
    for (number, line) in (1..).zip(&lines) {
        assert!(line.contains(&format!("<span class=\"line-number\">{number}</span>")), "{line}");
        let (next, answers) = leads(line);
        assert!(next.iter().all(|next| *next > number && *next <= lines.len()), "{number}: {next:?}");
        let ends = line.matches("It is: ").count() + line.matches("Not on this list: ").count();
        assert!(answers > 1 && next.len() + ends >= answers, "{number}: {next:?}, {ends} of {answers}");
    }
    // A tip that a clean one replaced is not asked for again: this answer skips what can no longer tell anything.
    let (first, _) = leads(lines.first().expect("a first question"));
    assert!(first.contains(&2) && first.iter().any(|next| *next > 2), "{first:?}");
}
