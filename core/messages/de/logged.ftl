### Was ein Druck gespeichert oder rückgängig gemacht hat, in wenigen Wörtern: „Gespeichert: ...“ oder
### „Rückgängig: ...“ steht davor. Mehreres von einem Druck wird zur Liste.

## Sätze, Fenster, Dehnungen, Messungen.

# $done ist, was gemacht wurde, etwa „70 kg × 5, 2 übrig“.
set = { $piece } Satz { $set }, { $done }
# $done ist, was gemacht wurde, etwa „12 geschafft, 8 s Luft“.
window = { $piece } Fenster { $window }, { $done }
# $sides ist die gehaltene Zeit, oder die jeder Seite.
held = { $piece }, gehalten: { $sides }
# $side ist der Name einer Seite, $held eine Zeit; bei einer kürzeren mit Grund.
of-side = { $side } { $held }
# Zwischen zwei Seiten.
between-sides = { ", " }
# $reading ist eine Zahl mit Einheit, gemessen vor oder nach einer Dehnung.
read-before = { $piece } vorher, { $reading }
read-before-side = { $piece } vorher, { $side } { $reading }
read-after = { $piece } nachher, { $reading }
read-after-side = { $piece } nachher, { $side } { $reading }

## Uhren und Pausen.

clock-started = { $piece }, Uhr gestartet
clock-paused = { $piece }, Uhr angehalten
clock-resumed = { $piece }, Uhr läuft wieder
clock-extended = { $piece }, 15 s mehr
clock-skipped = { $piece }, zum Nächsten gesprungen
clock-stopped = { $piece }, Uhr gestoppt
rest-ended = Pause beendet
rest-longer = 1 min mehr Pause

## Varianten, Beschwerden, was aufgeschoben ist.

took-option = { $piece }, Variante { $option }
# $because ist der Grund: „Griff“, „kein Gerät“.
took-option-because = { $piece }, Variante { $option } ({ $because })
back-to-movement = { $piece }, zurück zu { $movement }
took-bar = { $piece }, Stange: { $bar }
flagged = { $piece }, { $movement }: { $place } { $severity }/10
# $signs ist eine Liste von Warnzeichen.
flagged-with-signs = { $piece }, { $movement }: { $place } { $severity }/10, Warnzeichen: { $signs }
flagged-between = { $movement }: { $place } { $severity }/10
flagged-between-with-signs = { $movement }: { $place } { $severity }/10, Warnzeichen: { $signs }
flagged-alone = { $place } { $severity }/10
flagged-alone-with-signs = { $place } { $severity }/10, Warnzeichen: { $signs }
flag-cleared = Meldung aufgehoben
# Was sich von einem Teil aufschieben lässt.
measure-before = { $piece } (Messung vorher)
measure-after = { $piece } (Messung nachher)
# $what ist ein Teil oder eine seiner Messungen.
put-off = { $what }: später
left-for-today = { $what }: für heute ausgelassen

## Die Einheit, und was kein Druck schreibt.

session-begun = Einheit begonnen: { $day }
session-afterwards = wird nachgetragen: { $day }, { $date }
session-rated = Einheit beendet, { $rating } von 10
session-finished = Einheit beendet
coach-answer = die Antwort des Coachs
set-aside = ein Satz, den der Coach nicht zählt
one-rep-max = ein 1RM
# $label ist, wie der Coach das Mitglied nennt.
taken-in = { $label } aufgenommen
taken-back = rückgängig gemacht
# Was mit einem Gerät geschah, oder mit jemandem.
removed-from-crew = aus der Crew entfernt
device-removed = ein Gerät entfernt
device-stopped = ein Gerät gestoppt
device-added = ein neues Gerät
somebody-forgotten = jemand vergessen
