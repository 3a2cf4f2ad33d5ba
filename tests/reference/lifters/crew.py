"""Athletes whose true strength is known, and what they log. Not the model's twin: curves of other shapes,
form with heavy tails, plateaus, and everybody counts and rates in a way of their own. What the numbers are
and which of them are published stands in tests/src/lifters/body.rs, which makes the same crew.

Arrays are (athletes, sessions); loads and strength are natural logarithms of kilograms.
"""

import numpy as np

NONE, COUNTED, RATED, AS_PLANNED, SHORT = range(5)
BEHAVIOURS = ["failure", "short", "sticky", "key", "keymix", "seventy", "flat", "steep", "layoff",
              "typo", "rated"]
TARGETS = np.array([3, 5, 5, 5, 8, 8, 10, 12, 15])


def share(reps, asymptote, at_70, hyperbolic):
    """The share of the one-rep max that goes up so often: a mix of a hyperbola and an exponential."""
    above, at = 1 - asymptote, 0.7 - asymptote
    more, more_at_70 = np.maximum(reps - 1, 0), at_70 - 1
    work = more_at_70 * at / (above - at)
    hyperbola = work / (work + more)
    exponential = (at / above) ** (more / more_at_70)
    mixed = hyperbolic * hyperbola + (1 - hyperbolic) * exponential
    return np.where(reps < 1, 1 + 0.05 * (1 - reps), asymptote + above * mixed)


