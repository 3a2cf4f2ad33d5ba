## Was zwischen einem Gerät und seiner Ablage steht. $carrier ist eine Adresse, ohne Benutzer und Passwort.

wrong-password = { $carrier } nimmt diesen Benutzernamen und dieses Passwort nicht an, oder der Benutzer darf dort nicht lesen. Prüfe beides; viele Server wollen ein Passwort, das für eine App angelegt ist.
wrong-key = { $carrier } nimmt diesen Schlüssel nicht an, oder der Schlüssel darf dort nicht lesen. Prüfe die Schlüssel-ID, den geheimen Schlüssel und was der Schlüssel darf.
# $ways sind Namen wie Digest.
other-sign-in = { $carrier } verlangt eine andere Art der Anmeldung ({ $ways }). Holdfast meldet sich mit Benutzername und Passwort an (Basic). Schalte das auf dem Server ein.
not-there = { $carrier } gibt es nicht. Prüfe die Adresse, oder lege diesen Ordner oder Bucket zuerst auf dem Server an.
read-only = Du kannst { $carrier } lesen, aber dort nichts ablegen. Bitte den Betreiber um das Recht zu schreiben. Dein Log ist auf diesem Gerät gesichert.
full = { $carrier } ist voll. Schaffe dort Platz und gleiche dann noch einmal ab. Dein Log ist auf diesem Gerät gesichert.
upload-limit = { $carrier } nimmt keine Datei mit { $bytes } Bytes an. Setze die Grenze des Servers für Uploads auf 4 MiB.
# $to ist eine Adresse, die der Server genannt hat.
moved = { $carrier } leitet weiter nach { $to }. Dein Passwort wurde nicht dorthin geschickt. Wenn die Ablage umgezogen ist, stelle ihre neue Adresse ein.
# $region ist ein Name, den der Server genannt hat.
other-region = Der Bucket bei { $carrier } liegt in der Region { $region }. Stelle diese Region für die Ablage ein.
clock-off = { $carrier } lehnt die Uhrzeit dieses Geräts ab. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
clock-ahead-minutes = { $minutes ->
    [one] Die Uhr dieses Geräts geht { $minutes } Minute vor gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
   *[other] Die Uhr dieses Geräts geht { $minutes } Minuten vor gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
}
clock-behind-minutes = { $minutes ->
    [one] Die Uhr dieses Geräts geht { $minutes } Minute nach gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
   *[other] Die Uhr dieses Geräts geht { $minutes } Minuten nach gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
}
clock-ahead-hours = { $hours ->
    [one] Die Uhr dieses Geräts geht { $hours } Stunde vor gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
   *[other] Die Uhr dieses Geräts geht { $hours } Stunden vor gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
}
clock-behind-hours = { $hours ->
    [one] Die Uhr dieses Geräts geht { $hours } Stunde nach gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
   *[other] Die Uhr dieses Geräts geht { $hours } Stunden nach gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
}
clock-ahead-days = { $days ->
    [one] Die Uhr dieses Geräts geht { $days } Tag vor gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
   *[other] Die Uhr dieses Geräts geht { $days } Tage vor gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
}
clock-behind-days = { $days ->
    [one] Die Uhr dieses Geräts geht { $days } Tag nach gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
   *[other] Die Uhr dieses Geräts geht { $days } Tage nach gegenüber { $carrier }. Stelle Datum und Uhrzeit auf automatisch und versuche es noch einmal.
}
# $status ist eine Nummer von HTTP.
busy = { $carrier } ist überlastet oder gestört (Status { $status }). Versuche es später noch einmal. Dein Log ist auf diesem Gerät gesichert.
not-webdav = Unter { $carrier } antwortet etwas anderes als ein WebDAV-Ordner. Prüfe die Adresse. Melde dich in einem öffentlichen Netz zuerst beim Netz an.
not-s3 = Unter { $carrier } antwortet etwas anderes als ein S3-kompatibler Server. Prüfe die Adresse. Melde dich in einem öffentlichen Netz zuerst beim Netz an.
too-large = { $carrier } hat mehr als { $largest } Bytes geschickt, mehr als Holdfast liest. Davon wurde nichts übernommen. Räume Dateien aus diesem Ordner, die nicht von Holdfast sind.
cannot-move = { $carrier } kann Dateien nicht umbenennen, also lässt sich keine Datei sicher ablegen. Erlaube auf dem Server die Methode MOVE.
# $status ist eine Nummer von HTTP.
refused = { $carrier } hat mit Status { $status } geantwortet, womit Holdfast nicht rechnet. Frage den Betreiber des Servers.
interrupted = Die Verbindung zu { $carrier } ist abgebrochen. Versuche es noch einmal; was schon abgelegt war, bleibt dort.
# $said ist, was das System über das Zertifikat gesagt hat, in seinen eigenen Worten.
certificate = Dem Zertifikat von { $carrier } ist nicht zu trauen: { $said }. Prüfe das Datum dieses Geräts und frage dann den Betreiber. Es wurde nichts geschickt.
# Für alle, die eine App bauen.
no-such-name = So heißt keine Datei einer Ablage.

## Was an den Einstellungen einer Ablage nicht stimmt.

no-path = Der Pfad des Ordners fehlt.
no-scheme = Die Adresse muss mit https:// beginnen.
no-host = Die Adresse nennt keinen Server. Schreibe sie wie https://dateien.example.org/keller.
host-letters = Der Name des Servers hat andere Buchstaben als a bis z. Schreibe ihn in der Form, die mit xn-- beginnt.
no-such-port = Der Port in der Adresse muss eine Zahl von 1 bis 65535 sein.
user-in-address = Die Adresse enthält einen Benutzernamen oder ein Passwort. Gib beides getrennt von der Adresse an, damit es nirgends zu sehen ist.
query-in-address = Die Adresse muss vor ihrem Fragezeichen oder Rautezeichen enden.
no-such-path = Der Pfad in der Adresse ist nicht brauchbar. Schreibe ihn ohne .., Backslash und kodierten Schrägstrich.
long-address = Die Adresse ist länger als 2.000 Zeichen.
# $server ist eine Adresse.
unencrypted = { $server } ist nicht verschlüsselt: Wer auf dem Weg mithört, liest das Passwort. Nimm https://, oder sage ausdrücklich, dass es unverschlüsselt sein soll.
no-such-user = Der Benutzername muss 1 bis 256 Zeichen haben und keinen Doppelpunkt.
no-such-password = Das Passwort fehlt oder enthält Zeichen, die kein Passwort hat.
no-such-region = Die Region muss 1 bis 64 Buchstaben, Ziffern und Bindestriche haben. Nimm us-east-1, wenn der Server keine hat.
no-such-bucket = Ein Bucket kann nicht „{ $bucket }“ heißen. Sein Name hat 3 bis 63 kleine Buchstaben, Ziffern, Bindestriche und Punkte.
needs-path-style = Dieser Bucket kann nicht vor dem Namen des Servers stehen. Stelle ihn in den Pfad.
no-such-prefix = Das Präfix, ein Ordner im Bucket, darf Buchstaben, Ziffern, Bindestriche, Punkte und Schrägstriche haben, höchstens 200.
no-such-key-id = Die Schlüssel-ID muss 1 bis 128 Buchstaben und Ziffern haben.
no-such-secret = Der geheime Schlüssel fehlt oder enthält Zeichen, die kein Schlüssel hat.

## Was kein Fehler ist.

offline = Keine Verbindung zu { $carrier }. Dein Log ist auf diesem Gerät gesichert; gleiche ab, sobald du online bist.
