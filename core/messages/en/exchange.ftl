## Why a file was left alone. Stands behind the file's name.

foreign = This is not one of Holdfast's files.
too-large = This file has { $bytes } bytes; Holdfast's own have at most { $most }.
torn = This file is damaged or still arriving: its content does not match its name.
# $reason is one of the next section.
unreadable = Line { $line } of this file cannot be read: { $reason }.
# Both are numbers of a format.
newer = A newer Holdfast wrote this file (format { $found }; this one reads format { $known }). Update the app.
other-crew = This file belongs to another crew.
# $reason is what the system said, in its own words.
not-read = This file cannot be read: { $reason }
not-written = This file could not be delivered: { $reason }
# Stands in place of a file's name.
whole-folder = The whole folder
# So many files were fetched and left alone; $left were not looked at yet.
too-many-failed = { $failed } files there are no use. { $left } more wait for the next exchange.
too-many-files = There are { $files } files; only the first { $most } were looked at.

## What is wrong with a line of a file. Stands behind a colon; for whoever looks into the file.

header-too-large = the header is too large
numbers-too-high = the numbers are impossibly high
seen-too-many = { $found } other devices are named; at most { $most } can be
wrong-count = the header announces { $wanted } entries; the file holds a different number
line-too-long = the line has { $bytes } bytes; at most { $most } fit
too-deep = the line is nested deeper than { $most } levels
number-out-of-range = entry number { $number } is out of range

## Steps of an exchange.

# For whoever builds an app.
none-running = No exchange is running. Begin one first.

## A crewmate's files

# $files is how many were new.
taken-along = { $files ->
    [0] Nothing new to take along.
    [one] Took { $files } file along. Your next exchange delivers it.
   *[other] Took { $files } files along. Your next exchange delivers them.
}
bag-full = There is no room for more of other people's files. Exchange first.
