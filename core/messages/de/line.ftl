### Getippte Zeilen. Was in Backticks steht, liest das Programm: `40 x 8, 2 übrig`, `flag knie 4`. Befehle wie
### `undo` sind in jeder Sprache dieselben.

## Wörter, die gelesen werden: Listen mit Kommas, und jedes davon wird verstanden, welche Sprache das Programm
## auch spricht. Ein einzelner Buchstabe gilt nur in seiner eigenen Sprache, und in einer Liste darf keiner
## zweimal vorkommen. Umlaute darf man als ae, oe, ue tippen.

# Nach einer Zahl: so viele Wiederholungen wären noch gegangen, wie in `40 x 8, 2 übrig`.
left-typed = übrig
# Nach einer Zahl von Wiederholungen, wo es jemand schreibt.
reps-typed = Wdh., Wiederholungen, Wiederholung
# Nach einer Zahl von Sekunden oder Minuten.
seconds-typed = s, Sek., Sekunde, Sekunden
minutes-typed = min, Minute, Minuten
# Ein Satz, der nach einem Versehen aussieht, stimmt so, wie er eingetragen ist.
right-typed = stimmt, es stimmt, richtig, ja
# Ein Satz wurde nicht gemacht: Er wird zurückgenommen.
none-typed = nicht gemacht, keiner, nichts
# Zwischen Warnzeichen, wie in `flag knie 6 mit dunkler Urin und Brustschmerz`.
and-typed = und, mit

# Wo es weh tut: der Buchstabe zuerst. Die Namen, die auf dem Bildschirm stehen, werden auch gelesen.
place-neck-typed = n, Nacken
place-shoulder-typed = s, Schulter
place-elbow-typed = e, Ellbogen, Ellenbogen
place-wrist-typed = g, Handgelenk
place-upper-back-typed = o, oberer Rücken
place-low-back-typed = u, unterer Rücken, Kreuz
place-hip-typed = h, Hüfte
place-knee-typed = k, Knie
place-ankle-typed = f, Sprunggelenk, Fußgelenk, Knöchel
place-muscle-typed = m, Muskel
place-other-typed = w, woanders, anderswo

# Warnzeichen: der Buchstabe zuerst. Die Namen, die auf dem Bildschirm stehen, werden auch gelesen.
sign-saddle-numbness-typed = t, Taubheit, Taubheit zwischen den Beinen
sign-bladder-or-bowel-typed = p, Blase, Darm, Blase oder Darm, neue Probleme mit Blase oder Darm
sign-leg-weakness-typed = s, schwaches Bein, Schwäche im Bein
sign-pain-in-both-legs-typed = z, Schmerzen in beiden Beinen, Schmerz in beiden Beinen
sign-dark-urine-typed = d, dunkler Urin
sign-chest-pain-typed = b, Brustschmerz, Brustschmerzen, Schmerzen in der Brust
sign-dizziness-typed = o, schwindlig, Schwindel, Ohnmacht, Schwindel oder Ohnmacht

## Was an einer Zeile nicht stimmte. { $typed } ist immer, was getippt wurde.

# $hint sagt, was man hier tippen kann.
type-this = Tippe: { $hint }
# Die Worte der einen Taste, die wartet, und warum sie wartet, ein ganzer Satz.
key-waits = { $key }. { $why }
nothing-after = „{ $typed }“ passt nicht hinter `{ $command }`.
session-not-begun = Es läuft keine Einheit. Drück Enter, um sie zu beginnen.
session-not-running = Es läuft keine Einheit.
nothing-to-put-off = Es gibt nichts mehr zu verschieben.
nothing-to-confirm = Hier gibt es nichts zu bestätigen. Einen anderen Satz bestätigt seine Nummer: `right 1`.
no-set-to-confirm = Satz { $set } ist hier nicht eingetragen, also gibt es nichts zu bestätigen.
not-a-rating = „{ $typed }“ ist keine Anstrengung von 0 bis 10.
type-a-rating = Tippe, wie anstrengend es war, von 0 bis 10, oder `finish`, um ohne Angabe zu beenden.
type-a-rating-and-minutes = Tippe, wie anstrengend es war, von 0 bis 10, dann die Minuten: `7 60`.
not-minutes = „{ $typed }“ ist keine Zahl von Minuten. Tippe die Anstrengung, dann die Minuten: `finish 7 60`.
no-options = Diese Übung hat keine Varianten.
# $options ist eine Liste von Kürzeln.
which-option = Tippe `option` und eines davon: { $options }. `option none` geht zurück.
not-an-option = „{ $typed }“ ist hier keine Variante. Tippe `option` und eines davon: { $options }. `option none` geht zurück.
no-other-bar = Hierfür gibt es keine andere Stange.
# $bars ist eine Liste von Namen.
which-bar = Tippe `bar` und eine davon: { $bars }.
not-a-station = „{ $typed }“ ist keine Station. Tippe `begin N`; N ist die Station, an der du beginnst.

