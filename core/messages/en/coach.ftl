## The heading of the board. $block is the name of the plan's block; the dates name weekday and day.

heading-in-week = { $block }, week { $week } of { $weeks }
heading-to-start = { $block }, starts { $date }
heading-ended = { $block }, ended { $date }
heading-no-plan = No plan published yet

## What has not arrived at the coach's device, or arrived damaged. A line each below the board.

# $file is a file's name, $reason a whole sentence.
left-alone = { $file } left alone: { $reason }
# $number counts the devices of a person who has several.
device-of = { $name }'s device
device-of-many = { $name }'s device { $number }
# An upload is a file with part of a member's log; $numbers are the numbers of those that are missing.
uploads-missing = { $uploads ->
    [one] 1 file from { $device } has not arrived: number { $numbers }.
   *[other] { $uploads } files from { $device } have not arrived: numbers { $numbers }.
}
uploads-missing-unknown = { $uploads ->
    [one] 1 file from an unknown device has not arrived: number { $numbers }.
   *[other] { $uploads } files from an unknown device have not arrived: numbers { $numbers }.
}
# $sequence is the number of a file, $last that of the last one this device knows.
seen-beyond = { $device } has seen file { $sequence } of this device, which knows of { $last }. Was it restored from a backup, or copied? An exchange brings back what is missing.
seen-beyond-unknown = An unknown device has seen file { $sequence } of this device, which knows of { $last }. Was it restored from a backup, or copied? An exchange brings back what is missing.
two-histories = { $device } has two histories: it was copied, or restored from a backup. Both are kept.
two-histories-unknown = An unknown device has two histories: it was copied, or restored from a backup. Both are kept.
# Leaves that are kept and do not count.
uploads-of-nobody = { $count ->
    [one] { $count } file is from somebody this crew does not know. It is kept and does not count.
   *[other] { $count } files are from somebody this crew does not know. They are kept and do not count.
}
uploads-removed = { $count ->
    [one] { $count } file of a device that was stopped or taken out does not count: it was written after that, or what it follows has not arrived. It is kept.
   *[other] { $count } files of a device that was stopped or taken out do not count: they were written after that, or what they follow has not arrived. They are kept.
}
uploads-too-many = { $count ->
    [one] { $count } file is from one device more than a person may have. It is kept and does not count.
   *[other] { $count } files are from one device more than a person may have. They are kept and do not count.
}
newer-entries = { $entries ->
    [one] 1 entry can only be read by a newer Holdfast. It is kept; update Holdfast to see it.
   *[other] { $entries } entries can only be read by a newer Holdfast. They are kept; update Holdfast to see them.
}

## What kind of look a member needs, in a word. Stands before the words of the next section.

# Somebody hurts.
kind-pain = pain
# Loads do not go up any more.
kind-stalled = stalled
# Not seen for a while.
kind-away = away
# Words for the coach that nobody has answered yet.
kind-note = note
# Two devices disagree.
kind-conflict = conflict
# An option was taken instead of the movement.
kind-option = option
# Less time to spare than planned.
kind-rushed = rushed
# A set that looks like a slip of the finger.
kind-slip = slip
# Loads went up.
kind-up = up

## What to look at about a member. A line each, behind the kind.

