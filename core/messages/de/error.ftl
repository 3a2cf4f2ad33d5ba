## Worum es bei einem Fehler geht. Steht vor einem Doppelpunkt und dem Satz, der sagt, was nicht stimmt.

# Zufallsbytes des Systems, aus denen Kennungen entstehen.
field-chance = Zufallsbytes
field-clock = Uhr
field-date = Datum
field-day = Trainingstag
# Die Uhr des Telefons oder Rechners.
field-device-clock = Geräteuhr
field-exchange = Abgleich
# Eine Meldung von Beschwerden.
field-flag = Meldung
# Der Ordner, in dem die Daten einer Person liegen.
field-home = Ordner
# Die Nummer, die eine Person, ein Gerät oder etwas Gespeichertes benennt.
field-identity = Kennung
field-load = Gewicht
field-loads = Gewichte
field-measure = Messung
field-minutes = Minuten
field-movement = Übung
field-name = Name
field-piece = Teil
field-range = Beweglichkeit
field-rest = Pause
field-reps = Wiederholungen
field-reserve = Wiederholungen übrig
field-role = Rolle
field-rpe = Anstrengung der Einheit
# Was jemand zu einer Dehnung gesagt hat, die zu kurz war.
field-said = Bemerkung
field-seconds = Sekunden
field-session = Einheit
field-set = Satz
field-severity = Stärke
field-side = Seite
# Die Luft, die in einem Fenster blieb.
field-spare = Luft
field-station = Station
# Irgendein Text, der gespeichert wird.
field-text = Text
field-undo = Rückgängig
field-window = Fenster
# Eine Zeile, die während einer Einheit getippt wurde.
field-words = Eingabe

## Wonach gefragt wurde und was es nicht gibt. Steht vor einem Doppelpunkt oder vor einem Namen in Anführungszeichen.

thing-bar = Stange
thing-day = Trainingstag
thing-device = Gerät
thing-flag = Meldung
thing-member = Mitglied
thing-option = Variante
thing-piece = Teil
thing-plan = Plan
thing-proposal = Vorschlag

## Was jemand in der Gruppe macht. Steht hinter dem Namen.

role-coach = Coach
role-athlete = Athlet

## Die Form eines Fehlers.

# $what ist eines der Wörter oben oder der Pfad einer Datei, $reason ein ganzer Satz.
labelled = { $what }: { $reason }
# $name ist, wonach jemand mit Namen gefragt hat.
labelled-named = { $what } „{ $name }“: { $reason }

## Pläne.

# $source ist die Datei des Plans.
plan-problems = In { $source } { $problems ->
    [one] ist 1 Fehler zu beheben.
   *[other] sind { $problems } Fehler zu beheben.
}

## Speicher und Datenbank. $error ist, was das System gesagt hat, in seinen eigenen Worten.

# Wo es schiefging.
the-database = Datenbank
database-busy = Ein anderes Holdfast schreibt gerade hier ({ $error }). Es wurde nichts Neues gespeichert. Schließ das andere und versuch es noch einmal.
database-read-only = Holdfast darf in seinen Ordner oder seine Datei nicht schreiben ({ $error }). Es wurde nichts Neues gespeichert. Ändere die Rechte und versuch es noch einmal.
database-full = Der Speicher ist voll ({ $error }). Es wurde nichts Neues gespeichert. Schaff Platz und versuch es noch einmal.
database-other = Die Datenbank meldet einen Fehler ({ $error }). Es wurde nichts Neues gespeichert. Versuch es noch einmal. Wenn es wieder passiert, lass den Ordner, wie er ist, und hol dir Hilfe.
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
