//! The journal way cut short at every single move: tests only.

use super::journal::{self, Rename};
use super::manifest::Contents;
use super::plan::{Plan, Standing};
use super::work::{Place, Work};
use super::{Address, CONTENTS, Manner, Recovered, Strangers, Way, press, recover};
use std::cell::Cell;
use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

type Tree = BTreeMap<String, String>;

/// The old handbook; the new one has a page where this has a folder, and a folder where a stranger has a file.
const OLD: [(&str, &str); 4] =
    [("index.html", "old"), ("same.html", "same"), ("gone/deep/page.html", "gone"), ("tip/page.html", "tip")];
const NEW: [(&str, &str); 4] =
    [("index.html", "new"), ("same.html", "same"), ("tip", "now a page"), ("words/arc.html", "arc")];
const MANNER: Manner = Manner { way: Way::Journal, strangers: Strangers::Keep };

fn files(list: &[(&str, &str)]) -> BTreeMap<Address, Vec<u8>> {
    let file = |(address, text): &(&str, &str)| {
        let address = Address::parse(address).unwrap();
        (address, text.as_bytes().to_vec())
    };
    list.iter().map(file).collect()
}

fn tree(out: &Path) -> Tree {
    let entries = walkdir::WalkDir::new(out).into_iter().map(Result::unwrap);
    let entries = entries.filter(|entry| entry.file_type().is_file());
    entries
        .map(|entry| {
            let name = entry.path().strip_prefix(out).unwrap().to_str().unwrap();
            (name.to_owned(), fs::read_to_string(entry.path()).unwrap())
        })
        .collect()
}

/// The folder with the old handbook and two strangers.
fn begin(folder: &Path) -> std::path::PathBuf {
    let out = folder.join("site");
    press(&out, &files(&OLD), MANNER, &()).unwrap();
    fs::write(out.join("words"), "a stranger").unwrap();
    fs::write(out.join("gone/notes.txt"), "another").unwrap();
    out
}

/// What stands there before and after, by a bind that nothing cuts short.
fn before_and_after() -> (Tree, Tree) {
    let folder = tempfile::tempdir().unwrap();
    let out = begin(folder.path());
    let before = tree(&out);
    let pressed = press(&out, &files(&NEW), MANNER, &()).unwrap();
    assert_eq!(pressed.way, Some(Way::Journal));
    (before, tree(&out))
}

/// The bind of the new handbook with a rename that the test has its hand on. A panic stands for a kill.
fn bind_with(out: &Path, rename: Rename) -> Result<(), super::PressFailed> {
    let work = Work::claim(&Place::of(out).unwrap()).unwrap();
    let new = files(&NEW);
    let contents = Contents::of(&new);
    let (list, text) = (Address::parse(CONTENTS).unwrap(), contents.to_text());
    let standing = Standing::of(out, Strangers::Keep).unwrap();
    let listed = (&list, text.as_bytes());
    let plan = Plan::make(&standing, &new, &contents, listed, Strangers::Keep).unwrap();
    journal::exchange(&work, &plan, &(), rename)
}

fn settle_with(out: &Path, rename: Rename) {
    let work = Work::claim(&Place::of(out).unwrap()).unwrap();
    journal::settle(&work, rename).unwrap();
}

/// Does what it is told so many times, then the program is "killed".
fn killed_after(moves: usize) -> impl Fn(&Path, &Path) -> io::Result<()> {
    let left = Cell::new(moves);
    move |from, to| {
        assert!(left.get() > 0, "killed");
        left.set(left.get() - 1);
        fs::rename(from, to)
    }
}

/// Fails once, at this move; at that one the program is killed.
fn locked_at(failing: usize, killed: usize) -> impl Fn(&Path, &Path) -> io::Result<()> {
    let count = Cell::new(0);
    move |from, to| {
        count.set(count.get() + 1);
        assert!(count.get() != killed, "killed");
        match count.get() == failing {
            true => Err(io::ErrorKind::ResourceBusy.into()),
            false => fs::rename(from, to),
        }
    }
}

fn is_killed(run: impl FnOnce()) -> bool {
    catch_unwind(AssertUnwindSafe(run)).is_err()
}

#[test]
fn a_kill_at_any_move_and_another_while_recovering_are_finished_by_the_next_command() {
    let (_, after) = before_and_after();
    let mut cuts = 0;
    for first in 0.. {
        for second in 0.. {
            let folder = tempfile::tempdir().unwrap();
            let out = begin(folder.path());
            let cut = is_killed(|| bind_with(&out, &killed_after(first)).unwrap());
            if !cut {
                assert!(cuts >= 36, "only {cuts} cuts");
                return;
            }
            cuts += 1;
            let cut_again = is_killed(|| settle_with(&out, &killed_after(second)));
            let recovered = recover(&out).unwrap();
            assert_eq!(tree(&out), after, "cut after {first}, then {second}");
            assert!(!folder.path().join(".site.binding").exists());
            if !cut_again {
                break;
            }
            assert_eq!(recovered, Recovered::Finished);
        }
    }
}

#[test]
fn a_locked_file_at_any_move_undoes_all_and_so_does_a_kill_while_undoing() {
    let (before, _) = before_and_after();
    let mut locked = 0;
    for failing in 1.. {
        for killed in failing + 1.. {
            let folder = tempfile::tempdir().unwrap();
            let out = begin(folder.path());
            let mut result = Ok(());
            let cut = is_killed(|| result = bind_with(&out, &locked_at(failing, killed)));
            if !cut && result.is_ok() {
                assert!(locked >= 8, "only {locked} moves");
                return;
            }
            recover(&out).unwrap();
            assert_eq!(tree(&out), before, "locked at {failing}, killed at {killed}");
            if !cut {
                let failed = result.unwrap_err();
                assert_eq!(failed.why, super::Why::Locked);
                assert!(failed.path.starts_with(&out), "{}", failed.path.display());
                locked += 1;
                break;
            }
        }
    }
}

#[test]
fn a_page_that_a_power_cut_emptied_is_not_put_in() {
    let (before, _) = before_and_after();
    let folder = tempfile::tempdir().unwrap();
    let out = begin(folder.path());
    assert!(is_killed(|| bind_with(&out, &killed_after(5)).unwrap()));
    let waiting = folder.path().join(".site.binding/new").join(CONTENTS);
    fs::write(waiting, "").unwrap();
    assert_eq!(recover(&out).unwrap(), Recovered::Undone);
    assert_eq!(tree(&out), before);
}

#[test]
fn a_journal_that_a_power_cut_tore_stands_for_no_step() {
    let (before, after) = before_and_after();
    let folder = tempfile::tempdir().unwrap();
    let out = begin(folder.path());
    assert!(is_killed(|| bind_with(&out, &killed_after(0)).unwrap()));
    let journal = folder.path().join(".site.binding/journal");
    let text = fs::read_to_string(&journal).unwrap();
    fs::write(&journal, &text[..text.len() / 2]).unwrap();
    assert_eq!(recover(&out).unwrap(), Recovered::Cleared);
    assert_eq!(tree(&out), before);
    press(&out, &files(&NEW), MANNER, &()).unwrap();
    assert_eq!(tree(&out), after);
}
