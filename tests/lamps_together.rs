//! What the lamps of an instrument show together, in the demo handbook: held against each lamp alone, and against what an armourer
//! expects to see.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::handbook::lay_out;
use coquille::handbook::page::{Body, LampsOf, Link, Together, TogetherRow};
use coquille::model::LampState;
use coquille::proof::proof;
use coquille::source::read;
use std::path::Path;
use std::sync::LazyLock;

static PAGES: LazyLock<Vec<(String, LampsOf)>> = LazyLock::new(|| {
    let folder = read(Path::new("guides")).unwrap();
    let pages = lay_out(&proof(&folder), &folder).pages;
    pages
        .into_iter()
        .filter_map(|page| if let Body::LampsOf(body) = page.body { Some((page.address, *body)) } else { None })
        .collect()
});

fn tables() -> impl Iterator<Item = (&'static LampsOf, &'static Together)> {
    PAGES.iter().flat_map(|(_, body)| body.together.iter().map(move |together| (body, together)))
}

fn table(address: &str) -> &'static Together {
    PAGES.iter().find(|(of, _)| of == address).and_then(|(_, body)| body.together.first()).unwrap()
}

fn ends_with(links: &[Link], end: &str) -> bool {
    links.iter().any(|link| link.address.ends_with(end))
}

/// The rows that a fault stands in.
fn rows_of<'t>(together: &'t Together, fault: &str) -> Vec<&'t TogetherRow> {
    let end = format!("-fault-{fault}");
    together.rows.iter().filter(|row| ends_with(&row.faults, &end)).collect()
}

/// What a lamp does in a row, in the order of positions; nothing if it does what it does with sound kit.
fn does(row: &TogetherRow, lamp: &str) -> Vec<LampState> {
    let told = row.lamps.iter().find(|doing| doing.title.ends_with(lamp));
    told.map_or_else(Vec::new, |doing| doing.shown.iter().map(|shown| shown.state).collect())
}

#[test]
fn every_instrument_with_several_lamps_has_a_table() {
    for address in [
        "lamps/foil-on-tester.html",
        "lamps/foil-on-apparatus.html",
        "lamps/epee-on-apparatus.html",
        "lamps/sabre-on-apparatus.html",
        "lamps/reel-on-apparatus.html",
    ] {
        let rows = &table(address).rows;
        assert!(rows.len() > 3, "{address}: {} rows", rows.len());
        assert!(rows.iter().any(|row| row.sound), "{address}: nothing is said of sound kit");
    }
}

#[test]
fn what_a_row_says_of_a_lamp_and_a_fault_stands_in_that_lamps_own_table() {
    let mut held = 0;
    for (body, together) in tables() {
        for row in &together.rows {
            for doing in &row.lamps {
                let own = |lamp: &&coquille::handbook::page::Patterns| {
                    lamp.title == doing.title && lamp.circuit.address == together.circuit.address
                };
                let lamp = body.lamps.iter().find(own).unwrap();
                let same = lamp.rows.iter().find(|own| own.lamps == doing.shown).unwrap();
                assert!(row.faults.iter().all(|fault| same.faults.contains(fault)), "{}: {row:?}", together.anchor);
                held += row.faults.len();
            }
        }
    }
    assert!(held > 300, "only {held} were held against one another");
}

#[test]
fn no_two_rows_of_a_table_say_the_same() {
    for (_, together) in tables() {
        let faulty: Vec<&TogetherRow> = together.rows.iter().filter(|row| !row.sound).collect();
        for (at, row) in faulty.iter().enumerate() {
            assert!(faulty.iter().skip(at + 1).all(|other| other.lamps != row.lamps), "{}: {row:?}", together.anchor);
        }
    }
}

#[test]
fn a_foil_with_bare_wire_at_the_barrel_keeps_lamp_c_lit_and_leads_to_its_guide() {
    // Common practice: on a tester a foil is lit at rest and goes dark when pressed; worn insulation keeps it lit.
    let rows = rows_of(table("lamps/foil-on-tester.html"), "worn-at-barrel");
    assert!(!rows.is_empty());
    for row in rows {
        assert_eq!(does(row, "lamp C"), [LampState::Lit, LampState::Lit]);
        assert!(ends_with(&row.guides, "faults/foil-stays-lit.html"));
    }
}

#[test]
fn a_foil_without_a_tip_is_dark_on_both_lamps() {
    let rows = rows_of(table("lamps/foil-on-tester.html"), "no-tip");
    assert!(!rows.is_empty());
    for row in rows {
        assert!(
            does(row, "lamp A").into_iter().chain(does(row, "lamp C")).all(|state| state == LampState::Dark),
            "{row:?}"
        );
        assert!(ends_with(&row.guides, "faults/foil-dark-on-tester.html"));
    }
}

#[test]
fn a_sabre_whose_guard_is_bare_lights_the_yellow_lamp_and_no_other() {
    // Common practice: the fist on the cuff joins guard and jacket through the bare guard.
    let together = table("lamps/sabre-on-apparatus.html");
    let rows: Vec<&TogetherRow> =
        together.rows.iter().filter(|row| ends_with(&row.guides, "faults/sabre-registers-by-itself.html")).collect();
    assert!(!rows.is_empty());
    for row in rows {
        assert_eq!(row.lamps.len(), 1, "{row:?}");
        assert_eq!(does(row, "Yellow lamp"), [LampState::Dark, LampState::Lit]);
    }
}

#[test]
fn a_foil_that_shows_no_lamp_at_the_apparatus_leads_to_the_guide_of_the_tester() {
    // Common practice: worn insulation closes the loop for good, so neither white nor the coloured lamp comes; the tester shows it.
    let rows = rows_of(table("lamps/foil-on-apparatus.html"), "worn-at-barrel");
    assert!(!rows.is_empty());
    for row in rows {
        assert!(ends_with(&row.guides, "faults/foil-stays-lit.html"), "{row:?}");
    }
}

#[test]
fn what_comes_and_goes_leads_to_the_guide_of_what_it_does_in_turn() {
    let together = table("lamps/sabre-on-apparatus.html");
    let flickers = |row: &&TogetherRow| does(row, "White lamp").contains(&LampState::ComesAndGoes);
    let rows: Vec<&TogetherRow> = together.rows.iter().filter(flickers).collect();
    assert!(!rows.is_empty());
    for row in rows {
        assert!(ends_with(&row.guides, "faults/sabre-white-burns.html"), "{row:?}");
    }
}

#[test]
fn no_weapon_leads_to_a_guide_of_another_weapon() {
    for (page, others) in [
        ("lamps/foil-", ["faults/epee-", "faults/sabre-"]),
        ("lamps/epee-", ["faults/foil-", "faults/sabre-"]),
        ("lamps/sabre-", ["faults/foil-", "faults/epee-"]),
    ] {
        let pages: Vec<&LampsOf> =
            PAGES.iter().filter(|(address, _)| address.starts_with(page)).map(|(_, body)| body).collect();
        assert!(!pages.is_empty());
        let together =
            pages.iter().flat_map(|body| &body.together).flat_map(|table| &table.rows).flat_map(|row| &row.guides);
        let alone = pages.iter().flat_map(|body| &body.lamps).flat_map(|lamp| &lamp.rows).flat_map(|row| &row.guides);
        for guide in together.chain(alone) {
            assert!(!others.iter().any(|other| guide.address.starts_with(other)), "{page}: {}", guide.address);
        }
    }
}
