//! The forms of `coquille bind --as` that are one file each: what they are called, made from and written as.
//!
//! In: a handbook, or the files of its folder. Out: `OUT.zip`, `OUT.html`, `OUT.epub`, beside `OUT`.

use super::args::{BindJob, Form};
use super::terminal::Terminal;
use crate::handbook::Handbook;
use crate::press::{self, Address, Placed, PressFailed, Strangers};
use crate::render::Theme;
use crate::render::forms::{self, SIGN, is_ours};
use std::path::PathBuf;

/// Where a form is written.
fn path(job: &BindJob, form: Form) -> PathBuf {
    let ending = match form {
        Form::Folder => return job.out.clone(),
        Form::Zip => ".zip",
        Form::Single => ".html",
        Form::Epub => ".epub",
    };
    let mut name = job.out.file_name().unwrap_or_default().to_owned();
    name.push(ending);
    job.out.with_file_name(name)
}

/// What becomes of files that are not ours.
pub fn strangers(job: &BindJob) -> Strangers {
    if job.force { Strangers::Keep } else { Strangers::Refuse }
}

/// Whether a form may be written; why not, in words.
pub fn may_write(job: &BindJob, form: Form) -> Result<(), String> {
    match form {
        Form::Folder => Ok(()),
        _ if job.out.file_name().is_none() => Err(format!(
            "`{}` has no name that a file beside it could have.\nGive a folder with a name, such as --out site.",
            job.out.display()
        )),
        _ => press::may_place(&path(job, form), &is_ours, strangers(job)).map_err(in_words),
    }
}

fn in_words(failed: PressFailed) -> String {
    format!("{failed}\n{}", failed.help())
}

/// The folder, packed so that it unpacks into one folder.
pub fn zip<'s>(job: &BindJob, site: impl IntoIterator<Item = (&'s Address, &'s Vec<u8>)>) -> Result<Vec<u8>, String> {
    let folder = job.out.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let files: Vec<(String, &[u8])> =
        site.into_iter().map(|(address, bytes)| (format!("{folder}/{address}"), bytes.as_slice())).collect();
    press::pack(files.iter().map(|(name, bytes)| (name.as_str(), *bytes)), SIGN)
}

/// One file that holds everything.
pub fn single(handbook: Handbook, theme: &Theme) -> Result<Vec<u8>, String> {
    forms::single(handbook, theme).map_err(|failed| failed.to_string())
}

/// A book.
pub fn epub(handbook: Handbook, theme: &Theme) -> Result<Vec<u8>, String> {
    let files = forms::epub(handbook, theme).map_err(|failed| failed.to_string())?;
    press::pack(files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())), SIGN)
}

/// Writes a form.
pub fn write(job: &BindJob, form: Form, bytes: &[u8], terminal: &mut Terminal) -> Result<(), String> {
    let path = path(job, form);
    let placed = press::place(&path, bytes, &is_ours, strangers(job)).map_err(in_words)?;
    if let Placed::SetAside(aside) = placed {
        terminal.tell(format!("Moved `{}` out of the way: it is now `{}`.", path.display(), aside.display()));
    }
    Ok(())
}

/// What to do with a form that was written.
pub fn told(job: &BindJob, form: Form) -> String {
    let path = path(job, form);
    match form {
        Form::Folder => format!("Open {}", path.join("index.html").display()),
        Form::Zip => format!("To pass on and unpack: {}", path.display()),
        Form::Single => format!("One file, to send: {}", path.display()),
        Form::Epub => format!("For e-readers: {}", path.display()),
    }
}
