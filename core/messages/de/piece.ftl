## Überschriften von Teilen eines Tages. Zeiten als „2 min“.

strength = { $movement }, Pause { $rest }
strength-on-bar-alone = { $movement }, { $bar }
strength-on-bar = { $movement }, { $bar }, Pause { $rest }
# Jedes Fenster dauert $window; $margin sollte am Ende frei bleiben.
interval = { $windows ->
    [one] 1 Fenster zu { $window },
   *[other] { $windows } Fenster zu { $window },
} { $rounds ->
    [one] 1 Runde, Ziel: { $margin } Luft
   *[other] { $rounds } Runden, Ziel: { $margin } Luft
}
hold-still = { $stretch }, { $time }, still halten
hold-still-sides = { $stretch }, { $time } je Seite, still halten
hold-push = { $stretch }, { $time }, anspannen und entspannen
hold-push-sides = { $stretch }, { $time } je Seite, anspannen und entspannen
# Andere Trainingstage des Plans am selben Datum.
other-days = an diesem Tag auch geplant: { $days }

## Sätze

# Ein offener Satz: so viele gute Wiederholungen wie möglich, mindestens so viele.
or-more = { $reps } oder mehr
# Ein Gewicht mit Einheit, und Wiederholungen als „6“ oder „5 oder mehr“.
load-times-reps = { $load } × { $reps }
reps-alone = { $reps ->
    [one] 1 Wdh.
   *[other] { $reps } Wdh.
}
# $reps als „5 oder mehr“.
reps-open = { $reps } Wdh.
# $set als „60 kg × 5“; $left Wiederholungen wären noch gegangen.
set-left = { $set }, { $left } übrig
# Eine Bemerkung zu einem Satz: eine der beiden unten, der Name einer Variante, oder Scheiben.
noted = { $what } ({ $note })
# Weniger Wiederholungen als geplant.
fell-short = nicht geschafft
# Zwei Geräte haben denselben Satz verschieden eingetragen.
two-versions = zwei Fassungen
# Weit weg vom Vorschlag, und noch hat niemand gesagt, dass es stimmt.
may-be-a-slip = vielleicht ein Versehen
# Der Coach zählt den Satz nicht.
left-out = vom Coach nicht gezählt
# Ein Satz in einer eigenen Zeile: $title als „Kniebeuge, Satz 2 von 4“, $plates als „20 + 5 kg je Seite; 5 kg auflegen“.
set-line = { $title }: { $load } × { $reps }
set-line-plates = { $title }: { $load } × { $reps } ({ $plates })

## Fenster

window-asked = { $reps } × { $movement }
window-asked-load = { $reps } × { $movement }, { $load }
# Wiederholungen in einem Fenster; $spare als „8 s“ blieb frei.
window-done = { $reps } geschafft
window-done-spare = { $reps } geschafft, { $spare } Luft
# Weniger Luft als geplant.
window-done-rushed = { $reps } geschafft, { $spare } Luft (knapp)

## Wie weit ein Teil ist

progress-done = fertig
progress = { $done } von { $all }
