## Wenn ein Warnzeichen angekreuzt ist. Das erste steht allein, wo für mehr kein Platz ist.

stop-now = Hör sofort auf und hol dir notärztliche Hilfe.

## Wenn Beschwerden gemeldet werden

leave-movement = Lass diese Übung heute weg. Eine Variante, die nicht wehtut, ist in Ordnung.
# Where no movement is named.
leave-what-hurts = Lass heute alles aus, wobei es wehtut.
go-lighter = Leichter weiter oder eine Variante. Wird es schlimmer, hör auf.
# Die Warnzeichen, die zum Rücken gehören.
back-signs = Neue Taubheit zwischen den Beinen, neue Probleme mit Blase oder Darm, ein schwaches oder taubes Bein: sofort in die Notaufnahme.
# Die Zeichen dafür, dass Muskelgewebe zerfällt.
muscle-signs = Bei Schmerzen weit über den üblichen Muskelkater hinaus, oder wenn in den nächsten Tagen Schwäche oder dunkler Urin dazukommt: hör auf und hol dir sofort ärztliche Hilfe.
loads-stay = Die Gewichte für diese Übung bleiben, wie sie sind, bis du oder dein Coach die Meldung aufhebt. Lass Schmerzen, die bleiben, ärztlich oder physiotherapeutisch abklären.
loads-gone = Für diese Übung gibt es kein Gewicht, bis du oder dein Coach die Meldung aufhebt. Lass Schmerzen, die bleiben, ärztlich oder physiotherapeutisch abklären.
# Where no movement is named.
loads-held = Wo eine Übung diese Stelle belastet, wird es nicht schwerer, bis du oder dein Coach die Meldung aufhebt. Lass Schmerzen, die bleiben, ärztlich oder physiotherapeutisch abklären.
loads-gone-there = Was diese Stelle belastet, hat kein Gewicht, und auch sonst wird nichts schwerer, bis du oder dein Coach die Meldung aufhebt. Lass Schmerzen, die bleiben, ärztlich oder physiotherapeutisch abklären.

## Die üblichen Hinweise, wo das Risiko ist und in jedem Bericht

never-diagnoses = Holdfast zählt und schlägt vor. Es kennt dich nicht und stellt nie eine Diagnose.
stop-on = Hör auf bei stechenden oder ausstrahlenden Schmerzen, Taubheit, Schwäche, Schwindel oder Schmerzen in der Brust.
safety-bars = Schwere Sätze brauchen Sicherheitsstangen oder jemanden, der dich sichert. Die Regeln des Raums gehen vor.
see-a-doctor = Lass Schmerzen, die bleiben, ärztlich oder physiotherapeutisch abklären. Lass dich auch vor dem Einstieg nach Krankheit, Verletzung oder Schwangerschaft ärztlich beraten.
