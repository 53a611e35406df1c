//! What can be read off a network: lamps, meters, the two-lamp tester, the lamps of the apparatus.

use super::{Condition, Fact, Flaw, Network, PointId, PositionId, Threshold};

/// Two points that are probed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Pair {
    /// One probe.
    pub one: PointId,
    /// The other probe.
    pub other: PointId,
}

/// In which position something is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum At {
    /// In the position that is asked for.
    Here,
    /// In this one, whichever is asked for.
    Position(PositionId),
}

/// A quantity in ohms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// The resistance between two points, all others free.
    Between(Pair),
    /// One resistance less another one of the same circuit: what both share cancels.
    Less {
        /// What is measured first.
        first: (Pair, At),
        /// What is taken off.
        second: (Pair, At),
    },
}

/// Something that a person reads.
#[derive(Debug, Clone, PartialEq)]
pub enum Reading {
    /// A lamp or a buzzer in a loop of its own, with its figures in ohms.
    Lamp {
        /// What it hangs between.
        between: Pair,
        /// When it is lit, or sounds.
        lit: Threshold,
    },
    /// A lamp of a tester whose battery and lamps form one network.
    TesterLamp {
        /// The tester.
        tester: Tester,
        /// Which of its lamps, from 0.
        lamp: usize,
    },
    /// An ohmmeter, its leads being part of the network.
    Ohmmeter {
        /// What it measures.
        measure: Measure,
        /// The limit, ohms, if one is set.
        at_most: Option<f64>,
        /// From here on it shows no figure, ohms.
        open_from: f64,
    },
    /// A lamp of the scoring apparatus.
    ApparatusLamp {
        /// What the condition's numbers stand for.
        facts: Vec<Fact>,
        /// When it is lit.
        lit: Condition,
    },
}

/// A tester with one battery: its one pole at a pin, the other with a lamp to each of some other pins.
#[derive(Debug, Clone, PartialEq)]
pub struct Tester {
    /// The pin that the battery's one pole is at.
    pub battery: PointId,
    /// The battery's volts without load.
    pub volts: f64,
    /// The battery's own ohms.
    pub inside: f64,
    /// The lamps: the pin that each leads to and its ohms when it glows.
    pub lamps: Vec<(PointId, f64)>,
    /// A lamp is lit for certain from so many amperes.
    pub lit_from: f64,
    /// A lamp is dark for certain up to so many amperes.
    pub dark_to: f64,
}

/// How many facts an apparatus's lamp takes.
const MOST_FACTS: usize = 32;
/// How many lamps a tester takes.
const MOST_LAMPS: usize = 4;

impl Reading {
    /// Whether it means something in this network.
    pub(super) fn check(&self, network: &Network) -> Result<(), Flaw> {
        match self {
            Reading::Lamp { between, .. } => network.known_pair(*between),
            Reading::TesterLamp { tester, lamp } => tester.check(network, *lamp),
            Reading::Ohmmeter { measure, at_most, open_from } => {
                if !open_from.is_finite() || at_most.is_some_and(|limit| !limit.is_finite() || limit > *open_from) {
                    return Err(Flaw::Figure("the limit must not lie over the meter's range".to_owned()));
                }
                network.known_measure(measure)
            }
            Reading::ApparatusLamp { facts, lit } => {
                if facts.len() > MOST_FACTS {
                    return Err(Flaw::TooMany("facts", MOST_FACTS));
                }
                facts.iter().try_for_each(|fact| network.known_measure(&fact.measure))?;
                lit.check(facts.len())
            }
        }
    }
}

impl Tester {
    fn check(&self, network: &Network, lamp: usize) -> Result<(), Flaw> {
        if lamp >= self.lamps.len() {
            return Err(Flaw::Unknown(format!("lamp {lamp}")));
        }
        if self.lamps.len() > MOST_LAMPS {
            return Err(Flaw::TooMany("lamps", MOST_LAMPS));
        }
        for (pin, _) in &self.lamps {
            network.two_ends("lamp", self.battery, *pin)?;
        }
        let ohms = self.lamps.iter().map(|(_, ohms)| *ohms);
        let above_nothing = |figure: f64| (1e-6..=1e9).contains(&figure);
        if ![self.volts, self.inside, self.lit_from].into_iter().chain(ohms).all(above_nothing) {
            return Err(Flaw::Figure("a tester's volts, ohms and amperes must lie above nothing".to_owned()));
        }
        if !(0.0..=self.lit_from).contains(&self.dark_to) {
            return Err(Flaw::Figure("a lamp must be dark at fewer amperes than it is lit at".to_owned()));
        }
        Ok(())
    }
}

impl Network {
    pub(super) fn known_pair(&self, pair: Pair) -> Result<(), Flaw> {
        self.point_names.known(pair.one.0, "point")?;
        self.point_names.known(pair.other.0, "point")
    }

    fn known_measure(&self, measure: &Measure) -> Result<(), Flaw> {
        let known = |(pair, at): (Pair, At)| {
            self.known_pair(pair)?;
            match at {
                At::Here => Ok(()),
                At::Position(position) => self.position_names.known(position.0, "position"),
            }
        };
        match *measure {
            Measure::Between(pair) => self.known_pair(pair),
            Measure::Less { first, second } => known(first).and_then(|()| known(second)),
        }
    }
}
