## Sätze über Schlüssel, Wiederherstellungscodes und das Koppeln.

# $sign ist, was getippt wurde.
code-sign = „{ $sign }“ kommt in keinem Wiederherstellungscode vor. Ein Code hat { $groups } Gruppen aus Buchstaben und Ziffern.
code-missing = Tippe den Wiederherstellungscode ein, der auf deinem Papier steht.
code-length = Ein Wiederherstellungscode hat { $wanted } Buchstaben und Ziffern; das sind { $found }.
code-wrong = Das ist nicht der Code, der aufgeschrieben wurde. Vergleiche ihn Zeichen für Zeichen.
no-pairing-code = Das ist kein Code zum Koppeln.
newer-pairing-code = Dieser Code zum Koppeln ist von einer neueren Version. Aktualisiere die App.
bad-pairing-code = Dieser Code zum Koppeln ist nicht so, wie er gemacht wurde. Scanne ihn noch einmal.
two-answered = Zwei Geräte haben auf diesen Code geantwortet. Fang neu an.
opened-for-another = Auf diesen Code hat schon ein anderes Gerät geantwortet. Fang mit einem neuen an.
not-the-scanned-code = Das ist nicht der Code, den du gescannt hast. Hör auf und lass dir einen neuen zeigen.
