## Sets as they were logged. What is typed in a shell stays as it is typed.

# Behind a piece's name in the list.
set = set { $set }
none = No set is logged.
# $date as 2026-11-03.
how-to-correct = To correct one: holdfast correct { $date } { $piece } { $set } "67.5 x 5"; or right, or none
how-to-leave-out = To leave one out: holdfast leave-out { $name } { $date } { $piece } { $set }
# To a coach who corrects: $reason says that only athletes do, $typed is a command.
coach-leaves-out = { $reason } Type: { $typed }
leave-out = holdfast leave-out NAME { $date } { $piece } { $set }

on-or-sessions = --on and --sessions do not go together. Name a date, or how many sessions.

## What became of a set

# $date as "Tue 3 Nov".
name = { $piece } set { $set } on { $date }
corrected = { $set }: { $now } (was { $before })
# $typed is a command.
corrected-still-odd = { $set }: { $now } (was { $before }). If it is right: { $typed }
correct-right = holdfast correct { $date } { $piece } { $set } right
confirmed = { $set }: { $done }, confirmed. It counts.
# $date as "2026-11-10".
taken-back = { $set }: taken back (was { $before }). To log it after all: `session --on { $date }`.
left-out = { $set }: { $done }. Nothing is proposed from it.
counts-again = { $set }: { $done }. It counts again.

## One-rep maxes

max-taken-back = Taken back.
# $why says what is wrong with it.
wrong-load = "{ $load }" is no load: { $why } Type a load with its unit, such as 100kg; or none.
