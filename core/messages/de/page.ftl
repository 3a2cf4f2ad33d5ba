### Die Orte eines Telefons neben der Einheit: Verlauf, Abgleich, dieses Telefon, Crew, Aufnahme, der erste Start.

## Tasten

# Solange ein Feld leer ist, das gefüllt sein muss.
type-the-rest = Fülle erst alle Felder aus.

next = Weiter
back-to-today = Zurück zu Heute
back-to-board = Zurück zum Überblick
share-code = Als Text senden
exchange-now = Jetzt abgleichen
join-a-crew = Einer Crew beitreten
let-somebody-in = Jemanden aufnehmen
# $name ist ein Mitglied, das geantwortet hat.
let-in = { $name } aufnehmen
invite = Code zeigen
invite-next = Den Nächsten aufnehmen
scan = Code scannen
take-typed = Getippten Code nehmen
or-type-it = Oder den Code tippen
# Auf dem Gerät, das selbst einen Code zeigt.
scan-theirs = Dann den anderen Code scannen
or-type-theirs = Oder den anderen Code tippen
stop-pairing = Abbrechen
words-match = Die Wörter stimmen überein
words-differ = Sie sind verschieden
joins = Tritt der Crew deines Coachs bei
match-and-share = Stimmt, Früheres auch teilen
share-earlier = Früheres teilen
none-of-them = Keine davon
touch-the-line = Tippe die Zeile an, die du hörst
to-exchange = Zum Abgleich
keep-server = Server speichern
add-folder = Ordner hinzufügen
add-server = Server hinzufügen
forget-carrier = Nicht mehr benutzen
show-code = Code zeigen
it-is-on-paper = Er steht auf Papier
publish-a-plan = Plan veröffentlichen
next-exchange-carries = Der nächste Abgleich überträgt ihn
agree-and-begin = Gelesen: anfangen

## Verlauf

history = Verlauf
movements = Übungen
ranges = Beweglichkeit
sessions = Einheiten
to-look-at = Zum Anschauen
nothing-yet = Noch ist nichts eingetragen.
# $side ist „links“ oder „rechts“.
range-of-side = { $name }, { $side }
rated = RPE { $rpe }, { $minutes } min
sets = { $sets ->
    [one] 1 Satz
   *[other] { $sets } Sätze
}
# $date ist ein Tag: Di 6. Okt.
since = seit { $date }
estimated-max = geschätztes 1RM,
# Beides sind ganze Zahlen in der Einheit, die jemand liest.
probably = wahrscheinlich { $low } bis { $high }
shaded-is-probable = Getönt: der wahrscheinliche Bereich.
shaded-is-error = Getönt: was Messfehler um die erste Messung sein kann.
line-is-heaviest = Der schwerste Satz jeder Einheit. Ein Kreuz: Sätze nicht geschafft.
heaviest-sets = Schwerster Satz jeder Einheit
readings = Messungen vor und nach dem Dehnen
# Beides sind Messungen mit ihrer Einheit.
before-and-after = { $before }, danach { $after }
asked = { $reps } vorgegeben
nothing-of = In deinem Tagebuch steht kein Eintrag zu { $movement }.
no-such-range = Diese Messung gibt es nicht.
no-such-session = Diese Einheit gibt es nicht.
took = { $minutes } min
# $set zählt ab 1.
set-number = Satz { $set }
touch-to-correct = Tippe auf einen Satz, um ihn zu korrigieren.
# Fenster, Dehnungen, Messwerte, Varianten, Beschwerden.
also-logged = Außerdem eingetragen
# Wird statt eines Diagramms vorgelesen. $first und $last sind Zahlen, $from und $to Tage.
chart-of-strength = { $movement }: geschätztes 1RM von { $first } auf { $last } { $unit }, { $from } bis { $to }.
chart-of-loads = { $movement }: schwerster Satz von { $first } auf { $last } { $unit }, { $from } bis { $to }.
chart-of-range = { $name }: von { $first } auf { $last } { $unit }, { $from } bis { $to }.

## Abgleich

