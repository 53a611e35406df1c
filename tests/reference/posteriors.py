"""Posteriors from pyAgrum, a general-purpose library for Bayesian networks (pip install pyagrum).

Reads a JSON list of {weights, probes: [[P(answer) per suspect]], evidence: [[probe, answer], ...]} from standard input and writes, for each,
the posterior of every suspect: one node for who it is, one for each probe, which depends on it alone.
"""

import json
import sys

import pyagrum as gum


def posterior(case):
    net = gum.BayesNet()
    total = sum(case["weights"])
    who = net.add(gum.LabelizedVariable("who", "", len(case["weights"])))
    net.cpt(who).fillWith([w / total for w in case["weights"]])
    for number, table in enumerate(case["probes"]):
        # A variable needs two labels; a probe with one answer gets a second that never comes.
        size = max(2, len(table[0]))
        probe = net.add(gum.LabelizedVariable(f"p{number}", "", size))
        net.addArc(who, probe)
        for suspect, row in enumerate(table):
            net.cpt(probe)[{"who": suspect}] = row + [0.0] * (size - len(row))
    engine = gum.LazyPropagation(net)
    engine.setEvidence({f"p{probe}": answer for probe, answer in case["evidence"]})
    engine.makeInference()
    return engine.posterior("who").tolist()


if __name__ == "__main__":
    json.dump([posterior(case) for case in json.load(sys.stdin)], sys.stdout)
