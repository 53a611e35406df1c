//! The program. Everything it can do is a line in [`coquille::cli`].

use std::process::ExitCode;

fn main() -> ExitCode {
    let mut terminal = coquille::cli::Terminal::real();
    coquille::cli::run(std::env::args_os(), &mut terminal).into()
}
