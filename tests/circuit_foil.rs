//! The foil on the bench shows what `reference/foil-on-the-bench.md` says, cell by cell, and a few things that follow from it.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

#[path = "reference/foil.rs"]
mod foil;

use coquille::reckoning::circuit::{Answer, At, Carrier, FaultId, Grade, Measure, Network, Outcome, Pair, Sign, Span};
use foil::foil_on_the_bench;

const PAGE: &str = include_str!("reference/foil-on-the-bench.md");

#[test]
fn lamps_show_what_the_page_says() {
    let foil = foil_on_the_bench();
    let cells = cells("## Lamps");
    assert_eq!(cells.len(), 22 * 9);
    for (name, heading, expected) in cells {
        let (instrument, position) = heading.split_once(" / ").unwrap();
        let lamps = if instrument == "two-lamp" { vec!["two-lamp A", "two-lamp C"] } else { vec![instrument] };
        let shown = shown(&foil, &lamps, position, fault(&foil, &name));
        assert_eq!(shown, expected, "{name}, {heading}");
    }
}

#[test]
fn ohms_at_rest_are_what_the_page_says() {
    let foil = foil_on_the_bench();
    let cells = cells("## Ohms at rest");
    assert_eq!(cells.len(), 22 * 5);
    for (name, heading, expected) in cells {
        assert_figure(&foil, &name, &heading, "rest", &expected);
    }
}

#[test]
fn ohms_and_buzzer_when_pressed_are_what_the_page_says() {
    let foil = foil_on_the_bench();
    let cells = cells("## Pressed");
    assert_eq!(cells.len(), 22 * 2);
    for (name, heading, expected) in cells {
        if heading == "buzzer B-C" {
            assert_eq!(shown(&foil, &[&heading], "pressed", fault(&foil, &name)), expected, "{name}, {heading}");
        } else {
            assert_figure(&foil, &name, &heading, "pressed", &expected);
        }
    }
}

#[test]
fn a_lamp_that_stays_lit_is_shown_surely_by_a_worn_wire_and_perhaps_by_one_that_comes_and_goes() {
    let foil = foil_on_the_bench();
    let stays_lit = [sign(&foil, "lamp B-C", "rest", Answer::Lit), sign(&foil, "lamp B-C", "pressed", Answer::Lit)];
    let grade = |name: &str| foil.shows(fault(&foil, name), &stays_lit).unwrap();
    assert_eq!(grade("wire worn at barrel"), Grade::Surely);
    assert_eq!(grade("wire pinched, now and then touching"), Grade::May);
    assert_eq!(grade("spring missing"), Grade::Never);
    assert_eq!(grade("none"), Grade::Never);
}

#[test]
fn only_a_fault_whose_two_states_differ_flickers() {
    let foil = foil_on_the_bench();
    let flickers = [sign(&foil, "lamp B-C", "rest", Answer::Flickers)];
    let grade = |name: &str| foil.shows(fault(&foil, name), &flickers).unwrap();
    assert_eq!(grade("barrel loose"), Grade::Surely);
    assert_eq!(grade("dirty tip"), Grade::May);
    assert_eq!(grade("wire pinched, now and then touching"), Grade::Never);
    assert_eq!(grade("wire worn at barrel"), Grade::Never);
}

#[test]
fn a_meter_from_pin_to_cup_parts_a_broken_wire_from_a_missing_spring() {
    let foil = foil_on_the_bench();
    let parting = foil.parting(fault(&foil, "spring missing"), fault(&foil, "wire broken in blade")).unwrap().unwrap();
    assert_eq!(parting.grade, Grade::Surely);
    assert_eq!((foil.reading_name(parting.reading), foil.position_name(parting.position)), ("ohm B-cup", "rest"));
}

#[test]
fn no_reading_of_the_bench_parts_a_missing_tip_from_a_missing_spring() {
    let foil = foil_on_the_bench();
    assert_eq!(foil.parting(fault(&foil, "no tip"), fault(&foil, "spring missing")).unwrap(), None);
}

#[test]
fn the_live_loop_runs_through_the_tip_at_rest_and_nowhere_when_pressed() {
    let foil = foil_on_the_bench();
    let pins = pins(&foil);
    let carriers = foil.live_loop(pins, Network::REST, None).unwrap();
    let names: Vec<&str> = carriers
        .iter()
        .map(|carrier| match carrier {
            Carrier::Piece(piece) => foil.piece_name(*piece),
            Carrier::Touching(touching) => foil.touching_name(*touching),
            Carrier::Joined(_) => "joined",
        })
        .collect();
    let way = [
        "screw",
        "wire_lo",
        "wire_up",
        "spring",
        "barrel_blade",
        "blade_guard",
        "guard_C",
        "plugB",
        "plugC",
        "tip_barrel",
    ];
    assert_eq!(names, way);
    assert_eq!(foil.live_loop(pins, foil.find_position("pressed").unwrap(), None).unwrap(), []);
}

