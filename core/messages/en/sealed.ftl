## Why a sealed file was left alone. Stands behind the file's name.

not-sealed-so = This file is not sealed as Holdfast seals.
not-for-this-device = This file is sealed for others.
altered = This file was altered after it was sealed.
packed-wrongly = This file does not unpack as Holdfast packs.
first-line = The first line of this file is not one of Holdfast's.
certificate = This file carries a certificate that is not valid.
signature = This file is not signed by the device it names.
not-text = This file holds something else than text, or is cut off.
not-the-writers = This file names another writer than the one who signed it.
other-thread = This file belongs between other people than the one who wrote it.
other-name = This file is not the one its name says.
# For whoever builds an app.
too-many-recipients = A leaf for { $found } keys; it can be sealed to 1 to { $most }.

## What is wrong with a line of a file. Stands behind a colon; for whoever looks into the file.

no-such-format = there is no format { $found }
seen-twice = a device stands in `seen` twice, or it is the writer's own
no-previous = `previous` is not a hash
no-such-count = a leaf of { $found } entries cannot be
numbers-fall = entry { $number } stands behind one with a higher number
unknown-writer = This file is from somebody this crew does not know. It is kept and does not count.
removed-device = This file is from a device that was stopped or taken out: it was written after that, or what it follows has not arrived. It is kept and does not count.
too-many-devices = This file is from one device more than a person may have. It is kept and does not count.

## A full check

# $name is a file's.
file-not-here = { $name }: the file is missing; the next exchange fetches it
other-than-kept = { $name }: the log has other entries than this file
# $sequence counts the uploads of a device, $hash names one.
follows-another = Upload { $sequence } ({ $hash }) does not follow the one before it: the device was restored or copied
