//! Findings of circuits against guides: what sound kit reads, what faults show, what probes answer.

use crate::model::{Id, Named, SeenOn};
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean, listed};
use crate::source::{Place, Placed};

/// A cause names a fault, but the guide no circuit.
pub fn no_circuit(fault: &Named) -> Finding {
    Finding::new(
        Code::UnknownReference,
        fault.place,
        format!("the fault `{}` needs a circuit", fault.value),
        "add `circuit:` with the circuit that knows it, or take `fault:` out",
    )
    .of(fault.value.as_str())
}

/// A name that the guide's circuit does not have, or that could be several.
pub fn not_in_circuit(noun: &str, id: &str, place: Place, circuit: &Id, several: &[&str], known: &[&str]) -> Finding {
    let (message, help) = if several.is_empty() {
        let all = format!("write it as it is named in the circuit; `coquille meter {circuit}` lists every {noun}");
        (format!("the circuit `{circuit}` has no {noun} `{id}`"), did_you_mean(id, known.iter().copied(), &all))
    } else {
        (format!("`{id}` could be several of `{circuit}`"), format!("write {}", listed(several.iter().copied())))
    };
    Finding::new(Code::UnknownReference, place, message, help).of(id)
}

/// The circuit has no lamp of the instrument that the guide is seen on.
pub fn no_lamp(seen_on: &Placed<SeenOn>, circuit: &Named) -> Finding {
    Finding::new(
        Code::UnknownReference,
        seen_on.place,
        format!("`{}` has no lamp of this instrument", circuit.value),
        "name the circuit's reading with `reading:` under `lamps:`, or another circuit",
    )
}

/// Sound kit need not show what its circuit says.
pub fn sound_reading(place: Place, reading: &str, position: &str, shown: &str, said: &str) -> Finding {
    Finding::new(
        Code::SoundReading,
        place,
        format!("sound kit may show `{reading}` {shown}"),
        format!(
            "in position `{position}` the figures give {shown}, the circuit says {said}: correct the ohms or the reading, or say `shows: may`"
        ),
    )
    .of(reading)
}

/// What one sign of a symptom is and what the circuit makes of it.
pub struct Contradiction<'a> {
    /// The circuit.
    pub circuit: &'a str,
    /// The reading.
    pub reading: &'a str,
    /// The position.
    pub position: &'a str,
    /// What it shows with the fault.
    pub faulty: String,
    /// What it shows without.
    pub sound: String,
    /// What the guide says.
    pub said: String,
}

/// A cause's fault cannot show the symptom.
pub fn never_shows(fault: &Named, cause: &Named, sign: Place, found: &Contradiction<'_>) -> Finding {
    let Contradiction { circuit, reading, position, faulty, sound, said } = found;
    Finding::new(
        Code::FaultNeverShows,
        fault.place,
        format!("`{}` never shows `{reading}` {said}", fault.value),
        format!(
            "in position `{position}` the circuit `{circuit}` reads {faulty} with the fault and {sound} without it, and the guide says {said}: name another fault, take `{}` out, or correct `lamps:`",
            cause.value
        ),
    )
    .also(sign, format!("the guide says {said} here"))
    .of(cause.value.as_str())
}

/// A cause's fault can show none of the sights by which the symptom is known; `found` is the first of them.
pub fn never_shows_any(fault: &Named, cause: &Named, sign: Place, signs: usize, found: &Contradiction<'_>) -> Finding {
    let Contradiction { circuit, reading, position, faulty, sound, said } = found;
    Finding::new(
        Code::FaultNeverShows,
        fault.place,
        format!("`{}` shows none of the {signs} signs", fault.value),
        format!(
            "the first: in position `{position}` the circuit `{circuit}` reads `{reading}` {faulty} with the fault and {sound} without it, and the guide says {said}; the others fail too: name another fault, take `{}` out, or correct `signs:`",
            cause.value
        ),
    )
    .also(sign, "the signs begin here")
    .of(cause.value.as_str())
}

/// A symptom that an instrument shows names no circuit, though there are some of its item.
pub fn without_circuit(guide: &Named, known: &[&str]) -> Finding {
    let list = listed(known.iter().copied());
    Finding::new(
        Code::SymptomWithoutCircuit,
        guide.place,
        format!("no circuit proofs `{}`", guide.value),
        format!("add `circuit:` with {list} and the faults of the causes, or accept this and say why"),
    )
    .of(guide.value.as_str())
}

