//! A tester's lamp, solved as one network with the battery and the other lamps: a joint can feed one lamp through another.

use super::corners::{Edge, corners};
use super::live::on_the_way;
use super::solve::Mesh;
use super::{FaultId, Flaw, Network, Ohms, PositionId, Span, Tester};

/// The amperes through one of a tester's lamps.
pub(super) fn amperes(
    network: &Network,
    tester: &Tester,
    lamp: usize,
    position: PositionId,
    fault: Option<FaultId>,
) -> Result<Span, Flaw> {
    let (pin, filament) = tester.lamps.get(lamp).copied().ok_or_else(|| Flaw::Unknown(format!("lamp {lamp}")))?;
    let (battery, pin) = (network.root(tester.battery).0, network.root(pin).0);
    // The pole that the lamps hang on is a point of its own, numbered after all others.
    let pole = network.same.len();
    let links = network.links(position, fault)?;
    let mut edges: Vec<Edge> =
        links.iter().map(|link| Edge { from: link.from.0, to: link.to.0, ohms: link.ohms }).collect();
    for (pin, ohms) in &tester.lamps {
        edges.push(Edge { from: pole, to: network.root(*pin).0, ohms: Ohms::exactly(*ohms)? });
    }
    let ends: Vec<(usize, usize)> = edges.iter().map(|edge| (edge.from, edge.to)).collect();
    let live = on_the_way(&ends, pole, battery);
    let this_lamp = links.len() + lamp;
    if !live.contains(&this_lamp) {
        return Ok(Span::Within { least: 0.0, usual: 0.0, most: 0.0 });
    }
    let live: Vec<Edge> = live.into_iter().filter_map(|index| edges.get(index)).copied().collect();
    let kept = [pole, battery, pin];
    Ok(corners(&live, &kept, |wires| tester.current(&Mesh::of(wires, &kept), filament)))
}

impl Tester {
    /// The current through the lamp between the pole (0) and its pin (2), the battery lying between the pole and its own pin (1).
    fn current(&self, mesh: &Mesh, filament: f64) -> f64 {
        let (past, lamp, on) = (mesh.between(0, 1), mesh.between(0, 2), mesh.between(2, 1));
        // `lamp` is at least the lamp's own conductance, so nothing is divided by nothing.
        let through = lamp * on / (lamp + on);
        let volts = self.volts / (1.0 + self.inside * (past + through));
        volts * on / (lamp + on) / filament
    }
}
