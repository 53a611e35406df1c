//! The handbook in its own language, and beside it in others.
//!
//! In: proofed guides. Out: a [`Handbook`] a language. One in another language has the pages of the guides that are translated
//! into it, and the lists; whatever it leads to besides is read in the handbook's own language.

use super::page::{Body, OtherLanguage, Page};
use super::record::Record;
use super::{Handbook, laid_out, lay_out, lay_out_since};
use crate::model::messages::general;
use crate::proof::{Proofed, Spoken};
use crate::source::Folder;
use std::collections::BTreeSet;

/// Lays out every language, the handbook's own first.
pub fn lay_out_all(proofed: &Proofed, folder: &Folder) -> Vec<Handbook> {
    all(lay_out(proofed, folder), proofed, folder)
}

/// The same, and says of the handbook's own language what changed since an earlier one.
pub fn lay_out_all_since(proofed: &Proofed, folder: &Folder, earlier: &Record) -> Vec<Handbook> {
    all(lay_out_since(proofed, folder, earlier), proofed, folder)
}

fn all(own: Handbook, proofed: &Proofed, folder: &Folder) -> Vec<Handbook> {
    let mut all = vec![own];
    for spoken in &proofed.languages {
        let mut handbook = laid_out(&spoken.proofed, folder, Some(&spoken.translated), None);
        handbook.folder = Some(spoken.language.clone());
        handbook.elsewhere = Some(std::mem::replace(&mut handbook.cover.language, spoken.language.clone()));
        handbook.messages = messages(folder, &spoken.language);
        handbook.pages.retain(|page| is_kept(page, spoken));
        let kept: BTreeSet<&str> = handbook.pages.iter().map(|page| page.address.as_str()).collect();
        handbook.search.retain(|entry| kept.contains(entry.address.split('#').next().unwrap_or("")));
        all.push(handbook);
    }
    link_languages(&mut all);
    all
}

/// Pages of a guide are kept if it is translated, and so are lists of things; lists of guides always are. *Writing guides* and *About*
/// are for those who write, and they do so in one language.
fn is_kept(page: &Page, spoken: &Spoken) -> bool {
    let translated = &spoken.translated;
    let guides = &spoken.proofed.guides;
    let mut parts = page.address.split('/');
    let (folder, rest) = (parts.next().unwrap_or(""), parts.find(|part| *part != "cards"));
    let id = rest.map(|name| name.trim_end_matches(".html"));
    match (&page.body, id) {
        (Body::Writing(_) | Body::About(_), _) => false,
        (Body::Stores(_), _) => guides.stores.iter().any(|(_, list)| translated.contains(list.stores.value.as_str())),
        (Body::Limits(_), _) => guides.limits.iter().any(|(_, list)| translated.contains(list.limits.value.as_str())),
        (Body::Words(_), _) => guides.words.iter().any(|(_, list)| translated.contains(list.words.value.as_str())),
        (_, None) => true,
        (_, Some(_)) if folder == "kit" => true,
        (_, Some(id)) => translated.contains(id),
    }
}

/// Each page names the same page in the other languages.
fn link_languages(all: &mut [Handbook]) {
    let addresses = |handbook: &Handbook| -> (String, String, BTreeSet<String>) {
        let top = handbook.folder.as_ref().map_or_else(String::new, |folder| format!("{folder}/"));
        (handbook.cover.language.clone(), top, handbook.pages.iter().map(|page| page.address.clone()).collect())
    };
    let there: Vec<_> = all.iter().map(addresses).collect();
    for (own, handbook) in all.iter_mut().enumerate() {
        for page in &mut handbook.pages {
            let others =
                there.iter().enumerate().filter(|(other, (.., pages))| *other != own && pages.contains(&page.address));
            page.languages = others
                .map(|(_, (language, top, _))| OtherLanguage {
                    language: language.clone(),
                    address: format!("{top}{}", page.address),
                })
                .collect();
        }
    }
}

/// A club's message files for a language, the more general first: `pt`, then `pt-BR`.
pub fn messages(folder: &Folder, language: &str) -> Vec<String> {
    let general = Some(general(language)).filter(|general| *general != language);
    let names = general.into_iter().chain([language]).map(|language| format!("messages/{language}.ftl"));
    names.filter_map(|name| folder.others.get(&name)).map(|bytes| String::from_utf8_lossy(bytes).into_owned()).collect()
}
