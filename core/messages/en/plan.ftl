# Problems of a plan file, as a coach reads them: what is wrong, and in a line below it what to do.
# What stands in backticks or straight quotes is the file's own text: it stays as it is.

## The file as a whole

too-large = The plan has { $size } bytes; { $most } is the most.
split-into-blocks = Split it into blocks.
# $byte is the byte in hexadecimal, such as FC.
not-text = The plan is not UTF-8 text: byte 0x{ $byte } can't be read.
save-as-text = Save the file again as UTF-8 text.
empty = The plan is empty.
start-plan = Start with `[block]` and its `name`, `starts` and `weeks`, then a `[[day]]` with its pieces.
start-kit = Write a `[kit]` with its `bar` and `plate`.
# In the place of the last problem that is shown.
more-problems = { $problems ->
    [one] 1 more problem from here on.
   *[other] { $problems } more problems from here on.
}
fix-these-first = Fix these first, then check the plan again.

## A value that a key can't have. $found is the value as it is written.

cant-be = `{ $key }` can't be { $found }.
cant-be-list = `{ $key }` can't be a list.
cant-be-table = `{ $key }` can't be a table.
# The value is one of a list.
cant-hold = `{ $key }` can't hold { $found }.
cant-hold-list = `{ $key }` can't hold a list.
cant-hold-table = `{ $key }` can't hold a table.

## What to write instead

write-text = Write text in double quotes.
write-true-or-false = Write `true` or `false`, without quotes.
write-number = Write a whole number from { $least } to { $most }.
write-number-unquoted = Write a whole number from { $least } to { $most }, without quotes.
write-either-number = Write { $least } or { $most }.
write-either-number-unquoted = Write { $least } or { $most }, without quotes.
# $value stands in the file already, but between quotes.
unquote = Write it without quotes: `{ $value }`.
# $words are several, such as "squat", "hinge" or "push".
write-word = Write { $words }.
write-quoted-word = Write the word in double quotes: { $words }.
# $example is a line of a plan.
write-example = Write `{ $example }`.
write-list = Write a list in square brackets: `{ $example }`.
add-example = Add `{ $example }`.
write-date = Write year-month-day without quotes, such as `2026-11-02`.
# $one and $other are one number with each of two units: "20 kg" and "20 lb".
quote-with-unit = Write it in double quotes with its unit: "{ $one }" or "{ $other }".
write-mass = Write a weight as a number and a unit, such as "92.5 kg" or "205 lb".
# The mass is in quotes already.
add-unit = Write its unit too: "{ $one }" or "{ $other }".
mass-above-zero = Write a weight above zero.
# $load is the same mass with a minus, such as -20 kg.
write-minus = Assistance is taken off: write it with a minus, such as "{ $load }".
write-time = Write minutes, seconds or both: "90 s", "2 min" or "1 min 30 s".
write-time-between = Write a time from "{ $least }" to "{ $most }".

## Texts, lists and keys

nothing-in-it = `{ $key }` is empty.
write-a-letter = Write at least one letter.
text-too-long = `{ $key }` has { $characters } characters; { $most } is the most.
shorten-text = { $characters ->
    [one] Shorten it by 1 character.
   *[other] Shorten it by { $characters } characters.
}
# $code is the number of a character, such as U+0009.
unshown-character = `{ $key }` has a character that can't be shown ({ $code }).
write-without-tabs = Write it without tabs.
write-on-one-line = Write it on one line, without tabs.
list-too-long = `{ $key }` has { $entries } entries; { $most } is the most.
take-out = Take { $entries } out.
listed-twice = { $value } is listed twice.
take-one-out = Take one of them out.
# A name that the coach gives a movement, an option or a stretch for pieces to refer to.
bad-key = `{ $key }` can't be a key.
write-key = Use 1 to 40 small letters, digits and hyphens, such as `back-squat`.
possible-keys = Possible keys: { $keys }.

## Guesses and lists within a sentence

did-you-mean-key = Did you mean `{ $key }`?
did-you-mean-word = Did you mean "{ $word }"?
# Two whole sentences.
both-sentences = { $first } { $second }
comma = { $before }, { $next }
and-last = { $before } and { $last }
or-last = { $before } or { $last }
