//! The look: templates, styles, scripts. `marking-blue` is carried in the program; a club's own theme lays files over it.
//!
//! In: the files of a club's `themes/NAME`, if it has one: `colours.yaml`, a logo, single parts, styles. Out: [`Theme`].
//! Promise: a part that a club replaces is replaced alone; everything else stays as it comes.

use super::{RenderFailed, style};
use include_dir::{Dir, include_dir};
use std::collections::BTreeMap;
use tera::Tera;

static MARKING_BLUE: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/themes/marking-blue");

/// The frame that every page's template extends.
pub(super) const FRAME: &str = "pages/frame.html";

/// A look, ready to be used.
#[derive(Debug, Clone, PartialEq)]
pub struct Theme {
    files: BTreeMap<String, Vec<u8>>,
    colours: style::Colours,
    logo: Option<String>,
}

/// Why a club's theme cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ThemeFailed {
    /// The file, inside the theme's folder.
    pub file: String,
    /// What is wrong, and what to do.
    pub message: String,
}

impl std::fmt::Display for ThemeFailed {
    fn fmt(&self, words: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(words, "`{}`: {}", self.file, self.message)
    }
}

impl std::error::Error for ThemeFailed {}

/// The scripts of every page, in the order in which they run.
const PAGE_SCRIPTS: [&str; 9] =
    ["keep", "wording", "ticks", "readings", "search", "here", "hand-over", "print", "fetch"];

impl Theme {
    /// The theme that comes with the program, with a club's files laid over it.
    ///
    /// # Errors
    /// When a club's file cannot be used.
    pub fn with(over: BTreeMap<String, Vec<u8>>) -> Result<Theme, ThemeFailed> {
        let mut files = carried(&MARKING_BLUE);
        let mut logo = None;
        for (name, bytes) in over {
            match place_of(&name, &files)? {
                Over::Logo => logo = Some(name.clone()),
                Over::File => {}
            }
            files.insert(name, bytes);
        }
        let colours = files.get("colours.yaml").map_or(&[][..], Vec::as_slice);
        let colours = style::Colours::read(colours)?;
        Ok(Theme { files, colours, logo })
    }

    /// The templates, each by its path: `pages/…` and `parts/…`; the frame that pages extend is this one.
    pub(super) fn templates(&self, frame: &str) -> Result<Tera, RenderFailed> {
        let mut tera = Tera::new();
        tera.autoescape_on(vec![".html"]);
        let texts = self.files.iter().filter(|(name, _)| name.ends_with(".html"));
        let texts = texts.filter_map(|(name, bytes)| {
            let name = match name.as_str() {
                name if name == frame => FRAME,
                FRAME => return None,
                name => name,
            };
            Some((name.to_owned(), String::from_utf8_lossy(bytes).into_owned()))
        });
        super::functions::declare(&mut tera);
        let added = tera.add_raw_templates(texts.collect::<Vec<_>>());
        added.map_err(|error| super::faulty("themes", &error))?;
        Ok(tera)
    }

    /// The files that pages refer to: one style sheet, the scripts, the icon, the logo, the licences of what is not ours.
    pub(super) fn assets(&self) -> BTreeMap<String, Vec<u8>> {
        let mut assets = BTreeMap::new();
        assets.insert("look/marking-blue.css".to_owned(), self.style_sheet().into_bytes());
        for (name, bytes) in &self.files {
            let base = name.rsplit('/').next().unwrap_or(name);
            let script = name.starts_with("scripts/") && name.ends_with(".js");
            let licence = name.ends_with(".txt") || base.starts_with("LICENSE");
            if script || licence || name == "icon.svg" {
                assets.insert(format!("look/{base}"), bytes.clone());
            }
        }
        if let Some((logo, bytes)) = self.logo.as_ref().and_then(|name| self.files.get_key_value(name)) {
            assets.insert(format!("look/{logo}"), bytes.clone());
        }
        assets
    }

    /// The same with the scripts of every page in one file: each page asks for it once.
    pub(super) fn assets_of_pages(&self) -> BTreeMap<String, Vec<u8>> {
        let mut assets = self.assets();
        let all = PAGE_SCRIPTS.iter().filter_map(|name| assets.remove(&format!("look/{name}.js")));
        let together: Vec<Vec<u8>> = all.collect();
        assets.insert("look/page.js".to_owned(), together.join(&b'\n'));
        assets
    }

    /// The style sheet of a book, with the theme's light colours in it: e-readers know no custom properties.
    pub(super) fn book_style(&self) -> String {
        let css = self.files.get("book/book.css").map_or(&[][..], Vec::as_slice);
        self.colours.put_in(&String::from_utf8_lossy(css))
    }

    /// A script that only the form that is one file has.
    pub(super) fn single_script(&self, name: &str) -> String {
        let script = self.files.get(&format!("single/{name}.js")).map_or(&[][..], Vec::as_slice);
        String::from_utf8_lossy(script).into_owned()
    }

    /// The states of the theme's parts, as text, in the order of the parts' names.
    pub(super) fn part_states(&self) -> impl Iterator<Item = (&str, &[u8])> {
        let states = self.files.iter().filter(|(name, _)| name.starts_with("parts/") && name.ends_with("/states.yaml"));
        states.map(|(name, bytes)| (name.as_str(), bytes.as_slice()))
    }

    /// The theme's styles in one.
    pub(super) fn style_sheet(&self) -> String {
        let mut css = self.colours.custom_properties();
        let styles = self.files.iter().filter(|(name, _)| name.starts_with("style/") && name.ends_with(".css"));
        for (_, bytes) in styles {
            css.push_str(&String::from_utf8_lossy(bytes));
            css.push('\n');
        }
        css
    }

    /// The logo's address.
    pub(super) fn logo(&self) -> Option<String> {
        self.logo.as_ref().map(|name| format!("look/{name}"))
    }
}

enum Over {
    Logo,
    File,
}

/// What a club's file replaces. A file that replaces nothing is a mistake that nobody would notice.
fn place_of(name: &str, carried: &BTreeMap<String, Vec<u8>>) -> Result<Over, ThemeFailed> {
    match name {
        "logo.svg" | "logo.png" => Ok(Over::Logo),
        _ if carried.contains_key(name) && !name.starts_with("pages/") => Ok(Over::File),
        _ if name.starts_with("style/") && name.ends_with(".css") => Ok(Over::File),
        _ => {
            let known = carried.keys().map(String::as_str);
            let near = crate::proof::nearest(name, known).map(|near| format!("; did you mean `{near}`?"));
            let message = format!(
                "a theme may have `colours.yaml`, `logo.svg` or `logo.png`, `parts/PART/part.html` and `style/*.css`{}",
                near.unwrap_or_default()
            );
            Err(ThemeFailed { file: name.to_owned(), message })
        }
    }
}

fn carried(dir: &Dir<'_>) -> BTreeMap<String, Vec<u8>> {
    let mut files = BTreeMap::new();
    let mut open = vec![dir.clone()];
    while let Some(dir) = open.pop() {
        for file in dir.files() {
            files.insert(file.path().to_string_lossy().replace('\\', "/"), file.contents().to_vec());
        }
        open.extend(dir.dirs().cloned());
    }
    files
}
