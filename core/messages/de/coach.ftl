## Die Überschrift des Überblicks. $block ist der Name des Blocks im Plan; ein Datum nennt Wochentag und Tag.

heading-in-week = { $block }, Woche { $week } von { $weeks }
heading-to-start = { $block }, beginnt { $date }
heading-ended = { $block }, lief bis { $date }
heading-no-plan = Noch kein Plan veröffentlicht

## Was auf dem Gerät des Coachs nicht oder beschädigt ankam. Je eine Zeile unter dem Überblick.

# $file ist der Name einer Datei, $reason ein ganzer Satz.
left-alone = { $file } nicht angerührt: { $reason }
# $number zählt die Geräte eines Menschen, der mehrere hat.
device-of = Gerät von { $name }
device-of-many = Gerät { $number } von { $name }
# Eine Datei enthält einen Teil dessen, was ein Mitglied gespeichert hat; $numbers sind die Nummern derer, die fehlen.
uploads-missing = { $uploads ->
    [one] 1 Datei vom { $device } ist nicht angekommen: Nummer { $numbers }.
   *[other] { $uploads } Dateien vom { $device } sind nicht angekommen: Nummern { $numbers }.
}
uploads-missing-unknown = { $uploads ->
    [one] 1 Datei von einem unbekannten Gerät ist nicht angekommen: Nummer { $numbers }.
   *[other] { $uploads } Dateien von einem unbekannten Gerät sind nicht angekommen: Nummern { $numbers }.
}
# $sequence ist die Nummer einer Datei, $last die der letzten, die dieses Gerät kennt.
seen-beyond = Das { $device } hat Datei { $sequence } dieses Geräts gesehen, das nur bis { $last } weiß. Kam es aus einer Sicherung zurück, oder wurde es kopiert? Ein Abgleich bringt zurück, was fehlt.
seen-beyond-unknown = Ein unbekanntes Gerät hat Datei { $sequence } dieses Geräts gesehen, das nur bis { $last } weiß. Kam es aus einer Sicherung zurück, oder wurde es kopiert? Ein Abgleich bringt zurück, was fehlt.
two-histories = Das { $device } hat zwei Verläufe: Es wurde kopiert oder aus einer Sicherung zurückgeholt. Beide bleiben erhalten.
two-histories-unknown = Ein unbekanntes Gerät hat zwei Verläufe: Es wurde kopiert oder aus einer Sicherung zurückgeholt. Beide bleiben erhalten.
# Dateien, die erhalten bleiben und nicht zählen.
uploads-of-nobody = { $count ->
    [one] { $count } Datei ist von jemandem, den diese Crew nicht kennt. Sie bleibt erhalten und zählt nicht.
   *[other] { $count } Dateien sind von jemandem, den diese Crew nicht kennt. Sie bleiben erhalten und zählen nicht.
}
uploads-removed = { $count ->
    [one] { $count } Datei eines Geräts, das gestoppt oder herausgenommen wurde, zählt nicht: Sie ist danach geschrieben, oder es fehlt, worauf sie folgt. Sie bleibt erhalten.
   *[other] { $count } Dateien eines Geräts, das gestoppt oder herausgenommen wurde, zählen nicht: Sie sind danach geschrieben, oder es fehlt, worauf sie folgen. Sie bleiben erhalten.
}
uploads-too-many = { $count ->
    [one] { $count } Datei ist von einem Gerät mehr, als jemand haben darf. Sie bleibt erhalten und zählt nicht.
   *[other] { $count } Dateien sind von einem Gerät mehr, als jemand haben darf. Sie bleiben erhalten und zählen nicht.
}
newer-entries = { $entries ->
    [one] 1 Eintrag kann nur ein neueres Holdfast lesen. Er bleibt erhalten; aktualisiere Holdfast, um ihn zu sehen.
   *[other] { $entries } Einträge kann nur ein neueres Holdfast lesen. Sie bleiben erhalten; aktualisiere Holdfast, um sie zu sehen.
}

## Warum ein Mitglied Aufmerksamkeit braucht, in einem Wort. Steht vor den Worten des nächsten Abschnitts.

