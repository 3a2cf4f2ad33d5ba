## Where discomfort is felt. Each stands in lists to choose from, and in lines such as "knee 5/10".

neck = neck
shoulder = shoulder
elbow = elbow
wrist = wrist
upper-back = upper back
low-back = low back
hip = hip
knee = knee
ankle = ankle
muscle = muscle
elsewhere = elsewhere

## Emergency signs. Each stands in a list to tick, and after "with" where a flag is told.

chest-pain = chest pain
dizziness = dizziness or fainting
saddle-numbness = numbness between the legs
bladder-or-bowel = trouble with bladder or bowel
limb-weakness = weakness or numbness in a leg or arm
dark-urine = dark urine after training or days later
# Only from older logs: it is not asked any more.
pain-in-both-legs = pain into both legs

## Why an option is taken: "option: box squat, for low back".

because-grip = grip
because-low-back = low back
because-overhead-range = overhead range
because-sore-legs = sore legs
because-no-equipment = no equipment

## How a range of motion is measured

sit-and-reach = sit and reach
fingertip-to-floor = fingertip to floor
knee-to-wall = knee to wall
shin-angle = shin angle in a lunge

## What a coach answered to a proposal

accepted = accepted
changed = changed
refused = refused

## What the body does in a movement

squat = squat
hinge = hinge
push = push
pull = pull
carry = carry
step = step
trunk = trunk
