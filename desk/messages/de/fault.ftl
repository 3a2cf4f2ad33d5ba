## Was im Terminalprogramm schiefgeht.

# Steht in Rot vor dem, was schiefging.
error = Fehler:
# Steht in Gelb vor dem, was das Programm beim Öffnen selbst in Ordnung gebracht hat.
repaired = Hinweis:

## Dateien und Ordner

# $path ist eine Datei oder ein Ordner, $reason einer der Sätze darunter oder einer vom System.
file = { $path }: { $reason }
carrier-is-a-file = Das ist eine Datei. Eine Ablage ist ein Ordner.
# $kept sind die Namen der behaltenen Ablagen.
carrier-unknown = Keine Ablage hat diesen Namen, und kein Ordner heißt so. Deine Ablagen: { $kept }.
carrier-missing = Diesen Ordner gibt es nicht. Prüfe die Schreibweise oder lege ihn erst an.
export-not-empty = Der Ordner ist nicht leer. Nenne einen, den es noch nicht gibt.
demo-not-empty = Der Ordner ist nicht leer und enthält keine frühere Demo. Nenne mit --dir einen anderen.
home-not-utf8 = Der Name des Ordners ist kein UTF-8. Wähle mit --home einen anderen.
no-such-file = Diese Datei gibt es nicht. Prüf die Schreibweise.
no-such-folder = Diesen Ordner gibt es nicht. Leg ihn zuerst an oder nenne einen anderen.
is-a-folder = Das ist ein Ordner. Nenne eine Datei.
not-allowed = Dieser Benutzer darf sie nicht lesen oder schreiben. Ändere die Rechte oder nenne eine andere.
no-data-folder = Dieses System nennt keinen Ordner für Daten. Nenne einen mit --home ORDNER.
# $reason ist ein ganzer Satz: warum die Daten des Geräts nicht gelesen wurden, als ein Plan geprüft wurde.
checked-alone = Ohne die Gewichte der Mitglieder geprüft. { $reason }
# $folder ist, wo ein Gerät gesucht wurde. Was hinter dem Doppelpunkt steht, wird getippt.
not-set-up = In { $folder } ist noch kein Gerät eingerichtet. Gib ein: holdfast --home { $folder } start --as athlete --name NAME (oder --as coach)

## Argumente. $argument ist eines, wie man es tippt: --sides <N>

no-command = Den Befehl „{ $command }“ gibt es nicht. { $help }
no-command-but = Den Befehl „{ $command }“ gibt es nicht. Meinst du „{ $other }“? { $help }
no-argument = Das Argument „{ $argument }“ gibt es nicht. { $help }
no-argument-but = Das Argument „{ $argument }“ gibt es nicht. Meinst du „{ $other }“? { $help }
# Ein Wert, der mit einem Strich beginnt, gilt als Option; was nach -- steht, nicht.
no-argument-dash = Das Argument „{ $argument }“ gibt es nicht. Vor einen Wert, der mit einem Strich beginnt, gehört --: -- { $argument }
argument-missing = Es fehlt: { $arguments }. { $help }
argument-twice = { $argument } darf nur einmal vorkommen. { $help }
arguments-exclude = { $argument } lässt sich nicht zusammen mit { $others } angeben. { $help }
value-missing = { $argument } braucht einen Wert. { $help }
# $choices sind die Wörter, die passen.
value-not-among = „{ $value }“ passt nicht zu { $argument }. Wähle eines von diesen: { $choices }.
# $text ist, was die Hilfe über das Argument sagt.
# Geschrieben wie ein Datum.
no-such-day = { $value } gibt es im Kalender nicht. Schreib einen Tag, den es gibt.
value-wrong = „{ $value }“ passt nicht zu { $argument }: { $text }
# $help in den Sätzen darüber.
see-help = --help zeigt, was es gibt.

## Was getippt wurde

# $named ist, was hinter --lang steht, $known sind die vorhandenen Kürzel: en, de.
unknown-language = Die Sprache „{ $named }“ gibt es nicht. Wähle eine von diesen: { $known }.
# $which nennt die Teile, die gemeint sein können.
which-proposal = { $which } Häng --piece und einen dieser Namen an.
name-a-member = Nenne das Mitglied mit --member NAME.
no-such-flag = Bei { $name } ist keine Meldung offen.
nothing-flagged = Es wurde nichts gemeldet. Tippe, wo und wie schlimm es ist: `flag knie 4`.
nothing-kept-by-name = Eine beschädigte Datenbank „{ $name }“ wurde nicht aufgehoben. `holdfast aside` listet sie auf.
no-flag-for = Bei { $name } ist für { $movement } keine Meldung offen.
# $why sagt, was an einem getippten Gewicht nicht stimmt.
wrong-load = --load: { $why }
contract-too-long = --contract { $seconds } ist länger als das Halten mit { $hold } s.
switch-too-long = --switch { $seconds } ist länger als das Halten mit { $hold } s.

## Das System. $why ist, was das System dazu sagt.

no-randomness = Dieses System liefert keine Zufallszahlen: { $why }
no-input = Die Eingabe ist nicht lesbar: { $why }
no-signals = Signale lassen sich nicht beobachten: { $why }
no-terminal = Das Terminal ist nicht benutzbar: { $why }. Versuche --plain.
output-closed = Die Ausgabe wurde geschlossen.
ended-by-signal = Beendet durch Signal { $signal }.

## Fehler des Programms selbst

# $why ist ein technischer Text.
panicked = Fehler in Holdfast: { $why }. Was du eingetragen hast, ist gespeichert.
demo-plan = Der Plan der Demo hat Fehler: { $why }

## carrier

no-such-carrier-name = Eine Ablage kann nicht „{ $name }“ heißen. Nimm 1 bis { $most } kleine Buchstaben, Ziffern und Bindestriche.
carrier-named-twice = Eine Ablage „{ $name }“ gibt es schon. Vergiss sie zuerst: holdfast carrier remove { $name }
no-carrier-of-name = Eine Ablage „{ $name }“ gibt es nicht. `holdfast carrier list` zeigt alle.
