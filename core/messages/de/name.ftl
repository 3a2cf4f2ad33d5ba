## Wo es wehtut. Jedes steht in Listen zur Auswahl und in Zeilen wie „Knie 5/10“.

neck = Nacken
shoulder = Schulter
elbow = Ellbogen
wrist = Handgelenk
upper-back = oberer Rücken
low-back = unterer Rücken
hip = Hüfte
knee = Knie
ankle = Sprunggelenk
muscle = Muskel
elsewhere = woanders

## Warnzeichen. Jedes steht in einer Liste zum Ankreuzen, und wo eine Meldung erzählt wird.

chest-pain = Schmerzen in der Brust
dizziness = Schwindel oder Ohnmacht
saddle-numbness = Taubheit zwischen den Beinen
bladder-or-bowel = Probleme mit Blase oder Darm
limb-weakness = Schwäche oder Taubheit in Bein oder Arm
dark-urine = dunkler Urin nach dem Training oder Tage später
# Nur aus älteren Einträgen: danach wird nicht mehr gefragt.
pain-in-both-legs = Schmerzen bis in beide Beine

## Warum eine Variante genommen wird.

because-grip = Griff
because-low-back = unterer Rücken
because-overhead-range = Beweglichkeit über Kopf
because-sore-legs = Muskelkater in den Beinen
because-no-equipment = fehlende Ausstattung

## Wie die Beweglichkeit gemessen wird

sit-and-reach = Rumpfbeuge im Sitzen
fingertip-to-floor = Finger-Boden-Abstand
knee-to-wall = Knie zur Wand
shin-angle = Schienbeinwinkel im Ausfallschritt

## Was ein Coach auf einen Vorschlag geantwortet hat

accepted = angenommen
changed = geändert
refused = abgelehnt

## Was der Körper in einer Übung tut

squat = Kniebeuge
hinge = Hüftbeuge
push = Drücken
pull = Ziehen
carry = Tragen
step = Steigen
trunk = Rumpf
