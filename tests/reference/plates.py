"""The least plate handling of ramps, by HiGHS (scipy.optimize.milp): an oracle for the core's search.

A variable counts the plates of one denomination on during sets i..j; a binary says whether any plate
has that stay. Heavier plates lie inside: one that goes on or comes off between two sets excludes every
lighter one that stays on there. All plates come off in the end. A warm-up set picks one of its loads by a
binary; of as few plates moved those count whose loads are the least away from the planned ones. What they
may be is worked out here anew. Masses in grams. Prints JSON; seconds go to standard error, since they
differ from run to run.
"""

import json
import random
import sys
import time
from fractions import Fraction

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

# The same with a warm-up: denominations, most pairs of each, the work load in grams.
FLOATING = [
    (7, 2, 45000),
    (7, 2, 60000),
    (6, 4, 72500),
    (8, 2, 85000),
    (12, 2, 100000),
    (7, 3, 102500),
    (12, 3, 122500),
    (8, 4, 140000),
    (7, 4, 160000),
    (12, 6, 200000),
]
BAR = 20000
SMALLEST_PLATE = 2500
MULTIPLE = 5000
# Sets by the work load in percent of the bar.
SETS = [(1000, 7), (700, 6), (500, 5), (350, 4), (225, 3), (150, 2), (115, 1)]


def warm_up(plates, work):
    """What a side may weigh in each set, with the distance of the load from the plan, and the lightest plate."""
    n = next((sets for percent, sets in SETS if work * 100 >= BAR * percent), 0)
    parts = [n + 3 - step for step in range(1, n + 1)]
    planned = [BAR + Fraction((work - BAR) * sum(parts[:at]), sum(parts)) for at in range(n)]
    large = [BAR + 2 * side for side in sums([row for row in plates if row[0] >= SMALLEST_PLATE])]
    all_loads = [BAR + 2 * side for side in sums(plates)]
    sets = []
    for at, plan in enumerate(planned):
        low = max(plan - Fraction(work, 20), (planned[at - 1] + plan) / 2 if at else 0)
        above = planned[at + 1] if at + 1 < n else work
        high = min(plan + Fraction(work, 20), (plan + above) / 2)

        def inside(load):
            # Halfway up belongs to the heavier neighbour's lower end, and not to that neighbour.
            clear = at == 0 or 2 * load > planned[at - 1] + plan
            return low <= load <= high and clear

        near = [load for load in large if inside(load)]
        even = [load for load in near if load % MULTIPLE == 0 or load == BAR]
        loads, smallest = even or near, SMALLEST_PLATE
        if at == 0:
            loads, smallest = [BAR], 0
        elif not loads:
            loads, smallest = [load for load in all_loads if inside(load)], 0
        if not loads:
            loads = [max(load for load in all_loads if load <= plan)]
        if not sets or loads[0] > max(2 * side + BAR for side, _ in sets[-1][0]):
            sets.append(([((load - BAR) // 2, abs(load - plan)) for load in loads], smallest))
    return sets


def solve(plates, windows):
    """Plates moved, and how far the loads are from the plan in grams."""
    n, d = len(windows), len(plates)
    picks = [(t, side, away) for t, (sides, _) in enumerate(windows) for side, away in sides]
    stays = [(i, j) for i in range(n) for j in range(i, n)]
    s = len(stays)
    many = 2 * d * s
    # In kilograms. One plate is worth more than any distance.
    plate = 1 + sum(max(float(away) for _, away in sides) for sides, _ in windows) / 1000
    cost = np.zeros(many + len(picks))
    cost[: d * s] = 2 * plate
    cost[many:] = [float(away) / 1000 for _, _, away in picks]
    # A heavier plate's stay x..y begins or ends while a lighter one's i..j goes on.
    against = [
        (a, b)
        for a, (x, y) in enumerate(stays)
        for b, (i, j) in enumerate(stays)
        if i < x <= j or i <= y < j
    ]
    pairs_of = [(k, m) for k in range(d) for m in range(k + 1, d)]
    rows = d * s + 3 * n + d * n + len(against) * len(pairs_of)
    matrix = lil_array((rows, many + len(picks)))
    low, high = np.full(rows, -np.inf), np.full(rows, np.inf)
    row = 0
    for k, (_, pairs) in enumerate(plates):
        for at in range(s):
            matrix[row, k * s + at] = 1
            matrix[row, (d + k) * s + at] = -min(pairs, MOST_PLATES)
            high[row] = 0
            row += 1
    for t, (_, smallest) in enumerate(windows):
        on = [at for at, (i, j) in enumerate(stays) if i <= t <= j]
        for k, (mass, pairs) in enumerate(plates):
            for at in on:
                matrix[row, k * s + at] = mass / 250
                matrix[row + 1, k * s + at] = 1
                matrix[row + 3 + k, k * s + at] = 1
            high[row + 3 + k] = pairs if mass >= smallest else 0
        for at, (of, side, _) in enumerate(picks):
            if of == t:
                matrix[row, many + at] = -side / 250
                matrix[row + 2, many + at] = 1
        low[row] = high[row] = 0
        high[row + 1] = MOST_PLATES
        low[row + 2] = high[row + 2] = 1
        row += 3 + d
    for k, m in pairs_of:
        for a, b in against:
            matrix[row, (d + k) * s + a] = matrix[row, (d + m) * s + b] = 1
            high[row] = 1
            row += 1
    most = [min(p, MOST_PLATES) for _, p in plates for _ in stays]
    upper = np.array(most + [1] * (d * s + len(picks)))
    begun = time.perf_counter()
    found = milp(
        cost,
        constraints=LinearConstraint(matrix.tocsr(), low, high),
        integrality=np.ones(many + len(picks)),
        bounds=Bounds(0, upper),
        options={"time_limit": 600, "mip_rel_gap": 0},
    )
    seconds = time.perf_counter() - begun
    if found.status != 0:
        sys.exit(f"not proved: {found.message}")
    chosen = np.round(found.x)
    away = sum(away for (_, _, away), pick in zip(picks, chosen[many:]) if pick)
    return round(2 * chosen[: d * s].sum()), away, seconds


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
        handled, _, seconds = solve(plates, [([(side, 0)], 0) for side in sides])
        print(f"{d} denominations, {n} sets: {handled} in {seconds:.2f} s", file=sys.stderr, flush=True)
        cases.append({"plates": plates, "sides": sides, "handled": handled})
    floating = []
    for d, pairs, work in FLOATING:
        plates = [(mass, chance.randint(1, pairs)) for mass in MASSES[:d]]
        # What the kit builds of that.
        work = max(BAR + 2 * side for side in sums(plates) if BAR + 2 * side <= work)
        warm = warm_up(plates, work)
        handled, away, seconds = solve(plates, warm + [([((work - BAR) // 2, 0)], 0)])
        sides = [[side for side, _ in sides] for sides, _ in warm]
        print(f"{work} g, {len(warm)} before it: {handled}, {float(away)} g away in {seconds:.2f} s", file=sys.stderr, flush=True)
        case = {"plates": plates, "work": work, "may_be": sides, "handled": handled, "away_mg": round(away * 1000)}
        floating.append(case)
    json.dump({"seed": SEED, "cases": cases, "floating": floating}, sys.stdout, sort_keys=True, indent=1)
    print()


main()
