### Ein Trainingstag im Terminal: Hinweise, dann jeder Teil mit seinen Sätzen, Fenstern oder Seiten.

## Wörter in Farbe vor einer Zeile

care = WARNUNG:
note = Hinweis:
discomfort = Beschwerden:
# Vor dem Kürzel einer Variante und warum sie sich anbietet: „Vorschlag box-squat: ...“
consider = empfohlen { $option }:

## Der Tag

done-for-today = Für heute fertig.
# Nichts ist geplant: die Trainingstage des Plans, die man machen könnte.
days = Trainingstage: { $days }
between-days = { ", " }

## Ein Kraftteil

# Der Name eines Teils, dann, was er ist.
piece = { $name }: { $heading }
warm-up = Aufwärmen: { $sets }
between-sets = { "; " }
# Spalten der Tabelle der Sätze; kurz.
column-set = Satz
column-load = Gewicht
column-reps = Wdh.
column-plates = Scheiben je Seite
column-done = gemacht
column-why = Grund
# $estimate ist ein geschätztes 1RM.
not-tested = { $estimate } (nicht getestet)
open-set = Satz { $set } ist offen: so viele saubere Wiederholungen wie möglich.
# $expected sagt, mit wie vielen zu rechnen ist.
open-set-expected = Satz { $set } ist offen: so viele saubere Wiederholungen wie möglich; { $expected }

## Eine Dehnung

# $sides sind eine oder mehrere der nächsten Meldung oder nur eine Zeit.
held = gehalten: { $sides }
held-side = { $side } { $held }
between-sides = { ", " }
measure = { $protocol }: vor und nach der Dehnung messen
# $readings stehen für sich: „vorher, links: 10,5 cm“.
measured = { $protocol }: { $readings }
between-readings = { "; " }

## Varianten einer Übung, mit dem Kürzel, das man tippt

options = Varianten: { $options }
# $because ist der Grund, sie zu nehmen: „unterer Rücken“.
option = { $key } ({ $because })
option-taken = { $key } ({ $because }, gewählt)
between-options = { ", " }

## Eine Uhr in wenigen Wörtern: ihre Phase, worum es geht („links“, „12 x Swing“), die restliche Zeit

clock = { $now }
clock-about = { $now }, { $about }
clock-to-go = { $now }, noch { $seconds } s
clock-about-to-go = { $now }, { $about }, noch { $seconds } s

## Die eine Taste

# Was ein Druck tut.
enter = Enter: { $does }

## Wohin Text geschrieben wird

standard-output = Standardausgabe
