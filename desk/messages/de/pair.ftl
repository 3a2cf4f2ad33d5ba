## Koppeln: was als Nächstes zu tippen ist.

next-answer = Danach mit dem Code, den das Mitglied zeigt: holdfast invite CODE
next-line = Danach: holdfast invite --line 1, 2, 3 oder none
next-code = Danach mit dem nächsten Code deines Coachs: holdfast join CODE
next-match = Danach: holdfast join --match oder holdfast join --differ
next-match-or-all = Danach: holdfast join --match, mit diesen Einträgen holdfast join --match --all, oder holdfast join --differ
next-all = Um auch sie zu teilen: holdfast join --all
too-long = Dieser Code ist zu lang für ein Bild.
