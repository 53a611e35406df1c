"""Ranges of shares from scipy, a general-purpose library (pip install scipy).

Reads a JSON list of lists of counts from standard input and writes, for each count, the 5th and 95th percentile of its share under a
Dirichlet posterior with a half for each before the first case: the margin is a beta distribution.
"""

import json
import sys

from scipy.stats import beta


def ranges(seen):
    alphas = [count + 0.5 for count in seen]
    total = sum(alphas)
    return [[float(beta.ppf(q, a, total - a)) for q in (0.05, 0.95)] for a in alphas]


if __name__ == "__main__":
    json.dump([ranges(seen) for seen in json.load(sys.stdin)], sys.stdout)
