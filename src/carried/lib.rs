//! Packs a folder into the program while it is compiled, so that the program carries it small.
//!
//! In: a folder's path below the crate that asks. Out: the bytes of all its files, packed together with zlib (RFC 1950): for each file, in
//! the order of their names, the length of its name, its name with `/` between folders, the length of its text, its text; lengths as
//! four bytes, the least first. Leaves unpacking to who asked.
//!
//! It is a crate of its own since only a macro can do this without a build script; and a build script would have the whole library
//! compiled again after every edit of a guide, where this has only the file compiled that asks.

use flate2::Compression;
use flate2::read::ZlibEncoder;
use proc_macro::{Literal, TokenStream, TokenTree};
use std::io::Read;
use std::path::{Path, PathBuf};

/// The packed bytes of a folder: `folder!("guides")`. What it holds is compiled again when one of the files changes; a new file is seen
/// when the file that asks is.
#[proc_macro]
pub fn folder(asked: TokenStream) -> TokenStream {
    packed(asked).unwrap_or_else(|why| format!("compile_error!({why:?})").parse().unwrap_or_default())
}

fn packed(asked: TokenStream) -> Result<TokenStream, String> {
    let asked = asked.to_string();
    let root = std::env::var_os("CARGO_MANIFEST_DIR").ok_or("which crate asks is not known")?;
    let folder = PathBuf::from(root).join(asked.trim_matches('"'));
    let mut files = Vec::new();
    below(&folder, &mut files).map_err(|error| format!("{}: {error}", folder.display()))?;
    files.sort();
    let mut plain = Vec::new();
    for file in &files {
        let text = std::fs::read(file).map_err(|error| format!("{}: {error}", file.display()))?;
        let name = name(file, &folder).ok_or_else(|| format!("{} has a name that is no text", file.display()))?;
        for part in [name.as_bytes(), &text] {
            let length = u32::try_from(part.len()).map_err(|_| format!("{} is too large", file.display()))?;
            plain.extend(length.to_le_bytes());
            plain.extend(part);
        }
    }
    let mut packed = Vec::new();
    let mut packing = ZlibEncoder::new(plain.as_slice(), Compression::best());
    packing.read_to_end(&mut packed).map_err(|error| error.to_string())?;
    watched(&files, &packed)
}

fn below(folder: &Path, files: &mut Vec<PathBuf>) -> std::io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() { below(&path, files)? } else { files.push(path) }
    }
    Ok(())
}

fn name(file: &Path, folder: &Path) -> Option<String> {
    let parts = file.strip_prefix(folder).ok()?.iter().map(|part| part.to_str());
    Some(parts.collect::<Option<Vec<_>>>()?.join("/"))
}

/// The bytes, after a constant that names the files: the compiler then knows what to look at, and leaves the constant out.
fn watched(files: &[PathBuf], packed: &[u8]) -> Result<TokenStream, String> {
    let paths = files.iter().map(|file| format!("include_bytes!({file:?}),")).collect::<String>();
    let watch: TokenStream = format!("const _: &[&[u8]] = &[{paths}];")
        .parse()
        .map_err(|_| "a file has a name that is no text".to_owned())?;
    let bytes = TokenStream::from(TokenTree::from(Literal::byte_string(packed)));
    let inside: TokenStream = [watch, bytes].into_iter().collect();
    Ok(TokenTree::from(proc_macro::Group::new(proc_macro::Delimiter::Brace, inside)).into())
}
