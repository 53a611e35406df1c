//! Findings about fault-finding: shares, answers, opening jobs, remedies.

use crate::model::Named;
use crate::proof::code::Code;
use crate::proof::finding::{Finding, listed};
use crate::source::Place;

/// The shares add up to more than 100.
pub fn shares_over_100(place: Place, hundredths: u32) -> Finding {
    let sum = f64::from(hundredths) / 100.0;
    Finding::new(
        Code::SharesOver100,
        place,
        format!("the shares add up to {sum}, more than 100"),
        "lower them; what is left over is *not on this list*",
    )
}

/// A cause has no share.
pub fn no_share(cause: &Named) -> Finding {
    Finding::new(
        Code::NoShare,
        cause.place,
        format!("`{}` has no share", cause.value),
        "add `share:` with how many in 100 cases it is, or `seen:` with how many you counted",
    )
}

/// Shares and counts are mixed.
pub fn mixed_shares(cause: &Named) -> Finding {
    Finding::new(
        Code::NoShare,
        cause.place,
        format!("`{}` is counted another way than the rest", cause.value),
        "use `share:` for all causes of a guide, or `seen:` for all",
    )
}

/// A probe has no answer for everything else.
pub fn no_otherwise(probe: &Named) -> Finding {
    Finding::new(
        Code::NoOtherwise,
        probe.place,
        format!("no answer of `{}` is for everything else", probe.value),
        "give the unremarkable answer `means: otherwise`",
    )
    .of(probe.value.as_str())
}

/// Two answers are for everything else.
pub fn two_otherwise(place: Place, probe: &Named) -> Finding {
    Finding::new(
        Code::TwoOtherwise,
        place,
        format!("a second `otherwise` in `{}`", probe.value),
        "name the causes that answer so, and leave `otherwise` to the other answer",
    )
    .also(probe.place, "in this probe")
}

/// How often a cause gives each answer comes to more or less than every time.
pub fn odds_over(place: Place, cause: &str, probe: &Named) -> Finding {
    Finding::new(
        Code::OddsDoNotAddUp,
        place,
        format!("the times of `{cause}` in `{}` do not add up", probe.value),
        "all answers that name it make up every time, such as `1 in 4` here and `3 in 4` there; what is left over goes to the \
         answer with `otherwise` unless that names it too",
    )
    .also(probe.place, "in this probe")
}

/// An answer names no cause.
pub fn empty_answer(answer: &Named) -> Finding {
    Finding::new(
        Code::EmptyAnswer,
        answer.place,
        format!("the answer `{}` names no cause", answer.value),
        "say under `means:` which causes answer so, or `otherwise`",
    )
}

/// Fewer than two answers.
pub fn too_few_answers(probe: &Named) -> Finding {
    Finding::new(
        Code::TooFewAnswers,
        probe.place,
        format!("`{}` has fewer than two answers", probe.value),
        "write the other answer; a trial fix says `mends:` instead",
    )
}

/// A trial fix with other answers than *works* and *no change*.
pub fn trial_answers(probe: &Named, answer: &Named) -> Finding {
    Finding::new(
        Code::TrialAnswers,
        answer.place,
        format!("`{}` is no answer of a trial fix", answer.value),
        "a trial fix answers `works`, then `no-change`, and `mends:` says what that means; leave `answers:` out, or `mends:`",
    )
    .also(probe.place, "this is the trial fix")
}

/// No probe finds a cause.
pub fn cause_never_found(cause: &Named) -> Finding {
    Finding::new(
        Code::CauseNeverFound,
        cause.place,
        format!("no probe can find `{}`", cause.value),
        "name it under `means:` in the answer that shows it, or take it out",
    )
    .of(cause.value.as_str())
}

/// A probe tells nothing.
pub fn dead_probe(probe: &Named) -> Finding {
    Finding::new(
        Code::DeadProbe,
        probe.place,
        format!("`{}` tells nothing", probe.value),
        "every cause gives the same answer: take it out, or name the causes that answer differently",
    )
    .of(probe.value.as_str())
}

