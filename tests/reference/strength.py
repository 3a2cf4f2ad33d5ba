"""The local level model by statsmodels' Kalman filter, its drift by statsmodels' generalised least
squares, and normal points by scipy: what `core/src/load/strength` is held against.

    python -m pip install -r requirements.txt
    python strength.py > strength.json
"""

import json
import math
import sys

import numpy as np
import statsmodels.api as sm
from scipy.stats import norm
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter


def kalman(days, values, variances, per_day, start):
    """A time-varying local level model; `start` is (mean, variance), or None for exactly diffuse."""
    count = len(days)
    model = KalmanFilter(k_endog=1, k_states=1)
    model.bind(np.array([np.nan if y is None else y for y in values], dtype=float))
    model["design"] = np.ones((1, 1))
    model["transition"] = np.ones((1, 1))
    model["selection"] = np.ones((1, 1))
    model["obs_cov"] = np.array(variances, dtype=float).reshape(1, 1, count)
    gaps = np.append(np.diff(days), 0)
    model["state_cov"] = (per_day * gaps.astype(float)).reshape(1, 1, count)
    # Never take the filter as converged: its variances are compared to the last digits.
    model.tolerance = 0
    if start is None:
        model.initialize("diffuse")
    else:
        model.initialize_known(np.array([start[0]]), np.array([[start[1]]]))
    return model


def case(days, values, variances, per_day, start):
    result = kalman(days, values, variances, per_day, start).filter()
    seen = [y is not None for y in values]
    known = np.arange(len(days)) >= (result.nobs_diffuse if start is None else 0)

    def column(row, where):
        return [float(x) if w else None for x, w in zip(row, where)]

    out = {
        "days": [int(d) for d in days],
        "values": values,
        "variances": [float(v) for v in variances],
        "per_day": per_day,
        "start": start,
        "log_likelihood": float(result.llf),
        "predicted_mean": column(result.predicted_state[0, :-1], known),
        "predicted_variance": column(result.predicted_state_cov[0, 0, :-1], known),
        "innovation": column(result.forecasts_error[0], known & np.array(seen)),
        "innovation_variance": column(result.forecasts_error_cov[0, 0], known & np.array(seen)),
        "filtered_mean": [float(x) for x in result.filtered_state[0]],
        "filtered_variance": [float(x) for x in result.filtered_state_cov[0, 0]],
    }
    if start is None:
        # Before the first observation an exactly diffuse level has no mean.
        first = seen.index(True)
        for name in ("filtered_mean", "filtered_variance"):
            out[name][:first] = [None] * first
        out["drift"] = drift(days, values, variances, per_day)
    return out


def drift(days, values, variances, per_day):
    """The slope on the days by generalised least squares with the walk's whole covariance."""
    at = [row for row, y in enumerate(values) if y is not None]
    t = np.array(days, dtype=float)[at]
    y = np.array([values[row] for row in at])
    since = t - t[0]
    covariance = per_day * np.minimum.outer(since, since) + np.diag(np.array(variances)[at])
    fit = sm.GLS(y, sm.add_constant(since), sigma=covariance).fit()
    variance = fit.normalized_cov_params[1, 1]
    return [float(fit.params[1]), float(variance)]


def generated(seed, count, missing, first_missing):
    """Irregular days, some of them repeated, two kinds of error, and days with nothing seen."""
    chance = np.random.default_rng(seed)
    days = np.cumsum(chance.choice([0, 1, 2, 3, 4, 7, 30], size=count))
    level = 4.4 + np.cumsum(chance.normal(0, 0.01, size=count))
    variances = chance.choice([0.025**2, 0.042**2, 0.07**2], size=count)
    values = [float(x) for x in level + chance.normal(0, np.sqrt(variances))]
    for gone in chance.choice(np.arange(1, count), size=missing, replace=False):
        values[gone] = None
    if first_missing:
        values[0] = None
    return [int(d) for d in days], values, [float(v) for v in variances]


def main():
    nile = [float(y) for y in sm.datasets.nile.load_pandas().data["volume"]]
    years = list(range(1871, 1971))
    flat = [15099.0] * len(nile)
    irregular = generated(20260111, 60, 9, True)
    known = generated(20260112, 60, 9, False)
    out = {
        "nile_diffuse": case(years, nile, flat, 1469.1, None),
        "nile_wide_prior": case(years, nile, flat, 1469.1, [0.0, 1e7]),
        "irregular_diffuse": case(*irregular, 1.5e-5, None),
        "irregular_known": case(*known, 1.5e-5, [4.1, 1.0]),
        "deviations": [float(norm.ppf(0.5 + percent / 200)) for percent in range(1, 100)],
    }
    assert all(math.isfinite(x) for x in out["deviations"])
    json.dump(out, sys.stdout, indent=1, sort_keys=True)
    print()


main()
