### Words that a phone draws around what the core shows: short, read at arm's length.

# Beside what goes on or comes off the bar.
each-side = each side
put-on = Put on
take-off = Take off
bar-is-ready = Bar is ready
# Before the set that comes after a rest.
then = then
# $time is "1:24".
to-go = { $time } to go
rested-over = over by { $time }
next = next
warm-up = Warm-up
# The way back to the day.
today = Today
# Keys that do not fit beside the one key.
more = More
back = Back
# For a screen reader: one side of the bar, $plates is "15, 5".
bar-from-inside = One side of the bar, from the inside: { $plates }
empty-bar = The bar is empty
