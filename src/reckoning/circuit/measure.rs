//! The range of a resistance, and of a difference of two resistances of the same circuit.
//!
//! A resistance between two points never falls when a piece's ohms rise (Rayleigh's monotonicity law), so its range is that of
//! two solves. A difference is not monotone in that joint way. In one and the same network both resistances share their
//! denominator (Kirchhoff's sum over spanning trees), so it is monotone in each piece alone and corners are exact. Between
//! two positions each shared piece is judged by itself, see [`Share`].

use std::collections::{BTreeMap, BTreeSet};

use super::corners::{Edge, Turn, corners, wires};
use super::live::on_the_way;
use super::solve::{Wire, resistance, resistance_of};
use super::{At, Carrier, FaultId, Flaw, Link, Measure, Network, Ohms, Pair, PositionId, Span};

impl Network {
    /// What a meter would show for a measure in a position, with a fault or without one, in ohms.
    ///
    /// # Errors
    /// [`Flaw::Unknown`] for anything of another network.
    pub fn measure(&self, measure: &Measure, position: PositionId, fault: Option<FaultId>) -> Result<Span, Flaw> {
        self.measured(measure, position, fault, &self.links(position, fault)?)
    }

    /// The same, where it is known already what conducts in the position: the lamps of an apparatus look at it many times.
    pub(super) fn measured(
        &self,
        measure: &Measure,
        position: PositionId,
        fault: Option<FaultId>,
        here: &[Link],
    ) -> Result<Span, Flaw> {
        let probed = |(pair, at): (Pair, At)| match at {
            At::Position(other) if other != position => Probed::new(self, pair, other, self.links(other, fault)?),
            _ => Probed::new(self, pair, position, here.to_vec()),
        };
        match *measure {
            Measure::Between(pair) => Ok(probed((pair, At::Here))?.span()),
            Measure::Less { first, second } => {
                let (one, other) = (probed(first)?, probed(second)?);
                Ok(one.less(&other))
            }
        }
    }
}

/// Two probed points in the network as it stands.
struct Probed {
    position: PositionId,
    one: usize,
    other: usize,
    links: Vec<Link>,
    edges: Vec<Edge>,
    live: Vec<usize>,
}

/// How a piece takes part in a resistance: how far the resistance follows it (the square of the share of the current in it).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Share {
    /// All the current: the resistance follows it ohm for ohm.
    Whole,
    /// Part of the current: the resistance follows it by less than ohm for ohm, how far depends on the others.
    Part,
}

/// A piece's range as one resistance sees it.
#[derive(Debug, Clone, Copy)]
struct Seat {
    ohms: Ohms,
    share: Share,
}

impl Probed {
    fn new(network: &Network, pair: Pair, position: PositionId, links: Vec<Link>) -> Result<Probed, Flaw> {
        network.known_pair(pair)?;
        let edges: Vec<Edge> =
            links.iter().map(|link| Edge { from: link.from.0, to: link.to.0, ohms: link.ohms }).collect();
        let (one, other) = (network.root(pair.one).0, network.root(pair.other).0);
        let ends: Vec<(usize, usize)> = edges.iter().map(|edge| (edge.from, edge.to)).collect();
        let live = on_the_way(&ends, one, other);
        Ok(Probed { position, one, other, links, edges, live })
    }

    fn is_open(&self) -> bool {
        self.one != self.other && self.live.is_empty()
    }

    fn span(&self) -> Span {
        if self.is_open() {
            return Span::Open;
        }
        let live = self.live_edges();
        let at = |figure: fn(Ohms) -> f64| match self.one == self.other {
            true => 0.0,
            false => resistance_of(&wires(&live, figure), self.one, self.other),
        };
        Span::Within { least: at(Ohms::least), usual: at(Ohms::usual), most: at(Ohms::most) }
    }

    fn live_edges(&self) -> Vec<Edge> {
        self.live.iter().filter_map(|&index| self.edges.get(index)).copied().collect()
    }

    /// This resistance less the other one.
    fn less(&self, other: &Probed) -> Span {
        match (self.is_open(), other.is_open()) {
            (true, true) => return Span::Undefined,
            (true, false) => return Span::Open,
            (false, true) => return Span::FarUnder,
            (false, false) => {}
        }
        if self.position == other.position {
            let span = self.less_here(other);
            if span != Span::NotComputed {
                return span;
            }
        }
        self.less_elsewhere(other)
    }

    /// The same network: corners.
    fn less_here(&self, other: &Probed) -> Span {
        let live: BTreeSet<usize> = self.live.iter().chain(&other.live).copied().collect();
        let edges: Vec<Edge> = live.into_iter().filter_map(|index| self.edges.get(index)).copied().collect();
        let kept = [self.one, self.other, other.one, other.other];
        let turns = |edges: &[Edge]| {
            let (mine, theirs) = (shares(edges, self.one, self.other), shares(edges, other.one, other.other));
            mine.into_iter().zip(theirs).map(|(mine, theirs)| turn(mine, theirs)).collect()
        };
        corners(&edges, &kept, turns, |wires| {
            let between = |probed: &Probed| resistance(wires, probed.one, probed.other).unwrap_or(f64::INFINITY);
            between(self) - between(other)
        })
    }

