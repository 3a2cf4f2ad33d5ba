### Die eine Taste: was sie sagt, und in einer zweiten Zeile, was ein Druck tut oder warum sie wartet.
### Auf Armlänge gelesen: Ein Druck muss genau das tun, was dasteht.

## Was die Taste sagt.

no-plan = Noch kein Plan
# Fragt nach dem Tag und beginnt dann seine Einheit.
other-day = Anderen Trainingstag trainieren
begin = { $day } beginnen
# Was geplant ist, etwa „60 kg × 6“: Ein Druck trägt es so ein.
done = Fertig: { $what }
choose-load = Gewicht wählen
# Fragt nach den Wiederholungen eines offenen Satzes und speichert dann.
done-how-many = Fertig ({ $what }). Wie viele Wdh.?
# Fragt, wie viele Wiederholungen noch übrig waren, und speichert dann.
done-how-many-left = Fertig ({ $what }). Wie viele Wdh. in Reserve?
end-rest = Pause beenden
get-ready = Bereit machen
wait-for-window = Auf das nächste Fenster warten
start-clock = Uhr starten
pause = Anhalten
go-on = Weiter
seconds-more = 15 s mehr
next = Zum Nächsten
stop = Abbrechen
# Die gehaltene Zeit, etwa „2 min und 1 min 35 s“.
save-held = { $held } speichern
type-reading = Messwert eintippen
finish = Anstrengung angeben und beenden
correct = Korrigieren
# Eine Übung, die wehtut, wird für heute ausgelassen.
leave-piece = { $what } auslassen
# Stoppt die Uhr einer Übung, die wehtut.
stop-piece = { $what } abbrechen
emergency = Einheit beenden, dann Notruf
# Verlässt den Bildschirm einer beendeten Einheit.
leave = Verlassen

## Was ein Druck tut, oder warum die Taste wartet.

exchange-first = Mach zuerst einen Abgleich mit deinem Coach.
nothing-planned = Heute ist nichts geplant.
begins = Startet die Einheit.
saves-set = Speichert Satz { $set } und startet die Pause.
saves-set-alone = Speichert Satz { $set }.
load-saved-with-reps = Es wird mit den Wdh. gespeichert.
count-good-reps = Zähl die sauberen Wiederholungen eines offenen Satzes.
finds-next-load = Daraus ergibt sich das Gewicht des nächsten Satzes.
finds-next-time = Das hilft, das Gewicht fürs nächste Mal zu finden.
# $what ist, was der Satz verlangt, etwa „60 kg × 6“.
then-set = Als Nächstes { $what } (Satz { $set }).
saves-window = Speichert Fenster { $window }.
first-window-comes = Gleich kommt das erste Fenster.
window-is-logged = Fenster { $window } ist eingetragen.
time-to-get-ready = Vorher bleibt Zeit zum Bereitmachen.
saves-held = Speichert, was die Uhr gezählt hat.
saves-as-planned = Speichert es wie geplant; oder tippe die gehaltenen Sekunden.
rating-ends = 0 ist Ruhe, 10 das Maximum.
already-logged = Schon eingetragen.
hurts-next-piece = Es tut weh: Mach mit dem nächsten Teil weiter.
hurts-stop-clock = Es tut weh: Brich zuerst die Uhr ab.
emergency-stop = Das Gerät ruft niemanden an: Hol selbst Hilfe.
next-exchange = Der nächste Abgleich bringt die Einheit zu deinem Coach.
# Statt der Zeile darüber, nach einem Notfallzeichen.
get-care-now = Hol dir jetzt notärztliche Hilfe. Hat es nachgelassen, geh heute zum Arzt.
