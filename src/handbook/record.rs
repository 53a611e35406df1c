//! What a bound handbook remembers of itself: `handbook.record`, from which a later bind learns what changed since.
//!
//! In: the text of such a file, or the pages of today. Out: [`Record`]. Leaves to others: reading and writing files.
//! What does not come from us may stand in it, so nothing of it is printed but as text, and nothing is linked that is not a page.

use super::page::{Body, Page};
use super::saying::Said;
use flate2::Compression;
use flate2::read::{ZlibDecoder, ZlibEncoder};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::io::Read;

/// The file's name in the handbook's folder.
pub const NAME: &str = "handbook.record";
/// Bytes that a record may have when it is unpacked: a file that pretends to be one cannot fill the memory.
const MOST_BYTES: u64 = 256 << 20;
/// The format that is written and understood.
const FORMAT: u32 = 1;

/// What a handbook said, and what it said before.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Record {
    format: u32,
    /// The club's label for the edition.
    pub edition: String,
    /// The pages, by address.
    pub pages: BTreeMap<String, Recorded>,
    /// How the handbook came to this edition, the oldest step first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<Recast>,
}

/// A page as it was.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Recorded {
    /// Its kind: a message id.
    pub kind: String,
    /// Its name; empty for a page that no guide names.
    pub title: String,
    /// Its code.
    pub code: String,
    /// What it said; nothing for pages that follow from others.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub says: Vec<Said>,
}

/// What changed from one edition to the next.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Recast {
    /// The edition before.
    pub since: String,
    /// The edition after.
    pub edition: String,
    /// The pages that changed, in the order of their addresses.
    pub changes: Vec<Change>,
}

/// A page that changed, came or went.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Change {
    /// Where it is or was.
    pub address: String,
    /// Its kind: a message id.
    pub kind: String,
    /// Its name; empty for a page that no guide names.
    pub title: String,
    /// The code it had; nothing for a new page.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub was: Option<String>,
    /// The code it has; nothing for a page that is gone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub now: Option<String>,
    /// What it said and says.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub differences: Vec<Difference>,
}

/// Lines that were replaced: either may be empty.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Difference {
    /// What it said.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub was: Vec<Said>,
    /// What it says now.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub now: Vec<Said>,
}

impl Record {
    /// Reads a record.
    ///
    /// # Errors
    /// Why it cannot be used, in words that go on from the file's name.
    pub fn read(bytes: &[u8]) -> Result<Record, String> {
        /// What every record says first, whatever else stands in it.
        #[derive(Deserialize)]
        struct Head {
            format: u32,
        }
        let unclear = |error: serde_json::Error| format!("cannot be made out: {error}");
        let mut unpacked = Vec::new();
        let plain = bytes.first() == Some(&b'{');
        if !plain {
            let packed = ZlibDecoder::new(bytes).take(MOST_BYTES).read_to_end(&mut unpacked);
            packed.map_err(|error| format!("cannot be made out: {error}"))?;
        }
        let bytes = if plain { bytes } else { unpacked.as_slice() };
        let head: Head = serde_json::from_slice(bytes).map_err(unclear)?;
        match head.format {
            FORMAT => serde_json::from_slice(bytes).map_err(unclear),
            other => Err(format!("has the format {other}, and this program knows {FORMAT}")),
        }
    }

    /// The record of these pages, which came about in these steps. `says` is what each page says, in their order.
    pub fn of(edition: &str, pages: &[Page], says: Vec<Vec<Said>>, steps: Vec<Recast>) -> Record {
        let pages = pages.iter().zip(says).map(|(page, says)| {
            let says = if told(&page.body) { worth_telling(says) } else { Vec::new() };
            let recorded =
                Recorded { kind: page.kind.to_owned(), title: page.title.clone(), code: page.code.clone(), says };
            (page.address.clone(), recorded)
        });
        Record { format: FORMAT, edition: edition.to_owned(), pages: pages.collect(), steps }
    }

    /// As it is written.
    pub fn bytes(&self) -> Vec<u8> {
        // Text keys and plain values: it always serialises.
        let plain = serde_json::to_vec(self).unwrap_or_default();
        let mut packed = Vec::new();
        // Neither reading nor writing memory fails.
        let _ = ZlibEncoder::new(plain.as_slice(), Compression::best()).read_to_end(&mut packed);
        packed
    }
}

/// Whether a page's words are kept, so that a later edition can say what it said before. Questions and endings follow from
/// their guide, and the lists of the program's own from everything.
fn told(body: &Body) -> bool {
    use Body::{Checklist, Limits, Procedure, Sheet, Stores, Symptom, Words};
    matches!(body, Symptom(_) | Procedure(_) | Checklist(_) | Limits(_) | Stores(_) | Words(_) | Sheet(_))
}

/// Fields that are words or figures for a reader; message ids, signs and the measures of drawings are not told.
const TOLD: &[&str] = &[
    "all",
    "also",
    "alt",
    "answer",
    "ask",
    "at",
    "by_feel",
    "caption",
    "cause",
    "done",
    "edition",
    "fastener",
    "full",
    "hazards",
    "heading",
    "holds",
    "how",
    "leads",
    "learner",
    "looked_up",
    "means",
    "minutes",
    "need",
    "next",
    "not_when",
    "note",
    "open",
    "place",
    "prove",
    "purpose",
    "quantity",
    "read",
    "rest_says",
    "safety",
    "says",
    "short",
    "source",
    "step",
    "sub-step",
    "substitute",
    "title",
    "tolerance",
    "torque",
    "value",
    "wait",
    "wait_for",
    "who",
    "signal",
    "waiting",
    "why",
];

/// A shorter text may stand twice and mean two things.
const SHORT: usize = 30;

/// The lines worth telling, and of those that repeat one another the first.
fn worth_telling(says: Vec<Said>) -> Vec<Said> {
    let mut seen = std::collections::BTreeSet::new();
    let told = says.into_iter().filter(|said| TOLD.contains(&said.what.as_str()) && !said.text.is_empty());
    told.filter(|said| said.text.len() < SHORT || seen.insert((said.what.clone(), said.text.clone()))).collect()
}
