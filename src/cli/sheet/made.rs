//! A file's form, PDF or HTML, and its bytes.

use crate::cli::args::SheetJob;
use crate::cli::bind::theme_called;
use crate::handbook::Handbook;
use crate::handbook::page::Page;
use crate::model::Paper;
use crate::render::sheet_file;
use std::collections::BTreeSet;
use std::path::Path;

/// A form of file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// PDF.
    Pdf,
    /// HTML.
    Html,
}

/// A file, made.
pub struct Made {
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// Letters that no face has.
    pub without_letter: BTreeSet<char>,
}

/// What to say where the program was built without PDF.
pub const NO_PDF: &str = "This Coquille was built without PDF. Sheets can be made as HTML, to print from a browser:\n  \
    coquille sheet GUIDE --html\n\
    To have PDF, build it in:\n  \
    cargo install --path . --features pdf";

impl Form {
    /// How its files' names end.
    pub fn ending(self) -> &'static str {
        match self {
            Form::Pdf => "pdf",
            Form::Html => "html",
        }
    }
}

/// The form that is wanted: what the file's name says, or `--html`; a PDF that cannot be made is refused.
pub fn form(job: &SheetJob) -> Result<Form, String> {
    let ending = job.out.as_ref().and_then(|out| out.extension()).map(|end| end.to_string_lossy().to_lowercase());
    let form = match (ending.as_deref(), job.html) {
        (Some("html" | "htm"), _) | (None, true) => Form::Html,
        (Some("pdf"), false) => Form::Pdf,
        (None, false) if job.out.is_none() => Form::Pdf,
        (Some("pdf"), true) => return Err("`--html` and a name with `.pdf` do not go together.".to_owned()),
        _ => return Err("Sheets are made as PDF or HTML: give a name with `.pdf` or `.html` after -o.".to_owned()),
    };
    if form == Form::Pdf && !cfg!(feature = "pdf") {
        return Err(NO_PDF.to_owned());
    }
    Ok(form)
}

/// Makes the file.
pub fn made(
    form: Form,
    handbook: &Handbook,
    guides: &Path,
    pages: &[&Page],
    paper: Paper,
    numbers: &[String],
) -> Result<Made, String> {
    match form {
        Form::Pdf => pdf(handbook, pages, paper, numbers),
        Form::Html => {
            let theme = theme_called(guides, &handbook.cover.theme)?;
            let bytes = sheet_file(handbook, &theme, pages, paper, numbers).map_err(|failed| failed.to_string())?;
            Ok(Made { bytes, without_letter: BTreeSet::new() })
        }
    }
}

#[cfg(feature = "pdf")]
fn pdf(handbook: &Handbook, pages: &[&Page], paper: Paper, numbers: &[String]) -> Result<Made, String> {
    let printer = crate::render::pdf::Printer::of(handbook);
    let made = printer.print(pages, paper, numbers).map_err(|failed| failed.to_string())?;
    Ok(Made { bytes: made.bytes, without_letter: made.without_letter })
}

#[cfg(not(feature = "pdf"))]
fn pdf(_: &Handbook, _: &[&Page], _: Paper, _: &[String]) -> Result<Made, String> {
    Err(NO_PDF.to_owned())
}
