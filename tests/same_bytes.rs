//! The same guides give the same bytes: whichever way the folder is written, whatever editor saved them, wherever the program runs.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod site_support;

use coquille::handbook::lay_out;
use coquille::press::{Address, Manner, Strangers, Way, press};
use coquille::proof::proof;
use coquille::render::{Theme, render};
use coquille::source::read;
use site_support::held;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use tempfile::TempDir;

type Tree = BTreeMap<String, Vec<u8>>;

/// Two guides that lead to each other, with letters that sort and fold otherwise from place to place.
const GUIDES: [(&str, &str); 6] = [
    (
        "handbook.yaml",
        "handbook: club\ntitle: Ilıca Épée İşleri\nedition: Autumn\nlanguage: en\nkit: [foil, tester]\ncaution: >-\n  \
         The rules decide.\n\n  Ask.\nsays: |\n  One line.\n\n  Another.\n",
    ),
    (
        "dark.yaml",
        "symptom: dark\ntitle: It is dark\nkit: foil\nseen on: tester\nsays: It is dark.\ncauses:\n  \
         - {cause: dirt, title: Dirt, share: 60, lasting: mend}\n  - {cause: break, title: Break, share: 30, lasting: renew}\n\
         probes:\n  - probe: look\n    ask: Is it dirty?\n    minutes: 1\n    \
         answers: [{answer: dirty, means: dirt}, {answer: clean, means: otherwise}]\n\
         not on this list: {says: Ask., lasting: renew}\n",
    ),
    (
        "mend.yaml",
        "procedure: mend\ntitle: Mend it\nkit: foil\nfor: What is broken.\nhands-on: 10\nsteps:\n  - do: |\n      \
         Look at it:\n\n      - first the ends,\n      - then the middle.\n  - do: \"Mend\n      it.\"\n",
    ),
    (
        "renew.yaml",
        "procedure: renew\ntitle: Renew it\nkit: foil\nfor: What cannot be mended.\nhands-on: 60\nsteps: [{do: Renew it., picture: tip}]\n\
         pictures: [{picture: tip, file: tip.svg, alt: The tip.}]\n",
    ),
    (
        "tip.svg",
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 4 4\">\n  <title>\n    Tip\n  </title>\n  <path d=\"M0 0h4\"/>\n</svg>\n",
    ),
    ("messages/en.ftl", "kind-procedure =\n    A job\n    to do\n"),
];

fn guides(at: &Path, change: impl Fn(&str) -> String) -> PathBuf {
    for (name, text) in GUIDES {
        let path = at.join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, change(text)).unwrap();
    }
    at.to_path_buf()
}

/// The handbook in every form, bound as a person does with such settings; what stands beside the guides then.
fn bound(change: impl Fn(&str) -> String, settings: &[(&str, &str)]) -> Tree {
    let folder = TempDir::new().unwrap();
    guides(&folder.path().join("guides"), change);
    let mut bind = Command::new(env!("CARGO_BIN_EXE_coquille"));
    bind.args(["bind", "guides", "--as", "folder,zip,single,epub"]).current_dir(folder.path());
    let told = bind.envs(settings.iter().copied()).output().unwrap();
    assert!(told.status.success(), "{told:?}");
    let mut tree = held(folder.path());
    tree.retain(|name, _| !name.starts_with("guides/"));
    assert!(["site/index.html", "site.zip", "site.html", "site.epub"].iter().all(|name| tree.contains_key(*name)));
    tree
}

fn agree(one: &Tree, other: &Tree, what: &str) {
    assert_eq!(one.keys().collect::<Vec<_>>(), other.keys().collect::<Vec<_>>(), "{what}");
    let different: Vec<_> = one.iter().filter(|(name, bytes)| other[*name] != **bytes).map(|(name, _)| name).collect();
    assert!(different.is_empty(), "{what}: {different:?}");
}

#[test]
fn an_editor_that_writes_crlf_or_a_byte_order_mark_changes_no_byte() {
    let plain = bound(str::to_owned, &[]);
    agree(&plain, &bound(|text| text.replace('\n', "\r\n"), &[]), "CRLF");
    agree(&plain, &bound(|text| format!("\u{feff}{text}"), &[]), "a byte-order mark");
    agree(&plain, &bound(|text| format!("\u{feff}{}", text.replace('\n', "\r\n")), &[]), "both");
    let changed = bound(|text| text.replace("Renew it.", "Renew all."), &[]);
    assert_ne!(plain, changed, "a word that changes is seen");
}

#[test]
fn neither_language_nor_time_zone_nor_number_of_threads_of_the_machine_shows() {
    let plain = bound(str::to_owned, &[("LC_ALL", "C"), ("TZ", "UTC"), ("RAYON_NUM_THREADS", "1")]);
    for (language, zone, threads) in
        [("tr_TR.UTF-8", "Pacific/Kiritimati", "8"), ("de_DE.UTF-8", "America/St_Johns", "3")]
    {
        let settings = [("LC_ALL", language), ("LANG", language), ("TZ", zone), ("RAYON_NUM_THREADS", threads)];
        agree(&plain, &bound(str::to_owned, &settings), language);
    }
}

#[test]
fn the_exchange_and_the_journal_write_the_same_folder_anew_and_over_an_older_one() {
    let of = |change: fn(&str) -> String| -> BTreeMap<Address, Vec<u8>> {
        let folder = TempDir::new().unwrap();
        let read = read(&guides(folder.path(), change)).unwrap();
        let proofed = proof(&read);
        let files = render(lay_out(&proofed, &read), &Theme::with(BTreeMap::new()).unwrap()).unwrap();
        files.into_iter().map(|(address, bytes)| (Address::parse(&address).unwrap(), bytes)).collect()
    };
    let older = of(|text| text.replace("renew", "replace").replace("Mend it", "Glue it"));
    let newer = of(str::to_owned);
    assert_ne!(older, newer);
    let pressed = |way: Way, files: &[&BTreeMap<Address, Vec<u8>>]| {
        let folder = TempDir::new().unwrap();
        let manner = Manner { way, strangers: Strangers::Refuse };
        for files in files {
            press(&folder.path().join("site"), files, manner, &()).unwrap();
        }
        held(folder.path())
    };
    let anew = pressed(Way::Exchange, &[&newer]);
    agree(&anew, &pressed(Way::Journal, &[&newer]), "anew");
    agree(&anew, &pressed(Way::Exchange, &[&older, &newer]), "exchanged over an older one");
    agree(&anew, &pressed(Way::Journal, &[&older, &newer]), "by journal over an older one");
}
