## What to do to each side of the bar. Plates as "20 + 5 kg".

nothing-to-change = nothing to change
put-on = put on { $plates }
take-off = take off { $plates }
take-off-put-on = take off { $off }, put on { $on }

## A warm-up set whose load is chosen by feel. After it stands "× 5".

light = light
light-bell = light bell

## Loads somebody asks about

# The bar's name and what it weighs without plates.
bar = { $bar }, { $mass } empty
bar-with-collars = { $bar }, { $mass } and collars { $collars }: { $both } empty
# A load with the plates of a side: "60 kg (20 kg a side)".
build = { $load } ({ $plates })
# All loads asked about together.
handled-least = { $plates ->
    [one] 1 plate put on or taken off each side, until the bar is empty again; nothing needs fewer
   *[other] { $plates } plates put on or taken off each side, until the bar is empty again; nothing needs fewer
}
# $alone: the same with each load built for itself, more than $plates.
handled-least-together = { $plates ->
    [one] 1 plate put on or taken off each side, until the bar is empty again; { $alone } with each load built on its own
   *[other] { $plates } plates put on or taken off each side, until the bar is empty again; { $alone } with each load built on its own
}
handled-at-least = { $plates ->
    [one] 1 plate put on or taken off each side, until the bar is empty again; not everything was tried, but nothing needs fewer than { $than }
   *[other] { $plates } plates put on or taken off each side, until the bar is empty again; not everything was tried, but nothing needs fewer than { $than }
}

## Why loads cannot be built. They come after "load:" or "loads:".

# $below and $above as "60 kg (20 kg a side)".
between = this kit cannot build { $load } on the { $bar }; the nearest are { $below } and { $above }
too-light = { $load } is lighter than the { $bar } can be; the lightest is { $above }
too-heavy = { $load } is heavier than this kit builds on the { $bar }; the heaviest is { $below }
bar-full = { $load } is heavier than the { $bar } takes; the heaviest is { $below }, with { $plates } plates a side at most
nothing-to-load = there are no plates for the { $bar }
too-many = at most { $most } loads at a time; these are { $found }
name-one = name at least one, such as 92.5kg
above-zero = "{ $typed }": a load must be above zero
# $reason says what is wrong with what was typed.
not-a-load = "{ $typed }": { $reason }
no-bar = the kit has no bar
# Comes after: bar "axle":. $bars are the names of the bars there are.
no-such-bar = This kit has { $bars }.
