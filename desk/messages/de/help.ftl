## Was --help sagt. Namen von Befehlen, Optionen und Werten, die man tippt, bleiben, wie sie sind.

# Die Zeile über das Programm selbst.
about = Trainingstage für eine Gruppe ohne Netz: planen, trainieren, eintragen, abgleichen, auswerten.

## Überschriften

usage = Aufruf:
# Steht in der Zeile, die zeigt, wie man einen Befehl tippt.
usage-options = [OPTIONEN]
commands = Befehle
arguments = Argumente
options = Optionen

## Namen von Werten, in Großbuchstaben

value-command = BEFEHL
value-code = CODE
value-line = ZEILE
value-dir = ORDNER
value-plan = PLAN
value-date = DATUM
value-name = NAME
value-lang = SPRACHE
value-role = ROLLE
value-unit = MASSEINHEIT
value-seed = ZAHL
value-movement = ÜBUNG
value-where = STELLE
value-address = ADRESSE
value-file = DATEI
value-load = GEWICHT
value-decision = ANTWORT
value-words = TEXT
value-seconds = SEKUNDEN
value-piece = TEIL
value-set = SATZ
value-done = GEMACHT
value-count = N

## Was hinter dem Text eines Arguments steht

# $help ist der Text des Arguments.
with-default = { $help } [ohne Angabe: { $default }]
with-choices = { $help } [eines von: { $choices }]
with-variable = { $help } [Variable: { $variable }]

## Optionen jedes Befehls

home = Der Ordner des Geräts; ohne Angabe der Datenordner des Systems
lang = Die Sprache; ohne Angabe die auf diesem Gerät gewählte, sonst die des Systems
help = Hilfe anzeigen
help-short = Hilfe anzeigen (--help sagt mehr)
help-long = Hilfe anzeigen (-h sagt weniger)
version = Version anzeigen
help-command = Hilfe zu einem Befehl anzeigen

## Befehle

demo = Eine ganze Gruppe in einem Ordner drei Wochen lang spielen lassen und den Überblick zeigen
start = Dieses Gerät für einen Coach oder Athleten einrichten
check = Einen Plan prüfen, ohne ihn zu veröffentlichen
plates = Die Scheiben für Gewichte auf einer Stange ausrechnen; braucht kein Gerät
plates-more = Ein Gewicht ergibt die Scheiben je Seite. Mehrere ergeben eine Reihe: alle in dieser
    Reihenfolge und mit möglichst wenigen Scheiben, die aufgelegt oder abgenommen werden, die schwersten
    innen, von der leeren Stange bis zur leeren Stange. Gezeichnet ist eine Seite. Es wird nichts gerundet:
    Ein Gewicht, das die Ausstattung nicht hergibt, ist ein Fehler, der das nächste mögliche nennt; nur
    Aufwärmgewichte verschieben sich, um höchstens 5 %. Teilen sich mehrere die Stange, nenne die Gewichte
    in der Reihenfolge, in der sie gehoben werden. Steht in der Ausstattung `mixed = true`, kommen Scheiben in kg und in lb auf eine Stange.
publish = Einen Plan veröffentlichen (Coach)
today = Die heutige Einheit mit ihren Gewichten zeigen (Athlet)
invite = Ein Mitglied in deine Crew aufnehmen: Code zeigen, dann die vorgelesenen Wörter wählen (Coach)
join = In die Crew deines Coachs kommen: die Codes deines Coachs eintippen oder scannen (Athlet)
crew = Zeigen, wer zur Crew gehört, mit welchen Geräten
take-out = Ein Mitglied oder eines seiner Geräte aus der Crew nehmen (Coach); was früher kam, bleibt
forget = Alles löschen, was dieses Gerät von jemandem hat, den du herausgenommen hast, und die Dateien in einer Ablage (Coach)
stop-device = Ein eigenes Gerät stoppen, das verloren, gestohlen oder verkauft ist; fragt nach deinem Wiederherstellungscode
recovery = Deinen Wiederherstellungscode zeigen, zum Aufschreiben
restore = Dieses Gerät mit deinem Wiederherstellungscode einrichten: ein neues Telefon, ein zweites, ein neuer Laptop
session = Trainieren: Sätze, Fenster, Dehnungen und Messungen eintragen, auf ganzem Bildschirm oder zeilenweise (Athlet)
hold = Eine Dehnung nach der Uhr halten: braucht keinen Plan und kein Gerät, schreibt nichts
exchange = Abgleichen: Dateien in eine Ablage legen und von dort holen
take-along = Dateien eines Crewmitglieds ungeöffnet mitnehmen; dein nächster Abgleich liefert sie ab
carrier-command = Ablagen unter einem Namen behalten: Ordner, WebDAV- und S3-kompatible Server
carrier-add = Eine Ablage behalten; ein Passwort kommt aus der ersten Zeile der Eingabe oder aus HOLDFAST_CARRIER_PASSWORD
carrier-list = Die Ablagen auflisten
carrier-remove = Eine Ablage vergessen; dort wird nichts gelöscht
board = Zeigen, bei wem ein Blick nötig ist und warum (Coach)
member = Die Seite eines Mitglieds zeigen; ohne Namen die eigene
answer = Ein vorgeschlagenes Gewicht beantworten (Coach); der nächste Abgleich überträgt das
sets = Sätze zeigen, wie sie eingetragen wurden (ein Coach sieht alle, ein Athlet die eigenen)
correct = Einen Satz von irgendeinem Tag korrigieren, bestätigen oder zurücknehmen (Athlet)
leave-out = Einen Satz eines Mitglieds auslassen oder wieder zählen (Coach)
note = Deinem Coach etwas zu einer Einheit oder einem Satz schreiben, als Coach einem Mitglied; oder nur für dich
max = Ein 1RM eintragen: selbst getestet (Athlet) oder als Trainingsmaximum eines Mitglieds (Coach)
flag = Beschwerden zwischen den Einheiten melden, auch Tage später (Athlet): `flag knie 4`
clear = Meldungen von Beschwerden aufheben: ein Athlet die eigenen, ein Coach nach einem Gespräch die eines Mitglieds
report = Den Überblick und die Seiten aller Mitglieder als eine HTML-Datei schreiben (Coach)
export = Alles, was dieses Gerät weiß, als CSV, JSON und Journalzeilen schreiben
verify = Alles im Ordner prüfen und Beschädigtes in Ordnung bringen
aside = Aufgehobene beschädigte Datenbanken auflisten; mit einem Namen die Einträge ausgeben, die nur sie hat
language = Die Sprache wählen, die du liest

