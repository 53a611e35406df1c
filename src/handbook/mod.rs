//! Which pages there are, what each says, and who links to whom; still data.
//!
//! In: sound, proofed guides. Out: [`Handbook`]. Leaves to others: templates, Markdown, drawings (`render`), files (`press`).

pub mod page;
