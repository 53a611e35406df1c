//! The typesetter's surroundings: one layout, one file of data, our faces; no disk, no network, no clock.
//!
//! In: the sheets as JSON. Out: the PDF's bytes. What guides say reaches the layout as strings and is never parsed as markup.

use super::PdfFailed;
use super::faces::FACES;
use std::sync::LazyLock;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

const LAYOUT: &str = include_str!("sheet.typ");

static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));

struct Bench {
    layout: Source,
    data_id: FileId,
    data: Bytes,
}

/// Typesets the sheets.
pub fn typeset(data: Vec<u8>) -> Result<Vec<u8>, PdfFailed> {
    // A name for the PDF's own identifier that depends on nothing but what it says.
    let ident = blake3::hash(&data).to_hex().to_string();
    let bench = Bench::new(data)?;
    let document: PagedDocument = typst::compile(&bench).output.map_err(|faults| failed(&faults))?;
    let standards =
        PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|fault| PdfFailed { message: fault.message().to_string() })?;
    let options = PdfOptions {
        ident: Smart::Custom(ident),
        creator: Smart::Custom(Some("Coquille".to_owned())),
        standards,
        ..PdfOptions::default()
    };
    let bytes = typst_pdf::pdf(&document, &options).map_err(|faults| failed(&faults));
    // Each file is of its own: what the typesetter remembers of it is of no use for the next but one.
    typst::comemo::evict(2);
    bytes
}

fn failed(faults: &[SourceDiagnostic]) -> PdfFailed {
    let messages: Vec<String> = faults
        .iter()
        .map(|fault| {
            let hints = fault.hints.iter().map(|hint| hint.v.to_string());
            [fault.message.to_string()].into_iter().chain(hints).collect::<Vec<_>>().join("; ")
        })
        .collect();
    PdfFailed { message: messages.join("; ") }
}

impl Bench {
    fn new(data: Vec<u8>) -> Result<Bench, PdfFailed> {
        let layout = Source::new(named("sheet.typ")?, LAYOUT.to_owned());
        Ok(Bench { layout, data_id: named("sheets.json")?, data: Bytes::new(data) })
    }
}

fn named(name: &str) -> Result<FileId, PdfFailed> {
    let path = VirtualPath::new(name).map_err(|_| PdfFailed { message: format!("`{name}` is no path") })?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

impl World for Bench {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &FACES.book
    }

    fn main(&self) -> FileId {
        self.layout.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.layout.id() { Ok(self.layout.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == self.data_id { Ok(self.data.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn font(&self, index: usize) -> Option<Font> {
        FACES.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}