exchange = Abgleich
all-sent = Alles ist gesendet
nothing-waits = Auf diesem Telefon wartet nichts.
entries-wait = { $entries ->
    [one] 1 Eintrag wartet
   *[other] { $entries } Einträge warten
}
# Seit $date ging kein Abgleich durch.
entries-wait-since = { $entries ->
    [one] 1 Eintrag wartet seit { $date }
   *[other] { $entries } Einträge warten seit { $date }
}
goes-with-next = Sie sind auf diesem Telefon sicher gespeichert und gehen mit dem nächsten Abgleich hinaus.
needs-a-carrier = Sie sind auf diesem Telefon sicher gespeichert. Füge einen Ordner oder Server hinzu, der sie überträgt.
no-crew-yet = Noch keine Crew
join-first = Was du einträgst, ist auf diesem Telefon gespeichert. Sobald du in einer Crew bist, überträgt es ein Abgleich.
nothing-goes-out = Nichts geht hinaus
no-longer-counts = Dieses Telefon zählt in der Crew nicht mehr. Was du einträgst, bleibt darauf.
last-exchange = Letzter Abgleich
# $time ist 18:40, $day ist So 22. Nov.
today-at = heute, { $time }
day-at = { $day }, { $time }
not-arrived = Nicht angekommen
carriers = Was es überträgt
carrier-is-kept = Jeder Abgleich geht dorthin.
nothing-is-deleted = Benutzt du sie nicht mehr, wird dort nichts gelöscht.
add-a-carrier-first = Füge erst einen Ordner oder Server hinzu
server-kind = Was für ein Server ist es?
webdav = WebDAV
webdav-is = Ein Ordner auf einem Server, mit Benutzername und Passwort.
webdav-needs = Frag den, der ihn betreibt, nach der Adresse des Ordners und nach einem Passwort nur für diese App.
s3 = S3-kompatibler Speicher
s3-is = Ein Bucket auf einem Server, mit Schlüssel-ID und geheimem Schlüssel.
s3-needs = Vom Betreiber brauchst du die Adresse ohne Bucket, den Namen des Buckets und einen Schlüssel nur für diese App. Den Bucket muss es schon geben. Nennt niemand eine Region, lass sie, wie sie ist.
server-sees = Wer ihn betreibt, kann nicht lesen, was abgeglichen wird, sieht aber, wann.
address = Adresse
user = Benutzername
password = Passwort
bucket = Bucket
bucket-region = Region
bucket-folder = Ordner im Bucket, wenn du einen willst
key-id = Schlüssel-ID
secret-key = Geheimer Schlüssel

## Dieses Telefon, die Crew, der Wiederherstellungscode

this-phone = Dieses Telefon
unit = Gewichte in
kilograms = Kilogramm
pounds = Pfund
language = Sprache
as-the-phone = Wie das Telefon
# Jede Sprache heißt in ihren eigenen Worten.
english = English
german = Deutsch
more = Mehr
crew = Crew
coach = Coach
# $state ist, was es dazu zu sagen gibt.
device = Gerät { $number }: { $state }
recovery-code = Wiederherstellungscode
only-on-this-phone = Nur auf diesem Telefon. Schreib ihn auf.
code-is-for = Mit diesem Code kommt dein Tagebuch zurück, wenn das Telefon verloren geht. Wer ihn hat, kann dein Tagebuch lesen.
nobody-looks = Schreib ihn auf, wenn niemand zusieht. Ein Foto davon ist nicht sicher.
# $groups ist „3 und 7“.
type-back = Tippe dann die Gruppen { $groups } ein
cautions = Hinweise
what-is-stored = Was gespeichert wird
no-room-for-code = Dieser Code ist zu lang für ein Bild. Tippe ihn.

## Wie dieses Telefon aussieht und klingt

text-size = Schrift
text-larger = Größer
text-largest = Am größten
shade = Farben
shade-light = Hell
shade-dark = Dunkel
# Was zu hören ist, wenn eine Uhr die Phase wechselt.
cues = Signale
heard-words = Ton und Worte
heard-tones = Nur ein Ton
heard-nothing = Stumm
try-cue = Jetzt ein Signal geben
try-cue-more = Zu hören und zu spüren wie in einer Dehnung.