def simulate(behaviour, athletes, sessions, seed):
    """What was logged (one row a session), the truth, and what a band is scored on."""
    g = np.random.default_rng([seed, BEHAVIOURS.index(behaviour)])
    n = athletes
    uniform, normal = g.uniform, g.standard_normal
    steep = {"flat": 0.7, "steep": 1.4}.get(behaviour, 1.0)
    at_70 = np.clip(16 + (4 if steep == 1 else 2) * normal(n), 6, 26) + 0.5
    asymptote, hyperbolic = uniform(0.2, 0.45, n), uniform(0, 1, n)
    tires, bias = uniform(0.003, 0.02, n), 0.7 * normal(n)

    def capacity(log_ratio):
        want, low, high = np.exp(-log_ratio / steep), np.full(n, -20.0), np.full(n, 200.0)
        for _ in range(36):
            middle = (low + high) / 2
            up = share(middle, asymptote, at_70, hyperbolic) > want
            low, high = np.where(up, middle, low), np.where(up, high, middle)
        return low

    level = np.log(np.clip(80 * np.exp(0.35 * normal(n)), 25, 250))
    a_week, opens = g.integers(1, 4, n), uniform(0.5, 1, n)
    fixed, rates = uniform(0, 1, n) < 0.5, uniform(0, 1, n) < 0.5
    own = TARGETS[g.integers(0, 9, n)]
    first_gain, fall = uniform(0.002, 0.012, n), uniform(0.003, 0.012, n)
    away, slip = g.integers(10, 31, n), g.integers(4, 39, n)
    left, gain, day, in_block = np.zeros(n, int), np.zeros(n), np.zeros(n, int), np.zeros(n, int)
    target, wanted = own.copy(), np.zeros(n)
    slipped, slip_at = np.zeros(n, bool), np.full(n, -1)
    whole, real = ["kind", "day"], ["load", "max", "before", "place", "reps", "left", "target"]
    out = {name: np.zeros((n, sessions), int) for name in whole}
    out |= {name: np.zeros((n, sessions)) for name in real}
    out["truth"] = np.full((n, sessions), -1)
    out["fed"] = np.zeros((n, sessions), bool)
    for t in range(sessions):
        gap = np.maximum(1, np.round(7 / a_week + g.integers(-1, 2, n))).astype(int)
        gap = np.where(uniform(0, 1, n) < 0.04, gap + 7, gap)
        gap = np.where((behaviour == "layoff") & (t == away), gap + 56, gap)
        day = day + (gap if t else 0)
        weeks = np.where(gap > 30, 1, gap / 7)
        # Stretches of progress and plateaus in turn.
        renew = left <= 0
        left = np.where(renew, g.integers(3, 9, n) * a_week, left) - 1
        plateau = np.where(uniform(0, 1, n) < 0.1, -0.003, 0)
        progress = first_gain * 0.5 ** (day / 182)
        gain = np.where(renew, np.where(gain > 0, plateau, progress), gain)
        moved = np.where(gap > 30, -fall * (gap / 7 - 1), gain * weeks)
        level = level + moved + 0.001 * normal(n) * np.sqrt(weeks * a_week)
        new = (in_block >= 4 * a_week) | (t == 0) | (gap > 30)
        in_block = np.where(new, 0, in_block) + 1
        target = np.where(new, np.where(fixed, own, TARGETS[g.integers(0, 9, n)]), target)
        thought = level + 0.05 * normal(n) - 0.05
        wanted = np.where(new, thought - np.log1p(target / 30), wanted + 0.02 * weeks)
        if behaviour == "seventy":
            target = np.full(n, 10)
            again = new | (abs(wanted - level - np.log(0.7)) > 0.05)
            wanted = np.where(again, level + np.log(0.7) + 0.02 * normal(n), wanted)
        load = np.log(np.maximum(1, np.round(np.exp(wanted) / 2.5)) * 2.5)
        form = np.clip(0.015 * g.standard_t(4, n), -0.12, 0.12)
        sets = g.integers(3, 6, n)
        is_open = (uniform(0, 1, n) < opens) & (behaviour != "rated")
        kind, reps, said_left, before = np.zeros(n, int), np.zeros(n), np.zeros(n), np.zeros(n)

        def read(where, *row):
            nonlocal kind, reps, said_left, before
            now = (kind, reps, said_left, before)
            kind, reps, said_left, before = (np.where(where, a, b) for a, b in zip(row, now))

        for j in range(5):
            live, last = j < sets, j == sets - 1
            able = capacity(level + form - tires * j - load)
            done = np.floor(able + (0.2 + 0.05 * np.maximum(able, 0)) * normal(n))
            done = np.maximum(done, 0)
            opened, other = live & last & is_open, live & ~(last & is_open)
            count = done - ((done > 1) & (uniform(0, 1, n) < 1 / 7))
            short = g.integers(1, 4, n)
            if behaviour in ("short", "sticky"):
                least = 1 if behaviour == "short" else target
                count = np.maximum(done - short, np.minimum(done, least))
            presses = {"key": 2, "keymix": 0.6}.get(behaviour, -1)
            press = (done >= target) & (uniform(0, 1, n) < presses)
            scored = last if behaviour == "rated" else opened
            out["truth"][:, t] = np.where(scored, count, out["truth"][:, t])
            out["fed"][:, t] |= opened & ~press
            made, failed, spare = other & (done >= target), other & (done < target), done - target
            said = spare + (0.8 + 0.25 * spare) * normal(n) + bias - 0.15 * spare
            said = np.maximum(0, np.round(said))
            says = rates & (uniform(0, 1, n) < 0.7)
            says = (behaviour == "rated") | (says & (behaviour not in ("key", "keymix", "seventy")))
            rated = says & (said <= 10)
            read(made & ((kind == NONE) | (kind == AS_PLANNED)) & ~rated, AS_PLANNED, target, 0, j)
            read(made & rated, RATED, target, said, j)
            read(failed & last, SHORT, done, 0, j)
            read(opened & ~press, COUNTED, count, 0, j)
            read(opened & press, AS_PLANNED, target, 0, j)
        if behaviour == "typo":
            # Once: pounds for kilograms or the reverse, a quarter off, or ten reps more.
            hit = (t >= slip) & (kind == COUNTED) & ~slipped
            which = g.integers(0, 5, n)
            slipped, slip_at = slipped | hit, np.where(hit, t, slip_at)
            wrong = np.log(np.array([2.2, 1 / 2.2, 1.25, 0.8, 1]))[which]
            load, reps = np.where(hit, load + wrong, load), reps + 10 * (hit & (which == 4))
        row = (kind, day, load, level, before, sets - 1, reps, said_left, target)
        for name, value in zip(whole + real, row):
            out[name][:, t] = value
    score = out["fed"] if behaviour == "keymix" else out["truth"] >= 0
    slip_day = np.arange(sessions)[None] == slip_at[:, None]
    return out | {"score": score & ~slip_day}
