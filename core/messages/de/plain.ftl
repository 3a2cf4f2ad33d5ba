## Kleine Wörter: Anzahlen, Zeiten, Listen, Daten.

# Was auf dem Gerät auf den nächsten Abgleich wartet.
waiting = { $entries ->
    [one] 1 Eintrag wartet auf den nächsten Abgleich.
   *[other] { $entries } Einträge warten auf den nächsten Abgleich.
}

## Listen

# Zwei Dinge, und die letzten zwei von mehr: „a und b“.
list-end = { $first } und { $last }
# Dinge vor den letzten zwei: „a, b“.
list-more = { $first }, { $next }

## Daten

# Ein Datum in einer Zeile, etwa „Di 10. Nov.“: endet ein Satz damit, folgt kein zweiter Punkt.
date = { $weekday } { $day }. { $month }
# Aus einem anderen Jahr als diesem.
date-of-year = { $weekday } { $day }. { $month } { $year }
# Dasselbe ohne Wochentag, wo viele eng beieinander stehen.
short-date = { $day }. { $month }
short-date-of-year = { $day }. { $month } { $year }
monday = Mo
tuesday = Di
wednesday = Mi
thursday = Do
friday = Fr
saturday = Sa
sunday = So
january = Jan.
february = Feb.
march = März
april = Apr.
may = Mai
june = Juni
july = Juli
august = Aug.
september = Sept.
october = Okt.
november = Nov.
december = Dez.

## Seiten, Messwerte und Meldungen

left = links
right = rechts
# Eine Seite einer Übung, die mehr als zwei hat.
side-number = Seite { $number }

# Ein Messwert der Beweglichkeit: $value mit Einheit, $side als „links“.
reading-before = vorher: { $value }
reading-after = nachher: { $value }
reading-before-side = vorher, { $side }: { $value }
reading-after-side = nachher, { $side }: { $value }

# Gemeldete Beschwerden: $place als „Knie“, $severity von 1 bis 10, $day als „Di 10. Nov.“.
flagged = { $place } { $severity }/10, gemeldet { $day }
# Mit Notfallzeichen: $signs ist eine Liste davon.
flagged-signs = { $signs } (dazu { $place } { $severity }/10, gemeldet { $day })
# Wo ein Teil mehrere Übungen hat.
flagged-in = { $movement }: { $flag }
