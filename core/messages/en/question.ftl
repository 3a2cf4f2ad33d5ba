### Questions as screens of a phone, read between two sets: what is asked stands above keys to touch, and the one key says what
### a press saves or what is missing.

not-here = There is nothing to ask about here now.

## A set by hand.

what-did-you-lift = What did you lift?
how-many-reps = How many good reps?
load = Load, in steps the room can build
good-reps = Good reps
# How many reps somebody could still have done.
reps-left = Reps you had left
reps-left-if-known = Reps you had left (optional)
# Under the load that the plan proposes.
proposed = { $load } proposed
# Under the number of reps asked for.
asked = asked
or-more = { $number } or more
choose-load = Choose the load
# What may have been lifted with none.
choose-load-or-none = Choose the load, or none
what-else = What else did you lift?
or-another-movement = A movement by its name
choose-movement = Choose the movement
no-load = none
any-load = Load
# Under what is saved: Face pull.
without-load = { $movement }, no load
choose-reps = Choose the reps
choose-reserve = Choose the reps left
not-saved-yet = Not saved yet.
# What is saved, such as "57.5 kg × 6, 2 left".
save = Save { $what }
# A key that lets the load be typed.
type-it = Type it
# $load is one that the room can build.
type-load = Type a load, such as { $load }
corrects-set = Corrects set { $set }.

## A set of whatever day. $was as "60 kg × 5" is how it is logged.

# $day as "Tue 10 Nov".
what-lifted-on = What did you lift on { $day }?
set-of = { $movement }, set { $set }
logged-as = It is logged as { $was }.
was-not-done = I did not do this set
take-back = Take back { $was }
not-counted = Nothing is worked out from it any more.
# It looked like a slip.
is-right = { $was } is right
counts-then = It counts then.
change-what-is-wrong = Change what is wrong

## A window by hand, and the seconds of a hold.

what-did-you-do = What did you do?
to-spare = Time to spare
save-reps = { $reps ->
    [one] Save 1 rep
   *[other] Save { $reps } reps
}
corrects-window = Corrects window { $window }.
how-long-held = How long did you hold it?
held = Held

## A range measure. $protocol is "knee to wall" or the like.

measure-before = Before the hold: { $protocol }
measure-after = After the hold: { $protocol }
choose-reading = Choose the reading
# $last as "9.6 cm" is what was read on an earlier day.
side-last = { $side }, last { $last }
# Both with their unit; one decimal can be typed.
type-reading = Type the reading: { $low } to { $high }

## A session's end, and where it begins.

how-hard = How hard was the whole session?
rest-end = 0 rest
hardest-end = 10 the hardest there is
how-many-minutes = How long did it take?
minutes = min
finish-rated = Finish: session RPE { $rpe }
choose-rpe = Choose how hard it was
choose-minutes = Choose how long it took
which-day = Which session do you train?
choose-day = Choose a session
which-bar = Which bar do you lift with?
choose-bar = Choose another bar
stays-next-time = It stays the next times too.
which-station = Where do you start?

## Options.

options = Options
instead-of = Instead of { $movement }
# A reason, such as "low back".
option-for = for { $reason }
taken-now = taken now
back-to = Back to { $movement }
take = Take { $what }
choose-option = Choose an option
logged-with-reason = Your coach sees which one and why.

## Discomfort.

where-hurts = Where does it hurt?
how-bad = How bad, 1 to 10?
loads-stay = 1 to { $most }: the load stays
movement-stops = { $least } to 10: stop this movement
any-signs = Numbness, weakness, dizziness or chest pain?
which-signs = Which of these?
none-of-these = None of these
back-to-place = Back
choose-place = Choose where it hurts
choose-severity = Choose how bad it is
save-flag = Save: { $place }, { $severity } of 10

# Which flag is over: its lines are in the list.
which-is-over = What is over?
choose-flag = Choose what is over
clear-this = Clear this flag
loads-come-back = Its loads follow your log again.

## Notes.

add-note = Add a note
note = Note
coach-reads = Your coach can read this
stays-here = Stays on this device
choose-reader = Choose who can read it
type-note = Type the note
save-note = Save the note
