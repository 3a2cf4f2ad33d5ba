### The session screen, as an athlete reads it between two sets: numbers first, verbs next.

## One line above the day.

no-plan = No plan yet. Exchange with your coach.
# $date is a short date such as "Tue 10 Nov"; it may end in a full stop.
day-off = Nothing planned today. Next: { $day }, { $date }
planned-day = { $day }, { $date }, week { $week } of { $weeks }
day-after-block = { $day }, { $date }. { $block } ended on { $end }
block-ended = { $block } ended on { $end }. You can still train any of its days.
block-without-days = { $block } has no more days planned; it ends on { $end }. You can still train any of its days.

## Notices above the pieces.

# $trouble says what went wrong.
not-ready-for-exchange = Everything is saved, but not ready for the exchange yet: { $trouble }
plan-unread = This version cannot read the plan "{ $block }". Update Holdfast. Until then the last plan that can be read stays in force.
# $on as "Tue 10 Nov", $date as "2026-11-10".
left-open = "{ $day }" on { $on } was left open; what you logged counts. To add to it or finish it: `session --on { $date }`.
written-afterwards = Written afterwards: no clock and no rest runs. Log what you did that day.
devices-disagree = { $entries ->
    [one] Two of your devices disagree about 1 entry. You see the later version.
   *[other] Two of your devices disagree about { $entries } entries. You see the later versions.
}

## What is at hand: its title, then its line.

# A name or title, then what it says or asks for. $what is text of its own.
titled = { $title }: { $what }
set = { $movement }, set { $set } of { $sets }
# Over those planned.
extra-set = { $movement }, extra set { $set }
window = { $piece }, window { $window } of { $windows }
# Where in its piece: beside its name.
place-set = set { $set } of { $sets }
place-extra = extra set { $set }
place-window = window { $window } of { $windows }
# While the clock still runs in an earlier one.
window-next = { $piece }, next: window { $window } of { $windows }
# $protocol is how range of motion is measured, such as "knee to wall".
measure-before = { $piece }, { $protocol } before the hold
measure-after = { $piece }, { $protocol } after the hold
finished = Finished.
all-logged = Everything is logged.
not-all-logged = Not everything is logged.
# A set whose load the athlete chooses; in backticks what can be typed.
set-without-load = { $title }: { $asked }. You choose the load, such as `{ $typed }`
# No load: it hurts.
set-withdrawn = { $title }: no load while it hurts
# The plates of a side, then what is done to the bar: "20 + 5 kg a side", "put on 5 kg".
build-and-change = { $build }; { $change }
# $unit is "cm" or "°".
reading-of-one = { $title }, in { $unit }
reading-of-two = { $title }, in { $unit }, left and right
how-hard = How hard was the whole session, 0 to 10?
how-hard-and-long = How hard was the whole session, 0 to 10, and how many minutes did it take?

## At the end of a session: what is not done.

# $pieces is a list of names, each with how far it is.
not-done = Not done: { $pieces }.
# Sets, such as "Squat set 1, 675 kg × 5", in a list.
in-doubt = May be a slip, so it does not count yet: { $sets }.
piece-so-far = { $piece } ({ $progress })

## What was saved last, on a phone.

# $what as "Squat set 2, 60 kg × 6".
saved = Saved: { $what }
# Beside a tick, where large letters leave room for no more.
saved-set = Set { $set }
saved-window = Window { $window }
saved-alone = Saved

## What each piece came to, at the end of a session.

sum-sets = { $all ->
    [one] { $done } of 1 set
   *[other] { $done } of { $all } sets
}
# The last set was open: $set as "70 kg × 7", $asked reps were asked for.
sum-open-set = open set: { $set }, { $asked } asked
sum-extra-sets = { $sets ->
    [one] 1 extra set
   *[other] { $sets } extra sets
}
sum-windows = { $all ->
    [one] { $done } of 1 window
   *[other] { $done } of { $all } windows
}
# $margin is the time that should be to spare, as "10 s".
sum-to-spare = { $windows ->
    [one] 1 with { $margin } or more to spare
   *[other] { $windows } with { $margin } or more to spare
}
# $time is how long each of two sides was held.
sum-each-side = { $time } each side
sum-of-side = { $side } { $time }
sum-nothing = not done
# Before the day that is trained next, a line of its own.
sum-next = Next
sum-next-day = { $day }, { $date }

## How far a piece is, and loads that are the athlete's to choose: a word or two.

later = later
left-for-today = not today
no-load = no load
you-choose = you choose
# Severe pain: the load is gone until the flag is cleared.
load-withdrawn = no load
# A set, or a movement, that nobody planned.
extra = extra
unplanned = { $movement }, not planned
# $done is what was done last, such as "20 kg × 12".
unplanned-last = { $movement }, not planned; last time { $done }, { $day }
sets-done = { $sets ->
    [one] 1 set
   *[other] { $sets } sets
}

## Keys beside the one key. Short: several stand in a row.

undo = undo
# A set that looks like a slip was no slip.
set-is-right = set { $set } is right
set-of-piece-is-right = { $piece } set { $set } is right
rate-again = rate again
it-hurts = it hurts
minute-more = 1 min more
start-elsewhere = start at another station
type-it = type it
options = options
extra-work = extra set or movement
clear-flag = clear a flag
put-off = later
finish = finish
start-clock = start the clock
seconds-more = 15 s more
go-on = resume
pause = pause
skip-to-next = next
stop = stop

## The line to be typed: what it logs, and under it what can be typed. What stands in backticks is read
## by the program: see `left-typed` in line.ftl.

log = Log { $what }
log-by-hand = Log { $what } by hand
log-extra = Log an extra set or movement
correct = Correct { $what }
correct-by-hand = Correct { $what } by hand
# Read by the program.
typed-set = { $load } x { $reps }
# $typed is a set as it is typed, such as `40 x 8`.
hint-load = load x reps, then reps in reserve: `{ $typed }, 2 left`
hint-reps = good reps: `{ $reps }`; or the whole set: `{ $typed }, 2 left`
hint-reserve = reps you had left: `2`; or the whole set: `{ $typed }, 2 left`
hint-set = load x reps: `{ $typed }`; with reps in reserve: `{ $typed }, 2 left`; reps alone: `{ $reps }`
hint-extra = a set more: `60 x 8`; or a movement: `face pull 20 x 12`
hint-window = reps and seconds to spare: `12 8`; reps alone: `12`
hint-two-readings = two readings, left and right: `10.5 11`
hint-one-reading = one reading: `10.5`
hint-held = seconds held: `120`; if it was short, add why: `60 cramp`
hint-held-sides = seconds left and right: `120 95`; if one was short, add why: `120 60 cramp`
hint-rating = 0 is rest, 10 the hardest there is; empty: finish without a rating
hint-rating-afterwards = the rating, 0 is rest and 10 the hardest there is, then the minutes: `7 60`

## What is odd about what was logged, perhaps a slip of the finger. Shown as a question: "Really? ...".

odd-reps = { $reps } reps, { $asked } planned
# $near is one load.
odd-load = This cannot be loaded to { $load }; the nearest is { $near }
odd-load-between = This cannot be loaded to { $load }; the nearest are { $lighter } and { $heavier }
far-from-proposed = Far from the proposed { $load }
odd-window = { $reps ->
    [one] 1 rep in { $time }
   *[other] { $reps } reps in { $time }
}
# Both are times: more was held than the session had gone on.
odd-hold = { $held } held in all, only { $time } into the session