# Jemandem tut etwas weh.
kind-pain = Schmerz
# Die Gewichte steigen nicht mehr.
kind-stalled = Plateau
# Eine Weile nicht gesehen.
kind-away = fehlt
# Worte für den Coach, auf die noch niemand geantwortet hat.
kind-note = Notiz
# Zwei Geräte widersprechen sich.
kind-conflict = Konflikt
# Statt der Übung wurde eine Variante gemacht.
kind-option = Variante
# Weniger Luft als geplant.
kind-rushed = knapp
# Ein Satz, der nach einem Versehen aussieht.
kind-slip = Versehen
# Die Gewichte sind gestiegen.
kind-up = gesteigert

## Worum es bei einem Mitglied geht. Je eine Zeile, hinter dem Wort.

# „Knie 4/10 bei Kniebeuge, Di 10. Nov.“: ein Körperteil, wie stark von 10, eine Übung, ein Datum.
pain = { $place } { $severity }/10 bei { $movement }, { $date }
# $signs sind aufgezählt; jedes davon gehört in ärztliche Hände.
pain-with-signs = Warnzeichen: { $signs }. Sorge dafür, dass das ärztlich untersucht wird. Am { $date } gemeldet: { $place } { $severity }/10 bei { $movement }.
pain-alone = { $place } { $severity }/10, { $date }, zwischen den Einheiten
pain-alone-with-signs = Warnzeichen: { $signs }. Sorge dafür, dass das ärztlich untersucht wird. Am { $date } zwischen den Einheiten gemeldet: { $place } { $severity }/10.
# Eine Meldung auf der Seite eines Mitglieds, hinter ihrem Datum und vor dem, was aus ihr wurde. $signs zählt Warnzeichen auf.
flag = { $place } { $severity }/10 bei { $movement }
flag-with-signs = { $place } { $severity }/10 bei { $movement }, dazu { $signs }
# Wenn keine Übung sie auslöst.
flag-alone = { $place } { $severity }/10, nicht durch eine Übung
flag-alone-with-signs = { $place } { $severity }/10, dazu { $signs }, nicht durch eine Übung
# $loads sind die Gewichte vom letzten Mal, Satz für Satz, mit ihrer Einheit.
stall-missed = { $movement }: zweimal in Folge nicht geschafft, bei { $loads }
stall-thrice = { $movement }: in drei Einheiten in Folge Sätze nicht geschafft, bei { $loads }
# Mehr Wdh. gibt es nicht, und das nächste Gewicht im Raum ist zu weit weg.
stall-no-step = { $movement }: über { $loads } ist kein Gewicht in Reichweite
away-since = Zuletzt trainiert { $date }; seitdem { $days ->
    [one] 1 geplanten Tag verpasst
   *[other] { $days } geplante Tage verpasst
}
away-always = Noch keine Einheit; { $days ->
    [one] 1 geplanten Tag verpasst
   *[other] { $days } geplante Tage verpasst
}
# Einträge in dem, was das Mitglied gespeichert hat.
conflict = Zwei Geräte widersprechen sich bei { $entries ->
    [one] 1 Eintrag
   *[other] { $entries } Einträgen
}
# $option ist, was statt einer Übung gemacht wurde, $because der Grund, etwa „unterer Rücken“.
option-taken = { $option } ({ $because }), { $sessions ->
    [one] 1 Einheit
   *[other] { $sessions } Einheiten
}
option-taken-no-reason = { $option }, { $sessions ->
    [one] 1 Einheit
   *[other] { $sessions } Einheiten
}
# Fenster eines Teils nach der Uhr.
rushed = { $rushed } von { $windows ->
    [one] 1 Fenster
   *[other] { $windows } Fenstern
} mit weniger Luft als geplant
# $done ist, was eingetragen wurde, etwa „675 kg × 5“.
slip = { $movement }, Satz { $set } am { $date }: { $done } ist vielleicht ein Versehen
progress = { $movement }: letzter Satz von { $from } auf { $to } gesteigert

## Ein Mitglied finden.

no-log-yet = Noch von keinem Mitglied ist etwas angekommen.
# $names sind aufgezählt.
which-member = So heißen mehrere: { $names }. Schreib den ganzen Namen.
# $names ist eine Liste.
members-here = Es gibt { $names }.

