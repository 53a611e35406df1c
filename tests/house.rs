//! The house rules that a machine can hold: which stage may import which, how files begin and how long they are, the words of
//! findings, and that every word on a page comes from a message file that says no word too many.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod proof_support;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// The stages in the order in which the data goes through them. `reckoning` stands beside them: it imports none, and all may import it.
const STAGES: [&str; 7] = ["source", "model", "proof", "handbook", "render", "press", "cli"];

/// Longest file of the program, in lines; style asks for less.
const LONGEST: usize = 600;

/// Files that are longer than that, each with its reason.
const LONGER: [(&str, &str); 1] =
    [("src/handbook/page.rs", "the plain data of every page, one struct after the other")];

/// All files below a folder with this ending, with their texts.
fn files(folder: &str, ending: &str) -> Vec<(PathBuf, String)> {
    let all = walkdir::WalkDir::new(folder).sort_by_file_name().into_iter().map(|entry| entry.unwrap().into_path());
    let wanted = all.filter(|path| path.extension().is_some_and(|it| it == ending));
    let all: Vec<_> = wanted.map(|path| (path.clone(), std::fs::read_to_string(&path).unwrap())).collect();
    assert!(!all.is_empty(), "no .{ending} in {folder}");
    all
}

/// The stage that a file belongs to, if to any.
fn stage_of(path: &Path) -> Option<String> {
    let inside = path.strip_prefix("src").unwrap();
    let first = inside.components().next().unwrap().as_os_str().to_string_lossy().into_owned();
    inside.parent().filter(|parent| !parent.as_os_str().is_empty()).map(|_| first)
}

/// A file's code without the tests at its end.
fn without_tests(text: &str) -> &str {
    text.split("#[cfg(test)]\nmod tests {").next().unwrap()
}

/// The stages that a text names by `crate::`, comments and tests left out.
fn named_in(text: &str) -> BTreeSet<&str> {
    let code = without_tests(text);
    let lines = code.lines().filter(|line| !line.trim_start().starts_with("//"));
    let mut named = BTreeSet::new();
    for line in lines {
        for (at, mark) in line.match_indices("crate::") {
            let rest = &line[at + mark.len()..];
            let names =
                rest.strip_prefix('{').map_or_else(|| vec![rest], |inner| inner.split(',').map(str::trim).collect());
            named.extend(
                names.iter().filter_map(|name| name.split(|c: char| !c.is_ascii_lowercase() && c != '_').next()),
            );
        }
    }
    named
}

