## A session line by line. Words in `` are typed as they stand.

# Shown once at the start.
keys = Enter does what the line above it says. `?` shows everything else. `quit` leaves the session open.
# Shown when the session is finished already.
already-finished = Finished. `undo` opens it again, `finish 7` rates it again, Enter leaves it. To train
    another day: session --day NAME

## Words before a line, in colour

nothing-saved = nothing saved:
not-understood = not understood:
not-saved = not saved:
saved = saved:
# $number is the entry's number in the log.
saved-as = saved { $number }:
undone = undone: { $what }
# Stands before something odd about what was saved, perhaps a slip.
really = really?
undo-a-slip = Type `undo` if it was a slip.
# $right as "set 3 is right".
right-or-undo = Type `right`: { $right }. Type `undo` if it was a slip.

# The rest before the next set; $left says how long it is.
rest = rest: { $left }
