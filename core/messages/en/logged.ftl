### What a tap saved or took back, in a few words: "Saved: ..." and "Taken back: ..." stand before it. Several
### of one tap are joined as a list.

## Sets, windows, holds, measures.

# $done is what was done, such as "70 kg × 5, 2 left".
set = { $piece } set { $set }, { $done }
# $done is what was done, such as "12 done, 8 s to spare".
window = { $piece } window { $window }, { $done }
# $sides is the time held, or that of each side.
held = { $piece }, held { $sides }
# $side is the name of a side, $held a time; for a short one with why.
of-side = { $side } { $held }
# Between two sides.
between-sides = { ", " }
# $reading is a number with its unit, measured before or after a hold.
read-before = { $piece } before the hold, { $reading }
read-before-side = { $piece } before the hold, { $side } { $reading }
read-after = { $piece } after the hold, { $reading }
read-after-side = { $piece } after the hold, { $side } { $reading }

## Clocks and rests.

clock-started = { $piece }, clock started
clock-paused = { $piece }, clock paused
clock-resumed = { $piece }, clock resumed
clock-extended = { $piece }, 15 s more
clock-skipped = { $piece }, moved on
clock-stopped = { $piece }, clock stopped
rest-ended = rest ended
rest-longer = 1 min more rest

## Options, discomfort, what is put off.

took-option = { $piece }, took { $option }
# $because is the reason: "grip", "no equipment".
took-option-because = { $piece }, took { $option } ({ $because })
back-to-movement = { $piece }, back to { $movement }
took-bar = { $piece }, on the { $bar }
flagged = { $piece }, { $movement }: { $place } { $severity }/10
# $signs is a list of emergency signs.
flagged-with-signs = { $piece }, { $movement }: { $place } { $severity }/10, emergency signs: { $signs }
# Between two sessions, in no piece; then where no movement brings it on.
flagged-between = { $movement }: { $place } { $severity }/10
flagged-between-with-signs = { $movement }: { $place } { $severity }/10, emergency signs: { $signs }
flagged-alone = { $place } { $severity }/10
flagged-alone-with-signs = { $place } { $severity }/10, emergency signs: { $signs }
flag-cleared = flag cleared
# What can be put off of a piece.
measure-before = { $piece }, reading before the hold
measure-after = { $piece }, reading after the hold
# $what is a piece, or one of its measures.
put-off = { $what }: later
left-for-today = { $what }: not today

## The session, and what no tap writes.

session-begun = session begun: { $day }
# A session trained on an earlier date.
session-afterwards = written afterwards: { $day }, { $date }
session-rated = session finished, { $rating } of 10
session-finished = session finished
coach-answer = the coach's answer
set-aside = a set the coach left out
one-rep-max = a one-rep max
# $label is what the coach calls the member.
taken-in = { $label } taken in
taken-back = undone
# What happened to a device, or to somebody.
removed-from-crew = removed from the crew
device-removed = a device removed
device-stopped = a device stopped
device-added = a device added
somebody-forgotten = somebody forgotten
