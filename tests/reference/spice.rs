//! A network against ngspice in batch mode.
//!
//! Each case is a copy of its network in one deck, with 1 A driven between the probes: the volts are the ohms. An open shows
//! as the 10^12 ohm of `rshunt` and counts as open; everything else must agree to 1 in 10^6.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::process::Command;

use coquille::reckoning::circuit::{
    FaultId, Link, Measure, Network, Ohms, Pair, PointId, PositionId, Reading, Span, Tester,
};

/// An open circuit as ngspice shows it: most of the 10^14 ohm of `rshunt`, far over any resistance, or a figure
/// as large without meaning, of either sign, since so weak a hold is under what its numbers keep. `rshunt` leads from every point to
/// ground: at 10^12 ohm a hundred of them would take a hundred-thousandth from 100 kΩ.
const OPEN_FROM: f64 = 1e9;

/// What ours must be when ngspice prints a figure.
enum Ours {
    Open,
    Exactly(f64),
    Between(f64, f64),
}

/// ngspice takes many small decks faster than one large one.
const CASES_IN_A_DECK: usize = 100;

/// Compares every resistance that a reading rests on, and every current of a tester's lamp, in every position, sound and with
/// every fault; tells how many figures that were.
pub fn agree(network: &Network) -> usize {
    let mut decks = vec![Deck::default()];
    for position in network.positions() {
        for fault in std::iter::once(None).chain(network.faults().map(Some)) {
            add_readings(&mut decks, network, position, fault);
        }
    }
    let (half, other_half) = decks.split_at(decks.len() / 2);
    let compare = |decks: &[Deck]| decks.iter().map(Deck::compare).sum::<usize>();
    std::thread::scope(|scope| {
        let other = scope.spawn(|| compare(other_half));
        compare(half) + other.join().unwrap()
    })
}

#[derive(Default)]
struct Deck {
    netlist: String,
    prints: String,
    cases: Vec<(String, Ours)>,
}

/// A pair of points that several readings rest on is compared once.
fn add_readings(decks: &mut Vec<Deck>, network: &Network, position: PositionId, fault: Option<FaultId>) {
    let links = network.links(position, fault).unwrap();
    let fault_name = fault.map_or("sound", |fault| network.fault_name(fault));
    let mut compared = BTreeSet::new();
    for id in network.readings() {
        let what = format!("{}, {}, {fault_name}", network.reading_name(id), network.position_name(position));
        if decks.last().unwrap().cases.len() >= CASES_IN_A_DECK {
            decks.push(Deck::default());
        }
        let deck = decks.last_mut().unwrap();
        match network.reading_of(id).unwrap() {
            Reading::TesterLamp { tester, lamp } => {
                let figure = network.seen(id, position, fault).unwrap().faulty.figure.unwrap();
                deck.add_tester(network, &links, tester, *lamp, &what, figure);
            }
            reading => {
                for pair in pairs(reading).into_iter().filter(|pair| compared.insert(*pair)) {
                    let figure = network.measure(&Measure::Between(pair), position, fault).unwrap();
                    deck.add_pair(&links, pair_of_roots(network, pair), &what, figure);
                }
            }
        }
    }
}

impl Deck {
    /// The resistance with all pieces at their least, usual and most.
    fn add_pair(&mut self, links: &[Link], (one, other): (usize, usize), what: &str, figure: Span) {
        let ours = match figure {
            Span::Within { least, usual, most } => [Ours::Exactly(least), Ours::Exactly(usual), Ours::Exactly(most)],
            Span::Open => [Ours::Open, Ours::Open, Ours::Open],
            other => panic!("{what}: {other:?}"),
        };
        let links = joined_with(links, &[one, other]);
        for (end, ours) in [Ohms::least, Ohms::usual, Ohms::most].into_iter().zip(ours) {
            let copy = self.add_links(&links, end);
            writeln!(
                self.netlist,
                "I{copy} {copy}n{other} {copy}n{one} 1\nR{copy}e {copy}n{other} 0 1\nR{copy}p {copy}n{one} 0 1e15"
            )
            .unwrap();
            writeln!(self.prints, "print v({copy}n{one})-v({copy}n{other})").unwrap();
            self.cases.push((what.to_owned(), ours));
        }
    }

