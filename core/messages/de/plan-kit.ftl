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

## Geräte und Unterstützung

# $name steht in den Anführungszeichen, die er in der Datei hat.
machine-named-already = Das Gerät in Zeile { $line } heißt auch { $name }.
name-each-machine = Gib jedem Gerät einen eigenen Namen.
# $unit ist kg oder lb.
unit-of-others = Schreib es in { $unit } wie die anderen.
# Das Feld ist `to`.
last-of-stack = Schreib mindestens { $from }: Dort beginnt der Gewichtsblock.
uneven-stack = Von { $from } an endet ein Gewichtsblock in Schritten von { $step } nie bei { $to }.
end-of-stack = Lass ihn bei { $below } oder { $above } enden.
stack-too-long = Dieser Gewichtsblock hat { $count } Gewichte; höchstens { $most } sind möglich.
larger-step = Schreib einen größeren Schritt oder zähle die Gewichte auf.

## Die Stange und das Gerät einer Übung

bar-without-bar = `bar` nennt eine Stange; diese Übung hat keine.
leave-bar-out = Lass `bar` weg oder schreib bei der Übung `lifted = "bar"`.
no-such-bar = Die Ausstattung hat keine Stange "{ $name }".
machine-without-machine = `machine` nennt ein Gerät; diese Übung hat keins.
leave-machine-out = Lass `machine` weg oder schreib `lifted = "machine"`.
no-such-machine = Die Ausstattung hat kein Gerät "{ $name }".
# $example ist eine Zeile aus einem Plan mit einer Stange oder einem Gerät.
add-to-kit-alone = Ergänze `{ $example }` in `[kit]`.

## Gewichte, die sich nicht auflegen lassen

too-many-loads = `plate` ergibt mehr als { $most } verschiedene Gewichte.
leave-odd-plates-out = Lass die Scheiben mit krummen Gewichten weg.
leave-odd-plates-out-or-unmix = Lass die Scheiben mit krummen Gewichten weg oder schreib `mixed = false`.
no-bar = Die Ausstattung hat keine Stange.
no-bar-for-load = Die Ausstattung hat keine Stange für dieses Gewicht.
no-bell-for-load = Die Ausstattung hat keine Kettlebell für dieses Gewicht.
no-pair-for-load = Die Ausstattung hat keine zwei gleich schweren Kettlebells für dieses Gewicht.
nothing-to-hang = Die Ausstattung hat keine Scheibe und keine Kettlebell, die sich für dieses Gewicht anhängen lässt.
no-assistance-for-load = Die Ausstattung hat keine Unterstützung für dieses Gewicht.
no-machine-for-load = Die Ausstattung hat kein Gerät für dieses Gewicht.
# $example ist eine Zeile aus einem Plan mit einer Stange oder Kettlebell.
add-to-kit = Ergänze `{ $example }` in `[kit]` oder lass das Gewicht weg.
no-bar-builds = Keine Stange lässt sich auf { $load } beladen.
no-bell-weighs = Keine Kettlebell wiegt { $load }.
bar-cant-be = Die Stange "{ $bar }" lässt sich nicht auf { $load } beladen.
no-pair-weighs = Keine zwei Kettlebells wiegen je { $load }.
cannot-hang = Keine Scheiben und keine Kettlebell zum Anhängen wiegen { $load }.
no-such-assistance = Eine Unterstützung von { $load } gibt es nicht.
no-such-pin = An diesem Gerät gibt es { $load } nicht.
nearest-loads = Am nächsten kommen mit dieser Ausstattung { $below } und { $above }.
heaviest-load = Das schwerste Gewicht dieser Ausstattung ist { $load }.
lightest-load = Das leichteste Gewicht dieser Ausstattung ist { $load }.

## Aufwärmen

nothing-for-warm-ups = Das legt nichts fürs Aufwärmen fest.
# $unit is kg or lb.
unit-of-smallest = Schreib es in { $unit } wie `smallest`.
