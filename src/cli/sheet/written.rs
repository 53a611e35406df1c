//! Writes a sheet's file: whole or not at all, and never over a file that is not one of ours.

use super::made::Form;
use crate::render::SHEET_MARK;
use crate::source::in_words;
use std::io::ErrorKind;
use std::path::Path;

/// What stands in every PDF of ours, in its metadata.
const PDF_MARK: &str = "<xmp:CreatorTool>Coquille</xmp:CreatorTool>";

/// Writes it.
pub fn write(out: &Path, form: Form, bytes: &[u8]) -> Result<(), String> {
    let shown = out.display();
    match std::fs::read(out) {
        Ok(there) if ours(&there, form) => {}
        Ok(_) => return Err(format!("`{shown}` is not from this program and stays.\nName another file with -o.")),
        Err(error) if error.kind() == ErrorKind::NotFound => {}
        Err(error) => {
            return Err(format!(
                "`{shown}` is in the way and cannot be read: {}\nName another file with -o.",
                in_words(&error)
            ));
        }
    }
    // Beside first, then in one step: a sheet is never half written.
    let mut name = out.file_name().unwrap_or_default().to_os_string();
    name.push(".part");
    let part = out.with_file_name(name);
    let done = std::fs::write(&part, bytes).and_then(|()| std::fs::rename(&part, out));
    done.map_err(|error| {
        // What is left of it is of no use to anybody.
        let _ = std::fs::remove_file(&part);
        match out.parent().filter(|above| !above.as_os_str().is_empty() && !above.is_dir()) {
            Some(above) => format!(
                "`{shown}` cannot be written: there is no folder `{}`.\nMake it first, or name another file with -o.",
                above.display()
            ),
            None => format!("`{shown}` cannot be written: {}.\nName another file with -o.", in_words(&error)),
        }
    })
}

fn ours(there: &[u8], form: Form) -> bool {
    let mark = match form {
        Form::Pdf => PDF_MARK,
        Form::Html => SHEET_MARK,
    };
    there.windows(mark.len()).any(|window| window == mark.as_bytes())
}