name-the-member = Nenne das Mitglied.

## Sätze, wie sie eingetragen wurden. $date ist ein kurzes Datum wie „Di 3. Nov.“.

session-heading = { $day }, { $date }
no-sets-at-all = Noch kein Satz ist eingetragen.
# $dates ist eine Liste.
no-sets-on = Am { $date } ist kein Satz eingetragen, zuletzt am { $dates }
# $pieces ist eine Liste von Namen in Anführungszeichen; davor steht der Teil, den es nicht gibt.
pieces-with-sets = Am { $date } gibt es Sätze von { $pieces }.
# $numbers ist eine Liste der Sätze, die es gibt.
no-such-logged-set = Am { $date } hat { $piece } Satz { $numbers }; einen Satz { $set } gibt es nicht. Einen vergessenen trägst du mit `session --on { $day }` nach.
no-such-session = { $sessions ->
    [one] Am { $date } gibt es nur eine Einheit; eine Einheit { $session } gibt es nicht.
   *[other] Am { $date } gibt es { $sessions } Einheiten; eine Einheit { $session } gibt es nicht.
}
# $numbers ist eine Liste.
which-session = Am { $date } haben mehrere Einheiten so einen Satz. Nenne die Einheit: { $numbers }.
which-piece = { $movement } kommt in { $pieces } vor. Nenne den Teil.

## Einen Satz auslassen: Er zählt nicht für Vorschläge.

set-not-here = Diesen Satz gibt es hier nicht. Vielleicht ist er zurückgenommen.
left-out-already = Dieser Satz ist schon ausgelassen.
not-left-out = Dieser Satz ist nicht ausgelassen.

## 1RM. $load und $heaviest haben ihre Einheit, $date ist ein kurzes Datum wie „Di 3. Nov.“.

max-tested = { $movement }: { $load }, getestet am { $date }
max-set = { $movement }: { $load }, Trainingsmaximum vom Coach, { $date }
# $movements ist eine Liste.
no-such-movement = Eine Übung „{ $movement }“ gibt es im Plan nicht. Er hat { $movements }.
no-movement-lifted = Eine Übung „{ $movement }“ gibt es im Plan nicht, auch keine andere mit Gewicht.
no-max-of-a-body = { $movement } geht mit dem Körpergewicht. Ein 1RM gibt es nur für Stange, Hanteln, Kettlebells oder ein Gerät.
max-too-heavy = { $load } ist zu schwer. Ein 1RM ist höchstens { $most }.
max-far-above = { $load } ist viel mehr, als { $heaviest } am { $date } erwarten lassen; trotzdem eintragen: anyway.
max-unheard-of = Im letzten halben Jahr gibt es für diese Übung keinen Satz, und { $load } ist viel; trotzdem eintragen: anyway.
max-far-below = { $load } ist weniger als die Hälfte vom schwersten Satz des letzten halben Jahres: { $heaviest } am { $date }; trotzdem eintragen: anyway.
no-max-to-take-back = Du hast für diese Übung kein 1RM eingetragen.

## Einen Vorschlag beantworten.

