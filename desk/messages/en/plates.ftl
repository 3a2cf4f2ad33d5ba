## A table of loads and how to build them, one a row. Short headings.

column-load = load
# Reps of a warm-up set: "5 reps".
column-warm-up = warm-up
column-build = build
# What to do to each side for the next load: "put on 5 kg".
column-change = each side
# How many plates are put on or taken off a side.
column-moved = moved
reps = { $reps ->
    [one] 1 rep
   *[other] { $reps } reps
}
# The only load asked for, and the plates of a side.
only-load = { $load }: { $build }
