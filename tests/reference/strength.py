"""What `core/src/load/strength` is held against: normal points and limits by scipy, steps of the filter by
the long form and by statsmodels' Kalman filter, Fieller's ends by a root finder, the share outside by a
package for adaptive conformal inference, the drift by statsmodels' generalised least squares, and the
whole model written once more in `lifters`, row by row and as a table of what its bands hold.

    python -m pip install -r requirements.txt
    python strength.py > strength.json
"""

import json
import sys

import numpy as np
import statsmodels.api as sm
from aci import ACI
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import norm
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

from lifters.crew import AS_PLANNED, BEHAVIOURS, simulate
from lifters.model import bands, run
from lifters.score import score

PARTS = [1.0, 0.05, 0.0, 0.0]

# The table is reported on this seed, and nothing was ever chosen on it.
SEED, ATHLETES, SESSIONS = 41, 6000, 40
# Rows of so many of each behaviour are printed.
SHOWN = 2


def limits():
    """Mean and variance of a standard normal above limits, by numerical integration, to eight deviations
    out. Taken from the limit on, and densities relative to their highest, so that nothing gets lost far
    out."""
    rows = []
    for limit in np.linspace(-8, 8, 33):
        def density(v, limit=limit):
            return np.exp(-0.5 * ((limit + v) ** 2 - max(limit, 0) ** 2))

        def moment(power, around=0.0, density=density, limit=limit):
            def part(v):
                return (v - around) ** power * density(v)

            edges = max(-limit, 0) + np.array([-9, -4, -2, -1, 0, 0.1, 0.3, 1, 2, 4, 9, 14])
            edges = [0.0, *edges[edges > 0]]
            return sum(quad(part, *pair, epsabs=0, epsrel=1e-10)[0]
                       for pair in zip(edges, edges[1:]))

        mass = moment(0)
        mean = moment(1) / mass
        rows.append([limit, limit + mean, moment(2, mean) / mass])
    return rows


def covariance(chance):
    root = chance.standard_normal((4, 4))
    return root @ root.T


def steps(chance):
    """Single steps with partial gains: P after them is (I - K H) P (I - K H)' + K R K'."""
    cases = []
    for parts in [PARTS, [1.0, 1.0, 1.0, 1.0], [1.0, 0.5, 0.25, 0.0], [0.0] * 4] * 3:
        P, H, m = covariance(chance), chance.standard_normal(4), chance.standard_normal(4)
        R, y = float(chance.uniform(0.1, 2)), float(chance.standard_normal())
        K = np.array(parts) * (P @ H) / (H @ P @ H + R)
        rest = np.eye(4) - np.outer(K, H)
        cases.append({
            "mean": m, "covariance": P, "design": H, "variance": R, "value": y, "gains": parts,
            "after_mean": m + K * (y - H @ m),
            "after_covariance": rest @ P @ rest.T + R * np.outer(K, K),
        })
    return cases


def kalman(chance, rows=60):
    """An ordinary Kalman filter whose design and errors vary, with days of unequal length."""
    designs, values = chance.standard_normal((rows, 4)), chance.standard_normal(rows)
    variances, days = chance.uniform(0.05, 1, rows), chance.integers(0, 8, rows)
    walk, start = np.array([0.02, 0.01, 0.003, 0.0]), covariance(chance)
    model = KalmanFilter(k_endog=1, k_states=4, k_posdef=4)
    model.bind(values)
    model["design"] = designs.T[None]
    model["transition"], model["selection"] = np.eye(4), np.eye(4)
    model["obs_cov"] = variances.reshape(1, 1, rows)
    model["state_cov"] = np.stack([np.diag(walk * d) for d in np.append(days[1:], 0)], axis=2)
    # Never take the filter as converged: its variances are compared to the last digits.
    model.tolerance = 0
    model.initialize_known(np.zeros(4), start)
    found = model.filter()
    return {
        "designs": designs, "values": values, "variances": variances, "days": days, "walk": walk,
        "start": start, "means": found.filtered_state.T,
        "covariances": np.moveaxis(found.filtered_state_cov, 2, 0),
        "foretold": found.forecasts[0], "forecast_variances": found.forecasts_error_cov[0, 0],
    }


def fieller(chance):
    """Ratios at which the distance to 0 is so many of its standard deviations, by a root finder."""
    cases = []
    while len(cases) < 20:
        over, under = chance.uniform(-0.6, 0.6), chance.uniform(0.05, 1.2)
        sds, shared = chance.uniform(0.01, 0.3, 2), chance.uniform(-0.9, 0.9)
        shared *= sds[0] * sds[1]
        reach = norm.ppf(0.9)

        def far(t, over=over, under=under, sds=sds, shared=shared):
            variance = sds[0] ** 2 - 2 * t * shared + t * t * sds[1] ** 2
            return (over - t * under) ** 2 - reach**2 * variance

        ends = None
        if under > reach * sds[1]:
            ends = [brentq(far, over / under, over / under + way, xtol=1e-15, rtol=1e-14)
                    for way in (-1e3, 1e3)]
        cases.append({"over": over, "under": under, "over_variance": sds[0] ** 2, "shared": shared,
                      "under_variance": sds[1] ** 2, "ends": ends})
    assert any(case["ends"] is None for case in cases)
    return cases


