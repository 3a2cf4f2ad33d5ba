### Typed lines. What stands in backticks is read by the program: `40 x 8, 2 left`, `flag knee 4`. Commands
### such as `undo` are the same in every language.

## Words that are read: lists with commas, and each of them is understood, in whichever language the
## program speaks. A single letter is read only in its own language, and no two in one list may be alike.
## Umlauts may be typed as ae, oe, ue.

# After a number: that many reps could still have been done, as in `40 x 8, 2 left`.
left-typed = left
# After a number of reps, where somebody writes it.
reps-typed = reps, rep
# After a number of seconds or minutes.
seconds-typed = s, sec, seconds
minutes-typed = min, minute, minutes
# A set that looks like a slip is right as it is logged.
right-typed = right, it is right, yes, sure
# A set was not done: it is taken back.
none-typed = none, not done, nothing
# Between emergency signs, as in `flag knee 6 with dark urine and chest pain`.
and-typed = and, with

# Where it hurts: its letter first. The names that screens show are read too.
place-neck-typed = n, neck
place-shoulder-typed = s, shoulder
place-elbow-typed = e, elbow
place-wrist-typed = w, wrist
place-upper-back-typed = u, upper back
place-low-back-typed = l, low back, lower back
place-hip-typed = h, hip
place-knee-typed = k, knee
place-ankle-typed = a, ankle
place-muscle-typed = m, muscle
place-other-typed = o, other, elsewhere

# Emergency signs: the letter first. The names that screens show are read too.
sign-saddle-numbness-typed = n, numbness, saddle numbness, numbness between the legs
sign-bladder-or-bowel-typed = b, bladder, bowel, bladder or bowel, new bladder or bowel trouble
sign-leg-weakness-typed = w, weak leg, a weak leg, leg weakness
sign-pain-in-both-legs-typed = p, pain in both legs, pain into both legs
sign-dark-urine-typed = d, dark urine
sign-chest-pain-typed = c, chest pain
sign-dizziness-typed = f, dizzy, dizziness, fainting, dizziness or fainting

## What was wrong with a line. { $typed } is always what was typed.

# $hint says what can be typed here.
type-this = Type { $hint }
# The words of the one key, which waits, and why it waits, a whole sentence.
key-waits = { $key }. { $why }
nothing-after = "{ $typed }" means nothing after `{ $command }`.
session-not-begun = No session is running. Press Enter to begin one.
session-not-running = No session is running.
nothing-to-put-off = Nothing here to leave for later.
nothing-to-confirm = Nothing to confirm here. Another set is confirmed by its number: `right 1`.
no-set-to-confirm = Set { $set } is not logged here, so there is nothing to confirm.
not-a-rating = "{ $typed }" is not a rating from 0 to 10.
type-a-rating = Type a rating from 0 to 10, or `finish` to end without one.
type-a-rating-and-minutes = Type a rating from 0 to 10, then the minutes it took: `7 60`.
not-minutes = "{ $typed }" is not a number of minutes. Type the rating, then the minutes: `finish 7 60`.
no-options = This movement has no options.
# $options is a list of keys.
which-option = Type `option` and one of { $options }; `option none` goes back.
not-an-option = "{ $typed }" is not an option here. Type `option` and one of { $options }; `option none` goes back.
no-other-bar = There is no other bar for this.
# $bars is a list of names.
which-bar = Type `bar` and one of { $bars }.
not-a-station = "{ $typed }" is not a station. Type `begin` and the station you start at: `begin 2`.

## Sets.

set-means-nothing = "{ $typed }" means nothing here. Type reps, or load x reps: `8`, `40 x 8`, `40 x 8, 2 left`.
set-two-ways = "{ $typed }" can be read two ways. Type it like this: `40 x 8, 2 left`.
not-whole = "{ $typed }" is not a whole number. Type it like this: `40 x 8, 2 left`.
too-large = "{ $typed }" is too large a number.
load-too-fine = "{ $typed }" has too many decimals. A load has three at most.
load-too-heavy = "{ $typed }" is too heavy. A load is 2000 kg or 4000 lb at most.
which-correction = Type what you did, such as `67.5 x 5`; `right` if it is right as it is, `none` if you did not do the set.
which-set = Type `set`, its number and what you did: `set 2 40 x 8`.
not-a-set = "{ $typed }" is not a number. Type `set`, its number and what you did: `set 2 40 x 8`.
note-what = Type `note` and the words for your coach: `note grip slipped`.
private-what = Type `private` and the words for yourself: `private slept badly`.
which-extra = Type `extra` and what you did: `extra 60 x 8` is a set more, `extra face pull 20 x 12` another movement.
no-extra-yet = No piece here has all its sets yet. Log those first, or name a movement: `extra face pull 20 x 12`.

