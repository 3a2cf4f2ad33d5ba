### The report: the board and every member's page as one file for a coach, on a screen or on paper.

## The page

# In the browser's tab. $heading names the block and its week.
title = Holdfast report, { $date }: { $heading }
made-for = Report for { $date }
# Over lines about files that did not arrive or cannot be read.
arrivals = Files to check

## The board. The columns' headings are short.

board = Board
nobody = Nobody is on the board yet.
column-member = Member
column-sessions = Sessions
column-last = Last trained
column-week-load = Session load, last 7 days
column-look = What to know
# How many of the planned sessions were trained.
trained = { $trained } of { $planned }
# More were trained than planned.
trained-more = { $trained }, { $planned } planned
not-yet = not yet
nothing = nothing

## Proposals: next loads for the coach to answer

proposals = Proposals
no-proposals = No proposals to answer.
column-movement = Movement
column-loads = Loads, set by set
column-why = Why
column-answer = Answer
# $reps is a set scheme: "8-6-5 or more".
piece-and-reps = { $piece }, { $reps }
# Before the loads of last time, and before those of next time.
last = last
next = next
# The session that a proposal was made from.
after = after { $date }
to-answer = to answer

## A member's section

nothing-logged = Nothing logged yet.
sessions = Sessions
# For people who hear the page: what the table holds.
sessions-of = Sessions of { $name }
column-date = Date
column-day = Day
column-sets = Sets
column-volume-load = Volume load
# Session RPE, 0 to 10.
column-rpe = RPE
column-minutes = Minutes
column-session-load = Session load
# Nobody gave a rating, or the session has no end.
none = none
unrated = { $sessions ->
    [one] Not rated: { $unrated } of 1 session. A session without a rating adds nothing to the session load.
   *[other] Not rated: { $unrated } of { $sessions } sessions. A session without a rating adds nothing to the session load.
}
charts = Charts
options = Options taken
took-option = { $date }: { $option } instead of { $movement }
# $because is the reason: "low back".
took-option-because = { $date }: { $option } instead of { $movement } ({ $because })
discomfort = Discomfort
# A discomfort flag that is still there, or not any more.
open = Open
cleared = Cleared
flag = { $date }: { $flag }
back = Back to the board

## The foot of the page

cautions = Cautions
what-numbers-mean = What the numbers mean
session-load = Session load
what-session-load-is = Session RPE (0 to 10) times minutes (Foster et al., J Strength Cond Res 2001;15:109-115).
volume-load = Volume load
what-volume-load-is = Reps times load, added up over the sets.
change-in-range = Change in range
# Published measurement errors follow, one for each protocol.
what-a-change-is = A difference counts as a change only if it reaches the measurement error of its protocol: the smallest change that, with 95 % confidence, is not measurement alone (MDC95).
# $protocol is one of the four below, $source where the error was published.
measurement-error = { $protocol }: { $error } ({ $source })
sit-and-reach = sit and reach
fingertip-to-floor = fingertip to floor
knee-to-wall = knee to wall
shin-angle = shin angle in a lunge

## Charts: a title, a note on how to read it, and its data in words for people who hear the page

# $says is the data in words.
described = { $title }. { $says }
# Between units such as "3 Nov 72.5 kg".
between = { ", " }

## The chart of a lift. $reps in the title is a set scheme: "8-6-5 or more".

lift = { $movement }, { $reps }
note-loads = Heaviest load of each session.
note-loads-missed = Heaviest load of each session; cross: a set was missed.
note-reps = { $asked ->
    [one] Stems: reps in the open set; level line: 1 rep planned.
   *[other] Stems: reps in the open set; level line: { $asked } reps planned.
}
says-loads = Heaviest load: { $points }.
load-point = { $date } { $load }
load-point-missed = { $date } { $load } with a set missed
says-reps = Reps in the open set: { $points }.
reps-point = { $date } { $reps } of { $asked }
axis-reps = reps

## The chart of strength

strength = { $movement }: estimated one-rep max
# $estimate is a text of its own.
note-strength = Estimated from open sets and sets with reps in reserve, from what was known on each day. Band: four cases in five. Now: { $estimate }.
note-strength-trend = Trend: { $trend }.
note-strength-ended = { $ended }.
says-strength = Estimated one-rep max: { $points }.
# $low to $high is the band.
strength-point = { $date } { $likely } { $unit } ({ $low } to { $high })

## The chart of weeks

weeks = Session load by week
note-weeks = Session RPE times minutes, added up from Monday to Sunday.
# In $points a date, the Monday, stands before each number.
says-weeks = Session load of the week from: { $points }.
week-point = { $date } { $value }
axis-weeks = RPE × minutes

## The charts of time under stretch, one for each part of the body

region = Time under stretch: { $region }
note-region = Minutes held in each week, both sides together.
says-region = Time held in the week from: { $points }.

## The chart of range of motion. $name is how it is measured: "knee to wall".

range = { $piece }: { $name }
range-of-side = { $piece }: { $name }, { $side }
axis-range = { $unit }, { $name }
note-dots-and-rings = Dots: before the hold; rings: after it.
note-dots = Dots: before the hold.
note-rings = Rings: after the hold.
# $error is a number with its unit.
note-band = Band: the first reading ± { $error }, the measurement error.
note-smaller-is-further = A smaller reading means more range.
note-judged = First to last before the hold: { $judged }.
note-range-trend = Trend before the hold: { $trend }.
says-range = Readings: { $points }.
range-point-both = { $date } before { $before } and after { $after }
range-point-before = { $date } before { $before }
range-point-after = { $date } after { $after }

## When there is no report. $reason comes from the system.

chart-not-drawn = No report was written: a chart could not be drawn ({ $reason }).
page-not-filled = No report was written: the page could not be filled in ({ $reason }).
