//! What a browser asks, as far as the lectern answers it: one line and the host.
//!
//! In: a stream that anybody on this computer may have opened. Out: an [`Ask`], or why not. A page of somebody else's that leads the
//! browser to our address by a name of its own (DNS rebinding) is known by its Host header and refused.

use std::io::{BufRead, Read};

/// The longest head of a request, in bytes.
const LONGEST: u64 = 16 * 1024;

/// What is asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// The address inside the handbook, such as `faults/foil.html`; a folder's is its `index.html`.
    pub address: String,
    /// What stands after the question mark.
    pub query: String,
    /// Whether only the head of the answer is wanted.
    pub head_only: bool,
}

/// Why a request is refused: the HTTP status and words.
pub type Refused = (u16, &'static str);

/// Reads a request.
///
/// # Errors
/// [`Refused`] when it is no request, not one to read something, or not meant for this computer.
pub fn read(stream: impl Read, port: u16) -> Result<Ask, Refused> {
    const NO_REQUEST: Refused = (400, "This is no request that a lectern understands.");
    let mut lines = std::io::BufReader::new(stream.take(LONGEST)).split(b'\n').map(|line| {
        let line = line.map_err(|_| NO_REQUEST)?;
        String::from_utf8(line).map(|line| line.trim_end().to_owned()).map_err(|_| NO_REQUEST)
    });
    let first = lines.next().ok_or(NO_REQUEST)??;
    let mut hosts = Vec::new();
    loop {
        let line = lines.next().ok_or(NO_REQUEST)??;
        if line.is_empty() {
            break;
        }
        let (name, value) = line.split_once(':').ok_or(NO_REQUEST)?;
        if name.eq_ignore_ascii_case("host") {
            hosts.push(value.trim().to_ascii_lowercase());
        }
    }
    // Exactly one Host header (RFC 9112, 3.2).
    if !matches!(&hosts[..], [host] if is_here(host, port)) {
        return Err((421, "A lectern answers to 127.0.0.1 and localhost only."));
    }
    let mut words = first.split(' ');
    let (method, target) = (words.next().unwrap_or(""), words.next().ok_or(NO_REQUEST)?);
    let head_only = match method {
        "GET" => false,
        "HEAD" => true,
        _ => return Err((405, "A lectern only shows pages.")),
    };
    let (path, query) = target.split_once('?').unwrap_or((target, ""));
    let address = path.strip_prefix('/').ok_or(NO_REQUEST)?;
    let index = if address.is_empty() || address.ends_with('/') { "index.html" } else { "" };
    Ok(Ask { address: format!("{address}{index}"), query: query.to_owned(), head_only })
}

fn is_here(host: &str, port: u16) -> bool {
    let names = ["127.0.0.1", "localhost", "[::1]"];
    names.iter().any(|name| host == format!("{name}:{port}") || (port == 80 && host == *name))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(text: &str) -> Result<Ask, u16> {
        read(text.as_bytes(), 4680).map_err(|(status, _)| status)
    }

    #[test]
    fn a_page_is_asked_for_by_its_address() {
        let ask = asked("GET /faults/a.html?x=1 HTTP/1.1\r\nHost: localhost:4680\r\n\r\n").unwrap();
        assert_eq!((ask.address.as_str(), ask.query.as_str()), ("faults/a.html", "x=1"));
        assert_eq!(
            asked("HEAD / HTTP/1.1\r\nhost: 127.0.0.1:4680\r\n\r\n").map(|ask| ask.address),
            Ok("index.html".into())
        );
    }

    #[test]
    fn a_name_of_somebody_elses_is_refused() {
        for host in ["evil.example", "evil.example:4680", "127.0.0.1:80", "127.0.0.1", "localhost:4680.evil.example"] {
            assert_eq!(asked(&format!("GET / HTTP/1.1\r\nHost: {host}\r\n\r\n")), Err(421), "{host}");
        }
        assert_eq!(asked("GET / HTTP/1.1\r\n\r\n"), Err(421));
        assert_eq!(asked("GET / HTTP/1.1\r\nHost: localhost:4680\r\nHost: evil\r\n\r\n"), Err(421));
    }

    #[test]
    fn what_is_no_request_to_read_is_refused() {
        assert_eq!(asked("POST / HTTP/1.1\r\nHost: localhost:4680\r\n\r\n"), Err(405));
        assert_eq!(asked("GET http://a/ HTTP/1.1\r\nHost: localhost:4680\r\n\r\n"), Err(400));
        assert_eq!(asked("nonsense"), Err(400));
        assert_eq!(asked(&format!("GET /{} HTTP/1.1\r\n", "a".repeat(20_000))), Err(400));
    }
}
