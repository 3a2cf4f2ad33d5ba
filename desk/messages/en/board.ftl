### The coach's board on a terminal.

## The board

# Stands in colour before a line about files that did not arrive or cannot be read.
files = files:
nobody = No log has arrived yet. Publish a plan. Once your members have exchanged, exchange again.
next-loads = Next loads

## The line of a member, behind the name: three parts

row = { $sessions }; { $last }; { $load }
# Of the sessions planned up to today.
trained = { $planned ->
    [0] no session planned yet
    [one] { $trained } of 1 session
   *[other] { $trained } of { $planned } sessions
}
# More were trained than planned.
trained-more = { $trained ->
    [one] 1 session, { $planned } planned
   *[other] { $trained } sessions, { $planned } planned
}
last-trained = last trained { $date }
never-trained = not trained yet
week-load = session load, last 7 days: { $load }

## A proposal: loads set by set, last time and next time

proposal = { $movement }: { $last } -> { $next }
# With the coach's answer.
proposal-accepted = { $movement } (accepted): { $last } -> { $next }
proposal-changed = { $movement } (changed): { $last } -> { $next }
proposal-refused = { $movement } (refused): { $last } -> { $next }

## A set scheme, such as "8-6-5"

# The last set is open: "8-6-5 or more".
open-scheme = { $reps } or more
# Instead of reps: a movement that nobody planned.
no-scheme = not planned
