## Wonach mit Namen gefragt wurde und was es nicht gibt. $reason ist ein ganzer Satz: was es stattdessen gibt.

no-bar = Eine Stange „{ $name }“ gibt es nicht. { $reason }
no-day = Einen Trainingstag „{ $name }“ gibt es nicht. { $reason }
no-member = Ein Mitglied „{ $name }“ gibt es nicht. { $reason }
no-option = Eine Variante „{ $name }“ gibt es nicht. { $reason }
no-piece = Einen Teil „{ $name }“ gibt es nicht. { $reason }
no-plan = Der Plan „{ $name }“ ist nicht da. { $reason }
no-proposal = Einen Vorschlag „{ $name }“ gibt es nicht. { $reason }

## Was jemand in der Gruppe macht. Steht hinter dem Namen.

role-coach = Coach
role-athlete = Athlet

## Die Form eines Fehlers.

# $what ist eines der Wörter oben oder der Pfad einer Datei, $reason ein ganzer Satz.
labelled = { $what }: { $reason }

## Pläne.

# $source ist die Datei des Plans.
plan-problems = In { $source } { $problems ->
    [one] ist 1 Fehler zu beheben.
   *[other] sind { $problems } Fehler zu beheben.
}

## Speicher und Datenbank. $error ist, was das System gesagt hat, in seinen eigenen Worten.

# Wo es schiefging.
the-database = Datenbank
database-busy = Ein anderes Holdfast schreibt gerade hier ({ $error }). Was als gespeichert gemeldet war, ist sicher. Schließ das andere und versuch es noch einmal.
database-read-only = Holdfast darf in seinen Ordner oder seine Datei nicht schreiben ({ $error }). Was als gespeichert gemeldet war, ist sicher. Ändere die Rechte und versuch es noch einmal.
database-full = Der Speicher ist voll ({ $error }). Was als gespeichert gemeldet war, ist sicher. Schaff Platz und versuch es noch einmal.
database-other = Die Datenbank meldet einen Fehler ({ $error }). Was als gespeichert gemeldet war, ist sicher. Versuch es noch einmal. Wenn es wieder passiert, lass den Ordner, wie er ist, und hol dir Hilfe.
entry-unusable = Ein Eintrag ließ sich nicht schreiben oder lesen: { $error }

## Was nicht passt oder zu neu ist.

too-long = Dieser Eintrag hat { $found } Bytes; höchstens { $limit } passen hinein. Kürze den Text.
# Beides sind Nummern von Versionen.
too-new = Ein neueres Holdfast hat diese Daten geschrieben (Version { $found }; dieses liest bis { $supported }). Es wurde nichts geändert. Aktualisiere Holdfast und öffne es noch einmal.

## Fehler des Programms selbst.

# $reason steht in den Worten des Programms, für die, die es reparieren.
unexpected = In Holdfast ist etwas schiefgegangen: { $reason }. Alles, was vorher gespeichert war, ist sicher. Versuch es noch einmal.
# Steht als $reason, wo es keinen gibt.
no-reason = kein Grund angegeben
closed = Holdfast ist geschlossen. Öffne es wieder.

## Was ein anderes Programm falsch übergeben hat.

# $days zählt Tage seit 1970.
not-a-date = { $days } ist kein Datum des Kalenders.
not-an-identity = Eine Kennung hat 16 Bytes, nicht { $bytes }.
