//! The program. Everything it can do is a line in [`coquille::cli`].

use coquille::cli::{Terminal, Trade, run_with};
use include_dir::{Dir, include_dir};
use std::process::ExitCode;

/// The whole trade's handbook, for `begin --whole`. It stands here and not in the library, so that a changed guide rebuilds this file alone.
static GUIDES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/guides");

fn main() -> ExitCode {
    run_with(std::env::args_os(), &Trade::of(&GUIDES), &mut Terminal::real()).into()
}
