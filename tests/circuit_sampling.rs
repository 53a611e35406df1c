//! No figure inside the tolerances gives a reading outside the computed range: every circuit of the demo handbook, in every
//! position, with every fault, with ohms drawn at random and solved by Gauss's elimination of the nodal equations, which the
//! program does not use.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test that cannot go on has failed")]

#[path = "reference/guides.rs"]
mod guides;

use coquille::reckoning::circuit::{
    Answer, At, Change, Condition, Fault, FaultId, Link, Measure, Network, Ohms, Pair, PointId, PositionId, Reading,
    ReadingId, Span, Steadiness, Tester, Truth, Wiring,
};
use std::collections::{BTreeMap, BTreeSet};

/// How often the ohms are drawn for each position and fault.
const DRAWS: usize = 4;

#[test]
fn what_is_drawn_inside_the_tolerances_is_read_inside_the_computed_range() {
    let mut numbers = Numbers(20_261_125);
    let mut compared = 0;
    for (id, wired) in guides::circuits().into_iter().filter(|(id, _)| !id.ends_with("-bout")) {
        compared += sample(&id, &wired.network, &mut numbers);
    }
    assert!(compared > 20_000, "{compared}");
}

#[test]
#[ignore = "takes a minute: run by tests/run --all"]
fn every_bout_is_read_inside_its_computed_range_too() {
    let mut numbers = Numbers(1);
    for (id, wired) in guides::circuits().into_iter().filter(|(id, _)| id.ends_with("-bout")) {
        assert!(sample(&id, &wired.network, &mut numbers) > 1_000, "{id}");
    }
}

#[test]
fn a_joint_at_the_very_pins_of_a_tester_is_read_inside_its_computed_range() {
    let mut numbers = Numbers(3);
    let network = pins_joined();
    for _ in 0..50 {
        assert_eq!(sample("pins joined", &network, &mut numbers), 2 * 4 * DRAWS);
    }
}

/// A tester with two lamps on one wire, and each two of its pins joined by anything from a good contact to next to none.
fn pins_joined() -> Network {
    let mut network = Network::new();
    let [a, b, c] = ["A", "B", "C"].map(|name| network.point(name).unwrap());
    let wire = Wiring { from: a, to: b, ohms: Ohms::range(9.0, 10.0, 11.0).unwrap() };
    network.piece("wire", wire).unwrap();
    for (name, one, other) in [("b-c", b, c), ("a-c", a, c), ("a-b", a, b)] {
        let changes = vec![Change::Touches(one, other, Ohms::range(0.1, 10.0, 1000.0).unwrap())];
        network.fault(name, Fault { changes, only_while: None, steadiness: Steadiness::Steady }).unwrap();
    }
    let lamps = vec![(b, 15.0), (c, 15.0)];
    let tester = Tester { battery: a, volts: 3.0, inside: 0.5, lamps, lit_from: 0.105, dark_to: 0.06 };
    for (lamp, name) in ["lamp B", "lamp C"].into_iter().enumerate() {
        network.reading(name, Reading::TesterLamp { tester: tester.clone(), lamp }).unwrap();
    }
    network
}

/// Compares every reading; tells how many that were.
fn sample(id: &str, network: &Network, numbers: &mut Numbers) -> usize {
    let mut compared = 0;
    for position in network.positions() {
        for fault in [None].into_iter().chain(network.faults().map(Some)) {
            let links = network.links(position, fault).unwrap();
            let drawn: Vec<Vec<f64>> = (0..DRAWS)
                .map(|_| links.iter().map(|link| numbers.between(link.ohms.least(), link.ohms.most())).collect())
                .collect();
            for reading in network.readings() {
                for ohms in &drawn {
                    let here = Here { network, position, fault, links: &links, ohms };
                    if let Err(why) = here.compare(reading) {
                        let fault = fault.map_or("sound", |fault| network.fault_name(fault));
                        panic!(
                            "{id}, {}, {}, {fault}: {why}",
                            network.reading_name(reading),
                            network.position_name(position)
                        );
                    }
                    compared += 1;
                }
            }
        }
    }
    compared
}

