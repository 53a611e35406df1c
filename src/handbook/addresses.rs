//! Where each page is: the only place that spells an address.
//!
//! Ids are safe as file names (`proof` saw to it), so an address is too.

use super::page::Address;
use crate::model::Kind;
use crate::proof::{Thing, is_device_name};

/// Most letters of a picture's name that are kept.
const LONGEST_PICTURE: usize = 100;

/// The front page.
pub const FRONT: &str = "index.html";
/// All limits.
pub const LIMITS: &str = "limits.html";
/// All stores.
pub const STORES: &str = "stores.html";
/// All words.
pub const WORDS: &str = "words.html";
/// All jobs and checklists.
pub const JOBS: &str = "jobs.html";
/// By what the lamp does.
pub const LAMPS: &str = "lamps.html";
/// All sheets.
pub const SHEETS: &str = "sheets.html";
/// What to fetch, job by job.
pub const FETCH: &str = "fetch.html";
/// *About this edition*.
pub const ABOUT: &str = "about.html";
/// *Writing guides*.
pub const WRITING: &str = "writing.html";
/// *Is my print current?*
pub const PRINTS: &str = "prints.html";
/// What changed since the last edition.
pub const CHANGES: &str = "changes.html";
/// The notice of what was withdrawn, to hang on the wall.
pub const NOTICE: &str = "notice.html";
/// What needs no adult.
pub const JUNIORS: &str = "juniors.html";
/// Where an exercise on the practice bench is chosen.
pub const PRACTICE: &str = "practice.html";
/// Every page.
pub const ALL: &str = "all.html";

/// The page of a thing, or its place on the page of its list.
pub fn of(thing: Thing, id: &str) -> Address {
    match thing {
        Thing::Guide(kind) => guide(kind, id),
        Thing::Part => format!("{STORES}#part-{id}"),
        Thing::Tool => format!("{STORES}#tool-{id}"),
        Thing::Consumable => format!("{STORES}#consumable-{id}"),
        Thing::Limit => format!("{LIMITS}#limit-{id}"),
        Thing::Word => format!("{WORDS}#word-{id}"),
        Thing::Picture => FRONT.to_owned(),
        Thing::Item => kit(id),
    }
}

/// The page of a guide.
pub fn guide(kind: Kind, id: &str) -> Address {
    match kind {
        Kind::Handbook => FRONT.to_owned(),
        Kind::Symptom => format!("faults/{id}.html"),
        Kind::Procedure => format!("jobs/{id}.html"),
        Kind::Checklist => format!("checks/{id}.html"),
        Kind::Circuit => format!("circuits/{id}.html"),
        Kind::Stores => STORES.to_owned(),
        Kind::Limits => LIMITS.to_owned(),
        Kind::Words => WORDS.to_owned(),
        Kind::Pack => ABOUT.to_owned(),
        Kind::Learning => format!("learning/{id}.html"),
    }
}

/// The page of an item of kit.
pub fn kit(item: &str) -> Address {
    format!("kit/{item}.html")
}

/// The practice bench of a fault-finding guide.
pub fn practice(id: &str) -> Address {
    format!("practice/{id}.html")
}

/// The same at a level, 1 to 3.
pub fn practice_at(id: &str, level: u8) -> Address {
    let page = practice(id);
    format!("{page}#{}-level-{level}", key(&page))
}

/// The exercise cards of a fault-finding guide.
pub fn cards(id: &str) -> Address {
    format!("practice/cards/{id}.html")
}

/// A stop of a way to learn.
pub fn stop(way: &str, id: &str) -> Address {
    format!("learning/{way}/{id}.html")
}

/// What the lamps of an instrument can show of an item.
pub fn lamps_of(item: &str, instrument: &str) -> Address {
    format!("lamps/{item}-on-{instrument}.html")
}

/// The page that teaches a circuit.
pub fn how(circuit: &str) -> Address {
    format!("how/{circuit}.html")
}

/// The sheet of a guide.
pub fn sheet(id: &str) -> Address {
    format!("sheets/{id}.html")
}

/// A question or ending of a fault-finding guide: the probe's id and a short hash of the answers given.
pub fn on_the_way(guide: &str, name: &str, answers: &[String]) -> Address {
    let hash = blake3::hash(answers.join("/").as_bytes());
    let short: String = hash.as_bytes().iter().take(4).map(|byte| format!("{byte:02x}")).collect();
    format!("faults/{guide}/{name}-{short}.html")
}

/// A picture. A name with letters that some system would stumble over is respelled, with a hash so that no two become one.
/// The guides' folder `pictures/` and the handbook's are one; a picture from elsewhere is respelled too.
pub fn picture(file: &str) -> Address {
    let portable = |letter: char| letter.is_ascii_alphanumeric() || matches!(letter, '.' | '_' | '-' | '/');
    // No command takes it for an option, and no system for a device.
    let safe = |part: &str| {
        part.starts_with(|first: char| first.is_ascii_alphanumeric())
            && !is_device_name(part.split('.').next().unwrap_or(part))
    };
    let fits = |name: &&str| name.len() <= LONGEST_PICTURE && name.chars().all(portable) && name.split('/').all(safe);
    if let Some(name) = file.strip_prefix("pictures/").filter(fits) {
        return format!("pictures/{name}");
    }
    let hash = blake3::hash(file.as_bytes()).to_hex();
    let plain: String = file.chars().map(|letter| if portable(letter) { letter } else { '-' }).collect();
    let name = plain.trim_matches('-').replace('/', "-");
    // The end of it, which says the kind.
    let name = &name[name.len().saturating_sub(LONGEST_PICTURE)..];
    format!("pictures/{}-{name}", &hash.as_str()[..8])
}

/// What leads from a page to the top folder.
pub fn root(address: &str) -> String {
    "../".repeat(address.matches('/').count())
}

/// A name that is unique over the handbook: the address without its ending, with hyphens for slashes.
pub fn key(address: &str) -> String {
    address.trim_end_matches(".html").replace('/', "-")
}
