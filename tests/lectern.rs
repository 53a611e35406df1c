//! The lectern over a real socket: a guide that is edited is shown, a broken one leaves the last good page with the finding on it, a
//! deleted one is gone, and a name of somebody else's is refused.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// A lectern at work on a small handbook.
struct Lectern {
    child: Child,
    port: u16,
    folder: tempfile::TempDir,
    said: BufReader<std::process::ChildStderr>,
}

impl Lectern {
    fn open() -> Lectern {
        let folder = tempfile::tempdir().unwrap();
        let program = env!("CARGO_BIN_EXE_coquille");
        let begun = Command::new(program).args(["begin", "guides"]).current_dir(&folder).output().unwrap();
        assert!(begun.status.success());
        let mut command = Command::new(program);
        command.args(["lectern", "guides", "--port", "0"]).current_dir(&folder).stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        let mut said = BufReader::new(child.stderr.take().unwrap());
        let port = loop {
            let mut line = String::new();
            assert_ne!(said.read_line(&mut line).unwrap(), 0, "the lectern ended");
            if let Some((_, rest)) = line.split_once("http://127.0.0.1:") {
                break rest.trim().trim_end_matches('/').parse().unwrap();
            }
        };
        Lectern { child, port, folder, said }
    }

    fn guide(&self, name: &str) -> PathBuf {
        self.folder.path().join("guides").join(name)
    }

    fn asked(&self, address: &str, host: &str) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(30))).unwrap();
        write!(stream, "GET {address} HTTP/1.1\r\nHost: {host}\r\n\r\n").unwrap();
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).unwrap();
        String::from_utf8_lossy(&answer).into_owned()
    }

    fn page(&self, address: &str) -> String {
        self.asked(address, &format!("127.0.0.1:{}", self.port))
    }

    /// The page, as soon as it is as it should be.
    fn page_when(&self, address: &str, is: impl Fn(&str) -> bool) -> String {
        let started = Instant::now();
        loop {
            let page = self.page(address);
            if is(&page) {
                return page;
            }
            assert!(started.elapsed() < Duration::from_secs(60), "it never came:\n{page}");
            std::thread::sleep(Duration::from_millis(100));
        }
    }

    fn edit(&self, name: &str, from: &str, to: &str) {
        let file = self.guide(name);
        let text = std::fs::read_to_string(&file).unwrap();
        assert!(text.contains(from), "{text}");
        std::fs::write(&file, text.replacen(from, to, 1)).unwrap();
    }
}

impl Drop for Lectern {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

const FAULT: &str = "/faults/cord-flickers.html";

#[test]
fn an_edited_guide_is_shown_and_a_waiting_page_hears_of_it() {
    let lectern = Lectern::open();
    let before = lectern.page(FAULT);
    assert!(before.starts_with("HTTP/1.1 200") && before.contains("/lectern/reload.js"), "{before}");
    let turn = before.split("data-turn=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let title = "title: ";
    std::thread::scope(|scope| {
        let waiting = scope.spawn(|| lectern.page(&format!("/lectern/news?since={turn}")));
        lectern.edit("faults/cord-flickers.yaml", title, "title: Look, ");
        lectern.page_when(FAULT, |page| page.contains("<h1>Look, "));
        assert!(waiting.join().unwrap().contains("data: "), "the page that waited heard nothing");
    });
    assert!(!lectern.folder.path().join("site").exists(), "a lectern writes nothing");
}

#[test]
fn a_broken_guide_leaves_the_page_with_the_finding_at_its_place() {
    let lectern = Lectern::open();
    lectern.edit("faults/cord-flickers.yaml", "title: ", "title: Look, ");
    let good = lectern.page_when(FAULT, |page| page.contains("<h1>Look, "));
    lectern.edit("faults/cord-flickers.yaml", "share: ", "shore: ");
    let broken = lectern.page_when(FAULT, |page| page.contains("unknown-key"));
    assert!(broken.contains("<h1>Look, "), "the last good page stays");
    let (panel, list) = (broken.find("unknown-key").unwrap(), broken.find("class=\"shares").unwrap());
    let question = broken.find("class=\"answers").unwrap();
    assert!(question < panel && panel < list, "the finding stands at the causes, not on top");
    assert!(
        lectern.page("/index.html").contains("faults/cord-flickers.yaml:"),
        "other pages say that there is a finding"
    );
    lectern.edit("faults/cord-flickers.yaml", "shore: ", "share: ");
    lectern.page_when(FAULT, |page| !page.contains("unknown-key"));
    assert!(!good.contains("class=\"finding"));
}

#[test]
fn a_deleted_guide_is_gone_and_a_deleted_folder_leaves_the_pages() {
    let lectern = Lectern::open();
    std::fs::remove_file(lectern.guide("checks/cords-before-training.yaml")).unwrap();
    let address = "/checks/cords-before-training.html";
    let gone = lectern.page_when(address, |page| !page.starts_with("HTTP/1.1 200") || page.contains("class=\"finding"));
    // The guide may be missed elsewhere: then the last good page stays, with what misses it.
    assert!(gone.starts_with("HTTP/1.1 404") || gone.contains("cords-before-training"), "{gone}");
    let guides = lectern.folder.path().join("guides");
    let away = lectern.folder.path().join("away");
    std::fs::rename(&guides, &away).unwrap();
    lectern.page_when(FAULT, |page| page.starts_with("HTTP/1.1 200") && page.contains("cannot be read"));
    std::fs::rename(&away, &guides).unwrap();
    lectern.page_when(FAULT, |page| !page.contains("cannot be read"));
    lectern.edit("faults/cord-flickers.yaml", "title: ", "title: Look, ");
    lectern.page_when(FAULT, |page| page.contains("Look, "));
}

#[test]
fn another_name_and_another_way_into_the_disk_are_refused() {
    let lectern = Lectern::open();
    for host in ["evil.example", "evil.example:80", "127.0.0.1:1"] {
        assert!(lectern.asked("/", host).starts_with("HTTP/1.1 421"), "{host}");
    }
    for address in ["/../guides/handbook.yaml", "/%2e%2e/guides/handbook.yaml", "//etc/passwd", "/handbook.yaml"] {
        assert!(lectern.page(address).starts_with("HTTP/1.1 404"), "{address}");
    }
    assert!(lectern.page("/").starts_with("HTTP/1.1 200"));
}

#[test]
fn a_port_that_is_taken_is_said_with_what_to_do() {
    let lectern = Lectern::open();
    let port = lectern.port.to_string();
    let other = Command::new(env!("CARGO_BIN_EXE_coquille"))
        .args(["lectern", "guides", "--port", &port])
        .current_dir(lectern.folder.path())
        .output()
        .unwrap();
    assert_eq!(other.status.code(), Some(2));
    let said = String::from_utf8_lossy(&other.stderr).into_owned();
    assert!(said.contains("--port 0"), "{said}");
}

#[cfg(unix)]
#[test]
fn ctrl_c_ends_it_with_130() {
    let mut lectern = Lectern::open();
    let signal = Command::new("kill").args(["-INT", &lectern.child.id().to_string()]).status().unwrap();
    assert!(signal.success());
    assert_eq!(lectern.child.wait().unwrap().code(), Some(130));
    let mut rest = String::new();
    lectern.said.read_to_string(&mut rest).unwrap();
    assert!(!rest.contains("panic"), "{rest}");
}