/// A circuit with one figure for everything.
struct Here<'a> {
    network: &'a Network,
    position: PositionId,
    fault: Option<FaultId>,
    links: &'a [Link],
    ohms: &'a [f64],
}

impl Here<'_> {
    fn compare(&self, reading: ReadingId) -> Result<(), String> {
        let seen = self.network.seen(reading, self.position, self.fault).unwrap().faulty;
        match self.network.reading_of(reading).unwrap() {
            Reading::Lamp { between, .. } => inside(self.resistance(*between), seen.figure.unwrap()),
            Reading::Ohmmeter { measure: Measure::Between(pair), .. } => {
                inside(self.resistance(*pair), seen.figure.unwrap())
            }
            Reading::TesterLamp { tester, lamp } => inside(Some(self.current(tester, *lamp)), seen.figure.unwrap()),
            Reading::ApparatusLamp { facts, lit } => {
                let truth: Vec<Truth> = facts
                    .iter()
                    .map(|fact| {
                        let figure = self.measured(&fact.measure);
                        let computed = self.network.measure(&fact.measure, self.position, self.fault).unwrap();
                        inside_or_open(figure, computed).map(|()| fact.holds.judge(figure))
                    })
                    .collect::<Result<_, String>>()?;
                let shown = match judged(lit, &truth) {
                    Truth::Yes => vec![Answer::Lit],
                    Truth::No => vec![Answer::Dark],
                    Truth::May => vec![],
                };
                let outside: Vec<&Answer> = shown.iter().filter(|answer| !seen.answers.contains(**answer)).collect();
                if outside.is_empty() { Ok(()) } else { Err(format!("{outside:?} with these ohms, never as computed")) }
            }
            _ => Ok(()),
        }
    }

    /// A measure as an exact figure.
    fn measured(&self, measure: &Measure) -> Span {
        let exactly = |ohms: f64| Span::Within { least: ohms, usual: ohms, most: ohms };
        match *measure {
            Measure::Between(pair) => self.resistance(pair).map_or(Span::Open, exactly),
            Measure::Less { first: (first, At::Here), second: (second, At::Here) } => {
                match (self.resistance(first), self.resistance(second)) {
                    (Some(first), Some(second)) => exactly(first - second),
                    (Some(_), None) => Span::FarUnder,
                    (None, Some(_)) => Span::Open,
                    (None, None) => Span::Undefined,
                }
            }
            Measure::Less { .. } => Span::NotComputed,
        }
    }

    fn resistance(&self, pair: Pair) -> Option<f64> {
        let root = |point: PointId| self.network.stands_for(point).index();
        let (one, other) = (root(pair.one), root(pair.other));
        if one == other {
            return Some(0.0);
        }
        let wires = self.wires();
        if !reached(&wires, one).contains(&other) {
            return None;
        }
        // One ampere in at the one, out at the other, which is the zero of the volts.
        Some(volts(&wires, &[(one, 1.0)], other)[&one])
    }

    /// The current in a tester's lamp: the battery as a current source with its inside beside it (Norton).
    fn current(&self, tester: &Tester, lamp: usize) -> f64 {
        let root = |point: PointId| self.network.stands_for(point).index();
        let (battery, pole) = (root(tester.battery), usize::MAX);
        let mut wires = self.wires();
        wires.extend(tester.lamps.iter().map(|(pin, ohms)| (pole, root(*pin), *ohms)));
        wires.push((pole, battery, tester.inside));
        let (pin, ohms) = tester.lamps[lamp];
        let volts = volts(&wires, &[(pole, tester.volts / tester.inside)], battery);
        let at = |point: usize| volts.get(&point).copied();
        // A pin that nothing leads back from is at the pole's own volts.
        at(root(pin)).map_or(0.0, |pin| (volts[&pole] - pin) / ohms)
    }

    fn wires(&self) -> Vec<(usize, usize, f64)> {
        self.links.iter().zip(self.ohms).map(|(link, ohms)| (link.from.index(), link.to.index(), *ohms)).collect()
    }
}

