"""Resistances of networks by networkx.resistance_distance, for tests/circuit_networkx.rs.

Reads lines `from to ohms …` (one network a line, triples), computes the resistance between points 0 and 1 in the part of the
network that has point 0, and prints it, or `open`.
"""

import sys

import networkx


def resistance(triples):
    graph = networkx.MultiGraph()
    graph.add_nodes_from([0, 1])
    for start in range(0, len(triples), 3):
        one, other, ohms = triples[start : start + 3]
        graph.add_edge(int(one), int(other), weight=float(ohms))
    part = networkx.node_connected_component(graph, 0)
    if 1 not in part:
        return "open"
    return repr(float(networkx.resistance_distance(graph.subgraph(part), 0, 1, weight="weight", invert_weight=True)))


for line in sys.stdin:
    print(resistance(line.split()))
