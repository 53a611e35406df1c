//! Faults as changes to a network.

use super::{Ohms, PieceId, PointId, PositionId, TouchingId};

/// A fault: what it changes, when, and whether it comes and goes.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// What it changes, all at once.
    pub changes: Vec<Change>,
    /// Only then, or always if nothing is named.
    pub only_while: Option<While>,
    /// Whether it stays or comes and goes.
    pub steadiness: Steadiness,
}

/// One change to a network. Touchings are changed after the position has set them, so a tip that is stuck down stays apart
/// whatever the position says; what is lost is gone whatever else is said; what is joined comes last.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// The piece no longer conducts, or is gone.
    Lost(PieceId),
    /// The contact is gone: its two points can no longer meet.
    LostTouching(TouchingId),
    /// Two points that should have nothing to do with each other touch.
    Touches(PointId, PointId, Ohms),
    /// The piece has so many ohms more.
    MoreOhms(PieceId, Ohms),
    /// The contact, where it is closed, has so many ohms more.
    MoreOhmsTouching(TouchingId, Ohms),
    /// The contact stays open.
    NeverTouches(TouchingId),
    /// The contact stays closed.
    AlwaysTouches(TouchingId),
    /// Two pieces have changed places at two points: each has exactly one end at its own of them.
    ChangedOver {
        /// The two pieces.
        pieces: [PieceId; 2],
        /// The two points at which their ends are exchanged.
        at: [PointId; 2],
    },
}

/// When a fault acts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum While {
    /// While the position has this contact closed.
    Touching(TouchingId),
    /// In this position only.
    Position(PositionId),
}

/// Whether a fault stays or comes and goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Steadiness {
    /// There all the time.
    Steady,
    /// Now there, now not: a reading can be either state's, and can flicker where they differ.
    NowAndThen,
}
