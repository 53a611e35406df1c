//! Every figure of the worked foil, fault by fault and position by position, against ngspice.
//!
//! The netlists are written from what conducts; what a position and a fault do to the foil is checked by `circuit_foil`.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

#[path = "reference/foil.rs"]
mod foil;
#[path = "reference/spice.rs"]
mod spice;

#[test]
#[ignore = "needs ngspice: run by tests/run"]
fn the_foil_on_the_bench_reads_as_ngspice_computes() {
    // The sound foil and 21 faults, 5 positions, 5 pairs of points and 2 lamps solved with their battery, 3 figures each: lamp, LED,
    // buzzer and meter share the pair B and C.
    assert_eq!(spice::agree(&foil::foil_on_the_bench()), 22 * 5 * (5 + 2) * 3);
}
