//! Values with units, limits and torque.
//!
//! In: text as people write it at a bench (`3 N·m ± 10 %`, `5.5 to 9.5 cm`, `at most 2 Ω`). Out: exact values that can be compared,
//! shown in either system, judged against a limit or a thread's proof load; or what cannot be read, and where in the text.
//! Leaves files and places in them, other languages' words, and which limits there are to its callers.
//!
//! Nothing here compares machine numbers: values are decimals as written, and factors are fractions.

mod bound;
mod decimal;
mod minutes;
mod range;
mod ratio;
mod text;
mod tolerance;
mod torque;
mod unit;
mod value;

pub use bound::{Bound, Reading, Verdict};
pub use decimal::{Decimal, Rounding};
pub use minutes::Minutes;
pub use range::Range;
pub use ratio::Ratio;
pub use text::{Expect, Flaw, Unreadable};
pub use tolerance::{Figure, Tolerance, Uncertainty};
pub use torque::{Condition, Joint, Load, Material, PropertyClass, Thread, TorqueVerdict};
pub use unit::{Dimension, System, Unit};
pub use value::{Incomparable, Quantity};
