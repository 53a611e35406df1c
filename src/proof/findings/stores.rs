//! Findings about stores and limits.

use crate::model::{Line, Named};
use crate::proof::code::Code;
use crate::proof::finding::Finding;

/// Something that no guide uses.
pub fn unused(named: &Named, noun: &str) -> Finding {
    Finding::new(
        Code::Unused,
        named.place,
        format!("no guide uses the {noun} `{}`", named.value),
        "take it out, or name it where it is needed",
    )
    .of(named.value.as_str())
}

/// A limit without a source.
pub fn limit_source(limit: &Named, lacks: &str) -> Finding {
    Finding::new(Code::LimitSource, limit.place, format!("the limit `{}` has no {lacks}", limit.value), "name the rule book with `source`, `edition`, `looked up` and `article`; or write `source: shop` for a figure of your own").of(limit.value.as_str())
}

/// A day that the calendar does not have, or that is written otherwise.
pub fn no_day(line: &Line) -> Finding {
    Finding::new(
        Code::BadValue,
        line.place,
        format!("`{}` is no day", line.value),
        "write the day on which the rule book was looked up as year, month and day, such as `2026-11-25`",
    )
}

/// No bound, or several.
pub fn limit_bound(limit: &Named, count: usize) -> Finding {
    let message = match count {
        0 => format!("the limit `{}` has no bound", limit.value),
        _ => format!("the limit `{}` has {count} bounds", limit.value),
    };
    Finding::new(
        Code::LimitBound,
        limit.place,
        message,
        "give exactly one of `at most`, `less than`, `at least`, `more than`, `between`, `must register`, `must not register`, `must lift`, `must pass`",
    )
}
