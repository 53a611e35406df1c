//! Findings about ids and what points at them.

use crate::model::{Id, Named};
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean, listed};
use crate::proof::index::{Thing, Wanted};
use crate::source::Place;

/// An id that cannot be one.
pub fn bad_id(named: &Named, why: &str) -> Finding {
    Finding::new(
        Code::BadId,
        named.place,
        format!("`{}` cannot be an id: {why}", named.value),
        "use letters a to z, digits and single hyphens, such as `foil-stays-lit`",
    )
}

/// Two things with one id.
pub fn duplicate_id(named: &Named, first: Place) -> Finding {
    Finding::new(
        Code::DuplicateId,
        named.place,
        format!("the id `{}` is taken", named.value),
        "give one of the two another id; capitals make no difference",
    )
    .also(first, "taken here")
    .of(named.value.as_str())
}

/// A file that is not called like its guide.
pub fn file_name(named: &Named, name: &str) -> Finding {
    Finding::new(
        Code::FileName,
        named.place,
        format!("this guide stands in `{name}`"),
        format!("call the file `{}.yaml`, so that people find it", named.value),
    )
    .of(named.value.as_str())
}

/// Two files that some systems take for one.
pub fn names_alike(name: &str, first: &str, place: Place) -> Finding {
    let capitals = name.to_lowercase() == first.to_lowercase();
    let how = if capitals { "other capitals" } else { "accents stored otherwise" };
    Finding::new(
        Code::NamesAlike,
        place,
        format!("`{name}` has a twin with {how}"),
        format!("the other is `{first}`; give one of the two another name: Windows and macOS would keep only one"),
    )
}

/// Something is pointed at that is not there.
pub fn unknown_reference<'a>(named: &Named, wanted: Wanted, known: impl IntoIterator<Item = &'a str>) -> Finding {
    let what = wanted.words();
    let otherwise = match wanted {
        Wanted::One(Thing::Item) => {
            format!("add `{}` under `kit:` in the handbook's own file, or correct the id", named.value)
        }
        _ => format!("write {what} `{}`, or correct the id", named.value),
    };
    Finding::new(
        Code::UnknownReference,
        named.place,
        format!("there is no {} `{}`", wanted.noun(), named.value),
        did_you_mean(named.value.as_str(), known, &otherwise),
    )
    .of(named.value.as_str())
}

/// Something of another kind is pointed at.
pub fn wrong_kind(named: &Named, wanted: Wanted, is: &str, there: Place) -> Finding {
    Finding::new(
        Code::WrongKind,
        named.place,
        format!("`{}` is {is}, not {}", named.value, wanted.words()),
        match wanted {
            Wanted::One(Thing::Item) => format!("add `{}` under `kit:` in the handbook's own file", named.value),
            _ => format!("point at {} here", wanted.words()),
        },
    )
    .also(there, "it is written here")
    .of(named.value.as_str())
}

/// A place that the item does not have.
pub fn unknown_place(named: &Named, item: &Id, places: &[&str]) -> Finding {
    let all = format!("the places of `{item}` are {}", listed(places.iter().copied()));
    Finding::new(
        Code::UnknownPlace,
        named.place,
        format!("`{item}` has no place `{}`", named.value),
        did_you_mean(named.value.as_str(), places.iter().copied(), &all),
    )
}

/// No guide leads here.
pub fn unreachable(named: &Named) -> Finding {
    Finding::new(
        Code::UnreachableGuide,
        named.place,
        format!("nothing leads to `{}`", named.value),
        "point at it where it helps, or give it its item with `kit:`",
    )
    .of(named.value.as_str())
}
