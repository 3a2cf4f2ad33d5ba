## A stretch timed on its own: `holdfast hold`.

# Said once, before the clock starts.
caution = Stop if you feel sharp pain, numbness or tingling. If pain lasts, see a doctor or physiotherapist.
# Heads the screen.
title = Hold { $seconds } s
# The last line: seconds really held, a part for each side.
held = held: { $sides }
held-side = { $side } { $seconds }
# Stands between the sides.
comma = { ", " }

## Why a side is short. $held is its side and seconds.

skipped = { $held } (skipped)
stopped-early = { $held } (stopped early)
not-all-seen = { $held } (only partly timed)

## What keys do

pause = pause
resume = resume
longer = 15 s more
next = next
stop = stop
