### Der Bildschirm der Einheit, wie ihn jemand zwischen zwei Sätzen liest: erst Zahlen, dann Verben.

## Eine Zeile über dem Trainingstag.

no-plan = Noch kein Plan. Mach einen Abgleich mit deinem Coach.
# $date ist ein kurzes Datum wie „Di 10. Nov.“; es kann mit einem Punkt enden.
day-off = Heute nichts geplant. Als Nächstes: { $day }, { $date }
planned-day = { $day }, { $date }, Woche { $week } von { $weeks }
day-after-block = { $day }, { $date }; { $block } lief bis { $end }
block-ended = { $block } lief bis { $end }. Du kannst trotzdem jeden seiner Trainingstage trainieren.
block-without-days = { $block } hat keinen geplanten Tag mehr und läuft bis { $end }. Du kannst trotzdem jeden seiner Trainingstage trainieren.

## Hinweise über den Teilen.

# $trouble sagt, was schiefging.
not-ready-for-exchange = Alles ist gespeichert, aber noch nicht bereit für den Abgleich: { $trouble }
plan-unread = Diese Version kann den Plan „{ $block }“ nicht lesen. Aktualisiere Holdfast. Bis dahin gilt der letzte Plan, der lesbar ist.
# $on als „Di 10. Nov.“, $date als „2026-11-10“.
left-open = „{ $day }“ am { $on } ist noch offen; was du eingetragen hast, zählt. Nachtragen oder beenden: `session --on { $date }`.
written-afterwards = Wird nachgetragen: Keine Uhr und keine Pause läuft. Trag ein, was du an dem Tag gemacht hast.
devices-disagree = { $entries ->
    [one] Zwei deiner Geräte widersprechen sich bei 1 Eintrag. Du siehst die spätere Fassung.
   *[other] Zwei deiner Geräte widersprechen sich bei { $entries } Einträgen. Du siehst die späteren Fassungen.
}

## Was dran ist: erst der Titel, dann die Zeile.

# Ein Name oder Titel, dann, was dazu gesagt oder verlangt wird. $what steht für sich.
titled = { $title }: { $what }
set = { $movement }, Satz { $set } von { $sets }
extra-set = { $movement }, Zusatzsatz { $set }
window = { $piece }, Fenster { $window } von { $windows }
# Wo in seinem Teil: neben dessen Namen.
place-set = Satz { $set } von { $sets }
place-extra = Zusatzsatz { $set }
place-window = Fenster { $window } von { $windows }
# Solange die Uhr noch in einem früheren läuft.
window-next = { $piece }, als Nächstes Fenster { $window } von { $windows }
# $protocol ist die Messung der Beweglichkeit, etwa „Knie zur Wand“.
measure-before = { $piece }, { $protocol } vor der Dehnung
measure-after = { $piece }, { $protocol } nach der Dehnung
finished = Beendet.
all-logged = Alles ist eingetragen.
not-all-logged = Noch nicht alles ist eingetragen.
# Ein Satz, dessen Gewicht man selbst wählt; zwischen den Akzenten, was man tippen kann.
set-without-load = { $title }: { $asked }; du wählst das Gewicht, etwa `{ $typed }`
# Kein Gewicht: Es tut weh.
set-withdrawn = { $title }: kein Gewicht, solange es wehtut
# Die Scheiben einer Seite, dann, was an der Stange zu tun ist.
build-and-change = { $build }; { $change }
# $unit ist „cm“ oder „°“.
reading-of-one = { $title }, in { $unit }
reading-of-two = { $title }, in { $unit }, links und rechts
how-hard = Wie anstrengend war die ganze Einheit, 0 bis 10?
how-hard-and-long = Wie anstrengend war die ganze Einheit, 0 bis 10, und wie viele Minuten hat sie gedauert?

## Am Ende einer Einheit: was nicht gemacht ist.

# $pieces ist eine Liste von Namen, jeder mit seinem Stand.
not-done = Nicht gemacht: { $pieces }.
# Sätze wie „Squat Satz 1, 675 kg × 5“ in einer Liste.
in-doubt = Vielleicht ein Versehen, zählt noch nicht: { $sets }.
piece-so-far = { $piece } ({ $progress })

## Was zuletzt gespeichert wurde, auf einem Telefon.

# $what als „Squat Satz 2, 60 kg × 6“.
saved = Gespeichert: { $what }
# Neben einem Haken, wo große Schrift für mehr keinen Platz lässt.
saved-set = Satz { $set }
saved-window = Fenster { $window }
saved-alone = Gespeichert

## Was aus jedem Teil wurde, am Ende der Einheit.

