### Was das System eines Telefons neben den Bildschirmen gesagt haben will: Mitteilungen, Rechte, Ordner.

# Die Art der Mitteilung, in den Einstellungen des Telefons.
clock-channel = Laufende Uhr
# Auf dem Sperrbildschirm, für alle lesbar.
clock-runs = Eine Uhr läuft.
clock-is-paused = Die Uhr steht.
# Wenn das System die Uhr im Hintergrund nicht laufen lässt.
cues-here-only = Signale kommen nur, solange dieser Bildschirm offen ist. Lass ihn offen, bis die Uhr abgelaufen ist.
# Mitteilungen wurden abgelehnt.
no-notification = Mitteilungen sind aus, deshalb zeigt der Sperrbildschirm keine Uhr. Signale kommen trotzdem. In den Einstellungen des Telefons kannst du Mitteilungen einschalten.
# Keine Sprachausgabe, oder keine Stimme für die Sprache.
no-speech = Dieses Telefon hat keine Stimme für diese Sprache. Signale kommen als Ton und Vibration. In den Einstellungen des Telefons kannst du eine Stimme installieren.
# $place ist der Name eines Ordners.
folder-gone = Holdfast darf { $place } nicht mehr benutzen. Wähle den Ordner noch einmal aus. Dein Log ist auf diesem Telefon gesichert.
folder-full = In { $place } ist kein Platz mehr. Schaffe dort Platz und gleiche dann noch einmal ab. Dein Log ist auf diesem Telefon gesichert.
folder-loading = { $place } lädt noch. Versuche es in einer Minute noch einmal. Dein Log ist auf diesem Telefon gesichert.
# $what ist, was das System gesagt hat.
folder-refused = Mit { $place } ließ sich eine Datei nicht austauschen: { $what }. Versuche es noch einmal, oder wähle einen anderen Ordner. Dein Log ist auf diesem Telefon gesichert.
# Eine Datei, die nach dem Schreiben noch einmal gelesen wurde.
file-torn = Die Datei ist nicht ganz angekommen. Gleiche noch einmal ab.
# Was im Hintergrund nicht gelang; $place ist ein Ordner oder eine Adresse, $what ein Satz.
exchange-unfinished = Der letzte Abgleich mit { $place } wurde nicht fertig. { $what }
# Rund um die Kamera.
scan-here = Richte die Kamera auf den Code des anderen Telefons.
no-camera-right = Holdfast darf die Kamera nicht benutzen. Erlaube es in den Einstellungen des Telefons, oder tippe den Code ein.
no-camera = Die Kamera lässt sich gerade nicht benutzen. Schließe andere Apps, die sie benutzen, oder tippe den Code ein.
# Etwas, das auf dem Telefon selbst liegen soll, hatte keinen Platz.
phone-full = Auf diesem Telefon ist kein Platz mehr. Lösche etwas und versuche es noch einmal. Dein Log ist auf diesem Telefon gesichert.
# Das System hat keine App dafür.
no-chooser = Dieses Telefon hat keine App, um Dateien auszuwählen. Installiere einen Dateimanager.
no-receiver = Keine App auf diesem Telefon nimmt diese Datei an.
# $name ist der Name einer Datei.
file-unreadable = { $name } lässt sich nicht lesen. Wähle die Datei noch einmal aus.
file-large = { $name } ist zu groß für einen Plan. Wähle eine andere Datei.
# Die Datei mit den Ablagen ist beschädigt.
carriers-damaged = Die Liste der Ordner und Server war beschädigt und ist jetzt leer. Füge sie noch einmal hinzu. Dein Log ist auf diesem Telefon gesichert.
# Das Passwort oder der geheime Schlüssel eines Servers liegt im Schlüsselspeicher des Telefons.
password-gone = Das Telefon hat das Passwort oder den Schlüssel für { $place } verloren. Entferne diesen Server und füge ihn noch einmal hinzu.
