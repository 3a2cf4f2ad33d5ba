"""The least plate handling of ramps, by HiGHS (scipy.optimize.milp): an oracle for the core's search.

A variable counts the plates of one denomination on during sets i..j; a binary says whether any plate
has that stay. Heavier plates lie inside: one that goes on or comes off between two sets excludes every
lighter one that stays on there. All plates come off in the end. Masses in grams. Prints JSON; seconds go
to standard error, since they differ from run to run.
"""

import json
import random
import sys
import time

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_array

MASSES = [25000, 20000, 15000, 10000, 5000, 2500, 2000, 1500, 1250, 1000, 500, 250]
MOST_PLATES = 10  # a side, as the core has it
SEED = 20261125
# Denominations, sets, most pairs of each, grid of the sides in grams, shape, and whether HiGHS proves
# an optimum within two minutes: what it does not is drawn and left out.
DRAWN = [
    (6, 5, 2, 250, "any", True),
    (6, 6, 1, 250, "up", True),
    (8, 6, 2, 250, "up", True),
    (8, 7, 1, 250, "any", True),
    (12, 6, 1, 250, "up", True),
    (12, 6, 3, 250, "any", True),
    (12, 8, 1, 1250, "up", True),
    (12, 8, 2, 1250, "updown", True),
    (12, 8, 4, 1250, "any", True),
    (12, 10, 4, 1250, "up", True),
    (12, 10, 2, 1250, "updown", False),
    (12, 10, 1, 1250, "up", False),
    (12, 10, 3, 250, "up", False),
    (12, 10, 6, 1250, "any", True),
]


def solve(plates, sides):
    n, d = len(sides), len(plates)
    stays = [(i, j) for i in range(n) for j in range(i, n)]
    s = len(stays)
    cost = np.zeros(2 * d * s)
    cost[: d * s] = 2
    # A heavier plate's stay x..y begins or ends while a lighter one's i..j goes on.
    against = [
        (a, b)
        for a, (x, y) in enumerate(stays)
        for b, (i, j) in enumerate(stays)
        if i < x <= j or i <= y < j
    ]
    pairs_of = [(k, m) for k in range(d) for m in range(k + 1, d)]
    rows = d * s + 2 * n + d * n + len(against) * len(pairs_of)
    matrix = lil_array((rows, 2 * d * s))
    low, high = np.full(rows, -np.inf), np.full(rows, np.inf)
    row = 0
    for k, (_, pairs) in enumerate(plates):
        for at in range(s):
            matrix[row, k * s + at] = 1
            matrix[row, (d + k) * s + at] = -min(pairs, MOST_PLATES)
            high[row] = 0
            row += 1
    for t, side in enumerate(sides):
        on = [at for at, (i, j) in enumerate(stays) if i <= t <= j]
        for k, (mass, pairs) in enumerate(plates):
            for at in on:
                matrix[row, k * s + at] = mass / 250
                matrix[row + 1, k * s + at] = 1
                matrix[row + 2 + k, k * s + at] = 1
            high[row + 2 + k] = pairs
        low[row] = high[row] = side / 250
        high[row + 1] = MOST_PLATES
        row += 2 + d
    for k, m in pairs_of:
        for a, b in against:
            matrix[row, (d + k) * s + a] = matrix[row, (d + m) * s + b] = 1
            high[row] = 1
            row += 1
    upper = np.array([min(p, MOST_PLATES) for _, p in plates for _ in stays] + [1] * (d * s))
    begun = time.perf_counter()
    found = milp(
        cost,
        constraints=LinearConstraint(matrix.tocsr(), low, high),
        integrality=np.ones(2 * d * s),
        bounds=Bounds(0, upper),
        options={"time_limit": 600, "mip_rel_gap": 0},
    )
    seconds = time.perf_counter() - begun
    if found.status != 0:
        sys.exit(f"not proved: {found.message}")
    return round(found.fun), seconds


def sums(plates):
    reached = {0: 0}
    for mass, pairs in plates:
        for total, used in list(reached.items()):
            for more in range(1, pairs + 1):
                if used + more <= MOST_PLATES:
                    at = total + mass * more
                    reached[at] = min(reached.get(at, used + more), used + more)
    return sorted(reached)


def main():
    chance = random.Random(SEED)
    cases = []
    for d, n, pairs, grid, shape, solved in DRAWN:
        plates = [(mass, chance.randint(1, pairs)) for mass in MASSES[:d]]
        all_sums = [total for total in sums(plates) if total <= 90000 and total % grid == 0]
        sides = [chance.choice(all_sums) for _ in range(n)]
        if shape != "any":
            sides.sort()
        if shape == "updown":
            sides[n * 2 // 3 :] = reversed(sides[n * 2 // 3 :])
        if not solved:
            continue
        handled, seconds = solve(plates, sides)
        print(f"{d} denominations, {n} sets: {handled} in {seconds:.2f} s", file=sys.stderr, flush=True)
        cases.append({"plates": plates, "sides": sides, "handled": handled})
    json.dump({"seed": SEED, "cases": cases}, sys.stdout, sort_keys=True, indent=1)
    print()


main()