## Sätze.

set-means-nothing = „{ $typed }“ passt hier nicht. Tippe Wdh. oder Gewicht x Wdh.: `8`, `40 x 8`, `40 x 8, 2 übrig`.
set-two-ways = „{ $typed }“ lässt sich auf zwei Arten lesen. Tippe es so: `40 x 8, 2 übrig`.
not-whole = „{ $typed }“ ist keine ganze Zahl. Tippe es so: `40 x 8, 2 übrig`.
too-large = „{ $typed }“ ist zu groß.
load-too-fine = „{ $typed }“ hat zu viele Nachkommastellen. Ein Gewicht hat höchstens drei.
load-too-heavy = „{ $typed }“ ist zu schwer. Ein Gewicht ist höchstens 2000 kg oder 4000 lb.
which-correction = Tippe, was du gemacht hast, etwa `67,5 x 5`; `stimmt`, wenn es so stimmt, `nichts`, wenn du den Satz nicht gemacht hast.
which-set = Tippe `set N` und was du gemacht hast; N ist die Nummer des Satzes: `set 2 40 x 8`.
not-a-set = „{ $typed }“ ist keine Zahl. Tippe `set N` und was du gemacht hast: `set 2 40 x 8`.
note-what = Tippe `note` und die Worte für deinen Coach: `note Griff rutschte`.
private-what = Tippe `private` und die Worte für dich selbst: `private schlecht geschlafen`.
which-extra = Tippe `extra` und was du gemacht hast: `extra 60 x 8` ist noch ein Satz, `extra Klimmzug 8` eine andere Übung.
no-extra-yet = Hier hat noch kein Teil alle Sätze. Trag zuerst diese ein oder nenne eine Übung: `extra Klimmzug 8`.

## Fenster.

window-means-nothing = „{ $typed }“ passt hier nicht. Tippe Wdh. oder Wdh. und Sekunden Luft: `12` oder `12 8`.
which-window = Tippe `window N` und was du gemacht hast; N ist die Nummer des Fensters: `window 2 12 8`.
not-a-window = „{ $typed }“ ist keine Zahl. Tippe `window N` und was du gemacht hast: `window 2 12 8`.

## Messwerte.

two-readings = Tippe zwei Messwerte, links und rechts: `10,5 11`; oder `skip`.
one-reading = Tippe einen Messwert: `10,5`; oder `skip`.
not-a-reading-of-two = „{ $typed }“ ist kein Messwert. Tippe zwei, links und rechts, mit höchstens einer Nachkommastelle: `10,5 11`; oder `skip`.
not-a-reading-of-one = „{ $typed }“ ist kein Messwert. Tippe einen mit höchstens einer Nachkommastelle: `10,5`; oder `skip`.

## Dehnungen.

seconds-of-sides = Tippe für jede Seite ganze Sekunden, 0 für eine ausgelassene: `held 120 95`. Worte dahinter nennen den Grund.
seconds-of-one = Tippe ganze Sekunden: `held 120`. Worte dahinter nennen den Grund.
not-why = „{ $typed }“ nennt weder Sekunden noch einen Grund. Tippe ganze Sekunden, dann den Grund in Worten: `held 120 60 Krampf`.

## Beschwerden.