## Was der Raum hat

room = Der Raum
no-plan-no-kit = Was der Raum hat, kommt mit dem Plan.
loads-follow-the-kit = Jedes Gewicht lässt sich hieraus bauen. Fehlt hier etwas, sag es deinem Coach.
bars = Stangen
plates-kg = Scheiben in Kilogramm
plates-lb = Scheiben in Pfund
bells = Kettlebells
machines = Geräte
# $mass hat seine Einheit.
times = { $count ->
    [one] { $mass }
   *[other] { $mass }, davon { $count }
}
with-collars = Verschlüsse zusammen { $mass }
pieces = { $count ->
    [one] 1 Stück
   *[other] { $count } Stück
}

## Was gespeichert wird und wer es lesen kann

stored-here = Deine Sätze, Zeiten, Messungen, Notizen und was weh tut, sind auf diesem Telefon gespeichert. Das sind Daten über deine Gesundheit.
stored-read = Sobald du einer Crew beitrittst, kann dein Coach lesen, was du einträgst. Andere Mitglieder können es nicht. Ohne Crew kann es niemand.
stored-private = Eine private Notiz verlässt dieses Telefon nie.
stored-carrier = Ein Ordner oder Server überträgt versiegelte Dateien. Wer ihn betreibt, kann sie nicht öffnen, sieht aber, wann du trainierst.
stored-for-good = Was dein Coach bekommen hat, lässt sich nicht zurückholen. Du kannst deinen Coach bitten, dich zu löschen.
stored-lost = Ein verlorenes Telefon ohne aufgeschriebenen Wiederherstellungscode ist ein verlorenes Tagebuch.

## Der erste Start

who-are-you = Wer bist du?
what-holdfast-does = Holdfast macht aus dem Plan deines Coachs deine Einheit und behält, was du gemacht hast. Es braucht keine Verbindung und kein Konto.
athlete = Athlet
athlete-does = Ich trainiere nach einem Plan
coach-does = Ich schreibe Pläne und betreue eine Crew
your-name = Dein Name
name-missing = Dein Name fehlt
name-seen = Deine Crew sieht ihn.
choose-who = Wähle Athlet oder Coach
how-you-read = Gewichte und Sprache
choose-unit = Wähle Kilogramm oder Pfund
before-you-begin = Bevor du anfängst
makes-a-folder = Speichert es nur auf diesem Telefon

## Ein Tagebuch kommt zurück

# Auf der ersten Seite eines neuen Telefons.
has-a-code = Ich habe einen Wiederherstellungscode
has-a-code-more = Mein Tagebuch kommt auf dieses Telefon zurück
restore-a-log = Ein Tagebuch zurückholen
code-brings-log = Tippe den Code vom Papier. Großschreibung und Striche sind egal.
where-files-lie = Sag dann, wo die Dateien deiner Crew liegen: Dein Coach weiß es.
look-for-log = Nach dem Tagebuch suchen
log-was-found = Dein Tagebuch ist da
agree-and-restore = Einverstanden: zurückholen
brings-all-of-it = Das Telefon wird deins, und der Abgleich danach bringt das Tagebuch

## Seiten eines Coachs

nobody-yet = Noch ist niemand in deiner Crew, oder niemand hat seither abgeglichen.
never-trained = noch nicht
as-planned = Nichts zu entscheiden.
plan = Plan
# Wohin die Seiten eines Coachs zurückführen.
board = Überblick
# Statt einer Taste, solange etwas darüber noch nicht zu sehen war.
read-on = Weiterlesen
days = Tage
# $from und $to sind Tage.
plan-runs = { $from } bis { $to }, { $weeks ->
    [one] 1 Woche
   *[other] { $weeks } Wochen
}.
no-plan-published = Noch ist kein Plan veröffentlicht.
a-plan-is-a-file = Ein Plan ist eine Textdatei. Holdfast prüft ihn, bevor etwas veröffentlicht wird, und sagt, was in welcher Zeile nicht stimmt.
