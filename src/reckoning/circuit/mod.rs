//! Networks of resistances with contacts and faults, and what lamps and meters show.
//!
//! In: a [`Network`] put together by the caller: points, pieces, touchings, positions, faults and [`Reading`]s.
//! Out: what a reading shows in a position with a fault ([`Network::seen`]), over the whole range of every resistance;
//! whether a fault shows a symptom ([`Network::shows`]), whether two faults can be told apart ([`Network::parting`]),
//! and which pieces carry the current ([`Network::live_loop`]).
//! Left to others: reading files, wording, drawing. Not promised: anything that depends on time (bounce, lock-out,
//! latching, how long a contact lasts): every answer holds for contacts that last long enough.
//!
//! Three rules hold throughout. An open circuit is found by connectivity and never stood in for by a large resistance.
//! What may go either way is its own answer and never called certain. The order of the arithmetic is fixed, so the
//! same network gives the same bytes on every machine.

mod answer;
mod apparatus;
mod compare;
mod compose;
mod corners;
mod fault;
mod flaw;
mod live;
mod measure;
mod names;
mod neighbours;
mod network;
mod ohms;
mod reading;
mod remembered;
mod seen;
mod solve;
mod tester;
mod wiring;

pub use answer::{Answer, Answers, Span, Threshold, Truth, Way};
pub use apparatus::{Condition, Fact};
pub use compare::{Grade, Parting, Sign};
pub use fault::{Change, Fault, Steadiness, While};
pub use flaw::Flaw;
pub use network::{AtRest, FaultId, Network, PieceId, PointId, PositionId, ReadingId, TouchingId, Wiring};
pub use ohms::Ohms;
pub use reading::{At, Measure, Pair, Reading, Tester};
pub use seen::{Outcome, Seen};
pub use wiring::{Carrier, Link};

/// Verdicts allow this much, relative to the limit: ranges written to add up exactly to a limit must not fail by rounding.
const SLACK: f64 = 1e-9;
