//! The circuits of the demo handbook, ready to be computed.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::OnceLock;

use coquille::model::{Guides, fill};
use coquille::proof::network::{Circuits, Wired, network};
use coquille::source::{What, read};

/// All circuits by id, read once for all who ask.
pub fn circuits() -> BTreeMap<String, Wired> {
    static READ: OnceLock<BTreeMap<String, Wired>> = OnceLock::new();
    READ.get_or_init(read_circuits).clone()
}

fn read_circuits() -> BTreeMap<String, Wired> {
    let folder = read(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/guides/circuits"))).unwrap();
    assert_eq!(folder.flaws, []);
    let (guides, flaws): (Guides, _) = fill(&folder);
    let flaws: Vec<_> = flaws.into_iter().filter(|flaw| flaw.what != What::NoHandbook).collect();
    assert_eq!(flaws, []);
    let all: Circuits = guides.circuits.iter().map(|(_, guide)| (guide.circuit.value.as_str(), guide)).collect();
    all.iter().map(|(id, circuit)| ((*id).to_owned(), network(circuit, &all))).collect()
}
