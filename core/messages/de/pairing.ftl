## Koppeln: Ein Coach nimmt ein Mitglied auf, und beide vergleichen vier Wörter.

more-random-bytes = Zum Koppeln braucht es { $wanted } Zufallsbytes; es kamen { $found }.
stopped = Das Koppeln ist beendet. Nichts wurde geändert.

## Der Coach.

invite-somebody = Zurzeit wird niemand gekoppelt. Lade ein Mitglied ein, um anzufangen.
let-them-scan = Lass das neue Mitglied diesen Code scannen. Er gilt einmal, zehn Minuten lang.
send-them = Schick dem neuen Mitglied diesen Code. Er gilt einmal, zehn Minuten lang.
# $name ist, wie das Gerät des Mitglieds es nennt.
which-line = Zeig { $name } diesen Code. Dann liest { $name } dir vier Wörter vor: Welche Zeile ist es?
which-line-read = { $name } liest dir vier Wörter vor: Welche Zeile ist es?
# $label ist, wie der Coach das Mitglied nennt.
taken-in = { $label } ist in deiner Crew. Der nächste Abgleich schickt den Plan.
code-too-old = Dieser Code ist über zehn Minuten alt. Lade noch einmal ein.
nothing-to-answer = Kein Code wartet auf eine Antwort. Lade zuerst das Mitglied ein.
nothing-to-pick = Noch ist keine Zeile zu wählen. Scanne zuerst den Code des Mitglieds.
forgotten-before = Du hast diese Person hier vergessen. Um wieder dazuzukommen, fängt sie in einem neuen Ordner an.
device-of-another = Diese Antwort nennt ein Gerät, das jemand anderem gehört. Lass das Mitglied deinen Code mit dem eigenen Telefon scannen.
label-taken = { $label } heißt bei dir schon jemand anders. Wähle einen anderen Namen, etwa mit einem zweiten Buchstaben.

## Das Mitglied.

ask-for-a-code = Du bist noch in keiner Crew. Lass dir von deinem Coach einen Code zeigen und scanne ihn.
show-your-coach = Zeig das deinem Coach, dann scanne den nächsten Code, den dein Coach zeigt.
on-its-way = Deine Antwort ist unterwegs. Wenn dein Coach sie hat, vergleicht ihr vier Wörter.
read-to-your-coach = Lies deinem Coach diese Wörter vor. Hat dein Coach dieselbe Zeile?
who-reads = Wenn du beigetreten bist, kann dein Coach auf allen seinen Geräten lesen, was du hier ab heute einträgst. Was geteilt ist, lässt sich nicht zurückholen. Wer den Ordner betreibt, kann es nicht lesen, sieht aber, wann du trainierst.
# Vor dem Beitritt. $entries wurden vor heute gemacht.
earlier-stay = { $entries ->
    [one] Du hast vor heute { $entries } Eintrag gemacht. Er bleibt bei dir, wenn du ihn nicht auch teilst.
   *[other] Du hast vor heute { $entries } Einträge gemacht. Sie bleiben bei dir, wenn du sie nicht auch teilst.
}
# Nach dem Beitritt.
earlier-withheld = { $entries ->
    [one] { $entries } Eintrag von vor deinem Beitritt ist nicht geteilt.
   *[other] { $entries } Einträge von vor deinem Beitritt sind nicht geteilt.
}
earlier-shared = Der nächste Abgleich sendet, was du vor deinem Beitritt eingetragen hast.
nothing-withheld = Von vor deinem Beitritt ist nichts ungeteilt.
not-in-a-crew = Du bist noch in keiner Crew. Lass dir von deinem Coach einen Code zeigen: Danach kommt der erste Abgleich.
joined = Du bist dabei. Der nächste Abgleich bringt den Plan, sobald auch dein Coach bestätigt hat.
joined-already = Dieses Gerät ist schon in einer Crew. Für eine andere Crew fang in einem neuen Ordner an.
another-crew = Dieses Gerät war in einer anderen Crew. Für eine neue Crew fang in einem neuen Ordner an.
another-used-it = Ein anderes Gerät hat auf diesen Code geantwortet. Lass dir von deinem Coach einen neuen geben.
scan-the-first = Scanne zuerst den Code, den dein Coach zeigt.
nothing-to-compare = Noch sind keine Wörter zu vergleichen. Scanne zuerst die Codes deines Coachs.

## Beide.

nothing-under-way = Zurzeit wird niemand gekoppelt. Erst lädt ein Coach ein, dann kommt das Mitglied mit diesem Code dazu.
words-differ = Die Wörter sind verschieden; vielleicht ist jemand dazwischen. Nichts wurde geteilt. Fangt neu an.
# $failed ist, wie oft es hintereinander misslang.
two-failed = { $failed ->
    [one] { $failed } Versuch ist misslungen. Koppelt in einem Raum, Bildschirm an Bildschirm.
   *[other] { $failed } Versuche sind misslungen. Koppelt in einem Raum, Bildschirm an Bildschirm.
}
