### Wörter, die ein Telefon um das herum zeichnet, was der Kern zeigt: kurz, auf Armlänge gelesen.

# Neben dem, was auf die Stange kommt oder herunter.
each-side = je Seite
put-on = Auflegen
take-off = Abnehmen
bar-is-ready = Stange ist bereit
# Vor dem Satz, der nach einer Pause kommt.
then = dann
# $time ist "1:24".
to-go = noch { $time }
rested-over = { $time } darüber
next = danach
warm-up = Aufwärmen
# Der Weg zurück zum Tag.
today = Heute
# Tasten, die neben der einen nicht Platz haben.
more = Mehr
back = Zurück
# Für einen Bildschirmleser: eine Seite der Stange, $plates ist "15, 5".
bar-from-inside = Eine Seite der Stange, von innen: { $plates }
empty-bar = Die Stange ist leer
