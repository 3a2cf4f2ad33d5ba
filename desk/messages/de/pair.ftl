## Koppeln: was als Nächstes zu tippen ist.

next-answer = Danach mit dem Code, den das Mitglied zeigt: holdfast invite CODE
# $carrier ist die Ablage, wie sie getippt wurde.
next-answer-over = Sobald das Mitglied geantwortet hat: holdfast invite --carrier { $carrier }
next-code-over = Die Antwort deines Coachs ist noch nicht da. Noch einmal nachsehen: holdfast join --carrier { $carrier }
waiting = Warte in der Ablage { $carrier } auf die Antwort der anderen Seite. Strg+C beendet das Warten; nichts geht verloren.
next-line = Danach: holdfast invite --line 1, 2, 3 oder none
next-code = Danach mit dem nächsten Code deines Coachs: holdfast join CODE
next-match = Danach: holdfast join --match oder holdfast join --differ
next-match-or-all = Danach: holdfast join --match, mit diesen Einträgen holdfast join --match --all, oder holdfast join --differ
next-all = Um auch sie zu teilen: holdfast join --all
too-long = Dieser Code ist zu lang für ein Bild.
