//! Whether a fault shows a symptom, and whether two faults can be told apart.

use super::{Answer, Answers, FaultId, Flaw, Network, Outcome, PositionId, Reading, ReadingId, Seen, Span};

/// How far something follows, over the whole range of every resistance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// Not at all.
    Never,
    /// With some resistances, or at times.
    May,
    /// With all resistances.
    Surely,
}

/// One thing that a symptom says is seen. Readings that it does not name are free.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sign {
    /// On what it is seen.
    pub reading: ReadingId,
    /// In which position.
    pub position: PositionId,
    /// What is seen.
    pub shows: Answer,
}

/// What tells two faults apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Parting {
    /// [`Grade::Surely`] if no answer is common to both, [`Grade::May`] if they can answer differently.
    pub grade: Grade,
    /// The reading to take.
    pub reading: ReadingId,
    /// The position to take it in.
    pub position: PositionId,
}

impl Network {
    /// Whether a fault (or, with `None`, the sound network) shows all signs of a symptom.
    ///
    /// A fault that comes and goes is taken to stay in one state while the signs are looked at, so it never shows them *surely*
    /// unless both states do; only where a sign is that something flickers are both states looked at.
    ///
    /// # Errors
    /// [`Flaw::Unknown`] for anything of another network.
    pub fn shows(&self, fault: Option<FaultId>, signs: &[Sign]) -> Result<Grade, Flaw> {
        let mut seen = Vec::with_capacity(signs.len());
        for sign in signs {
            seen.push((sign.shows, self.seen(sign.reading, sign.position, fault)?));
        }
        if signs.iter().any(|sign| sign.shows == Answer::Flickers) {
            return Ok(all(seen.iter().map(|(shows, seen)| flickering(*shows, seen))));
        }
        let faulty = all(seen.iter().map(|(shows, seen)| grade(*shows, seen.faulty.answers)));
        let away = all(seen.iter().map(|(shows, seen)| grade(*shows, seen.away.unwrap_or(seen.faulty).answers)));
        Ok(if faulty == away { faulty } else { Grade::May })
    }

    /// The best that tells two faults apart (`None` for the sound network): the first reading and position that surely does,
    /// else the first that may, else nothing.
    ///
    /// # Errors
    /// [`Flaw::Unknown`] for anything of another network.
    pub fn parting(&self, one: Option<FaultId>, other: Option<FaultId>) -> Result<Option<Parting>, Flaw> {
        let mut perhaps = None;
        for reading in self.readings() {
            for position in self.positions() {
                match self.parts(one, other, reading, position)? {
                    Grade::Surely => {
                        return Ok(Some(Parting { grade: Grade::Surely, reading, position }));
                    }
                    grade @ Grade::May => perhaps = perhaps.or(Some(Parting { grade, reading, position })),
                    Grade::Never => {}
                }
            }
        }
        Ok(perhaps)
    }

    /// How far one reading in one position tells two faults apart: by its answers, and of a meter by figures that cannot
    /// be the other's.
    ///
    /// # Errors
    /// [`Flaw::Unknown`] for anything of another network.
    pub fn parts(
        &self,
        one: Option<FaultId>,
        other: Option<FaultId>,
        reading: ReadingId,
        position: PositionId,
    ) -> Result<Grade, Flaw> {
        let (first, second) = (self.seen(reading, position, one)?, self.seen(reading, position, other)?);
        let has_figure = matches!(self.reading_of(reading), Some(Reading::Ohmmeter { .. }));
        let (answers, others) = (first.answers(), second.answers());
        Ok(if answers.contradicts(others) || has_figure && figures_apart(&first, &second) {
            Grade::Surely
        } else if answers == others {
            Grade::Never
        } else {
            Grade::May
        })
    }
}

fn figures_apart(first: &Seen, second: &Seen) -> bool {
    let states = |seen: &Seen| [Some(seen.faulty), seen.away].into_iter().flatten().collect::<Vec<Outcome>>();
    let others = states(second);
    states(first).iter().all(|one| others.iter().all(|other| disjoint(one.figure, other.figure)))
}

/// Whether two ranges are apart by more than a meter's last digit: a tenth of an ohm, or a tenth of the figure.
fn disjoint(one: Option<Span>, other: Option<Span>) -> bool {
    let (Some(Span::Within { least: low, most: high, .. }), Some(Span::Within { least, most, .. })) = (one, other)
    else {
        return false;
    };
    let clear = |below: f64, above: f64| above - below > (0.1 * above.abs()).max(0.1);
    clear(high, least) || clear(most, low)
}

fn grade(shows: Answer, answers: Answers) -> Grade {
    match (answers.contains(shows), answers.sure()) {
        (true, Some(_)) => Grade::Surely,
        (true, None) => Grade::May,
        (false, _) => Grade::Never,
    }
}

/// A sign beside one that flickers: both states count, since both are seen.
fn flickering(shows: Answer, seen: &Seen) -> Grade {
    let faulty = seen.faulty.answers;
    match (shows, seen.away.map(|away| away.answers)) {
        (Answer::Flickers, None) => Grade::Never,
        (Answer::Flickers, Some(away)) if away == faulty => Grade::Never,
        (Answer::Flickers, Some(away)) if away.contradicts(faulty) => Grade::Surely,
        (Answer::Flickers, Some(_)) => Grade::May,
        (_, away) => grade(shows, faulty.or(away.unwrap_or(faulty))),
    }
}

fn all(grades: impl Iterator<Item = Grade>) -> Grade {
    grades.min().unwrap_or(Grade::Surely)
}
