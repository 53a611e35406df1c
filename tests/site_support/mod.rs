//! The demo handbook, bound into a folder that lives as long as the tests, and folders read as what they hold.

#![allow(dead_code, reason = "each test file that takes this module uses a part of it")]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use tempfile::TempDir;

/// The project's own folder.
pub fn project() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Binds `guides` as a person would, with so many threads; what it wrote, by address.
pub fn bound(guides: &Path, threads: &str) -> BTreeMap<String, Vec<u8>> {
    let out = TempDir::new().expect("a temporary folder");
    let site = out.path().join("site");
    let mut bind = Command::new(env!("CARGO_BIN_EXE_coquille"));
    bind.env("RAYON_NUM_THREADS", threads).arg("bind").arg(guides).arg("--out").arg(&site);
    let told = bind.output().expect("coquille can be run");
    assert!(told.status.success(), "bind failed:\n{}", String::from_utf8_lossy(&told.stdout));
    held(&site)
}

/// What a folder holds, by path with `/`; nothing if it is not there.
pub fn held(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let files =
        walkdir::WalkDir::new(folder).into_iter().filter_map(Result::ok).filter(|entry| entry.file_type().is_file());
    files
        .map(|entry| (relative(folder, entry.path()), std::fs::read(entry.path()).expect("a file that can be read")))
        .collect()
}

fn relative(folder: &Path, file: &Path) -> String {
    let inside = file.strip_prefix(folder).expect("a file of the folder");
    inside.iter().map(|part| part.to_string_lossy()).collect::<Vec<_>>().join("/")
}

/// Copies a folder of guides, and the club's themes if any, to another place.
pub fn copied(folder: &Path, to: &Path) -> PathBuf {
    for (file, bytes) in held(folder) {
        let file = to.join(file);
        std::fs::create_dir_all(file.parent().expect("a file stands in a folder")).expect("a folder");
        std::fs::write(file, bytes).expect("a file that can be written");
    }
    to.to_path_buf()
}