#[test]
fn rest_less_pressed_of_the_same_foil_knows_what_two_separate_readings_cannot() {
    let foil = foil_on_the_bench();
    let pins = pins(&foil);
    let pressed = foil.find_position("pressed").unwrap();
    let less = Measure::Less { first: (pins, At::Position(Network::REST)), second: (pins, At::Position(pressed)) };
    let span = |name: &str| foil.measure(&less, Network::REST, fault(&foil, name)).unwrap();
    // A tip that does not open: nothing changes, whatever the resistances.
    let Span::Within { least, most, .. } = span("tip will not open") else { panic!("no figure") };
    assert!(least.abs() < 1e-12 && most.abs() < 1e-12, "{least} … {most}");
    // Worn through at the barrel: at rest spring and tip lie beside the bare place. By hand: s = spring + tip from 0.04 to 0.5,
    // w = bare place from 0.02 to 2; the difference is sw/(s+w) - w = -w²/(s+w).
    let Span::Within { least, most, .. } = span("wire worn at barrel") else { panic!("no figure") };
    assert!((least + 4.0 / 2.04).abs() < 1e-9 && (most + 0.0004 / 0.52).abs() < 1e-9, "{least} … {most}");
    assert_eq!(span("none"), Span::FarUnder);
}

/// All cells of a table of the page: fault, heading of the column, what stands there.
fn cells(title: &str) -> Vec<(String, String, String)> {
    let table = PAGE.split(title).nth(1).unwrap().lines().skip_while(|line| !line.starts_with('|'));
    let rows: Vec<Vec<String>> = table
        .take_while(|line| line.starts_with('|'))
        .map(|line| line.trim_matches('|').split('|').map(|cell| cell.trim().to_owned()).collect())
        .collect();
    let (headings, rows) = (&rows[0], &rows[2..]);
    let row = |row: &Vec<String>| {
        let name = row[0].clone();
        headings
            .iter()
            .zip(row)
            .skip(1)
            .map(move |(heading, cell)| (name.clone(), heading.clone(), cell.clone()))
            .collect::<Vec<_>>()
    };
    rows.iter().flat_map(row).collect()
}

/// What one lamp shows (`lit`) or several (`A dark, C lit`), in the words of the page.
fn shown(foil: &Network, lamps: &[&str], position: &str, fault: Option<FaultId>) -> String {
    let position = foil.find_position(position).unwrap();
    let seen: Vec<_> =
        lamps.iter().map(|lamp| foil.seen(foil.find_reading(lamp).unwrap(), position, fault).unwrap()).collect();
    let faulty = combined(lamps, &seen.iter().map(|seen| seen.faulty).collect::<Vec<_>>());
    let away = combined(lamps, &seen.iter().map(|seen| seen.away.unwrap_or(seen.faulty)).collect::<Vec<_>>());
    if away == faulty { faulty.join(" or ") } else { format!("{} ~ {}", away.join("/"), faulty.join("/")) }
}

/// Every way in which the lamps can show together, each lamp by itself.
fn combined(lamps: &[&str], outcomes: &[Outcome]) -> Vec<String> {
    let mut ways = vec![String::new()];
    for (lamp, outcome) in lamps.iter().zip(outcomes) {
        let name = lamp.strip_prefix("two-lamp ").map_or(String::new(), |name| format!("{name} "));
        let words = [(Answer::Dark, "dark"), (Answer::Lit, "lit")]
            .into_iter()
            .filter(|(answer, _)| outcome.answers.contains(*answer));
        let words: Vec<String> = words.map(|(_, word)| format!("{name}{word}")).collect();
        let longer = |way: &String| {
            let start = if way.is_empty() { String::new() } else { format!("{way}, ") };
            words.iter().map(|word| format!("{start}{word}")).collect::<Vec<_>>()
        };
        ways = ways.iter().flat_map(longer).collect();
    }
    ways
}

/// `open`, or `least … most (usual)` to the digits that stand there, with `~` if the sound state lies in another band.
fn assert_figure(foil: &Network, name: &str, reading: &str, position: &str, expected: &str) {
    let seen = foil
        .seen(foil.find_reading(reading).unwrap(), foil.find_position(position).unwrap(), fault(foil, name))
        .unwrap();
    let differs = seen.away.is_some_and(|away| away.answers != seen.faulty.answers);
    assert_eq!(expected.ends_with('~'), differs, "{name}, {reading}");
    let figure = expected.trim_end_matches(" ~");
    match seen.faulty.figure.unwrap() {
        Span::Within { least, usual, most } => {
            let printed: Vec<&str> =
                figure.split(['…', '(', ')']).map(str::trim).filter(|part| !part.is_empty()).collect();
            assert_eq!(printed.len(), 3, "{name}, {reading}: {expected} against {least} … {most} ({usual})");
            for (figure, printed) in [least, most, usual].into_iter().zip(printed) {
                assert!(rounds_to(figure, printed), "{name}, {reading}: {figure} is not {printed}");
            }
        }
        span => assert_eq!((span, figure), (Span::Open, "open"), "{name}, {reading}"),
    }
}

/// Whether a figure is the printed one to half its last digit.
fn rounds_to(figure: f64, printed: &str) -> bool {
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let half = 0.5 / (0..decimals).fold(1.0, |unit, _| unit * 10.0);
    (figure - printed.parse::<f64>().unwrap()).abs() <= half + 1e-9
}

fn sign(foil: &Network, reading: &str, position: &str, shows: Answer) -> Sign {
    Sign { reading: foil.find_reading(reading).unwrap(), position: foil.find_position(position).unwrap(), shows }
}

fn pins(foil: &Network) -> Pair {
    Pair { one: foil.find_point("B").unwrap(), other: foil.find_point("C").unwrap() }
}

/// The fault of this name; none for `none`.
fn fault(foil: &Network, name: &str) -> Option<FaultId> {
    if name == "none" { None } else { Some(foil.find_fault(name).unwrap_or_else(|| panic!("no fault {name}"))) }
}
