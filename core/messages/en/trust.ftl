## Sentences about keys, recovery codes and pairing.

# $sign is what was typed.
code-sign = "{ $sign }" is in no recovery code. A code has { $groups } groups of letters and digits.
code-missing = Type the recovery code that is on your paper.
code-length = A recovery code has { $wanted } letters and digits; these are { $found }.
code-wrong = This is not the code as it was written down. Compare it sign by sign.
no-pairing-code = This is no pairing code.
newer-pairing-code = This pairing code is of a newer version. Update the app.
bad-pairing-code = This pairing code is not as it was made. Scan it again.
two-answered = Two devices answered this code. Start again.
opened-for-another = Another device has answered this code already. Start again with a new one.
not-the-scanned-code = This is not the code you scanned. Stop, and ask for a new one.
