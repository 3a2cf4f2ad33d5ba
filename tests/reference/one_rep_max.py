"""One-rep-max equations in decimal arithmetic of 50 digits, from the coefficients as they were published.

Python's decimal is the reference: no floating number, and the constants are typed again here as text.
"""

import json
from decimal import Decimal, getcontext

getcontext().prec = 50
D = Decimal

EQUATIONS = {
    "epley": lambda w, r: w * (1 + r / 30),
    "brzycki": lambda w, r: 36 * w / (37 - r),
    "lombardi": lambda w, r: w * r ** D("0.10"),
    "mayhew": lambda w, r: 100 * w / (D("52.2") + D("41.9") * (D("-0.055") * r).exp()),
    "oconner": lambda w, r: w * (1 + D("0.025") * r),
    "wathen": lambda w, r: 100 * w / (D("48.8") + D("53.8") * (D("-0.075") * r).exp()),
    "lander": lambda w, r: 100 * w / (D("101.3") - D("2.67123") * r),
    "roberts-bench": lambda w, r: r ** D("0.1") * w + D("1.49"),
    "roberts-leg-extension": lambda w, r: r ** D("0.1") * w + D("1.06"),
    "reynolds-bench": lambda w, r: D("1.1307") * w + D("0.6999"),
    "reynolds-leg-press": lambda w, r: D("1.0970") * w + D("14.2546"),
    "kravitz-squat": lambda w, r: D("159.9") + D("0.103") * r * w - D("11.552") * r,
    "kravitz-bench": lambda w, r: D("90.66") + D("0.085") * r * w - D("5.306") * r,
    "kravitz-deadlift": lambda w, r: D("156.08") + D("0.098") * r * w - D("12.106") * r,
}
REPS = {
    "roberts-bench": range(4, 11),
    "roberts-leg-extension": range(4, 11),
    "reynolds-bench": [5],
    "reynolds-leg-press": [5],
}
LOADS = ["17.5", "102.5", "240"]

rows = []
for name, equation in EQUATIONS.items():
    for reps in REPS.get(name, [1, 2, 3, 5, 8, 10, 12, 15, 20, 36]):
        for load in LOADS:
            kg = equation(D(load), D(reps))
            # Far from its fit an equation may give less than was lifted: it has to be refused there.
            rows.append({
                "equation": name,
                "load_tenths": int(D(load) * 10),
                "reps": reps,
                "kg": float(kg) if kg >= D(load) else None,
            })
print(json.dumps({"estimates": rows}, indent=1, sort_keys=True))