    /// The current with all pieces at their usual, least and most: the first is ours, the other two lie in our range.
    fn add_tester(
        &mut self,
        network: &Network,
        links: &[Link],
        tester: &Tester,
        lamp: usize,
        what: &str,
        figure: Span,
    ) {
        let Span::Within { least, usual, most } = figure else { panic!("{what}: {figure:?}") };
        let within = || Ours::Between(least, most);
        for (end, ours) in
            [Ohms::usual, Ohms::least, Ohms::most].into_iter().zip([Ours::Exactly(usual), within(), within()])
        {
            let copy = self.add_links(links, end);
            let battery = network.stands_for(tester.battery).index();
            writeln!(
                self.netlist,
                "V{copy} {copy}plus {copy}emf {}\nR{copy}i {copy}emf {copy}n{battery} {}",
                tester.volts, tester.inside
            )
            .unwrap();
            for (index, (pin, ohms)) in tester.lamps.iter().enumerate() {
                writeln!(self.netlist, "R{copy}l{index} {copy}plus {copy}n{} {ohms}", network.stands_for(*pin).index())
                    .unwrap();
            }
            let (pin, ohms) = tester.lamps[lamp];
            writeln!(self.prints, "print (v({copy}plus)-v({copy}n{}))/{ohms}", network.stands_for(pin).index())
                .unwrap();
            self.cases.push((what.to_owned(), ours));
        }
    }

    fn add_links(&mut self, links: &[Link], end: fn(Ohms) -> f64) -> usize {
        let copy = self.cases.len();
        for (index, link) in links.iter().enumerate() {
            let (from, to) = (link.from.index(), link.to.index());
            writeln!(self.netlist, "R{copy}r{index} {copy}n{from} {copy}n{to} {:e}", end(link.ohms)).unwrap();
        }
        copy
    }

    fn compare(&self) -> usize {
        let figures = self.run();
        assert_eq!(figures.len(), self.cases.len(), "ngspice printed as many figures as it was asked for");
        for ((what, ours), theirs) in self.cases.iter().zip(figures) {
            let near = |ours: f64| 1e-6 * ours.abs() + 1e-9;
            match *ours {
                Ours::Open => assert!(theirs.abs() > OPEN_FROM, "{what}: ours open, ngspice {theirs}"),
                Ours::Exactly(ours) => {
                    assert!((ours - theirs).abs() <= near(ours), "{what}: ours {ours}, ngspice {theirs}")
                }
                Ours::Between(least, most) => {
                    assert!(
                        theirs >= least - near(least) && theirs <= most + near(most),
                        "{what}: ours {least} … {most}, ngspice {theirs}"
                    );
                }
            }
        }
        self.cases.len()
    }

    fn run(&self) -> Vec<f64> {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("deck.cir");
        let deck = format!(
            "deck\n{}.options rshunt=1e14\n.control\nset numdgt=12\nop\n{}quit\n.endc\n.end\n",
            self.netlist, self.prints
        );
        std::fs::write(&path, deck).unwrap();
        let output = Command::new("ngspice").arg("-b").arg(&path).output().expect("ngspice is installed");
        let text = String::from_utf8_lossy(&output.stdout);
        text.lines()
            .filter_map(|line| line.split_once(" = "))
            .filter_map(|(_, figure)| figure.trim().parse().ok())
            .collect()
    }
}

/// The pairs of points whose resistance a reading rests on.
fn pairs(reading: &Reading) -> Vec<Pair> {
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

/// Points that are joined go by the first of them, as in the links.
fn pair_of_roots(network: &Network, pair: Pair) -> (usize, usize) {
    let root = |point: PointId| network.stands_for(point).index();
    (root(pair.one), root(pair.other))
}

/// The links that have a connection with any of these points: the rest carries nothing, and ngspice need not bear it.
fn joined_with(links: &[Link], points: &[usize]) -> Vec<Link> {
    let mut reached: BTreeSet<usize> = points.iter().copied().collect();
    let mut before = 0;
    while before < reached.len() {
        before = reached.len();
        for (from, to) in links.iter().map(|link| (link.from.index(), link.to.index())) {
            if reached.contains(&from) || reached.contains(&to) {
                reached.extend([from, to]);
            }
        }
    }
    links.iter().filter(|link| reached.contains(&link.from.index())).copied().collect()
}
