### Der Bericht: der Überblick und die Seite jedes Mitglieds als eine Datei für den Coach, am Bildschirm oder
### auf Papier.

## Die Seite

# Im Reiter des Browsers. $heading nennt den Block und seine Woche.
title = { $heading }, { $date }: Holdfast-Bericht
made-for = Bericht für { $date }
# Über Zeilen zu Dateien, die nicht ankamen oder nicht lesbar sind.
arrivals = Dateien zum Prüfen

## Der Überblick. Die Spaltenköpfe sind kurz.

board = Überblick
nobody = Noch ist niemand im Überblick.
column-member = Mitglied
column-sessions = Einheiten
column-last = Zuletzt trainiert
column-week-load = Belastung, letzte 7 Tage
column-look = Was auffällt
# Wie viele der geplanten Einheiten trainiert wurden.
trained = { $trained } von { $planned }
# Es waren mehr als geplant.
trained-more = { $trained }, { $planned } geplant
not-yet = noch nie
nothing = nichts

## Vorschläge: nächste Gewichte, die der Coach beantwortet

proposals = Vorschläge
no-proposals = Keine Vorschläge offen.
column-movement = Übung
column-loads = Gewichte, Satz für Satz
column-why = Grund
column-answer = Antwort
# $reps ist ein Satzschema: „8-6-5 oder mehr“.
piece-and-reps = { $piece }, { $reps }
# Vor den bisherigen Gewichten und vor denen fürs nächste Mal.
last = bisher
next = neu
# Die Einheit, aus der ein Vorschlag entstand.
after = nach { $date }
to-answer = offen

## Der Abschnitt eines Mitglieds

nothing-logged = Noch nichts eingetragen.
sessions = Einheiten
# Für alle, die die Seite hören: was in der Tabelle steht.
sessions-of = Einheiten von { $name }
column-date = Datum
column-day = Tag
column-sets = Sätze
column-volume-load = Volumen
# Anstrengung der Einheit, 0 bis 10.
column-rpe = Anstrengung
column-minutes = Minuten
column-session-load = Belastung
# Niemand hat bewertet, oder die Einheit hat kein Ende.
none = fehlt
unrated = { $sessions ->
    [one] Ohne Angabe der Anstrengung: { $unrated } von 1 Einheit. Eine Einheit ohne Angabe zählt nicht zur Belastung.
   *[other] Ohne Angabe der Anstrengung: { $unrated } von { $sessions } Einheiten. Eine Einheit ohne Angabe zählt nicht zur Belastung.
}
charts = Diagramme
options = Gewählte Varianten
took-option = { $date }: { $option } statt { $movement }
# $because ist der Grund: „unterer Rücken“.
took-option-because = { $date }: { $option } statt { $movement } ({ $because })
discomfort = Beschwerden
# Eine Meldung von Beschwerden, die noch besteht oder nicht mehr.
open = Offen
cleared = Aufgehoben
flag = { $date }: { $flag }
back = Zurück zum Überblick

## Der Fuß der Seite

cautions = Warnungen
what-numbers-mean = Was die Zahlen bedeuten
session-load = Belastung
what-session-load-is = Anstrengung der Einheit (0 bis 10) mal Minuten (Foster et al., J Strength Cond Res 2001;15:109-115).
volume-load = Volumen
what-volume-load-is = Wiederholungen mal Gewicht, über alle Sätze zusammengezählt.
change-in-range = Veränderung der Beweglichkeit
# Es folgen veröffentlichte Messfehler, einer je Messung.
what-a-change-is = Als Veränderung gilt sie erst ab dem Messfehler der jeweiligen Messung: der kleinsten Veränderung, die mit 95 % Sicherheit nicht allein vom Messen kommt (MDC95).
# $protocol ist eine der vier folgenden, $source die Veröffentlichung des Fehlers.
measurement-error = { $protocol }: { $error } ({ $source })
sit-and-reach = Rumpfbeuge im Sitzen
fingertip-to-floor = Finger-Boden-Abstand
knee-to-wall = Knie zur Wand
shin-angle = Schienbeinwinkel im Ausfallschritt

