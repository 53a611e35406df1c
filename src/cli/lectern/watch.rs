//! Notices that a guide was saved.
//!
//! In: the folders that matter. Out: [`News::Changed`], once a burst of changes is over. The system's own notices are taken where it
//! gives any; besides, the folders are looked at now and then, which is all there is on a network drive, and which notices that the
//! whole folder went away and came back.

use super::News;
use super::desk::Desk;
use notify::{Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::time::{Duration, SystemTime};

/// A burst of changes is over when nothing happened for so long: an editor saves in several steps.
const QUIET: Duration = Duration::from_millis(40);

/// How long to wait for notices before looking oneself.
const LOOK: Duration = Duration::from_millis(700);

/// What a folder looks like from outside: names, sizes and times.
pub type Look = Vec<(PathBuf, u64, Option<SystemTime>)>;

/// Watches for as long as somebody listens; `last` is what the guides looked like when they were read.
pub fn watch(desk: &Desk, mut last: Look, send: &Sender<News>) {
    let (noticed, notices) = channel();
    let mut watcher = None;
    loop {
        let folders = desk.folders();
        if watcher.is_none() {
            watcher = watching(&folders, noticed.clone());
        }
        wait(&notices);
        let now = look(&folders);
        if now == last {
            continue;
        }
        // A folder that is gone takes its notices with it.
        if now.len() < last.len() || !folders.iter().all(|folder| folder.is_dir()) {
            watcher = None;
        }
        last = now;
        if send.send(News::Changed).is_err() {
            return;
        }
    }
}

/// Waits for a notice and for the quiet after it, or until it is time to look.
fn wait(notices: &Receiver<()>) {
    if notices.recv_timeout(LOOK).is_ok() {
        while notices.recv_timeout(QUIET).is_ok() {}
    }
}

fn watching(folders: &[PathBuf], noticed: Sender<()>) -> Option<RecommendedWatcher> {
    let heard = move |event: notify::Result<Event>| {
        // Reading a guide is an event too, and it is we who read.
        if event.is_ok_and(|event| !matches!(event.kind, EventKind::Access(_))) {
            let _ = noticed.send(());
        }
    };
    let mut watcher = notify::recommended_watcher(heard).ok()?;
    let watched = folders.iter().filter(|folder| folder.is_dir());
    for folder in watched {
        watcher.watch(folder, RecursiveMode::Recursive).ok()?;
    }
    Some(watcher)
}

/// What the folders look like now. To be taken before the guides are read, so that no change falls between the two.
pub fn look(folders: &[PathBuf]) -> Look {
    folders.iter().flat_map(|folder| look_at(folder)).collect()
}

fn look_at(folder: &Path) -> Look {
    // What is hidden is no guide: an editor's own files, a version control's.
    let visible =
        |entry: &walkdir::DirEntry| entry.depth() == 0 || !entry.file_name().as_encoded_bytes().starts_with(b".");
    let walked = walkdir::WalkDir::new(folder).sort_by_file_name().into_iter().filter_entry(visible);
    let entries = walked.filter_map(Result::ok);
    let seen = entries.filter_map(|entry| {
        let known = entry.metadata().ok().filter(std::fs::Metadata::is_file)?;
        Some((entry.into_path(), known.len(), known.modified().ok()))
    });
    seen.collect()
}
