# SPDX-License-Identifier: GPL-3.0-or-later
"""Solves boost problems printed as JSON with another solver (HiGHS through scipy.optimize.milp)
and holds the stated optimum against it. Prints one line for each file: name, ours, theirs.
Called with a folder and the relative gap that the other solver may leave.
Knows nothing of the program but the published form of its JSON."""
import json
import pathlib
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix


def solved(problem):
    options = problem["options"]
    place = {o["id"]: i for i, o in enumerate(options)}
    rows, columns, values, bounds = [], [], [], []

    def at_most(terms, limit):
        row = len(bounds)
        for i, value in terms:
            rows.append(row)
            columns.append(i)
            values.append(value)
        bounds.append(limit)

    limits = problem["limits"]
    for item, count in limits["gear"].items():
        at_most([(i, o["uses"].get(item, 0)) for i, o in enumerate(options)], count)
    if limits["hours"] is not None:
        at_most([(i, o["uses"]["hours"]) for i, o in enumerate(options)], limits["hours"])
    for donor, cap in limits["donors"].items():
        for what in ("bees", "brood_frames", "stack"):
            at_most([(i, o["takes"][what]) for i, o in enumerate(options)
                     if o["donor_colony"] == donor], cap[what])
    for rule in problem["rules"]:
        coefs = rule.get("coefs") or [1] * len(rule["ids"])
        at_most([(place[n], c) for n, c in zip(rule["ids"], coefs)], rule["at_most"])
    low = np.zeros(len(options))
    high = np.ones(len(options))
    for name in problem["pins"]:
        low[place[name]] = 1
    for name in problem["forbids"]:
        high[place[name]] = 0
    matrix = coo_matrix((values, (rows, columns)), shape=(len(bounds), len(options)))
    result = milp(-np.array([o["net"] for o in options]),
                  constraints=LinearConstraint(matrix.tocsr(), -np.inf, np.array(bounds) + 1e-9),
                  integrality=np.ones(len(options)), bounds=Bounds(low, high),
                  options={"mip_rel_gap": float(sys.argv[2])})
    if result.x is None:
        raise SystemExit("the second solver found no plan: " + result.message)
    return -result.fun


for file in sorted(pathlib.Path(sys.argv[1]).glob("*.json")):
    data = json.loads(file.read_text())
    chosen = set(data["chosen"])
    summed = sum(o["net"] for o in data["options"] if o["id"] in chosen)
    if abs(summed - data["objective"]) > 1e-6:
        raise SystemExit(f"{file.name}: the chosen options sum to {summed}")
    print(file.name, repr(data["objective"]), repr(solved(data)))
