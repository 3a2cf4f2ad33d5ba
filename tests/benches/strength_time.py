"""Times statsmodels' Kalman filter, and nothing around it, on the rows that stand on stdin as JSON (designs,
values, variances, days since the row before, walk a day, start: means and covariance). Prints the seconds of
the fastest call and the last filtered means.
"""

import json
import sys
import time

import numpy as np
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

CALLS = 30


def main():
    rows = json.load(sys.stdin)
    count, size = len(rows["values"]), len(rows["walk"])
    model = KalmanFilter(k_endog=1, k_states=size, k_posdef=size)
    model.bind(np.array(rows["values"]))
    model["design"] = np.array(rows["designs"]).T[None].copy()
    model["transition"], model["selection"] = np.eye(size), np.eye(size)
    model["obs_cov"] = np.array(rows["variances"]).reshape(1, 1, count)
    gaps = np.append(rows["days"][1:], 0).astype(float)
    model["state_cov"] = np.stack([np.diag(np.array(rows["walk"]) * gap) for gap in gaps], axis=2)
    model.initialize_known(np.array(rows["mean"]), np.array(rows["covariance"]))
    result = model.filter()
    seconds = []
    for _ in range(CALLS):
        begun = time.perf_counter()
        result = model.filter()
        seconds.append(time.perf_counter() - begun)
    print(repr(min(seconds)), *(repr(float(mean)) for mean in result.filtered_state[:, -1]))


main()
