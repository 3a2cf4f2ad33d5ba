### Uhren: was angesagt wird, was über den Ziffern steht, was dazu gefragt wird. Links und rechts sind
### Seiten des Körpers.

## Ansagen, wie das Gerät sie spricht: für jemanden am Boden, das Gerät außer Reichweite. So kurz, wie ein
## Coach ruft.

cue-get-ready = bereit machen
cue-begin = los
cue-halfway = Halbzeit
cue-push = anspannen
cue-let-go = entspannen
cue-change-sides = Seite wechseln
cue-next = weiter
cue-ten-seconds = zehn Sekunden
cue-done = fertig
cue-rest-over = Pause vorbei
# Das erste Fenster beginnt, mit seiner Übung.
cue-begin-movement = los, { $movement }
# Das nächste Fenster beginnt, mit seiner Übung.
cue-next-movement = weiter, { $movement }

## Die Phase über den großen Ziffern: dieselben Wörter wie angesagt.

get-ready = Bereit machen
hold = Halten
push = Anspannen
let-go = Entspannen
change-sides = Seite wechseln
window-of = Fenster { $window } von { $windows }
rest = Pause
rest-is-over = Pause vorbei
done = Fertig
paused = Angehalten
paused-in-window = Angehalten in Fenster { $window }
stopped = Abgebrochen

## Mehr zur Phase, in wenigen Wörtern.

# Beim Seitenwechsel: die Seite, auf die gewechselt wird.
to-left = nach links
to-right = nach rechts
to-side = zu Seite { $side }
# Beim Seitenwechsel unterbrochen: die Seite, die kommt.
before-left = vor links
before-right = vor rechts
before-side = vor Seite { $side }
# Beim Bereitmachen: was das erste Fenster verlangt.
first-window = zuerst: { $asked }
# $time sind Ziffern wie „0:48“.
next-cue = dann: { $cue } in { $time }
# Signale, die fällig waren, während die App schlief: nur genannt, nicht nachgeholt.
missed-cues = verpasste Signale: { $cues }
missed-cues-and-more = verpasste Signale: ...; { $cues }
# Zwischen zwei davon.
between-cues = { "; " }

## Wie lange etwas her ist.

seconds-ago = vor { $seconds } s
minutes-ago = vor { $minutes } min
hours-ago = vor { $hours } h { $minutes } min
# Eine Zeit von einer Stunde und mehr.
hours = { $hours } h { $minutes } min

## Warum eine Seite kürzer als geplant gehalten wurde.

skipped = übersprungen
stopped-early = vorzeitig abgebrochen
# Das Gerät wurde mit anderer Uhrzeit neu gestartet, während die Uhr lief.
partly-timed = nur zum Teil gezählt
said = „{ $said }“
why-said = { $why }: „{ $said }“
# $held ist eine Zeit, $why einer der Gründe darüber.
held-why = { $held } ({ $why })

## Wie eine Uhr endete: der erste Satz dessen, was dazu gefragt wird.

ran-out = Gerade abgelaufen.
ran-out-ago = Vor { $time } abgelaufen.
ran-out-unknown = Abgelaufen, Zeitpunkt unbekannt.
ended = Gerade abgebrochen.
ended-ago = Vor { $time } abgebrochen.
ended-unknown = Abgebrochen, Zeitpunkt unbekannt.

## Was man sich an einer Uhr ansehen oder beantworten soll. $ended ist einer der Sätze darüber.

hold-logged = { $ended } Eingetragen: { $held }.
hold-nothing = { $ended } Nichts gehalten.
hold-to-log = { $ended } Einzutragen: { $held }. Stimmt das?
windows-to-log = { $windows ->
    [one] { $ended } Noch 1 Fenster einzutragen: Fenster { $first }.
   *[other] { $ended } Noch { $windows } Fenster einzutragen, ab Fenster { $first }.
}
hold-restarted = Das Gerät wurde neu gestartet; gezählt ist nach seiner Uhr. Stimmen die Sekunden?
interval-restarted = Das Gerät wurde neu gestartet; gezählt ist nach seiner Uhr. Stimmt das Fenster?
hold-unknown = Das Gerät wurde neu gestartet und seine Uhr verstellt; die Zeit seither ist unbekannt. Gezählt: { $held }. Weitermachen oder die Sekunden jeder Seite eintippen?
interval-unknown = Das Gerät wurde neu gestartet und seine Uhr verstellt; die Zeit seither ist unbekannt. Von hier weitermachen oder abbrechen und neu starten?

## Weniger Wiederholungen, wo Fenster eilig werden, nach dem eigenen Tempo.

# $margin ist die Luft, die bleiben soll, etwa „10 s“.
fewer-reps = { $fit ->
    [one] Bei diesem Tempo hast du mit 1 Wdh. statt { $reps } noch { $margin } Luft zum Wechseln.
   *[other] Bei diesem Tempo hast du mit { $fit } Wdh. statt { $reps } noch { $margin } Luft zum Wechseln.
}
no-reps-fit = Bei diesem Tempo hast du nicht einmal mit einer Wiederholung { $margin } Luft zum Wechseln. Nimm eine Variante.

## Die Pause zwischen den Sätzen.

# Woher ihre Länge kommt; steht in Klammern dahinter.
rest-by-plan = laut Plan
rest-usual = übliche Pause
rest-published = Fachliteratur zu schweren Sätzen: { $least } bis { $most }
# $from ist eines davon.
rest-to-go = noch { $time } von { $suggested } ({ $from })
rest-to-go-restarted = noch { $time } von { $suggested } ({ $from }). Das Gerät wurde neu gestartet; gezählt ist nach seiner Uhr.
rested = { $rested } pausiert, { $suggested } empfohlen ({ $from })
rested-restarted = { $rested } pausiert, { $suggested } empfohlen ({ $from }). Das Gerät wurde neu gestartet; gezählt ist nach seiner Uhr.
rest-unknown = Das Gerät wurde neu gestartet und seine Uhr verstellt; die Zeit seither ist unbekannt. { $suggested } empfohlen ({ $from }): Pausiere nach Gefühl.
