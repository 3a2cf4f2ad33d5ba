## When an emergency sign is ticked. The first stands alone where there is no room for more.

stop-now = Stop now and get emergency care.

## When discomfort is flagged

leave-movement = Stop this movement for today. An option that does not hurt is fine.
# Where no movement is named.
leave-what-hurts = Leave out whatever brings it on today.
go-lighter = Go lighter or take an option. Stop if it gets worse.
# The emergency signs that come with a back.
back-signs = If you notice new numbness between the legs, new trouble with bladder or bowel, or a weak or numb leg, get emergency care at once.
# The signs that muscle tissue breaks down.
muscle-signs = If the pain goes far beyond usual soreness, or you notice weakness or dark urine in the next few days, stop and get medical care at once.
loads-stay = Loads for this movement stay as they are until you or your coach clears the flag. See a doctor or physiotherapist about pain that lasts.
loads-gone = There is no load for this movement until you or your coach clears the flag. See a doctor or physiotherapist about pain that lasts.
# Where no movement is named.
loads-held = Where a movement loads this place, its loads go no higher until you or your coach clears the flag. See a doctor or physiotherapist about pain that lasts.
loads-gone-there = There is no load for what loads this place, and nothing else goes up, until you or your coach clears the flag. See a doctor or physiotherapist about pain that lasts.

## The usual cautions, shown where the risk is and with every report

never-diagnoses = Holdfast counts and suggests. It does not know you and never diagnoses.
stop-on = Stop if you feel sharp or spreading pain, numbness, weakness, dizziness or chest pain.
safety-bars = Heavy sets need safety bars or somebody to spot you. The room's own rules come first.
see-a-doctor = See a doctor or physiotherapist about pain that lasts, and before you start after illness, injury or pregnancy.