not-in-crew = Diese Person ist nicht in deiner Gruppe.
no-plan-yet = Es ist noch kein Plan veröffentlicht. Veröffentliche zuerst einen.
no-proposals = Für { $name } gibt es noch keine Vorschläge.
# $movements sind aufgezählt.
proposals-for = Für { $name } gibt es Vorschläge zu { $movements }.
# $pieces ist eine Aufzählung von Namen in Anführungszeichen.
which-proposal = Für { $movement } gibt es bei { $name } mehr als einen Vorschlag: { $pieces }. Nenne den Teil.
# Im Überblick, wenn ein Mitglied mehrere Vorschläge für eine Übung hat: „Kniebeuge (Kniebeuge leicht)“.
movement-of-piece = { $movement } ({ $piece })
# Wenn zwei Teile gleich heißen; $track ist der Name des Verlaufs.
piece-and-track = { $piece }, { $track }
# Hinter einer Antwort, die etwas zurückhält. $loads sind ihre Gewichte, Satz für Satz, mit Einheit.
held-by-pain = Die Antwort gilt bis zum nächsten Training: { $loads }. Beschwerden halten sie zurück, bis die Meldung aufgehoben ist.
held-after-pain = Die Antwort gilt bis zum nächsten Training: { $loads }. Beschwerden halten sie für eine Einheit zurück, die erste danach; mit ihr ist die Antwort verbraucht.
held-by-easy-week = Die Antwort gilt: { $loads }. Die leichte Woche ist leichter und verbraucht sie nicht.
loads-only-with-change = Gewichte gehören nur zu einer Änderung. Lass sie weg, um anzunehmen oder abzulehnen.
one-load-or-each = { $sets ->
    [one] Dieser Teil hat 1 Satz. Gib ein Gewicht an.
   *[other] Gib ein Gewicht für den letzten Satz an oder eines für jeden der { $sets } Sätze.
}
nothing-for-the-last = Für den letzten Satz ist nichts vorgeschlagen. Gib für jeden Satz ein Gewicht an.
past-the-cap = Satz { $set }: { $load } liegt mehr als ein Zehntel über den letzten { $last }. Veröffentlichte Richtlinien raten zu 2 bis 10 % auf einmal, also höchstens { $most }. Trotzdem senden: anyway.
# Was zum Körpergewicht dazukommt oder davon abgenommen wird; Prozente sagen dabei nichts.
past-the-next-load = Satz { $set }: { $load } ist mehr als ein Gewicht über den letzten { $last }. Hier geht es um ein Gewicht des Raums auf einmal nach oben, also höchstens { $most }. Trotzdem senden: anyway.
# Letztes Mal wurde mehr bewegt als vorgeschlagen.
past-what-was-proposed = Satz { $set }: { $load } liegt zu weit über dem letzten Vorschlag. Bewegt wurden da { $last }, mehr als vorgeschlagen, also jetzt höchstens { $most }. Trotzdem senden: anyway.
# Satz für Satz, ein Gewicht über dem, was ein Fehlversuch oder eine Pause erlaubt. $why wie die Zeile neben dem Gewicht.
past-a-limit = Satz { $set }: { $load } ist mehr als die vorgeschlagenen { $most } ({ $why }). Trotzdem senden: anyway.
nothing-above-while-flagged = Satz { $set }: Es sind Beschwerden gemeldet. Nicht mehr als die letzten { $last }, bis die Meldung aufgehoben ist.
cannot-build = Satz { $set }: { $load } gibt es in diesem Raum nicht, auch nichts in der Nähe.
cannot-build-nearest = Satz { $set }: { $load } gibt es in diesem Raum nicht. Am nächsten ist { $near }.
cannot-build-between = Satz { $set }: { $load } gibt es in diesem Raum nicht. Am nächsten sind { $below } und { $above }.

## Eine Meldung aufheben.

flag-not-open = Diese Meldung ist schon aufgehoben, oder es gab sie nie.

## Was ein Plan umfasst, Zeile für Zeile.

plan-heading = { $block }: { $weeks ->
    [one] 1 Woche
   *[other] { $weeks } Wochen
}, { $from } bis { $to }
# $weekdays sind aufgezählt.
plan-day = { $day } ({ $weekdays })
# $what ist eine der vier Zeilen darunter.
plan-piece = { $piece }: { $what }
# „Kniebeuge, Sätze mit 8, 6 und 5 oder mehr, Pause 2 min“
# Wo der Plan keine Pause nennt.
piece-strength-alone = { $movement }, Sätze mit { $reps }
piece-strength = { $movement }, Sätze mit { $reps }, Pause { $rest }
# $length ist die Länge eines Fensters, $total die aller zusammen; $movements sind aufgezählt.
piece-interval = { $windows ->
    [one] 1 Fenster zu { $length }: { $movements } ({ $total })
   *[other] { $windows } Fenster zu { $length }: { $movements } ({ $total })
}
piece-hold = { $stretch }, { $sides ->
    [one] { $length }
    [2] { $length } je Seite
   *[other] { $length } auf jeder von { $sides } Seiten
}
piece-note = eine Notiz

## Wochentage, kurz.

monday = Mo
tuesday = Di
wednesday = Mi
thursday = Do
friday = Fr
saturday = Sa
sunday = So
