//! The program. Everything it can do is a line in [`coquille::cli`].

use coquille::cli::{Terminal, Trade, run_with};
use std::process::ExitCode;

/// The whole trade's handbook, packed, for `begin --whole`. It stands here and not in the library, so that a changed guide rebuilds
/// this file alone.
static GUIDES: &[u8] = carried::folder!("guides");

fn main() -> ExitCode {
    run_with(std::env::args_os(), &Trade::packed(GUIDES), &mut Terminal::real()).into()
}