## Diagramme: ein Titel, eine Zeile dazu, wie man es liest, und die Daten in Worten für alle, die die Seite
## hören

# $says sind die Daten in Worten.
described = { $title }. { $says }
# Zwischen Einheiten wie „3. Nov. 72,5 kg“.
between = { "; " }

## Das Diagramm gehobener Gewichte. $reps im Titel ist ein Satzschema: „8-6-5 oder mehr“.

lift = { $movement }, { $reps }
note-loads = Höchstes Gewicht jeder Einheit.
note-loads-missed = Höchstes Gewicht jeder Einheit; Kreuz: ein Satz wurde nicht geschafft.
note-reps = { $asked ->
    [one] Stäbe: Wiederholungen im offenen Satz; waagrechte Linie: 1 geplante Wiederholung.
   *[other] Stäbe: Wiederholungen im offenen Satz; waagrechte Linie: { $asked } geplante Wiederholungen.
}
says-loads = Höchstes Gewicht: { $points }.
load-point = { $date } { $load }
load-point-missed = { $date } { $load }, ein Satz nicht geschafft
says-reps = Wiederholungen im offenen Satz: { $points }.
reps-point = { $date } { $reps } von { $asked }
axis-reps = Wdh.

## Das Diagramm der Kraft

strength = { $movement }: geschätztes 1RM
# $estimate ist ein eigener Text.
note-strength = Geschätzt aus offenen Sätzen und Sätzen mit Angabe, wie viele Wiederholungen übrig waren, nach dem Stand jedes Tages. Band: vier von fünf Fällen. Jetzt: { $estimate }.
note-strength-trend = Trend: { $trend }.
note-strength-ended = { $ended }.
says-strength = Geschätztes 1RM: { $points }.
# Von $low bis $high reicht das Band.
strength-point = { $date } { $likely } { $unit } ({ $low } bis { $high })

## Das Diagramm der Wochen

weeks = Belastung je Woche
note-weeks = Anstrengung der Einheit mal Minuten, von Montag bis Sonntag zusammengezählt.
# In $points steht vor jeder Zahl ein Datum, der Montag.
says-weeks = Belastung der Woche ab: { $points }.
week-point = { $date } { $value }
axis-weeks = Anstrengung × Minuten

## Die Diagramme der Dehnzeit, eines je Körperteil

region = Dehnzeit: { $region }
note-region = Gehaltene Minuten jeder Woche, beide Seiten zusammen.
says-region = Gehaltene Zeit in der Woche ab: { $points }.

## Das Diagramm der Beweglichkeit. $name ist die Messung: „Knie zur Wand“.

range = { $piece }: { $name }
range-of-side = { $piece }: { $name }, { $side }
axis-range = { $unit }, { $name }
note-dots-and-rings = Punkte: vor der Dehnung; Ringe: danach.
note-dots = Punkte: vor der Dehnung.
note-rings = Ringe: nach der Dehnung.
# $error ist eine Zahl mit Einheit.
note-band = Band: der erste Messwert ± { $error }, der Messfehler.
note-smaller-is-further = Je kleiner der Messwert, desto beweglicher.
note-judged = Vom ersten zum letzten Messwert vor der Dehnung: { $judged }.
note-range-trend = Trend vor der Dehnung: { $trend }.
says-range = Messwerte: { $points }.
range-point-both = { $date } vorher { $before } und nachher { $after }
range-point-before = { $date } vorher { $before }
range-point-after = { $date } nachher { $after }

## Wenn es keinen Bericht gibt. $reason kommt vom System.

chart-not-drawn = Kein Bericht geschrieben: Ein Diagramm ließ sich nicht zeichnen ({ $reason }).
page-not-filled = Kein Bericht geschrieben: Die Seite ließ sich nicht füllen ({ $reason }).
