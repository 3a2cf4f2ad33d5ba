### A day printed on a terminal: notices, then each piece with its sets, windows or sides.

## Words in colour before a line

care = WARNING:
note = note:
discomfort = discomfort:
# Before an option's key, and why it is suggested: "consider box-squat: ..."
consider = consider { $option }:

## The day

done-for-today = Done for today.
# Nothing is planned: the plan's days that could be trained.
days = Days: { $days }
between-days = { ", " }

## A strength piece

# A piece's name, then what it is.
piece = { $name }: { $heading }
warm-up = warm-up: { $sets }
between-sets = { ", " }
# Columns of the table of sets; short.
column-set = set
column-load = load
column-reps = reps
column-plates = plates a side
column-done = done
column-why = why
# $estimate is an estimated one-rep max.
not-tested = { $estimate } (not tested)
open-set = Set { $set } is open: as many good reps as possible.
# $expected says how many to expect.
open-set-expected = Set { $set } is open: as many good reps as possible; { $expected }

## A hold

# $sides are one or more of the next message, or a time alone.
held = held: { $sides }
held-side = { $side } { $held }
between-sides = { ", " }
measure = { $protocol }: a reading before and after the hold
# $readings stand for themselves: "before, left: 10.5 cm".
measured = { $protocol }: { $readings }
between-readings = { "; " }

## Options of a movement, by the key that is typed

options = options: { $options }
# $because is the reason to take it: "low back".
option = { $key } ({ $because })
option-taken = { $key } ({ $because }, taken)
between-options = { ", " }

## A clock in a few words: its phase, what it is about ("left", "12 x Bell swing"), the time to go

clock = { $now }
clock-about = { $now }, { $about }
clock-to-go = { $now }, { $seconds } s to go
clock-about-to-go = { $now }, { $about }, { $seconds } s to go

## The one key

# What pressing it does.
enter = Enter: { $does }

## Where text is written to

standard-output = standard output
