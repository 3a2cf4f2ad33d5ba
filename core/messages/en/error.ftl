## What was asked for by name and is not there. $reason is a whole sentence: what there is instead.

no-bar = There is no bar "{ $name }". { $reason }
no-day = There is no day "{ $name }". { $reason }
no-member = There is no member "{ $name }". { $reason }
no-option = There is no option "{ $name }". { $reason }
no-piece = There is no piece "{ $name }". { $reason }
no-plan = The plan "{ $name }" is not here. { $reason }
no-proposal = There is no proposal "{ $name }". { $reason }

## What somebody does in the crew. Stands behind their name.

role-coach = coach
role-athlete = athlete

## The shape of an error.

# $what is one of the words above, or the path of a file; $reason a whole sentence.
labelled = { $what }: { $reason }

## Plans.

# $source is the plan's file.
plan-problems = { $source } has { $problems ->
    [one] 1 problem to fix.
   *[other] { $problems } problems to fix.
}

## The disk and the database. $error is what the system said, in its own words.

# Where it went wrong.
the-database = Database
database-busy = Another Holdfast is writing here ({ $error }). What was called saved is safe. Close the other one and try again.
database-read-only = Holdfast is not allowed to write to its folder or file ({ $error }). What was called saved is safe. Change the permissions and try again.
database-full = The disk is full ({ $error }). What was called saved is safe. Free some space and try again.
database-other = The database failed ({ $error }). What was called saved is safe. Try again. If it happens again, leave the folder as it is and ask for help.
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
