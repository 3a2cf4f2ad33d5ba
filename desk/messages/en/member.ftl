### A member's page on a terminal: tables and lists, each under a heading.

no-session = No session has arrived yet.

## Headings

sessions = Sessions
weeks = Weeks
strength = Strength, estimated from open sets and sets with reps in reserve
maxes = One-rep maxes, tested or set
lifts = Lifts: the heaviest set of each session
ranges = Range of motion before the hold
stretched = Time under stretch, week by week
options = Options taken
notes = Notes
discomfort = Discomfort
next-loads = Next loads

## Columns of the tables. Short: up to seven stand in a row.

column-date = date
column-day = day
column-sets = sets
column-volume-load = volume load
# Session RPE, 0 to 10.
column-rpe = RPE
column-minutes = minutes
column-session-load = session load
# A week, named by its Monday; dates follow.
column-week = week of
column-sessions = sessions
column-monotony = monotony
column-strain = strain

## Weeks

# The session load of a week in which sessions of some days were not rated.
load-unrated = { $days ->
    [one] { $load }, 1 day unrated
   *[other] { $load }, { $days } days unrated
}
# Below the table.
what-monotony-is = Monotony says how alike the days of a week were: mean daily load divided by its spread. Strain is the week's session load times monotony. Both describe the week; neither is a risk.
# $date is the Monday.
week-of = week of { $date }

## Strength and lifts

# $estimate and $trend are texts of their own.
estimated = { $movement }: { $estimate }
estimated-with-trend = { $movement }: { $estimate }; { $trend }
# $reps is the scheme: "8-6-5 or more". $points are several of those below.
lift = { $movement }, { $reps }: { $points }
load-and-reps = { $load } × { $reps }
only-reps = { $reps ->
    [one] 1 rep
   *[other] { $reps } reps
}
# $done is one of the two above.
point = { $date } { $done }
# A set of that session was missed, this one or another.
point-missed = { $date } { $done } (a set of that session missed)
between-points = { ", " }

## Range of motion. $name is how it is measured ("knee to wall"), $unit "cm" or "°".

range = { $name } ({ $piece }), { $unit }: { $readings }
range-of-side = { $name } ({ $piece }, { $side }), { $unit }: { $readings }
range-point = { $date } { $reading }
# What follows a range's readings, each with a text of its own.
first-to-last = first to last: { $judged }
trend = trend: { $trend }
between-parts = { "; " }

## Options and discomfort, behind a date

took-option = { $option } instead of { $movement }
took-option-because = { $option } instead of { $movement }: { $because }
# $flag as "knee 4/10 in Back squat".
flag-open = { $flag }, open
flag-cleared = { $flag }, cleared
