## What an error is about. Stands before a colon and the sentence that says what is wrong.

# Random bytes from the system, from which identities are made.
field-chance = Random bytes
field-clock = Clock
field-date = Date
field-day = Day
# The clock of the phone or computer.
field-device-clock = Device clock
field-exchange = Exchange
# A discomfort flag.
field-flag = Flag
# The folder that holds a person's data.
field-home = Folder
# The number that names a person, a device or something logged.
field-identity = Identity
field-load = Load
field-loads = Loads
field-measure = Measure
field-minutes = Minutes
field-movement = Movement
field-name = Name
field-piece = Piece
field-range = Range of motion
field-rest = Rest
field-reps = Reps
field-reserve = Reps in reserve
field-role = Role
field-rpe = Session RPE
# What an athlete said about a hold that was cut short.
field-said = Comment
field-seconds = Seconds
field-session = Session
field-set = Set
field-severity = Severity
field-side = Side
# The time to spare in a window.
field-spare = Time to spare
field-station = Station
# Any text that is logged.
field-text = Text
field-undo = Undo
field-window = Window
# A line that was typed during a session.
field-words = Typed line

## What was asked for and is not there. Stands before a colon, or before a name in quotes.

thing-bar = Bar
thing-day = Day
thing-device = Device
thing-flag = Flag
thing-member = Member
thing-option = Option
thing-piece = Piece
thing-plan = Plan
thing-proposal = Proposal

## What somebody does in the crew. Stands behind their name.

role-coach = coach
role-athlete = athlete

## The shape of an error.

# $what is one of the words above, or the path of a file; $reason a whole sentence.
labelled = { $what }: { $reason }
# $name is what somebody asked for by name.
labelled-named = { $what } "{ $name }": { $reason }

## Plans.

# $source is the plan's file.
plan-problems = { $source } has { $problems ->
    [one] 1 problem to fix.
   *[other] { $problems } problems to fix.
}

## The disk and the database. $error is what the system said, in its own words.

# Where it went wrong.
the-database = Database
database-busy = Another Holdfast is writing here ({ $error }). Nothing new was saved. Close the other one and try again.
database-read-only = Holdfast is not allowed to write to its folder or file ({ $error }). Nothing new was saved. Change the permissions and try again.
database-full = The disk is full ({ $error }). Nothing new was saved. Free some space and try again.
database-other = The database failed ({ $error }). Nothing new was saved. Try again. If it happens again, leave the folder as it is and ask for help.
entry-unusable = An entry could not be written or read: { $error }

## What does not fit, or is too new.

too-long = This entry has { $found } bytes; at most { $limit } fit. Shorten the text.
# Both are version numbers.
too-new = A newer Holdfast wrote this data (version { $found }; this one reads up to { $supported }). Nothing was changed. Update Holdfast and open it again.

## Faults of the program itself.

# $reason is in the words of the program, for whoever fixes it.
unexpected = Something went wrong inside Holdfast: { $reason }. Everything saved before is safe. Try again.
# Stands as $reason where there is none.
no-reason = no reason was given
closed = Holdfast is closed. Open it again.

## What another program handed over wrongly.

# $days counts days since 1970.
not-a-date = { $days } is not a date of the calendar.
not-an-identity = An identity has 16 bytes, not { $bytes }.
