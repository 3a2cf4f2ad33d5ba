### The places of a phone beside a session: history, exchange, this phone, crew, pairing, the first start.

## Keys

# While a field is empty that must be typed.
type-the-rest = Fill in every field first.

next = Next
back-to-today = Back to today
back-to-board = Back to the board
share-code = Send as text
exchange-now = Exchange now
join-a-crew = Join a crew
let-somebody-in = Let somebody in
# $name is a member who has answered.
let-in = Let { $name } in
invite = Show a code
invite-next = Let the next one in
scan = Scan the code
take-typed = Take the typed code
or-type-it = Or type the code
# On the device that shows a code itself.
scan-theirs = Then scan their code
or-type-theirs = Or type their code
stop-pairing = Stop
words-match = The words match
words-differ = They differ
joins = Joins your coach's crew
match-and-share = They match, share earlier too
share-earlier = Share earlier entries
none-of-them = None of them
touch-the-line = Touch the line you hear
to-exchange = Go to the exchange
keep-server = Save this server
add-folder = Add a folder
add-server = Add a server
forget-carrier = Use it no longer
show-code = Show the code
it-is-on-paper = It is on paper
publish-a-plan = Publish a plan
next-exchange-carries = The next exchange carries it
agree-and-begin = I have read it: begin

## History

history = History
movements = Movements
ranges = Range of motion
sessions = Sessions
to-look-at = To look at
nothing-yet = Nothing is logged yet.
# $side is "left" or "right".
range-of-side = { $name }, { $side }
rated = RPE { $rpe }, { $minutes } min
sets = { $sets ->
    [one] 1 set
   *[other] { $sets } sets
}
# $date is a day: Tue 6 Oct.
since = since { $date }
estimated-max = estimated one-rep max,
# Both are whole numbers of the reader's unit.
probably = probably { $low } to { $high }
shaded-is-probable = Shaded: the probable range.
shaded-is-error = Shaded: what could be error of measurement around the first reading.
line-is-heaviest = The heaviest set of each session. A cross: sets were missed.
heaviest-sets = Heaviest set of each session
readings = Readings before and after the stretch
# Both are readings with their unit.
before-and-after = { $before }, after { $after }
asked = { $reps } asked
nothing-of = There is no { $movement } in your log.
no-such-range = There is no such range.
no-such-session = There is no such session.
took = { $minutes } min
# $set counts from 1.
set-number = set { $set }
touch-to-correct = Touch a set to correct it.
# Windows, holds, readings, options, discomfort.
also-logged = Also logged
# Read aloud in place of a chart. $first and $last are numbers, $from and $to days.
chart-of-strength = { $movement }: estimated one-rep max from { $first } to { $last } { $unit }, { $from } to { $to }.
chart-of-loads = { $movement }: heaviest set from { $first } to { $last } { $unit }, { $from } to { $to }.
chart-of-range = { $name }: from { $first } to { $last } { $unit }, { $from } to { $to }.

## Exchange

exchange = Exchange
all-sent = All is sent
nothing-waits = Nothing waits on this phone.
entries-wait = { $entries ->
    [one] 1 entry is waiting
   *[other] { $entries } entries are waiting
}
# No exchange went through since $date.
entries-wait-since = { $entries ->
    [one] 1 entry waiting since { $date }
   *[other] { $entries } entries waiting since { $date }
}
goes-with-next = They are safely stored on this phone and go with the next exchange.
needs-a-carrier = They are safely stored on this phone. Add a folder or a server that carries them.
no-crew-yet = No crew yet
join-first = What you log is stored on this phone. Once you are in a crew, an exchange carries it.
nothing-goes-out = Nothing goes out
no-longer-counts = This phone no longer counts in the crew. What you log stays on it.
last-exchange = Last exchange
# $time is 18:40, $day is Sun 22 Nov.
today-at = today, { $time }
day-at = { $day }, { $time }
not-arrived = Not arrived
carriers = What carries it
carrier-is-kept = Every exchange goes there.
nothing-is-deleted = If you stop using it, nothing is deleted there.
add-a-carrier-first = Add a folder or a server first
server-kind = What kind of server is it?
webdav = WebDAV
webdav-is = A folder on a server, with a user name and a password.
webdav-needs = Ask whoever runs it for the address of the folder, and for a password made for this app alone.
s3 = S3-compatible storage
s3-is = A bucket on a server, with a key id and a secret key.
s3-needs = Ask whoever runs it for the address without the bucket, the bucket, and a key made for this app alone. The bucket must already exist. Where nobody names a region, leave it as it is.
server-sees = Whoever runs it can't read what is exchanged, but sees when.
address = Address
user = User name
password = Password
bucket = Bucket
bucket-region = Region
bucket-folder = Folder in the bucket, if you want one
key-id = Key id
secret-key = Secret key

