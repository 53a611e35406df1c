//! A tester's lamp, solved as one network with the battery and the other lamps: a joint can feed one lamp through another.

use super::corners::{Edge, Turn, corners};
use super::live::{Run, on_the_way, runs};
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
    let turns = |edges: &[Edge]| turns(edges, pole, battery, pin);
    Ok(corners(&live, &kept, turns, |wires| tester.current(&Mesh::of(wires, &kept), filament)))
}

/// Which way the current in the lamp between `pole` and `pin` goes with each edge, the battery lying between `battery` and `pole`.
///
/// It falls with a resistance by the current that the battery drives through it times the current that a battery in the
/// lamp's place would drive through it (Cohn 1950, *The resistance of an electrical network*). A current runs one way through
/// an edge, whatever the resistances, if every simple way from pole to pole does. What lies beside the lamp takes from its current:
/// the more ohms it has, the more volts are left for both.
fn turns(edges: &[Edge], pole: usize, battery: usize, pin: usize) -> Vec<Turn> {
    let ends: Vec<(usize, usize)> = edges.iter().map(|edge| (edge.from, edge.to)).collect();
    let driven = runs(&ends, pole, battery);
    // The lamp is a source now, so its own edge does not count, and the battery is an edge like another.
    let lamp = |(from, to): &(usize, usize)| (*from, *to) == (pole, pin) || (*to, *from) == (pole, pin);
    let mut others: Vec<(usize, usize)> =
        ends.iter().map(|ends| if lamp(ends) { (pole, pole) } else { *ends }).collect();
    others.push((battery, pole));
    let back = runs(&others, pin, pole);
    let turn = |(ends, (driven, back)): (&(usize, usize), (Run, Run))| match (driven, back) {
        _ if lamp(ends) => Turn::Rises,
        (Run::Both, _) | (_, Run::Both) => Turn::Either,
        (Run::Along, Run::Against) | (Run::Against, Run::Along) => Turn::Rises,
        _ => Turn::Falls,
    };
    ends.iter().zip(driven.into_iter().zip(back)).map(turn).collect()
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