def adaptive(chance):
    """The share outside after each of some sets, by the package's plain method. A set outside its band is
    one whose score is larger than all before it, one inside has the score 0."""
    online = ACI(alpha=0.2, gamma=0.05, method="simple", score_fn=lambda y, _: abs(y))
    outside = chance.uniform(0, 1, 60) < 0.2
    shares = []
    for at, missed in enumerate(outside):
        online.issue(0.0)
        online.observe(float(at + 1) if missed else 0.0)
        shares.append(online.alpha_t)
    assert list(online.err_history) == [float(missed) for missed in outside]
    # The core's own limits are never reached: they are not the package's.
    assert 0.01 < min(shares) and max(shares) < 0.6
    return {"outside": [bool(missed) for missed in outside], "shares": shares}


def drift(days, values, variances, per_day):
    """The slope on the days by generalised least squares with the walk's whole covariance."""
    t, y = np.array(days, dtype=float), np.array(values)
    since = t - t[0]
    errors = per_day * np.minimum.outer(since, since) + np.diag(variances)
    fit = sm.GLS(y, sm.add_constant(since), sigma=errors).fit()
    return {
        "days": days, "values": values, "variances": variances, "walk": per_day,
        "per_day": fit.params[1], "variance": fit.normalized_cov_params[1, 1],
    }


def drifts(chance):
    """A century of the Nile (Durbin and Koopman, chapter 2), and irregular days, some of them repeated."""
    nile = sm.datasets.nile.load_pandas().data["volume"].to_numpy()
    century = drift(np.arange(1871, 1971), nile, np.full(100, 15099.0), 1469.1)
    days = np.cumsum(chance.choice([0, 1, 2, 3, 4, 7, 30], size=60))
    level = 4.4 + np.cumsum(chance.normal(0, 0.01, size=60))
    variances = chance.choice([0.025**2, 0.042**2, 0.07**2], size=60)
    values = chance.normal(level, np.sqrt(variances))
    return {"nile": century, "irregular": drift(days, values, variances, 1.5e-5)}


def crew():
    """Rows of some athletes with what was foretold of each, and the table of all."""
    series, table = {}, {}
    for behaviour in BEHAVIOURS:
        log = simulate(behaviour, ATHLETES, SESSIONS, SEED)
        found = run(log)
        low, high, shares = bands(log, found)
        table[behaviour] = {k: round(float(v), 1) for k, v in score(log, found, low, high).items()}
        opened = (log["truth"] >= 0) & (behaviour != "rated")
        pressed = (log["kind"] == AS_PLANNED) & opened
        columns = [log["kind"], log["day"], np.round(np.exp(log["load"]), 9), log["reps"], log["left"],
                   log["target"], log["before"], log["place"], pressed,
                   found["mu"], found["sd"], found["mid"], found["low"], found["high"],
                   low, high, shares]
        series[behaviour] = [
            [[shown(column[who, t]) for column in columns] for t in range(SESSIONS)]
            for who in range(SHOWN)
        ]
    return {"series": series, "table": table}


def shown(value):
    if isinstance(value, np.ndarray):
        return [shown(part) for part in value]
    if isinstance(value, (np.bool_, np.integer)):
        return int(value)
    if isinstance(value, (float, np.floating)):
        return None if np.isnan(value) else int(value) if float(value).is_integer() else float(value)
    if isinstance(value, dict):
        return {key: shown(part) for key, part in value.items()}
    return [shown(part) for part in value] if isinstance(value, list) else value


def written(value, room=100):
    """JSON with a line for each part that fits on one."""
    line = json.dumps(value)
    if len(line) <= room or not isinstance(value, (dict, list)):
        return line
    if isinstance(value, dict):
        parts = [f"{json.dumps(key)}: {written(part)}" for key, part in value.items()]
        return "{\n" + ",\n".join(parts) + "\n}"
    if all(not isinstance(part, (dict, list)) for part in value):
        return line
    return "[\n" + ",\n".join(written(part) for part in value) + "\n]"


def main():
    chance = np.random.default_rng(20_271_127)
    out = {
        "deviations": [float(norm.isf(percent / 200)) for percent in range(1, 101)],
        "limits": limits(),
        "steps": steps(chance),
        "kalman": kalman(chance),
        "fieller": fieller(chance),
        "adaptive": adaptive(chance),
        "drifts": drifts(chance),
        "crew": crew(),
    }
    sys.stdout.write(written(shown(out)) + "\n")


main()
