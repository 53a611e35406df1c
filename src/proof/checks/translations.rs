//! Guides in other languages: their texts are held against the same checks as the guide's own.
//!
//! In: the trees, and the guides. Out: each language's guides, and findings in the translations' files.
//! Leaves to others: everything that does not depend on words; the guides' own checks have seen to that.

use super::pictures::{self, Shown};
use super::{references, values};
use crate::model::{Guides, InLanguage, translated};
use crate::proof::finding::Finding;
use crate::proof::findings::{shape, translations};
use crate::proof::index::{self, Index};
use crate::proof::packs::Packs;
use crate::source::{FileId, Folder};
use std::collections::BTreeSet;

/// A language, and what it makes of the guides.
pub struct Language {
    /// Its code.
    pub language: String,
    /// The guides.
    pub filled: InLanguage,
    /// What there is to point at, in its words.
    pub index: Index,
    /// What points at what.
    pub references: Vec<references::Reference>,
    /// The pictures that it shows in place of the handbook's own.
    pub pictures: Shown,
}

/// Fills and checks every language. `shown` are the pictures of the handbook's own.
pub fn check(folder: &Folder, guides: &Guides, shown: &Shown, findings: &mut Vec<Finding>) -> Vec<Language> {
    let languages: BTreeSet<&str> = guides.translations.iter().map(|one| one.language.as_str()).collect();
    let spoken = |language| spoken(folder, guides, shown, language, findings);
    let spoken: Vec<Language> = languages.into_iter().map(spoken).collect();
    promised(guides, &spoken, findings);
    spoken
}

fn spoken(folder: &Folder, guides: &Guides, shown: &Shown, language: &str, findings: &mut Vec<Finding>) -> Language {
    let (filled, flaws) = translated(guides, language);
    findings.extend(flaws.into_iter().map(shape::from_flaw));
    let files: BTreeSet<FileId> = guides.translations.iter().map(|one| one.file).collect();
    let mut more = Vec::new();
    let index = index::index(&filled.guides, &mut more);
    values::check(&filled.guides, &mut more);
    let packs = Packs::of(&filled.guides, &folder.texts);
    let (references, _) = references::check(&filled.guides, &index, &packs, &folder.texts, &mut more);
    let pictures = pictures::check_more(&filled.guides, &folder.others, shown, &mut more);
    findings.extend(more.into_iter().filter(|finding| files.contains(&finding.place.file)));
    for (guide, (place, lacking)) in filled.untranslated.iter().filter(|(_, (_, lacking))| !lacking.is_empty()) {
        findings.push(translations::untranslated(*place, guide, language, lacking));
    }
    findings.extend(filled.outdated.iter().map(translations::outdated));
    Language { language: language.to_owned(), filled, index, references, pictures }
}

/// A handbook may promise a language; then every guide that a reader opens should be in it.
fn promised(guides: &Guides, spoken: &[Language], findings: &mut Vec<Finding>) {
    let Some((_, file)) = &guides.handbook else { return };
    for promise in &file.languages {
        let has = spoken.iter().find(|one| one.language == promise.value);
        let lacking: Vec<&str> = opened(guides)
            .into_iter()
            .filter(|id| has.is_none_or(|one| !one.filled.translated.contains(*id)))
            .collect();
        if !lacking.is_empty() {
            findings.push(translations::guides_untranslated(promise.place, &promise.value, &lacking));
        }
    }
}

/// Guides with a page of their own.
fn opened(guides: &Guides) -> Vec<&str> {
    let symptoms = guides.symptoms.iter().map(|(_, guide)| guide.symptom.value.as_str());
    let procedures = guides.procedures.iter().map(|(_, guide)| guide.procedure.value.as_str());
    let checklists = guides.checklists.iter().map(|(_, guide)| guide.checklist.value.as_str());
    let circuits = guides.circuits.iter().map(|(_, guide)| guide.circuit.value.as_str());
    symptoms.chain(procedures).chain(checklists).chain(circuits).collect()
}
