# The tables of a plan file and the keys in them. The words in backticks are the file's own.

## A key that nobody knows. What is possible is said in a line below it.

plan-has-no = A plan has no `{ $key }`.
block-has-no = A block has no `{ $key }`.
kit-has-no = A kit has no `{ $key }`.
bar-has-no = A bar has no `{ $key }`.
plate-has-no = A plate has no `{ $key }`.
bell-has-no = A bell has no `{ $key }`.
machine-has-no = A machine has no `{ $key }`.
stack-has-no = A stack has no `{ $key }`.
warm-up-has-no = `warm-up` has no `{ $key }`.
easy-has-no = `easy` has no `{ $key }`.
movement-has-no = A movement has no `{ $key }`.
option-has-no = An option has no `{ $key }`.
stretch-has-no = A stretch has no `{ $key }`.
day-has-no = A day has no `{ $key }`.
piece-has-no = A piece has no `{ $key }`.
strength-has-no = A strength piece has no `{ $key }`.
interval-has-no = An interval piece has no `{ $key }`.
hold-has-no = A hold piece has no `{ $key }`.
note-has-no = A note has no `{ $key }`.
station-has-no = A station has no `{ $key }`.
load-has-no = A load has no `{ $key }`.
step-has-no = A load with `rule = "step"` has no `{ $key }`.
percent-has-no = A load with `rule = "percent"` has no `{ $key }`.
reserve-has-no = A load with `rule = "reserve"` has no `{ $key }`.
fixed-has-no = A load with `rule = "fixed"` has no `{ $key }`.
free-has-no = A load with `rule = "free"` has no `{ $key }`.

## A key that is missing. What to add is said in a line below it.

plan-needs = A plan needs `{ $key }`.
block-needs = A block needs `{ $key }`.
kit-needs = A kit needs `{ $key }`.
bar-needs = A bar needs `{ $key }`.
plate-needs = A plate needs `{ $key }`.
bell-needs = A bell needs `{ $key }`.
machine-needs = A machine needs `{ $key }`.
stack-needs = A stack needs `{ $key }`.
warm-up-needs = `warm-up` needs `{ $key }`.
easy-needs = `easy` needs `{ $key }`.
movement-needs = A movement needs `{ $key }`.
option-needs = An option needs `{ $key }`.
stretch-needs = A stretch needs `{ $key }`.
day-needs = A day needs `{ $key }`.
piece-needs = A piece needs `{ $key }`.
strength-needs = A strength piece needs `{ $key }`.
interval-needs = An interval piece needs `{ $key }`.
hold-needs = A hold piece needs `{ $key }`.
note-needs = A note needs `{ $key }`.
station-needs = A station needs `{ $key }`.
load-needs = A load needs `{ $key }`.
step-needs = A load with `rule = "step"` needs `{ $key }`.
percent-needs = A load with `rule = "percent"` needs `{ $key }`.
reserve-needs = A load with `rule = "reserve"` needs `{ $key }`.
fixed-needs = A load with `rule = "fixed"` needs `{ $key }`.
