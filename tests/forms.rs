//! The forms in which a handbook is passed on: a zip that unpacks into one folder, one file that asks for nothing, an EPUB. Each is the
//! same bytes for the same guides, and none goes over a file that is not from this program.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use assert_cmd::Command;
use base64::Engine;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{Cursor, Read};
use std::path::Path;

/// A small handbook, bound in every form.
fn bound(folder: &Path) {
    run(folder, &["begin", "guides"]).success();
    run(folder, &["bind", "--as", "folder,zip,single,epub"]).success();
}

fn run(folder: &Path, args: &[&str]) -> assert_cmd::assert::Assert {
    Command::new(env!("CARGO_BIN_EXE_coquille")).current_dir(folder).args(args).assert()
}

fn unpacked(path: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut zip = zip::ZipArchive::new(Cursor::new(std::fs::read(path).unwrap())).unwrap();
    let names: Vec<String> = zip.file_names().map(|name| name.unwrap().into_owned()).collect();
    names
        .into_iter()
        .map(|name| {
            let mut bytes = Vec::new();
            zip.by_name(&name).unwrap().read_to_end(&mut bytes).unwrap();
            (name, bytes)
        })
        .collect()
}

#[test]
fn every_form_stands_beside_the_others_and_is_the_same_bytes_again() {
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    bound(one.path());
    bound(other.path());
    for name in ["site.zip", "site.html", "site.epub"] {
        let read = |folder: &Path| std::fs::read(folder.join(name)).unwrap();
        assert!(read(one.path()) == read(other.path()), "{name} differs");
    }
}

#[test]
fn two_pages_that_would_share_a_name_are_told_before_one_of_them_is_lost() {
    let folder = tempfile::tempdir().unwrap();
    run(folder.path(), &["begin", "guides"]).success();
    for (way, stop) in [("new", "hand-tools"), ("new-hand", "tools")] {
        let text = format!(
            "learning: {way}\ntitle: {way}\nfor: A.\nstops:\n  - {{stop: {stop}, title: A, says: A., you can: [see], read: refit-plug}}\n"
        );
        std::fs::write(folder.path().join(format!("guides/{way}.yaml")), text).unwrap();
    }
    run(folder.path(), &["bind"]).success();
    let refused = run(folder.path(), &["bind", "--as", "single"]).code(2);
    let said = String::from_utf8_lossy(&refused.get_output().stderr).replace('\n', " ");
    assert!(said.contains("`learning/new-hand/tools.html` and `learning/new/hand-tools.html`"), "{said}");
    assert!(!folder.path().join("site.html").exists());
}

#[test]
fn the_zip_holds_the_folder_as_one_folder() {
    let folder = tempfile::tempdir().unwrap();
    bound(folder.path());
    let files = unpacked(&folder.path().join("site.zip"));
    assert!(files.keys().all(|name| name.starts_with("site/")), "{:?}", files.keys());
    for (name, bytes) in &files {
        assert!(std::fs::read(folder.path().join(name)).unwrap() == *bytes, "{name}");
    }
    assert!(files.contains_key("site/index.html"));
}

/// What a script adds to the one file from the data in it.
fn unfolded(file: &str) -> String {
    let (_, rest) = file.split_once("id=\"folded-sections\">").expect("something is folded");
    let data = rest.split('<').next().unwrap();
    let bytes = base64::engine::general_purpose::STANDARD.decode(data).unwrap();
    let mut text = String::new();
    flate2::read::DeflateDecoder::new(bytes.as_slice()).read_to_string(&mut text).unwrap();
    text
}

#[test]
fn every_link_in_the_one_file_leads_to_something_in_it() {
    let folder = tempfile::tempdir().unwrap();
    bound(folder.path());
    let mut file = std::fs::read_to_string(folder.path().join("site.html")).unwrap();
    let folded = unfolded(&file);
    assert!(folded.contains("id=sheets-"), "sheets are folded");
    file.push_str(&folded);
    let tags = html5gum::Tokenizer::new(&file).filter_map(|token| match token {
        Ok(html5gum::Token::StartTag(tag)) => Some(tag),
        _ => None,
    });
    let (mut ids, mut links, mut twice) = (BTreeSet::new(), BTreeSet::new(), Vec::new());
    for tag in tags {
        for (name, value) in &tag.attributes {
            let value = String::from_utf8_lossy(value).into_owned();
            match name.as_slice() {
                b"id" if !ids.insert(value.clone()) => twice.push(value),
                b"href" | b"src" | b"data-unfolded" => {
                    links.insert(value);
                }
                _ => {}
            }
        }
    }
    assert!(twice.is_empty(), "ids that stand twice: {twice:?}");
    let outside =
        |link: &&String| !link.starts_with('#') && !link.starts_with("data:") && !link.starts_with("https://");
    assert_eq!(links.iter().filter(outside).collect::<Vec<_>>(), Vec::<&String>::new());
    let lost: Vec<&String> =
        links.iter().filter(|link| link.strip_prefix('#').is_some_and(|id| !ids.contains(id))).collect();
    assert!(lost.is_empty(), "{lost:?}");
    assert!(links.len() > 50);
}

