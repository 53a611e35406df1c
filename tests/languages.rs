//! The handbook in other languages: the program's own words are all there, and pages keep to their language.

use coquille::handbook::lay_out_all;
use coquille::model::messages::{ENGLISH, FRENCH, ids};
use coquille::model::{fill, translated};
use coquille::proof::proof;
use coquille::render::{Theme, render_all};
use coquille::source::{Folder, Tolerant, read, read_texts};
use std::collections::{BTreeMap, BTreeSet};

const HANDBOOK: &str = "\
handbook: club
title: A club
edition: Autumn
language: en
caution: The rules decide.
kit: [foil, epee]
";
const MEND: &str = "\
procedure: mend
title: Mend it
kit: foil
for: What is broken. See [the other job](procedure:renew).
hands-on: 10
steps: [{do: Mend it.}]
";
const RENEW: &str = "\
procedure: renew
title: Renew it
kit: foil
for: What cannot be mended. See [the first job](procedure:mend).
hands-on: 10
steps: [{do: Renew it.}]
";
const MEND_FRENCH: &str = "\
translation: mend
language: fr
title: Le réparer
for: Ce qui est cassé. Voir [l'autre travail](procedure:renew).
steps: [{do: Réparez.}]
";

fn bound(folder: &Folder) -> BTreeMap<String, String> {
    let proofed = proof(folder);
    assert_eq!(proofed.errors(), 0, "{:?}", proofed.findings);
    let theme = Theme::with(BTreeMap::new()).expect("our own theme is sound");
    let files = render_all(lay_out_all(&proofed, folder), &theme).expect("our own templates are sound");
    files.into_iter().filter_map(|(name, bytes)| Some((name, String::from_utf8(bytes).ok()?))).collect()
}

fn club<'a>(more: impl IntoIterator<Item = (&'a str, &'a str)>) -> Folder {
    let own = [("handbook.yaml", HANDBOOK), ("mend.yaml", MEND), ("renew.yaml", RENEW)];
    read_texts(own.into_iter().chain(more))
}

/// A message with the lines that belong to it.
fn messages(text: &str) -> BTreeMap<&str, &str> {
    let starts = ids(text);
    let ends = starts.iter().skip(1).map(|(_, at)| *at).chain([text.len()]);
    starts.iter().zip(ends).map(|((id, at), end)| (*id, &text[*at + id.len()..end])).collect()
}

fn arguments(message: &str) -> BTreeSet<&str> {
    message
        .match_indices("$")
        .map(|(at, _)| &message[at..])
        .map(|rest| rest.split([' ', '}']).next().unwrap_or(""))
        .collect()
}

#[test]
fn french_has_every_message_of_english_with_the_same_arguments_and_no_other() {
    let (english, french) = (messages(ENGLISH), messages(FRENCH));
    let lacking: Vec<_> = english.keys().filter(|id| !french.contains_key(*id)).collect();
    assert!(lacking.is_empty(), "not in French: {lacking:?}");
    let stray: Vec<_> = french.keys().filter(|id| !english.contains_key(*id)).collect();
    assert!(stray.is_empty(), "not in English: {stray:?}");
    let differ = |id: &&&str| arguments(english[**id]) != arguments(french[**id]);
    let other: Vec<_> = english.keys().filter(differ).collect();
    assert!(other.is_empty(), "with other arguments: {other:?}");
}

#[test]
fn a_french_page_has_no_english_of_the_program() {
    let files = bound(&club([("mend.fr.yaml", MEND_FRENCH)]));
    let french: Vec<_> = files.iter().filter(|(name, _)| name.starts_with("fr/") && name.ends_with(".html")).collect();
    assert!(french.len() > 5, "{}", french.len());
    // Messages of three words and more can be told from words of guides; those with arguments are said in parts.
    let english = messages(ENGLISH);
    let sentences =
        english.values().map(|text| text.trim_start_matches([' ', '=']).lines().next().unwrap_or("").trim());
    let sentences: Vec<&str> = sentences.filter(|text| text.split(' ').count() > 2 && !text.contains('{')).collect();
    assert!(sentences.len() > 50, "{}", sentences.len());
    for (name, html) in french {
        let found: Vec<_> = sentences.iter().filter(|sentence| html.contains(**sentence)).collect();
        assert!(found.is_empty(), "{name}: {found:?}");
    }
}

#[test]
fn how_long_a_stop_gap_holds_is_said_in_the_language_of_the_page() {
    let patch = MEND.replace("mend", "patch").replace("hands-on", "holds: some weeks\nlasting: renew\nhands-on");
    let french = MEND_FRENCH.replace("mend", "patch") + "holds: quelques semaines\n";
    let files = bound(&club([("patch.yaml", &*patch), ("patch.fr.yaml", &*french)]));
    assert!(files["jobs/patch.html"].contains("some weeks"));
    let page = &files["fr/jobs/patch.html"];
    assert!(page.contains("quelques semaines") && !page.contains("some weeks"), "{page}");
}

