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

## Was beim Öffnen in Ordnung gebracht wurde

database-rebuilt = Die Datenbank fehlte ganz oder zum Teil und wurde neu aufgebaut. { $entries ->
    [one] 1 Eintrag kam aus den Dateien dieses Geräts zurück.
   *[other] { $entries } Einträge kamen aus den Dateien dieses Geräts zurück.
}
# $file ist der Name der beschädigten Datei; $recovered Einträge standen nur in ihr.
database-damaged = Die Datenbank war beschädigt und bleibt als { $file } erhalten. Eine neue wurde aufgebaut. { $entries ->
    [one] 1 Eintrag kam aus den Dateien dieses Geräts zurück,
   *[other] { $entries } Einträge kamen aus den Dateien dieses Geräts zurück,
} { $recovered ->
    [one] 1 weiterer aus der beschädigten Datei.
   *[other] { $recovered } weitere aus der beschädigten Datei.
}
