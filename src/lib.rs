//! Coquille binds a club's repair know-how, written once as YAML guides, into a linked, offline handbook, and proofs it first.
//!
//! The folders of this crate are the stages that the data goes through, in order; `DEVELOPERS.md` walks through them.
//! A stage takes plain data and gives plain data back; only `source` reads guides and only `press` writes what is bound.

pub mod cli;
pub mod handbook;
pub mod model;
pub mod press;
pub mod proof;
pub mod render;
pub mod source;

pub use reckoning;
