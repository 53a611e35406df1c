//! Which probe to do next: beliefs, orders, decision trees, and what they cost.
