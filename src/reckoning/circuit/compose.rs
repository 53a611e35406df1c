//! Circuits made of circuits: taking one network into another under a prefix, and making two points one.

use super::{Change, Fault, Flaw, Network, PieceId, PointId, PositionId, TouchingId, While, Wiring};

impl Network {
    /// Makes two points one, as when a plug goes into its socket. Both names stay good.
    ///
    /// # Errors
    /// [`Flaw::Unknown`]; [`Flaw::SamePoint`] if a piece, a touching or a fault would then begin and end at the same point,
    /// [`Flaw::NotOneEach`] if a change-over would lose its meaning. The network is then as it was.
    pub fn join(&mut self, one: PointId, other: PointId) -> Result<(), Flaw> {
        self.point_names.known(one.0, "point")?;
        self.point_names.known(other.0, "point")?;
        let (one, other) = (self.root(one), self.root(other));
        let (first, second) = (one.min(other), one.max(other));
        let before = self.same.clone();
        self.remembered.forget();
        for point in &mut self.same {
            if *point == second {
                *point = first;
            }
        }
        let sound = self.sound();
        if sound.is_err() {
            self.same = before;
        }
        sound
    }

    /// Takes in all of another network but its readings and its `rest`, every name with `prefix` before it.
    ///
    /// # Errors
    /// [`Flaw::Taken`] and [`Flaw::TooMany`]; the network is then half filled and of no use.
    pub fn take_in(&mut self, prefix: &str, other: &Network) -> Result<(), Flaw> {
        let shift = self.take_in_wiring(prefix, other)?;
        for (fault, name) in other.faults.iter().zip(other.fault_names.iter()) {
            self.fault(&format!("{prefix}{name}"), shift.fault(fault))?;
        }
        Ok(())
    }

    /// As [`Network::take_in`], but leaves the faults out: for the side of a bout that is sound.
    ///
    /// # Errors
    /// As [`Network::take_in`].
    pub fn take_in_sound(&mut self, prefix: &str, other: &Network) -> Result<(), Flaw> {
        self.take_in_wiring(prefix, other).map(|_| ())
    }

    fn take_in_wiring(&mut self, prefix: &str, other: &Network) -> Result<Shift, Flaw> {
        let shift = Shift {
            points: self.point_names.len(),
            pieces: self.pieces.len(),
            touchings: self.touchings.len(),
            positions: self.positions.len(),
        };
        for (name, root) in other.point_names.iter().zip(&other.same) {
            self.point(&format!("{prefix}{name}"))?;
            // A root is never later than what it stands for, so it is in already.
            if let Some(same) = self.same.last_mut() {
                *same = shift.point(*root);
            }
        }
        for (piece, name) in other.pieces.iter().zip(other.piece_names.iter()) {
            self.piece(&format!("{prefix}{name}"), shift.wiring(*piece))?;
        }
        for ((touching, at_rest), name) in other.touchings.iter().zip(other.touching_names.iter()) {
            self.touching(&format!("{prefix}{name}"), shift.wiring(*touching), *at_rest)?;
        }
        for (position, name) in other.positions.iter().zip(other.position_names.iter()).skip(1) {
            let (meets, parts) = (shift.touchings(&position.meets), shift.touchings(&position.parts));
            self.position(&format!("{prefix}{name}"), &meets, &parts)?;
        }
        Ok(shift)
    }

    /// Whether everything still has two ends, after points were made one.
    fn sound(&self) -> Result<(), Flaw> {
        for (piece, name) in self.pieces.iter().zip(self.piece_names.iter()) {
            self.two_ends(name, piece.from, piece.to)?;
        }
        for ((touching, _), name) in self.touchings.iter().zip(self.touching_names.iter()) {
            self.two_ends(name, touching.from, touching.to)?;
        }
        for (fault, name) in self.faults.iter().zip(self.fault_names.iter()) {
            for change in &fault.changes {
                self.check_change(name, change)?;
            }
        }
        for reading in &self.readings {
            reading.check(self)?;
        }
        Ok(())
    }
}

/// Where what another network numbered from 0 begins in this one.
struct Shift {
    points: usize,
    pieces: usize,
    touchings: usize,
    positions: usize,
}

impl Shift {
    fn point(&self, point: PointId) -> PointId {
        PointId(self.points + point.0)
    }

    fn piece(&self, piece: PieceId) -> PieceId {
        PieceId(self.pieces + piece.0)
    }

    fn touching(&self, touching: TouchingId) -> TouchingId {
        TouchingId(self.touchings + touching.0)
    }

    /// `rest` is one for all and not taken in.
    fn position(&self, position: PositionId) -> PositionId {
        if position == Network::REST { position } else { PositionId(self.positions + position.0 - 1) }
    }

    fn touchings(&self, touchings: &[TouchingId]) -> Vec<TouchingId> {
        touchings.iter().map(|touching| self.touching(*touching)).collect()
    }

    fn wiring(&self, wiring: Wiring) -> Wiring {
        Wiring { from: self.point(wiring.from), to: self.point(wiring.to), ohms: wiring.ohms }
    }

    fn fault(&self, fault: &Fault) -> Fault {
        Fault {
            changes: fault.changes.iter().map(|change| self.change(change)).collect(),
            only_while: fault.only_while.map(|only| match only {
                While::Touching(touching) => While::Touching(self.touching(touching)),
                While::Position(position) => While::Position(self.position(position)),
            }),
            steadiness: fault.steadiness,
        }
    }

    fn change(&self, change: &Change) -> Change {
        match change {
            Change::Lost(piece) => Change::Lost(self.piece(*piece)),
            Change::LostTouching(touching) => Change::LostTouching(self.touching(*touching)),
            Change::Touches(from, to, ohms) => Change::Touches(self.point(*from), self.point(*to), *ohms),
            Change::MoreOhms(piece, ohms) => Change::MoreOhms(self.piece(*piece), *ohms),
            Change::MoreOhmsTouching(touching, ohms) => Change::MoreOhmsTouching(self.touching(*touching), *ohms),
            Change::NeverTouches(touching) => Change::NeverTouches(self.touching(*touching)),
            Change::AlwaysTouches(touching) => Change::AlwaysTouches(self.touching(*touching)),
            Change::ChangedOver { pieces, at } => Change::ChangedOver {
                pieces: pieces.map(|piece| self.piece(piece)),
                at: at.map(|point| self.point(point)),
            },
        }
    }
}
