# Was am Block einer Plandatei falsch sein kann, an seinen Tagen, deren Teilen und an den Übungen und
# Dehnungen, die sie nennen. Ein Datum steht da wie in der Datei: 2026-11-02.

## Wann der Block beginnt

starts-on-tuesday = `starts` muss ein Montag sein; { $date } ist ein Dienstag.
starts-on-wednesday = `starts` muss ein Montag sein; { $date } ist ein Mittwoch.
starts-on-thursday = `starts` muss ein Montag sein; { $date } ist ein Donnerstag.
starts-on-friday = `starts` muss ein Montag sein; { $date } ist ein Freitag.
starts-on-saturday = `starts` muss ein Montag sein; { $date } ist ein Samstag.
starts-on-sunday = `starts` muss ein Montag sein; { $date } ist ein Sonntag.
mondays = Der Montag davor ist { $before }, der Montag danach { $after }.
write-monday = Schreib einen Montag, zum Beispiel `{ $example }`.

## Leichte Wochen

nothing-easier = `easy` macht nichts leichter.
add-either = Ergänze `{ $load }`, `{ $sets }` oder beides.
# $least und $most sind Texte in ihren Anführungszeichen, etwa "-40 %".
write-lighter = Schreib, wie viel leichter, von { $least } bis { $most }.
write-fewer = Schreib, wie viele Sätze weniger, von { $least } bis { $most }.

## Namen

# $name steht in den Anführungszeichen, die er in der Datei hat.
name-taken = Der Name { $name } steht schon in Zeile { $line }.
name-each-day = Gib jedem Tag eines Blocks einen eigenen Namen.
name-each-piece = Gib jedem Teil eines Tages einen eigenen Namen.

## Übungen und Dehnungen

no-movement = Dieser Plan hat keine Übung "{ $key }".
no-stretch = Dieser Plan hat keine Dehnung "{ $key }".
# $keys sind mehrere, etwa "squat" und "press-up".
plan-has = Der Plan hat { $keys }.
# $keys sind mehrere, nur mit Kommas.
plan-has-more = { $more ->
    [one] Der Plan hat { $keys } und 1 weitere.
   *[other] Der Plan hat { $keys } und { $more } weitere.
}
write-movement = Schreib `[movement.back-squat]` und darunter `name = "Back squat"`, `pattern = "squat"` und `lifted = "bar"`.
write-stretch = Schreib `[stretch.calf-wall]` und darunter `name = "Calf stretch"` und `region = "calves"`.

## Intervallteile

# $window ist die Dauer eines Fensters, $total die aller zusammen.
piece-too-long = { $rounds ->
    [one] { $stations ->
        [one] 1 Runde mit 1 Station zu { $window } dauert { $total }.
       *[other] 1 Runde mit { $stations } Stationen zu je { $window } dauert { $total }.
    }
   *[other] { $stations ->
        [one] { $rounds } Runden mit 1 Station zu je { $window } dauern { $total }.
       *[other] { $rounds } Runden mit { $stations } Stationen zu je { $window } dauern { $total }.
    }
}
write-fewer-rounds = Ein Teil dauert höchstens { $longest }. Schreib weniger Runden.
# Das Feld ist `margin`.
shorter-than-window = Es muss kürzer sein als das Fenster von { $window }.
load-for-body = `load` ist für Stange oder Kettlebell; diese Übung geht nur mit Körpergewicht.
leave-load-out = Lass `load` weg.

## Dehnteile

switch-on-one-side = `switch` ist die Zeit zwischen zwei Seiten; diese Dehnung hat nur eine.
leave-switch-out = Lass `switch` weg oder schreib `sides = 2`.
switch-too-long = `switch` dauert { $switch }, länger als das Halten mit { $hold }.
shorten-switch = Kürze es oder halte länger.
phases-too-long = `contract` und `relax` dauern zusammen { $phases }, länger als das Halten mit { $hold }.
shorten-phases = Kürze sie oder halte länger.
phase-in-static = `{ $key }` gehört nur zu contract-relax; diese Dehnung ist statisch.
leave-phase-out = Schreib `technique = "contract-relax"` oder lass `{ $key }` weg.
