## Was jemand jetzt heben kann. Ganze Kilogramm oder Pfund: $likely mit Einheit, $low und $high ohne, in vier
## von fünf Fällen dazwischen.

max = geschätztes 1RM { $likely }, wahrscheinlich { $low } bis { $high }
# An seiner Stelle, wo dafür zu wenig bekannt ist.
count-a-set = zähle einen Satz mit drei bis sechs Wiederholungen, um dein 1RM zu sehen
log-open-set = trag die Wiederholungen deines offenen Satzes ein, dann erscheint eine Schätzung
# Der erste davon für die Augen anderer.
counted-set-would-show = ein gezählter Satz mit drei bis sechs Wiederholungen würde das 1RM zeigen

## Wiederholungen, die ein offener Satz bringen kann

no-rep = keine zu erwarten
reps = { $reps } zu erwarten
reps-between = { $low } bis { $high } zu erwarten
# Wie offene Sätze verglichen damit endeten, die erste Zeile für den Sportler selbst, die zweite für die Augen
# anderer. $of ist zwei bis zehn.
ended = { $inside ->
    [one] 1 deiner letzten { $of } offenen Sätze endete im erwarteten Bereich
   *[other] { $inside } deiner letzten { $of } offenen Sätze endeten im erwarteten Bereich
}
ended-of-theirs = { $inside ->
    [one] 1 der letzten { $of } offenen Sätze endete im erwarteten Bereich
   *[other] { $inside } der letzten { $of } offenen Sätze endeten im erwarteten Bereich
}

## Wie sich das geschätzte 1RM bewegt. Prozente haben ihr Vorzeichen.

trend = { $days ->
    [one] { $week } % pro Woche über { $days } Tag ({ $low } bis { $high } %)
   *[other] { $week } % pro Woche über { $days } Tage ({ $low } bis { $high } %)
}
trend-maybe-none = { $days ->
    [one] { $week } % pro Woche über { $days } Tag ({ $low } bis { $high } %, also vielleicht keine Änderung)
   *[other] { $week } % pro Woche über { $days } Tage ({ $low } bis { $high } %, also vielleicht keine Änderung)
}
