## Why a tap cannot be done. One sentence or two: what is wrong, then what to do. The name of the field
## ("Load", "Set") or of what is missing may stand before it.

# Puts the name of a piece or a day in quotes, in a list of them.
quoted = "{ $name }"

## The session.

# $date is a short date; it may end in a full stop.
session-running = The session "{ $day }" of { $date } is still open. Finish it first: `session`, then `finish`.
session-not-running = No session is running. Begin one first.
no-plan = No plan has arrived yet. Exchange with your coach first.
# $today is a date, $days a list of names.
nothing-planned = Nothing is planned for { $today }. Name one of these days: { $days }.
block-days = The block has { $days }.
# The file of the plan that a running session was begun with.
plan-not-here = Its file has not arrived on this device. Exchange first.
plan-without-day = The plan has no such day.
# $pieces is a list of names.
day-pieces = This day has { $pieces }.
nothing-to-undo = Nothing is logged in this session yet.
# A session that was trained on an earlier date, and is written now.
afterwards-dates = A session can be written afterwards for the last { $weeks } weeks, up to yesterday.
no-clock-afterwards = No clock runs for a session written afterwards. Type what you did.
minutes-afterwards = Say how long it took as well: the rating, then the minutes, such as `7 60`.
rest-not-running = No rest is running.
# A note, or a hold without a measure.
nothing-to-put-off = "{ $piece }" has nothing to leave for later.
clock-begun = The clock of "{ $piece }" has started: log or stop it first.

## Numbers that are too large.

rating-too-high = { $rating } is too high. The rating goes from 0 to { $most }.
minutes-too-many = { $minutes } is too many. A session lasts { $most } minutes at most.
reps-too-many = { $reps } is too many. A set or window has { $most } reps at most.
reserve-too-many = { $reserve } is too many. Reps in reserve go from 0 to { $most }.

## Sets and options.

no-sets = "{ $piece }" has no sets.
all-sets-logged = { $sets ->
    [one] The only set is logged. Name set 1 to correct it.
   *[other] All { $sets } sets are logged. Name one to correct it.
}
no-such-set = { $sets ->
    [one] This piece has 1 set; there is no set { $set }.
   *[other] This piece has { $sets } sets; there is no set { $set }.
}
# Sets over those planned, and of a movement nobody planned.
next-set-is = The next set here is set { $set }.
too-many-sets = { $most } sets over those planned are the most.
# $movement is as the athlete calls it; $done is what was done last, such as "20 kg × 12".
extra-reps = Say how many reps of { $movement } you did.
extra-reps-last = Say how many reps of { $movement } you did. Last time: { $done }, { $day }
planned-today = { $movement } is in "{ $piece }" today. Log it there.
movement-name = Name a movement in 1 to { $most } characters, without a slash.
load-unknown = No load is proposed for this set. Enter the load you used.
load-zero = A load must be above zero.
load-below-zero = What is added to body weight can't be below zero.
# $load is what was said, with a minus.
load-not-minus = Assistance is taken off body weight: log it with a minus, such as { $load }.
set-not-in-session = This set is not one of this session.
set-counts-already = This set counts already; nothing is left to confirm.
set-not-yours = This set is not in your log. It may have been taken back.
logged-like-that = This set is logged like that already.
plan-of-set-not-here = The plan of this set has not arrived on this device. Exchange first.
open-set = This set is open. Enter how many good reps you did.
# $movement is its key in the plan, $options a list of keys.
no-options = { $movement } has no options.
options-are = { $movement } has { $options }.
needs-no-bar = "{ $piece }" needs no bar.
bar-taken-already = The { $bar } is chosen already.
no-movement = "{ $piece }" has no movement.
# $movements is a list of keys in the plan.
which-movement = "{ $piece }" has { $movements }: say which.

## Windows and clocks.

no-windows = "{ $piece }" has no windows.
all-windows-logged = { $windows ->
    [one] The only window is logged. Name window 1 to correct it.
   *[other] All { $windows } windows are logged. Name one to correct it.
}
no-such-window = { $windows ->
    [one] This piece has 1 window; there is no window { $window }.
   *[other] This piece has { $windows } windows; there is no window { $window }.
}
# $length is a time such as "1 min".
spare-too-long = Time to spare is between 0 and the window's { $length }.
window-not-begun = Window { $window } has not begun yet. Wait for it, or log the one before.
windows-of-one-length = All windows have the same length; you cannot extend one.
no-clock = "{ $piece }" has no clock.
clock-running = The clock is running already.
clock-not-running = The clock is not running.
clock-not-paused = The clock is not paused.
no-stations = "{ $piece }" has no stations.
station-at-start = Choose the station when you start the clock.
no-such-station = { $stations ->
    [one] "{ $piece }" has 1 station; there is no station { $station }.
   *[other] "{ $piece }" has { $stations } stations; there is no station { $station }.
}
station-fixed = Windows are logged from station { $station } on. Undo them to start elsewhere.
no-side-held = No side is being held.
# $most is a time such as "30 min".
side-too-long = You can hold a side for { $most } at most.

## Holds and readings.

not-a-hold = "{ $piece }" is not a hold.
sides-are = { $sides ->
    [one] "{ $piece }" has 1 side.
   *[other] "{ $piece }" has { $sides } sides.
}
held-out-of-range = A side is held for 0 s to { $most }.
nothing-held = Nothing was held yet. Start the clock, or give the seconds of each side.
no-readings = Give at least one reading.
no-measure = The plan asks for no reading in "{ $piece }".
# Both are readings with their unit, such as "0.0 cm".
reading-out-of-range = A reading here is between { $low } and { $high }.
# Why a side was short, in the athlete's words.
said-too-long = Say why in 1 to { $most } characters, without line breaks.

## Discomfort.

severity-out-of-range = Severity goes from 1 (barely there) to 10 (the worst).
no-open-flag = No flag is open here.
flag-not-open = This flag is already cleared, or was never raised.
felt-dates = Flag what you felt in the last { $weeks } weeks, today included.
# $movements is a list of names.
no-such-movement = "{ $movement }" is not in the plan. Movements: { $movements }.