    /// Two positions: the most is reached with every piece at the end that its share says, the least at the other ends.
    /// Exact unless a piece lies in a loop both times; then never narrower than the truth.
    fn less_elsewhere(&self, other: &Probed) -> Span {
        let (mine, theirs) = (self.seats(), other.seats());
        let extreme = |end: End| self.at(&theirs, Side::First, end) - other.at(&mine, Side::Second, end);
        let usual = |probed: &Probed| probed.solve(|seat, _| seat.ohms.usual());
        Span::Within { least: extreme(End::Least), usual: usual(self) - usual(other), most: extreme(End::Most) }
    }

    /// The resistance with every piece where it brings the *difference* to this end of its range.
    fn at(&self, elsewhere: &BTreeMap<Carrier, Seat>, side: Side, end: End) -> f64 {
        self.solve(|seat, carrier| {
            let (first, second) = match (side, elsewhere.get(&carrier)) {
                (Side::First, found) => (Some(seat), found.copied()),
                (Side::Second, found) => (found.copied(), Some(seat)),
            };
            match (first, second) {
                (Some(first), Some(second)) if first.ohms == second.ohms => {
                    match (first.share, second.share) {
                        (Share::Whole, Share::Whole | Share::Part) => end.of(seat.ohms),
                        (Share::Part, Share::Whole) => end.opposite().of(seat.ohms),
                        // Which of the two follows it further is not known: each takes its own worst end.
                        (Share::Part, Share::Part) => side.own(end).of(seat.ohms),
                    }
                }
                _ => side.own(end).of(seat.ohms),
            }
        })
    }

    fn seats(&self) -> BTreeMap<Carrier, Seat> {
        let ends: Vec<(usize, usize)> = self.edges.iter().map(|edge| (edge.from, edge.to)).collect();
        let seat = |&index: &usize| {
            let link = self.links.get(index)?;
            let without: Vec<(usize, usize)> =
                self.live.iter().filter(|live| **live != index).filter_map(|&live| ends.get(live)).copied().collect();
            let share = if on_the_way(&without, self.one, self.other).is_empty() { Share::Whole } else { Share::Part };
            Some((link.carrier, Seat { ohms: link.ohms, share }))
        };
        self.live.iter().filter_map(seat).collect()
    }

    fn solve(&self, figure: impl Fn(Seat, Carrier) -> f64) -> f64 {
        let seats = self.seats();
        let wire = |&index: &usize| {
            let link = self.links.get(index)?;
            let seat = seats.get(&link.carrier)?;
            Some(Wire { from: link.from.0, to: link.to.0, ohms: figure(*seat, link.carrier) })
        };
        let wires: Vec<Wire> = self.live.iter().filter_map(wire).collect();
        resistance(&wires, self.one, self.other).unwrap_or(f64::INFINITY)
    }
}

/// How each of these edges takes part in a resistance; nothing if it carries none of its current.
fn shares(edges: &[Edge], one: usize, other: usize) -> Vec<Option<Share>> {
    let ends: Vec<(usize, usize)> = edges.iter().map(|edge| (edge.from, edge.to)).collect();
    let live = on_the_way(&ends, one, other);
    let share = |index: usize| {
        let without: Vec<(usize, usize)> =
            live.iter().filter(|other| **other != index).filter_map(|&other| ends.get(other)).copied().collect();
        let whole = on_the_way(&without, one, other).is_empty();
        live.contains(&index).then_some(if whole { Share::Whole } else { Share::Part })
    };
    (0..edges.len()).map(share).collect()
}

/// Which way a difference goes with a piece: up with the square of its share of the current in the first resistance, down with
/// that in the second (Cohn 1950), and a share is at most the whole.
fn turn(first: Option<Share>, second: Option<Share>) -> Turn {
    match (first, second) {
        (_, None) | (Some(Share::Whole), _) => Turn::Rises,
        (None, _) | (_, Some(Share::Whole)) => Turn::Falls,
        (Some(Share::Part), Some(Share::Part)) => Turn::Either,
    }
}

/// Which of the two resistances of a difference.
#[derive(Debug, Clone, Copy)]
enum Side {
    First,
    Second,
}

/// An end of a range.
#[derive(Debug, Clone, Copy)]
enum End {
    Least,
    Most,
}

impl Side {
    /// The first grows with its pieces, the second is taken off.
    fn own(self, end: End) -> End {
        match self {
            Side::First => end,
            Side::Second => end.opposite(),
        }
    }
}

impl End {
    fn of(self, ohms: Ohms) -> f64 {
        match self {
            End::Least => ohms.least(),
            End::Most => ohms.most(),
        }
    }

    fn opposite(self) -> End {
        match self {
            End::Least => End::Most,
            End::Most => End::Least,
        }
    }
}
