//! All readings of all circuits of the demo handbook, sound and with every fault, in every position, against one batch run of
//! ngspice on the same networks: a report, nothing here fails for being slow.
//!
//! Both get the same pairs of points, three times each (every piece at its least, usual and most ohms), and the same lamps of
//! testers at the usual ohms. Ours is asked for readings, so it finds the ranges of differences and lamps besides. ngspice gets
//! everything in one process: it is told to source one deck of a hundred networks after the other, since one large deck takes it
//! far longer. The time that it takes to write the decks is left out, its start is in. `-- --bouts` takes the bouts in too.

#![allow(clippy::print_stdout, reason = "a report is printed")]
#![allow(clippy::unwrap_used, reason = "a report that cannot go on has nothing to say")]

#[path = "../tests/reference/guides.rs"]
mod guides;

use coquille::reckoning::circuit::{FaultId, Link, Measure, Network, Ohms, Pair, PositionId, Reading, Tester};
use rayon::prelude::*;
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::hint::black_box;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// How many networks stand in one deck.
const IN_A_DECK: usize = 100;

fn main() {
    let bouts = std::env::args().any(|arg| arg == "--bouts");
    let circuits = guides::circuits();
    let taken: Vec<(&String, &Network)> = circuits
        .iter()
        .filter(|(id, wired)| (bouts || !id.ends_with("-bout")) && wired.network.readings().next().is_some())
        .map(|(id, wired)| (id, &wired.network))
        .collect();
    let (readings, alone) = ours(&taken, |networks: &[Network]| networks.iter().map(all_read).sum());
    // As `bind` does it: circuits beside one another.
    let (_, beside) = ours(&taken, |networks: &[Network]| networks.par_iter().map(all_read).sum());
    println!("{} circuits{}", taken.len(), if bouts { "" } else { ", without the bouts (`-- --bouts` takes them in)" });
    println!(
        "coquille: {readings} readings with their ranges in {}, on all cores in {}",
        milliseconds(alone),
        milliseconds(beside)
    );
    let decks = decks(&taken);
    let networks: usize = decks.iter().map(|deck| deck.networks).sum();
    match ngspice(&decks) {
        Some((figures, theirs)) => {
            println!("ngspice:  {figures} figures of {networks} networks in {}", milliseconds(theirs));
            let ratio = |ours: Duration| theirs.as_secs_f64() / ours.as_secs_f64();
            println!("ratio:    {:.0} times, on all cores {:.0} times", ratio(alone), ratio(beside));
        }
        None => println!("ngspice is not there: nothing to compare with (Debian: ngspice)"),
    }
}

fn milliseconds(time: Duration) -> String {
    format!("{:.1} ms", time.as_secs_f64() * 1000.0)
}

fn cases(network: &Network) -> Vec<(PositionId, Option<FaultId>)> {
    let faults: Vec<Option<FaultId>> = [None].into_iter().chain(network.faults().map(Some)).collect();
    network.positions().flat_map(|position| faults.iter().map(move |fault| (position, *fault))).collect()
}

/// The best of five runs over everything that can be read.
fn ours(circuits: &[(&String, &Network)], read: impl Fn(&[Network]) -> usize) -> (usize, Duration) {
    let run = || {
        // A clone remembers nothing of what was computed before.
        let fresh: Vec<Network> = circuits.iter().map(|(_, network)| (*network).clone()).collect();
        let begun = Instant::now();
        let readings = read(&fresh);
        (readings, begun.elapsed())
    };
    (0..5).map(|_| run()).min_by_key(|(_, time)| *time).unwrap()
}

/// Reads everything that there is to read; how much that was.
fn all_read(network: &Network) -> usize {
    let mut readings = 0;
    for (position, fault) in cases(network) {
        for reading in network.readings() {
            black_box(network.seen(reading, position, fault).unwrap());
            readings += 1;
        }
    }
    readings
}

#[derive(Default)]
struct Deck {
    netlist: String,
    prints: String,
    networks: usize,
}

fn decks(circuits: &[(&String, &Network)]) -> Vec<Deck> {
    let mut decks = vec![Deck::default()];
    for (_, network) in circuits {
        for (position, fault) in cases(network) {
            let links = network.links(position, fault).unwrap();
            let mut pairs: BTreeSet<Pair> = BTreeSet::new();
            for reading in network.readings() {
                match network.reading_of(reading).unwrap() {
                    Reading::TesterLamp { tester, lamp } => room(&mut decks).tester(network, &links, tester, *lamp),
                    other => pairs.extend(pairs_of(other)),
                }
            }
            for pair in pairs {
                for end in [Ohms::least, Ohms::usual, Ohms::most] {
                    room(&mut decks).pair(network, &links, pair, end);
                }
            }
        }
    }
    decks
}