## This phone, the crew, the recovery code

this-phone = This phone
unit = Loads in
kilograms = Kilograms
pounds = Pounds
language = Language
as-the-phone = Same as the phone
# Each language is called in its own words.
english = English
german = Deutsch
more = More
crew = Crew
coach = coach
# $state is what there is to say of it.
device = Device { $number }: { $state }
recovery-code = Recovery code
only-on-this-phone = Only on this phone. Write it down.
code-is-for = With this code your log comes back when the phone is lost. Whoever has it can read your log.
nobody-looks = Write it down while nobody looks. A photo of it is no safe place.
# $groups is "3 and 7".
type-back = Then type groups { $groups } back
cautions = Cautions
what-is-stored = What is stored
no-room-for-code = This code is too long for a picture. Type it.

## How this phone looks and sounds

text-size = Text
text-larger = Larger
text-largest = Largest
shade = Colours
shade-light = Light
shade-dark = Dark
# What is heard when a clock changes its phase.
cues = Cues
heard-words = Tone and words
heard-tones = Tone alone
heard-nothing = Silent
try-cue = Give a cue now
try-cue-more = Seen, felt and heard as during a hold.

## What the room has

room = The room
no-plan-no-kit = What the room has comes with the plan.
loads-follow-the-kit = Every load is one that can be built from this. If something is missing here, tell your coach.
bars = Bars
plates-kg = Plates marked in kilograms
plates-lb = Plates marked in pounds
bells = Bells
machines = Machines
# $mass has its unit.
times = { $count ->
    [one] { $mass }
   *[other] { $mass }, { $count } of them
}
with-collars = collars together { $mass }
pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
}

## What is stored and who can read it

stored-here = Your sets, times, readings, notes and what hurts are stored on this phone. They are data about your health.
stored-read = Once you join a crew, your coach can read what you log. Other members can't. Without a crew nobody can.
stored-private = A private note never leaves this phone.
stored-carrier = A folder or server carries sealed files. Whoever runs it can't open them, but sees when you train.
stored-for-good = What your coach has received can't be called back. You can ask your coach to forget you.
stored-lost = A lost phone without a written recovery code is a lost log.

## The first start

who-are-you = Who are you?
what-holdfast-does = Holdfast turns a coach's plan into your session, and keeps what you did. It needs no connection and no account.
athlete = Athlete
athlete-does = I train by a plan
coach-does = I write plans and look after a crew
your-name = Your name
name-missing = Your name is missing
name-seen = Your crew sees it.
choose-who = Choose athlete or coach
how-you-read = Units and language
choose-unit = Choose kilograms or pounds
before-you-begin = Before you begin
makes-a-folder = Stores it on this phone alone

## A log comes back

# On the first page of a new phone.
has-a-code = I have a recovery code
has-a-code-more = My log comes back on this phone
restore-a-log = Bring a log back
code-brings-log = Type the code from the paper. Capitals and dashes do not matter.
where-files-lie = Then say where your crew's files lie: your coach knows.
look-for-log = Look for the log
log-was-found = Your log was found
agree-and-restore = I agree: bring it back
brings-all-of-it = Makes this phone yours, and the exchange after it brings the log

## A coach's pages

nobody-yet = Nobody is in your crew yet, or nobody has exchanged since.
never-trained = not yet
as-planned = Nothing to decide.
plan = Plan
# Where a coach's pages lead back to.
board = Board
# In place of a key, while something above it was not in view yet.
read-on = Read on
days = Days
# $from and $to are days.
plan-runs = { $from } to { $to }, { $weeks ->
    [one] 1 week
   *[other] { $weeks } weeks
}.
no-plan-published = No plan is published yet.
a-plan-is-a-file = A plan is a text file. Holdfast checks it before anything is published, and says what is wrong at which line.
