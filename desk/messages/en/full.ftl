## The session on a full screen, from 40 columns by 14 rows up: labels, notes, questions, keys.

## Keys, by the names that stand on them

key-enter = Enter
key-space = Space
key-up-down = Up Down
key-esc = Esc
key-tab = Tab

## What keys do, a word or two each

does-move = move
does-go-back = back
does-take-it = choose
does-take-line = save
does-mark = mark
does-save = save
does-not-flag = no flag
does-show-keys = all keys
does-leave = leave
does-read-all = read all
does-go-on = next piece

## The head

# Stands before the day's heading once the session is finished.
finished = FINISHED: { $heading }
# Stand before a notice.
care = WARNING:
note = note:
too-small = This terminal is { $columns } × { $rows }: too small. Make it { $wanted-columns } ×
    { $wanted-rows } or larger. q leaves; your log is saved.
# Under a clock, in at most 40 columns.
too-small-with-clock = q leaves. Other keys need { $columns } × { $rows }.

## The day's list

# Its last row.
finish = finish
discomfort-in-day = ! Discomfort is flagged.

## The clock

# $side is a side's name, $time what is to come of it, such as 1:54.
side-to-go = { $side }, { $time } to go
to-go = { $time } to go
# Stands before seconds held so far, a part for each side.
held-so-far = held: { $sides }
held-side = { $side } { $time }

## The bar in a rest. What comes first is in capitals: it is read from a distance.

bar-ready = Bar is ready.
take-off = TAKE OFF, each side
put-on = PUT ON, each side
# The same in one line; $plates, $off and $on are plates of one side.
take-off-plates = TAKE OFF { $plates }, each side
put-on-plates = PUT ON { $plates }, each side
change-plates = TAKE OFF { $off }, PUT ON { $on }, each side
# $change says what to take off and put on.
each-side = Each side: { $change }

## A set

# As large as there is room for: digits, points, commas, kg, lb and × only.
load-by-reps = { $load } × { $reps }
# In a column under other reps.
by-reps = × { $reps }
did = did { $what }
warm-up = warm-up:
why = why: { $reason }
# $expected says how many reps to expect.
open-set = open set: { $expected }

## Windows and holds

# Stands before why fewer reps would do.
fewer = fewer:
not-logged = not logged: { $window }
# What was done in a window, and its movement.
window-done = { $done }, { $movement }
held = held: { $time }
held-on-side = held, { $side }: { $time }

## Options. $reason is why somebody takes one, such as: low back

option = option: { $option } ({ $reason })
# The key that shows all options stands behind it.
option-key = option: { $option }, { $reason } (o)
# $why says why it is suggested today.
option-suggested = option: { $option } ({ $reason }): { $why }
option-taken = taken: { $option } ({ $reason })
# Stands before an option that is suggested, and why.
consider = consider
consider-option = { $option }: { $why } (o)

## Discomfort

emergency-sign = EMERGENCY SIGN:
discomfort = DISCOMFORT:

## What was saved or said

safe = Once it says saved, it is safely stored.
saved = Saved: { $what }
undone = Undone: { $what }
not-saved = Not saved: { $why }
not-understood = Not understood: { $why }
pressed-twice = { $said } (pressed twice, counted once)
# $doubt says what is odd about what was saved; a sentence.
really = Really? { $doubt }
really-undo = Really? { $doubt } Press u if it was a slip.
# $right as "set 3 is right".
really-right = Really? { $doubt } r: { $right }. u: it was a slip.

## Why a key does nothing here

nothing-to-type = Nothing to type here.
no-options = The plan has no options for this movement.
no-options-here = No options here.
no-other-bar = There is no other bar for this.
nothing-extra-here = Log all planned sets of this piece first, or go to the end.
ignored-too-small = Key ignored: the terminal is too small.
not-flagged = Nothing flagged. Press d to try again.
choose-what-hurts = First go to the piece that hurts, with Up and Down.
nothing-to-confirm = No set looks like a slip.
nothing-to-undo = Nothing to undo.
no-flag-open = No flag is open on this piece.
nothing-for-later = Nothing here to leave for later.
no-rest = No rest is running.
no-clock = No clock is running here.
no-side = No side is being held.
no-clock-to-start = No clock to start here.
no-other-station = No other station to start at.
no-session = No session is running.
see-all-keys = ? shows all keys.

## Questions

which-day = Nothing is planned today. Train which day?
which-option = Options for { $piece }
option-choice = { $option }: { $reason }
option-choice-taken = { $option }: { $reason }, taken
no-option = the movement itself
which-bar = Bars for { $piece }
bar-choice-taken = { $bar }, taken
# Stands before why an option is suggested.
suggested = suggested:
which-station = Start { $piece } at which station?
station = station { $station }: { $what }
which-flag = Clear which flag? Loads may then go up again.
where-it-hurts = { $piece }: where does it hurt?
# Of the session as a whole.
where-it-hurts-anywhere = Where does it hurt?
# $place is a part of the body.
how-bad = { $place }: how bad, 1 to 10?
how-bad-hint = A flag stops loads from going up in this movement. Esc: no flag
how-bad-wrong = Not understood: type a number from 1 to 10.
which-signs = Any of these with it? Space marks, Enter saves. If none, just press Enter.

## Everything about a row

# $does says what the one key does.
enter-does = Enter: { $does }
warm-up-step = warm-up: { $set }

## The page of all keys: names of keys, at most 13 columns wide, and what they do

keys-one = Enter, Space
keys-one-does = does what is written beside Enter
keys-type = e or a digit
keys-type-does = type it in one line: `60 x 7, 2 left` a set, `12 8` a window, `10.5 11` readings
keys-undo-does = undo the last entry; again for the one before
keys-right-does = a set that looks like a slip is right
keys-move = Up, Down
keys-move-does = go to another row to correct it; Esc goes back to what is next
keys-piece-does = the next piece; Shift-Tab the one before
keys-options-does = options of this movement, with their reasons
keys-bar-does = another bar of the room, for the next times too
keys-extra-does = an extra set, or a movement nobody planned; when all sets are logged
keys-hurts-does = it hurts: where, how bad, and emergency signs
keys-clear-does = clear a flag of this piece
keys-later-does = leave the rest of this piece for later; at a reading only the reading
keys-minute-does = a minute more rest
keys-finish-does = finish the session, with its rating
keys-clock-does = the clock: start, pause or resume, next, stop
keys-more-does = 15 s more for the side held; start the windows at another station
keys-all-does = everything about this row: care, notes, reasons, cautions
keys-leave = q, Ctrl-C
keys-leave-does = leave the session open; your log is saved
keys-line = The line takes more: `option KEY`, `flag knee 4`, `skip`, `finish 7`, `held 120 95`.
keys-spare = A window's seconds to spare are read off the running clock when you log it.
keys-clock-runs = The clock runs on when you leave this program, and is right when you come back.

## Where there is no room for all

more-above = (more above)
more-below = (more below)
# Stands between parts of a line.
comma = { ", " }
