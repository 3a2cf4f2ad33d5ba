"""Times statsmodels' Kalman filter, and nothing around it, on the series that stands on stdin as JSON
(days, values, variances, per_day, start: mean and variance). Prints the seconds of the fastest call
and the last filtered mean.
"""

import json
import sys
import time

import numpy as np
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

CALLS = 100


def main():
    series = json.load(sys.stdin)
    count = len(series["days"])
    model = KalmanFilter(k_endog=1, k_states=1)
    model.bind(np.array(series["values"]))
    for name in ("design", "transition", "selection"):
        model[name] = np.ones((1, 1))
    model["obs_cov"] = np.array(series["variances"]).reshape(1, 1, count)
    gaps = np.append(np.diff(series["days"]), 0).astype(float)
    model["state_cov"] = (series["per_day"] * gaps).reshape(1, 1, count)
    mean, variance = series["start"]
    model.initialize_known(np.array([mean]), np.array([[variance]]))
    result = model.filter()
    seconds = []
    for _ in range(CALLS):
        begun = time.perf_counter()
        result = model.filter()
        seconds.append(time.perf_counter() - begun)
    print(repr(min(seconds)), repr(float(result.filtered_state[0, -1])))


main()
