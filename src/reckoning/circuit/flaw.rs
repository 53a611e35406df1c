//! What can be wrong with a network, as values: the caller knows where it stood in a file and says so.

use std::fmt;

/// Why a network refused something.
#[derive(Debug, Clone, PartialEq)]
pub enum Flaw {
    /// A resistance that is not above nothing, not rising from least to most, or larger than a network takes.
    Ohms(String),
    /// A name that this network has already.
    Taken(String),
    /// A name or an index that this network does not have.
    Unknown(String),
    /// More of something than a network takes: what, and how many it takes.
    TooMany(&'static str, usize),
    /// Both ends are the same point, by name or because two points were joined.
    SamePoint(String),
    /// A change-over whose two pieces do not have exactly one end at one of the two points, each at its own.
    NotOneEach(String, String),
    /// Two limits in the wrong order, or a figure that is not a number.
    Figure(String),
    /// A position that asks a touching both to meet and to part.
    MeetsAndParts(String),
}

impl fmt::Display for Flaw {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Flaw::Ohms(why) => write!(out, "{why}"),
            Flaw::Taken(name) => write!(out, "`{name}` is there already"),
            Flaw::Unknown(name) => write!(out, "no `{name}` in this circuit"),
            Flaw::TooMany(what, most) => write!(out, "more than {most} {what}"),
            Flaw::SamePoint(name) => write!(out, "`{name}` begins and ends at the same point"),
            Flaw::NotOneEach(one, other) => {
                write!(out, "`{one}` and `{other}` do not each have one end at one of the two points")
            }
            Flaw::Figure(why) => write!(out, "{why}"),
            Flaw::MeetsAndParts(name) => write!(out, "`{name}` both meets and parts"),
        }
    }
}

impl std::error::Error for Flaw {}
