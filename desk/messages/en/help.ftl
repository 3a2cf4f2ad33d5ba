## What --help says. Names of commands, options and values that are typed stay as they are.

# The program's own line.
about = Training for a group with no phone signal: plan, train, log, carry, review.

## Headings

usage = Usage:
# Stands in the line that shows how a command is typed.
usage-options = [OPTIONS]
commands = Commands
arguments = Arguments
options = Options

## Names of values, in capitals

value-command = COMMAND
value-code = CODE
value-line = LINE
value-dir = DIR
value-plan = PLAN
value-date = DATE
value-name = NAME
value-lang = LANG
value-role = ROLE
value-unit = UNIT
value-seed = SEED
value-movement = MOVEMENT
value-where = WHERE
value-address = ADDRESS
value-file = FILE
value-load = LOAD
value-decision = DECISION
value-words = WORDS
value-seconds = SECONDS
value-piece = PIECE
value-set = SET
value-done = DONE
value-count = N

## What stands behind an argument's text

# $help is the argument's text.
with-default = { $help } [default: { $default }]
with-choices = { $help } [one of: { $choices }]
with-variable = { $help } [variable: { $variable }]

## Options of every command

home = The device's folder (default: the system's data folder)
lang = The language (default: the one chosen on this device, else the system's)
help = Print help
help-short = Print help (--help says more)
help-long = Print help (-h says less)
version = Print the version
help-command = Print help for a command

## Commands

demo = Simulate a coach and six athletes for three weeks, then show the coach's board
start = Set up this device for a coach or an athlete
check = Check a plan without publishing it
plates = Work out the plates for loads on one bar; needs no device
plates-more = One load: the plates for each side. Several loads: a ramp, built in this order with the
    fewest plates put on or taken off, heaviest inside, from an empty bar until it is empty again. One
    side is drawn. Nothing is rounded: a load that the kit cannot build is an error that names the
    nearest it can; only warm-up loads move, by 5 % at most. Where several share the bar, name the loads
    in the order they are lifted, whoever lifts them. In a kit that says `mixed = true`, plates in kg and
    in lb go onto one bar.
publish = Publish a plan (coach)
today = Show today's session with its loads (athlete)
invite = Take a member into your crew: show a code, then pick the words they read (coach)
join = Join your coach's crew: type or scan the codes your coach shows (athlete)
crew = Show who is in the crew, with which devices
take-out = Take a member, or one of their devices, out of the crew (coach); what they sent before stays
forget = Delete all that this device has of somebody you took out, and their files on a carrier (coach)
stop-device = Stop a device of yours that was lost, stolen or sold; asks for your recovery code
recovery = Show your recovery code, to be written on paper
restore = Set up this device with your recovery code: a new phone, a second one, a new laptop
session = Train: log sets, windows, holds and readings, full-screen or line by line (athlete)
hold = Time a stretch: needs no plan and no device, writes nothing
exchange = Deliver and fetch files through a carrier folder
take-along = Take a crewmate's files along unopened; your next exchange delivers them
carrier-command = Keep carriers by name: folders, WebDAV and S3-compatible servers
carrier-add = Keep a carrier; a password is read from the first line of input, or from HOLDFAST_CARRIER_PASSWORD
carrier-list = List the carriers that are kept
carrier-remove = Forget a carrier; nothing is deleted there
board = Show who needs a look, and why (coach)
member = Show a member's page (a coach sees anybody's, an athlete their own)
answer = Answer a proposed load (coach); the next exchange carries it
sets = List sets as they were logged (a coach sees anybody's, an athlete their own)
correct = Correct a set of any day, confirm it, or take it back (athlete)
leave-out = Leave a member's set out of what is proposed, or count it again (coach)
note = Write to your coach about a session or a set, or as a coach to a member; or for yourself alone
max = Log a one-rep max: a single you tested (athlete), or a member's training max (coach)
flag = Flag discomfort between sessions, also days later (athlete): `flag knee 4`
clear = Clear discomfort flags: an athlete their own, a coach a member's after talking with them
report = Write the board and every member's page as one HTML file (coach)
export = Write everything this device knows as CSV, JSON and journal lines
verify = Look at everything in the folder, and put right what is damaged
aside = List damaged databases that were kept; with a name, print the entries that only it has
language = Choose the language you read

## Arguments

plan-file = The plan, a TOML file
carrier = The folder that carries files between devices, or the name of a carrier that is kept
take-along-from = The folder, such as a stick, that the crewmate exchanged with
carrier-name = The carrier's name: small letters, digits, hyphens
carrier-address = A folder, or https://... of a WebDAV folder; with --bucket, of an S3-compatible server
carrier-user = The user who signs in (WebDAV)
carrier-bucket = The bucket (S3)
carrier-key-id = The id of the key; its secret is read as a password is (S3)
carrier-region = The region (S3)
carrier-prefix = What stands before all names in the bucket (S3)
carrier-path-style = The bucket stands in the path, as on most servers of one's own (S3)
carrier-unencrypted = Allow http:// over networks that are not your own: anybody on the way can read the password
invite-code = The code the member shows; without one, a new invitation, or the one under way
invite-line = The line the member reads, 1 to 3; none when it is none of them
invite-name = What you call the member (default: the name their device gave)
code-svg = Write the code as a picture too
pair-carrier = Let the next codes go over this carrier, instead of from screen to screen
pair-watch = Keep looking until the other side has answered, for ten minutes
pair-stop = End the pairing that is under way
take-out-device = One of their devices, by its number in `holdfast crew`
forget-name = Whom you took out; without a name only the carrier is cleared of whom you forgot
stop-device-number = Its number in `holdfast crew`
recovery-confirm = Type two groups of the code back, on standard input: then this device forgets it
recovery-age = Print the key as the program age reads it: with it stock tools open your own files
recovery-moved = This folder was moved, and is the same device as before
recovery-copied = This folder is a copy: it becomes a device of its own
restore-lost = Stop all your other devices at once: they were lost
join-code = A code your coach shows; without one, the pairing under way
join-match = Your coach has the same four words
join-all = Share what you logged before joining too (default: only what comes after)
join-differ = Your coach has other words
another-date = Another date, such as 2026-11-20
made-for = The date it is made for
json = Print it as JSON
demo-dir = The folder to play in; an earlier demo there is replaced
demo-seed = The random seed: the same seed plays the same demo
demo-members = How many members train, 1 to 1000
demo-weeks = For how many weeks, 1 to 26
check-strict = Treat notes as problems: with any, end with an error
start-as = Coach or athlete
start-name = The name others see
start-unit = The unit loads are written in
plates-loads = The loads in order, each with its unit, such as 92.5kg or 205lb
plates-kit = A plan, of which only `[kit]` is read, or a TOML file with just a `[kit]`
plates-bar = The bar by its name (default: the first bar in the first load's unit, else the first)
plates-warm-up = Begin with warm-up sets for the first load: up to seven, the more the heavier it is beside
    the empty bar, their loads chosen to save plates (common practice)
plates-from-floor = With --warm-up: no set with the empty bar, for a lift that starts on the floor
today-day = A day of the block by its name
today-json = Print the screen as JSON, as a phone would get it
session-on = An earlier date whose session is written afterwards, such as 2026-11-20
session-day = A day of the block by its name, instead of the one planned today
session-plain = Line by line, as through a pipe
no-speech = Do not speak cues
no-bell = Do not ring the terminal's bell for cues
hold-seconds = Seconds to hold each side, 1 to 1800
hold-sides = Sides, 1 to 64
hold-contract = Seconds to push; each side starts with a push
hold-relax = Seconds to let go after each push
hold-ready = Seconds to get ready before the first side, 0 to 600
hold-switch = Seconds to change over to the next side, 0 to 600 and no longer than the hold; without it 10,
    or the hold where that is shorter
hold-plain = Each cue as a line, as through a pipe
member-name = The member's name (default: an athlete's own page)
answer-name = The member's name
answer-movement = The movement, as the board names it, or the piece's name
answer-decision = Accept the proposal, change it, or refuse it (last time's loads again)
answer-piece = The piece's name, where the movement has more than one proposal
answer-load = With change: the last set's load (the others follow), or one for each set
answer-words = Words for the athlete
answer-anyway = Send loads that go past the cap, a miss or weeks away
sets-on = The sets of a date, such as 2026-11-20
sets-sessions = The sets of so many latest sessions, 1 to 1000 (default: 3)
sets-member = The member's name (default: an athlete's own sets)
exchange-watch = Exchange again and again until you press Ctrl-C
exchange-every = How often: every so many seconds, 5 or more (default: 60)
set-date = The date it was trained on, such as 2026-11-20
set-piece = The piece's name, or the movement's
set-number = The set's number in the piece
set-session = Which session of that date, where several have such a set: 1, 2, ...
correct-what = What you did, such as "67.5 x 5, 2 left" or 5; right if it is right as it is; none if you did not do it
leave-out-count = Count it again
max-movement = The movement, by its name or its key in the plan
max-load = The load, such as 100kg; none takes back the last one you gave
max-member = The member's name (coach)
max-anyway = Log a load that is far from what was lifted lately
flag-felt = Where it hurts, how bad it is from 1 to 10, then emergency signs, such as: knee 4, muscle 6 dark urine
flag-movement = The movement that brings it on (default: while a session runs the one at hand, else none)
flag-on = The date it was felt, at most four weeks back (default: today)
note-words = What you want to say
note-member = The member it is for (coach)
note-on = The date of the session, such as 2026-11-20 (default: the latest)
note-private = For yourself alone: it never leaves this device (athlete)
note-take-back = Take your latest note there back
clear-member = The member's name (coach)
clear-movement = The movement, as the page names it (default: all open flags)
report-out = The file to write
export-dir = The folder to write into; it must be empty or not there yet
aside-name = The name of one, as the list has it
language-choice = The language; `system` follows the system
