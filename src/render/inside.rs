//! Where the pages of another language are: in a folder of their own, with links that stay in it as far as there are pages, and that say
//! which language they lead to where there are none.
//!
//! In: the folder and its pages. Out: addresses and HTML with the links led. The handbook's own language has no folder.

use crate::handbook::page::Page;
use std::collections::BTreeSet;

/// The folder of a language.
#[derive(Default)]
pub struct Inside {
    folder: Option<String>,
    /// The language of what has no page here, without its region.
    elsewhere: String,
    pages: BTreeSet<String>,
}

impl Inside {
    /// Moves pages into a folder: their way to the top is one longer.
    pub fn of(folder: Option<&str>, elsewhere: Option<&str>, pages: &mut [Page]) -> Inside {
        let Some(folder) = folder else { return Inside::default() };
        let elsewhere = elsewhere.and_then(|language| language.split('-').next()).unwrap_or_default().to_owned();
        let addresses = pages.iter().map(|page| page.address.clone()).collect();
        for page in pages {
            page.root = format!("../{}", page.root);
        }
        Inside { folder: Some(folder.to_owned()), elsewhere, pages: addresses }
    }

    /// Where a page of this language is, seen from the top; an address that the language has no page for stays as it is.
    pub fn address(&self, address: &str) -> String {
        match &self.folder {
            Some(folder) if self.pages.contains(page_of(address)) => format!("{folder}/{address}"),
            _ => address.to_owned(),
        }
    }

    /// The HTML with every link to a page of this language led into its folder. Links start with the way to the top; what scripts make
    /// links of is an address seen from there.
    pub fn led(&self, html: String, root: &str) -> String {
        let Some(folder) = &self.folder else { return html };
        let html = FOR_SCRIPTS.iter().fold(html, |html, attribute| self.led_for_scripts(&html, attribute, folder));
        let start = format!("href=\"{root}");
        let mut parts = html.split(start.as_str());
        let mut out = parts.next().unwrap_or("").to_owned();
        for part in parts {
            out.push_str(&start);
            let (address, rest) = part.split_once('"').unwrap_or((part, ""));
            let page = page_of(address);
            if self.pages.contains(page) {
                out.push_str(&format!("{folder}/{part}"));
            } else if page.ends_with(".html") && !page.starts_with('.') {
                out.push_str(&format!("{address}\" hreflang=\"{}\"{rest}", self.elsewhere));
            } else {
                out.push_str(part);
            }
        }
        out
    }
}

/// Attributes that hold the address of a page.
const FOR_SCRIPTS: [&str; 3] = ["data-address", "data-symptom", "data-way-back"];

impl Inside {
    fn led_for_scripts(&self, html: &str, attribute: &str, folder: &str) -> String {
        let start = format!(" {attribute}=\"");
        let mut parts = html.split(start.as_str());
        let mut out = parts.next().unwrap_or("").to_owned();
        for part in parts {
            let address = part.split('"').next().unwrap_or(part);
            let led = if self.pages.contains(address) { format!("{folder}/") } else { String::new() };
            out.push_str(&start);
            out.push_str(&led);
            out.push_str(part);
        }
        out
    }
}

fn page_of(address: &str) -> &str {
    address.split('#').next().unwrap_or(address)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_scripts_make_links_of_stays_in_the_language_too() {
        let inside = Inside {
            folder: Some("fr".to_owned()),
            elsewhere: "en".to_owned(),
            pages: ["faults/dark.html".to_owned(), "faults/dark/look-1.html".to_owned()].into(),
        };
        let html = r#"<aside data-symptom="faults/dark.html" data-title="faults/dark.html" data-address="faults/dark/look-1.html">"#;
        let led = r#"<aside data-symptom="fr/faults/dark.html" data-title="faults/dark.html" data-address="fr/faults/dark/look-1.html">"#;
        assert_eq!(inside.led(html.to_owned(), "../../"), led);
        let other = r#"<section data-way-back="" data-address="faults/bright.html">"#;
        assert_eq!(inside.led(other.to_owned(), ""), other);
    }

    #[test]
    fn links_stay_in_the_language_as_far_as_it_has_pages() {
        let pages = ["jobs/clean.html".to_owned()].into();
        let inside = Inside { folder: Some("fr".into()), elsewhere: "en".into(), pages };
        let html = r#"<a href="../../jobs/clean.html#x">a</a> <a href="../../jobs/mend.html">b</a> <a href="../.././jobs/clean.html">c</a> <link href="../../look/a.css">"#;
        let led = r#"<a href="../../fr/jobs/clean.html#x">a</a> <a href="../../jobs/mend.html" hreflang="en">b</a> <a href="../.././jobs/clean.html">c</a> <link href="../../look/a.css">"#;
        assert_eq!(inside.led(html.to_owned(), "../../"), led);
    }
}
