## Range of motion. Numbers come with their sign and, where none follows, their unit.

# What a change amounts to. $error is the measurement error, as "1.9 cm".
no-change = no change
within-error = { $change }, within the measurement error ({ $error })
beyond-error = { $change }, a change (measurement error { $error })

# The trend of readings over weeks: the slope with its unit, where it lies in 95 cases of 100, and the chance of such a
# trend if there were none.
trend = { $readings ->
    [one] { $week } a week, p { $p }, from { $readings } reading
   *[other] { $week } a week, p { $p }, from { $readings } readings
}
trend-between = { $readings ->
    [one] { $week } a week ({ $low } to { $high }), p { $p }, from { $readings } reading
   *[other] { $week } a week ({ $low } to { $high }), p { $p }, from { $readings } readings
}

## Time under stretch in a week beside a published dose, for a part of the body. $time as "1 min 20 s".

five-minutes-done = 5 min a week over 5 days: done
# More than that was not seen to add range.
five-minutes-plateau = 5 min a week over 5 days and more; beyond 10 min a week, studies saw no further gain
five-minutes-time = at least { $time } of 5 min a week on each side
five-minutes-time-days = at least { $time } of 5 min a week on each side, on { $days } of 5 days
five-minutes-days = 5 min a week on each side done, but only on { $days } of 5 days
minute-done = 1 min on 2 days: done
minute-plateau = 1 min on 2 days and more; beyond 10 min a week, studies saw no further gain
minute-time = 1 min on each side on { $days } of 2 days; { $time } to go

## Load and holds

# $times as "1.20".
load-compared = recent load is { $times } times that of the weeks before, smoothed over 7 and 28 days; this describes the load, not a risk
# $stretch and $before are names from the plan.
long-hold = { $stretch } is held still for { $time } before { $before }. In studies, holds of a minute or more right before lifting cost strength. Hold it after, or move well in between.
