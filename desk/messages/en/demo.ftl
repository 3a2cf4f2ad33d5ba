## The demo: what it tells. Names of people, days and movements come from its own plan.

# Written into the demo's folder, so that a later demo may play there again.
mark = A new demo may replace this folder.
# Beside the bar that shows how far it is; $on is a date in figures.
training = { $name }, { $on }

## What was played

title = Three weeks in the boathouse cellar (simulated bodies, real everything else)
published = { $weeks ->
    [one] { $coach } published a plan of 1 week.
   *[other] { $coach } published a plan of { $weeks } weeks.
}
carried = { $phones ->
    [one] 1 phone took it from the carrier folder, trained by it, and left its log there.
   *[other] { $phones } phones took it from the carrier folder, trained by it, and left their logs there.
}
files = { $files ->
    [one] The folder now holds 1 file.
   *[other] The folder now holds { $files } files.
}
# Stands between names.
comma = { ", " }

## What is left behind: each line begins with a folder or file

left-behind = Files written
devices = { $path }  a folder for each device, with its own database
carrier = { $path }  the files the devices exchanged
report = { $path }  the board and every member's page, with charts
plan = { $path }  the plan
# Commands follow, to be typed.
to-go-on = Try next
# Never seen: both sides of the demo are the same program.
words-differ = The demo's words differ.
