//! Every code that a finding can have: one list, from which the enum, the finding's page and its SARIF rule are made.
//!
//! A code says *what kind* of thing is wrong; people quote it, so it never changes its meaning.

use super::finding::Severity;

macro_rules! codes {
    ($($(#[$group:meta])* $name:ident, $text:literal, $severity:ident, $waive:ident,
        what: $what:literal, why: $why:literal, mend: $mend:literal;)*) => {
        /// The code of a finding.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code {
            $(#[doc = $what] $name,)*
        }

        impl Code {
            /// Every code, in the order of the list.
            pub const ALL: &'static [Code] = &[$(Code::$name,)*];

            /// What is written for it: words with hyphens.
            pub fn as_str(self) -> &'static str {
                match self { $(Code::$name => $text,)* }
            }

            /// How bad it is.
            pub fn severity(self) -> Severity {
                match self { $(Code::$name => Severity::$severity,)* }
            }

            /// Whether a guide may accept it with a reason.
            pub fn waivable(self) -> Waivable {
                match self { $(Code::$name => Waivable::$waive,)* }
            }

            /// What it is, why it matters and how to mend it: for its page and its SARIF rule.
            pub fn explained(self) -> Explained {
                match self { $(Code::$name => Explained { what: $what, why: $why, mend: $mend },)* }
            }
        }
    };
}

/// Whether a guide may accept a finding with a reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waivable {
    /// It may.
    Yes,
    /// It may not: the guide could not be read, or somebody could be hurt.
    No,
}

/// What a code means, for people.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Explained {
    /// What is found.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// How to mend it.
    pub mend: &'static str,
}

