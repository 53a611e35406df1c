//! The drawings of the handbook: rails, the chain, lamps, bars, the minutes rule, the map of questions, circuits.
//!
//! Plain data in, SVG text out. Nothing here knows of guides, languages or themes: words come in as finished text, looks
//! are class names that the theme's style sheet fills. No drawing carries a `style` attribute (the pages' security policy
//! forbids it), and ids start with what the caller gives, so that one file can hold every page.
//! Not promised: that a label fits in full. It is wrapped and then shortened, never its number.

pub mod chain;
pub mod circuit;
pub mod lamp;
pub mod map;
pub mod minutes;
mod patterns;
pub mod rail;
pub mod shares;
mod svg;
mod words;

pub use patterns::patterns;
pub use svg::Shapes;

#[cfg(test)]
mod tests;
