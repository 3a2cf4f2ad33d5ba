## Die Crew: wer dazugehört, mit welchen Geräten; Entfernen, Stoppen, der Wiederherstellungscode.

# So heißt, wessen Name noch nicht angekommen ist.
unnamed = Jemand
you-were-removed = Du gehörst nicht mehr zur Crew. Was du einträgst, bleibt auf diesem Gerät und geht an niemanden.
was-removed = Entfernt. Was früher kam, zählt; was später kommt, nicht.
too-many = Zählt nicht: Eine Person hat zu viele Geräte.
no-longer-counts = Gestoppt. Was es früher schickte, zählt; was später kommt, nicht.
this-device = Dieses Gerät
last-word = Zuletzt gehört: { $date }
no-word-yet = Noch nichts gehört
people-here = In dieser Crew: { $people }.
devices-there = { $known ->
    [one] { $name } hat ein Gerät, Nummer 1.
   *[other] { $name } hat die Geräte 1 bis { $known }.
}

## Entfernen und stoppen

only-coaches-remove = Nur ein Coach entfernt jemanden; { $name } ist Athlet.
not-the-coach = Ein Coach lässt sich nicht entfernen. Ein verlorenes Gerät des Coachs wird mit dessen Wiederherstellungscode gestoppt.
nothing-to-remove = Schon entfernt. Nichts wurde geändert.
device-was-removed = Gerät { $number } von { $name } ist entfernt: Der nächste Abgleich sagt es weiter. Ändere das Passwort der Ablage, falls das Gerät es kannte.
member-was-removed = { $name } ist entfernt: Der nächste Abgleich sagt es weiter. Ändere das Passwort der Ablage: { $name } kennt es noch.
device-was-stopped = Gerät { $number } ist gestoppt: Der nächste Abgleich sagt es weiter. Wer es hat, kann weiter lesen, was bisher dorthin ging. Wurde der Wiederherstellungscode darauf nie zurückgetippt, hat er auch den Code: Dann verbinde dich als jemand Neues noch einmal mit deinem Coach.
not-this-device = Das ist das Gerät, das du gerade benutzt. Ein verlorenes stoppst du von einem anderen aus.
no-devices-yet = Du bist noch in keiner Crew.

## Der Wiederherstellungscode

write-it-down = Schreib diesen Code auf Papier und heb ihn auf, wo sonst niemand hinsieht. Tippe dann die Gruppen { $first } und { $second } zurück.
code-is-kept = Dein Wiederherstellungscode liegt nur auf diesem Gerät. Schreib ihn auf: Ohne ihn ist mit dem Gerät auch dein Trainingstagebuch verloren.
code-is-on-paper = Dein Wiederherstellungscode steht auf Papier. Dieses Gerät hat ihn nicht mehr.
two-groups = Tippe beide Gruppen mit einem Leerzeichen dazwischen.
groups-differ = Das sind nicht die Gruppen { $first } und { $second }. Vergleiche sie mit deinem Papier.
type-the-code = Dein Wiederherstellungscode steht nur auf Papier. Tippe ihn ein.
code-of-somebody-else = Das ist ein Wiederherstellungscode, aber nicht der von der Person dieses Geräts.
moved-or-copied = Dieser Ordner liegt nicht mehr, wo er lag. Wurde er verschoben, oder ist er eine Kopie? Eine Kopie muss ein eigenes Gerät werden.
no-more-devices = Eine Person kann insgesamt { $most } Geräte haben, und die hattest du. Fang in einem neuen Ordner an und verbinde dich wieder mit deinem Coach.
more-random-bytes = Die Schlüssel eines Geräts brauchen { $wanted } zufällige Bytes; { $found } kamen.

## Wiederherstellen

nothing-opens = Mit diesem Code lässt sich in dieser Ablage nichts öffnen. Prüfe, ob es die richtige ist und ob je etwas dorthin geschickt wurde.
two-crews = Dieser Code öffnet die Tagebücher zweier Crews. Frag deinen Coach, welche Ablage die richtige ist.
no-coach-found = Dein eigenes Tagebuch liegt hier, aber nichts von deinem Coach. Bitte deinen Coach, zuerst abzugleichen.
restored = { $devices ->
    [one] Das Tagebuch von { $name } gefunden, geschrieben auf einem Gerät.
   *[other] Das Tagebuch von { $name } gefunden, geschrieben auf { $devices } Geräten.
}

## Was ein Abgleich von Leuten brachte

is-removed = { $name } gehört nicht mehr zur Crew.
forgotten-elsewhere = Ein anderes Gerät von dir hat { $name } gelöscht: Von hier bekommt { $name } auch nichts mehr. Nimm { $name } hier auch heraus und lösche dann. Warst du das nicht, stoppe jenes Gerät.
added-a-device = { $name } hat ein neues Gerät: Es liest ab jetzt mit, was ihr teilt. Weiß { $name } nichts davon, redet miteinander.
you-added-a-device = Ein weiteres Gerät von dir ist dazugekommen. Warst du das nicht, stoppe es.
device-no-longer-counts = Ein Gerät von { $name } zählt ab jetzt nicht mehr.
this-device-stopped = Dieses Gerät wurde gestoppt: Was du hier einträgst, bleibt hier und erreicht niemanden. Warst du das nicht, frag deinen Coach.
your-device-stopped = Ein Gerät von dir wurde gestoppt.

## Vergessen

only-coaches-forget = Nur ein Coach vergisst jemanden; { $name } ist Athlet. Frag deinen Coach.
take-out-first = { $name } gehört noch zur Crew. Nimm { $name } erst heraus, und warte, bis das Gerät von { $name } noch einmal abgeglichen hat: Dann weiß es davon.
not-yet-heard = Hat das Gerät von { $name } seit dem Herausnehmen nicht abgeglichen, weiß es noch nichts und schickt weiter.
forgotten = Alles, was dieses Gerät von { $name } hatte, ist gelöscht.
their-own-phone = Das Telefon von { $name } behält das Tagebuch von { $name }.
your-other-devices = Deine anderen Geräte haben es noch. Eines, das weg war, sagt es beim nächsten Abgleich: Nimm { $name } auch dort heraus und lösche dann.
backups-and-versions = Sicherungen, und was eine Ablage von gelöschten Dateien aufhebt, sind von hier aus nicht erreichbar.
kept-aside = Aufgehobene beschädigte Datenbanken können es enthalten: { $files }. Lösche sie von Hand, sobald sonst nichts daraus fehlt.
reports-and-exports = Berichte und Exporte, die du gemacht hast, sind deine eigenen Dateien. Lösche sie von Hand.