# "knee 4/10 in Back squat on Tue 10 Nov": a part of the body, how bad of 10, a movement, a date.
pain = { $place } { $severity }/10 in { $movement } on { $date }
# $signs are named after another; each asks for a doctor.
pain-with-signs = Emergency signs: { $signs }. Make sure this person sees a doctor. Flagged: { $place } { $severity }/10 in { $movement } on { $date }.
# The same between two sessions, where no movement brings it on.
pain-alone = { $place } { $severity }/10 on { $date }, between sessions
pain-alone-with-signs = Emergency signs: { $signs }. Make sure this person sees a doctor. Flagged: { $place } { $severity }/10 on { $date }, between sessions.
# A flag on a member's page, behind its date and before what became of it. $signs is a list of emergency signs.
flag = { $place } { $severity }/10 in { $movement }
flag-with-signs = { $place } { $severity }/10 in { $movement }, with { $signs }
# Where no movement brings it on.
flag-alone = { $place } { $severity }/10, not from a movement
flag-alone-with-signs = { $place } { $severity }/10 with { $signs }, not from a movement
# $loads are those of last time, set by set, with their unit.
stall-missed = { $movement }: missed twice in a row at { $loads }
stall-thrice = { $movement }: sets missed in three sessions in a row at { $loads }
# Reps are at their top, and the next load of the room is too far.
stall-no-step = { $movement }: no load within reach above { $loads }
away-since = Last trained { $date }; { $days ->
    [one] 1 planned day missed since
   *[other] { $days } planned days missed since
}
away-always = No session yet; { $days ->
    [one] 1 planned day missed
   *[other] { $days } planned days missed
}
# Entries of the member's log.
conflict = Two devices disagree about { $entries ->
    [one] 1 entry
   *[other] { $entries } entries
}
# $option is what was done instead of a movement, $because the reason, such as "low back".
option-taken = { $option } ({ $because }), { $sessions ->
    [one] 1 session
   *[other] { $sessions } sessions
}
option-taken-no-reason = { $option }, { $sessions ->
    [one] 1 session
   *[other] { $sessions } sessions
}
# Windows of an interval piece.
rushed = { $rushed } of { $windows ->
    [one] 1 window
   *[other] { $windows } windows
} with less time to spare than planned
# $done is what was logged, such as "675 kg × 5".
slip = { $movement }, set { $set } on { $date }: { $done } may be a slip
progress = { $movement }: last set went from { $from } to { $to }

## Finding a member.

no-log-yet = No member's log has arrived yet.
# $names are joined to a list.
which-member = More than one is called like that: { $names }. Write the whole name.
# $names are joined to a list.
members-here = The members are { $names }.

name-the-member = Name the member.

## Sets as they were logged. $date is a short date such as "Tue 3 Nov".

session-heading = { $day }, { $date }
no-sets-at-all = No set is logged yet.
# $dates is a list.
no-sets-on = No set is logged on { $date }. The latest are on { $dates }.
# $pieces is a list of names in quotes; the piece that is missing is named before it.
pieces-with-sets = On { $date } there are sets of { $pieces }.
# $numbers is a list of the sets there are.
no-such-logged-set = On { $date } { $piece } has set { $numbers }; there is no set { $set }. `session --on { $day }` adds one that was forgotten.
no-such-session = { $sessions ->
    [one] There is only one session on { $date }; there is no session { $session }.
   *[other] There are { $sessions } sessions on { $date }; there is no session { $session }.
}
# $numbers is a list.
which-session = More than one session on { $date } has such a set. Name the session: { $numbers }.
which-piece = { $movement } is in { $pieces }. Name the piece.

## Leaving a set out of what is proposed.

set-not-here = This set is not here. It may have been taken back.
left-out-already = This set is left out already.
not-left-out = This set is not left out.

## One-rep maxes. $load and $heaviest have their unit, $date is a short date such as "Tue 3 Nov".

max-tested = { $movement }: { $load }, tested on { $date }
max-set = { $movement }: { $load }, training max set by the coach on { $date }
# $movements is a list.
no-such-movement = There is no movement "{ $movement }" in the plan. It has { $movements }.
no-movement-lifted = There is no movement "{ $movement }" in the plan, nor one with a load.
no-max-of-a-body = { $movement } is done with the body. A one-rep max is of a bar, bells or a machine.
max-too-heavy = { $load } is too heavy. A one-rep max is { $most } at most.
max-far-above = { $load } is far above what { $heaviest } on { $date } says. If it is right, say anyway.
max-unheard-of = Nothing was lifted in this movement in the last half year, and { $load } is a lot. If it is right, say anyway.
max-far-below = { $load } is less than half the heaviest set of the last half year, { $heaviest } on { $date }. If it is right, say anyway.
no-max-to-take-back = You gave no one-rep max of this movement.

