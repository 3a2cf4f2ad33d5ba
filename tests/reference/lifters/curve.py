"""How much heavier the one-rep max is than a load lifted for so many reps."""

import numpy as np

MOST_REPS = 36


def curve(reps):
    """ln(one-rep max / load): the mean of Lombardi, O'Conner and Wathen."""
    reps = np.clip(reps, 0.5, MOST_REPS + 0.5)
    lombardi = 0.1 * np.log(reps)
    o_conner = np.log1p(reps / 40)
    wathen = np.log(100 / (48.8 + 53.8 * np.exp(-0.075 * reps)))
    return (lombardi + o_conner + wathen) / 3


_REPS = np.linspace(0.5, MOST_REPS + 0.5, 3601)
_HEIGHTS = curve(_REPS)


def reps_at(height):
    """The reps, not whole, of a height."""
    return np.interp(height, _HEIGHTS, _REPS)
