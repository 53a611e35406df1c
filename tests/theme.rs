//! A club's own theme: what it lays over the one that comes with the program, and what is refused.

use coquille::handbook::lay_out;
use coquille::proof::proof;
use coquille::render::{Theme, render};
use coquille::source::read_texts;
use std::collections::BTreeMap;

const HANDBOOK: &str =
    "handbook: club\ntitle: A club\nedition: First\nlanguage: en\ncaution: The rules decide.\nkit: [foil]\n";

fn over(files: &[(&str, &str)]) -> BTreeMap<String, Vec<u8>> {
    files.iter().map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec())).collect()
}

fn bound(theme: &Theme) -> BTreeMap<String, String> {
    let folder = read_texts([("handbook.yaml", HANDBOOK)]);
    let proofed = proof(&folder);
    assert_eq!(proofed.errors(), 0, "{:?}", proofed.findings);
    let files = render(lay_out(&proofed, &folder), theme).expect("the theme is sound");
    files.into_iter().map(|(address, bytes)| (address, String::from_utf8_lossy(&bytes).into_owned())).collect()
}

fn carried(name: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("themes/marking-blue").join(name);
    std::fs::read_to_string(path).expect("the theme's file is there")
}

#[test]
fn a_club_changes_its_colours_in_one_file() {
    let colours = carried("colours.yaml").replace("#1a4a8c", "#6a1b4d");
    let theme = Theme::with(over(&[("colours.yaml", &colours)])).expect("colours are colours");
    let css = &bound(&theme)["look/marking-blue.css"];
    assert!(css.contains("--blue: #6a1b4d"));
    assert!(!css.contains("--blue: #1a4a8c"));
}

#[test]
fn a_club_replaces_one_part_and_keeps_the_rest() {
    let part = carried("parts/title-block/part.html").replace("class=\"title-block", "class=\"title-block of-the-club");
    let theme = Theme::with(over(&[("parts/title-block/part.html", &part)])).expect("a part is a part");
    let front = &bound(&theme)["index.html"];
    assert!(front.contains("of-the-club"));
    assert!(front.contains("class=\"top\""));
}

#[test]
fn a_club_shows_its_logo_on_every_page() {
    let logo = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 2 2\"/>";
    let theme = Theme::with(over(&[("logo.svg", logo)])).expect("a logo is a logo");
    let files = bound(&theme);
    assert_eq!(files["look/logo.svg"], logo);
    assert!(files["kit/foil.html"].contains("src=\"../look/logo.svg\""));
}

#[test]
fn a_file_that_replaces_nothing_is_pointed_out() {
    let failed = Theme::with(over(&[("colors.yaml", "")])).expect_err("nobody would notice");
    assert!(failed.to_string().contains("did you mean `colours.yaml`?"), "{failed}");
}

#[test]
fn whole_pages_are_not_replaced() {
    assert!(Theme::with(over(&[("pages/front.html", "")])).is_err());
}

#[test]
fn a_colour_is_a_colour_and_nothing_else() {
    let sly = carried("colours.yaml").replace("\"#1a4a8c\"", "\"red; } body { background: url(https://a.example)\"");
    assert!(Theme::with(over(&[("colours.yaml", &sly)])).is_err());
}

#[test]
fn a_faulty_part_is_named() {
    let theme = Theme::with(over(&[("parts/trail/part.html", "{% component trail(")])).expect("read later");
    let folder = read_texts([("handbook.yaml", HANDBOOK)]);
    let failed = render(lay_out(&proof(&folder), &folder), &theme).expect_err("the part is faulty");
    assert!(failed.message.contains("parts/trail/part.html"), "{}", failed.message);
}
