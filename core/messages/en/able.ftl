## What somebody can lift now. Whole kilograms or pounds: $likely with its unit, $low and $high without, in
## four cases in five between them.

max = estimated one-rep max { $likely }, probably { $low } to { $high }
# In its place where too little is known for one.
count-a-set = count a set of three to six reps to see your max
log-open-set = log the reps of your open set and an estimate appears
# The first of these for somebody else's eyes.
counted-set-would-show = a counted set of three to six reps would show the max

## Reps that an open set may reach

no-rep = no rep expected
reps = expect { $reps }
reps-between = expect { $low } to { $high }
# How open sets ended beside that, the first line for the athlete, the second for somebody else's eyes.
# $of is two to ten.
ended = { $inside } of your last { $of } open sets ended inside the expected range
ended-of-theirs = { $inside } of the last { $of } open sets ended inside the expected range

## How the estimated one-rep max moves. Percents come with their sign.

trend = { $days ->
    [one] { $week } % a week over { $days } day ({ $low } to { $high } %)
   *[other] { $week } % a week over { $days } days ({ $low } to { $high } %)
}
trend-maybe-none = { $days ->
    [one] { $week } % a week over { $days } day ({ $low } to { $high } %, so perhaps no change)
   *[other] { $week } % a week over { $days } days ({ $low } to { $high } %, so perhaps no change)
}
