//! What the handbook says, set as HTML and drawn as SVG.

pub mod figures;
