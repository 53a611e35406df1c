//! Findings about what can hurt somebody.

use crate::model::{Named, Signal, Who};
use crate::proof::checks::who::Demand;
use crate::proof::code::Code;
use crate::proof::finding::Finding;
use crate::source::Place;

/// A hazardous consumable without a safety note before it.
pub fn hazard_without_safety(named: &Named, signal: Signal, stored: Place) -> Finding {
    let word = signal_word(signal);
    let help = format!("put `- {word}: …` under `safety:` of this step, of one before it, or of the whole guide");
    Finding::new(
        Code::HazardWithoutSafety,
        named.place,
        format!("`{}` is used without a {word} before it", named.value),
        help,
    )
    .also(stored, "its hazards stand here")
    .of(named.value.as_str())
}

/// A guide that lets more people do it than what it uses asks for. `said` is what it says, with the place.
pub fn who_may_do_it(named: &Named, said: Option<(Who, Place)>, demand: &Demand) -> Finding {
    let asked = demand.who.as_str();
    let (place, message) = match said {
        Some((who, place)) => {
            (place, format!("`{}` says `{}`, but `{}` asks for `{asked}`", named.value, who.as_str(), demand.what))
        }
        None => (named.place, format!("`{}` does not say who, but `{}` asks for `{asked}`", named.value, demand.what)),
    };
    Finding::new(Code::WhoMayDoIt, place, message, format!("write `who: {asked}`"))
        .also(demand.place, "this asks for it")
        .of(named.value.as_str())
}

/// No signal word, or several.
pub fn safety_word(place: Place, count: usize) -> Finding {
    let message =
        if count == 0 { "a safety note without a signal word" } else { "a safety note with several signal words" };
    Finding::new(Code::SafetyWord, place, message, "write one of `danger`, `warning`, `caution`, `notice` per note")
}

fn signal_word(signal: Signal) -> &'static str {
    match signal {
        Signal::Danger => "danger",
        Signal::Warning => "warning",
        Signal::Caution => "caution",
        Signal::Notice => "notice",
    }
}

/// A torque over what the thread bears. `most` is the highest that nothing is said against.
pub fn torque_over_proof(place: Place, numbers: &str, most: Option<&str>) -> Finding {
    let lower = most.map_or_else(|| "lower it".to_owned(), |most| format!("lower it to {most} at most"));
    Finding::new(
        Code::TorqueOverProof,
        place,
        "this torque stretches the thread for good",
        format!("{numbers}; {lower}"),
    )
}

/// A torque near what the thread bears. `most` is the highest that nothing is said against.
pub fn torque_near_proof(place: Place, numbers: &str, most: Option<&str>) -> Finding {
    let most = most.map_or_else(String::new, |most| format!(": {most} at most"));
    Finding::new(
        Code::TorqueNearProof,
        place,
        "this torque is near what the thread bears",
        format!("{numbers}; stay under nine tenths{most}"),
    )
}
