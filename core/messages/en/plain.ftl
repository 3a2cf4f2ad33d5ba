## Small words: counts, times, lists, dates.

# What waits on the device until the next exchange.
waiting = { $entries ->
    [one] 1 entry waits for the next exchange.
   *[other] { $entries } entries wait for the next exchange.
}

## Lists

# Two things, and the last two of more: "a and b".
list-end = { $first } and { $last }
# Things before the last two: "a, b".
list-more = { $first }, { $next }

## Dates

# A date in a line, such as "Tue 10 Nov". $weekday and $month are the names below.
date = { $weekday } { $day } { $month }
# Of another year than this one.
date-of-year = { $weekday } { $day } { $month } { $year }
# The same with no weekday, where many stand close together.
short-date = { $day } { $month }
short-date-of-year = { $day } { $month } { $year }
monday = Mon
tuesday = Tue
wednesday = Wed
thursday = Thu
friday = Fri
saturday = Sat
sunday = Sun
january = Jan
february = Feb
march = Mar
april = Apr
may = May
june = Jun
july = Jul
august = Aug
september = Sep
october = Oct
november = Nov
december = Dec

## Sides, readings and flags

left = left
right = right
# A side of a movement that has more than two.
side-number = side { $number }

# A reading of the range of motion: $value with its unit, $side as "left".
reading-before = before: { $value }
reading-after = after: { $value }
reading-before-side = before, { $side }: { $value }
reading-after-side = after, { $side }: { $value }

# Discomfort that was flagged: $place as "knee", $severity from 1 to 10, $day as "Tue 10 Nov".
flagged = { $place } { $severity }/10, flagged { $day }
# With emergency signs: $signs is a list of them.
flagged-signs = { $signs } (with { $place } { $severity }/10, flagged { $day })
# Where a piece has several movements.
flagged-in = { $movement }: { $flag }
