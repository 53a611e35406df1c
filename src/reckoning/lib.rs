//! Pure computation: knows nothing of YAML, HTML, files or the clock.
//!
//! In: plain data built by the stages that call it. Out: exact answers. It imports no other stage, so every stage may call it.

pub mod circuit;
pub mod counts;
pub mod diagnosis;
pub mod quantity;
