# What can be wrong with the kit of a plan file: bars, plates and bells, and loads that it can't build.

## Bars, plates and bells

# $unit is kg or lb.
unit-of-bar = Write it in { $unit }, like its bar.
# Plates are counted singly, and $count is odd.
plate-without-pair = `count` is { $count }; one plate has no pair.
count-single-plates = Count single plates: write { $fewer } or { $more }.
mass-listed-already = { $mass } is already listed on line { $line }.
list-mass-once = List each weight once and add the counts up.
# $name is in the quotes that it has in the file.
bar-named-already = The bar on line { $line } is called { $name } too.
name-each-bar = Give each kind of bar its own name, or raise its `count`.

## Machines and assistance

# $name is in the quotes that it has in the file.
machine-named-already = The machine on line { $line } is called { $name } too.
name-each-machine = Give each machine its own name.
# $unit is kg or lb.
unit-of-others = Write it in { $unit }, like the others.
# The key is `to`.
last-of-stack = Write at least { $from }, where the stack begins.
uneven-stack = From { $from } up in steps of { $step }, a stack never ends at { $to }.
end-of-stack = End it at { $below } or { $above }.
stack-too-long = This stack has { $count } loads; { $most } is the most.
larger-step = Write a larger step, or list the loads.

## The bar and the machine of a movement

bar-without-bar = `bar` names a bar; this movement has none.
leave-bar-out = Leave `bar` out, or write `lifted = "bar"` for the movement.
no-such-bar = The kit has no bar "{ $name }".
machine-without-machine = `machine` names a machine; this movement has none.
leave-machine-out = Leave `machine` out, or write `lifted = "machine"`.
no-such-machine = The kit has no machine "{ $name }".
# $example is a line of a plan with a bar or a machine.
add-to-kit-alone = Add `{ $example }` to `[kit]`.

## Loads that the kit can't build

too-many-loads = `plate` makes more than { $most } different loads.
leave-odd-plates-out = Leave out the plates with odd weights.
leave-odd-plates-out-or-unmix = Leave out the plates with odd weights, or write `mixed = false`.
no-bar = The kit has no bar.
no-bar-for-load = The kit has no bar for this load.
no-bell-for-load = The kit has no bell for this load.
no-pair-for-load = The kit has no two bells of one weight for this load.
nothing-to-hang = The kit has no plate and no bell to hang on for this load.
no-assistance-for-load = The kit has no assistance for this load.
no-machine-for-load = The kit has no machine for this load.
# $example is a line of a plan with a bar or a bell.
add-to-kit = Add `{ $example }` to `[kit]`, or leave the load out.
no-bar-builds = No bar can be loaded to { $load }.
no-bell-weighs = No bell weighs { $load }.
bar-cant-be = The bar "{ $bar }" can't be loaded to { $load }.
no-pair-weighs = No two bells weigh { $load } each.
cannot-hang = No plates and no bell to hang on weigh { $load }.
no-such-assistance = There is no assistance of { $load }.
no-such-pin = This machine has no { $load }.
nearest-loads = The nearest loads in this kit are { $below } and { $above }.
heaviest-load = The heaviest load in this kit is { $load }.
lightest-load = The lightest load in this kit is { $load }.

## Warm-ups

nothing-for-warm-ups = This sets nothing for warm-ups.
# $unit is kg or lb.
unit-of-smallest = Write it in { $unit }, like `smallest`.
