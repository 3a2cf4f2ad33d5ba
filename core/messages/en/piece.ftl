## Headings of pieces. Times as "2 min".

strength = { $movement }, rest { $rest }
strength-on-bar-alone = { $movement } on the { $bar }
strength-on-bar = { $movement } on the { $bar }, rest { $rest }
# Each window takes $window; $margin should be to spare at its end.
interval = { $windows ->
    [one] 1 window of { $window },
   *[other] { $windows } windows of { $window },
} { $rounds ->
    [one] 1 round, aim for { $margin } to spare
   *[other] { $rounds } rounds, aim for { $margin } to spare
}
hold-still = { $stretch }, { $time }, held still
hold-still-sides = { $stretch }, { $time } each side, held still
hold-push = { $stretch }, { $time }, push and let go
hold-push-sides = { $stretch }, { $time } each side, push and let go
# Other training days of the plan for the same date.
other-days = also planned for this date: { $days }

## Sets

# An open set: as many good reps as possible, at least so many.
or-more = { $reps } or more
# A load with its unit, and reps as "6" or "5 or more".
load-times-reps = { $load } × { $reps }
reps-alone = { $reps ->
    [one] 1 rep
   *[other] { $reps } reps
}
# $reps as "5 or more".
reps-open = { $reps } reps
# $set as "60 kg × 5"; $left reps could still have been done.
set-left = { $set }, { $left } left
# A remark on a set, such as one of the two below, an option's name, or plates.
noted = { $what } ({ $note })
# Fewer reps than asked for.
fell-short = short
# Two devices logged the same set differently.
two-versions = two versions
# Far from what was proposed, and nobody has said yet that it is right.
may-be-a-slip = may be a slip
# The coach has set the set aside.
left-out = left out by the coach
# A set in a line of its own: $title as "Squat, set 2 of 4", $plates as "20 + 5 kg a side; put on 5 kg".
set-line = { $title }: { $load } × { $reps }
set-line-plates = { $title }: { $load } × { $reps } ({ $plates })

## Windows

window-asked = { $reps } × { $movement }
window-asked-load = { $reps } × { $movement }, { $load }
# Reps done in a window; $spare as "8 s" was to spare.
window-done = { $reps } done
window-done-spare = { $reps } done, { $spare } to spare
# Less to spare than planned.
window-done-rushed = { $reps } done, { $spare } to spare (rushed)

## How far a piece is

progress-done = done
progress = { $done } of { $all }