# $places ist eine Liste von Namen, jeder mit seinem Buchstaben.
which-place = Tippe `flag`, wo es wehtut und wie schlimm es ist, von 1 bis 10: `flag knie 4`. Stellen: { $places }.
not-a-place = „{ $typed }“ ist keine der Stellen. Tippe eine Stelle und wie schlimm es ist, zum Beispiel `flag knie 4`. Stellen: { $places }.
how-bad = Tippe nach der Stelle, wie schlimm es ist, von 1 bis 10: `flag knie 4`.
not-how-bad = „{ $typed }“ ist keine Zahl von 1 bis 10. Tippe nach der Stelle, wie schlimm es ist: `flag knie 4`.
nothing-to-flag = An diesem Trainingstag gibt es nichts, wozu du etwas melden kannst.
# $signs ist eine Liste von Namen, jeder mit seinem Buchstaben; $movements eine Liste von Kürzeln im Plan.
not-a-sign = „{ $typed }“ ist kein Warnzeichen. Warnzeichen: { $signs }.
not-a-sign-or-movement = „{ $typed }“ ist hier weder ein Warnzeichen noch eine Übung. Warnzeichen: { $signs }. Übungen: { $movements }.
two-movements = „{ $typed }“ ist eine zweite Übung. Melde jede Übung in einer eigenen Zeile.
# Ein Name mit seinem Buchstaben, der dasselbe bedeutet.
or-letter = { $name } ({ $letter })
# Zwischen zwei Namen einer Liste.
between = { ", " }

## Hilfe: was man tippen kann, dann was es tut.

enter = Enter
enter-does = tut, was die Zeile darüber sagt
set-reps = 8
set-reps-does = 8 Wdh. mit dem geplanten Gewicht
set-load = 40 x 8
set-load-does = ein anderes Gewicht, in deiner Maßeinheit
set-left = 40 x 8, 2 übrig
set-left-does = und 2 Wdh. wären noch gegangen
set-other = set 1 40 x 8
set-other-does = korrigiert Satz 1
right = right
right-does = bestätigt einen Satz, der nach einem Versehen aussieht; `right 1` nennt einen
window-reps = 12
window-reps-does = 12 Wdh.
window-spare = 12 8
window-spare-does = 12 Wdh., 8 s Luft
window-other = window 1 12 8
window-other-does = korrigiert Fenster 1
begin-at = begin 2
begin-at-does = startet die Uhr an Station 2; `begin` an der ersten
next = next
next-window-does = beendet dieses Fenster und geht zum nächsten
window-clock = pause, resume, stop
hold-clock = pause, resume, extend, stop
clock-does = bedient die Uhr; `extend` gibt 15 s mehr
readings = 10,5 11
readings-does = die Messwerte, links und rechts
reading = 10,5
reading-does = der Messwert
held-sides = held 120 95
held-sides-does = von Hand, Sekunden links und rechts
held-sides-short = held 120 60 Krampf
held-sides-short-does = dasselbe mit dem Grund, warum eine Seite kürzer war
held-one = held 120
held-one-does = von Hand, in Sekunden
held-one-short = held 60 Krampf
held-one-short-does = dasselbe mit dem Grund, warum es kürzer war
next-side-does = beendet diese Seite und geht zur nächsten
rating = 7
rating-does = die Anstrengung der Einheit, 0 bis 10
option = option KÜRZEL
option-does = nimmt eine Variante; `option none` geht zurück
bar = bar NAME
bar-does = nimmt eine andere Stange, auch für die nächsten Male
note = note WORTE
note-does = sagt deinem Coach etwas zu dem, was du zuletzt eingetragen hast
private = private WORTE
private-does = notiert es nur für dich; es verlässt dieses Gerät nie
extra = extra 60 x 8
extra-does = noch ein Satz des fertigen Teils; `extra Klimmzug 8` eine andere Übung
flag = flag STELLE N
flag-does = Beschwerden, 1 bis 10: Die Übung wird nicht gesteigert
clear = clear
clear-does = hebt die Meldungen in diesem Teil auf
undo = undo
undo-does = macht das zuletzt Eingetragene rückgängig, jedes Mal eins weiter
skip = skip
skip-does = verschiebt diesen Teil; bei einem Messwert nur den Messwert
sheet = sheet
sheet-does = zeigt den ganzen Trainingstag
finish = finish 7
finish-does = beendet die Einheit mit ihrer Anstrengung von 0 bis 10
finish-minutes = finish 7 60
finish-minutes-does = dasselbe mit der Dauer in Minuten
quit = quit
quit-does = lässt die Einheit offen; du kannst später weitermachen
help-places = Stellen, als Name oder Buchstabe: { $places }
help-signs = Warnzeichen, nach der Zahl getippt: { $signs }
