//! `begin --whole` gives the whole trade's handbook: every guide of the demo, byte for byte, under the club's own name.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod site_support;

use coquille::model::{Paper, Units};
use coquille::proof::proof;
use coquille::source::read;
use site_support::{held, project};
use std::process::Command;

#[test]
fn every_guide_of_the_demo_is_there_and_the_handbook_is_the_clubs_and_sound() {
    let folder = tempfile::tempdir().unwrap();
    let mut begin = Command::new(env!("CARGO_BIN_EXE_coquille"));
    begin.args([
        "begin",
        "guides",
        "--whole",
        "--club",
        "Lower Combe: \"F\" & C",
        "--paper",
        "letter",
        "--units",
        "imperial",
    ]);
    assert!(begin.current_dir(folder.path()).output().unwrap().status.success());
    let written = held(&folder.path().join("guides"));
    for (name, bytes) in held(&project().join("guides")) {
        if name.starts_with("handbook.") {
            assert!(written.contains_key(&name), "{name}");
        } else {
            let same = written.get(&format!("whole/{name}")) == Some(&bytes);
            assert!(same, "{name}: not as in guides/; if it is a new guide, `touch src/main.rs` and build again");
        }
    }
    let proofed = proof(&read(&folder.path().join("guides")).unwrap());
    assert_eq!(proofed.findings, []);
    let (_, handbook) = proofed.guides.handbook.unwrap();
    assert_eq!(handbook.title.value, "Lower Combe: \"F\" & C");
    assert_eq!((handbook.paper, handbook.units), (Paper::Letter, Units::Imperial));
    assert!(handbook.address.is_none());
    assert_eq!(proofed.languages[0].language, "fr");
    let french = proofed.languages[0].proofed.guides.handbook.as_ref().unwrap();
    assert_eq!(french.1.title.value, "Lower Combe: \"F\" & C");
}
