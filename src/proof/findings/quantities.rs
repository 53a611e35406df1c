//! Findings about values with a unit: limits and torques.

use crate::model::Line;
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean};
use crate::reckoning::quantity::{Flaw, PropertyClass, Thread, Unreadable};
use crate::source::Texts;

/// A value that cannot be read: the part of it that is in the way is marked.
pub fn unreadable(line: &Line, why: &Unreadable, texts: &Texts) -> Finding {
    let part = line.value.get(why.at.clone()).unwrap_or("");
    let place = texts.inside(line.place, &line.value, why.at.clone());
    let (code, message) = match &why.flaw {
        Flaw::UnknownUnit { .. } => (Code::UnknownUnit, format!("nobody knows the unit `{}`", short(part))),
        Flaw::WrongDimension { found, wanted } => {
            (Code::WrongDimension, format!("`{}` is a {found}, not a {wanted}", short(part)))
        }
        other => (Code::NotAQuantity, other.to_string()),
    };
    Finding::new(code, place, message, why.flaw.help())
}

/// A range of one figure.
pub fn one_figure(line: &Line) -> Finding {
    Finding::new(
        Code::NotAQuantity,
        line.place,
        "one figure where `between` wants two",
        "write the least and the most, such as `5.5 .. 7 mm`",
    )
}

/// A range where a bound has one figure.
pub fn two_figures(line: &Line) -> Finding {
    Finding::new(
        Code::NotAQuantity,
        line.place,
        "two figures where one is wanted",
        "write one figure; a least and a most go under `between`",
    )
}

/// A torque of nothing, or the wrong way round.
pub fn no_torque(line: &Line) -> Finding {
    Finding::new(
        Code::NotAQuantity,
        line.place,
        format!("`{}` tightens nothing", line.value),
        "write a torque over nothing, such as `3 N·m`",
    )
}

/// A thread alone: what it bears depends on what it is made of.
pub fn thread_without_class(thread: &Line) -> Finding {
    Finding::new(
        Code::BadValue,
        thread.place,
        format!("what `{}` bears depends on its class", thread.value),
        "add `class:`, such as `class: \"8.8\"`, or `material:` for what is no steel of a class",
    )
}

/// A thread that is not in the tables.
pub fn unknown_thread(line: &Line) -> Finding {
    let known = Thread::ALL.map(|thread| thread.name);
    let all = format!(
        "the threads are {}, each with its coarse pitch; leave `thread` out for another: then nothing is judged",
        known.join(", ")
    );
    // A thread is told by its number, so a near miss in letters would be a wrong guess.
    Finding::new(Code::UnknownWord, line.place, format!("`{}` is no thread that is known", short(&line.value)), all)
}

/// A property class that is not in the tables.
pub fn unknown_class(line: &Line) -> Finding {
    let known = PropertyClass::ALL.map(|class| class.name);
    let all = format!(
        "the classes of steel are {}; for stainless steel, brass or light alloy write `material:` instead",
        known.join(", ")
    );
    let help = did_you_mean(&line.value, known.iter().copied().filter(|name| near(name, &line.value)), &all);
    Finding::new(Code::UnknownWord, line.place, format!("`{}` is no property class of steel", short(&line.value)), help)
}

/// The same figures with another sign between them: `8,8`, `88`.
fn near(name: &str, written: &str) -> bool {
    let figures = |text: &str| text.chars().filter(char::is_ascii_digit).collect::<String>();
    figures(name) == figures(written)
}

/// The start of a text, for a message.
fn short(text: &str) -> String {
    match text.char_indices().nth(30) {
        Some((at, _)) => format!("{}…", text.get(..at).unwrap_or("")),
        None => text.to_owned(),
    }
}
