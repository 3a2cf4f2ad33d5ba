## Pairing: what to type next.

next-answer = Then, with the code the member shows: holdfast invite CODE
next-line = Then: holdfast invite --line 1, 2, 3 or none
next-code = Then, with the next code your coach shows: holdfast join CODE
next-match = Then: holdfast join --match, or holdfast join --differ
too-long = This code is too long for a picture.
