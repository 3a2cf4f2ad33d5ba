# Was an der Ausstattung einer Plandatei falsch sein kann: Stangen, Scheiben, Kettlebells und Gewichte, die sie nicht hergibt.

## Stangen, Scheiben und Kettlebells

# $unit ist kg oder lb.
unit-of-bar = Schreib es in { $unit } wie bei der Stange.
# Scheiben werden einzeln gezählt, und $count ist ungerade.
plate-without-pair = `count` ist { $count }; einer Scheibe fehlt das Gegenstück.
count-single-plates = Zähle einzelne Scheiben: Schreib { $fewer } oder { $more }.
mass-listed-already = { $mass } steht schon in Zeile { $line }.
list-mass-once = Schreib jedes Gewicht nur einmal auf und zähle die Stückzahlen zusammen.
# $name steht in den Anführungszeichen, die er in der Datei hat.
bar-named-already = Die Stange in Zeile { $line } heißt auch { $name }.
name-each-bar = Gib jeder Art von Stange einen eigenen Namen oder erhöhe ihr `count`.

## Gewichte, die sich nicht auflegen lassen

too-many-loads = `plate` ergibt mehr als { $most } verschiedene Gewichte.
leave-odd-plates-out = Lass die Scheiben mit krummen Gewichten weg.
leave-odd-plates-out-or-unmix = Lass die Scheiben mit krummen Gewichten weg oder schreib `mixed = false`.
no-bar = Die Ausstattung hat keine Stange.
no-bar-for-load = Die Ausstattung hat keine Stange für dieses Gewicht.
no-bell-for-load = Die Ausstattung hat keine Kettlebell für dieses Gewicht.
# $example ist eine Zeile aus einem Plan mit einer Stange oder Kettlebell.
add-to-kit = Ergänze `{ $example }` in `[kit]` oder lass das Gewicht weg.
no-bar-builds = Keine Stange lässt sich auf { $load } beladen.
no-bell-weighs = Keine Kettlebell wiegt { $load }.
nearest-loads = Am nächsten kommen mit dieser Ausstattung { $below } und { $above }.
heaviest-load = Das schwerste Gewicht dieser Ausstattung ist { $load }.
lightest-load = Das leichteste Gewicht dieser Ausstattung ist { $load }.
