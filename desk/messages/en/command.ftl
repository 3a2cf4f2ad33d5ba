## What commands print. What is typed in a shell stays as it is typed.

## start

# $folder is where the device's data is kept.
started-as-coach = { $folder } is set up for { $name }, coach
started-as-athlete = { $folder } is set up for { $name }, athlete
next-for-coach = Next: holdfast --home { $folder } publish PLAN.toml --carrier DIR
then-invite = Then for each member: holdfast --home { $folder } invite
next-for-athlete = Next, with the code your coach shows: holdfast --home { $folder } join CODE

## check, publish

no-problems = No problems found.
# Below the notes. A note is allowed and may not be meant.
no-problems-but-notes = { $notes ->
    [one] No problems found. 1 note.
   *[other] No problems found. { $notes } notes.
}
# Stands behind the file, the line and the column of a note.
note = note:
# $plan is the plan's name, with its weeks.
published = Published { $plan }
published-again = Published { $plan } (replaces the earlier version)

## exchange

# Counts up while files are read.
files-fetched = Files fetched: { $count }
files-delivered = Files delivered: { $count }
# $carrier is a folder or the name of a server.
watching = Exchanging with { $carrier } every { $seconds } s. Ctrl-C ends it.
brought = { $files ->
    [0] Nothing new to deliver.
    [one] Delivered 1 file.
   *[other] Delivered { $files } files.
}
fetched = { $files ->
    [0] Nothing new to fetch.
    [one] { $entries ->
        [one] Fetched 1 file with 1 new entry.
       *[other] Fetched 1 file with { $entries } new entries.
    }
   *[other] { $entries ->
        [one] Fetched { $files } files with 1 new entry.
       *[other] Fetched { $files } files with { $entries } new entries.
    }
}
# Stands before a file's name and why it was not read, in yellow.
left-alone = Left alone:
left-alone-file = { $name }: { $reason }
left-alone-more = { $files ->
    [one] 1 more file
   *[other] { $files } more files
}

## answer, clear

# $last and $next are the loads of all sets.
answered = { $name }, { $movement }: { $last } -> { $next }
answer-saved = Answer for { $name } saved.
# $flag as "knee 4/10 in Back squat".
cleared = Cleared: { $flag }
flagged = Flagged. What is open now, and what to do:
# $day as "Tue 3 Nov", $note as it is read: "For your coach: grip slipped".
noted = { $day }. { $note }
note-taken-back = Taken back: { $note }
note-stays = It stays on this device.
next-exchange = The next exchange carries it.
# Of a device that was stopped, or whose person was taken out.
stays-on-device = It stays on this device: nothing more goes out from here.

## report, export

wrote = Wrote { $file }
# Files follow, one a line.
wrote-files = Wrote:

## verify, aside

seals = Signatures: { $signed }, chains of files: { $chains }. All of them hold.
unopened = { $files ->
    [one] 1 more file is sealed to others, or to a recovery code, and was not opened.
   *[other] { $files } more files are sealed to others, or to a recovery code, and were not opened.
}
not-all-well = Everything was looked at, and not all of it is well:
# $files are files that devices exchange.
verified = { $entries ->
    [one] { $files ->
        [one] All is well: 1 entry, 1 file.
       *[other] All is well: 1 entry, { $files } files.
    }
   *[other] { $files ->
        [one] All is well: { $entries } entries, 1 file.
       *[other] All is well: { $entries } entries, { $files } files.
    }
}
kept = { $name }: { $entries ->
    [one] 1 entry can be read
   *[other] { $entries } entries can be read
}; { $only ->
    [0] the journal has them all.
    [one] 1 is only there.
   *[other] { $only } are only there.
}
nothing-kept = No damaged database was kept.

## A session, once it is left

session-finished = Session finished and saved. { $next }
session-left-open = Session left open. Your log is saved; run `session` to continue.

language-chosen = Holdfast speaks English with you from now on.
language-of-system = Holdfast speaks the system's language with you from now on.

## carrier

# $place is a folder or an address.
carrier-kept = Carrier "{ $name }" kept: { $place }
carrier-is-there = The folder is there.
carrier-answers = It answers, and the password fits.
# $variable is a variable of the environment.
carrier-password = Type the password; it is not shown. It can also come in { $variable }.
no-carriers = No carrier is kept. `holdfast carrier add NAME ADDRESS` keeps one.
carrier-removed = Carrier "{ $name }" forgotten. Nothing was deleted there.

## The crew

recovery-code = Type your recovery code; it is not shown. It can also come in { $variable }.
next-confirm = Then: holdfast recovery --confirm
next-moved = Then: holdfast recovery --moved, or holdfast recovery --copied
type-groups = Type groups { $first } and { $second } of the code on your paper, with a space between them.
device-numbered = device { $number }: { $state }
restored-at = Set up { $folder }.
next-for-restored = Next: holdfast --home { $folder } crew
deleted-there = { $deleted ->
    [0] On the carrier there was nothing of them.
    [one] Deleted { $deleted } file on the carrier.
   *[other] Deleted { $deleted } files on the carrier.
}
# $name is a file, $reason what the system or server says.
not-deleted = Not deleted: { $name }: { $reason }
next-forget = Then, for each carrier you used: holdfast forget --carrier DIR
