## Beweglichkeit. Zahlen haben ihr Vorzeichen und, wo keine folgt, ihre Einheit.

# Was eine Änderung bedeutet. $error ist der Messfehler, etwa „1,9 cm“.
no-change = keine Änderung
within-error = { $change }, innerhalb des Messfehlers ({ $error })
beyond-error = { $change }, eine Veränderung (Messfehler { $error })

# Die Entwicklung von Messwerten über Wochen: die Steigung mit Einheit, wo sie in 95 von 100 Fällen liegt, und wie
# wahrscheinlich eine solche Entwicklung wäre, wenn es keine gäbe.
trend = { $readings ->
    [one] { $week } pro Woche, p { $p }, aus { $readings } Messwert
   *[other] { $week } pro Woche, p { $p }, aus { $readings } Messwerten
}
trend-between = { $readings ->
    [one] { $week } pro Woche ({ $low } bis { $high }), p { $p }, aus { $readings } Messwert
   *[other] { $week } pro Woche ({ $low } bis { $high }), p { $p }, aus { $readings } Messwerten
}

## Dehnzeit einer Woche neben einer veröffentlichten Dosis, für einen Körperteil. $time als „1 min 20 s“.

five-minutes-done = 5 min pro Woche an 5 Tagen: geschafft
# Mehr brachte in Studien keine größere Beweglichkeit.
five-minutes-plateau = 5 min pro Woche an 5 Tagen und mehr; mehr als 10 min pro Woche brachten in Studien keinen weiteren Gewinn
five-minutes-time = mindestens { $time } von 5 min pro Woche und Seite
five-minutes-time-days = mindestens { $time } von 5 min pro Woche und Seite, an { $days } von 5 Tagen
five-minutes-days = 5 min pro Woche und Seite geschafft, aber nur an { $days } von 5 Tagen
minute-done = 1 min an 2 Tagen: geschafft
minute-plateau = 1 min an 2 Tagen und mehr; mehr als 10 min pro Woche brachten in Studien keinen weiteren Gewinn
minute-time = 1 min je Seite an { $days } von 2 Tagen; { $time } fehlen noch

## Belastung und Dehnungen

# $times als „1,20“.
load-compared = die Belastung war zuletzt { $times }-mal so hoch wie in den Wochen davor, geglättet über 7 und 28 Tage; das beschreibt die Belastung, kein Risiko
# $stretch und $before sind Namen aus dem Plan.
long-hold = { $stretch } steht vor { $before }, { $time } still gehalten. In Studien kostete eine Minute oder mehr direkt vor dem Heben Kraft. Dehne danach oder beweg dich dazwischen gut durch.