## Argumente

plan-file = Der Plan, eine TOML-Datei
carrier = Der gemeinsame Ordner, über den Geräte Dateien austauschen (Ablage), oder der Name einer Ablage
take-along-from = Der Ordner, etwa auf einem Stick, mit dem das Crewmitglied abgeglichen hat
carrier-name = Der Name der Ablage: kleine Buchstaben, Ziffern, Bindestriche
carrier-address = Ein Ordner, oder https://... eines WebDAV-Ordners; mit --bucket die eines S3-kompatiblen Servers
carrier-user = Der Benutzer, der sich anmeldet (WebDAV)
carrier-bucket = Der Bucket (S3)
carrier-key-id = Die ID des Schlüssels; sein Geheimnis wird wie ein Passwort gelesen (S3)
carrier-region = Die Region (S3)
carrier-prefix = Was im Bucket vor allen Namen steht (S3)
carrier-path-style = Der Bucket steht im Pfad, wie bei den meisten eigenen Servern (S3)
carrier-unencrypted = Erlaube http:// über fremde Netze: Wer auf dem Weg mithört, kann das Passwort lesen
invite-code = Der Code, den das Mitglied zeigt; ohne ihn eine neue Einladung oder die laufende
invite-line = Die Zeile, die das Mitglied vorliest, 1 bis 3; none, wenn es keine davon ist
invite-name = Wie du das Mitglied nennst (sonst der Name, den sein Gerät angab)
code-svg = Den Code auch als Bild schreiben
pair-carrier = Die nächsten Codes über diese Ablage gehen lassen, statt von Bildschirm zu Bildschirm
pair-watch = Weiter nachsehen, bis die andere Seite geantwortet hat, zehn Minuten lang
pair-stop = Das laufende Koppeln beenden
take-out-device = Eines der Geräte, mit seiner Nummer aus `holdfast crew`
forget-name = Wen du herausgenommen hast; ohne Namen wird nur die Ablage von denen geleert, die du vergessen hast
stop-device-number = Seine Nummer aus `holdfast crew`
recovery-confirm = Zwei Gruppen des Codes über die Standardeingabe zurücktippen: Dann vergisst ihn dieses Gerät
recovery-age = Den Schlüssel so ausgeben, wie ihn das Programm age liest: Damit öffnen gewöhnliche Werkzeuge deine eigenen Dateien
recovery-moved = Dieser Ordner wurde verschoben und ist dasselbe Gerät wie vorher
recovery-copied = Dieser Ordner ist eine Kopie: Er wird ein eigenes Gerät
restore-lost = Alle deine anderen Geräte gleich stoppen: Sie sind verloren
join-code = Ein Code, den dein Coach zeigt; ohne ihn das laufende Koppeln
join-match = Dein Coach hat dieselben vier Wörter
join-all = Auch teilen, was du vor dem Beitritt eingetragen hast (Standard: nur, was danach kommt)
join-differ = Dein Coach hat andere Wörter
another-date = Ein anderes Datum, etwa 2026-11-20
made-for = Das Datum, für das es gilt
json = Als JSON ausgeben
demo-dir = Der Ordner, in dem gespielt wird; eine frühere Demo darin wird überspielt
demo-seed = Womit der Zufall beginnt: Dieselbe Zahl spielt dieselbe Demo
demo-members = Wie viele Mitglieder trainieren, 1 bis 1000
demo-weeks = Wie viele Wochen lang, 1 bis 26
check-strict = Hinweise wie Fehler behandeln: Gibt es welche, endet das Programm mit einem Fehler
start-as = Coach oder Athlet (athlete)
start-name = Der Name, den andere sehen
start-unit = Die Maßeinheit für Gewichte
plates-loads = Die Gewichte der Reihe nach, jedes mit Einheit, etwa 92.5kg oder 205lb
plates-kit = Ein Plan, von dem nur `[kit]` gelesen wird, oder eine TOML-Datei nur mit `[kit]`
plates-bar = Der Name der Stange; ohne Angabe die erste in der Maßeinheit des ersten Gewichts, sonst die erste
plates-warm-up = Mit Aufwärmsätzen für das erste Gewicht beginnen: bis zu sieben, je schwerer es neben der leeren
    Stange ist, mit Gewichten, die Scheiben sparen (üblich so)
