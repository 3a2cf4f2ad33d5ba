# What a coach is told about a plan that can be published: it is allowed and may not be meant. In a line below
# each stands what to do about it.

## Names

# $name and $other look the same or nearly so; $line is where $other stands.
names-alike = "{ $name }" and "{ $other }" on line { $line } are two names.
write-names-alike = Write both the same way, or make them easy to tell apart.
# $code is the number of a character, such as U+200B.
hidden-character = "{ $name }" has a character that nobody sees ({ $code }).
type-name-again = Type the name again.

## Tracks: which sets share a history

# Two pieces of one movement with the same sets and reps. $line is where $other stands.
two-histories = "{ $name }" and "{ $other }" on line { $line } have the same movement, sets and reps, but each its own history.
track-together = Give both the same `track` to share one history, or each its own to say that they are two.
# Two pieces of one name and movement whose sets and reps differ.
one-history = "{ $name }" has other sets and reps than on line { $line }, but the same history.
track-apart = Give each a `track` of its own, or both the same one to say that they are one.
track-of-two = The track "{ $track }" is another movement's on line { $line }. Each movement keeps its own history.
name-other-track = Give it another name, so that nobody takes them for one.

## Steps

# $step is a mass; $least is the smallest difference between two loads.
step-too-small = A step of { $step } leads to no other load: no two loads here are less than { $least } apart.
step-too-small-from = From { $from } a step of { $step } leads to no other load: the next one is { $next }.
larger-step = Write a step of { $step } or more, or add smaller weights to `[kit]`. Until then only reps go up.
# The keys are `step` and `earned_step`. $unit is kg or lb.
no-step-in-unit = `{ $key }` has no mass in { $unit }, in which this is loaded.
no-step-in-unit-of-bar = `{ $key }` has no mass in { $unit }, in which the bar "{ $bar }" is loaded.
step-in-each-unit = Add one in { $unit }. Otherwise the first one is rounded down to what can be loaded.
earned-too-small = The earned step of { $earned } is no larger than the step of { $step }.
larger-earned = Write a larger one, or leave `earned_step` out.

## Loads

# The bar stands there alone.
no-plates = The bar "{ $bar }" takes no plates of this kit, so this load never changes.
add-plates = Add a `plate` marked in the bar's unit, or name another `bar`.
name-bar = Name a bar that can, for the piece or its movement: `bar = "{ $bar }"`.
# $percent is how much heavier the next load is.
gap = From { $from } the next load is { $to }, up { $percent } %. It is proposed after { $reps } reps with { $from }.
gap-unprepared = From { $from } the next load is { $to }, up { $percent } %. Even { $top } reps do not prepare it.
fill-gap = Add a weight between them to `[kit]` if you can.
fill-gap-or-raise-top = Add a weight between them to `[kit]` if you can, or let reps rise further: `top = { $reps }`.
# $week is the week of the block in which the lighter load stands.
fixed-over-cap = { $load } is more than 10 % above the { $last } of week { $week }.
# $people are one or several names, $count is how many; $from is the heaviest they made lately.
fixed-over-people = { $count ->
    [one] { $load } is more than 10 % above the { $from } that { $people } made lately.
   *[other] { $load } is more than 10 % above the { $from } that { $people } made lately.
}
capped-there = No more than 10 % up is proposed until they get there. Write less, or leave it if you mean it.
smaller-jump = Write a smaller jump, or leave it if you mean it.

## Where people are

# $people are one or several names, $count is how many; $from is their load, $to the next one the room builds.
people-at = { $count ->
    [one] { $people } is at { $from }; the next load is { $to }, up { $percent } %.
   *[other] { $people } are at { $from }; the next load is { $to }, up { $percent } %.
}
# The same where they begin with a load in this plan.
people-begin = { $count ->
    [one] { $people } starts at { $from }; the next load is { $to }, up { $percent } %.
   *[other] { $people } start at { $from }; the next load is { $to }, up { $percent } %.
}
# Somebody, and the option they take.
with-option = { $name } ({ $option })
# $names are the first of them.
and-others = { $more ->
    [one] { $names } and 1 other
   *[other] { $names } and { $more } others
}
# Stands behind people who were named with their loads.
same-for-others = { $count ->
    [one] The same holds for 1 other, at another load.
   *[other] The same holds for { $count } others, at other loads.
}
# Stands before the people it is about.
step-too-small-there = A step of { $step } does not reach the next load, so reps rise first.
larger-step-there = Write a step of { $step } or more, or add smaller weights to `[kit]`.
# These stand behind people and their next load.
reached-after = It is proposed after { $reps } reps.
reached-after-some = It is proposed after { $least } to { $most } reps.
not-prepared = Even { $top } reps do not prepare it.

## Times

starts-far-ahead = This block starts in { $year }, more than a year from now.
started-long-ago = This block started in { $year }, more than a year ago.
all-weeks-easy = Every week of this block is easy, so no load goes up in it.
leave-a-week = Leave out a week that is meant to be usual.
check-the-year = Check the year of `starts`.
# Half a second a rep is the fastest there is.
reps-past-window = { $reps } reps do not fit into { $window }.
fewer-reps = { $most ->
    [one] At half a second a rep there is time for 1.
   *[other] At half a second a rep there is time for { $most }.
}
