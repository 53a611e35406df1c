//! Where guides from elsewhere came from: shown on their pages and sheets.

use super::addresses;
use super::laying::Laying;
use super::page::{Origin, Page};
use crate::model::Pack;
use crate::proof::{Packs, all_guides};
use std::collections::BTreeMap;

/// Where a pack came from, as a page says it.
pub fn origin(pack: &Pack) -> Origin {
    Origin {
        title: pack.title.value.clone(),
        by: pack.by.value.clone(),
        licence: pack.licence.value.clone(),
        from: pack.from.as_ref().map(|from| from.value.clone()),
    }
}

/// Tells the pages of a pack's guides where they came from: a guide's own, its sheet, its questions and endings.
pub fn mark(laying: &Laying<'_>, pages: &mut [Page]) {
    let guides = &laying.proofed.guides;
    if guides.packs.is_empty() {
        return;
    }
    let packs = Packs::of(guides, laying.texts);
    let mut from = BTreeMap::new();
    for guide in all_guides(guides) {
        let Some(pack) = packs.of_file(guide.file) else { continue };
        let id = guide.id.value.as_str();
        for address in [addresses::guide(guide.kind, id), addresses::sheet(id)] {
            from.insert(address, origin(pack));
        }
    }
    // Lists are of everybody's.
    from.retain(|address, _| {
        ![addresses::STORES, addresses::LIMITS, addresses::WORDS, addresses::ABOUT].contains(&address.as_str())
    });
    for page in pages {
        let above = page.address.rsplit_once('/').map(|(folder, _)| format!("{folder}.html"));
        page.origin = from.get(&page.address).or_else(|| from.get(&above?)).cloned();
    }
}