/// A condition as a person would read it: three-valued.
fn judged(condition: &Condition, facts: &[Truth]) -> Truth {
    let all = |list: Vec<Truth>| {
        list.into_iter()
            .max_by_key(|truth| [Truth::Yes, Truth::May, Truth::No].iter().position(|t| t == truth))
            .unwrap()
    };
    let each = |list: &[Condition]| list.iter().map(|condition| judged(condition, facts)).collect::<Vec<_>>();
    match condition {
        Condition::Fact(number) => facts[*number],
        Condition::Not(condition) => !judged(condition, facts),
        Condition::All(list) => all(each(list)),
        Condition::Any(list) => !all(each(list).into_iter().map(|truth| !truth).collect()),
        Condition::Machines(list) => {
            let each = each(list);
            if each.iter().all(|truth| *truth == each[0]) { each[0] } else { Truth::May }
        }
    }
}

fn inside(figure: Option<f64>, computed: Span) -> Result<(), String> {
    let figure = figure.map_or(Span::Open, |ohms| Span::Within { least: ohms, usual: ohms, most: ohms });
    inside_or_open(figure, computed)
}

fn inside_or_open(figure: Span, computed: Span) -> Result<(), String> {
    let near = |ohms: f64| 1e-7 * ohms.abs() + 1e-9;
    let well = match (figure, computed) {
        (Span::Within { usual, .. }, Span::Within { least, most, .. }) => {
            usual >= least - near(least) && usual <= most + near(most)
        }
        (_, Span::NotComputed) | (Span::NotComputed, _) => true,
        (one, other) => one == other,
    };
    if well { Ok(()) } else { Err(format!("{figure:?} is outside {computed:?}")) }
}

/// The volts of every point that has a connection with `zero`, with these currents driven into points and out at `zero`.
fn volts(wires: &[(usize, usize, f64)], driven: &[(usize, f64)], zero: usize) -> BTreeMap<usize, f64> {
    let points: Vec<usize> = reached(wires, zero).into_iter().filter(|point| *point != zero).collect();
    let row = |point: usize| points.iter().position(|known| *known == point);
    let size = points.len();
    let mut rows = vec![vec![0.0; size + 1]; size];
    for (from, to, ohms) in wires.iter().filter(|(from, to, _)| from != to) {
        for (one, other) in [(*from, *to), (*to, *from)] {
            let Some(here) = row(one) else { continue };
            rows[here][here] += 1.0 / ohms;
            if let Some(there) = row(other) {
                rows[here][there] -= 1.0 / ohms;
            }
        }
    }
    for (point, amperes) in driven {
        rows[row(*point).unwrap()][size] += amperes;
    }
    let solved = solve(rows);
    points.into_iter().zip(solved).chain([(zero, 0.0)]).collect()
}

/// Gauss's elimination with the largest pivot.
fn solve(mut rows: Vec<Vec<f64>>) -> Vec<f64> {
    let size = rows.len();
    for column in 0..size {
        let best = (column..size)
            .max_by(|one, other| rows[*one][column].abs().total_cmp(&rows[*other][column].abs()))
            .unwrap();
        rows.swap(column, best);
        for below in column + 1..size {
            let factor = rows[below][column] / rows[column][column];
            let pivot = rows[column].clone();
            rows[below].iter_mut().zip(pivot).skip(column).for_each(|(place, above)| *place -= factor * above);
        }
    }
    let mut solved = vec![0.0; size];
    for row in (0..size).rev() {
        let known: f64 = (row + 1..size).map(|place| rows[row][place] * solved[place]).sum();
        solved[row] = (rows[row][size] - known) / rows[row][row];
    }
    solved
}

fn reached(wires: &[(usize, usize, f64)], start: usize) -> BTreeSet<usize> {
    let mut reached = BTreeSet::from([start]);
    let mut before = 0;
    while before < reached.len() {
        before = reached.len();
        for (from, to, _) in wires {
            if reached.contains(from) || reached.contains(to) {
                reached.extend([*from, *to]);
            }
        }
    }
    reached
}

/// Numbers that look random and never change (SplitMix64).
struct Numbers(u64);

impl Numbers {
    /// One of the two ends every other time: the extremes are where a range is wrong first.
    fn between(&mut self, least: f64, most: f64) -> f64 {
        match self.next() % 4 {
            0 => least,
            1 => most,
            _ => least + (most - least) * (self.next() >> 11) as f64 / (1_u64 << 53) as f64,
        }
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
}
