## Loads and plates

# A load in the reader's unit, and the exact one behind it: "203.9 lb (92.5 kg)". The bracket begins what
# may be left out where there is no room, so it stays a bracket after a space.
exact-behind = { $load } ({ $exact })
# $plates as "20 + 5 kg".
a-side = { $plates } a side
empty-bar = empty bar

## Why a load is what it is. One line under a set, and behind a proposal for the coach's eyes: so no "you"
## but where the athlete is asked. Loads come with their unit, $day as "Tue 10 Nov".

first-time = first time: pick a light load, log it, and say how many more reps you could have done
start = first time: the plan starts here
start-nearest = first time: the plan starts at { $load }; this is the nearest here
say-reserve = How many more reps could you have done at { $load }? Then this set gets a load.
too-heavy = no rep at { $last }: pick a lighter load, log it, and say how many more reps you could have done
# $reserve reps were left; the set to come should leave $leave.
found = first time: { $load } × { $reps } with { $reserve } left, so this should leave { $leave } in reserve
found-capped = first time: { $load } × { $reps } with { $reserve } left, so at most a quarter more, which should leave { $leave } or more in reserve
# Either begins a line with where the one-rep max comes from.
percent = { $percent } % of { $max }
reserve = { $reps ->
    [one] 1 rep that should leave { $leave } in reserve, from { $max }
   *[other] { $reps } reps that should leave { $leave } in reserve, from { $max }
}
other-reps = new sets and reps: { $what }
# After it, what was lifted with other reps.
other-reps-last = { $what }; last time { $last } on { $day }
just-made = new sets and reps: { $load } × { $reps } on { $day }
# $what as "75 % of 86 kg".
max-estimate = { $what }, the lower end of the estimated one-rep max
max-tested = { $what }, the one-rep max tested on { $day }
max-tested-capped = { $what }, a tenth up, the most after the one-rep max tested on { $day }
max-coach = { $what }, the training max the coach set on { $day }
max-again = { $what }, the training max
max-up = { $what }, the training max, up after all reps were made
max-missed = { $what }, the training max, the same after a miss
max-missed-lighter = { $what }, the training max, lower: a lighter load was missed
max-back-off = { $what }, the training max, lower after two misses in a row
max-short = { $what }, the training max, the same: fewer reps were left than planned
max-short-twice = { $what }, the training max, lower: far fewer reps were left than planned, twice in a row
max-away = { $what }, the training max, lower after weeks away
fixed = set by the plan
fixed-nearest = the plan says { $load }; this is the nearest here
fixed-capped = the plan says { $load }; at most a tenth over { $last }, the heaviest in half a year
free = your own choice

step = up { $by }: { $last } on { $day }, all reps made
step-capped = up { $by }, the largest step allowed: { $last } on { $day }, all reps made
# The open set went far enough past its target.
earned = up { $by }: { $last } on { $day }, { $reps } reps in the open set instead of { $asked }
earned-capped = up { $by }, the largest step allowed: { $last } on { $day }, { $reps } reps in the open set instead of { $asked }
way-back = up { $by }, on the way back to { $best }: { $last } on { $day }, all reps made
once-more = once more before going up: { $last } on { $day }, all reps made
more-reps = one rep more, { $reps }: { $last } on { $day }, all reps made; { $next } is the next load here
more-reps-heaviest = one rep more, { $reps }: { $last } on { $day }, all reps made; nothing heavier here
next-build = up to the next load here for { $reps } reps: { $last } on { $day }, enough reps made
at-top = same again: { $last } on { $day }, all reps made; { $next } is too far to go up at once
at-top-heaviest = same again: { $last } on { $day }, all reps made; nothing heavier here
missed = same again: { $last } on { $day }, set { $set } stopped at { $reps } of { $asked }
# What was missed.
missed-much = missed by far
missed-twice = missed twice in a row
missed-thrice = missed in three sessions in a row
# $how as "missed twice in a row".
# Less than last time, two ways to say it: the second of what is taken off a body. Stand in the place of $less.
lighter = { $percent } % lighter
lighter-by = { $by } lighter
more-assistance = { $by } more assistance
back-off = { $less } than { $last }: { $how }, last on { $day }
# The room has nothing lighter.
back-off-lightest = fewer reps, nothing lighter here: { $last } on { $day }, { $how }
held-back = { $weeks ->
    [one] no step up after { $weeks } week away: { $last } on { $day }
   *[other] no step up after { $weeks } weeks away: { $last } on { $day }
}
eased-in = { $weeks ->
    [one] { $less } after { $weeks } week away: { $last } on { $day }
   *[other] { $less } after { $weeks } weeks away: { $last } on { $day }
}
# The room has nothing near below.
eased-in-reps = { $weeks ->
    [one] fewer reps after { $weeks } week away: { $last } on { $day }, no load near below it here
   *[other] fewer reps after { $weeks } weeks away: { $last } on { $day }, no load near below it here
}
unfinished = same again: { $last } on { $day }, { $done } of { $sets ->
    [one] { $sets } set done
   *[other] { $sets } sets done
}
in-doubt = same again: { $last } on { $day }, set { $set } may be a slip
left-out = same again: { $last } on { $day }, set { $set } left out by the coach
# $flag as "knee 5/10, flagged Tue 10 Nov".
flagged = no step up: { $flag }
flagged-from = no step up from { $last }: { $flag }
withdrawn = no load until this is cleared: { $flag }
after-pain = { $less }, the first time after pain: { $flag }
after-pain-same = no step up from { $last }, the first time after pain: { $flag }
easy-week = easy week: { $less } than { $load }
easy-week-same = easy week: { $load } as it is
next-lighter = the next lighter load: this cannot be loaded to { $last } (last time { $day })
none-near = this cannot be loaded near { $last } (last time { $day })

# Beside a load that pain or an easy week keeps lower than the coach's answer, which stands.
answered = the coach's answer of { $load } stands and is held
answered-none = the coach's answer stands and is held
coach-accepted = coach accepted
coach-changed = coach changed
coach-refused = coach kept last time's load
# $what as "coach changed".
coach-last-time = { $what }; last time { $load }
# $what as "coach changed (last time 60 kg)", $words as the coach wrote them.
coach-said = { $what }: "{ $words }"

# What else speaks for less, after the line of why: "also: 3 weeks away".
also = also: { $what }
also-away = { $weeks ->
    [one] { $weeks } week away
   *[other] { $weeks } weeks away
}
also-missed = set { $set } stopped at { $reps } of { $asked }
also-unfinished = not all sets done last time
also-cap = more than a tenth over { $last }
# Where a tenth is not the most: of what is added to body weight or taken off it, and where more was lifted than proposed.
also-most = more than { $most }, the most after { $last }

# Why an option is suggested. $pattern as "squat".
spared = { $sets ->
    [one] hard { $pattern } work the day before ({ $sets } set): this spares it
   *[other] hard { $pattern } work the day before ({ $sets } sets): this spares it
}
