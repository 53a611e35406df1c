"""The quickest order of looks behind access jobs, told to OR-Tools CP-SAT (pip install ortools) as one machine with precedences.

Takes the model as JSON in its argument: jobs and looks with minutes (tenths), what each needs, the weight that each look catches, and
the weight of the rest, which waits for all. Writes expected minutes, status and seconds. A run that finds a cause pays what was done by then.
"""

import json
import sys
import time

from ortools.sat.python import cp_model


def main():
    case = json.loads(sys.argv[1])
    model = cp_model.CpModel()
    needed, todo = set(), [j for look in case["looks"] for j in look["needs"]]
    while todo:
        job = todo.pop()
        if job not in needed:
            needed.add(job)
            todo.extend(case["jobs"][job]["needs"])
    horizon = sum(look["minutes"] for look in case["looks"]) + sum(case["jobs"][j]["minutes"] for j in needed)
    intervals = []

    def task(minutes, needs, name):
        start = model.new_int_var(0, horizon, f"s{name}")
        end = model.new_int_var(0, horizon, f"e{name}")
        intervals.append(model.new_interval_var(start, minutes, end, f"i{name}"))
        return start, end, needs

    jobs = {j: task(case["jobs"][j]["minutes"], case["jobs"][j]["needs"], f"j{j}") for j in sorted(needed)}
    looks = [task(look["minutes"], look["needs"], f"l{i}") for i, look in enumerate(case["looks"])]
    for start, _, needs in list(jobs.values()) + looks:
        for job in needs:
            model.add(start >= jobs[job][1])
    model.add_no_overlap(intervals)
    total = case["rest"] + sum(look["weight"] for look in case["looks"])
    model.minimize(
        sum(look["weight"] * end for look, (_, end, _) in zip(case["looks"], looks)) + case["rest"] * horizon
    )
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = case["seconds"]
    begin = time.perf_counter()
    status = solver.solve(model)
    seconds = time.perf_counter() - begin
    minutes = solver.objective_value / total / 10
    print(json.dumps({"minutes": round(minutes, 4), "status": solver.status_name(status), "seconds": round(seconds, 3)}))


main()
