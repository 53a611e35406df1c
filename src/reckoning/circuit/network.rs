//! A network and how it is put together: points, pieces, touchings, positions, faults, readings; circuits used in circuits.

use super::names::Names;
use super::remembered::Remembered;
use super::{Change, Fault, Flaw, Ohms, Reading, While};

/// How many points, pieces, touchings, positions, faults and readings a network takes.
const MOST_POINTS: usize = 128;
const MOST_PIECES: usize = 256;
const MOST_TOUCHINGS: usize = 64;
const MOST_POSITIONS: usize = 64;
const MOST_FAULTS: usize = 256;
const MOST_READINGS: usize = 64;

macro_rules! index {
    ($($(#[$doc:meta])* $name:ident),*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub struct $name(pub(super) usize);

        impl $name {
            /// Its place in the order in which they were added, from 0.
            pub fn index(self) -> usize {
                self.0
            }
        }
    )*};
}

index!(
    /// A point of a network.
    PointId,
    /// A piece of a network.
    PieceId,
    /// A touching of a network.
    TouchingId,
    /// A position of a network.
    PositionId,
    /// A fault of a network.
    FaultId,
    /// A reading of a network.
    ReadingId
);

/// The state of a contact when nothing is pressed or touched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AtRest {
    /// Closed.
    Touching,
    /// Open.
    Apart,
}

/// Two points and the resistance between them: a piece, or a touching while it is closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wiring {
    /// One end.
    pub from: PointId,
    /// The other end.
    pub to: PointId,
    /// Its resistance.
    pub ohms: Ohms,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) struct Position {
    pub meets: Vec<TouchingId>,
    pub parts: Vec<TouchingId>,
}

/// Points joined by resistances, with contacts, positions, faults and readings.
#[derive(Debug, Clone)]
pub struct Network {
    /// For every point the first of those it is one with; itself unless joined.
    pub(super) same: Vec<PointId>,
    pub(super) point_names: Names,
    pub(super) pieces: Vec<Wiring>,
    pub(super) piece_names: Names,
    pub(super) touchings: Vec<(Wiring, AtRest)>,
    pub(super) touching_names: Names,
    pub(super) positions: Vec<Position>,
    pub(super) position_names: Names,
    pub(super) faults: Vec<Fault>,
    pub(super) fault_names: Names,
    pub(super) readings: Vec<Reading>,
    pub(super) reading_names: Names,
    pub(super) remembered: Remembered,
}

impl Default for Network {
    fn default() -> Network {
        let mut position_names = Names::default();
        // The first of 64 names is never refused.
        let _rest = position_names.enter("rest", "positions", MOST_POSITIONS);
        Network {
            same: Vec::new(),
            point_names: Names::default(),
            pieces: Vec::new(),
            piece_names: Names::default(),
            touchings: Vec::new(),
            touching_names: Names::default(),
            positions: vec![Position { meets: Vec::new(), parts: Vec::new() }],
            position_names,
            faults: Vec::new(),
            fault_names: Names::default(),
            readings: Vec::new(),
            reading_names: Names::default(),
            remembered: Remembered::default(),
        }
    }
}

impl Network {
    /// The position in which nothing is pressed or touched. Every network has it, under the name `rest`.
    pub const REST: PositionId = PositionId(0);

    /// A network with nothing in it but the position `rest`.
    pub fn new() -> Network {
        Network::default()
    }

    /// Adds a point.
    ///
    /// # Errors
    /// [`Flaw::Taken`], [`Flaw::TooMany`].
    pub fn point(&mut self, name: &str) -> Result<PointId, Flaw> {
        let id = PointId(self.point_names.enter(name, "points", MOST_POINTS)?);
        self.same.push(id);
        Ok(id)
    }

    /// Adds a piece.
    ///
    /// # Errors
    /// [`Flaw::Taken`], [`Flaw::TooMany`], [`Flaw::SamePoint`], [`Flaw::Unknown`].
    pub fn piece(&mut self, name: &str, wiring: Wiring) -> Result<PieceId, Flaw> {
        self.two_ends(name, wiring.from, wiring.to)?;
        let id = PieceId(self.piece_names.enter(name, "pieces", MOST_PIECES)?);
        self.pieces.push(wiring);
        self.remembered.forget();
        Ok(id)
    }

