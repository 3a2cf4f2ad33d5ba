### Die Seite eines Mitglieds im Terminal: Tabellen und Listen, jede unter einer Überschrift.

no-session = Noch keine Einheit angekommen.

## Überschriften

sessions = Einheiten
weeks = Wochen
strength = Kraft, geschätzt aus offenen Sätzen und Sätzen mit Wdh. in Reserve
maxes = 1RM, getestet oder vom Coach gesetzt
lifts = Gehoben: der schwerste Satz jeder Einheit
ranges = Beweglichkeit vor der Dehnung
stretched = Dehnzeit, Woche für Woche
options = Gewählte Varianten
notes = Notizen
discomfort = Beschwerden
next-loads = Nächste Gewichte

## Spalten der Tabellen. Kurz: bis zu sieben stehen nebeneinander.

column-date = Datum
column-day = Tag
column-sets = Sätze
column-volume-load = Volumen
# Anstrengung der Einheit, 0 bis 10.
column-rpe = Anstrengung
column-minutes = Minuten
column-session-load = Belastung
# Eine Woche, benannt nach ihrem Montag; Daten folgen.
column-week = Woche ab
column-sessions = Einheiten
column-monotony = Monotonie
column-strain = Beanspruchung

## Wochen

# Die Belastung einer Woche, in der Einheiten einiger Tage nicht bewertet wurden.
load-unrated = { $days ->
    [one] { $load }, 1 Tag ohne Anstrengung
   *[other] { $load }, { $days } Tage ohne Anstrengung
}
# Unter der Tabelle.
what-monotony-is = Die Monotonie sagt, wie sehr sich die Tage einer Woche glichen: mittlere Tagesbelastung geteilt durch ihre Streuung. Die Beanspruchung ist die Belastung der Woche mal Monotonie. Beide beschreiben die Woche; keine ist ein Risiko.
# $date ist der Montag.
week-of = Woche ab { $date }

## Kraft und gehobene Gewichte

# $estimate und $trend sind eigene Texte.
estimated = { $movement }: { $estimate }
estimated-with-trend = { $movement }: { $estimate }; { $trend }
# $reps ist das Satzschema: „8-6-5 oder mehr“. $points sind mehrere der folgenden.
lift = { $movement }, { $reps }: { $points }
load-and-reps = { $load } × { $reps }
only-reps = { $reps ->
    [one] 1 Wdh.
   *[other] { $reps } Wdh.
}
# $done ist eines der beiden darüber.
point = { $date } { $done }
# Ein Satz dieser Einheit wurde nicht geschafft, dieser oder ein anderer.
point-missed = { $date } { $done } (ein Satz dieser Einheit nicht geschafft)
between-points = { "; " }

## Beweglichkeit. $name ist die Messung („Knie zur Wand“), $unit „cm“ oder „°“.

range = { $name } ({ $piece }), { $unit }: { $readings }
range-of-side = { $name } ({ $piece }, { $side }), { $unit }: { $readings }
range-point = { $date } { $reading }
# Was hinter den Messwerten steht, jedes mit eigenem Text.
first-to-last = vom ersten zum letzten: { $judged }
trend = Trend: { $trend }
between-parts = { "; " }

## Varianten und Beschwerden, hinter einem Datum

took-option = { $option } statt { $movement }
took-option-because = { $option } statt { $movement }: { $because }
# $flag als „Knie 4/10 bei Kniebeuge“.
flag-open = { $flag }, offen
flag-cleared = { $flag }, aufgehoben
