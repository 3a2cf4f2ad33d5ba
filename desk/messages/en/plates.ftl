## Loads and what to do to each side of the bar for them. A drawing of one side stands under each.

# The only load asked for, and the plates of a side.
only-load = { $load }: { $build }
# $change is what to do to each side: "put on 5 kg".
step = { $load }: { $change }
warm-up-step = { $load } × { $reps }, warm-up: { $change }
# Equal plates counted on the drawing: "1.25×4".
several = { $plate }×{ $plates }
