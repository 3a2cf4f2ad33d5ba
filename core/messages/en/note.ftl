### Notes of athlete and coach on a session or on something done in it.

## As the athlete reads them. $words are the note's own.

for-coach = For your coach: { $words }
# $place is "set 2" or "window 3".
for-coach-on = For your coach, { $place }: { $words }
from-coach = From your coach: { $words }
from-coach-on = From your coach, { $place }: { $words }
private = For you alone: { $words }
private-on = For you alone, { $place }: { $words }
# $day is the date of an earlier session, such as "Tue 3 Nov".
from-coach-of = From your coach about { $day }: { $words }
from-coach-about = From your coach about { $day }, { $place }: { $words }
set = set { $set }
window = window { $window }

## As the coach reads them.

from-athlete = { $athlete }: { $words }
# $about is "Squat set 2" or a piece.
from-athlete-on = { $athlete }, { $about }: { $words }
your-own = You: { $words }
your-own-on = You, { $about }: { $words }
# On the board, after the kind. $day is a date.
to-coach = { $day }: { $words }
to-coach-on = { $about }, { $day }: { $words }
# A set or window of a piece: "Squat set 2".
place-in = { $piece } { $place }

## What a tap saved, after "Saved: ".

noted = note for your coach: { $words }
noted-on = { $piece }, note for your coach: { $words }
noted-privately = note for you alone: { $words }
noted-privately-on = { $piece }, note for you alone: { $words }

## What can be wrong.

without-words = A note needs words, such as "the grip slipped".
too-long = A note has at most { $most } characters; this one has { $count }.
coach-not-private = A private note is for an athlete's own device. What a coach writes goes to the athlete.
no-session = { $name } has no session yet that a note could be about.
no-session-on = { $name } has no session on { $day }.
nothing-to-take-back = You have no such note there to take back.