    /// Adds a touching: a contact that positions open or close.
    ///
    /// # Errors
    /// As [`Network::piece`].
    pub fn touching(&mut self, name: &str, wiring: Wiring, at_rest: AtRest) -> Result<TouchingId, Flaw> {
        self.two_ends(name, wiring.from, wiring.to)?;
        let id = TouchingId(self.touching_names.enter(name, "touchings", MOST_TOUCHINGS)?);
        self.touchings.push((wiring, at_rest));
        self.remembered.forget();
        Ok(id)
    }

    /// Adds a position: what meets and what parts in it; all else is as at rest.
    ///
    /// # Errors
    /// [`Flaw::Taken`], [`Flaw::TooMany`], [`Flaw::Unknown`], [`Flaw::MeetsAndParts`].
    pub fn position(&mut self, name: &str, meets: &[TouchingId], parts: &[TouchingId]) -> Result<PositionId, Flaw> {
        for touching in meets.iter().chain(parts) {
            self.touching_names.known(touching.0, "touching")?;
        }
        if let Some(both) = meets.iter().find(|touching| parts.contains(touching)) {
            return Err(Flaw::MeetsAndParts(self.touching_names.name(both.0).to_owned()));
        }
        let id = PositionId(self.position_names.enter(name, "positions", MOST_POSITIONS)?);
        self.positions.push(Position { meets: meets.to_vec(), parts: parts.to_vec() });
        Ok(id)
    }

    /// Adds a fault.
    ///
    /// # Errors
    /// [`Flaw::Taken`], [`Flaw::TooMany`], [`Flaw::Unknown`], [`Flaw::SamePoint`], [`Flaw::NotOneEach`].
    pub fn fault(&mut self, name: &str, fault: Fault) -> Result<FaultId, Flaw> {
        for change in &fault.changes {
            self.check_change(name, change)?;
        }
        match fault.only_while {
            Some(While::Touching(touching)) => self.touching_names.known(touching.0, "touching")?,
            Some(While::Position(position)) => self.position_names.known(position.0, "position")?,
            None => {}
        }
        let id = FaultId(self.fault_names.enter(name, "faults", MOST_FAULTS)?);
        self.faults.push(fault);
        Ok(id)
    }

    /// Adds a reading: a lamp, a meter, a lamp of the apparatus.
    ///
    /// # Errors
    /// [`Flaw::Taken`], [`Flaw::TooMany`], [`Flaw::Unknown`], [`Flaw::Figure`], [`Flaw::SamePoint`].
    pub fn reading(&mut self, name: &str, reading: Reading) -> Result<ReadingId, Flaw> {
        reading.check(self)?;
        let id = ReadingId(self.reading_names.enter(name, "readings", MOST_READINGS)?);
        self.readings.push(reading);
        Ok(id)
    }

    /// All faults, in the order in which they were added.
    pub fn faults(&self) -> impl Iterator<Item = FaultId> + use<> {
        (0..self.faults.len()).map(FaultId)
    }

    /// All positions, `rest` first.
    pub fn positions(&self) -> impl Iterator<Item = PositionId> + use<> {
        (0..self.positions.len()).map(PositionId)
    }

    /// All readings, in the order in which they were added.
    pub fn readings(&self) -> impl Iterator<Item = ReadingId> + use<> {
        (0..self.readings.len()).map(ReadingId)
    }

    /// What a reading is.
    pub fn reading_of(&self, reading: ReadingId) -> Option<&Reading> {
        self.readings.get(reading.0)
    }

    /// What a fault is.
    pub fn fault_of(&self, fault: FaultId) -> Option<&Fault> {
        self.faults.get(fault.0)
    }

    /// The point that stands in the links for this one and all that it is joined with.
    pub fn stands_for(&self, point: PointId) -> PointId {
        self.root(point)
    }

