### Fragen als Bildschirme des Telefons, zwischen zwei Sätzen gelesen: oben die Frage, darunter Tasten; die eine Taste sagt, was
### sie speichert oder was noch fehlt.

not-here = Hier gibt es jetzt nichts zu fragen.

## Ein Satz von Hand.

what-did-you-lift = Was hast du gehoben?
how-many-reps = Wie viele saubere Wiederholungen?
load = Gewicht, in Schritten, die der Raum hergibt
good-reps = Saubere Wiederholungen
# Wie viele noch gegangen wären.
reps-left = Wiederholungen in Reserve
reps-left-if-known = Wiederholungen in Reserve (wenn du magst)
# Unter dem Gewicht, das der Plan vorschlägt.
proposed = { $load } vorgeschlagen
# Unter der Zahl, die gefragt ist.
asked = gefragt
or-more = { $number } oder mehr
choose-load = Gewicht wählen
# Was auch ohne eines gehoben sein kann.
choose-load-or-none = Gewicht wählen, oder keins
what-else = Was hast du noch gemacht?
or-another-movement = Eine Übung beim Namen
choose-movement = Wähle die Übung
no-load = keins
any-load = Gewicht
# Unter dem, was gespeichert wird: Face pull.
without-load = { $movement }, ohne Gewicht
choose-reps = Wiederholungen wählen
choose-reserve = Reserve wählen
not-saved-yet = Noch nicht gespeichert.
# Was gespeichert wird, etwa "57,5 kg × 6, 2 in Reserve".
save = Speichern: { $what }
# Eine Taste, nach der das Gewicht getippt werden kann.
type-it = Tippen
# $load ist eines, das der Raum hergibt.
type-load = Tippe ein Gewicht, etwa { $load }
corrects-set = Korrigiert Satz { $set }.

## Ein Satz von irgendeinem Tag. $was als "60 kg × 5" ist, was eingetragen ist.

# $day als "Di 10. Nov."
what-lifted-on = Was hast du am { $day } gehoben?
set-of = { $movement }, Satz { $set }
logged-as = Eingetragen ist { $was }.
was-not-done = Diesen Satz habe ich nicht gemacht
take-back = Zurücknehmen: { $was }
not-counted = Daraus wird dann nichts mehr berechnet.
# Er sah nach einem Versehen aus.
is-right = { $was } stimmt
counts-then = Dann zählt der Satz.
change-what-is-wrong = Ändere, was nicht stimmt

## Ein Fenster von Hand, und die Sekunden einer Dehnung.

what-did-you-do = Was hast du gemacht?
to-spare = Zeit übrig
save-reps = { $reps ->
    [one] Speichern: 1 Wiederholung
   *[other] Speichern: { $reps } Wiederholungen
}
corrects-window = Korrigiert Fenster { $window }.
how-long-held = Wie lange hast du gehalten?
held = Gehalten

## Eine Messung. $protocol ist etwa "Knie zur Wand".

measure-before = Vor dem Halten: { $protocol }
measure-after = Nach dem Halten: { $protocol }
# $last als "9,6 cm" ist, was an einem früheren Tag gemessen wurde.
side-last = { $side }, zuletzt { $last }
# Beide mit Einheit; eine Nachkommastelle kann getippt werden.
type-reading = Tippe den Messwert: { $low } bis { $high }
choose-reading = Messwert wählen

## Das Ende einer Einheit, und wo sie beginnt.

how-hard = Wie anstrengend war die ganze Einheit?
rest-end = 0 Ruhe
hardest-end = 10 das Härteste überhaupt
how-many-minutes = Wie lange hat sie gedauert?
minutes = min
finish-rated = Beenden: Anstrengung { $rpe }
choose-rpe = Anstrengung wählen
choose-minutes = Dauer wählen
which-day = Welche Einheit trainierst du?
choose-day = Einheit wählen
which-bar = Mit welcher Stange hebst du?
choose-bar = Andere Stange wählen
stays-next-time = Sie bleibt auch die nächsten Male.
which-station = Wo fängst du an?

## Varianten.

options = Varianten
instead-of = Statt { $movement }
# Ein Grund, etwa "unterer Rücken".
option-for = Grund: { $reason }
taken-now = gerade gewählt
back-to = Zurück zu { $movement }
take = { $what } nehmen
choose-option = Variante wählen
logged-with-reason = Dein Coach sieht, welche und warum.

## Beschwerden.

where-hurts = Wo tut es weh?
how-bad = Wie stark, 1 bis 10?
loads-stay = 1 bis { $most }: das Gewicht bleibt
movement-stops = { $least } bis 10: Übung abbrechen
any-signs = Taubheit, Schwäche, Schwindel oder Schmerz in der Brust?
which-signs = Was davon?
none-of-these = Nichts davon
back-to-place = Zurück
choose-place = Stelle wählen
choose-severity = Stärke wählen
save-flag = Speichern: { $place }, { $severity } von 10

# Welche Meldung vorbei ist: ihre Zeilen stehen in der Liste.
which-is-over = Was ist vorbei?
choose-flag = Wählen, was vorbei ist
clear-this = Diese Meldung aufheben
loads-come-back = Die Gewichte folgen wieder deinem Log.

## Notizen.

add-note = Notiz hinzufügen
note = Notiz
coach-reads = Dein Coach kann das lesen
stays-here = Bleibt auf diesem Gerät
choose-reader = Wählen, wer es lesen kann
type-note = Notiz eingeben
save-note = Notiz speichern
