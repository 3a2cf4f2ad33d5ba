## Pairing: what to type next.

next-answer = Then, with the code the member shows: holdfast invite CODE
# $carrier is the carrier as it was typed.
next-answer-over = Once the member has answered: holdfast invite --carrier { $carrier }
next-code-over = Your coach's answer is not there yet. Look again: holdfast join --carrier { $carrier }
waiting = Waiting for the other side's answer on { $carrier }. Ctrl+C stops; nothing is lost.
next-line = Then: holdfast invite --line 1, 2, 3 or none
next-code = Then, with the next code your coach shows: holdfast join CODE
next-match = Then: holdfast join --match, or holdfast join --differ
next-match-or-all = Then: holdfast join --match, or with those entries holdfast join --match --all, or holdfast join --differ
next-all = To share them too: holdfast join --all
too-long = This code is too long for a picture.
