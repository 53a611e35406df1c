//! Writes every state of every part of the theme that comes with the program into a folder, to be looked at and checked:
//! `cargo run --example states -- FOLDER`.

use coquille::render::{Theme, states};
use std::collections::BTreeMap;
use std::error::Error;
use std::path::PathBuf;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args_os().nth(1).ok_or("name a folder to write into")?);
    for (address, bytes) in states(&Theme::with(BTreeMap::new())?)? {
        let path = folder.join(address);
        std::fs::create_dir_all(path.parent().unwrap_or(&folder))?;
        std::fs::write(path, bytes)?;
    }
    Ok(())
}
