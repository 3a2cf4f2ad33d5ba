## Was jemand jetzt heben kann. Ganze Kilogramm oder Pfund: $likely mit Einheit, $low und $high ohne, in vier
## von fünf Fällen dazwischen.

max = geschätztes 1RM { $likely }, wahrscheinlich { $low } bis { $high }

## Wiederholungen, die ein offener Satz bringen kann

no-rep = keine zu erwarten
reps = { $reps } zu erwarten
reps-between = { $low } bis { $high } zu erwarten

## Wie sich das geschätzte 1RM bewegt. Prozente haben ihr Vorzeichen.

trend = { $days ->
    [one] { $week } % pro Woche über { $days } Tag ({ $low } bis { $high } %)
   *[other] { $week } % pro Woche über { $days } Tage ({ $low } bis { $high } %)
}
trend-maybe-none = { $days ->
    [one] { $week } % pro Woche über { $days } Tag ({ $low } bis { $high } %, also vielleicht keine Änderung)
   *[other] { $week } % pro Woche über { $days } Tage ({ $low } bis { $high } %, also vielleicht keine Änderung)
}
