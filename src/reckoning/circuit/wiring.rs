//! The network as it stands in a position with a fault: a plain list of links.
//!
//! The order is rest, position, fault, and what a fault joins comes last. So a stuck tip stays apart whatever the position
//! says, and what is lost is gone whatever else is said.

use super::network::{AtRest, Wiring};
use super::{Change, Fault, FaultId, Flaw, Network, Ohms, PieceId, PointId, PositionId, TouchingId, While};

/// Something that conducts, in a position with a fault.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// What conducts.
    pub carrier: Carrier,
    /// One end. Of points made one, the first stands for all.
    pub from: PointId,
    /// The other end.
    pub to: PointId,
    /// Its resistance, with what the fault adds.
    pub ohms: Ohms,
}

/// What conducts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Carrier {
    /// A piece.
    Piece(PieceId),
    /// A closed touching.
    Touching(TouchingId),
    /// What the fault joins: which of its changes, from 0.
    Joined(usize),
}

/// Pieces and touchings as the changes find them; what is gone is `None`.
struct Standing {
    pieces: Vec<Option<Wiring>>,
    touchings: Vec<Option<(Wiring, AtRest)>>,
    joined: Vec<Link>,
}

impl Network {
    /// All that conducts in a position, with a fault or without one: pieces, then closed touchings, then what the fault joins.
    ///
    /// # Errors
    /// [`Flaw::Unknown`] for a position or fault of another network.
    pub fn links(&self, position: PositionId, fault: Option<FaultId>) -> Result<Vec<Link>, Flaw> {
        let mut standing = self.placed(position)?;
        if let Some(id) = fault {
            self.fault_names.known(id.0, "fault")?;
            let acting = self.faults.get(id.0).filter(|fault| acts(fault, position, &standing));
            for (index, change) in acting.iter().flat_map(|fault| fault.changes.iter().enumerate()) {
                self.apply(&mut standing, index, change);
            }
        }
        Ok(self.linked(standing))
    }

    fn placed(&self, position: PositionId) -> Result<Standing, Flaw> {
        let placed = self.positions.get(position.0).ok_or_else(|| Flaw::Unknown(format!("position {}", position.0)))?;
        let touchings = self.touchings.iter().enumerate().map(|(index, (wiring, at_rest))| {
            let state = match (placed.meets.contains(&TouchingId(index)), placed.parts.contains(&TouchingId(index))) {
                (true, _) => AtRest::Touching,
                (false, true) => AtRest::Apart,
                (false, false) => *at_rest,
            };
            Some((*wiring, state))
        });
        Ok(Standing {
            pieces: self.pieces.iter().copied().map(Some).collect(),
            touchings: touchings.collect(),
            joined: Vec::new(),
        })
    }

    fn apply(&self, standing: &mut Standing, index: usize, change: &Change) {
        match *change {
            Change::Lost(piece) => standing.piece(piece, |_| None),
            Change::LostTouching(touching) => standing.touching(touching, |_, _| None),
            Change::MoreOhms(piece, ohms) => standing.piece(piece, |wiring| Some(wiring.with_more(ohms))),
            Change::MoreOhmsTouching(touching, ohms) => {
                standing.touching(touching, |wiring, state| Some((wiring.with_more(ohms), state)));
            }
            Change::NeverTouches(touching) => standing.touching(touching, |wiring, _| Some((wiring, AtRest::Apart))),
            Change::AlwaysTouches(touching) => {
                standing.touching(touching, |wiring, _| Some((wiring, AtRest::Touching)))
            }
            Change::Touches(from, to, ohms) => {
                standing.joined.push(Link {
                    carrier: Carrier::Joined(index),
                    from: self.root(from),
                    to: self.root(to),
                    ohms,
                });
            }
            Change::ChangedOver { pieces, at } => {
                // Refused when the fault was added and when points were joined, so nothing is left out here.
                if let Ok(moved) = self.changed_over(pieces, at) {
                    for (piece, lies) in pieces.into_iter().zip(moved) {
                        standing.piece(piece, |wiring| Some(Wiring { ohms: wiring.ohms, ..lies }));
                    }
                }
            }
        }
    }

    fn linked(&self, standing: Standing) -> Vec<Link> {
        let link = |carrier, wiring: Wiring| Link {
            carrier,
            from: self.root(wiring.from),
            to: self.root(wiring.to),
            ohms: wiring.ohms,
        };
        let pieces = standing.pieces.into_iter().enumerate();
        let pieces =
            pieces.filter_map(|(index, piece)| piece.map(|wiring| link(Carrier::Piece(PieceId(index)), wiring)));
        let touchings = standing.touchings.into_iter().enumerate();
        let closed = touchings.filter_map(|(index, touching)| match touching {
            Some((wiring, AtRest::Touching)) => Some(link(Carrier::Touching(TouchingId(index)), wiring)),
            _ => None,
        });
        pieces.chain(closed).chain(standing.joined).collect()
    }
}

impl Standing {
    fn piece(&mut self, id: PieceId, change: impl FnOnce(Wiring) -> Option<Wiring>) {
        if let Some(piece) = self.pieces.get_mut(id.0) {
            *piece = piece.and_then(change);
        }
    }

    fn touching(&mut self, id: TouchingId, change: impl FnOnce(Wiring, AtRest) -> Option<(Wiring, AtRest)>) {
        if let Some(touching) = self.touchings.get_mut(id.0) {
            *touching = touching.and_then(|(wiring, state)| change(wiring, state));
        }
    }
}

impl Wiring {
    fn with_more(self, more: Ohms) -> Wiring {
        Wiring { ohms: self.ohms.in_series(more), ..self }
    }
}

fn acts(fault: &Fault, position: PositionId, standing: &Standing) -> bool {
    match fault.only_while {
        None => true,
        Some(While::Position(only)) => only == position,
        Some(While::Touching(touching)) => {
            matches!(standing.touchings.get(touching.0), Some(Some((_, AtRest::Touching))))
        }
    }
}
