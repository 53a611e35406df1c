//! What differs by system stands in one module: everything else in `src/` must build and mean the same everywhere.

#![allow(clippy::unwrap_used, reason = "in a test's own small functions a panic is the report, as in the tests")]

use std::fs;
use std::path::{Path, PathBuf};

const THE_ONE_MODULE: &str = "src/press/system.rs";

/// What only some systems have, or have in their own way.
const SYSTEM_ONLY: [&str; 16] = [
    "std::os::",
    "os::unix",
    "os::windows",
    "rustix",
    "libc::",
    "windows_sys",
    "cfg(unix",
    "cfg(windows",
    "cfg!(",
    "target_os",
    "target_family",
    "target_vendor",
    "target_env",
    " nix::",
    "winapi",
    "consts::OS",
];

#[test]
fn nothing_in_src_but_one_module_uses_what_only_some_systems_have() {
    let mut found = Vec::new();
    for file in rust_files(Path::new("src")) {
        let name = file.to_string_lossy().replace('\\', "/");
        if name != THE_ONE_MODULE {
            let text = fs::read_to_string(&file).unwrap();
            found.extend(uses(&text).map(|(line, what)| format!("{name}:{line}: {what}")));
        }
    }
    assert!(found.is_empty(), "belongs into {THE_ONE_MODULE}:\n{}", found.join("\n"));
}

#[test]
fn the_one_module_is_where_we_say_and_is_found_out_by_the_same_search() {
    let text = fs::read_to_string(THE_ONE_MODULE).unwrap();
    let what: Vec<_> = uses(&text).map(|(_, what)| what).collect();
    for expected in ["rustix", "cfg(windows", "target_os", "std::os::"] {
        assert!(what.contains(&expected), "{expected}");
    }
}

#[test]
fn a_use_is_found_in_its_several_spellings_and_a_comment_is_not_a_use() {
    let text = "use std::os::unix::fs::symlink;\n\
                #[cfg(all(test, target_os = \"macos\"))]\n\
                // rustix would do\n\
                let here = cfg!(windows);";
    let lines: Vec<_> = uses(text).map(|(line, _)| line).collect();
    assert_eq!(lines, [1, 1, 2, 4]);
}

/// Line numbers from 1 with what was found there, comments left out. `cfg!(feature` and `cfg!(test` differ by build, not
/// by system.
fn uses(text: &str) -> impl Iterator<Item = (usize, &'static str)> + '_ {
    text.lines().enumerate().flat_map(|(index, line)| {
        let code = line.split("//").next().unwrap_or_default();
        let code = code.replace("cfg!(feature", "").replace("cfg!(test", "");
        let found = SYSTEM_ONLY.iter().filter(move |what| code.contains(**what));
        found.map(move |what| (index + 1, *what))
    })
}

fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let entries = walkdir::WalkDir::new(folder).sort_by_file_name().into_iter();
    let paths = entries.map(|entry| entry.unwrap().into_path());
    paths.filter(|path| path.extension().is_some_and(|ending| ending == "rs")).collect()
}
