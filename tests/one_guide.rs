//! A guide laid out by itself, as the lectern does for the page that is open, has the same pages as in the whole handbook.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::handbook::page::Page;
use coquille::handbook::{lay_out, lay_out_guide};
use coquille::proof::proof;
use coquille::source::read;
use std::collections::BTreeMap;
use std::path::Path;

#[test]
fn every_guide_of_the_demo_handbook_is_the_same_by_itself() {
    let folder = read(Path::new("guides")).unwrap();
    let proofed = proof(&folder);
    let whole = lay_out(&proofed, &folder);
    let by_address: BTreeMap<&str, &Page> = whole.pages.iter().map(|page| (page.address.as_str(), page)).collect();
    let guides = &proofed.guides;
    let ids = guides.symptoms.iter().map(|(_, guide)| &guide.symptom);
    let ids = ids.chain(guides.procedures.iter().map(|(_, guide)| &guide.procedure));
    let ids = ids.chain(guides.checklists.iter().map(|(_, guide)| &guide.checklist));
    let ids = ids.chain(guides.circuits.iter().map(|(_, guide)| &guide.circuit));
    let mut held = 0;
    for id in ids {
        let alone = lay_out_guide(&proofed, &folder, id.value.as_str());
        assert_eq!((&alone.cover, &alone.targets), (&whole.cover, &whole.targets));
        assert!(!alone.pages.is_empty(), "{} has no page", id.value.as_str());
        for page in &alone.pages {
            assert_eq!(Some(&page), by_address.get(page.address.as_str()), "{}", page.address);
        }
        held += alone.pages.len();
    }
    assert!(held > 1_000, "only {held} pages");
}

#[test]
fn there_is_nothing_to_lay_out_where_there_is_no_guide() {
    let folder = read(Path::new("guides")).unwrap();
    assert!(lay_out_guide(&proof(&folder), &folder, "no-such-guide").pages.is_empty());
}
