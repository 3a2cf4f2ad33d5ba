## Was Befehle ausgeben. Was man in eine Shell tippt, bleibt, wie es getippt wird.

## start

# $folder ist der Ordner für die Daten des Geräts.
started-as-coach = { $folder } ist eingerichtet für { $name }, Coach
started-as-athlete = { $folder } ist eingerichtet für { $name }, Athlet
next-for-coach = Weiter mit: holdfast --home { $folder } publish PLAN.toml --carrier ORDNER
then-invite = Danach für jedes Mitglied: holdfast --home { $folder } invite
next-for-athlete = Weiter mit dem Code, den dein Coach zeigt: holdfast --home { $folder } join CODE

## check, publish

no-problems = Keine Fehler gefunden.
# Unter den Hinweisen. Ein Hinweis gilt etwas, das erlaubt und vielleicht nicht gemeint ist.
no-problems-but-notes = { $notes ->
    [one] Keine Fehler gefunden. 1 Hinweis.
   *[other] Keine Fehler gefunden. { $notes } Hinweise.
}
# Steht hinter Datei, Zeile und Spalte eines Hinweises.
note = Hinweis:
# $plan ist der Name des Plans mit seinen Wochen.
published = Veröffentlicht: { $plan }
published-again = Veröffentlicht: { $plan } (ersetzt die frühere Fassung)

## exchange

# Zählt hoch, während Dateien gelesen werden.
files-fetched = Geholte Dateien: { $count }
files-delivered = Abgelegte Dateien: { $count }
# $carrier ist ein Ordner oder der Name eines Servers.
watching = Gleicht alle { $seconds } s mit { $carrier } ab. Strg-C beendet es.
brought = { $files ->
    [0] Nichts Neues abzulegen.
    [one] 1 Datei abgelegt.
   *[other] { $files } Dateien abgelegt.
}
fetched = { $files ->
    [0] Nichts Neues zu holen.
    [one] { $entries ->
        [one] 1 Datei mit 1 neuem Eintrag geholt.
       *[other] 1 Datei mit { $entries } neuen Einträgen geholt.
    }
   *[other] { $entries ->
        [one] { $files } Dateien mit 1 neuem Eintrag geholt.
       *[other] { $files } Dateien mit { $entries } neuen Einträgen geholt.
    }
}
# Steht in Gelb vor dem Namen einer Datei und warum sie nicht gelesen wurde.
left-alone = Nicht angerührt:
left-alone-file = { $name }: { $reason }
left-alone-more = { $files ->
    [one] 1 weitere Datei
   *[other] { $files } weitere Dateien
}

## answer, clear

# $last und $next sind die Gewichte aller Sätze.
answered = { $name }, { $movement }: { $last } -> { $next }
answer-saved = Antwort an { $name } gespeichert.
# $flag als „Knie 4/10 bei Kniebeuge“.
cleared = Aufgehoben: { $flag }
flagged = Gemeldet. Das ist jetzt offen, und das ist zu tun:
# $day als „Di 3. Nov“, $note wie sie gelesen wird: „Für deinen Coach: Griff gerutscht“.
noted = { $day }. { $note }
note-taken-back = Zurückgenommen: { $note }
note-stays = Sie bleibt auf diesem Gerät.
next-exchange = Der nächste Abgleich überträgt das.
# Auf einem Gerät, das gestoppt wurde oder dessen Mensch herausgenommen ist.
stays-on-device = Es bleibt auf diesem Gerät: Von hier geht nichts mehr hinaus.

## report, export

wrote = Geschrieben: { $file }
# Es folgen Dateien, eine je Zeile.
wrote-files = Geschrieben:

## verify, aside

seals = Unterschriften: { $signed }, Dateiketten: { $chains }. Alle stimmen.
unopened = { $files ->
    [one] 1 weitere Datei ist für andere oder für einen Wiederherstellungscode versiegelt und wurde nicht geöffnet.
   *[other] { $files } weitere Dateien sind für andere oder für einen Wiederherstellungscode versiegelt und wurden nicht geöffnet.
}
not-all-well = Alles wurde angesehen, und nicht alles ist in Ordnung:
# $files sind Dateien, die Geräte austauschen.
verified = { $entries ->
    [one] { $files ->
        [one] Alles in Ordnung: 1 Eintrag, 1 Datei.
       *[other] Alles in Ordnung: 1 Eintrag, { $files } Dateien.
    }
   *[other] { $files ->
        [one] Alles in Ordnung: { $entries } Einträge, 1 Datei.
       *[other] Alles in Ordnung: { $entries } Einträge, { $files } Dateien.
    }
}
kept = { $name }: { $entries ->
    [one] 1 Eintrag ist lesbar
   *[other] { $entries } Einträge sind lesbar
}; { $only ->
    [0] alle stehen auch im Journal.
    [one] 1 steht nur dort.
   *[other] { $only } stehen nur dort.
}
nothing-kept = Es wurde keine beschädigte Datenbank aufgehoben.

## Eine Einheit, sobald sie verlassen ist

session-finished = Einheit beendet und gespeichert. { $next }
session-left-open = Einheit bleibt offen. Deine Einträge sind gespeichert; mit `session` geht es weiter.

language-chosen = Holdfast spricht ab jetzt Deutsch mit dir.
language-of-system = Holdfast spricht ab jetzt die Sprache des Systems mit dir.

## carrier

# $place ist ein Ordner oder eine Adresse.
carrier-kept = Ablage „{ $name }“ behalten: { $place }
carrier-is-there = Der Ordner ist da.
carrier-answers = Sie antwortet, und das Passwort stimmt.
# $variable ist eine Variable der Umgebung.
carrier-password = Gib das Passwort ein; es ist nicht zu sehen. Es kann auch in { $variable } stehen.
no-carriers = Keine Ablage behalten. `holdfast carrier add NAME ADRESSE` behält eine.
carrier-removed = Ablage „{ $name }“ vergessen. Dort wurde nichts gelöscht.

## Die Crew

recovery-code = Tippe deinen Wiederherstellungscode ein; er ist nicht zu sehen. Er kann auch in { $variable } stehen.
next-confirm = Dann: holdfast recovery --confirm
next-moved = Dann: holdfast recovery --moved oder holdfast recovery --copied
type-groups = Tippe die Gruppen { $first } und { $second } des Codes auf deinem Papier, mit einem Leerzeichen dazwischen.
device-numbered = Gerät { $number }: { $state }
restored-at = { $folder } ist eingerichtet.
next-for-restored = Als Nächstes: holdfast --home { $folder } crew
deleted-there = { $deleted ->
    [0] In der Ablage lag nichts davon.
    [one] { $deleted } Datei in der Ablage gelöscht.
   *[other] { $deleted } Dateien in der Ablage gelöscht.
}
not-deleted = Nicht gelöscht: { $name }: { $reason }
next-forget = Danach für jede Ablage, die du benutzt hast: holdfast forget --carrier DIR