codes! {
    NotUtf8, "not-utf8", Error, No,
        what: "A file is not UTF-8 text.", why: "Its letters would come out wrong on the pages.",
        mend: "Save it again from your editor with the encoding UTF-8.";
    TooLarge, "too-large", Error, No,
        what: "A guide is larger than 1 MiB.", why: "No guide that a person wrote is so long; something else was saved there.",
        mend: "Look into the file; move what does not belong to a guide out of the folder.";
    Unreadable, "unreadable", Error, No,
        what: "A file could not be read from disk.", why: "The handbook would lack it without anybody noticing.",
        mend: "See that the file is yours to read and not open in another program.";
    EmptyFile, "empty-file", Error, No,
        what: "A guide's file has nothing in it.", why: "Something that was meant to be there is missing.",
        mend: "Write the guide, or delete the file.";
    Unfilled, "unfilled", Error, No,
        what: "Words of an empty guide that were to be filled in.", why: "The page would say `WHAT IS SEEN` where the reader looks for what is seen.",
        mend: "Write what the capitals ask for, or take out the key that you do not need.";
    OddBreak, "odd-line-break", Error, No,
        what: "A character that some programs take for a line break.", why: "Line numbers would not mean the same to every reader.",
        mend: "Delete the character and press Enter instead.";
    Tab, "tab", Error, No,
        what: "A tab where YAML wants spaces.", why: "A tab has no fixed width, so nobody can tell what belongs to what.",
        mend: "Set the line in with spaces.";
    YamlSyntax, "yaml-syntax", Error, No,
        what: "The YAML cannot be made out.", why: "From this place on nothing of the file could be read.",
        mend: "Compare the line and the one above it with a guide that binds; put texts with a colon in them in quotes.";
    Anchor, "anchor", Error, No,
        what: "A value has an anchor, `&name`.", why: "Values that copy one another can grow without end, and hide what a guide says.",
        mend: "Take the anchor out and write the value where it is needed.";
    Alias, "alias", Error, No,
        what: "An alias, `*name`, stands for a value.", why: "Values that copy one another can grow without end, and hide what a guide says.",
        mend: "Write the value itself, or put the text in quotes if the star is meant as a star.";
    Tag, "tag", Error, No,
        what: "A tag, `!name`, stands before a value.", why: "Tags change what a value means; guides need none.",
        mend: "Take the tag out, or put the text in quotes.";
    MergeKey, "merge-key", Error, No,
        what: "A merge key, `<<`.", why: "It takes values from elsewhere, so the guide no longer says what it says.",
        mend: "Write the keys out.";
    SecondDocument, "second-document", Error, No,
        what: "A second document starts after `---`.", why: "One file is one guide; the second would be lost.",
        mend: "Put the second guide into a file of its own.";
    Directive, "directive", Error, No,
        what: "A YAML directive, a line that starts with `%`.", why: "Guides need none.",
        mend: "Delete the line.";
    TooDeep, "too-deep", Error, No,
        what: "Lists and maps stand too deep in one another.", why: "No guide needs it; such a file is made to do harm.",
        mend: "Write the guide flatter.";
    TooMany, "too-many-values", Error, No,
        what: "A file has more values than a guide can have.", why: "No guide needs it; such a file is made to do harm.",
        mend: "Split the file.";
    KeyNotText, "key-not-text", Error, No,
        what: "A key is a list or a map.", why: "Nothing can be called by it.", mend: "Write a word before the colon.";
    DuplicateKey, "duplicate-key", Error, No,
        what: "The same key stands twice in one map.", why: "Only one of the two could hold, and nobody could see which.",
        mend: "Join the two, or delete one.";
    UnknownKey, "unknown-key", Error, No,
        what: "A key that this kind of guide does not have.", why: "What stands behind it would be lost without a word.",
        mend: "Correct the spelling; `coquille schema` lists every key.";
    TextCutOff, "text-cut-off", Advice, Yes,
        what: "A `#` ends a text.", why: "What stands behind it is on no page, be it a warning.",
        mend: "Put the whole text in quotes; a note to yourself begins with `#` and a space.";
    MissingKey, "missing-key", Error, No,
        what: "A key that must be there is not.", why: "The page would have a hole where the reader needs it.",
        mend: "Add the key.";
    WrongType, "wrong-type", Error, No,
        what: "A value has the wrong shape.", why: "The program cannot tell what is meant.",
        mend: "Write what the message asks for; look at a guide that binds.";
    UnknownWord, "unknown-word", Error, No,
        what: "A word that is none of those that fit here.", why: "The program cannot tell what is meant.",
        mend: "Use one of the words that the message lists.";
    BadValue, "bad-value", Error, No,
        what: "A value that means nothing here.", why: "The program cannot tell what is meant.", mend: "See the message.";
    UnknownKind, "unknown-kind", Error, No,
        what: "The first key of a file is not a kind of guide.", why: "The first key says what the file is; without it the file is not read.",
        mend: "Put `symptom:`, `procedure:`, `checklist:`, `circuit:`, `stores:`, `limits:`, `words:`, `learning:` or `handbook:` first.";
    NoHandbook, "no-handbook", Error, No,
        what: "The folder has no `handbook.yaml`.", why: "The handbook would have no title, no edition and no caution.",
        mend: "Add one, or make a new handbook with `coquille begin DIR` and copy it from there.";
    NotATime, "not-a-time", Error, No,
        what: "A value is no time.", why: "Minutes are added up and compared; a word cannot be.",
        mend: "Write `2`, `30 s`, `2 min`, `1.5 h` or `2 days`.";
    NotAShare, "not-a-share", Error, No,
        what: "A value is no share.", why: "Shares are added up and compared.", mend: "Write how many in 100 cases, such as `30`.";
    NotAQuantity, "not-a-quantity", Error, No,
        what: "A value is no number with a unit.", why: "A limit or torque that cannot be read cannot be held.",
        mend: "Write a number and a unit, such as `2 Ω` or `3 N·m`.";
    UnknownUnit, "unknown-unit", Error, No,
        what: "A unit that nobody knows.", why: "The value could be converted to nothing.", mend: "Use the unit that the message names.";
    WrongDimension, "wrong-dimension", Error, No,
        what: "A unit of the wrong dimension.", why: "A torque in grams holds nothing.", mend: "Use a unit of the kind that the message names.";
    BadId, "bad-id", Error, No,
        what: "An id that cannot be one.", why: "Ids become addresses and file names on every system.",
        mend: "Use letters a to z, digits and hyphens, such as `foil-stays-lit`.";
    DuplicateId, "duplicate-id", Error, No,
        what: "Two things have the same id.", why: "What points at it could mean either.",
        mend: "Give one of them another id. Capitals make no difference.";
    PackNeeds, "pack-needs", Error, No,
        what: "A pack needs things that are not here: parts, tools, consumables, limits, words or circuits.",
        why: "Guides from elsewhere were written beside other lists; their links would lead nowhere.",
        mend: "Add the entries that the finding shows to your own lists, or let `coquille proof --mend` write them into files of their own. Limits are looked up in the rules, never invented.";
    PacksDisagree, "packs-disagree", Error, No,
        what: "A pack defines an id that is defined otherwise elsewhere.",
        why: "Only one of the two can stand on the page, and a guide that means the other would be wrong.",
        mend: "Compare the two, keep one, or give one another id.";
    FileName, "file-name", Advice, Yes,
        what: "A guide's file is not called like its id.", why: "People look for a guide by its file's name.",
        mend: "Rename the file.";
    NamesAlike, "names-alike", Error, No,
        what: "Two files whose names are the same to some systems: they differ in capitals only, or in how a letter with an accent is stored.",
        why: "Windows and macOS keep one of the two, so somebody who copies the folder loses the other without a word.",
        mend: "Give one of them another name, or delete the one that is a copy.";
    UnknownReference, "unknown-reference", Error, No,
        what: "Something is pointed at that is not there.", why: "The reader would be sent for a thing or a page that does not exist.",
        mend: "Correct the id, or write what it points at.";
    WrongKind, "wrong-kind", Error, No,
        what: "Something of another kind is pointed at.", why: "A remedy must be a job, a limit must be a limit.",
        mend: "Point at a thing of the kind that the message names.";
    UnknownPlace, "unknown-place", Error, No,
        what: "A place that the item does not have.", why: "The drawing beside the page could not show it.",
        mend: "Use a place of the item; the message lists them.";
    SharesOver100, "shares-over-100", Error, No,
        what: "The shares add up to more than 100.", why: "More cases than there are cannot be explained.",
        mend: "Lower the shares; what is left over is *not on this list*.";
    NoShare, "no-share", Error, No,
        what: "A cause has no share.", why: "Without it the best order cannot be reckoned.",
        mend: "Say how many in 100 cases it is, or how many were `seen`; a fair guess is better than none.";
    NoOtherwise, "no-otherwise", Error, No,
        what: "A probe has no answer for everything else.", why: "What is not on the list must have an answer too, or the reader is stuck.",
        mend: "Give exactly one answer `means: otherwise`: the unremarkable one.";
    TwoOtherwise, "two-otherwise", Error, No,
        what: "Two answers of a probe are for everything else.", why: "The same cause would give both.",
        mend: "Leave `otherwise` to the unremarkable answer and name the causes of the other.";
    EmptyAnswer, "empty-answer", Error, No,
        what: "An answer names no cause.", why: "Whoever gives it is led nowhere.", mend: "Say which causes answer so, or delete the answer.";
    TooFewAnswers, "too-few-answers", Error, No,
        what: "A probe has fewer than two answers.", why: "A question with one answer tells nothing.", mend: "Write the other answer.";
    TrialAnswers, "trial-answers", Error, No,
        what: "A trial fix has answers of its own making.", why: "A trial fix either works or changes nothing; any other answer would be ignored.",
        mend: "Leave `answers:` out, or give `works` and then `no-change` with titles of your own and no `means:`. A probe that tells more is no trial fix: leave out `mends:`.";
    StrayTranslation, "stray-translation", Error, No,
        what: "A translation of something that the guide does not have.", why: "Nobody would ever read it, and what it was meant for stays untranslated.",
        mend: "Use the ids of the guide; the message names the nearest or lists them.";
    TranslationChanges, "translation-changes-guide", Error, No,
        what: "A translation gives another value to something that is not words.", why: "A limit or a time must be the same in every language.",
        mend: "Leave the key out of the translation.";
    Untranslated, "untranslated", Advice, Yes,
        what: "Something has no words in another language yet.", why: "A reader of that language meets foreign words there.",
        mend: "Add the words; or accept the finding with a reason.";
    OutdatedTranslation, "outdated-translation", Advice, Yes,
        what: "A guide was reworded after it was translated.", why: "A reader of the other language is told what no longer holds.",
        mend: "Change the translation where the guide changed, then write the code that the message names after `as of:`. The code is of the guide's words; a translation without one is not held against them.";
    FaultyMessages, "faulty-messages", Error, No,
        what: "A line in a message file that says nothing.", why: "The page would say it in English.",
        mend: "Write it as the program's own messages are written: `id = words`.";
    CauseNeverFound, "cause-never-found", Error, Yes,
        what: "No probe parts a cause from the rest.", why: "Whoever has that fault is never told.",
        mend: "Add a probe that shows it, or take the cause out.";
    OpenAndShut, "open-and-shut", Error, No,
        what: "A probe needs a job open and shut at once.", why: "It could never be done.", mend: "Look at its `needs:` and `shut:`, and at what those jobs need.";
    OddsDoNotAddUp, "odds-do-not-add-up", Error, No,
        what: "How often a cause gives each answer does not come to every time.", why: "Its weight would be divided otherwise than the guide says.",
        mend: "Let the times add up, such as `1 in 4` and `3 in 4`; what is left over goes to `otherwise`.";
    NamedTwice, "named-twice", Error, No,
        what: "An answer names a cause twice.", why: "Its weight would count twice.", mend: "Name it once; how often it answers so stands under `times:`.";
    TooManyToReckon, "too-many-to-reckon", Error, No,
        what: "A guide is too large to be reckoned.", why: "Exact minutes could not be promised.", mend: "Split the guide.";
    NoCauses, "no-causes", Error, No,
        what: "A fault-finding guide lists no cause.", why: "There is nothing to find.", mend: "List what it can be under `causes:`.";
    DeadProbe, "dead-probe", Advice, Yes,
        what: "A probe tells nothing.", why: "It costs minutes and rules nothing out.", mend: "Take it out, or name the causes that answer differently.";
    Inseparable, "inseparable-causes", Advice, Yes,
        what: "Causes with different remedies that no probe tells apart.", why: "The reader ends with a choice that the guide cannot make.",
        mend: "Add a probe that they answer differently.";
    NeedsItself, "needs-itself", Error, No,
        what: "An opening job or a probe waits for itself.", why: "It could never be done.", mend: "Take one of the links out.";
    NoRemedy, "no-remedy", Error, No,
        what: "A cause has no remedy.", why: "Finding a fault that nothing mends helps nobody.",
        mend: "Name the job under `lasting:`.";
    NoRest, "no-rest", Error, No,
        what: "A guide says nothing about what is not on its list.", why: "The shares leave cases over; whoever has one is left alone.",
        mend: "Add `not on this list:` with what to do then.";
    StopGap, "stop-gap-without-lasting", Error, No,
        what: "A stop-gap without the lasting remedy.", why: "A repair that buys time is taken for a repair.",
        mend: "Name the lasting remedy under `lasting:`.";
    NoMinutes, "no-minutes", Advice, Yes,
        what: "A probe takes no time.", why: "It would always come first.", mend: "Say how long it takes, be it `30 s`.";
    UnreachableGuide, "unreachable-guide", Advice, Yes,
        what: "No guide and no list leads to a guide.", why: "The reader only finds it by searching.",
        mend: "Point at it where it helps, or give it its item of kit.";
    Unused, "unused", Advice, Yes,
        what: "Something in the stores is used by no guide.", why: "The stores list grows until nobody reads it.",
        mend: "Take it out, or name it where it is needed.";
    LimitSource, "limit-without-source", Error, No,
        what: "A limit without a source.", why: "Nobody can check it, and it will be copied for years.",
        mend: "Name the rule book with article, edition and the day you looked, or `source: shop`.";
    LimitBound, "limit-bound", Error, No,
        what: "A limit has no bound, or several.", why: "A reading could not be held against it.",
        mend: "Give exactly one of `at most`, `less than`, `at least`, `more than`, `between`, `must …`.";
    MissingPicture, "missing-picture", Error, No,
        what: "A picture's file is not there.", why: "The page would show a hole.", mend: "Correct the path, or add the file.";
    PictureOutside, "picture-outside", Error, No,
        what: "A picture's path leaves the handbook's folder.", why: "A guide from elsewhere must not reach for other files of yours.",
        mend: "Copy the picture into the folder.";
    PictureKind, "picture-kind", Error, No,
        what: "A picture of a kind that pages cannot show.", why: "Browsers would show nothing.",
        mend: "Save it as SVG, PNG, JPEG or WebP.";
    PictureVast, "picture-too-vast", Error, No,
        what: "A picture says that it has more pixels than any camera makes.",
        why: "It would fill the memory of whoever binds or opens the handbook; such a file is made to do harm.",
        mend: "Save a smaller copy: 1,600 pixels are enough, and no side may be over 20,000.";
    PictureBroken, "picture-broken", Error, No,
        what: "A picture cannot be made out.", why: "Readers would see a hole where it should be.",
        mend: "Copy it again from where it came, or save it again as JPEG or PNG.";
    PictureAlt, "picture-without-alt", Error, No,
        what: "A picture without words for those who cannot see it.", why: "A picture that is not told is lost on them.",
        mend: "Say under `alt:` what the picture shows that the reader needs.";
    UnsafeSvg, "unsafe-svg", Error, No,
        what: "An SVG with scripts or outside references.", why: "It could run programs on the reader's machine or tell somebody that it was read.",
        mend: "Save it as plain SVG, without scripts, links and outside images.";
    UnusedPicture, "unused-picture", Advice, Yes,
        what: "A picture that no guide shows, or that no guide lists.", why: "It makes the handbook larger for nothing; or a photo that was meant for a step is missing there.",
        mend: "List it under `pictures:` and show it, or take it out.";
    PassedOver, "passed-over", Advice, Yes,
        what: "A file that looks like a guide and is not read, because its name does not end in `.yaml`.",
        why: "Plain text editors add `.txt`; the guide is missing from the handbook without anybody noticing.",
        mend: "Rename it as the finding says; or move it out of the folder.";
    DeadLink, "dead-link", Error, No,
        what: "A link in a text that leads nowhere.", why: "The reader is sent to a page that does not exist.",
        mend: "Correct the id behind the colon.";
    RefusedLink, "refused-link", Error, No,
        what: "A link of a kind that pages do not carry.", why: "The handbook works without a network and without scripts.",
        mend: "Use `https:` or `mailto:`, or one of the handbook's own short links.";
    RawHtml, "raw-html", Error, No,
        what: "Raw HTML in a text.", why: "It is shown as text, never run; somebody meant something else by it.",
        mend: "Use Markdown, or put it in backticks if the signs themselves are meant.";
    HazardWithoutSafety, "hazard-without-safety", Error, No,
        what: "A step uses something hazardous without a safety note before it.", why: "Somebody can be hurt.",
        mend: "Put a safety note before the step, with the signal word that the stores name or a more serious one.";
    WhoMayDoIt, "who-may-do-it", Error, No,
        what: "A job or a question uses or warns of something that not everybody may handle, and does not say so.",
        why: "At a juniors' evening the page is what decides whether a child is handed the solvent or the iron.",
        mend: "Write `who: supervised` or `who: adult`, as the finding says; or correct the `who:` of the tool or consumable in the stores.";
    SafetyWord, "safety-word", Error, No,
        what: "A safety note has no signal word, or several.", why: "The word tells how serious it is.",
        mend: "Write one of `danger`, `warning`, `caution`, `notice` per note.";
    TorqueOverProof, "torque-over-proof", Error, No,
        what: "A torque that would stretch the thread for good.", why: "The thread strips or the tang breaks.",
        mend: "Lower it; the message shows the numbers.";
    TorqueNearProof, "torque-near-proof", Advice, Yes,
        what: "A torque near what the thread bears.", why: "A dry thread today is an oiled one tomorrow.",
        mend: "Lower it under nine tenths of the proof load.";
    SoundReading, "sound-kit-reads-otherwise", Error, No,
        what: "Sound kit need not show what its circuit says.", why: "A circuit that is wrong about sound kit proofs nothing.",
        mend: "Correct the figures of the pieces or of the reading; if it may truly go either way, write `shows: may`.";
    FaultNeverShows, "fault-never-shows", Error, No,
        what: "A cause's fault cannot show what the guide says is seen.", why: "Readers would look for a fault that cannot do what they see.",
        mend: "Name another fault, take the cause out, or correct what the lamps do.";
    ProbeContradicted, "probe-contradicts-circuit", Error, No,
        what: "A probe's answer for a cause is not the one that the circuit predicts.", why: "Whoever has that fault is sent away from it.",
        mend: "Name the cause in every answer that the message lists, and in no other.";
    AnswerReadsNothing, "answer-reads-nothing", Error, No,
        what: "An answer of a probe that takes a reading does not say what is read.", why: "The circuit could not be held against it.",
        mend: "Add `reads:` with `lit`, `dark`, `in`, `over` or `open`.";
    CircuitKnowsAnother, "circuit-knows-another", Advice, Yes,
        what: "The circuit has faults that show the same and that no cause names.", why: "A reader with one of them finds nothing on the list.",
        mend: "Add them as causes with their share, or accept the finding and say why.";
    SymptomWithoutCircuit, "symptom-without-circuit", Advice, Yes,
        what: "A symptom seen on an instrument names no circuit, though the handbook has one of its item.", why: "Nothing holds its causes against the electricity.",
        mend: "Name the circuit and the faults of the causes, or accept the finding and say why a circuit has nothing to say.";
    FaultShowsNothing, "fault-shows-nothing", Advice, Yes,
        what: "A fault of a circuit changes no reading of it, nor of a circuit that uses it.", why: "Nobody with a tester or a meter can find it.",
        mend: "Correct what the fault does, add a reading that finds it, or accept the finding and say how it is found.";
    PointJoinedToNothing, "point-joined-to-nothing", Advice, Yes,
        what: "A point of a circuit that nothing leads to.", why: "Whatever is read there is open for ever.",
        mend: "Join it by a piece or a touching, or take it out.";
    TouchingNeverCloses, "touching-never-closes", Advice, Yes,
        what: "A touching that no position and no fault ever closes.", why: "It says that two things can touch, and they never do.",
        mend: "Name it under `meets:` of a position, or take it out.";
    UnknownFinding, "unknown-finding", Error, No,
        what: "A waiver names a finding that does not exist.", why: "It accepts nothing.", mend: "Correct the code.";
    WaiverRefused, "waiver-refused", Error, No,
        what: "A waiver for a finding that cannot be accepted.", why: "The guide could not be read, or somebody could be hurt.",
        mend: "Mend the finding instead.";
    WaiverUnused, "waiver-unused", Advice, No,
        what: "A waiver that accepts nothing any more.", why: "It would hide the next such finding.", mend: "Delete it.";
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn codes_are_words_and_no_two_are_the_same() {
        let texts: BTreeSet<_> = Code::ALL.iter().map(|code| code.as_str()).collect();
        assert_eq!(texts.len(), Code::ALL.len());
        for text in texts {
            assert!(
                text.bytes().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == b'-')
            );
        }
    }
}
