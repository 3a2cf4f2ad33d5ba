"""Theil-Sen slopes by scipy and the Mann-Kendall test by pymannkendall.

Published series first, then made-up ones by a seeded generator: with ties, with gaps in time, with
several readings of one time, rising, falling and going nowhere.
"""

import json

import numpy as np
import pymannkendall
from scipy import stats

rng = np.random.default_rng(20261104)


def number(value):
    """A number, or nothing where the library has none to give."""
    return float(value) if np.isfinite(value) else None


def theil_sen(times, values, confidence):
    separate = stats.theilslopes(values, times, confidence, method="separate")
    joint = stats.theilslopes(values, times, confidence, method="joint")
    return {
        "times": [float(it) for it in times],
        "values": [float(it) for it in values],
        "confidence": confidence,
        "slope": float(separate.slope),
        "low": number(separate.low_slope),
        "high": number(separate.high_slope),
        "intercept": float(separate.intercept),
        "joint_intercept": float(joint.intercept),
    }


def mann_kendall(values):
    found = pymannkendall.original_test(values)
    # The package takes one less the distribution, which loses the digits of small tails.
    p = float(2 * stats.norm.sf(abs(found.z)))
    assert abs(p - found.p) < 1e-12
    return {
        "values": [float(it) for it in values],
        "score": int(found.s),
        "variance": float(found.var_s),
        "z": float(found.z),
        "p": p,
    }


published = [
    [83, 83, 85, 85, 86, 87, 87],
    [80, 81, 82, 82, 82, 84, 86],
    [82, 83, 84, 85, 84, 85, 86],
    [86, 87, 87, 87, 87, 87, 86],
    [80, 79, 79, 78, 78, 79, 78],
    [83, 84, 82, 81, 83, 83, 82],
    [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7],
]
slopes = [theil_sen(range(1, len(it) + 1), it, 0.95) for it in published]
slopes.append(theil_sen([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], 0.93))
tests = [mann_kendall(it) for it in published]

for count in [3, 4, 5, 6, 8, 13, 30, 75]:
    for rise in [-0.3, 0.0, 0.2]:
        times = np.cumsum(rng.integers(1, 5, count))
        values = np.round(20 + rise * times + rng.normal(0, 1.5, count), 1)
        for confidence in [0.8, 0.95]:
            slopes.append(theil_sen(times, values, confidence))
        tests.append(mann_kendall(values))
        # Whole numbers and shared times: many ties.
        times = np.sort(rng.integers(0, max(3, count // 2), count))
        values = np.round(10 + rise * times + rng.normal(0, 1, count))
        if len(set(times)) > 1:
            slopes.append(theil_sen(times, values, 0.9))
        tests.append(mann_kendall(values))
for count in [2, 10, 60]:
    tests.append(mann_kendall(np.arange(count)))
    tests.append(mann_kendall(-np.arange(count)))

print(json.dumps({"mann_kendall": tests, "theil_sen": slopes}, indent=1, sort_keys=True))