fn room(decks: &mut Vec<Deck>) -> &mut Deck {
    if decks.last().is_none_or(|deck| deck.networks >= IN_A_DECK) {
        decks.push(Deck::default());
    }
    decks.last_mut().unwrap()
}

/// The pairs of points whose resistance a reading rests on.
fn pairs_of(reading: &Reading) -> Vec<Pair> {
    let of = |measure: &Measure| match *measure {
        Measure::Between(pair) => vec![pair],
        Measure::Less { first, second } => vec![first.0, second.0],
    };
    match reading {
        Reading::Lamp { between, .. } => vec![*between],
        Reading::Ohmmeter { measure, .. } => of(measure),
        Reading::ApparatusLamp { facts, .. } => facts.iter().flat_map(|fact| of(&fact.measure)).collect(),
        Reading::TesterLamp { .. } => Vec::new(),
    }
}

impl Deck {
    /// One ampere driven between two points.
    fn pair(&mut self, network: &Network, links: &[Link], pair: Pair, end: fn(Ohms) -> f64) {
        let n = self.wire(links, end);
        let (one, other) = (network.stands_for(pair.one).index(), network.stands_for(pair.other).index());
        writeln!(self.netlist, "I{n} {n}n{other} {n}n{one} 1\nR{n}e {n}n{other} 0 1\nR{n}p {n}n{one} 0 1e15").unwrap();
        writeln!(self.prints, "print v({n}n{one})-v({n}n{other})").unwrap();
    }

    /// The battery and the lamps of a tester.
    fn tester(&mut self, network: &Network, links: &[Link], tester: &Tester, lamp: usize) {
        let n = self.wire(links, Ohms::usual);
        let battery = network.stands_for(tester.battery).index();
        let (volts, inside) = (tester.volts, tester.inside);
        writeln!(self.netlist, "V{n} {n}plus {n}emf {volts}\nR{n}i {n}emf {n}n{battery} {inside}").unwrap();
        for (index, (pin, ohms)) in tester.lamps.iter().enumerate() {
            writeln!(self.netlist, "R{n}l{index} {n}plus {n}n{} {ohms}", network.stands_for(*pin).index()).unwrap();
        }
        let (pin, ohms) = tester.lamps[lamp];
        writeln!(self.prints, "print (v({n}plus)-v({n}n{}))/{ohms}", network.stands_for(pin).index()).unwrap();
    }

    fn wire(&mut self, links: &[Link], end: fn(Ohms) -> f64) -> usize {
        let n = self.networks;
        self.networks += 1;
        for (index, link) in links.iter().enumerate() {
            let (from, to) = (link.from.index(), link.to.index());
            writeln!(self.netlist, "R{n}r{index} {n}n{from} {n}n{to} {:e}", end(link.ohms)).unwrap();
        }
        n
    }
}

/// How many figures one process printed, and how long it took; nothing if there is no ngspice.
fn ngspice(decks: &[Deck]) -> Option<(usize, Duration)> {
    Command::new("ngspice").arg("--version").stdout(Stdio::null()).stderr(Stdio::null()).status().ok()?;
    let folder = tempfile::tempdir().unwrap();
    let main = batch(folder.path(), decks);
    let begun = Instant::now();
    let output = Command::new("ngspice").arg("-b").arg(main).current_dir(folder.path()).output().unwrap();
    let time = begun.elapsed();
    // Each deck says its temperature too.
    let is_figure = |line: &&str| line.starts_with(['v', '(']) && line.contains(" = ");
    let figures = String::from_utf8_lossy(&output.stdout).lines().filter(is_figure).count();
    Some((figures, time))
}

/// Writes the decks, and the one that sources them.
fn batch(folder: &Path, decks: &[Deck]) -> std::path::PathBuf {
    let mut control = String::from("batch\nR1 1 0 1\nV1 1 0 1\n.control\nset numdgt=12\n");
    for (index, deck) in decks.iter().enumerate() {
        let text = format!("deck\n{}.options rshunt=1e12\n.end\n", deck.netlist);
        std::fs::write(folder.join(format!("deck{index}.cir")), text).unwrap();
        writeln!(control, "source deck{index}.cir\nop\n{}destroy all\nremcirc", deck.prints).unwrap();
    }
    control.push_str("quit\n.endc\n.end\n");
    let main = folder.join("batch.cir");
    std::fs::write(&main, control).unwrap();
    main
}
