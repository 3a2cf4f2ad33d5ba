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
say-reserve = How many more reps could you have done at { $load }? Then this set gets a load.
# $reserve reps were left; the set to come should leave $leave.
found = first time: { $load } × { $reps } with { $reserve } left, so this should leave { $leave } in reserve
found-capped = first time: { $load } × { $reps } with { $reserve } left, so at most a quarter more, which should leave { $leave } or more in reserve
percent = { $percent } % of { $max }, the lower end of the estimated one-rep max
percent-low = new sets and reps: { $percent } % of { $max }, the lower end of the estimated one-rep max
reserve = { $reps ->
    [one] 1 rep should leave { $leave } in reserve, from { $max }, the lower end of the estimated one-rep max
   *[other] { $reps } reps should leave { $leave } in reserve, from { $max }, the lower end of the estimated one-rep max
}
reserve-low = { $reps ->
    [one] new sets and reps: 1 rep should leave { $leave } in reserve, from { $max }, the lower end of the estimated one-rep max
   *[other] new sets and reps: { $reps } reps should leave { $leave } in reserve, from { $max }, the lower end of the estimated one-rep max
}
# Joins one of the lines above with one of the two below, or the plan's load with the second.
and-then = { $first }; { $second }
lighter-after = { $weeks ->
    [one] lighter after { $weeks } week away
   *[other] lighter after { $weeks } weeks away
}
at-most-a-tenth = at most a tenth over last time's { $load }
fixed = set by the plan
fixed-other = the plan says { $load }
fixed-nearest = the plan says { $load }; this is the nearest the bar builds
free = your own choice

step = up { $by }: { $last } on { $day }, all reps made
step-capped = up { $by }, the largest step allowed: { $last } on { $day }, all reps made
# The open set went far enough past its target.
earned = up { $by }: { $last } on { $day }, { $reps } reps in the open set instead of { $asked }
earned-capped = up { $by }, the largest step allowed: { $last } on { $day }, { $reps } reps in the open set instead of { $asked }
missed = same again: { $last } on { $day }, set { $set } stopped at { $reps } of { $asked }
back-off = { $percent } % lighter: { $last } on { $day }, missed twice in a row
# The room has nothing lighter.
back-off-lightest = the lightest load here: { $last } on { $day }, missed twice in a row
eased-in = { $weeks ->
    [one] { $percent } % lighter after { $weeks } week away: { $last } on { $day }
   *[other] { $percent } % lighter after { $weeks } weeks away: { $last } on { $day }
}
eased-in-lightest = { $weeks ->
    [one] the lightest load here after { $weeks } week away: { $last } on { $day }
   *[other] the lightest load here after { $weeks } weeks away: { $last } on { $day }
}
unfinished = same again: { $last } on { $day }, { $done } of { $sets ->
    [one] { $sets } set done
   *[other] { $sets } sets done
}
# $flag as "knee 5/10, flagged Tue 10 Nov".
flagged = no step up: { $flag }
flagged-from = no step up from { $last }: { $flag }
no-step = stay at { $last } and add a rep to each set: the next load here is { $above }, and { $allowed } is the most allowed (last time { $day })
no-heavier = stay at { $last } and add a rep to each set: this room builds nothing heavier (last time { $day })
next-lighter = the next lighter load: this room cannot build { $last } (last time { $day })

coach-accepted = coach accepted
coach-changed = coach changed
coach-refused = coach kept last time's load
# $what as "coach changed".
coach-last-time = { $what }; last time { $load }
# $what as "coach changed (last time 60 kg)", $words as the coach wrote them.
coach-said = { $what }: "{ $words }"

# Why an option is suggested. $pattern as "squat".
spared = { $sets ->
    [one] hard { $pattern } work the day before ({ $sets } set): this spares it
   *[other] hard { $pattern } work the day before ({ $sets } sets): this spares it
}
