"""A second opinion on orders and decision trees, by trying everything. Standard library only.

Reads a JSON list of cases from standard input and writes a JSON list of results. Written from the model, not from the Rust: jobs are
opened and closed as a person would, each paid when it happens, and every tree and every order is tried in exact fractions.
"""

import itertools
import json
import sys
from fractions import Fraction
from functools import lru_cache

REST = -1


def hypotheses(case):
    """Every suspect's every way to answer: (suspect, weight, answers)."""
    suspects = [(i, Fraction(c["weight"])) for i, c in enumerate(case["causes"])]
    if case["rest"]:
        suspects.append((REST, Fraction(case["rest"]["weight"])))
    found = []
    for suspect, weight in suspects:
        options = []
        for probe in case["probes"]:
            named = [(a, parts) for a, names in enumerate(probe["answers"]) for who, parts in names if who == suspect]
            named = named or [(probe["otherwise"], 1)]
            total = sum(parts for _, parts in named)
            options.append([(a, Fraction(parts, total)) for a, parts in named])
        for way in itertools.product(*options):
            share = weight
            for _, part in way:
                share *= part
            found.append((suspect, share, tuple(a for a, _ in way)))
    return found


class Model:
    def __init__(self, case):
        self.case = case
        self.who = hypotheses(case)
        self.probes = case["probes"]
        self.everyone = frozenset(range(len(self.who)))
        self.before = [self.reach(i) for i in range(len(self.probes))]

    def reach(self, probe):
        seen, todo = set(), list(self.probes[probe]["after"])
        while todo:
            p = todo.pop()
            if p not in seen:
                seen.add(p)
                todo.extend(self.probes[p]["after"])
        return seen

    def remedy(self, suspect):
        if suspect == REST:
            return self.case["rest"]["remedy"]
        return self.case["causes"][suspect]["remedy"]

    def weight(self, left):
        return sum(self.who[h][1] for h in left)

    def parts(self, probe, left):
        by_answer = {}
        for h in left:
            by_answer.setdefault(self.who[h][2][probe], set()).add(h)
        return {a: frozenset(s) for a, s in sorted(by_answer.items())}

    def splits(self, probe, left):
        return len(self.parts(probe, left)) > 1

    def settled(self, left):
        suspects = {self.who[h][0] for h in left}
        if self.case["tell_apart"] == "causes":
            return len(suspects) == 1
        remedies = {("rest",) if self.remedy(s) is None else self.remedy(s) for s in suspects}
        return len(remedies) == 1

    def useful(self, left, gone=frozenset()):
        return [
            p
            for p in range(len(self.probes))
            if p not in gone
            and self.splits(p, left)
            and not any(self.splits(q, left) for q in self.before[p] if q not in gone)
        ]

    def shut(self, job, open_jobs):
        """Closes a job and, before it, whatever is nested in it: what remains open, and the minutes."""
        if job not in open_jobs:
            return open_jobs, 0
        minutes = 0
        for other in range(len(self.case["jobs"])):
            if job in self.case["jobs"][other]["needs"]:
                open_jobs, more = self.shut(other, open_jobs)
                minutes += more
        return open_jobs - {job}, minutes + self.case["jobs"][job]["close"]

    def open(self, job, open_jobs):
        if job in open_jobs:
            return open_jobs, 0, 0
        minutes, count = self.case["jobs"][job]["open"], 1
        for needed in self.case["jobs"][job]["needs"]:
            open_jobs, more, jobs = self.open(needed, open_jobs)
            minutes, count = minutes + more, count + jobs
        return open_jobs | {job}, minutes, count

    def do(self, probe, open_jobs):
        """Shuts, opens, looks: what is open then, the minutes, the jobs opened."""
        row, minutes, count = self.probes[probe], self.probes[probe]["minutes"], 0
        for job in row["shut"]:
            open_jobs, more = self.shut(job, open_jobs)
            minutes += more
        for job in row["needs"]:
            open_jobs, more, jobs = self.open(job, open_jobs)
            minutes, count = minutes + more, count + jobs
        return open_jobs, minutes, count

    def closing(self, open_jobs):
        return sum(self.case["jobs"][j]["close"] for j in open_jobs)

    def mended(self, probe, answer):
        return self.probes[probe]["works_now"] == answer

    def best(self, left, open_jobs, gone=frozenset()):
        """(expected minutes, expected jobs opened, worst case, probe) from here, closing included; sums are weighted."""

        @lru_cache(maxsize=None)
        def value(left, open_jobs):
            close = self.closing(open_jobs)
            weight = self.weight(left)
            over = (weight * close, Fraction(0), close, None)
            if self.settled(left):
                return over
            choices = []
            for p in self.useful(left, gone):
                now, minutes, count = self.do(p, open_jobs)
                cost, jobs, worst = weight * minutes, weight * count, 0
                for answer, part in self.parts(p, left).items():
                    if self.mended(p, answer):
                        end = self.closing(now)
                        cost, worst = cost + self.weight(part) * end, max(worst, end)
                    else:
                        c, j, w, _ = value(part, now)
                        cost, jobs, worst = cost + c, jobs + j, max(worst, w)
                choices.append((cost, jobs, worst + minutes, p))
            return min(choices) if choices else over

        self.value = value
        return value(left, open_jobs)

    def walk(self, pick):
        """Runs every hypothesis: for each the minutes, the places passed, how it ended, what was open."""
        runs = []
        for h in self.everyone:
            left, open_jobs, spent, last, works = self.everyone, frozenset(), 0, None, False
            while not works and not self.settled(left):
                p = pick(left, open_jobs)
                if p is None:
                    break
                open_jobs, minutes, _ = self.do(p, open_jobs)
                spent, last = spent + minutes, p
                answer = self.who[h][2][p]
                left = self.parts(p, left)[answer]
                works = self.mended(p, answer)
            runs.append((h, spent + self.closing(open_jobs), last, left, works, open_jobs))
        return runs

    def working_again(self, runs):
        total = Fraction(0)
        for h, spent, _, _, works, open_jobs in runs:
            suspect, weight, _ = self.who[h]
            remedy = self.remedy(suspect)
            extra = 0
            if not works and remedy is not None:
                remedy = self.case["remedies"][remedy]
                extra, now = remedy["minutes"], open_jobs
                for job in remedy["needs"]:
                    now, more, _ = self.open(job, now)
                    extra += more
                extra += self.closing(now - open_jobs)
            total += weight * (spent + extra)
        return total

    def known(self, left, works):
        suspects = {self.who[h][0] for h in left}
        if works:
            return True
        if suspects == {REST}:
            return False
        remedies = {self.remedy(s) for s in suspects}
        return self.settled(left) and len(remedies) == 1 and None not in remedies

    def order(self, order):
        pick = lambda left, _: next((p for p in order if self.splits(p, left)), None)
        runs = self.walk(pick)
        total = self.weight(self.everyone)
        found = [Fraction(0)] * len(order)
        for h, _, last, left, works, _ in runs:
            suspect, weight, _ = self.who[h]
            if suspect != REST and order and self.known(left, works):
                for k in range(0 if last is None else order.index(last), len(order)):
                    found[k] += weight / total
        return {
            "expected": text(sum(self.who[r[0]][1] * r[1] for r in runs) / total / 10),
            "worst": max(r[1] for r in runs),
            "found": [text(f) for f in found],
            "working_again": text(self.working_again(runs) / total / 10),
        }

    def quickest_order(self):
        best = None
        for order in itertools.permutations(range(len(self.probes))):
            if any(p in self.before[q] for i, p in enumerate(order) for q in order[:i]):
                continue
            runs = self.walk(lambda left, _: next((p for p in order if self.splits(p, left)), None))
            cost = sum(self.who[r[0]][1] * r[1] for r in runs)
            best = cost if best is None else min(best, cost)
        return best


def text(fraction):
    return str(Fraction(fraction))


def reckon(case):
    model = Model(case)
    total = model.weight(model.everyone)
    cost, jobs, worst, first = model.best(model.everyone, frozenset())
    runs = model.walk(lambda left, now: model.value(left, now)[3])
    result = {
        "tree": {
            "expected": text(cost / total / 10),
            "worst": worst,
            "first": first,
            "working_again": text(model.working_again(runs) / total / 10),
        },
        "orders": [model.order(order) for order in case["orders"]],
        "quickest_order": text(model.quickest_order() / total / 10) if len(model.probes) <= case["permute"] else None,
        "unread": None,
    }
    if first is not None:
        now, _, _ = model.do(first, frozenset())
        again = model.best(model.everyone, now, frozenset([first]))
        result["unread"] = {"expected": text(again[0] / total / 10), "first": again[3]}
    return result


if __name__ == "__main__":
    json.dump([reckon(case) for case in json.load(sys.stdin)], sys.stdout)
