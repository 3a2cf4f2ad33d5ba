## Eine Einheit Zeile für Zeile. Wörter in `` tippt man so, wie sie dastehen.

# Steht einmal am Anfang.
keys = Enter tut, was die Zeile darüber sagt. `?` zeigt alles andere. `quit` lässt die Einheit offen.
# Steht da, wenn die Einheit schon beendet ist.
already-finished = Diese Einheit ist beendet. `undo` öffnet sie wieder, `finish 7` ändert die Anstrengung, Enter verlässt sie. Für
    einen anderen Trainingstag: session --day NAME

## Wörter vor einer Zeile, in Farbe

nothing-saved = nichts gespeichert:
not-understood = nicht verstanden:
not-saved = nicht gespeichert:
saved = gespeichert:
# $number ist die Nummer des Eintrags.
saved-as = gespeichert { $number }:
undone = rückgängig: { $what }
# Steht vor etwas Auffälligem am Gespeicherten, vielleicht einem Versehen.
really = wirklich?
undo-a-slip = Tippe `undo`, wenn es ein Versehen war.
# $right ist etwa „Satz 3 stimmt“.
right-or-undo = Tippe `right`: { $right }. Tippe `undo`, wenn es ein Versehen war.

# Die Pause vor dem nächsten Satz; $left sagt, wie lang sie ist.
rest = Pause: { $left }
