//! Faults as written, and as changes to the network.

use super::{Wiring, label, name};
use crate::model::circuit::{self, Circuit};
use crate::model::{Named, ResistanceRange, Told};
use crate::reckoning::circuit::{Change, Fault, PieceId, Steadiness, TouchingId, While};
use crate::source::{Place, Placed};

/// A piece or a touching by its name.
enum Part {
    Piece(PieceId),
    Touching(TouchingId),
}

impl Wiring {
    pub(super) fn faults(&mut self, circuit: &Circuit) {
        for fault in self.sound(&circuit.faults) {
            let made = self.changes(fault).map(|made| self.network.fault(fault.fault.value.as_str(), made));
            if self.maybe_entered(&fault.fault, made).is_some() {
                self.labels.faults.insert(name(&fault.fault), label(&fault.fault, &fault.title, fault.place.as_ref()));
            }
        }
    }

    /// All that a fault changes; nothing if a part of it has a finding.
    fn changes(&mut self, fault: &circuit::Fault) -> Option<Fault> {
        let before = self.findings.len();
        let missing = self.missing.len();
        let mut changes = Vec::new();
        let mut whole = true;
        let mut add = |change: Option<Change>| match change {
            Some(change) => changes.push(change),
            None => whole = false,
        };
        for gone in fault.broken.iter().chain(&*fault.lost) {
            add(self.part(gone).map(Part::lost));
        }
        if !fault.touches.is_empty() {
            add(self.touch(fault));
        }
        for part in &*fault.more_ohms {
            add(self.more(part, fault));
        }
        for never in &fault.never_touches {
            add(self.find_touching(never).map(Change::NeverTouches));
        }
        for always in &fault.always_touches {
            add(self.find_touching(always).map(Change::AlwaysTouches));
        }
        if !fault.changed_over.is_empty() {
            add(self.changed_over(fault));
        }
        let only_while = match &fault.only_while {
            Some(named) => Some(self.only_while(named)?),
            None => None,
        };
        if changes.is_empty() && whole {
            let help = "say what it does: `broken`, `lost`, `touches`, `more ohms`, `never touches`, `always touches` or `changed over`";
            self.bad(fault.fault.place, format!("`{}` changes nothing", fault.fault.value), help);
        }
        let steadiness = if fault.now_and_then { Steadiness::NowAndThen } else { Steadiness::Steady };
        let sound = whole && self.findings.len() == before && self.missing.len() == missing;
        sound.then_some(Fault { changes, only_while, steadiness })
    }

    fn touch(&mut self, fault: &circuit::Fault) -> Option<Change> {
        let points = self.two_points(&fault.touches, fault.fault.place, "touches");
        let ohms = self.told_ohms(fault.ohms.as_ref(), fault.fault.place, "touches", "ohms");
        let [one, other] = points?;
        Some(Change::Touches(one, other, ohms?))
    }

    fn more(&mut self, part: &Named, fault: &circuit::Fault) -> Option<Change> {
        let found = self.part(part);
        let ohms = self.told_ohms(fault.by.as_ref(), fault.fault.place, "more ohms", "by")?;
        Some(match found? {
            Part::Piece(piece) => Change::MoreOhms(piece, ohms),
            Part::Touching(touching) => Change::MoreOhmsTouching(touching, ohms),
        })
    }

    fn told_ohms(
        &mut self,
        told: Option<&Placed<Told<ResistanceRange>>>,
        at: Place,
        verb: &str,
        key: &str,
    ) -> Option<crate::reckoning::circuit::Ohms> {
        if told.is_none() {
            self.bad(at, format!("`{verb}` without `{key}`"), "say how many ohms, such as `0.02 .. 0.2 .. 2`");
        }
        told.and_then(|told| self.ohms(told))
    }

    fn changed_over(&mut self, fault: &circuit::Fault) -> Option<Change> {
        let at = self.two_points(&fault.at, fault.fault.place, "at");
        let [one, other] = &*fault.changed_over.0 else {
            let message = format!("`changed over` wants two pieces, not {}", fault.changed_over.len());
            self.bad(fault.fault.place, message, "name two pieces of this circuit");
            return None;
        };
        match (self.part(one)?, self.part(other)?) {
            (Part::Piece(one), Part::Piece(other)) => Some(Change::ChangedOver { pieces: [one, other], at: at? }),
            _ => {
                self.bad(fault.fault.place, "only pieces can be changed over".to_owned(), "name two pieces");
                None
            }
        }
    }

    fn part(&mut self, named: &Named) -> Option<Part> {
        let id = named.value.as_str();
        let piece = self.network.find_piece(id).map(Part::Piece);
        let found = piece.or_else(|| self.network.find_touching(id).map(Part::Touching));
        if found.is_none() {
            self.unknown(named, "piece or touching", |network| {
                network.pieces_by_name().chain(network.touchings_by_name()).map(str::to_owned).collect()
            });
        }
        found
    }

    fn only_while(&mut self, named: &Named) -> Option<While> {
        let id = named.value.as_str();
        let touching = self.network.find_touching(id).map(While::Touching);
        let found = touching.or_else(|| self.network.find_position(id).map(While::Position));
        if found.is_none() {
            self.unknown(named, "touching or position", |network| {
                network.touchings_by_name().chain(network.positions_by_name()).map(str::to_owned).collect()
            });
        }
        found
    }
}

impl Part {
    fn lost(self) -> Change {
        match self {
            Part::Piece(piece) => Change::Lost(piece),
            Part::Touching(touching) => Change::LostTouching(touching),
        }
    }
}
