"""The strength model, once more and apart from the core: a filter of four numbers with partial gains and
limits, the interval of the one-rep max, and bands of reps that learn how wide they must be."""

import numpy as np
from scipy.stats import norm

from .crew import AS_PLANNED, COUNTED, RATED, SHORT
from .curve import MOST_REPS, curve, reps_at

PER_DAY = 2e-5
SLOPE, SLOPE_PER_DAY, SLOPE_GAIN = 0.3, 1e-4, 0.05
HIDDEN, HIDDEN_SPREAD, RATING_SPREAD = 0.01, 0.025, 0.025
OPEN_ERROR, RATING_ERROR, RATING_ERROR_FAR = 0.022, 1.25, 0.36
TIRES, USUAL_ROWS, LARGEST = 0.01, 8.0, 3.0
START_SPARE, START_SPREAD = 0.05, 0.15
KEPT_DAYS, FALL, FALL_SPREAD, MOST_FALL = 14, 0.006 / 7, 0.004 / 7, 0.1
OUTSIDE, STEP, LEAST_OUTSIDE, MOST_OUTSIDE = 0.2, 0.05, 0.01, 0.6


def above(mean, variance, limit):
    """Mean and variance of a normal above a limit."""
    d = np.clip((limit - mean) / np.sqrt(variance), -30, 30)
    mills = np.exp(norm.logpdf(d) - norm.logsf(d))
    left = np.maximum(1 - mills * (mills - d), 1e-6)
    return mean + np.sqrt(variance) * mills, variance * left


def update(m, P, H, R, y, where, gains, largest, limit=False):
    """One row of every athlete `where`; a limit lies below its value. Gives the surprise in deviations."""
    PH = np.einsum("nij,nj->ni", P, H)
    S, foretold = np.einsum("ni,ni->n", H, PH) + R, np.einsum("ni,ni->n", H, m)
    value, left = above(foretold, S, y) if limit else (y, 0 * S)
    e = np.clip(value - foretold, -largest * np.sqrt(S), largest * np.sqrt(S))
    K, parts = PH / S[:, None], gains[:, None] + gains[None] - gains[:, None] * gains[None]
    moved = m + gains * K * e[:, None]
    surer = P - parts * np.einsum("ni,nj->nij", K, K) * (S - left)[:, None, None]
    kept = where[:, None]
    return np.where(kept, moved, m), np.where(kept[..., None], surer, P), e / np.sqrt(S)


