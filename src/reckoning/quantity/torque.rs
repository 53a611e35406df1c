//! Whether a torque overloads a steel screw, by T = K·F·d.
//!
//! In: a torque, a thread, what the screw is made of, and whether the thread is oiled. Out: the load against the proof load,
//! or that nothing can be said. Leaves the joint to its callers: a tang in a light-alloy pommel gives way long before its thread.

use super::decimal::{Decimal, Rounding};
use super::ratio::Ratio;
use super::text::Part;
use super::tolerance::Figure;
use super::unit::Unit;
use super::value::{Incomparable, Quantity, same};

/// A metric coarse thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thread {
    /// Its usual name.
    pub name: &'static str,
    /// Outer diameter d in mm.
    pub diameter: Decimal,
    /// Pitch P in mm.
    pub pitch: Decimal,
    /// Tensile stress area in mm², as printed in ISO 898-1 and ASME B1.13M.
    pub stress_area: Decimal,
}

/// A property class of ISO 898-1: carbon and alloy steel only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PropertyClass {
    /// Its name, as stamped on the head.
    pub name: &'static str,
    /// Stress under proof load in MPa (EN ISO 898-1:2013; for 8.8 the figure up to M16).
    pub proof_stress: Decimal,
}

/// What the screw is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Steel of a listed class.
    Class(PropertyClass),
    /// Stainless steel, brass, light alloy, or steel of no stated class: no proof load is published for it here.
    Other,
}

/// How the thread is when it is tightened; it decides the range of K (after Shigley, *Mechanical Engineering Design*).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Condition {
    /// Dry steel: K 0.20 to 0.25.
    Dry,
    /// Oiled: K 0.15 to 0.20.
    Oiled,
    /// Not said: K 0.15 to 0.25.
    NotStated,
}

/// A screw, and how it is tightened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Joint {
    /// Its thread.
    pub thread: Thread,
    /// What it is made of.
    pub material: Material,
    /// Dry or oiled.
    pub condition: Condition,
}

/// The numbers behind a verdict, each to three digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Load {
    /// Pull of the stated torque at the highest K: the least it can be.
    pub least: Quantity,
    /// Pull of the most that the tolerance allows, at the usual K.
    pub usual: Quantity,
    /// What the thread must bear without a lasting stretch.
    pub proof: Quantity,
    /// `least` in percent of `proof`.
    pub least_share: Decimal,
    /// `usual` in percent of `proof`.
    pub usual_share: Decimal,
}

/// What a torque does to a screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TorqueVerdict {
    /// Under 90 % of the proof load at the usual K.
    Bears(Load),
    /// From 90 % of the proof load at the usual K: an advice.
    NearProof(Load),
    /// Over the proof load even at the highest K of the condition: an error.
    OverProof(Load),
    /// No class of ISO 898-1, so nothing can be said, and a page has to say that.
    NotJudged,
}

const fn thread(name: &'static str, diameter: i64, pitch: i64, area: (i64, u8)) -> Thread {
    Thread {
        name,
        diameter: Decimal::new(diameter, 1),
        pitch: Decimal::new(pitch, 2),
        stress_area: Decimal::new(area.0, area.1),
    }
}

const fn class(name: &'static str, proof_stress: i64) -> PropertyClass {
    PropertyClass { name, proof_stress: Decimal::new(proof_stress, 0) }
}

impl Thread {
    /// The threads that are known, by size. The rules' button threads 3.5 × 0.60 and 4.0 × 0.70 are M3.5 and M4.
    pub const ALL: [Thread; 9] = [
        thread("M1.6", 16, 35, (127, 2)),
        thread("M2", 20, 40, (207, 2)),
        thread("M2.5", 25, 45, (339, 2)),
        thread("M3", 30, 50, (503, 2)),
        thread("M3.5", 35, 60, (678, 2)),
        thread("M4", 40, 70, (878, 2)),
        thread("M5", 50, 80, (142, 1)),
        thread("M6", 60, 100, (201, 1)),
        thread("M8", 80, 125, (366, 1)),
    ];

    /// The thread that somebody wrote: `M6`, `m6 x 1`, `3.5 × 0.60`. A fine pitch is not known.
    #[must_use]
    pub fn named(written: &str) -> Option<Thread> {
        let bare = written.trim().trim_start_matches(['M', 'm']).replace('×', "x").to_lowercase();
        let mut sizes =
            bare.split('x').map(|size| Some(Part::all(size).loose().ok().filter(|l| l.unit.is_none())?.number.exact()));
        let (diameter, pitch) = (sizes.next()??, sizes.next());
        let fits = |thread: &Thread| {
            thread.diameter.exact() == diameter && pitch.is_none_or(|pitch| pitch == Some(thread.pitch.exact()))
        };
        if sizes.next().is_some() { None } else { Thread::ALL.into_iter().find(fits) }
    }
}

