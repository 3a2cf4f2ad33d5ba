# Places of a plan file that can't be read at all, as TOML.

## What is wrong

comma-missing = A comma is missing before this.
text-not-closed = The text that starts here is not closed.
list-not-closed = The list that starts here is not closed.
table-not-closed = The table that starts here is not closed.
value-missing = A value is missing here.
# $word is what stands there, such as 1 min without quotes.
bare-word = `{ $word }` is neither a number nor text in quotes.
second-time = `{ $key }` is here a second time.
# A line such as name.x = 3 after name = "Squat".
dotted-twice = The part before the dot has a value already.
quote-missing = The text here has no closing quote.
brackets-differ = The brackets here don't match.
equals-missing = An `=` is missing here.
equals-too-many = There is one `=` too many here.
comma-too-many = There is one comma too many here.
key-unreadable = This key can't be read.
more-than-one = This line has more than one key and its value.
no-such-date = This date or time does not exist.
number-unreadable = This number can't be read.
backslash-unreadable = This `\` can't be read.
line-unreadable = This line can't be read.

## What to do

put-comma = Put a comma between the entries of a list or a table.
# $bracket is what ends it: three quotes or a bracket.
close-with = End it with `{ $bracket }`.
quote-text = Put text in double quotes, such as "90 s", and a comma between the entries of a list.
take-one-out = Take one of the two out, or give it another key.
quote-on-one-line = Start and end text with a double quote on the same line.
close-brackets = Close what is open: `[` with `]`, `[[` with `]]`, `{ "{" }` with `{ "}" }`.
write-key-and-value = Write `key = value`, or a section such as `[kit]`. Keys have no blanks in them.
one-each-line = Write one key and its value on each line, text in double quotes.
take-it-out = Take it out.
write-digits = Write digits only, such as `12`.
write-backslash = Leave it out, or write `\\` for a backslash.
write-like = Write it like `name = "Squat"`, `reps = [8, 6]` or `starts = 2026-11-02`.
