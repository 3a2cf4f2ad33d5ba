## Warum eine versiegelte Datei liegen blieb. Steht hinter dem Namen der Datei.

not-sealed-so = Diese Datei ist nicht so versiegelt, wie Holdfast versiegelt.
not-for-this-device = Diese Datei ist für andere versiegelt.
altered = Diese Datei wurde nach dem Versiegeln verändert.
packed-wrongly = Diese Datei lässt sich nicht so auspacken, wie Holdfast packt.
first-line = Die erste Zeile dieser Datei ist nicht von Holdfast.
certificate = Diese Datei trägt ein Zertifikat, das nicht gilt.
signature = Diese Datei ist nicht von dem Gerät unterschrieben, das sie nennt.
not-text = Diese Datei enthält etwas anderes als Text oder ist abgeschnitten.
not-the-writers = Diese Datei nennt einen anderen Absender als den, der unterschrieben hat.
other-thread = Diese Datei gehört zwischen andere Leute als den, der sie geschrieben hat.
other-name = Diese Datei ist nicht die, die ihr Name nennt.
# Für alle, die eine App bauen.
too-many-recipients = Eine Datei für { $found } Schlüssel; sie lässt sich für 1 bis { $most } versiegeln.

## Was an einer Zeile einer Datei nicht stimmt. Steht hinter einem Doppelpunkt; für alle, die in die Datei schauen.

no-such-format = ein Format { $found } gibt es nicht
seen-twice = ein Gerät steht zweimal in `seen`, oder es ist das eigene
no-previous = `previous` ist kein Hash
no-such-count = eine Datei mit { $found } Einträgen kann es nicht geben
numbers-fall = Eintrag { $number } steht hinter einem mit höherer Nummer
unknown-writer = Diese Datei ist von jemandem, den diese Crew nicht kennt. Sie bleibt erhalten und zählt nicht.
removed-device = Diese Datei ist von einem Gerät, das gestoppt oder herausgenommen wurde: Sie ist danach geschrieben, oder es fehlt, worauf sie folgt. Sie bleibt erhalten und zählt nicht.
too-many-devices = Diese Datei ist von einem Gerät mehr, als jemand haben darf. Sie bleibt erhalten und zählt nicht.

## Eine vollständige Prüfung

# $name ist der einer Datei.
file-not-here = { $name }: Die Datei fehlt; der nächste Abgleich holt sie
other-than-kept = { $name }: Im Tagebuch stehen andere Einträge als in dieser Datei
# $sequence zählt, was ein Gerät hochgeladen hat, $hash benennt eines davon.
follows-another = Nummer { $sequence } ({ $hash }) folgt nicht auf die davor: Das Gerät wurde wiederhergestellt oder kopiert