/// A fault changes nothing that anybody could read.
pub fn shows_nothing(fault: &Named, circuits: &[&str]) -> Finding {
    let list = listed(circuits.iter().copied()).replace(" or ", " and ");
    Finding::new(
        Code::FaultShowsNothing,
        fault.place,
        format!("`{}` changes no reading", fault.value),
        format!("looked at in every position of {list}: correct what it does, add a reading that finds it, or accept this and say how it is found"),
    )
    .of(fault.value.as_str())
}

/// A point that nothing leads to.
pub fn joined_to_nothing(point: &Named) -> Finding {
    Finding::new(
        Code::PointJoinedToNothing,
        point.place,
        format!("nothing leads to the point `{}`", point.value),
        "join it by a piece, a touching or `joins:`, or take it out",
    )
    .of(point.value.as_str())
}

/// A touching that is open whatever is done.
pub fn never_closes(touching: &Named) -> Finding {
    Finding::new(
        Code::TouchingNeverCloses,
        touching.place,
        format!("`{}` never touches", touching.value),
        "name it under `meets:` of a position, or take it out",
    )
    .of(touching.value.as_str())
}

/// A cause's fault cannot give an answer that the guide has for it.
pub fn wrong_answer(place: Place, cause: &str, answer: &str, probe: &Named, found: &Contradiction<'_>) -> Finding {
    Finding::new(
        Code::ProbeContradicted,
        place,
        format!("`{cause}` cannot answer `{answer}` to `{}`", probe.value),
        predicted(found),
    )
    .also(probe.place, "in this probe")
    .of(probe.value.as_str())
}

/// A cause's fault can give an answer that the guide does not have for it.
pub fn missing_answer(place: Place, cause: &str, answer: &str, probe: &Named, found: &Contradiction<'_>) -> Finding {
    Finding::new(
        Code::ProbeContradicted,
        place,
        format!("`{cause}` can answer `{answer}` to `{}` too", probe.value),
        format!("{}; name `{cause}` under this answer too", predicted(found)),
    )
    .also(probe.place, "in this probe")
    .of(probe.value.as_str())
}

/// A probe has no answer at all for what a cause reads.
pub fn no_answer(probe: &Named, cause: &str, shows: &str, found: &Contradiction<'_>) -> Finding {
    Finding::new(
        Code::ProbeContradicted,
        probe.place,
        format!("no answer of `{}` reads {shows}", probe.value),
        format!("`{cause}` needs one: {}", predicted(found)),
    )
    .of(probe.value.as_str())
}

fn predicted(found: &Contradiction<'_>) -> String {
    let Contradiction { circuit, reading, position, faulty, sound, .. } = found;
    format!("`{reading}` of `{circuit}` in position `{position}` reads {faulty} with its fault and {sound} without it")
}

/// An answer of a probe with a reading does not say what is read.
pub fn answer_reads_nothing(answer: &Named, probe: &Named) -> Finding {
    Finding::new(
        Code::AnswerReadsNothing,
        answer.place,
        format!("`{}` does not say what is read", answer.value),
        "add `reads: lit`, `dark`, `in`, `over` or `open`, or several of them in a list",
    )
    .also(probe.place, "this probe takes a reading")
    .of(probe.value.as_str())
}

/// The circuit knows faults that no cause names: those that surely show the symptom, and those that may.
pub fn knows_another(guide: &Named, place: Place, surely: &[&str], perhaps: &[&str]) -> Finding {
    let count = surely.len() + perhaps.len();
    let what =
        if count == 1 { "another fault that shows".to_owned() } else { format!("{count} other faults that show") };
    let lists = [("surely", surely), ("with some figures or at times", perhaps)];
    let lists: Vec<String> = lists
        .into_iter()
        .filter(|(_, list)| !list.is_empty())
        .map(|(how, list)| format!("{how} {}", listed(list.iter().copied()).replace(" or ", " and ")))
        .collect();
    Finding::new(
        Code::CircuitKnowsAnother,
        place,
        format!("the circuit knows {what} this"),
        format!("{}; name them under `fault:` of a cause, or accept this and say why", lists.join("; ")),
    )
    .of(guide.value.as_str())
}
