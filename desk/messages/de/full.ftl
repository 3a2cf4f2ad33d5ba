## Die Einheit auf ganzem Bildschirm, ab 40 Spalten mal 14 Zeilen: Wörter, Hinweise, Fragen, Tasten.

## Tasten mit den Namen, die auf ihnen stehen

key-enter = Enter
key-space = Leer
key-up-down = ↑ ↓
key-esc = Esc
key-tab = Tab

## Was Tasten tun, in ein, zwei Wörtern

does-move = bewegen
does-go-back = zurück
does-take-it = wählen
does-take-line = speichern
does-mark = ankreuzen
does-save = speichern
does-not-flag = keine Meldung
does-show-keys = alle Tasten
does-leave = verlassen
does-read-all = alles lesen
does-go-on = nächster Teil

## Der Kopf

# Steht vor der Überschrift des Tages, sobald die Einheit beendet ist.
finished = BEENDET: { $heading }
# Stehen vor einem Hinweis.
care = WARNUNG:
note = Hinweis:
too-small = Dieses Terminal hat { $columns } × { $rows }: zu klein. Mach es mindestens { $wanted-columns } ×
    { $wanted-rows } groß. q verlässt die Einheit; deine Einträge sind gespeichert.
# Unter einer Uhr, in höchstens 40 Spalten.
too-small-with-clock = q verlässt. Tasten brauchen { $columns } × { $rows }.

## Die Liste des Tages

# Ihre letzte Zeile.
finish = beenden
discomfort-in-day = ! Beschwerden gemeldet.

## Die Uhr

# $side ist der Name einer Seite, $time was von ihr noch kommt, etwa 1:54.
side-to-go = { $side }, noch { $time }
to-go = noch { $time }
# Steht vor den bisher gehaltenen Sekunden, ein Teil je Seite.
held-so-far = gehalten: { $sides }
held-side = { $side } { $time }

## Die Stange in einer Pause. Was vorn steht, ist groß geschrieben: Es wird von weitem gelesen.

bar-ready = Die Stange ist bereit.
take-off = ABNEHMEN, je Seite
put-on = AUFLEGEN, je Seite
# Dasselbe in einer Zeile; $plates, $off und $on sind Scheiben einer Seite.
take-off-plates = ABNEHMEN { $plates }, je Seite
put-on-plates = AUFLEGEN { $plates }, je Seite
change-plates = ABNEHMEN { $off }, AUFLEGEN { $on }, je Seite
# $change sagt, was abzunehmen und aufzulegen ist.
each-side = Je Seite: { $change }

## Ein Satz

# So groß wie Platz ist: nur Ziffern, Punkt, Komma, kg, lb und ×.
load-by-reps = { $load } × { $reps }
# In einer Spalte unter anderen Wiederholungen.
by-reps = × { $reps }
did = gemacht: { $what }
warm-up = Aufwärmen:
why = Grund: { $reason }
# $expected sagt, mit wie vielen Wiederholungen zu rechnen ist.
open-set = offener Satz: { $expected }

## Fenster und Dehnungen

# Steht davor, warum weniger Wiederholungen besser wären.
fewer = weniger:
not-logged = fehlt noch: { $window }
# Was in einem Fenster getan wurde, und seine Übung.
window-done = { $done }, { $movement }
held = gehalten: { $time }
held-on-side = gehalten, { $side }: { $time }

## Varianten. $reason ist, warum jemand sie nimmt, etwa: unterer Rücken

option = Variante: { $option }, Grund: { $reason }
# Dahinter steht die Taste, die alle Varianten zeigt.
option-key = Variante: { $option }, Grund: { $reason } (o)
# $why sagt, warum sie heute vorgeschlagen ist.
option-suggested = Variante: { $option }, Grund: { $reason }: { $why }
option-taken = gewählt: { $option }, Grund: { $reason }
# Steht vor einer Variante, die vorgeschlagen ist, und warum.
consider = empfohlen
consider-option = { $option }: { $why } (o)

## Beschwerden

emergency-sign = NOTFALLZEICHEN:
discomfort = BESCHWERDEN:

## Was gespeichert oder gesagt wurde

safe = Sobald „Gespeichert“ dasteht, ist es sicher abgelegt.
saved = Gespeichert: { $what }
undone = Rückgängig: { $what }
not-saved = Nicht gespeichert: { $why }
not-understood = Nicht verstanden: { $why }
pressed-twice = { $said } (zweimal gedrückt, einmal gezählt)
# $doubt sagt, was am Gespeicherten auffällt; ein Satz.
really = Wirklich? { $doubt }
really-undo = Wirklich? { $doubt } Drück u, wenn es ein Versehen war.
# $right ist etwa „Satz 3 stimmt“.
really-right = Wirklich? { $doubt } r: { $right }. u: Es war ein Versehen.

## Warum eine Taste hier nichts tut

