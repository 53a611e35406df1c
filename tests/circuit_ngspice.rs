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
    // The sound foil and 21 faults, 5 positions, 8 readings in ohms and 2 in amperes, 3 figures each.
    assert_eq!(spice::agree(&foil::foil_on_the_bench()), 22 * 5 * 10 * 3);
}
