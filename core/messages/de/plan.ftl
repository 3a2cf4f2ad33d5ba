# Fehler einer Plandatei, wie sie ein Coach liest: was nicht stimmt, und in einer Zeile darunter, was zu tun ist.
# Was in Backticks oder geraden Anführungszeichen steht, ist Text der Datei: Es bleibt, wie es ist.

## Die Datei als Ganzes

too-large = Der Plan hat { $size } Bytes; höchstens { $most } sind möglich.
split-into-blocks = Teile ihn in Blöcke auf.
# $byte ist das Byte als Hexadezimalzahl, etwa FC.
not-text = Der Plan ist kein UTF-8-Text: Byte 0x{ $byte } ist nicht lesbar.
save-as-text = Speichere die Datei noch einmal als UTF-8-Text.
empty = Der Plan ist leer.
start-plan = Beginne mit `[block]` und darin `name`, `starts` und `weeks`, danach ein `[[day]]` mit seinen Teilen.
start-kit = Schreib ein `[kit]` mit `bar` und `plate`.
# An der Stelle des letzten Fehlers, der gezeigt wird.
more-problems = { $problems ->
    [one] Ab hier noch 1 weiterer Fehler.
   *[other] Ab hier noch { $problems } weitere Fehler.
}
fix-these-first = Behebe erst diese und prüfe den Plan dann noch einmal.

## Ein Wert, den ein Feld nicht haben kann. $found ist der Wert, wie er dasteht.

cant-be = `{ $key }` kann nicht { $found } sein.
cant-be-list = `{ $key }` kann keine Liste sein.
cant-be-table = `{ $key }` kann keine Tabelle sein.
# Der Wert ist einer aus einer Liste.
cant-hold = `{ $key }` kann { $found } nicht enthalten.
cant-hold-list = `{ $key }` kann keine Liste enthalten.
cant-hold-table = `{ $key }` kann keine Tabelle enthalten.

## Was stattdessen zu schreiben ist

write-text = Schreib einen Text in doppelten Anführungszeichen.
write-true-or-false = Schreib `true` oder `false`, ohne Anführungszeichen.
write-number = Schreib eine ganze Zahl von { $least } bis { $most }.
write-number-unquoted = Schreib eine ganze Zahl von { $least } bis { $most }, ohne Anführungszeichen.
write-either-number = Schreib { $least } oder { $most }.
write-either-number-unquoted = Schreib { $least } oder { $most }, ohne Anführungszeichen.
# $value steht schon in der Datei, aber zwischen Anführungszeichen.
unquote = Schreib es ohne Anführungszeichen: `{ $value }`.
# $words sind mehrere, etwa "squat", "hinge" oder "push".
write-word = Schreib { $words }.
write-quoted-word = Schreib das Wort in doppelten Anführungszeichen: { $words }.
# $example ist eine Zeile aus einem Plan.
write-example = Schreib `{ $example }`.
write-list = Schreib eine Liste in eckigen Klammern: `{ $example }`.
add-example = Ergänze `{ $example }`.
write-date = Schreib Jahr-Monat-Tag ohne Anführungszeichen, zum Beispiel `2026-11-02`.
# $one und $other sind eine Zahl mit zwei Einheiten: "20 kg" und "20 lb".
quote-with-unit = Schreib es mit Einheit in doppelten Anführungszeichen: "{ $one }" oder "{ $other }".
write-mass = Schreib ein Gewicht als Zahl mit Einheit, zum Beispiel "92.5 kg" oder "205 lb".
# Das Gewicht steht schon in Anführungszeichen.
add-unit = Schreib die Einheit dazu: "{ $one }" oder "{ $other }".
mass-above-zero = Schreib ein Gewicht über null.
# $load ist dasselbe Gewicht mit einem Minus, etwa -20 kg.
write-minus = Unterstützung wird abgezogen: Schreib sie mit einem Minus, zum Beispiel "{ $load }".
write-time = Schreib Minuten, Sekunden oder beides: "90 s", "2 min" oder "1 min 30 s".
write-time-between = Schreib eine Zeit von "{ $least }" bis "{ $most }".

## Texte, Listen und Kürzel

nothing-in-it = `{ $key }` ist leer.
write-a-letter = Schreib mindestens einen Buchstaben.
text-too-long = `{ $key }` hat { $characters } Zeichen; höchstens { $most } sind möglich.
shorten-text = { $characters ->
    [one] Kürze es um 1 Zeichen.
   *[other] Kürze es um { $characters } Zeichen.
}
# $code ist die Nummer eines Zeichens, etwa U+0009.
unshown-character = `{ $key }` enthält ein Zeichen, das sich nicht anzeigen lässt ({ $code }).
write-without-tabs = Schreib es ohne Tabulatoren.
write-on-one-line = Schreib es in eine Zeile, ohne Tabulatoren.
list-too-long = `{ $key }` hat { $entries } Einträge; höchstens { $most } sind möglich.
take-out = Nimm { $entries } heraus.
listed-twice = { $value } steht zweimal da.
take-one-out = Nimm eins davon heraus.
# Der Name, unter dem sich Teile auf eine Übung, eine Variante oder eine Dehnung beziehen.
bad-key = `{ $key }` taugt nicht als Kürzel.
write-key = Nimm 1 bis 40 Kleinbuchstaben, Ziffern und Bindestriche, zum Beispiel `back-squat`.
possible-keys = Möglich sind { $keys }.

## Vermutungen und Aufzählungen im Satz

did-you-mean-key = Meinst du `{ $key }`?
did-you-mean-word = Meinst du "{ $word }"?
# Zwei ganze Sätze.
both-sentences = { $first } { $second }
comma = { $before }, { $next }
and-last = { $before } und { $last }
or-last = { $before } oder { $last }
