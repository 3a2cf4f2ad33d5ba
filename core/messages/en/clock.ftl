### Clocks: what is called out, what stands over the digits, what is asked about them. Time that runs down
### is "to go"; "left" is a side of the body.

## Cues as the phone speaks them, to somebody on the floor with the phone out of reach. As short as a coach
## calls them.

cue-get-ready = get ready
cue-begin = go
cue-halfway = halfway
cue-push = push
cue-let-go = let go
cue-change-sides = change sides
cue-next = next
cue-ten-seconds = ten seconds
cue-done = done
cue-rest-over = rest is over
# The first window starts, with its movement.
cue-begin-movement = go, { $movement }
# The next window starts, with its movement.
cue-next-movement = next, { $movement }

## The phase over the big digits: the same words as the cues.

get-ready = Get ready
hold = Hold
push = Push
let-go = Let go
change-sides = Change sides
window-of = Window { $window } of { $windows }
rest = Rest
rest-is-over = Rest is over
done = Done
paused = Paused
paused-in-window = Paused in window { $window }
stopped = Stopped

## More about the phase, in a few words.

# While changing sides: the side to change to.
to-left = to the left
to-right = to the right
to-side = to side { $side }
# Paused while changing sides: the side that comes next.
before-left = before the left
before-right = before the right
before-side = before side { $side }
# While getting ready: what the first window asks for.
first-window = first: { $asked }
# $time is digits, such as "0:48".
next-cue = next: { $cue } in { $time }
# Cues that were due while the app slept: only told, not given late.
missed-cues = missed cues: { $cues }
missed-cues-and-more = missed cues: ...; { $cues }
# Between two cues of those.
between-cues = { "; " }

## How long ago something was.

seconds-ago = { $seconds } s ago
minutes-ago = { $minutes } min ago
hours-ago = { $hours } h { $minutes } min ago
# A time of an hour or more.
hours = { $hours } h { $minutes } min

## Why a side was held for less than planned.

skipped = skipped
stopped-early = stopped early
# The device was restarted with another time while the clock ran.
partly-timed = only partly timed
said = "{ $said }"
why-said = { $why }: "{ $said }"
# $held is a time, $why one of those above.
held-why = { $held } ({ $why })

## How a clock ended: the first sentence of what is asked about it.

ran-out = Ran out just now.
ran-out-ago = Ran out { $time } ago.
ran-out-unknown = Ran out at an unknown time.
ended = Stopped just now.
ended-ago = Stopped { $time } ago.
ended-unknown = Stopped at an unknown time.

## What to look at or answer about a clock. $ended is one of the sentences above.

hold-logged = { $ended } Logged: { $held }.
hold-nothing = { $ended } Nothing held.
hold-to-log = { $ended } To log: { $held }. Is that right?
windows-to-log = { $windows ->
    [one] { $ended } 1 window still to log: window { $first }.
   *[other] { $ended } { $windows } windows still to log, starting with { $first }.
}
hold-restarted = The device restarted; time was kept by its clock. Do the seconds look right?
interval-restarted = The device restarted; time was kept by its clock. Is this the right window?
hold-unknown = The device restarted and its clock was changed; the time since is unknown. Counted: { $held }. Go on, or type the seconds of each side?
interval-unknown = The device restarted and its clock was changed; the time since is unknown. Go on from here, or stop and start again?

## Fewer reps where windows get rushed, from the athlete's own pace.

# $margin is the time that should be to spare, such as "10 s".
fewer-reps = { $fit ->
    [one] At this pace, 1 rep instead of { $reps } leaves { $margin } to change over.
   *[other] At this pace, { $fit } reps instead of { $reps } leave { $margin } to change over.
}
no-reps-fit = At this pace, not even one rep leaves { $margin } to change over. Take an option.

## The rest between sets.

# Where its length comes from; stands in brackets after it.
rest-by-plan = from the plan
rest-usual = usual rest
rest-published = published guidance for heavy sets: { $least } to { $most }
# $from is one of those.
rest-to-go = { $time } of { $suggested } to go ({ $from })
rest-to-go-restarted = { $time } of { $suggested } to go ({ $from }). The device restarted; time was kept by its clock.
rested = { $rested } rested, { $suggested } suggested ({ $from })
rested-restarted = { $rested } rested, { $suggested } suggested ({ $from }). The device restarted; time was kept by its clock.
rest-unknown = The device restarted and its clock was changed; the time since is unknown. { $suggested } suggested ({ $from }): go by feel.
