//! A resistance as a range: the least, the usual and the most that a sound or faulty piece has.

use super::Flaw;

/// The largest resistance a network takes, ohms. An open circuit is a missing piece, not a large one.
const LARGEST: f64 = 1e9;
/// A least value of nothing is taken as this, ohms: conductance must stay finite.
const SMALLEST: f64 = 1e-9;

/// A resistance in ohms: above nothing, rising from `least` through `usual` to `most`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ohms {
    least: f64,
    usual: f64,
    most: f64,
}

impl Ohms {
    /// From the least, usual and most ohms. A least value of 0 is taken as a billionth of an ohm.
    ///
    /// # Errors
    /// [`Flaw::Ohms`] if a figure is no number, negative, over a billion, if they do not rise, or if the most is nothing.
    pub fn range(least: f64, usual: f64, most: f64) -> Result<Ohms, Flaw> {
        if ![least, usual, most].iter().all(|figure| figure.is_finite() && (0.0..=LARGEST).contains(figure)) {
            return Err(Flaw::Ohms("ohms must lie from 0 to 1000000000".to_owned()));
        }
        if least > usual || usual > most {
            return Err(Flaw::Ohms("ohms must rise from the least to the most".to_owned()));
        }
        if most <= 0.0 {
            return Err(Flaw::Ohms("no piece has 0 ohms; write 0.01".to_owned()));
        }
        Ok(Ohms { least: least.max(SMALLEST), usual: usual.max(SMALLEST), most: most.max(SMALLEST) })
    }

    /// From the least and the most ohms; the usual value, for showing only, is their geometric mean.
    ///
    /// # Errors
    /// As [`Ohms::range`].
    pub fn between(least: f64, most: f64) -> Result<Ohms, Flaw> {
        let usual = libm::sqrt(least.max(SMALLEST) * most);
        Ohms::range(least, usual.clamp(least.min(most), most.max(least)), most)
    }

    /// Exactly so many ohms.
    ///
    /// # Errors
    /// As [`Ohms::range`].
    pub fn exactly(ohms: f64) -> Result<Ohms, Flaw> {
        Ohms::range(ohms, ohms, ohms)
    }

    /// The least it can be, ohms.
    pub fn least(self) -> f64 {
        self.least
    }

    /// What it usually is, ohms: for showing; no verdict rests on it.
    pub fn usual(self) -> f64 {
        self.usual
    }

    /// The most it can be, ohms.
    pub fn most(self) -> f64 {
        self.most
    }

    /// One after the other.
    pub(super) fn in_series(self, other: Ohms) -> Ohms {
        self.with(other, |mine, theirs| mine + theirs)
    }

    /// Side by side. Each end of the range is reached, because resistance rises with either piece.
    pub(super) fn in_parallel(self, other: Ohms) -> Ohms {
        self.with(other, |mine, theirs| 1.0 / (1.0 / mine + 1.0 / theirs))
    }

    fn with(self, other: Ohms, join: impl Fn(f64, f64) -> f64) -> Ohms {
        Ohms {
            least: join(self.least, other.least),
            usual: join(self.usual, other.usual),
            most: join(self.most, other.most),
        }
    }
}
