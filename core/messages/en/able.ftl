## What somebody can lift now. Whole kilograms or pounds: $likely with its unit, $low and $high without, in
## four cases in five between them.

max = estimated one-rep max { $likely }, probably { $low } to { $high }

## Reps that an open set may reach

no-rep = no rep expected
reps = expect { $reps }
reps-between = expect { $low } to { $high }

## How the estimated one-rep max moves. Percents come with their sign.

trend = { $days ->
    [one] { $week } % a week over { $days } day ({ $low } to { $high } %)
   *[other] { $week } % a week over { $days } days ({ $low } to { $high } %)
}
trend-maybe-none = { $days ->
    [one] { $week } % a week over { $days } day ({ $low } to { $high } %, so perhaps no change)
   *[other] { $week } % a week over { $days } days ({ $low } to { $high } %, so perhaps no change)
}
