//! The one constructor of each finding: the words stand here and nowhere else.
//!
//! Grouped by what a finding is about; the list of codes is in `code.rs`.

pub mod circuit;
pub mod diagnosis;
pub mod handbook;
pub mod ids;
pub mod pictures;
pub mod prose;
pub mod quantities;
pub mod safety;
pub mod shape;
pub mod stores;
pub mod translations;
pub mod waivers;
pub mod yaml;