## Windows.

window-means-nothing = "{ $typed }" means nothing here. Type reps, or reps and seconds to spare: `12` or `12 8`.
which-window = Type `window`, its number and what you did: `window 2 12 8`.
not-a-window = "{ $typed }" is not a number. Type `window`, its number and what you did: `window 2 12 8`.

## Readings.

two-readings = Type two readings, left and right: `10.5 11`; or `skip`.
one-reading = Type one reading: `10.5`; or `skip`.
not-a-reading-of-two = "{ $typed }" is not a reading. Type two, left and right, with one decimal at most: `10.5 11`; or `skip`.
not-a-reading-of-one = "{ $typed }" is not a reading. Type one, with one decimal at most: `10.5`; or `skip`.

## Holds.

seconds-of-sides = Type whole seconds for each side, 0 for a side you skipped: `held 120 95`. Words after the numbers say why.
seconds-of-one = Type whole seconds: `held 120`. Words after the number say why.
not-why = "{ $typed }" says neither seconds nor why. Type whole seconds, then why in words: `held 120 60 cramp`.

## Discomfort.

# $places is a list of names, each with its letter.
which-place = Type `flag`, where it hurts, and how bad it is from 1 to 10: `flag knee 4`. Places: { $places }.
not-a-place = "{ $typed }" is not one of the places. Type a place and how bad it is, such as `flag knee 4`. Places: { $places }.
how-bad = Type how bad it is after the place, from 1 to 10: `flag knee 4`.
not-how-bad = "{ $typed }" is not a number from 1 to 10. Type how bad it is after the place: `flag knee 4`.
nothing-to-flag = This day has no piece to flag.
# $signs is a list of names, each with its letter; $movements a list of keys in the plan.
not-a-sign = "{ $typed }" is not an emergency sign. Signs: { $signs }.
not-a-sign-or-movement = "{ $typed }" is neither an emergency sign nor a movement here. Signs: { $signs }. Movements: { $movements }.
two-movements = "{ $typed }" is a second movement. Flag each movement in its own line.
# A name with its letter, which means the same.
or-letter = { $name } ({ $letter })
# Between two names of a list.
between = { ", " }

## Help: what can be typed, then what it does.

enter = Enter
enter-does = does what the line above says
set-reps = 8
set-reps-does = 8 reps at the planned load
set-load = 40 x 8
set-load-does = another load, in your unit
set-left = 40 x 8, 2 left
set-left-does = with 2 reps in reserve
set-other = set 1 40 x 8
set-other-does = corrects set 1
right = right
right-does = says that a set that looks like a slip is right; `right 1` names one
window-reps = 12
window-reps-does = 12 reps
window-spare = 12 8
window-spare-does = 12 reps, 8 s to spare
window-other = window 1 12 8
window-other-does = corrects window 1
begin-at = begin 2
begin-at-does = starts the clock at station 2; `begin` at the first
next = next
next-window-does = ends this window and goes to the next
window-clock = pause, resume, stop
hold-clock = pause, resume, extend, stop
clock-does = controls the clock; `extend` adds 15 s
readings = 10.5 11
readings-does = the readings, left and right
reading = 10.5
reading-does = the reading
held-sides = held 120 95
held-sides-does = by hand, seconds left and right
held-sides-short = held 120 60 cramp
held-sides-short-does = the same, with why a side is short
held-one = held 120
held-one-does = by hand, in seconds
held-one-short = held 60 cramp
held-one-short-does = the same, with why it is short
next-side-does = ends this side and goes to the next
rating = 7
rating-does = the session's rating, 0 to 10
option = option KEY
option-does = takes an option; `option none` goes back
bar = bar NAME
bar-does = takes another bar, for the next times too
note = note WORDS
note-does = tells your coach something about what you logged last
private = private WORDS
private-does = notes it for you alone; it never leaves this device
extra = extra 60 x 8
extra-does = a set more of the piece that is done; `extra face pull 20 x 12` another movement
flag = flag PLACE N
flag-does = flags discomfort, 1 to 10; loads in this movement stop going up
clear = clear
clear-does = clears the flags on this piece
undo = undo
undo-does = undoes the last entry; again for the one before
skip = skip
skip-does = leaves this piece for later; at a reading, just the reading
sheet = sheet
sheet-does = shows the whole day
finish = finish 7
finish-does = ends the session, with its rating from 0 to 10
finish-minutes = finish 7 60
finish-minutes-does = the same, with the minutes it took
quit = quit
quit-does = leaves the session open to continue later
help-places = Places, by name or letter: { $places }
help-signs = Emergency signs, typed after the number: { $signs }
