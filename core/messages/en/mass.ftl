## Why a text is not a mass: a load or a plate as somebody types it.

not-a-mass = Write a weight as a number and a unit, such as "92.5 kg" or "205 lb".
# $number is as it was typed.
mass-without-unit = Write the unit too: "{ $number } kg" or "{ $number } lb".
mass-too-fine = A weight has at most three decimals.
mass-too-large = A weight is at most 2000 kg or 4000 lb.
