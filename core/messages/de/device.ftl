## Anfangen.

# device.json ist der Name einer Datei.
database-without-identity = In diesem Ordner liegt eine Datenbank, aber keine device.json. Leg die Datei zurück oder wähle einen anderen Ordner.
folder-taken = { $folder } gehört schon { $name }. Wähle einen anderen Ordner.
name-length = Ein Name hat 1 bis { $most } Zeichen und keinen Zeilenumbruch.
# Für alle, die eine App bauen.
more-random-bytes = Schlüssel entstehen aus 80 Zufallsbytes; es kamen { $found }.

## Öffnen.

nobody-started = In diesem Ordner ist noch kein Gerät eingerichtet. Richte es zuerst für einen Coach oder Athleten ein.
# Steht hinter dem Pfad der Datei; $error ist, was beim Lesen gesagt wurde.
identity-unreadable = Das ist nicht, was Holdfast geschrieben hat ({ $error }). Leg eine Kopie der Datei zurück.
# In jenen Klammern.
identity-altered = sie ist nicht so, wie sie geschrieben wurde
# A home folder from before leaves were sealed.
home-without-keys = Diesen Ordner hat eine frühere Version angelegt, bevor Protokolle versiegelt wurden. Damit geht es nicht weiter: Wähle einen neuen Ordner und fang neu an.
# Said of a file, after its name.
keystore-bytes = Der Schlüssel des Schlüsselspeichers hat { $wanted } Bytes; es kamen { $found }.
keystore-does-not-open = Der Schlüsselspeicher des Telefons öffnet die Schlüssel dieses Geräts nicht. Starte das Telefon neu und versuch es noch einmal. Hilft das nicht, fang mit deinem Wiederherstellungscode in einem neuen Ordner an.
keys-unreadable = Die Schlüssel dieses Geräts fehlen oder sind verändert. Leg die Datei aus einer Kopie zurück.

# $process ist die Nummer des Programms, das den Ordner offen hat.
home-is-held = Ein anderes Holdfast (Prozess { $process }) hat diesen Ordner offen. Schließ es und versuch es noch einmal.
renewed = Dieser Ordner wurde kopiert oder kommt aus einer Sicherung. Er ist jetzt ein weiteres Gerät; alles darin bleibt erhalten.
# Steht zwischen zwei dieser Sätze.
between-sentences = { " " }

## Wiederherstellen.

# $aside ist der neue Name der Datei.
rebuilt-damaged = Die Datenbank war beschädigt und bleibt als { $aside } erhalten. Eine neue wurde angelegt: { $leaves ->
    [one] 1 Eintrag kam aus den eigenen Dateien dieses Geräts zurück
   *[other] { $leaves } Einträge kamen aus den eigenen Dateien dieses Geräts zurück
}{ $salvaged ->
    [0] .
    [one] , dazu 1 Eintrag aus der beschädigten Datenbank, der in keiner davon stand.
   *[other] , dazu { $salvaged } Einträge aus der beschädigten Datenbank, die in keiner davon standen.
}
rebuilt-missing = Die Datenbank oder ein Teil davon fehlte. { $entries ->
    [one] 1 Eintrag kam aus den eigenen Dateien dieses Geräts zurück.
   *[other] { $entries } Einträge kamen aus den eigenen Dateien dieses Geräts zurück.
}
# $said ist einer der Sätze oben. Der Befehl steht so da, wie er getippt wird.
rebuilt-unopened = { $said } { $files ->
    [one] 1 weitere Datei lässt sich nur mit deinem Wiederherstellungscode öffnen. Richte damit einen neuen Ordner ein, dann ist alles wieder da: `holdfast restore --home ORDNER --carrier ABLAGE`.
   *[other] { $files } weitere Dateien lassen sich nur mit deinem Wiederherstellungscode öffnen. Richte damit einen neuen Ordner ein, dann ist alles wieder da: `holdfast restore --home ORDNER --carrier ABLAGE`.
}
whole-again = Sie war beschädigt und ist wieder ganz.
# $repaired ist einer der Sätze darüber.
repaired-do-again = { $repaired } Deine letzte Eingabe wurde nicht gespeichert. Mach sie noch einmal.
# Was eine Prüfung der Datenbank gefunden hat.
entry-altered = ein Eintrag ist nicht so, wie er geschrieben wurde
tables-altered = die Tabellen sind nicht so, wie sie angelegt wurden

## Wer was darf. $name ist die Person, der das Gerät gehört.

only-athletes-run-sessions = Nur Athleten trainieren Einheiten; dies ist das Coach-Gerät von { $name }.
only-athletes-correct = Nur Athleten korrigieren ihre Sätze; dies ist das Coach-Gerät von { $name }. Ein Coach kann Sätze auslassen.
only-coaches-leave-out = Nur Coaches lassen Sätze aus; dies ist das Athletengerät von { $name }. Korrigiere den Satz oder nimm ihn zurück.
only-coaches = Das machen nur Coaches; dies ist das Athletengerät von { $name }.
only-coaches-see-the-board = Nur Coaches sehen den Überblick; dies ist das Athletengerät von { $name }.
only-coaches-see-others = Nur Coaches sehen die Seiten anderer; dies ist das Athletengerät von { $name }.
only-coaches-publish = Nur Coaches veröffentlichen Pläne; dies ist das Athletengerät von { $name }.
only-coaches-answer = Nur Coaches beantworten Vorschläge; dies ist das Athletengerät von { $name }.
only-coaches-clear = Nur Coaches heben die Meldung eines Mitglieds auf; dies ist das Athletengerät von { $name }.

## Zeit.

clock-not-set = Die Uhr des Geräts steht außerhalb der Jahre 1970 bis 9999. Stell sie richtig.
