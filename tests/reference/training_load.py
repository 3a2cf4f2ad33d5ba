"""Training load by pandas: smoothing with and without gaps, monotony by both deviations, ratios of loads.

The days are made up by a seeded generator: whole numbers in arbitrary units, a third of them rest.
"""

import json

import numpy as np
import pandas as pd

rng = np.random.default_rng(20261102)


def made_up(days, missing):
    loads = rng.integers(60, 900, days) * (rng.random(days) > 0.33)
    loads = pd.Series(loads.astype(float))
    loads[rng.random(days) < missing] = np.nan
    return loads


def plain(series):
    return [None if pd.isna(it) else float(it) for it in series]


smoothed = []
for days, missing in [(10, 0.0), (60, 0.0), (60, 0.2), (90, 0.5)]:
    loads = made_up(days, missing)
    for span in [1, 2, 7, 28]:
        mean = loads.ewm(span=span, adjust=False, ignore_na=False).mean()
        smoothed.append({"loads": plain(loads), "span": span, "smoothed": plain(mean)})

# The documented example of DataFrame.ewm: com=0.5 is a weight of 2/3.
example = pd.Series([0, 1, 2, np.nan, 4])
documented = plain(example.ewm(com=0.5, adjust=False, ignore_na=False).mean())

weeks = []
for _ in range(20):
    week = made_up(7, 0.0)
    weeks.append({
        "loads": plain(week),
        "load": float(week.sum()),
        "monotony_population": float(week.mean() / week.std(ddof=0)),
        "monotony_sample": float(week.mean() / week.std(ddof=1)),
    })

ratios = []
for _ in range(10):
    loads = made_up(28, 0.0)
    week = loads.rolling(7).sum()
    latest, before = float(week.iloc[27]), [float(week.iloc[it]) for it in (20, 13, 6)]
    acute = loads.ewm(span=7, adjust=False).mean().iloc[-1]
    chronic = loads.ewm(span=28, adjust=False).mean().iloc[-1]
    ratios.append({
        "loads": plain(loads),
        "coupled": latest / float(np.mean([latest, *before])),
        "uncoupled": latest / float(np.mean(before)),
        "smoothed": float(acute / chronic),
    })

print(json.dumps(
    {"documented": documented, "ratios": ratios, "smoothed": smoothed, "weeks": weeks},
    indent=1, sort_keys=True,
))
