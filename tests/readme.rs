//! Every command of `README.md` works as it is written, one after the other, for somebody who types them all in an empty folder.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::process::{Command, Stdio};

/// The commands of the blocks for a shell that begin with the program's name, without the words for the reader behind them.
fn commands() -> Vec<String> {
    let text = std::fs::read_to_string("README.md").unwrap();
    let blocks = text.split("```").skip(1).step_by(2).filter_map(|block| block.strip_prefix("sh\n"));
    let lines = blocks.flat_map(str::lines).filter(|line| line.starts_with("coquille "));
    lines.map(|line| line.split('#').next().unwrap().trim().to_owned()).collect()
}

/// The words of a command line; quotes keep a name together.
fn words(line: &str) -> Vec<String> {
    let parts = line.split('"').enumerate();
    let words = parts.flat_map(|(at, part)| match at % 2 {
        0 => part.split_whitespace().map(str::to_owned).collect::<Vec<_>>(),
        _ => vec![part.to_owned()],
    });
    words.collect()
}

#[test]
fn every_command_works_as_it_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let commands = commands();
    assert!(commands.len() > 8, "{commands:?}");
    for line in commands {
        let mut command = Command::new(env!("CARGO_BIN_EXE_coquille"));
        let ran = command.args(&words(&line)[1..]).current_dir(folder.path()).stdin(Stdio::null()).output().unwrap();
        assert!(ran.status.success(), "{line}\n{}", String::from_utf8_lossy(&ran.stderr));
    }
}
