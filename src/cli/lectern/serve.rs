//! Answers browsers: pages and what belongs to them from memory, and the news that a page has changed.
//!
//! In: a listener on loopback. Out: answers. No file is looked up on the disk for a request, so that no address leads out of the
//! handbook. Each connection has one answer; the one that waits for news stays open.

use super::ask::{self, Ask};
use super::desk::{Desk, Shown};
use std::io::{self, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::Arc;
use std::time::Duration;

/// The script that reloads a page; only the lectern adds it.
const SCRIPT: &str = include_str!("reload.js");

/// The most connections at one time: tabs that wait and what a page loads.
const MOST: usize = 64;

/// Answers for as long as the program runs.
pub fn serve(listener: &TcpListener, port: u16, desk: &Arc<Desk>) {
    let open = Arc::new(());
    for stream in listener.incoming().filter_map(Result::ok) {
        if Arc::strong_count(&open) > MOST {
            continue;
        }
        let (desk, held) = (desk.clone(), open.clone());
        std::thread::spawn(move || {
            // A browser that went away is no fault of ours.
            let _ = answer(&stream, port, &desk);
            drop(held);
        });
    }
}

fn answer(stream: &TcpStream, port: u16, desk: &Desk) -> io::Result<()> {
    stream.set_read_timeout(Some(Duration::from_secs(5)))?;
    stream.set_write_timeout(Some(Duration::from_secs(5)))?;
    match ask::read(stream, port) {
        Err((status, words)) => send(stream, status, "text/plain; charset=utf-8", words.as_bytes(), false),
        Ok(ask) if ask.address == "lectern/news" => news(stream, &ask, desk),
        Ok(ask) if ask.address == "lectern/reload.js" => {
            send(stream, 200, "text/javascript; charset=utf-8", SCRIPT.as_bytes(), ask.head_only)
        }
        Ok(ask) => match desk.shown(&ask.address) {
            Shown::File(bytes) => send(stream, 200, media_type(&ask.address), &bytes, ask.head_only),
            Shown::Gone(page) => send(stream, 404, "text/html; charset=utf-8", page.as_bytes(), ask.head_only),
        },
    }
}

fn send(mut stream: &TcpStream, status: u16, kind: &str, body: &[u8], head_only: bool) -> io::Result<()> {
    write!(
        stream,
        "HTTP/1.1 {status} {}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\n\
         X-Content-Type-Options: nosniff\r\nCross-Origin-Resource-Policy: same-origin\r\nConnection: close\r\n\r\n",
        reason(status),
        body.len()
    )?;
    if !head_only {
        stream.write_all(body)?;
    }
    stream.flush()
}

/// Waits until the pages are other than those of the turn that the page was made in, and says so (server-sent events).
fn news(mut stream: &TcpStream, ask: &Ask, desk: &Desk) -> io::Result<()> {
    write!(
        stream,
        "HTTP/1.1 200 OK\r\nContent-Type: text/event-stream\r\nCache-Control: no-store\r\nConnection: close\r\n\r\n"
    )?;
    let since: u64 = ask.query.strip_prefix("since=").and_then(|since| since.parse().ok()).unwrap_or(0);
    loop {
        let turn = desk.wait_for_other_than(since, Duration::from_secs(15));
        if turn != since {
            write!(stream, "data: {turn}\n\n")?;
            return stream.flush();
        }
        // A comment: it tells whether somebody still listens.
        write!(stream, ":\n\n")?;
        stream.flush()?;
    }
}

fn reason(status: u16) -> &'static str {
    match status {
        200 => "OK",
        404 => "Not Found",
        405 => "Method Not Allowed",
        421 => "Misdirected Request",
        _ => "Bad Request",
    }
}

fn media_type(address: &str) -> &'static str {
    match address.rsplit('.').next().unwrap_or("") {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "webp" => "image/webp",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}
