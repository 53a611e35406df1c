//! Writes a sheet's file: whole or not at all, and never over a file that is not one of ours.

use super::made::Form;
use crate::press::{self, Strangers, Why};
use crate::render::SHEET_MARK;
use std::path::Path;

/// What stands in every PDF of ours, in its metadata.
const PDF_MARK: &str = "<xmp:CreatorTool>Coquille</xmp:CreatorTool>";

/// Writes it.
pub fn write(out: &Path, form: Form, bytes: &[u8]) -> Result<(), String> {
    let shown = out.display();
    if let Some(above) = out.parent().filter(|above| !above.as_os_str().is_empty() && !above.is_dir()) {
        return Err(format!(
            "`{shown}` cannot be written: there is no folder `{}`.\nMake it first, or name another file with -o.",
            above.display()
        ));
    }
    let placed = press::place(out, bytes, &|there| ours(there, form), Strangers::Refuse);
    placed.map(drop).map_err(|failed| match failed.why {
        Why::FileNotOurs => format!("`{shown}` is not from this program and stays.\nName another file with -o."),
        _ => format!("{failed}.\nName another file with -o."),
    })
}

fn ours(there: &[u8], form: Form) -> bool {
    let mark = match form {
        Form::Pdf => PDF_MARK,
        Form::Html => SHEET_MARK,
    };
    there.windows(mark.len()).any(|window| window == mark.as_bytes())
}
