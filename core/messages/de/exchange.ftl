## Warum eine Datei liegen gelassen wurde. Steht hinter dem Namen der Datei.

foreign = Das ist keine Datei von Holdfast.
too-large = Diese Datei hat { $bytes } Bytes; die von Holdfast haben höchstens { $most }.
torn = Diese Datei ist beschädigt oder noch unterwegs: Ihr Inhalt passt nicht zu ihrem Namen.
# $reason ist aus dem nächsten Abschnitt.
unreadable = Zeile { $line } dieser Datei ist nicht lesbar: { $reason }.
# Beides sind Nummern eines Formats.
newer = Diese Datei hat ein neueres Holdfast geschrieben (Format { $found }; dieses liest Format { $known }). Aktualisiere die App.
other-crew = Diese Datei gehört einer anderen Gruppe.
# $reason ist, was das System gesagt hat, in seinen eigenen Worten.
not-read = Diese Datei lässt sich nicht lesen: { $reason }
not-written = Diese Datei ließ sich nicht ablegen: { $reason }
# Steht, wo sonst der Name einer Datei steht.
whole-folder = Der ganze Ordner
# So viele Dateien wurden geholt und liegen gelassen; $left wurden noch nicht angesehen.
too-many-failed = { $failed } Dateien dort sind nicht zu gebrauchen. { $left } weitere warten auf den nächsten Abgleich.
too-many-files = Hier liegen { $files } Dateien; nur die ersten { $most } wurden angesehen.

## Was an einer Zeile einer Datei nicht stimmt. Steht hinter einem Doppelpunkt, für alle, die in die Datei sehen.

header-too-large = der Kopf ist größer, als ein Kopf sein kann
numbers-too-high = die Nummern sind höher, als je jemand kommt
seen-too-many = { $found } andere Geräte sind genannt; höchstens { $most } sind möglich
wrong-count = { $wanted } Einträge sind angekündigt, gefunden wurden mehr oder weniger
line-too-long = die Zeile hat { $bytes } Bytes; höchstens { $most } passen hinein
too-deep = die Zeile ist tiefer als { $most } Ebenen verschachtelt
number-out-of-range = die Eintragsnummer { $number } ist nicht möglich

## Schritte eines Abgleichs.

# Für alle, die eine App bauen.
none-running = Es läuft kein Abgleich. Beginne zuerst einen.

## Dateien eines Crewmitglieds

taken-along = { $files ->
    [0] Nichts Neues mitzunehmen.
    [one] { $files } Datei mitgenommen. Dein nächster Abgleich liefert sie ab.
   *[other] { $files } Dateien mitgenommen. Dein nächster Abgleich liefert sie ab.
}
bag-full = Für weitere Dateien anderer ist kein Platz. Gleiche erst ab.
