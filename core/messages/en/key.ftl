### The one key: what it says, and in a second line what a press does or why it waits. Read at arm's
### length: a press must do exactly what the words say.

## What the key says.

no-plan = No plan yet
# Asks which day, then begins its session.
other-day = Train another day's session
begin = Begin { $day }
# What is planned, such as "60 kg × 6": a press logs it as planned.
done = Done: { $what }
choose-load = Choose the load
# Asks for the reps of an open set, then saves.
done-how-many = Done: { $what }. How many reps?
# Asks for the reps in reserve, then saves.
done-how-many-left = Done: { $what }. How many reps in reserve?
end-rest = End the rest
get-ready = Get ready
wait-for-window = Wait for the next window
start-clock = Start the clock
pause = Pause
go-on = Resume
seconds-more = 15 s more
next = Next
stop = Stop
# The time held, such as "2 min and 1 min 35 s".
save-held = Save { $held }
type-reading = Type the reading
finish = Finish with a rating
correct = Correct
# A movement that hurts is left for today.
leave-piece = No more { $what } today
# Stops the clock of a movement that hurts.
stop-piece = Stop { $what }
emergency = Finish, then get emergency care
# Leaves the screen of a finished session.
leave = Leave

## What a press does, or why the key waits.

exchange-first = Exchange with your coach first.
nothing-planned = Nothing is planned today.
begins = Begins the session.
saves-set = Saves set { $set } and starts the rest.
saves-set-alone = Saves set { $set }.
load-saved-with-reps = It is saved with the reps.
count-good-reps = Count the good reps of an open set.
finds-next-load = That gives the next set its load.
finds-next-time = That helps to find the load of next time.
# $what is what the set asks for, such as "60 kg × 6".
then-set = Then set { $set }: { $what }.
saves-window = Saves window { $window }.
first-window-comes = The first window is next.
window-is-logged = Window { $window } is logged.
time-to-get-ready = You get time to get ready first.
saves-held = Saves what the clock counted.
# Of a session written afterwards.
saves-as-planned = Saves it as planned; or type the seconds held.
rating-ends = 0 is rest, 10 the hardest there is.
already-logged = Already logged.
hurts-next-piece = It hurts: move on to the next piece.
hurts-stop-clock = It hurts: stop the clock first.
emergency-stop = This device calls nobody: call for help yourself.
next-exchange = The next exchange carries it to your coach.
# Instead of the line above, after an emergency sign.
get-care-now = Get emergency care now. If it has eased, see a doctor today.
