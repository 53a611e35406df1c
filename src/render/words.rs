//! The program's own words on pages, from message files (Fluent syntax).
//!
//! In: a language. Out: [`Words`], which says a message with its arguments. A message that a language lacks is said in English.
//! Promise: every message id that templates use exists in English; a test holds them together.

use crate::model::messages;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::{CharacterDirection, LanguageIdentifier};

/// The words of a language.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    language: LanguageIdentifier,
}

impl std::fmt::Debug for Words {
    fn fmt(&self, words: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(words, "Words({})", self.language)
    }
}

impl Words {
    /// The words of a language. What neither the club's files nor the program have in it is said in English.
    pub fn of(language: &str, own: &[String]) -> Words {
        let known: LanguageIdentifier = language.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![known.clone(), LanguageIdentifier::default()]);
        bundle.set_use_isolating(false);
        let built_in = messages::built_in(language).filter(|built_in| *built_in != messages::ENGLISH);
        let texts = [Some(messages::ENGLISH), built_in].into_iter().flatten().chain(own.iter().map(String::as_str));
        for text in texts {
            // A faulty line loses its message alone; `proof` has named it.
            let sound = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(sound, _)| sound);
            bundle.add_resource_overriding(sound);
        }
        Words { bundle, language: known }
    }

    /// Whether the language is written from right to left.
    pub fn right_to_left(&self) -> bool {
        self.language.character_direction() == CharacterDirection::RTL
    }

    /// Figures as the language writes them: the mark before decimals is the message `decimal-mark`.
    pub fn figures(&self, text: &str) -> String {
        let mark = self.say("decimal-mark");
        let letters: Vec<char> = text.chars().collect();
        let digit = |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(char::is_ascii_digit);
        let between = |at: usize| digit(at.checked_sub(1)) && digit(Some(at + 1));
        let range = self.say("range-to");
        let written = letters.iter().enumerate().map(|(at, letter)| match letter {
            '.' if between(at) => mark.clone(),
            other => other.to_string(),
        });
        written.collect::<String>().replace(" to ", &format!(" {range} "))
    }

    /// Text or HTML with its marks set as the language sets them: in French a mark of two parts keeps to the word before it (Lexique des
    /// règles typographiques en usage à l'Imprimerie nationale: a narrow space that does not break; before the colon a full one).
    pub fn set(&self, text: String) -> String {
        if self.language.language.as_str() != "fr" {
            return text;
        }
        let marks = [
            (" :", "\u{a0}:"),
            (" ;", "\u{202f};"),
            (" ?", "\u{202f}?"),
            (" !", "\u{202f}!"),
            (" »", "\u{a0}»"),
            ("« ", "«\u{a0}"),
        ];
        marks.iter().fold(text, |text, (loose, kept)| text.replace(loose, kept))
    }

    /// Whether there is such a message.
    pub fn knows(&self, id: &str) -> bool {
        self.bundle.has_message(id)
    }

    /// A message without arguments.
    pub fn say(&self, id: &str) -> String {
        self.say_with(id, &FluentArgs::new())
    }

    /// A message with a number.
    pub fn say_n(&self, id: &str, n: f64) -> String {
        let mut args = FluentArgs::new();
        args.set("n", FluentValue::from(n));
        self.say_with(id, &args)
    }

    /// A message with arguments. An unknown message says its id, so that it is seen.
    pub fn say_with(&self, id: &str, args: &FluentArgs<'_>) -> String {
        let pattern = self.bundle.get_message(id).and_then(|message| message.value());
        let mut faults = Vec::new();
        pattern.map_or_else(
            || id.to_owned(),
            |pattern| self.bundle.format_pattern(pattern, Some(args), &mut faults).into_owned(),
        )
    }
}