#[test]
fn a_link_leads_to_the_page_in_its_language_if_there_is_one() {
    let files = bound(&club([("mend.fr.yaml", MEND_FRENCH)]));
    let page = &files["fr/jobs/mend.html"];
    assert!(page.starts_with("<!doctype html>\n<html lang=\"fr\""), "{}", &page[..60]);
    assert!(page.contains(r#"href="../../jobs/renew.html""#), "the other job is not in French");
    assert!(page.contains(r#"href="../jobs.html""#), "the list of jobs is");
    assert!(!files.contains_key("fr/jobs/renew.html"));
}

#[test]
fn a_translation_shows_its_own_picture_where_there_are_words_in_it() {
    const SHOWN: &str = "pictures: [{picture: tip, file: pictures/tip.svg, alt: The tip.}, \
                         {picture: cup, file: pictures/cup.svg, alt: The cup.}]\n";
    let handbook = format!("{HANDBOOK}{SHOWN}");
    let french = "translation: club\nlanguage: fr\ntitle: Un club\ncaution: Le règlement décide.\n\
                  pictures: [{picture: tip, file: pictures/tip.fr.svg, alt: La pointe.}, {picture: cup, alt: La cuvette.}]\n";
    let mend = MEND.replace("{do: Mend it.}", "{do: Mend it., picture: tip}, {do: Look., picture: cup}");
    let mend_french = MEND_FRENCH.replace("{do: Réparez.}", "{do: Réparez.}, {do: Regardez.}");
    let drawn = |words: &str| format!("<svg xmlns=\"http://www.w3.org/2000/svg\"><text>{words}</text></svg>");
    let (tip, tip_french, cup) = (drawn("tip"), drawn("pointe"), drawn(""));
    let mut folder = read_texts([
        ("handbook.yaml", handbook.as_str()),
        ("handbook.fr.yaml", french),
        ("mend.yaml", mend.as_str()),
        ("mend.fr.yaml", mend_french.as_str()),
        ("renew.yaml", RENEW),
    ]);
    for (name, svg) in [("tip", &tip), ("tip.fr", &tip_french), ("cup", &cup)] {
        folder.others.insert(format!("pictures/{name}.svg"), svg.clone().into_bytes());
    }
    let files = bound(&folder);
    assert!(files["fr/jobs/mend.html"].contains("src=\"../../pictures/tip.fr.svg\""));
    assert!(files["fr/jobs/mend.html"].contains("src=\"../../pictures/cup.svg\""), "it has no words");
    assert!(files["jobs/mend.html"].contains("src=\"../pictures/tip.svg\""));
    assert_eq!(files["pictures/tip.fr.svg"], tip_french);
    assert_eq!(files["pictures/tip.svg"], tip);
}

/// The words of a drawing, three letters and longer: a line is called B in every language.
fn words_in(svg: &str) -> Vec<&str> {
    let texts = svg.split("<text").skip(1).filter_map(|text| text.split_once('>')?.1.split('<').next());
    texts
        .filter(|text| text.split(' ').any(|word| word.chars().filter(|letter| letter.is_alphabetic()).count() > 2))
        .collect()
}

#[test]
fn what_a_french_guide_of_the_demo_shows_has_french_words_in_it() {
    let folder = read(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("guides")).expect("guides are there");
    let (guides, _) = fill(&folder);
    let (french, _) = translated(&guides, "fr");
    let (_, handbook) = french.guides.handbook.expect("the demo has a handbook");
    let mut seen = 0;
    for (_, text) in folder.texts.iter() {
        let id = text.text.lines().next().and_then(|line| line.split_once(": ")).map(|(_, id)| id);
        if text.name.starts_with("handbook.") || !id.is_some_and(|id| french.translated.contains(id)) {
            continue;
        }
        for picture in handbook.pictures.iter().filter_map(Tolerant::sound) {
            let shown = |end: &str| text.text.contains(&format!("picture: {}{end}", picture.picture.value));
            let svg = String::from_utf8_lossy(&folder.others[&picture.file.value]).into_owned();
            if ["\n", "}", ","].into_iter().any(shown) && !words_in(&svg).is_empty() {
                assert!(
                    picture.file.value.ends_with(".fr.svg"),
                    "{}: {} says {:?}",
                    text.name,
                    picture.file.value,
                    words_in(&svg)
                );
                seen += 1;
            }
        }
    }
    assert!(seen > 5, "{seen}");
}

#[test]
fn a_page_names_itself_in_its_other_languages_both_ways() {
    let files = bound(&club([("mend.fr.yaml", MEND_FRENCH)]));
    let french = r#"href=".././fr/jobs/mend.html" hreflang="fr" lang="fr" rel="alternate">Français</a>"#;
    let english = r#"href="../.././jobs/mend.html" hreflang="en" lang="en" rel="alternate">English</a>"#;
    assert!(files["jobs/mend.html"].contains(french));
    assert!(files["fr/jobs/mend.html"].contains(english));
    assert!(!files["jobs/renew.html"].contains("hreflang"));
}

#[test]
fn a_club_can_add_a_language_and_have_its_own_words_for_a_message() {
    let arabic = MEND_FRENCH.replace("language: fr", "language: ar");
    let files = bound(&club([
        ("mend.ar.yaml", arabic.as_str()),
        ("messages/ar.ftl", "language-name = العربية\nfind = بحث\n"),
        ("messages/en.ftl", "find = Look for it\n"),
    ]));
    let page = &files["ar/jobs/mend.html"];
    assert!(page.contains(r#"<html lang="ar" dir="rtl""#), "{}", &page[..80]);
    assert!(page.contains(">بحث<"));
    assert!(files["jobs/mend.html"].contains(">Look for it<"));
}

#[test]
fn a_translation_never_changes_what_is_not_words() {
    let odd = MEND_FRENCH.replace("steps: [{do: Réparez.}]", "hands-on: 1\nsteps: [{do: Réparez., wait: 5}]");
    let proofed = proof(&club([("mend.fr.yaml", odd.as_str())]));
    let codes: Vec<&str> = proofed.findings.iter().map(|finding| finding.code.as_str()).collect();
    assert!(codes.contains(&"translation-changes-guide") && codes.contains(&"stray-translation"), "{codes:?}");
}
