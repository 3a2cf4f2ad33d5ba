"""How much of the truth bands and intervals hold."""

import numpy as np

from .curve import MOST_REPS

WIDEST = 0.15


def score(log, found, low, high):
    """In percent: reps inside their band in sessions 2 to 9, 10 to 20, 21 and later; the band's width in
    counts and the athletes whose own share is 65 to 95, from session 10 on; the one-rep max inside its
    interval in sessions 2 to 9 and from 10 on, its root mean square error, the median half width; and of
    what is narrow enough to be shown the share, the share inside, and the half width."""
    t, truth = np.arange(log["day"].shape[1])[None] + 1, np.minimum(log["truth"], MOST_REPS)
    told = np.isfinite(found["mid"])
    scored, inside = log["score"] & np.isfinite(low), (truth >= low) & (truth <= high)
    parts = [scored & (t < 10), scored & (t >= 10) & (t <= 20), scored & (t > 20)]
    late = scored & (t >= 10)
    enough = late.sum(1) >= 12
    own = (inside & late).sum(1)[enough] / late.sum(1)[enough]
    holds = (log["max"] >= found["low"]) & (log["max"] <= found["high"])
    half = (found["high"] - found["low"]) / 2
    later = told & (t >= 10)
    shown = later & (half <= WIDEST)
    off = (found["mid"] - log["max"])[later]
    return {
        "early": 100 * inside[parts[0]].mean(),
        "middle": 100 * inside[parts[1]].mean(),
        "late": 100 * inside[parts[2]].mean(),
        "width": (high - low + 1)[late].mean(),
        "athletes": 100 * ((own >= 0.65) & (own <= 0.95)).mean(),
        "max_early": 100 * holds[told & (t < 10)].mean(),
        "max_late": 100 * holds[later].mean(),
        "max_error": 100 * np.sqrt((off**2).mean()),
        "max_half": 100 * np.median(half[later]),
        "shown": 100 * shown.sum() / later.sum(),
        "shown_holds": 100 * holds[shown].mean(),
        "shown_half": 100 * np.median(half[shown]),
    }
