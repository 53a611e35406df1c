//! Golden sessions: what is typed, what comes out, and the exit code, as a person at a terminal sees them.
//!
//! Each file of `tests/sessions/` runs in an empty folder of its own. After a line `$ command` stand the lines of stdout, then those of
//! stderr behind `2> `, then `? code`; what stands between is for the reader. Times are written `[TIME]`, the version `[VERSION]`,
//! escape codes `␛`. `SESSIONS=rewrite cargo test --test sessions` writes what came out into the files: read the difference.

use std::io::{Seek, Write};
use std::path::Path;
use std::process::Command;

/// Stdout, stderr and exit code.
type Said = (String, String, i32);

#[test]
fn every_session_goes_as_written() {
    let rewrite = std::env::var_os("SESSIONS").is_some_and(|wish| wish == "rewrite");
    let mut wrong = Vec::new();
    for path in files() {
        let written = std::fs::read_to_string(&path).expect("a session can be read");
        let went = played(&written);
        if rewrite {
            std::fs::write(&path, &went).expect("a session can be written");
        } else if went != written {
            wrong.push(format!("=== {}, as it went:\n{went}", path.display()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_session_is_short_and_fits_into_80_columns() {
    for path in files() {
        let written = std::fs::read_to_string(&path).expect("a session can be read");
        assert!(written.lines().count() <= 35, "{} is too long to be read at a glance", path.display());
        let wide = |line: &&str| seen(line.strip_prefix("2> ").unwrap_or(line)) > 80;
        assert_eq!(written.lines().find(wide), None, "in {}", path.display());
    }
}

/// How many characters of a line are seen: those that set a colour, `␛[1m`, are not.
fn seen(line: &str) -> usize {
    let mut parts = line.split("␛[");
    let first = parts.next().map_or(0, |part| part.chars().count());
    first + parts.map(|part| part.split_once('m').map_or(part, |(_, rest)| rest).chars().count()).sum::<usize>()
}

#[test]
fn a_session_that_goes_otherwise_is_seen() {
    let written = "$ coquille --version\ncoquille 0\n? 0\n";
    assert_eq!(played(written), "$ coquille --version\ncoquille [VERSION]\n? 0\n");
}

fn files() -> Vec<std::path::PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/sessions");
    let entries = std::fs::read_dir(folder).expect("the sessions' folder").map(|entry| entry.expect("an entry").path());
    let mut files: Vec<_> = entries.filter(|path| path.extension().is_some_and(|end| end == "txt")).collect();
    files.sort();
    assert!(!files.is_empty());
    files
}

/// Plays a session: the same text with what really came out.
fn played(session: &str) -> String {
    let folder = tempfile::tempdir().expect("an empty folder");
    let mut went = String::new();
    let mut lines = session.lines().peekable();
    while let Some(line) = lines.next() {
        went.push_str(&format!("{line}\n"));
        let Some(command) = line.strip_prefix("$ ") else { continue };
        while lines.peek().is_some_and(|line| !line.starts_with("$ ")) {
            if lines.next().is_some_and(|line| line.starts_with("? ")) {
                break;
            }
        }
        let (out, err, code) = run(command, folder.path());
        for line in out.lines() {
            went.push_str(&format!("{}\n", shown(line)));
        }
        for line in err.lines() {
            went.push_str(&format!("{}\n", shown(&format!("2> {line}"))));
        }
        went.push_str(&format!("? {code}\n"));
    }
    went
}

/// A command, perhaps with `echo ANSWER |` before it and `| head -N` or `| tail -N` behind it.
fn run(command: &str, folder: &Path) -> Said {
    let typed = command.strip_prefix("echo ").and_then(|rest| rest.split_once(" | "));
    let (typed, command) = typed.map_or(("", command), |(answer, command)| (answer, command));
    let (command, filter) =
        command.split_once(" | ").map_or((command, None), |(command, filter)| (command, Some(filter)));
    let words = words(command);
    let mut words: Vec<&str> = words.iter().map(String::as_str).collect();
    let settings: Vec<&str> = words.iter().copied().take_while(|word| word.contains('=')).collect();
    words.drain(..settings.len());
    let (out, err, code) = match words.as_slice() {
        ["coquille", rest @ ..] => coquille(rest, &settings, typed, folder),
        other => (by_hand(other, folder), String::new(), 0),
    };
    (filter.map_or(out.clone(), |filter| filtered(&out, filter)), err, code)
}

fn coquille(args: &[&str], settings: &[&str], typed: &str, folder: &Path) -> Said {
    let mut keys = tempfile::tempfile().expect("a file for what is typed");
    writeln!(keys, "{typed}").and_then(|()| keys.rewind()).expect("what is typed");
    let mut command = Command::new(env!("CARGO_BIN_EXE_coquille"));
    command.args(args).current_dir(folder).stdin(keys);
    for name in ["NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "COLUMNS"] {
        command.env_remove(name);
    }
    command.envs(settings.iter().filter_map(|setting| setting.split_once('=')));
    let output = command.output().expect("the program runs");
    let text = |bytes| String::from_utf8(bytes).expect("words");
    (text(output.stdout), text(output.stderr), output.status.code().expect("an exit code"))
}

/// What a person does by hand between two commands, written as in a shell.
fn by_hand(words: &[&str], folder: &Path) -> String {
    let at = |name: &str| folder.join(name);
    match words {
        ["mkdir", name] => std::fs::create_dir(at(name)).expect("a new folder"),
        ["printf", text, ">", name] => std::fs::write(at(name), text.replace("\\n", "\n")).expect("a new file"),
        ["printf", text, ">>", name] => {
            let before = std::fs::read_to_string(at(name)).expect("a file to add to");
            std::fs::write(at(name), before + &text.replace("\\n", "\n")).expect("a longer file");
        }
        ["touch", name] => std::fs::write(at(name), "").expect("a new file"),
        ["sed", "-i", change, name] => {
            let parts: Vec<&str> = change.split('/').collect();
            let ["s", old, new, ""] = parts.as_slice() else { panic!("no change: {change}") };
            let text = std::fs::read_to_string(at(name)).expect("a file to change");
            assert!(text.contains(old), "`{old}` does not stand in {name}");
            std::fs::write(at(name), text.replacen(old, new, 1)).expect("a changed file");
        }
        ["ls", name] => {
            let inside = std::fs::read_dir(at(name)).expect("a folder to list");
            let mut names: Vec<_> = inside.map(|entry| entry.expect("an entry").file_name().into_string()).collect();
            names.sort();
            return names.into_iter().map(|name| name.expect("a name") + "\n").collect();
        }
        other => panic!("nobody knows how to `{}`", other.join(" ")),
    }
    String::new()
}

fn filtered(out: &str, filter: &str) -> String {
    let lines: Vec<&str> = out.lines().collect();
    let number = |text: &str| text.parse::<usize>().expect("so many lines").min(lines.len());
    let kept = match filter.split_once(" -") {
        Some(("head", most)) => &lines[..number(most)],
        Some(("tail", most)) => &lines[lines.len() - number(most)..],
        _ => panic!("no filter: {filter}"),
    };
    kept.join("\n")
}

/// Words between blanks; what stands between single quotes is one word.
fn words(command: &str) -> Vec<String> {
    let mut words = Vec::new();
    for (place, part) in command.split('\'').enumerate() {
        match place % 2 {
            0 => words.extend(part.split_whitespace().map(str::to_owned)),
            _ => words.push(part.to_owned()),
        }
    }
    words
}

/// A line without what differs from run to run, and without blanks at its end.
fn shown(line: &str) -> String {
    let line = line.replace('\u{1b}', "␛").replace(env!("CARGO_PKG_VERSION"), "[VERSION]");
    let timed = line.rsplit_once(" s.").and_then(|(before, after)| {
        let (before, time) = before.rsplit_once(", in ")?;
        time.parse::<f64>().ok()?;
        Some(format!("{before}, in [TIME] s.{after}"))
    });
    timed.unwrap_or(line).trim_end().to_owned()
}
