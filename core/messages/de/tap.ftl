## Warum etwas Angetipptes nicht geht. Ein Satz oder zwei: was nicht stimmt, dann was zu tun ist. Davor kann der
## Name des Feldes stehen („Gewicht“, „Satz“) oder der Name dessen, was fehlt.

# Setzt in einer Liste den Namen eines Teils oder Trainingstags in Anführungszeichen.
quoted = „{ $name }“

## Die Einheit.

# $date ist ein kurzes Datum; es kann auf einen Punkt enden.
session-running = Die Einheit „{ $day }“ vom { $date } ist noch offen. Beende sie zuerst: `session`, dann `finish`.
session-not-running = Es läuft keine Einheit. Beginne zuerst eine.
no-plan = Es ist noch kein Plan da. Mach zuerst einen Abgleich mit deinem Coach.
# $today ist ein Datum, $days eine Liste von Namen.
nothing-planned = Für { $today } ist nichts geplant. Nenne einen dieser Trainingstage: { $days }.
block-days = Im Block gibt es { $days }.
# Die Datei des Plans, mit dem eine laufende Einheit begonnen wurde.
plan-not-here = Die Datei ist auf diesem Gerät noch nicht da. Mach zuerst einen Abgleich.
plan-without-day = Im Plan gibt es diesen Trainingstag nicht.
# $pieces ist eine Liste von Namen.
day-pieces = An diesem Trainingstag gibt es { $pieces }.
nothing-to-undo = In dieser Einheit ist noch nichts eingetragen.
afterwards-dates = Nachtragen geht für die letzten { $weeks } Wochen, bis gestern.
no-clock-afterwards = Beim Nachtragen läuft keine Uhr. Tippe, was du gemacht hast.
minutes-afterwards = Nenne auch die Dauer: die Anstrengung, dann die Minuten, etwa `7 60`.
rest-not-running = Es läuft keine Pause.
# Eine Notiz oder eine Dehnung ohne Messung.
nothing-to-put-off = In „{ $piece }“ gibt es nichts zu verschieben.
clock-begun = Die Uhr von „{ $piece }“ ist gestartet: Trag zuerst ein, was sie gezählt hat, oder brich sie ab.

## Zu große Zahlen.

rating-too-high = { $rating } ist zu hoch. Die Anstrengung geht von 0 bis { $most }.
minutes-too-many = { $minutes } sind zu viele. Eine Einheit dauert höchstens { $most } Minuten.
reps-too-many = { $reps } sind zu viele. Ein Satz oder Fenster hat höchstens { $most } Wiederholungen.
reserve-too-many = { $reserve } sind zu viele. Übrig sind 0 bis { $most } Wiederholungen.

## Sätze und Varianten.

no-sets = „{ $piece }“ hat keine Sätze.
all-sets-logged = { $sets ->
    [one] Der einzige Satz ist eingetragen. Nenne Satz 1, um ihn zu korrigieren.
   *[other] Alle { $sets } Sätze sind eingetragen. Nenne einen, um ihn zu korrigieren.
}
no-such-set = { $sets ->
    [one] Dieser Teil hat 1 Satz; einen Satz { $set } gibt es nicht.
   *[other] Dieser Teil hat { $sets } Sätze; einen Satz { $set } gibt es nicht.
}
next-set-is = Der nächste Satz hier ist Satz { $set }.
too-many-sets = Mehr als { $most } Sätze über die geplanten hinaus gehen nicht.
extra-reps = Wie viele Wdh. waren es bei { $movement }?
extra-reps-last = Wie viele Wdh. waren es bei { $movement }? Letztes Mal: { $done }, { $day }
planned-today = { $movement } steht heute in „{ $piece }“. Trag es dort ein.
movement-name = Nenne eine Übung mit 1 bis { $most } Zeichen, ohne Schrägstrich.
load-unknown = Für diesen Satz ist kein Gewicht vorgeschlagen: Sag, welches du genommen hast.
load-zero = Ein Gewicht muss über null liegen.
load-below-zero = Was zum Körpergewicht dazukommt, kann nicht unter null liegen.
# $load ist das Gesagte mit einem Minus.
load-not-minus = Unterstützung wird vom Körpergewicht abgezogen: Trag sie mit einem Minus ein, zum Beispiel { $load }.
set-not-in-session = Dieser Satz gehört nicht zu dieser Einheit.
set-counts-already = Dieser Satz zählt schon; es gibt nichts zu bestätigen.
set-not-yours = Diesen Satz hast du nicht eingetragen, oder er ist zurückgenommen.
logged-like-that = Dieser Satz ist schon so eingetragen.
plan-of-set-not-here = Der Plan zu diesem Satz ist auf diesem Gerät noch nicht da. Mach zuerst einen Abgleich.
open-set = Dieser Satz ist offen: Sag, wie viele saubere Wiederholungen es waren.
# $movement ist das Kürzel im Plan, $options eine Liste von Kürzeln.
no-options = { $movement } hat keine Varianten.
options-are = { $movement } hat { $options }.
needs-no-bar = „{ $piece }“ braucht keine Stange.
bar-taken-already = „{ $bar }“ ist schon gewählt.
no-movement = „{ $piece }“ hat keine Übung.
# $movements ist eine Liste von Kürzeln im Plan.
which-movement = „{ $piece }“ hat { $movements }: Sag, welche du meinst.