/// Causes with different remedies that no probe parts, and a probe as YAML that would.
pub fn inseparable(first: &Named, all: &[&str], parting: Option<String>) -> Finding {
    let names = listed(all.iter().copied()).replace(" or ", " and ");
    let help = match parting {
        Some(probe) => format!("the circuit has a reading that parts them; add under `probes:`\n{}", probe.trim_end()),
        None => "add a probe that they answer differently, or give them the same lasting remedy".to_owned(),
    };
    Finding::new(Code::Inseparable, first.place, format!("no probe parts {names}"), help).of(first.value.as_str())
}

/// Something waits for itself.
pub fn needs_itself(named: &Named) -> Finding {
    Finding::new(
        Code::NeedsItself,
        named.place,
        format!("`{}` waits for itself", named.value),
        "follow `needs:` or `after:` from here; take the link out that leads back",
    )
}

/// A cause has no remedy.
pub fn no_remedy(cause: &Named) -> Finding {
    Finding::new(
        Code::NoRemedy,
        cause.place,
        format!("`{}` has no remedy", cause.value),
        "name the job that mends it under `lasting:`",
    )
}

/// Nothing is said about what is not on the list.
pub fn no_rest(guide: &Named) -> Finding {
    Finding::new(
        Code::NoRest,
        guide.place,
        "nothing about what is not on the list",
        "the shares leave cases over: add `not on this list:` with what to do then",
    )
}

/// A stop-gap without its lasting remedy.
pub fn stop_gap(named: &Named) -> Finding {
    Finding::new(
        Code::StopGap,
        named.place,
        format!("the stop-gap `{}` has no lasting remedy", named.value),
        "name under `lasting:` what mends it for good",
    )
}

/// What is named as lasting is a stop-gap itself, or the job that it should outlast.
pub fn lasts_no_longer(named: &Named) -> Finding {
    Finding::new(
        Code::StopGap,
        named.place,
        format!("`{}` is a stop-gap itself", named.value),
        "name under `lasting:` the job that mends it for good",
    )
}

/// An isolating step after which nobody goes on.
pub fn nobody_goes_on(first: &Named) -> Finding {
    Finding::new(
        Code::NoOtherwise,
        first.place,
        format!("no answer of `{}` goes on", first.value),
        "give the answer that leads into this guide `then: go on`",
    )
    .of(first.value.as_str())
}

/// A probe that takes no time.
pub fn no_minutes(probe: &Named, place: Place) -> Finding {
    Finding::new(
        Code::NoMinutes,
        place,
        format!("`{}` takes no time", probe.value),
        "say how long it takes, be it `30 s`",
    )
    .of(probe.value.as_str())
}

/// A probe needs a job open and shut at once.
pub fn open_and_shut(probe: &Named) -> Finding {
    Finding::new(
        Code::OpenAndShut,
        probe.place,
        format!("`{}` needs a job open and shut at once", probe.value),
        "look at its `needs:` and `shut:`, and at what those jobs need",
    )
}

/// The same cause twice in one answer.
pub fn named_twice(probe: &Named) -> Finding {
    Finding::new(
        Code::NamedTwice,
        probe.place,
        format!("an answer of `{}` names a cause twice", probe.value),
        "name each cause once; how often it answers so stands under `times:`",
    )
}

/// More of something than can be reckoned.
pub fn too_many(guide: &Named, what: &str, most: usize) -> Finding {
    Finding::new(
        Code::TooManyToReckon,
        guide.place,
        format!("more than {most} {what} in one guide"),
        "split the guide: nobody works through so many",
    )
}

/// Times or shares too large for exact sums.
pub fn too_large(guide: &Named) -> Finding {
    Finding::new(
        Code::TooManyToReckon,
        guide.place,
        "times or shares too large to add up exactly",
        "look for a time or count that is far too long",
    )
}

/// No causes at all.
pub fn no_causes(guide: &Named) -> Finding {
    Finding::new(
        Code::NoCauses,
        guide.place,
        format!("`{}` lists no cause", guide.value),
        "list under `causes:` what it can be",
    )
}
