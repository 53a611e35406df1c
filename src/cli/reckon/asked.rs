//! What else was asked: an order given by hand, and another share.
//!
//! In: the words of `--order` and `--what-if`. Out: the same by index, or what is wrong with them.

use super::sought::{REST, Sought};
use crate::cli::args::ReckonJob;
use crate::proof::cases::sound;
use crate::proof::did_you_mean;
use crate::reckoning::diagnosis::{CauseIndex, Diagnosis, Fraction, ProbeIndex, Suspect};

/// What else was asked.
#[derive(Default)]
pub struct Asked {
    /// An order to price.
    pub order: Vec<ProbeIndex>,
    /// Another share.
    pub what_if: Option<WhatIf>,
}

/// Another share, with all others scaled.
pub struct WhatIf {
    /// Whose share.
    pub suspect: Suspect,
    /// The share to try.
    pub share: Fraction,
    /// The case with that share.
    pub diagnosis: Diagnosis,
}

/// Reads what was asked. Errors: what is wrong, in words.
pub fn asked(job: &ReckonJob, sought: &Sought<'_>) -> Result<Asked, String> {
    let what_if = job.what_if.as_deref().map(|text| what_if(text, sought)).transpose()?;
    Ok(Asked { order: order(&job.order, sought)?, what_if })
}

fn order(typed: &[String], sought: &Sought<'_>) -> Result<Vec<ProbeIndex>, String> {
    let known: Vec<&str> = sound(&sought.guide.probes).iter().map(|probe| probe.probe.value.as_str()).collect();
    let mut order = Vec::new();
    for id in typed.iter().map(|id| id.trim()) {
        let Some(index) = known.iter().position(|known| *known == id) else {
            let help = did_you_mean(id, known.iter().copied(), &format!("there are: {}", known.join(", ")));
            return Err(format!("There is no question `{id}` in this guide: {help}"));
        };
        if order.contains(&ProbeIndex(index)) {
            return Err(format!("The question `{id}` stands in the order twice: name it once."));
        }
        order.push(ProbeIndex(index));
    }
    Ok(order)
}

fn what_if(typed: &str, sought: &Sought<'_>) -> Result<WhatIf, String> {
    let (id, number) = typed
        .split_once('=')
        .ok_or_else(|| format!("`{typed}` says no share: write a cause and how many in 100, such as `{REST}=20`."))?;
    let suspect = suspect(id.trim(), sought)?;
    let share = share(number.trim())
        .ok_or_else(|| format!("`{number}` is no share: write how many in 100, more than 0 and less than 100."))?;
    let diagnosis = sought
        .case
        .diagnosis
        .with_share(suspect, share)
        .ok_or_else(|| format!("Another share for `{id}` cannot be tried: there is nobody else to scale."))?;
    Ok(WhatIf { suspect, share, diagnosis })
}

/// A cause by its id. A cause that is called `rest` itself goes before what is not on the list.
fn suspect(id: &str, sought: &Sought<'_>) -> Result<Suspect, String> {
    let causes = sound(&sought.guide.causes);
    let known: Vec<&str> = causes.iter().map(|cause| cause.cause.value.as_str()).collect();
    if let Some(index) = known.iter().position(|known| *known == id) {
        return Ok(Suspect::Cause(CauseIndex(index)));
    }
    match (id, sought.case.diagnosis.case().rest) {
        (REST, Some(_)) => Ok(Suspect::Rest),
        (REST, None) => {
            Err("The shares of this guide add up to 100: nothing is left for what is not on the list.".into())
        }
        _ => {
            let help = did_you_mean(id, known.iter().copied(), &format!("there are: {}, {REST}", known.join(", ")));
            Err(format!("There is no cause `{id}` in this guide: {help}"))
        }
    }
}

/// So many in 100, with two decimals at most.
fn share(text: &str) -> Option<Fraction> {
    let text = text.strip_suffix('%').map_or(text, str::trim_end);
    let (whole, decimals) = text.split_once('.').unwrap_or((text, "0"));
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || !digits(decimals) || whole.len() > 3 || decimals.len() > 2 {
        return None;
    }
    let hundredths: u64 = format!("{whole}{decimals:0<2}").parse().ok()?;
    (0 < hundredths && hundredths < 10_000).then(|| Fraction::new(hundredths, 10_000))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_so_many_in_a_hundred_with_two_decimals_at_most() {
        assert_eq!(share("20"), Some(Fraction::new(1, 5)));
        assert_eq!(share("2.5 %"), Some(Fraction::new(1, 40)));
        assert_eq!(share("0.05"), Some(Fraction::new(1, 2000)));
        for bad in ["", "0", "100", "-3", "1e1", "12.345", ".5", "5.", "twenty", "+7", "1000"] {
            assert_eq!(share(bad), None, "{bad}");
        }
    }
}
