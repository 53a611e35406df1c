//! Writes a bound handbook into its folder: what changed, and nothing else.
