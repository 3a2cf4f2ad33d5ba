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

## Loads that the kit can't build

too-many-loads = `plate` makes more than { $most } different loads.
leave-odd-plates-out = Leave out the plates with odd weights.
leave-odd-plates-out-or-unmix = Leave out the plates with odd weights, or write `mixed = false`.
no-bar = The kit has no bar.
no-bar-for-load = The kit has no bar for this load.
no-bell-for-load = The kit has no bell for this load.
# $example is a line of a plan with a bar or a bell.
add-to-kit = Add `{ $example }` to `[kit]`, or leave the load out.
no-bar-builds = No bar can be loaded to { $load }.
no-bell-weighs = No bell weighs { $load }.
nearest-loads = The nearest loads in this kit are { $below } and { $above }.
heaviest-load = The heaviest load in this kit is { $load }.
lightest-load = The lightest load in this kit is { $load }.
