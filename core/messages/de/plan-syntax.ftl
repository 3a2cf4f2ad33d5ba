# Stellen einer Plandatei, die sich als TOML gar nicht lesen lassen.

## Was nicht stimmt

comma-missing = Davor fehlt ein Komma.
text-not-closed = Der Text, der hier beginnt, hat kein Ende.
list-not-closed = Die Liste, die hier beginnt, hat kein Ende.
table-not-closed = Die Tabelle, die hier beginnt, hat kein Ende.
value-missing = Hier fehlt ein Wert.
# $word ist, was dasteht, etwa 1 min ohne Anführungszeichen.
bare-word = `{ $word }` ist weder eine Zahl noch Text in Anführungszeichen.
second-time = `{ $key }` steht hier zum zweiten Mal.
# Eine Zeile wie name.x = 3 nach name = "Squat".
dotted-twice = Was vor dem Punkt steht, hat schon einen Wert.
quote-missing = Dem Text hier fehlt das schließende Anführungszeichen.
brackets-differ = Die Klammern passen hier nicht zusammen.
equals-missing = Hier fehlt ein `=`.
equals-too-many = Hier ist ein `=` zu viel.
comma-too-many = Hier ist ein Komma zu viel.
key-unreadable = Dieser Feldname ist nicht lesbar.
more-than-one = In dieser Zeile steht mehr als ein Feld mit seinem Wert.
no-such-date = Dieses Datum oder diese Uhrzeit gibt es nicht.
number-unreadable = Diese Zahl ist nicht lesbar.
backslash-unreadable = Dieser `\` ist nicht lesbar.
line-unreadable = Diese Zeile ist nicht lesbar.

## Was zu tun ist

put-comma = Setz ein Komma zwischen die Einträge einer Liste oder Tabelle.
# $bracket ist, womit es endet: drei Anführungszeichen oder eine Klammer.
close-with = Beende es mit `{ $bracket }`.
quote-text = Setz Text in doppelte Anführungszeichen, zum Beispiel "90 s", und Kommas zwischen die Einträge einer Liste.
take-one-out = Nimm eins von beiden heraus oder gib ihm einen anderen Namen.
quote-on-one-line = Beginne und beende Text mit einem doppelten Anführungszeichen in derselben Zeile.
close-brackets = Schließ, was offen ist: `[` mit `]`, `[[` mit `]]`, `{ "{" }` mit `{ "}" }`.
write-key-and-value = Schreib `feld = wert` oder einen Abschnitt wie `[kit]`. Feldnamen haben keine Leerzeichen.
one-each-line = Schreib je Zeile ein Feld mit seinem Wert, Text in doppelten Anführungszeichen.
take-it-out = Nimm es heraus.
write-digits = Schreib nur Ziffern, zum Beispiel `12`.
write-backslash = Lass ihn weg oder schreib `\\` für einen Backslash.
write-like = Schreib es so: `name = "Squat"`, `reps = [8, 6]` oder `starts = 2026-11-02`.