nothing-to-type = Hier gibt es nichts einzutippen.
no-options = Der Plan hat für diese Übung keine Varianten.
no-options-here = Hier gibt es keine Varianten.
no-other-bar = Hierfür gibt es keine andere Stange.
nothing-extra-here = Trag zuerst alle geplanten Sätze dieses Teils ein oder geh ans Ende.
ignored-too-small = Taste nicht beachtet: Das Terminal ist zu klein.
not-flagged = Nichts gemeldet. Mit d noch einmal versuchen.
choose-what-hurts = Geh erst mit ↑ und ↓ zu dem Teil, bei dem es wehtut.
nothing-to-confirm = Kein Satz sieht nach einem Versehen aus.
nothing-to-undo = Nichts rückgängig zu machen.
no-flag-open = Bei diesem Teil ist keine Meldung offen.
nothing-for-later = Hier gibt es nichts zu verschieben.
no-rest = Es läuft keine Pause.
no-clock = Hier läuft keine Uhr.
no-side = Gerade wird keine Seite gehalten.
no-clock-to-start = Hier gibt es keine Uhr zu starten.
no-other-station = Es gibt keine andere Station zum Starten.
no-session = Es läuft keine Einheit.
see-all-keys = ? zeigt alle Tasten.

## Fragen

which-day = Heute ist nichts geplant. Welcher Trainingstag?
which-option = Varianten für { $piece }
option-choice = { $option }, Grund: { $reason }
option-choice-taken = { $option }, Grund: { $reason }, gewählt
no-option = die Übung selbst
which-bar = Stangen für { $piece }
bar-choice-taken = { $bar }, gewählt
# Steht davor, warum eine Variante vorgeschlagen ist.
suggested = empfohlen:
which-station = { $piece }: An welcher Station beginnst du?
station = Station { $station }: { $what }
which-flag = Welche Meldung aufheben? Danach dürfen die Gewichte wieder steigen.
where-it-hurts = { $piece }: Wo tut es weh?
# Von der Einheit im Ganzen.
where-it-hurts-anywhere = Wo tut es weh?
# $place ist eine Körperstelle.
how-bad = Wie schlimm ist es ({ $place }), 1 bis 10?
how-bad-hint = Mit einer Meldung steigen die Gewichte dieser Übung nicht. Esc: keine Meldung
how-bad-wrong = Nicht verstanden: Tippe eine Zahl von 1 bis 10.
which-signs = Ist etwas davon dabei? Die Leertaste kreuzt an, Enter speichert. Wenn nicht, nur Enter.

## Alles zu einer Zeile

# $does sagt, was die eine Taste tut.
enter-does = Enter: { $does }
warm-up-step = Aufwärmen: { $set }

## Die Seite aller Tasten: Namen von Tasten, höchstens 13 Spalten breit, und was sie tun

keys-one = Enter, Leer
keys-one-does = die eine Taste: tut, was daneben steht
keys-type = e oder Ziffer
keys-type-does = in einer Zeile eintippen: `60 x 7, 2 übrig` ein Satz, `12 8` ein Fenster, `10,5 11` Messwerte
keys-undo-does = das zuletzt Gespeicherte rückgängig machen, jedes Mal eins weiter
keys-right-does = ein Satz, der nach einem Versehen aussieht, stimmt
keys-move = ↑, ↓
keys-move-does = eine andere Zeile: Eingetragenes wird dort korrigiert. Esc geht zurück zu dem, was dran ist
keys-piece-does = der nächste Teil; Umschalt-Tab der vorige
keys-options-does = Varianten dieser Übung mit ihren Gründen
keys-bar-does = eine andere Stange, auch für die nächsten Male
keys-extra-does = ein Zusatzsatz oder eine Übung, die nicht geplant war; wenn alle Sätze eingetragen sind
keys-hurts-does = es tut weh: wo, wie schlimm, und Warnzeichen
keys-clear-does = eine Meldung bei diesem Teil aufheben
keys-later-does = den Rest dieses Teils auf später verschieben; bei einem Messwert nur diesen
keys-minute-does = eine Minute mehr Pause
keys-finish-does = die Einheit beenden und ihre Anstrengung angeben
keys-clock-does = die Uhr: starten, anhalten oder weiter, weiter zum Nächsten, abbrechen
keys-more-does = 15 s mehr für die gehaltene Seite; die Fenster an einer anderen Station anfangen
keys-all-does = alles zu dieser Zeile: Warnungen, Hinweise, Gründe
keys-leave = q, Strg-C
keys-leave-does = die Einheit offen lassen; deine Einträge sind gespeichert
keys-line = Die Zeile kann mehr: `option KÜRZEL`, `flag knie 4`, `skip`, `finish 7`, `held 120 95`.
keys-spare = Die Sekunden Luft eines Fensters liefert die laufende Uhr, wenn du es einträgst.
keys-clock-runs = Die Uhr läuft weiter, wenn du das Programm verlässt, und stimmt, wenn du zurückkommst.

## Wo nicht alles Platz hat

more-above = (mehr oben)
more-below = (mehr unten)
# Steht zwischen Teilen einer Zeile.
comma = { ", " }
