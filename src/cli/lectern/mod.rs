//! `coquille lectern`: the handbook on this computer while it is being written.
//!
//! In: a folder of guides. Out: pages over HTTP on loopback, set when they are asked for; nothing is written. When a file changes, the
//! guides are proofed and laid out again. A guide that is broken leaves the last good pages standing, with what is wrong on them.

mod ask;
mod desk;
mod panels;
mod serve;
mod watch;

use super::args::LecternJob;
use super::proof::not_opened;
use super::report::typed;
use super::terminal::{Outcome, Terminal};
use crate::source::in_words;
use desk::{Desk, Turn};
use std::net::{Ipv4Addr, TcpListener};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};

/// What wakes the lectern.
pub(super) enum News {
    /// A guide may have changed.
    Changed,
    /// Somebody wants it to end.
    Stop,
}

/// Runs it until somebody ends it.
pub fn run(job: &LecternJob, terminal: &mut Terminal) -> Outcome {
    if let Err(error) = std::fs::read_dir(&job.guides) {
        terminal.tell(not_opened(&job.guides, &error));
        return Outcome::CouldNotRun;
    }
    let (port, listener) = match opened(job.port) {
        Ok(opened) => opened,
        Err(error) => {
            terminal.tell(format!("The port {} cannot be had: {}.", job.port, in_words(&error)));
            terminal.tell(format!(
                "Another lectern may be open. Close it, or take another port: coquille lectern {} --port 0",
                typed(&job.guides)
            ));
            return Outcome::CouldNotRun;
        }
    };
    let (send, receive) = channel();
    if let Err(error) = on_interrupt(send.clone()) {
        terminal.tell(format!("Ctrl-C cannot be waited for: {error}"));
        return Outcome::CouldNotRun;
    }
    let desk = Arc::new(Desk::new(job.guides.clone()));
    let seen = watch::look(&desk.folders());
    let turn = desk.turn();
    told(&turn, terminal);
    let shared = desk.clone();
    std::thread::spawn(move || serve::serve(&listener, port, &shared));
    std::thread::spawn({
        let desk = desk.clone();
        move || watch::watch(&desk, seen, &send)
    });
    terminal.tell(format!("The handbook is at http://127.0.0.1:{port}/"));
    terminal.tell("Ctrl-C closes it.");
    attend(&desk, &receive, terminal)
}

/// Opens the port on loopback, and says which it is.
fn opened(port: u16) -> std::io::Result<(u16, TcpListener)> {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
    Ok((listener.local_addr()?.port(), listener))
}

fn on_interrupt(send: Sender<News>) -> Result<(), ctrlc::Error> {
    ctrlc::set_handler(move || {
        // Nobody waits any more when the lectern has ended: then there is nothing to stop.
        let _ = send.send(News::Stop);
    })
}

fn attend(desk: &Desk, news: &Receiver<News>, terminal: &mut Terminal) -> Outcome {
    while let Ok(news) = news.recv() {
        match news {
            News::Stop => break,
            News::Changed => told(&desk.turn(), terminal),
        }
    }
    Outcome::Interrupted
}

/// A line for each time that the guides were read.
fn told(turn: &Turn, terminal: &mut Terminal) {
    terminal.tell(match turn {
        Turn::Bound { pages, advice, took } => {
            let advice = match advice {
                0 => String::new(),
                number => format!(", {}", super::report::count(*number, "piece of advice", "pieces of advice")),
            };
            format!("{}{advice}, in {:.2} s", super::report::count(*pages, "page", "pages"), took.as_secs_f64())
        }
        Turn::Faulty { errors, first } => {
            format!("{}: {first}. The pages stay as they were.", super::report::count(*errors, "error", "errors"))
        }
        Turn::Failed(why) => format!("{why} The pages stay as they were."),
    });
}
