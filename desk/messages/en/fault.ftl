## What goes wrong in the terminal program.

# Stands before what went wrong, in red.
error = Error:
# Stands before what the program put right by itself when it opened a device, in yellow.
repaired = Note:

## Files and folders

# $path is a file or folder, $reason one of the sentences below, or the system's own.
file = { $path }: { $reason }
carrier-is-a-file = This is a file. A carrier is a folder.
# $kept are the names of the carriers that are kept.
carrier-unknown = No carrier has this name, and no folder is called so. Your carriers: { $kept }.
carrier-missing = There is no such folder. Check the spelling, or make the folder first.
export-not-empty = The folder is not empty. Name one that is not there yet.
demo-not-empty = The folder is not empty and holds no earlier demo. Name another with --dir.
home-not-utf8 = The folder's name is not UTF-8. Choose another with --home.
no-such-file = There is no such file. Check the spelling.
no-such-folder = There is no such folder. Make it first, or name another.
is-a-folder = This is a folder. Name a file.
not-allowed = This user may not read or write it. Change the permissions, or name another.
no-data-folder = This system names no data folder. Name a folder with --home DIR.
# $reason is a whole sentence: why the device's data was not read while a plan was checked.
checked-alone = Checked without your members' loads. { $reason }
# $folder is where a device was looked for. What follows Run is typed.
not-set-up = { $folder } is not set up yet. Run: holdfast --home { $folder } start --as athlete --name NAME (or --as coach)

## Arguments. $argument is one as it is typed: --sides <N>

no-command = There is no command "{ $command }". { $help }
no-command-but = There is no command "{ $command }". Did you mean "{ $other }"? { $help }
no-argument = There is no argument "{ $argument }". { $help }
no-argument-but = There is no argument "{ $argument }". Did you mean "{ $other }"? { $help }
# A value that begins with a dash is taken for an option; what follows -- is not.
no-argument-dash = There is no argument "{ $argument }". For a value that begins with a dash, put -- before it: -- { $argument }
argument-missing = Missing: { $arguments }. { $help }
argument-twice = { $argument } can be given only once. { $help }
arguments-exclude = { $argument } cannot be given together with { $others }. { $help }
value-missing = { $argument } needs a value. { $help }
# $choices are the words that fit.
value-not-among = "{ $value }" does not fit { $argument }. Choose one of these: { $choices }.
# $text is what help says of the argument.
# Written like a date.
no-such-day = There is no { $value } in the calendar. Write a day that exists.
value-wrong = "{ $value }" does not fit { $argument }: { $text }
# $help in the sentences above.
see-help = See --help.

## What was typed

# $named is what somebody wrote after --lang, $known the codes there are: en, de.
unknown-language = There is no language "{ $named }". Choose one of these: { $known }.
# $which names the pieces that may be meant.
which-proposal = { $which } Add --piece and one of these names.
name-a-member = Name the member: --member NAME.
no-such-flag = { $name } has no open flag.
nothing-flagged = Nothing was flagged. Type where, and how bad it is: `flag knee 4`.
nothing-kept-by-name = No damaged database "{ $name }" was kept. `holdfast aside` lists them.
no-flag-for = { $name } has no open flag for { $movement }.
# $why says what is wrong with a load that was typed.
wrong-load = --load: { $why }
contract-too-long = --contract { $seconds } is longer than the hold of { $hold } s.
switch-too-long = --switch { $seconds } is longer than the hold of { $hold } s.

## The system. $why is what the system says.

no-randomness = This system gives no random numbers: { $why }
no-input = The input cannot be read: { $why }
no-signals = Signals cannot be watched: { $why }
no-terminal = The terminal cannot be used: { $why }. Try --plain.
output-closed = The output was closed.
ended-by-signal = Ended by signal { $signal }.

## Faults of the program itself

# $why is a technical text.
panicked = Holdfast has a fault: { $why }. What you logged is saved.
demo-plan = The demo's own plan has problems: { $why }

## carrier

no-such-carrier-name = A carrier cannot be called "{ $name }". Use 1 to { $most } small letters, digits and hyphens.
carrier-named-twice = A carrier "{ $name }" is kept already. Forget it first: holdfast carrier remove { $name }
no-carrier-of-name = No carrier "{ $name }" is kept. `holdfast carrier list` lists them.
