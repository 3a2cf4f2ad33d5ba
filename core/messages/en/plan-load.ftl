# What can be wrong with the load of a strength piece in a plan file.

## Rules

# $found is the rule in its quotes, such as "step".
rule-for-body = `rule` can't be { $found } for a bodyweight movement.
write-free = Write `rule = "free"`.
# $found is the rule in its quotes, such as "percent".
rule-on-a-body = `rule` can't be { $found } for a load on a body: near zero, a percentage of it means nothing.
write-step-fixed-or-free = Write `rule = "step"`, `rule = "fixed"` or `rule = "free"`.

## Steps

nothing-to-earn = `earned_by` needs an `earned_step`.
# $example is a line of a plan with an earned_step.
add-earned-step = Add `{ $example }`, or leave `earned_by` out.
# $found is the mass in its quotes, $unit is kg or lb.
second-step = { $found } is a second step in { $unit }.
one-step-a-unit = Write one step for each unit, such as `{ $example }`.

## One for each set

not-one-for-each-set = { $entries ->
    [one] { $sets ->
        [one] `{ $key }` has 1 entry for 1 set.
       *[other] `{ $key }` has 1 entry for { $sets } sets.
    }
   *[other] { $sets ->
        [one] `{ $key }` has { $entries } entries for 1 set.
       *[other] `{ $key }` has { $entries } entries for { $sets } sets.
    }
}
load-for-each-set = Write one load for each set, or one alone for all: `loads = "60 kg"`.
percent-for-each-set = Write one percent for each set, or one alone for all: `percents = 75`.