## Fenster und Uhren.

no-windows = „{ $piece }“ hat keine Fenster.
all-windows-logged = { $windows ->
    [one] Das einzige Fenster ist eingetragen. Nenne Fenster 1, um es zu korrigieren.
   *[other] Alle { $windows } Fenster sind eingetragen. Nenne eines, um es zu korrigieren.
}
no-such-window = { $windows ->
    [one] Dieser Teil hat 1 Fenster; ein Fenster { $window } gibt es nicht.
   *[other] Dieser Teil hat { $windows } Fenster; ein Fenster { $window } gibt es nicht.
}
# $length ist eine Zeit wie „1 min“.
spare-too-long = Mehr als { $length } Luft geht nicht: So lang ist das Fenster.
window-not-begun = Fenster { $window } hat noch nicht begonnen. Warte darauf oder trag das davor ein.
windows-of-one-length = Fenster sind alle gleich lang; du kannst sie nicht verlängern.
no-clock = „{ $piece }“ hat keine Uhr.
clock-running = Die Uhr läuft schon. Halt sie an oder brich sie ab.
clock-not-running = Die Uhr läuft nicht.
clock-not-paused = Die Uhr ist nicht angehalten.
no-stations = „{ $piece }“ hat keine Stationen.
station-at-start = Wähle die Station, wenn du die Uhr startest.
no-such-station = { $stations ->
    [one] „{ $piece }“ hat 1 Station; eine Station { $station } gibt es nicht.
   *[other] „{ $piece }“ hat { $stations } Stationen; eine Station { $station } gibt es nicht.
}
station-fixed = Ab Station { $station } sind schon Fenster eingetragen. Mach sie rückgängig, um woanders zu beginnen.
no-side-held = Es wird gerade keine Seite gehalten.
# $most ist eine Zeit wie „30 min“.
side-too-long = Du kannst eine Seite höchstens { $most } halten.

## Dehnungen und Messwerte.

not-a-hold = „{ $piece }“ ist keine Dehnung.
sides-are = { $sides ->
    [one] „{ $piece }“ hat 1 Seite.
   *[other] „{ $piece }“ hat { $sides } Seiten.
}
held-out-of-range = Eine Seite wird 0 s bis { $most } gehalten.
nothing-held = Bisher wurde nichts gehalten. Starte die Uhr oder gib die Sekunden jeder Seite an.
no-readings = Gib mindestens einen Messwert an.
no-measure = In „{ $piece }“ sieht der Plan keine Messung vor.
# Beides sind Messwerte mit ihrer Einheit, etwa „0,0 cm“.
reading-out-of-range = Ein Messwert liegt hier zwischen { $low } und { $high }.
# Warum eine Seite kürzer war, in den Worten des Mitglieds.
said-too-long = Sag in 1 bis { $most } Zeichen, warum, und ohne Zeilenumbruch.

## Beschwerden.

severity-out-of-range = Die Stärke geht von 1 (kaum spürbar) bis 10 (das Schlimmste).
no-open-flag = Hier ist keine Meldung offen.
flag-not-open = Diese Meldung ist schon aufgehoben, oder es gab sie nie.
felt-dates = Melde, was du in den letzten { $weeks } Wochen gespürt hast, heute eingeschlossen.
no-such-movement = „{ $movement }“ steht nicht im Plan. Übungen: { $movements }.