/// What a practice bench looks its answers up in, from a page or a section that holds it.
fn rehearsals(html: &str) -> Vec<serde_json::Value> {
    let templates = html.split("<template data-rehearsal").skip(1);
    let data = templates.filter_map(|rest| rest.split_once('>')?.1.split("</template>").next());
    data.map(|data| serde_json::from_str(data).unwrap()).collect()
}

#[test]
fn the_one_file_has_the_practice_bench_folded_and_its_cards_for_everybody() {
    let folder = tempfile::tempdir().unwrap();
    bound(folder.path());
    let file = std::fs::read_to_string(folder.path().join("site.html")).unwrap();
    let folded = unfolded(&file);
    let mut benches: Vec<_> = std::fs::read_dir(folder.path().join("site/practice")).unwrap().collect();
    benches.retain(|entry| entry.as_ref().is_ok_and(|entry| entry.path().extension().is_some()));
    let pages = benches.into_iter().map(|entry| std::fs::read_to_string(entry.unwrap().path()).unwrap());
    let of_pages: Vec<_> = pages.flat_map(|page| rehearsals(&page)).collect();
    let of_sections = rehearsals(&folded);
    assert!(!of_pages.is_empty() && of_pages.len() == of_sections.len());
    assert!(of_sections.iter().all(|data| of_pages.contains(data)), "the same faults as in the folder");
    for data in of_sections {
        let guide = data["guide"].as_str().unwrap();
        assert!(folded.contains(&format!("id=practice-{guide} ")) || folded.contains(&format!("id=practice-{guide}>")));
        assert!(
            file.contains(&format!("data-unfolded=\"#practice-{guide}\""))
                || file.contains(&format!("data-unfolded=#practice-{guide}")),
            "{guide}: the cards lead to the bench"
        );
        assert!(file.contains(&format!("id=practice-cards-{guide}")), "{guide}: its cards stand unfolded");
    }
    assert!(file.contains("window.practice = {"));
}

#[test]
fn every_page_is_in_the_book_as_well_formed_xml_and_in_the_order_of_reading() {
    let folder = tempfile::tempdir().unwrap();
    bound(folder.path());
    let files = unpacked(&folder.path().join("site.epub"));
    let mut pages = 0;
    for (name, bytes) in files.iter().filter(|(name, _)| name.ends_with(".xhtml") || name.ends_with(".opf")) {
        let text = String::from_utf8_lossy(bytes);
        let options = roxmltree::ParsingOptions { allow_dtd: true, ..Default::default() };
        roxmltree::Document::parse_with_options(&text, options).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(!text.contains("<script") && !text.contains("%EF%A3%BF"), "{name}");
        pages += usize::from(name.ends_with(".xhtml"));
    }
    let package = String::from_utf8_lossy(&files["EPUB/package.opf"]).into_owned();
    assert_eq!(package.matches("<itemref").count() + 1, pages, "all but the contents are in the spine");
    assert!(package.contains("linear=\"no\""));
}

#[test]
fn a_file_of_somebody_elses_is_refused_before_anything_is_written() {
    let folder = tempfile::tempdir().unwrap();
    run(folder.path(), &["begin", "guides"]).success();
    std::fs::write(folder.path().join("site.epub"), "a novel").unwrap();
    let refused = run(folder.path(), &["bind", "--as", "folder,zip,single,epub"]).code(2);
    let said = String::from_utf8_lossy(&refused.get_output().stderr).into_owned();
    assert!(said.contains("`site.epub` was not made by Coquille"), "{said}");
    for name in ["site", "site.zip", "site.html"] {
        assert!(!folder.path().join(name).exists(), "{name}");
    }
    run(folder.path(), &["bind", "--as", "epub", "--force"]).success();
    assert_eq!(std::fs::read_to_string(folder.path().join("site.epub.kept")).unwrap(), "a novel");
    run(folder.path(), &["bind", "--as", "epub"]).success();
    assert!(!folder.path().join("site").exists(), "only what was asked for is written");
}

#[test]
fn only_a_handbook_with_an_https_address_has_a_worker_and_no_page_asks_for_it_from_disk() {
    let folder = tempfile::tempdir().unwrap();
    run(folder.path(), &["begin", "guides"]).success();
    let file = folder.path().join("guides/handbook.yaml");
    let told: String = std::fs::read_to_string(&file)
        .unwrap()
        .lines()
        .filter(|line| !line.starts_with("address:"))
        .map(|line| format!("{line}\n"))
        .collect();
    std::fs::write(&file, &told).unwrap();
    run(folder.path(), &["bind"]).success();
    assert!(!folder.path().join("site/offline-worker.js").exists());
    let page = || std::fs::read_to_string(folder.path().join("site/index.html")).unwrap();
    assert!(!page().contains("worker-src") && !page().contains("offline.js"));
    std::fs::write(&file, format!("{told}address: https://ninebarrow.example/\n")).unwrap();
    run(folder.path(), &["bind"]).success();
    let worker = std::fs::read_to_string(folder.path().join("site/offline-worker.js")).unwrap();
    assert!(worker.contains("\"index.html\""));
    assert!(
        page().contains("worker-src 'self'") && page().contains("offline.js") && !page().contains("rel=\"manifest\"")
    );
}