sum-sets = { $all ->
    [one] { $done } von 1 Satz
   *[other] { $done } von { $all } Sätzen
}
# Der letzte Satz war offen: $set als „70 kg × 7“, $asked Wiederholungen waren gefragt.
sum-open-set = offener Satz: { $set }, gefragt { $asked }
sum-extra-sets = { $sets ->
    [one] 1 Satz mehr
   *[other] { $sets } Sätze mehr
}
sum-windows = { $all ->
    [one] { $done } von 1 Fenster
   *[other] { $done } von { $all } Fenstern
}
# $margin ist die Zeit, die frei bleiben soll, als „10 s“.
sum-to-spare = { $windows ->
    [one] 1 mit { $margin } Luft oder mehr
   *[other] { $windows } mit { $margin } Luft oder mehr
}
# $time ist, wie lange jede von zwei Seiten gehalten wurde.
sum-each-side = { $time } je Seite
sum-of-side = { $side } { $time }
sum-nothing = nicht gemacht
# Vor dem Tag, der als Nächstes trainiert wird, in einer Zeile für sich.
sum-next = Danach
sum-next-day = { $day }, { $date }

## Wie weit ein Teil ist, und Gewichte, die man selbst wählt: ein, zwei Wörter.

later = später
left-for-today = für heute ausgelassen
no-load = ohne Gewicht
you-choose = du wählst
# Severe pain: the load is gone until the flag is cleared.
load-withdrawn = kein Gewicht
extra = extra
unplanned = { $movement }, nicht geplant
unplanned-last = { $movement }, nicht geplant; letztes Mal { $done }, { $day }
sets-done = { $sets ->
    [one] 1 Satz
   *[other] { $sets } Sätze
}

## Tasten neben der einen Taste. Kurz: Mehrere stehen nebeneinander.

undo = rückgängig
# Ein Satz, der nach einem Versehen aussieht, war keines.
set-is-right = Satz { $set } stimmt
set-of-piece-is-right = { $piece } Satz { $set } stimmt
rate-again = Anstrengung ändern
it-hurts = es tut weh
minute-more = 1 min mehr
start-elsewhere = an anderer Station anfangen
type-it = eintippen
options = Varianten
extra-work = Zusatzsatz oder -übung
clear-flag = Meldung aufheben
put-off = später
finish = beenden
start-clock = Uhr starten
seconds-more = 15 s mehr
go-on = weiter
pause = anhalten
skip-to-next = zum Nächsten
stop = abbrechen

## Die Zeile zum Tippen: was sie einträgt, und darunter, was man tippen kann. Was zwischen den Akzenten
## steht, liest das Programm: siehe `left-typed` in line.ftl.

log = { $what } eintragen
log-by-hand = { $what } von Hand eintragen
log-extra = Zusatzsatz oder -übung eintragen
correct = { $what } korrigieren
correct-by-hand = { $what } von Hand korrigieren
# Das liest das Programm.
typed-set = { $load } x { $reps }
# $typed ist ein Satz, wie man ihn tippt, etwa `40 x 8`.
hint-load = Gewicht x Wdh., dann, wie viele noch übrig waren: `{ $typed }, 2 übrig`
hint-reps = saubere Wdh.: `{ $reps }`; oder der ganze Satz: `{ $typed }, 2 übrig`
hint-reserve = wie viele Wdh. noch übrig waren: `2`; oder der ganze Satz: `{ $typed }, 2 übrig`
hint-set = Gewicht x Wdh.: `{ $typed }`; mit denen, die übrig waren: `{ $typed }, 2 übrig`; nur Wdh.: `{ $reps }`
hint-extra = noch ein Satz: `60 x 8`; oder eine Übung: `Klimmzug 8`
hint-window = Wdh. und Sekunden Luft: `12 8`; nur Wdh.: `12`
hint-two-readings = zwei Messwerte, links und rechts: `10,5 11`
hint-one-reading = ein Messwert: `10,5`
hint-held = gehaltene Sekunden: `120`; wenn es kürzer war, mit Grund: `60 Krampf`
hint-held-sides = Sekunden links und rechts: `120 95`; wenn eine Seite kürzer war, mit Grund: `120 60 Krampf`
hint-rating = 0 ist Ruhe, 10 das Maximum; leer: ohne Angabe beenden
hint-rating-afterwards = die Anstrengung, 0 ist Ruhe und 10 das Maximum, dann die Minuten: `7 60`

## Was an einem Eintrag auffällt, vielleicht ein Vertipper. Steht hinter einer Frage: „Wirklich? ...“.

odd-reps = { $reps } Wdh., { $asked } geplant
# $near ist ein Gewicht.
odd-load = { $load } geht mit dem, was du nimmst, nicht; am nächsten ist { $near }
odd-load-between = { $load } geht mit dem, was du nimmst, nicht; am nächsten sind { $lighter } und { $heavier }
far-from-proposed = Weit weg vom Vorschlag: { $load }
odd-window = { $reps ->
    [one] 1 Wdh. in { $time }
   *[other] { $reps } Wdh. in { $time }
}
# Beides sind Zeiten: Gehalten wurde länger, als die Einheit lief.
odd-hold = { $held } gehalten, aber erst { $time } nach Beginn der Einheit
