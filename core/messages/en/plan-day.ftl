# What can be wrong with the block of a plan file, with its days, their pieces, and the movements and
# stretches that these name. Dates are as the file has them: 2026-11-02.

## When the block starts

starts-on-tuesday = `starts` must be a Monday; { $date } is a Tuesday.
starts-on-wednesday = `starts` must be a Monday; { $date } is a Wednesday.
starts-on-thursday = `starts` must be a Monday; { $date } is a Thursday.
starts-on-friday = `starts` must be a Monday; { $date } is a Friday.
starts-on-saturday = `starts` must be a Monday; { $date } is a Saturday.
starts-on-sunday = `starts` must be a Monday; { $date } is a Sunday.
mondays = The Monday before is { $before }, the Monday after is { $after }.
write-monday = Write a Monday, such as `{ $example }`.

## Easy weeks

nothing-easier = `easy` makes nothing easier.
add-either = Add `{ $load }`, `{ $sets }` or both.
# $least and $most are texts in their quotes, such as "-40 %".
write-lighter = Write how much lighter, from { $least } to { $most }.
write-fewer = Write how many sets fewer, from { $least } to { $most }.

## Names

# $name is in the quotes that it has in the file.
name-taken = The name { $name } is already on line { $line }.
name-each-day = Give each day of a block its own name.
name-each-piece = Give each piece of a day its own name.

## Movements and stretches

no-movement = This plan has no movement "{ $key }".
no-stretch = This plan has no stretch "{ $key }".
# $keys are several, such as "squat" and "press-up".
plan-has = The plan has { $keys }.
# $keys are several, with commas only.
plan-has-more = { $more ->
    [one] The plan has { $keys } and 1 more.
   *[other] The plan has { $keys } and { $more } more.
}
write-movement = Write `[movement.back-squat]` with `name = "Back squat"`, `pattern = "squat"` and `lifted = "bar"` below it.
write-stretch = Write `[stretch.calf-wall]` with `name = "Calf stretch"` and `region = "calves"` below it.

## Interval pieces

# $window is how long one window takes, $total how long all of them.
piece-too-long = { $rounds ->
    [one] { $stations ->
        [one] 1 round of 1 station at { $window } takes { $total }.
       *[other] 1 round of { $stations } stations at { $window } each takes { $total }.
    }
   *[other] { $stations ->
        [one] { $rounds } rounds of 1 station at { $window } take { $total }.
       *[other] { $rounds } rounds of { $stations } stations at { $window } each take { $total }.
    }
}
write-fewer-rounds = A piece is at most { $longest }. Write fewer rounds.
# The key is `margin`.
shorter-than-window = It must be shorter than the window of { $window }.
load-for-body = `load` is for a bar or a bell; this is a bodyweight movement.
leave-load-out = Leave `load` out.

## Hold pieces

switch-on-one-side = `switch` is the time between two sides; this hold has one.
leave-switch-out = Leave `switch` out, or write `sides = 2`.
switch-too-long = `switch` takes { $switch }, longer than the hold of { $hold }.
shorten-switch = Shorten it, or hold longer.
phases-too-long = `contract` and `relax` together take { $phases }, longer than the hold of { $hold }.
shorten-phases = Shorten them, or hold longer.
phase-in-static = `{ $key }` is only for contract-relax; this hold is static.
leave-phase-out = Write `technique = "contract-relax"`, or leave `{ $key }` out.
