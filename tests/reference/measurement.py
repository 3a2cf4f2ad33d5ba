"""Typical error, standard error of measurement and smallest change by numpy and scipy.

The readings are made up by a seeded generator, in tenths of a unit, some of them below zero.
"""

import json

import numpy as np
from scipy import stats

rng = np.random.default_rng(20261103)

pairs = []
for count, spread, error, start in [(2, 4, 1, 20), (5, 8, 2, 25), (12, 5, 0.7, 3), (40, 12, 3, -8)]:
    true = rng.normal(start, spread, count)
    one = np.round(true + rng.normal(0, error, count), 1)
    two = np.round(true + rng.normal(0.4, error, count), 1)
    change = two - one
    # The within-subject deviation of a two-way analysis of variance is the same number by another way.
    both = np.stack([one, two])
    residual = both - both.mean(axis=0) - both.mean(axis=1, keepdims=True) + both.mean()
    within = np.sqrt((residual**2).sum() / (count - 1))
    pairs.append({
        "first": one.tolist(),
        "second": two.tolist(),
        "mean_change": float(np.mean(change)),
        "sd_of_change": float(np.std(change, ddof=1)),
        "typical": float(within),
        "percent": float(100 * within / both.mean()) if both.mean() > 0 else None,
        "mdc95": float(1.96 * np.std(change, ddof=1)),
    })

sems = [
    {"sd": sd, "reliability": icc, "sem": float(sd * np.sqrt(1 - icc))}
    for sd in [0.5, 3.3, 9.1] for icc in [0.65, 0.9, 0.97, 0.99]
]
print(json.dumps({
    "pairs": pairs,
    "sems": sems,
    # The factor is printed with 1.96; the exact quantile is beside it to show how near that is.
    "quantile": float(stats.norm.ppf(0.975)),
}, indent=1, sort_keys=True))
