//! Findings about guides in another language and about a club's message files.

use crate::model::translation::{Outdated, Untranslated};
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean, listed};
use crate::source::{Place, What};

/// Words a flaw of a translation.
pub fn from_flaw(place: Place, what: What) -> Finding {
    match what {
        What::NotWords(key) => Finding::new(
            Code::TranslationChanges,
            place,
            format!("a translation cannot change `{key}`"),
            "leave the key out: only words are translated, and everything else comes from the guide",
        ),
        What::NothingToTranslate { named, known } => nothing_to_translate(place, &named, &known),
        What::TranslationOfNothing { named, known } => Finding::new(
            Code::StrayTranslation,
            place,
            format!("no guide `{named}` to translate"),
            did_you_mean(&named, known.iter().map(String::as_str), "write the id of the guide that this translates"),
        ),
        What::SecondTranslation(first) => Finding::new(
            Code::StrayTranslation,
            place,
            "a second translation into the same language",
            "join the two, or delete one",
        )
        .also(first, "first here"),
        _ => Finding::new(
            Code::BadValue,
            place,
            "this is no language",
            "write its short code: `fr` for French, `de` for German, `pt-BR` for the Portuguese of Brazil",
        ),
    }
}

fn nothing_to_translate(place: Place, named: &str, known: &[String]) -> Finding {
    let all = match known.is_empty() {
        true => "the guide has nothing here".to_owned(),
        false => format!("the guide has {}", listed(known.iter().map(String::as_str))),
    };
    Finding::new(
        Code::StrayTranslation,
        place,
        format!("the guide has no `{named}` here"),
        did_you_mean(named, known.iter().map(String::as_str), &all),
    )
}

/// A translation lacks words that its guide has.
pub fn untranslated(place: Place, guide: &str, language: &str, lacking: &[Untranslated]) -> Finding {
    let keys: std::collections::BTreeSet<&str> = lacking.iter().map(|one| one.key.as_str()).collect();
    let many = counted(lacking.len(), "text");
    let finding = Finding::new(
        Code::Untranslated,
        place,
        format!("`{guide}` lacks {many} in `{language}`"),
        format!("the page shows the guide's own words there; add {}", listed(keys)),
    );
    let shown = lacking.iter().take(MOST_SHOWN);
    shown.fold(finding.of(guide), |finding, one| finding.also(one.place, "this one"))
}

/// A translation was made from words that the guide no longer has.
pub fn outdated(outdated: &Outdated) -> Finding {
    let (first, second) = outdated.now.split_at_checked(4).unwrap_or((&outdated.now, ""));
    Finding::new(
        Code::OutdatedTranslation,
        outdated.place,
        format!("`{}` has other words than those translated here", outdated.of),
        format!("see what changed in the guide, then write `as of: {first} {second}`"),
    )
    .of(&outdated.of)
}

/// Places shown of what a translation lacks.
const MOST_SHOWN: usize = 3;

/// A language that the handbook promises, and guides without it.
pub fn guides_untranslated(place: Place, language: &str, guides: &[&str]) -> Finding {
    let many = counted(guides.len(), "guide");
    let help = format!("translate {}; until then they are read in the handbook's own language", first_few(guides));
    Finding::new(Code::Untranslated, place, format!("`{language}` lacks {many}"), help).of(language)
}

/// A line of a message file that cannot be read.
pub fn faulty_message(place: Place) -> Finding {
    Finding::new(
        Code::FaultyMessages,
        place,
        "this message cannot be read",
        "write `id = words` on one line, and set the lines that go on in with spaces",
    )
}

/// A message file in a language that the program does not speak lacks messages.
pub fn messages_lacking(place: Place, language: &str, lacking: &[&str]) -> Finding {
    let many = counted(lacking.len(), "message");
    let help = format!("pages say them in English; add {}", first_few(lacking));
    Finding::new(Code::Untranslated, place, format!("`{language}` lacks {many}"), help).of(language)
}

fn counted(number: usize, thing: &str) -> String {
    if number == 1 { format!("1 {thing}") } else { format!("{number} {thing}s") }
}

fn first_few(all: &[&str]) -> String {
    let few = listed(all.iter().take(6).copied());
    if all.len() > 6 { format!("{few} and more") } else { few }
}

/// A message that the program has no use for.
pub fn unknown_message(place: Place, id: &str, known: &[&str]) -> Finding {
    Finding::new(
        Code::FaultyMessages,
        place,
        format!("the program has no message `{id}`"),
        did_you_mean(id, known.iter().copied(), "delete it; no page would say it"),
    )
}
