//! Random networks against `networkx.resistance_distance`.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::io::Write;
use std::process::{Command, Stdio};

use coquille::reckoning::circuit::{Measure, Network, Ohms, Pair, Span, Wiring};

/// How many networks.
const NETWORKS: usize = 2000;

#[test]
#[ignore = "needs python3 with networkx: run by tests/run"]
fn random_networks_have_the_resistance_that_networkx_computes() {
    let mut dice = Dice(20_261_125);
    let networks: Vec<Vec<(usize, usize, f64)>> = (0..NETWORKS).map(|_| random_pieces(&mut dice)).collect();
    let theirs = by_networkx(&networks);
    assert_eq!(theirs.len(), NETWORKS);
    let mut opens = 0;
    for (pieces, theirs) in networks.iter().zip(&theirs) {
        match resistance(pieces) {
            Span::Open => {
                opens += 1;
                assert_eq!(theirs, "open", "{pieces:?}");
            }
            Span::Within { usual, .. } => {
                let theirs: f64 = theirs.parse().unwrap();
                assert!((usual - theirs).abs() <= 1e-8 * usual, "ours {usual}, theirs {theirs}, {pieces:?}");
            }
            other => panic!("{other:?}"),
        }
    }
    assert!(opens > NETWORKS / 20 && opens < NETWORKS / 2, "both kinds occur: {opens} open");
}

fn resistance(pieces: &[(usize, usize, f64)]) -> Span {
    let mut network = Network::new();
    let points: Vec<_> = (0..16).map(|index| network.point(&format!("p{index}")).unwrap()).collect();
    for (index, &(from, to, ohms)) in pieces.iter().enumerate() {
        let wiring = Wiring { from: points[from], to: points[to], ohms: Ohms::exactly(ohms).unwrap() };
        network.piece(&format!("r{index}"), wiring).unwrap();
    }
    network.measure(&Measure::Between(Pair { one: points[0], other: points[1] }), Network::REST, None).unwrap()
}

fn by_networkx(networks: &[Vec<(usize, usize, f64)>]) -> Vec<String> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/resistance.py");
    let mut python = Command::new("python3").arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    let line = |pieces: &Vec<(usize, usize, f64)>| {
        pieces.iter().map(|(from, to, ohms)| format!("{from} {to} {ohms:?}")).collect::<Vec<_>>().join(" ")
    };
    let text = networks.iter().map(line).collect::<Vec<_>>().join("\n");
    let mut input = python.stdin.take().unwrap();
    let writer = std::thread::spawn(move || input.write_all(text.as_bytes()).unwrap());
    let output = python.wait_with_output().unwrap();
    writer.join().unwrap();
    assert!(output.status.success());
    String::from_utf8(output.stdout).unwrap().lines().map(str::to_owned).collect()
}

/// Up to 16 points, up to 24 pieces from 10 milliohms to 1 kiloohm, some side by side, some dangling.
fn random_pieces(dice: &mut Dice) -> Vec<(usize, usize, f64)> {
    let points = 2 + dice.below(15);
    let mut pieces = Vec::new();
    for _ in 0..1 + dice.below(24) {
        let (from, to) = (dice.below(points), dice.below(points));
        let tenth_powers = [0.01, 0.1, 1.0, 10.0, 100.0];
        let ohms = tenth_powers[dice.below(5)] * (1.0 + dice.below(9000) as f64 / 1000.0);
        if from != to {
            pieces.push((from, to, ohms));
        }
    }
    pieces
}

/// A linear congruential generator (Knuth's MMIX constants): the same networks at every run.
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % sides
    }
}