#[test]
fn a_stage_imports_only_stages_to_its_left() {
    let mut wrong = Vec::new();
    for (path, text) in files("src", "rs") {
        let Some(stage) = stage_of(&path) else { continue };
        let own = STAGES.iter().position(|known| *known == stage);
        for other in named_in(&text) {
            let there = STAGES.iter().position(|known| *known == other);
            let allowed = match (own, there) {
                _ if other == stage || other == "reckoning" => true,
                (Some(own), Some(there)) => there < own,
                _ => false,
            };
            if !allowed {
                wrong.push(format!("{} names crate::{other}", path.display()));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn every_file_says_what_it_is_for() {
    for (path, text) in files("src", "rs").into_iter().chain(files("tests", "rs")) {
        assert!(text.starts_with("//! "), "{}", path.display());
    }
}

#[test]
fn no_file_is_too_long() {
    for (path, text) in files("src", "rs") {
        let allowed = LONGER.iter().any(|(longer, _)| path == Path::new(longer));
        let lines = text.lines().count();
        assert!(allowed || lines <= LONGEST, "{} has {lines} lines", path.display());
        assert!(!allowed || lines > LONGEST, "{} is no exception any more", path.display());
    }
}

#[test]
fn nothing_is_unwrapped_and_nothing_is_left_to_do() {
    let marks = [".unwrap()", "todo!(", "unimplemented!(", "TODO", "FIXME", "dbg!("];
    for (path, text) in files("src", "rs").into_iter().filter(|(path, _)| !only_for_tests(path)) {
        let code = without_tests(&text);
        for mark in marks {
            assert!(!code.contains(mark), "{} has {mark}", path.display());
        }
    }
}

/// Whether a file is a module that is there for tests alone.
fn only_for_tests(path: &Path) -> bool {
    let name = path.file_stem().unwrap().to_string_lossy();
    let above = std::fs::read_to_string(path.with_file_name("mod.rs")).unwrap_or_default();
    above.contains(&format!("#[cfg(test)]\nmod {name};"))
}

#[test]
fn only_the_command_line_prints() {
    for (path, text) in files("src", "rs").into_iter().filter(|(path, _)| !path.starts_with("src/cli")) {
        for mark in ["println!", "eprintln!", "print!(", "std::process::exit", "std::time::SystemTime"] {
            assert!(!text.contains(mark), "{} has {mark}", path.display());
        }
    }
}

#[test]
fn a_findings_message_is_short_and_its_help_says_what_to_do() {
    for suite in proof_support::suites() {
        for case in suite.cases {
            for finding in case.proofed().1.findings {
                let message = &finding.message;
                assert!(words(message) <= 10, "{message}");
                assert!(message.starts_with(|first: char| first.is_lowercase() || first == '`'), "{message}");
                assert!(!message.ends_with(['.', '!', ',']), "{message}");
                assert!(!finding.help.trim().is_empty() && !finding.help.ends_with('.'), "{message}: {}", finding.help);
                assert!(
                    finding.help.starts_with(|first: char| first.is_lowercase() || first == '`'),
                    "{}",
                    finding.help
                );
            }
        }
    }
}

/// How many words a message has; what it quotes from a guide is one.
fn words(message: &str) -> usize {
    let own = message.split('`').step_by(2).map(|part| part.split_whitespace().count()).sum::<usize>();
    own + message.matches('`').count() / 2
}

/// Ids of messages in the English file.
fn messages() -> BTreeSet<String> {
    let text = std::fs::read_to_string("src/model/messages/en.ftl").unwrap();
    let ids = text.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()));
    ids.filter_map(|line| line.split_once(" =").map(|(id, _)| id.to_owned())).collect()
}

/// Texts in quotes in the program and in the theme.
fn quoted() -> BTreeSet<String> {
    let theme = files("themes", "html").into_iter().chain(files("themes", "js"));
    let all = files("src", "rs").into_iter().chain(theme);
    all.flat_map(|(_, text)| text.split(['"', '\'', '`']).map(str::to_owned).collect::<Vec<_>>()).collect()
}

#[test]
fn every_message_that_templates_ask_for_exists() {
    let known = messages();
    for (path, text) in files("themes", "html") {
        for (at, mark) in text.match_indices("say(id=\"") {
            let rest = &text[at + mark.len()..];
            let (id, after) = rest.split_once('"').unwrap();
            // `"signal-" ~ word` is put together: at least one message must begin so.
            let put_together = after.trim_start().starts_with('~');
            let there = if put_together { known.iter().any(|one| one.starts_with(id)) } else { known.contains(id) };
            assert!(there, "{} asks for `{id}`", path.display());
        }
    }
}

#[test]
fn every_message_that_the_program_names_exists() {
    let known = messages();
    for (path, text) in files("src/render", "rs").into_iter().chain(files("src/handbook", "rs")) {
        for mark in ["say(\"", "say_n(\"", "say_with(\""] {
            for (at, mark) in text.match_indices(mark) {
                let id = text[at + mark.len()..].split('"').next().unwrap();
                let tested = text[..at].contains("#[cfg(test)]");
                assert!(tested || known.contains(id), "{} says `{id}`", path.display());
            }
        }
    }
}

#[test]
fn no_message_is_unused() {
    let quoted = quoted();
    // Ids that are put together: `"signal-" ~ word` in a template, `format!("place-{…}")` in the program.
    let starts: BTreeSet<&str> = quoted
        .iter()
        .filter_map(|text| text.split_once('{').map_or(Some(text.as_str()), |(start, _)| Some(start)))
        .filter(|start| start.ends_with('-') && start.len() > 3)
        .collect();
    let unused: Vec<String> = messages()
        .into_iter()
        .filter(|id| !quoted.contains(id) && !starts.iter().any(|start| id.starts_with(start)))
        .collect();
    assert!(unused.is_empty(), "{unused:?}");
}

#[test]
fn the_places_of_built_in_items_are_those_that_their_rails_draw() {
    use coquille::render::figures::rail::{Item, places};
    for (item, known) in coquille::model::BUILT_IN {
        let drawn: Vec<&str> = places(Item::by_id(item).unwrap()).iter().map(|place| place.id).collect();
        assert_eq!(drawn, known, "{item}");
    }
}
