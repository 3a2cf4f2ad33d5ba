## Koppeln: was als Nächstes zu tippen ist.

next-answer = Danach mit dem Code, den das Mitglied zeigt: holdfast invite CODE
next-line = Danach: holdfast invite --line 1, 2, 3 oder none
next-code = Danach mit dem nächsten Code deines Coachs: holdfast join CODE
next-match = Danach: holdfast join --match oder holdfast join --differ
too-long = Dieser Code ist zu lang für ein Bild.
