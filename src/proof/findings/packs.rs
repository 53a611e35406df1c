//! Findings about guides from elsewhere.

use crate::model::{Named, Pack};
use crate::proof::code::Code;
use crate::proof::finding::Finding;
use crate::proof::index::Thing;
use crate::proof::packs::Mend;
use crate::source::Place;
use std::collections::BTreeMap;

/// Most places that are shown of what asks for something.
const SHOWN: usize = 6;

/// What a pack needs that is not here. `files` would give it what a program can give; `by_hand` is the rest.
pub fn needs(
    pack: &Pack,
    things: &BTreeMap<(Thing, String), Place>,
    files: &[Mend],
    by_hand: &[&(Thing, String)],
) -> Finding {
    let number = things.len();
    let noun = if number == 1 { "thing that is" } else { "things that are" };
    let mut help = Vec::new();
    if !files.is_empty() {
        help.push("add these, or let `coquille proof --mend` write them:".to_owned());
        help.extend(files.iter().map(|file| file.text.trim_end().to_owned()));
    }
    for (thing, id) in by_hand {
        help.push(match thing {
            Thing::Limit => format!("look up the limit `{id}` in the rules and add it to your limits"),
            _ => format!("ask whoever wrote the pack for the {} `{id}`", thing.noun()),
        });
    }
    let finding = Finding::new(
        Code::PackNeeds,
        pack.pack.place,
        format!("`{}` needs {number} {noun} not here", pack.pack.value),
        help.join("\n"),
    );
    let asking = things.iter().take(SHOWN);
    asking
        .fold(finding, |finding, ((thing, id), place)| finding.also(*place, format!("the {} `{id}`", thing.noun())))
        .of(pack.pack.value.as_str())
}

/// Two definitions of one id, at least one from a pack.
pub fn disagree(id: &str, here: Place, there: Place, this: (&str, String), other: (&str, String)) -> Finding {
    let shown = |(whose, text): (&str, String)| format!("{whose}:\n{text}");
    Finding::new(
        Code::PacksDisagree,
        here,
        format!("two definitions of `{id}` differ"),
        format!("keep one of the two, or give one another id\n{}\n{}", shown(this), shown(other)),
    )
    .also(there, "the other stands here")
    .of(id)
}

/// A `pack.yaml` beside the handbook's own guides.
pub fn at_the_top(named: &Named) -> Finding {
    Finding::new(
        Code::BadValue,
        named.place,
        format!("the pack `{}` has no folder of its own", named.value),
        "put its guides and this file into a folder inside the guides' folder",
    )
}
