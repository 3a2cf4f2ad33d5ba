## Sätze, wie sie eingetragen wurden. Was man in einer Shell tippt, bleibt, wie es ist.

# Hinter dem Namen eines Teils in der Liste.
set = Satz { $set }
none = Kein Satz ist eingetragen.
# $date ist etwa 2026-11-03.
how-to-correct = Einen korrigieren: holdfast correct { $date } { $piece } { $set } "67,5 x 5"; oder stimmt, oder nichts
how-to-leave-out = Einen auslassen: holdfast leave-out { $name } { $date } { $piece } { $set }
# An einen Coach, der korrigiert: $reason sagt, dass das nur Athleten tun, $typed ist ein Befehl.
coach-leaves-out = { $reason } Tippe: { $typed }
leave-out = holdfast leave-out NAME { $date } { $piece } { $set }

on-or-sessions = --on und --sessions passen nicht zusammen. Nenne ein Datum oder wie viele Einheiten.

## Was aus einem Satz wurde

# $date ist etwa „Di 3. Nov.“.
name = { $piece } Satz { $set } am { $date }
corrected = { $set }: { $now } (vorher { $before })
# $typed ist ein Befehl.
corrected-still-odd = { $set }: { $now } (vorher { $before }). Wenn es stimmt: { $typed }
correct-right = holdfast correct { $date } { $piece } { $set } stimmt
confirmed = { $set }: { $done }, bestätigt. Er zählt.
# $date als „2026-11-10“.
taken-back = { $set }: zurückgenommen (vorher { $before }). Doch eintragen: `session --on { $date }`.
left-out = { $set }: { $done }. Aus ihm wird nichts vorgeschlagen.
counts-again = { $set }: { $done }. Er zählt wieder.

## 1RM

max-taken-back = Zurückgenommen.
# $why sagt, was daran nicht stimmt.
wrong-load = „{ $load }“ ist kein Gewicht: { $why } Tippe ein Gewicht mit Einheit, etwa 100kg; oder nichts.