impl PropertyClass {
    /// The classes that are known.
    pub const ALL: [PropertyClass; 9] = [
        class("4.6", 225),
        class("4.8", 310),
        class("5.6", 280),
        class("5.8", 380),
        class("6.8", 440),
        class("8.8", 580),
        class("9.8", 650),
        class("10.9", 830),
        class("12.9", 970),
    ];

    /// The class of that name.
    #[must_use]
    pub fn named(written: &str) -> Option<PropertyClass> {
        PropertyClass::ALL.into_iter().find(|class| class.name == written.trim())
    }
}

impl Condition {
    /// The usual K, the middle of the range, and the highest.
    #[must_use]
    pub fn k(self) -> (Decimal, Decimal) {
        match self {
            Condition::Dry => (Decimal::new(225, 3), Decimal::new(25, 2)),
            Condition::Oiled => (Decimal::new(175, 3), Decimal::new(20, 2)),
            Condition::NotStated => (Decimal::new(20, 2), Decimal::new(25, 2)),
        }
    }
}

impl Joint {
    /// Holds a torque against the proof load.
    ///
    /// An error needs certainty, so it takes the stated torque and the highest K; an advice takes the most that the tolerance
    /// allows and the usual K.
    ///
    /// # Errors
    /// A value that is no torque, or too many digits.
    pub fn judge(&self, torque: Figure) -> Result<TorqueVerdict, Incomparable> {
        same(Unit::NewtonMetre, torque.value.unit)?;
        let Material::Class(class) = self.material else {
            return Ok(TorqueVerdict::NotJudged);
        };
        let (stated, most) = (torque.value.kept()?, torque.ends()?.1);
        let (usual_k, highest_k) = self.condition.k();
        let numbers = || {
            let proof = self.thread.stress_area.exact().times(class.proof_stress.exact())?;
            Some((self.thread.pull(stated, highest_k)?, self.thread.pull(most, usual_k)?, proof))
        };
        let (least, usual, proof) = numbers().ok_or(Incomparable::TooManyDigits)?;
        let load = Load::of(least, usual, proof).ok_or(Incomparable::TooManyDigits)?;
        let near = proof.times(Ratio::new(9, 10).unwrap_or(Ratio::ZERO)).ok_or(Incomparable::TooManyDigits)?;
        Ok(match () {
            () if least > proof => TorqueVerdict::OverProof(load),
            () if usual >= near => TorqueVerdict::NearProof(load),
            () => TorqueVerdict::Bears(load),
        })
    }
}

impl Thread {
    /// F = T/(K·d) in newtons, of a torque in newton metres.
    fn pull(&self, torque: Ratio, k: Decimal) -> Option<Ratio> {
        let metres = self.diameter.exact().over(Ratio::new(1000, 1)?)?;
        torque.over(k.exact().times(metres)?)
    }

    /// The torque in newton metres that pulls with three quarters of the proof load at this K: what Shigley advises for joints
    /// that are undone again. A ceiling for steel in steel, no value for tip screws or grips.
    #[must_use]
    pub fn ceiling(&self, class: PropertyClass, k: Decimal) -> Option<Ratio> {
        let proof = self.stress_area.exact().times(class.proof_stress.exact())?;
        let metres = self.diameter.exact().over(Ratio::new(1000, 1)?)?;
        proof.times(Ratio::new(3, 4)?)?.times(k.exact())?.times(metres)
    }
}

impl Joint {
    /// The highest torque with nothing to be said against it, when it may be off as `torque` may: in N·m, rounded down to two digits.
    ///
    /// It is found by judging: T = K·F·d of 90 % of the proof load is where the look begins, and a wide tolerance takes it down.
    #[must_use]
    pub fn highest_that_passes(&self, torque: Figure) -> Option<Quantity> {
        let Material::Class(class) = self.material else { return None };
        let metres = self.thread.diameter.exact().over(Ratio::new(1000, 1)?)?;
        let proof = self.thread.stress_area.exact().times(class.proof_stress.exact())?;
        let most = proof.times(Ratio::new(9, 10)?)?.times(self.condition.k().0.exact())?.times(metres)?;
        // Steps of a thousandth miss no figure of two digits.
        (1..=1000).rev().find_map(|thousandths| {
            let value = most.times(Ratio::new(thousandths, 1000)?)?;
            let value = Quantity::new(Decimal::to_digits(value, 2, Rounding::Down)?, Unit::NewtonMetre);
            let passes = matches!(self.judge(Figure { value, ..torque }), Ok(TorqueVerdict::Bears(_)));
            passes.then_some(value)
        })
    }
}

impl Load {
    fn of(least: Ratio, usual: Ratio, proof: Ratio) -> Option<Load> {
        let newtons = |pull| Some(Quantity::new(Decimal::to_digits(pull, 3, Rounding::Nearest)?, Unit::Newton));
        let share =
            |pull: Ratio| Decimal::to_digits(pull.over(proof)?.times(Ratio::new(100, 1)?)?, 3, Rounding::Nearest);
        Some(Load {
            least: newtons(least)?,
            usual: newtons(usual)?,
            proof: newtons(proof)?,
            least_share: share(least)?,
            usual_share: share(usual)?,
        })
    }
}