    pub(super) fn root(&self, point: PointId) -> PointId {
        self.same.get(point.0).copied().unwrap_or(point)
    }

    pub(super) fn two_ends(&self, name: &str, from: PointId, to: PointId) -> Result<(), Flaw> {
        self.point_names.known(from.0, "point")?;
        self.point_names.known(to.0, "point")?;
        if self.root(from) == self.root(to) { Err(Flaw::SamePoint(name.to_owned())) } else { Ok(()) }
    }

    pub(super) fn check_change(&self, name: &str, change: &Change) -> Result<(), Flaw> {
        match change {
            Change::Lost(piece) | Change::MoreOhms(piece, _) => self.piece_names.known(piece.0, "piece"),
            Change::LostTouching(touching)
            | Change::MoreOhmsTouching(touching, _)
            | Change::NeverTouches(touching)
            | Change::AlwaysTouches(touching) => self.touching_names.known(touching.0, "touching"),
            Change::Touches(from, to, _) => self.two_ends(name, *from, *to),
            Change::ChangedOver { pieces, at } => self.changed_over(*pieces, *at).map(|_| ()),
        }
    }

    /// The two pieces as they lie once changed over.
    ///
    /// # Errors
    /// [`Flaw::NotOneEach`] unless each has exactly one end at one of the points, and not at the same one.
    pub(super) fn changed_over(&self, pieces: [PieceId; 2], at: [PointId; 2]) -> Result<[Wiring; 2], Flaw> {
        let [one, other] = pieces;
        let wrong =
            || Flaw::NotOneEach(self.piece_names.name(one.0).to_owned(), self.piece_names.name(other.0).to_owned());
        let (Some(first), Some(second)) = (self.pieces.get(one.0), self.pieces.get(other.0)) else {
            return Err(wrong());
        };
        let [here, there] = at.map(|point| self.root(point));
        let (straight, crossed) = (
            (self.moved(*first, here, there), self.moved(*second, there, here)),
            (self.moved(*first, there, here), self.moved(*second, here, there)),
        );
        match (straight, crossed) {
            ((Some(first), Some(second)), (None, None)) | ((None, None), (Some(first), Some(second))) => {
                Ok([first, second])
            }
            _ => Err(wrong()),
        }
    }

    /// A piece with its one end at `here` moved to `there`; nothing unless it has one end at `here` and none at `there`.
    fn moved(&self, piece: Wiring, here: PointId, there: PointId) -> Option<Wiring> {
        let (from, to) = (self.root(piece.from), self.root(piece.to));
        if from == there || to == there || here == there {
            return None;
        }
        match (from == here, to == here) {
            (true, false) => Some(Wiring { from: there, ..piece }),
            (false, true) => Some(Wiring { to: there, ..piece }),
            _ => None,
        }
    }
}

macro_rules! named {
    ($($what:literal: $find:ident, $name:ident, $list:ident, $id:ident, $names:ident;)*) => {
        impl Network {$(
            #[doc = concat!("The ", $what, " of this name.")]
            pub fn $find(&self, name: &str) -> Option<$id> {
                self.$names.place(name).map($id)
            }

            #[doc = concat!("The name of a ", $what, "; `?` for one of another network.")]
            pub fn $name(&self, id: $id) -> &str {
                self.$names.name(id.0)
            }

            #[doc = concat!("The names of all ", $what, "s, in the order in which they were added.")]
            pub fn $list(&self) -> impl Iterator<Item = &str> {
                self.$names.iter()
            }
        )*}
    };
}

named! {
    "point": find_point, point_name, points_by_name, PointId, point_names;
    "piece": find_piece, piece_name, pieces_by_name, PieceId, piece_names;
    "touching": find_touching, touching_name, touchings_by_name, TouchingId, touching_names;
    "position": find_position, position_name, positions_by_name, PositionId, position_names;
    "fault": find_fault, fault_name, faults_by_name, FaultId, fault_names;
    "reading": find_reading, reading_name, readings_by_name, ReadingId, reading_names;
}
