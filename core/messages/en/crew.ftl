## The crew: who is in it, with which devices; removing, stopping, the recovery code.

# What somebody is called whose name has not arrived yet.
unnamed = Somebody
you-were-removed = You are no longer in the crew. What you log stays on this device and is sent to nobody.
was-removed = Removed. What they sent before counts; what comes later does not.
too-many = Does not count: one person has too many devices.
no-longer-counts = Stopped. What it sent before counts; what comes later does not.
this-device = This device
# $date is a day: Tue 10 Nov.
last-word = Last word: { $date }
no-word-yet = No word yet
# $people is a list of names.
people-here = In this crew: { $people }.
# $known is how many devices there are.
devices-there = { $known ->
    [one] { $name } has one device, number 1.
   *[other] { $name } has devices 1 to { $known }.
}

## Removing and stopping

only-coaches-remove = Only a coach removes somebody; { $name } is an athlete.
not-the-coach = A coach cannot be removed. A coach's lost device is stopped with the coach's recovery code.
nothing-to-remove = Removed already. Nothing was changed.
# $number is one of the member's devices.
device-was-removed = Device { $number } of { $name } is removed: the next exchange says so. Change the password of the carrier if that device knew it.
member-was-removed = { $name } is removed: the next exchange says so. Change the password of the carrier: { $name } still knows it.
device-was-stopped = Device { $number } is stopped: the next exchange says so. Whoever has it can still read what was sent to it so far. If its recovery code was never typed back on it, they have the code too: then pair with your coach again, as somebody new.
not-this-device = This is the device you are using. Stop a lost one from another device.
no-devices-yet = You are in no crew yet.

## The recovery code

# $first and $second are numbers of groups, from 1 to 8.
write-it-down = Write this code on paper and keep it where nobody else looks. Then type groups { $first } and { $second } back.
code-is-kept = Your recovery code is still only on this device. Write it down: without it, a lost device is a lost log.
code-is-on-paper = Your recovery code is on paper. This device no longer has it.
two-groups = Type both groups, with a space between them.
groups-differ = These are not groups { $first } and { $second }. Compare them with your paper.
type-the-code = Your recovery code is on paper alone. Type it.
code-of-somebody-else = This is a recovery code, but not the one of this device's person.
moved-or-copied = This folder is not where it was. Was it moved, or is it a copy? A copy must become a device of its own.
no-more-devices = A person can have { $most } devices in all, and you have had them. Start in a new folder, and pair with your coach again.
more-random-bytes = A device's keys need { $wanted } random bytes; { $found } came.

## Restoring

nothing-opens = Nothing on this carrier opens with this code. Check the carrier, or ask whether anything was ever delivered there.
two-crews = This code opens the logs of two crews. Ask your coach which carrier is the right one.
no-coach-found = Your own log is on this carrier, but nothing of your coach. Ask your coach to exchange first.
# $name is the person; $devices is how many devices they had.
restored = { $devices ->
    [one] Found { $name }'s log, written on one device.
   *[other] Found { $name }'s log, written on { $devices } devices.
}

## What an exchange brought of people

# $name is the coach, or a member.
is-removed = { $name } is no longer in the crew.
forgotten-elsewhere = Another device of yours has forgotten { $name }: { $name } gets nothing more from here either. Take { $name } out here too, then forget. If that was not you, stop that device.
added-a-device = { $name } added a device: from now on it reads what you two share. If { $name } did not, talk to each other.
you-added-a-device = Another device of yours has joined. If that was not you, stop it.
device-no-longer-counts = A device of { $name } no longer counts from now on.
this-device-stopped = This device was stopped: what you log here stays on it and reaches nobody. If that was not you, ask your coach.
your-device-stopped = A device of yours was stopped.

## Forgetting

only-coaches-forget = Only a coach forgets somebody; { $name } is an athlete. Ask your coach.
take-out-first = { $name } is still in the crew. Take { $name } out first, and let { $name }'s device exchange once more so that it knows.
not-yet-heard = If { $name }'s device has not exchanged since you took { $name } out, it does not know yet and goes on sending.
forgotten = All that this device had of { $name } is deleted.
# Where something may still be.
their-own-phone = { $name }'s own phone keeps { $name }'s log.
your-other-devices = Your other devices have it still. One that was away says so with its next exchange: take { $name } out there, then forget.
backups-and-versions = Backups, and what a carrier keeps of deleted files, are not reached from here.
# $files are names of files in the device's folder.
kept-aside = Damaged databases that were kept may hold it: { $files }. Delete them by hand once nothing else in them is missing.
reports-and-exports = Reports and exports you made are files of your own. Delete them by hand.