## Answering a proposal.

not-in-crew = This person is not in your crew.
no-plan-yet = No plan is published yet. Publish one first.
no-proposals = { $name } has no proposals yet.
# $movements are joined to a list.
proposals-for = { $name } has proposals for { $movements }.
# $pieces is a list of names in quotes.
which-proposal = { $name } has more than one proposal for { $movement }: { $pieces }. Name the piece.
# Behind a movement's name on the board, where a member has several proposals of it: "Squat (Squat light)".
movement-of-piece = { $movement } ({ $piece })
# Where two pieces are called the same; the track is what a piece's history is kept under.
piece-and-track = { $piece }, { $track }
# Behind an answer that something holds. $loads are those of the answer, set by set, with their unit.
held-by-pain = The answer stands until this is trained again: { $loads }. Pain holds it until the flag is cleared.
held-after-pain = The answer stands until this is trained again: { $loads }. Pain holds it for one session, the first one after it; that session uses the answer up.
held-by-easy-week = The answer stands: { $loads }. The easy week is lighter and does not use it up.
loads-only-with-change = Only a change takes loads. Leave them out to accept or refuse.
one-load-or-each = { $sets ->
    [one] This piece has 1 set. Give one load.
   *[other] Give one load for the last set, or one for each of the { $sets } sets.
}
nothing-for-the-last = Nothing is proposed for the last set. Give a load for each set.
past-the-cap = Set { $set }: { $load } is more than 10 % above the last { $last }. Published guidance is to go up by 2 to 10 % at a time, so at most { $most }. To send it all the same, say anyway.
# Of what is added to body weight or taken off it, where percent mean nothing.
past-the-next-load = Set { $set }: { $load } is more than one load up from the last { $last }. These go up by one load of the room at a time, so at most { $most }. To send it all the same, say anyway.
# More was lifted last time than was proposed.
past-what-was-proposed = Set { $set }: { $load } is too far above what was proposed last time. Then { $last } was lifted, more than proposed, so at most { $most } now. To send it all the same, say anyway.
# Set by set, a load over what a miss or weeks away allow. $why as the line beside the load.
past-a-limit = Set { $set }: { $load } is more than the { $most } proposed ({ $why }). To send it all the same, say anyway.
nothing-above-while-flagged = Set { $set }: discomfort is flagged. Nothing above last time's { $last } until the flag is cleared.
cannot-build = Set { $set }: this room cannot build { $load }, nor anything near it.
cannot-build-nearest = Set { $set }: this room cannot build { $load }. The nearest is { $near }.
cannot-build-between = Set { $set }: this room cannot build { $load }. The nearest are { $below } and { $above }.

## Clearing a flag.

flag-not-open = This flag is already cleared, or was never raised.

## What a plan amounts to, line by line.

plan-heading = { $block }: { $weeks ->
    [one] 1 week
   *[other] { $weeks } weeks
}, { $from } to { $to }
# $weekdays are joined to a list.
plan-day = { $day } ({ $weekdays })
# $what is one of the four lines below.
plan-piece = { $piece }: { $what }
# "Back squat, sets of 8, 6 and 5 or more, rest 2 min"
# Where the plan says no rest.
piece-strength-alone = { $movement }, sets of { $reps }
piece-strength = { $movement }, sets of { $reps }, rest { $rest }
# $length is that of one window, $total of all; $movements are joined to a list.
piece-interval = { $windows ->
    [one] 1 window of { $length }: { $movements } ({ $total })
   *[other] { $windows } windows of { $length }: { $movements } ({ $total })
}
piece-hold = { $stretch }, { $sides ->
    [one] { $length }
    [2] { $length } each side
   *[other] { $length } on each of { $sides } sides
}
piece-note = a note

## Weekdays, short.

monday = Mon
tuesday = Tue
wednesday = Wed
thursday = Thu
friday = Fri
saturday = Sat
sunday = Sun