plates-from-floor = Mit --warm-up: kein Satz mit leerer Stange, für eine Übung, die am Boden beginnt
today-day = Der Name eines Trainingstags im Block
today-json = Die Ansicht als JSON ausgeben, wie ein Handy sie bekäme
session-on = Ein früheres Datum, dessen Einheit nachgetragen wird, etwa 2026-11-20
session-day = Der Name eines Trainingstags im Block, statt des heute geplanten
session-plain = Zeile für Zeile, wie durch eine Pipe
no-speech = Ansagen nicht sprechen
no-bell = Bei Ansagen das Terminal nicht klingeln lassen
hold-seconds = Sekunden je Seite, 1 bis 1800
hold-sides = Seiten, 1 bis 64
hold-contract = Sekunden zum Anspannen; jede Seite beginnt damit
hold-relax = Sekunden zum Entspannen nach jedem Anspannen
hold-ready = Sekunden zum Bereitmachen vor der ersten Seite, 0 bis 600
hold-switch = Sekunden zum Wechseln auf die nächste Seite, 0 bis 600 und nicht länger als das Halten; ohne
    Angabe 10, oder so lang wie das Halten, wenn das kürzer ist
hold-plain = Jede Ansage als Zeile, wie durch eine Pipe
member-name = Der Name des Mitglieds; ohne Angabe die eigene Seite
answer-name = Der Name des Mitglieds
answer-movement = Die Übung, wie der Überblick sie nennt, oder der Name des Teils
answer-decision = Den Vorschlag annehmen (accept), ändern (change) oder ablehnen (refuse: wieder die Gewichte vom letzten Mal)
answer-piece = Der Name des Teils, wenn es für die Übung mehrere Vorschläge gibt
answer-load = Mit change: das Gewicht des letzten Satzes (die anderen folgen) oder eines für jeden Satz
answer-words = Worte an den Athleten
answer-anyway = Gewichte senden, die über Obergrenze, Fehlversuch oder Pause hinausgehen
sets-on = Die Sätze eines Datums, etwa 2026-11-20
sets-sessions = Die Sätze so vieler letzter Einheiten, 1 bis 1000 (sonst 3)
sets-member = Der Name des Mitglieds (sonst die eigenen Sätze)
exchange-watch = Immer wieder abgleichen, bis du Strg-C drückst
exchange-every = Wie oft: alle so viele Sekunden, mindestens 5 (Standard: 60)
set-date = Das Datum der Einheit, etwa 2026-11-20
set-piece = Der Name des Teils oder der Übung
set-number = Die Nummer des Satzes in dem Teil
set-session = Welche Einheit des Datums, wenn mehrere so einen Satz haben: 1, 2, ...
correct-what = Was du gemacht hast, etwa "67,5 x 5, 2 übrig" oder 5; stimmt, wenn es so stimmt; nichts, wenn du ihn nicht gemacht hast
leave-out-count = Wieder zählen
max-movement = Die Übung mit ihrem Namen oder ihrem Kürzel im Plan
max-load = Das Gewicht, etwa 100kg; nichts nimmt das zuletzt eingetragene zurück
max-member = Der Name des Mitglieds (Coach)
max-anyway = Auch ein Gewicht, das weit weg ist von dem, was zuletzt gehoben wurde
flag-felt = Wo es wehtut, wie schlimm es ist von 1 bis 10, dann Warnzeichen, etwa: knie 4, muskel 6 dunkler urin
flag-movement = Die Übung, bei der es auftritt (Standard: in einer laufenden Einheit die, bei der man steht, sonst keine)
flag-on = Das Datum, an dem du es gespürt hast, höchstens vier Wochen zurück; ohne Angabe heute
note-words = Was du sagen willst
note-member = Für welches Mitglied (Coach)
note-on = Das Datum der Einheit, etwa 2026-11-20 (Standard: die letzte)
note-private = Nur für dich: sie verlässt dieses Gerät nie (Athlet)
note-take-back = Deine letzte Notiz dort zurücknehmen
clear-member = Der Name des Mitglieds (Coach)
clear-movement = Die Übung, wie die Seite sie nennt; ohne Angabe alle offenen Meldungen
report-out = Die Datei, die geschrieben wird
export-dir = Der Ordner, in den geschrieben wird; er muss leer sein oder darf noch nicht da sein
aside-name = Der Name einer davon, wie er in der Liste steht
language-choice = Die Sprache; `system` folgt dem System