def run(log):
    """Foretells each session from those before it, then takes it in."""
    n, sessions = log["day"].shape
    spreads = [START_SPREAD, SLOPE, HIDDEN_SPREAD, RATING_SPREAD]
    m = np.tile([0, 1.0, HIDDEN, 0.0], (n, 1))
    P = np.tile(np.diag(np.square(spreads)), (n, 1, 1))
    gains = np.array([1.0, SLOPE_GAIN, 0.0, 0.0])
    known, informed = np.zeros(n, bool), np.zeros(n, bool)
    ref, squares, count = np.zeros(n), np.zeros(n), np.zeros(n)
    before = log["day"][:, 0]
    out = {k: np.full((n, sessions), np.nan) for k in ("mu", "sd", "mid", "low", "high")}
    for t in range(sessions):
        kind, load, reps, said = (log[k][:, t] for k in ("kind", "load", "reps", "left"))
        gap, before = log["day"][:, t] - before, log["day"][:, t]
        off = np.maximum(gap - KEPT_DAYS, 0)
        scale = (USUAL_ROWS + squares) / (USUAL_ROWS + count)
        m[:, 0] -= np.minimum(FALL * off, MOST_FALL) * m[:, 1] * known
        P[:, 0, 0] += (PER_DAY * gap + (FALL_SPREAD * off) ** 2) * known
        P[:, 1, 1] += SLOPE_PER_DAY * gap * known
        exact, least = np.isin(kind, (COUNTED, RATED, SHORT)), kind == AS_PLANNED
        first = ~known & (exact | least)
        ref, known = np.where(first, load, ref), known | first
        m[:, 0] = np.where(first, curve(log["target"][:, t]) + START_SPARE, m[:, 0])
        x, one, R = load - ref, np.ones(n), OPEN_ERROR**2 * scale
        H = np.stack([one, -x, -one, 0 * one], 1)
        told = known & ~first & informed
        mu = np.einsum("ni,ni->n", H, m) - TIRES * log["place"][:, t]
        out["mu"][:, t] = np.where(told, mu, np.nan)
        out["sd"][:, t] = np.where(told, np.sqrt(np.einsum("ni,nij,nj->n", H, P, H) + R), np.nan)
        for name, value in zip(("mid", "low", "high"), fieller(m, P)):
            out[name][:, t] = np.where(told, ref + value, np.nan)
        all_reps = np.minimum(reps + said * (kind == RATED), MOST_REPS)
        tired = TIRES * log["before"][:, t]
        rep = curve(all_reps + 0.5) - curve(all_reps - 0.5)
        rating = (RATING_ERROR + RATING_ERROR_FAR * np.maximum(said - 5, 0)) * rep
        Hr = H.copy()
        Hr[:, 2], Hr[:, 3] = -1.0 * (kind == COUNTED), -1.0 * (kind == RATED)
        Rr = R + np.where(kind == RATED, rating, 0) ** 2
        m, P, z = update(m, P, Hr, Rr, curve(all_reps) + tired, exact, gains, LARGEST)
        later = exact & ~first
        squares, count, informed = squares + z * z * later, count + later, informed | exact
        limit = curve(reps - 0.5) + tired
        m, P, _ = update(m, P, H * [1, 1, 0, 0], R, limit, least, gains, LARGEST, limit=True)
    return out


def fieller(m, P):
    """The ratio of the first number to the second, and its interval; none where that has no ends."""
    a, s, z2 = m[:, 0], m[:, 1], norm.ppf(0.9) ** 2
    A, B = s * s - z2 * P[:, 1, 1], a * s - z2 * P[:, 0, 1]
    root = np.sqrt(np.maximum(B * B - A * (a * a - z2 * P[:, 0, 0]), 0))
    there = A > 0
    A = np.where(there, A, 1)
    return (np.where(there, end, np.nan) for end in (a / s, (B - root) / A, (B + root) / A))


def band(mu, sd, z):
    """Whole reps whose outer edges, half a rep out, lie nearest to mu -+ z sd."""
    likely = np.round(reps_at(mu))
    low = np.round(reps_at(mu - z * sd) + 0.5)
    high = np.round(reps_at(mu + z * sd) - 0.5)
    low = np.where(mu - z * sd <= curve(0.5), 0, low)
    return np.minimum(low, likely), np.maximum(high, likely)


def bands(log, found):
    """The bands, and the share outside that each was made for."""
    n, sessions = log["day"].shape
    outside = np.full(n, OUTSIDE)
    low, high, shares = (np.full((n, sessions), np.nan) for _ in range(3))
    for t, told in enumerate(np.isfinite(found["mu"]).T):
        mu = np.where(told, found["mu"][:, t], 0.2)
        sd = np.where(told, found["sd"][:, t], 0.1)
        ends = band(mu, sd, norm.isf(outside / 2))
        low[:, t], high[:, t] = (np.where(told, end, np.nan) for end in ends)
        shares[:, t] = np.where(told, outside, np.nan)
        counted = log["kind"][:, t] == COUNTED
        seen = np.minimum(np.where(counted, log["reps"][:, t], log["truth"][:, t]), MOST_REPS)
        missed = (seen < ends[0]) | (seen > ends[1])
        moved = np.clip(outside + STEP * (OUTSIDE - missed), LEAST_OUTSIDE, MOST_OUTSIDE)
        outside = np.where(told & log["fed"][:, t], moved, outside)
    return low, high, shares
