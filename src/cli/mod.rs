//! The command line: reads what was asked, calls the stages, and says what came of it. The only stage that prints.

mod args;
mod begin;
mod bind;
mod forms;
mod lectern;
mod meter;
mod proof;
mod reckon;
mod report;
mod schema;
mod sheet;
mod since;
mod tally;
mod terminal;

pub use args::{Command, Line};
pub use begin::Trade;
pub use terminal::{Colour, Outcome, Terminal};

use crate::press::system;
use clap::{CommandFactory, Parser};
use std::ffi::OsString;
use std::io::{BufRead, IsTerminal};

/// Runs the program without a trade's handbook to begin with: for tests.
pub fn run(args: impl IntoIterator<Item = OsString>, terminal: &mut Terminal) -> Outcome {
    run_with(args, &Trade::default(), terminal)
}

/// Runs the program.
pub fn run_with(args: impl IntoIterator<Item = OsString>, trade: &Trade, terminal: &mut Terminal) -> Outcome {
    match Line::try_parse_from(args) {
        Ok(Line { command: Some(command) }) => obey(command, trade, terminal),
        Ok(Line { command: None }) => greet(terminal),
        Err(error) => usage(&error, terminal),
    }
}

fn obey(command: Command, trade: &Trade, terminal: &mut Terminal) -> Outcome {
    match command {
        Command::Begin(job) => begin::run(&job, trade, terminal),
        Command::Bind(job) => bind::run(&job, terminal),
        Command::Lectern(job) => lectern::run(&job, terminal),
        Command::Proof(job) => proof::run(&job, terminal),
        Command::Meter(job) => meter::run(&job, terminal),
        Command::Reckon(job) => reckon::run(&job, terminal),
        Command::Tally(job) => tally::run(&job, terminal),
        Command::Sheet(job) => sheet::run(&job, terminal),
        Command::Schema(job) => schema::run(&job, terminal),
        Command::Completions(job) => completions(job.shell, terminal),
        Command::Manual => manual(terminal),
    }
}

/// What a newcomer who starts the program bare needs to know. No command was given, so it could not run.
fn greet(terminal: &mut Terminal) -> Outcome {
    terminal.tell(GREETING);
    let (asks, shows) = (std::io::stdin(), std::io::stderr());
    let prompt = std::env::var_os("PROMPT").is_some();
    if system::closes_at_once(system::Family::HERE, prompt, asks.is_terminal() && shows.is_terminal()) {
        stay(&mut asks.lock(), terminal);
    }
    Outcome::CouldNotRun
}

/// Keeps a console open until somebody has read it.
fn stay(keys: &mut dyn BufRead, terminal: &mut Terminal) {
    terminal.tell(STAY);
    let _ = keys.read_line(&mut String::new());
}

const STAY: &str = "
This window shows commands; it cannot be used with the mouse. Press Enter to
close it. Then open the folder of this program, type cmd into its address line,
press Enter, and type one of the commands above.";

const GREETING: &str = "\
Coquille makes a handbook out of what your club knows about mending its
fencing kit. You write guides: what is seen, what it can be, how to find out,
how to mend it. Coquille checks them and makes linked pages that work without a
network.

  coquille begin guides   make a small handbook to start from
  coquille proof guides   name everything in it that does not fit
  coquille bind guides    make the pages; then open site/index.html

All commands: coquille --help";

/// Help and version are what was asked for; anything else could not run.
fn usage(error: &clap::Error, terminal: &mut Terminal) -> Outcome {
    let words = match terminal.colour {
        Colour::Coloured => error.render().ansi().to_string(),
        Colour::Plain => error.render().to_string(),
    };
    if error.use_stderr() {
        terminal.tell(words.trim_end());
        Outcome::CouldNotRun
    } else {
        terminal.say(words.trim_end());
        Outcome::Good
    }
}

fn completions(shell: clap_complete::Shell, terminal: &mut Terminal) -> Outcome {
    let mut script = Vec::new();
    clap_complete::generate(shell, &mut Line::command(), "coquille", &mut script);
    terminal.say(String::from_utf8_lossy(&script).trim_end());
    Outcome::Good
}

fn manual(terminal: &mut Terminal) -> Outcome {
    let mut page = Vec::new();
    match clap_mangen::Man::new(Line::command()).render(&mut page) {
        Ok(()) => {
            terminal.say(String::from_utf8_lossy(&page).trim_end());
            Outcome::Good
        }
        Err(error) => {
            terminal.tell(format!("the manual page could not be made: {error}"));
            Outcome::CouldNotRun
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::{Arc, Mutex};

    #[derive(Clone, Default)]
    struct Said(Arc<Mutex<Vec<u8>>>);

    impl std::io::Write for Said {
        fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
            self.0
                .lock()
                .map(|mut said| said.extend(bytes))
                .map(|()| bytes.len())
                .map_err(|_| std::io::ErrorKind::Other.into())
        }
        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_console_of_its_own_stays_for_one_line_of_keys_and_says_so() {
        let said = Said::default();
        let mut terminal =
            Terminal { out: Box::new(std::io::sink()), err: Box::new(said.clone()), colour: Colour::Plain };
        let mut keys = "\nmore".as_bytes();
        stay(&mut keys, &mut terminal);
        assert_eq!(keys, b"more", "one Enter is enough");
        let said = String::from_utf8(said.0.lock().expect("no other thread").clone()).expect("words");
        assert!(said.contains("Press Enter") && said.lines().all(|line| line.len() <= 80), "{said}");
    }
}
