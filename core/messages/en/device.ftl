## Starting.

# device.json is a file's name.
database-without-identity = This folder has a database but no device.json. Put that file back, or choose another folder.
folder-taken = { $folder } is already { $name }'s. Choose another folder.
name-length = A name has 1 to { $most } characters and no line breaks.
# For whoever builds an app.
more-random-bytes = Keys are made from 80 random bytes; { $found } came.

## Opening.

nobody-started = This folder is not set up yet. Set it up for a coach or an athlete first.
# Stands behind the path of the file; $error is what the reader of the file said.
identity-unreadable = This is not the file Holdfast wrote ({ $error }). Restore it from a copy.
# In those brackets.
identity-altered = it is not as it was written
# A home folder from before leaves were sealed.
home-without-keys = This folder was made by an earlier version, before logs were sealed. It can't go on from there: choose a new folder and start again.
# Said of a file, after its name.
keystore-bytes = A keystore's key has { $wanted } bytes; { $found } came.
keystore-does-not-open = The phone's keystore does not open this device's keys. Start the phone again and try once more. If that does not help, start in a new folder with your recovery code.
keys-unreadable = The keys of this device are gone or altered. Put the file back from a copy.

# $process is the number of the program that has the folder open.
home-is-held = Another Holdfast (process { $process }) has this folder open. Close it, then try again.
renewed = This folder was copied or came back from a backup. It goes on as another device; everything in it is kept.
# Stands between two sentences of these.
between-sentences = { " " }

## Rebuilding.

# $aside is the file's new name.
rebuilt-damaged = The database was damaged and is kept as { $aside }. A new one was built: { $leaves ->
    [one] 1 entry was restored from this device's files
   *[other] { $leaves } entries were restored from this device's files
}{ $salvaged ->
    [0] .
    [one] , and 1 more was recovered from the damaged database.
   *[other] , and { $salvaged } more were recovered from the damaged database.
}
rebuilt-missing = The database, or part of it, was missing. { $entries ->
    [one] 1 entry was restored from this device's files.
   *[other] { $entries } entries were restored from this device's files.
}
# $said is one of the sentences above. The command stands in backticks as it is typed.
rebuilt-unopened = { $said } { $files ->
    [one] 1 more file opens with your recovery code alone. To have everything again, set up a new folder with it: `holdfast restore --home FOLDER --carrier CARRIER`.
   *[other] { $files } more files open with your recovery code alone. To have everything again, set up a new folder with it: `holdfast restore --home FOLDER --carrier CARRIER`.
}
whole-again = It was damaged and is whole again.
# $repaired is one of the sentences above.
repaired-do-again = { $repaired } What you just did was not saved. Do it again.
# What a check of the database found.
entry-altered = an entry is not as it was written
tables-altered = the tables are not as they were made

## Who may do what. $name is the person whose device it is.

only-athletes-run-sessions = Only athletes run sessions; this is { $name }'s coach device.
only-athletes-correct = Only athletes correct their own sets; this is { $name }'s coach device. A coach can leave a set out.
only-coaches-leave-out = Only coaches leave sets out; this is { $name }'s athlete device. Correct the set, or take it back.
only-coaches = Only coaches do this; this is { $name }'s athlete device.
only-coaches-see-the-board = Only coaches see the board; this is { $name }'s athlete device.
only-coaches-see-others = Only coaches see other members' pages; this is { $name }'s athlete device.
only-coaches-publish = Only coaches publish plans; this is { $name }'s athlete device.
only-coaches-answer = Only coaches answer proposals; this is { $name }'s athlete device.
only-coaches-clear = Only coaches clear a member's flag; this is { $name }'s athlete device.

## Time.

clock-not-set = The device's clock is outside the years 1970 to 9999. Set it.
