# Die Tabellen einer Plandatei und die Felder darin. Wörter in Backticks sind Text der Datei.

## Ein unbekanntes Feld. Was möglich ist, steht in einer Zeile darunter.

plan-has-no = Ein Plan hat kein Feld `{ $key }`.
block-has-no = Ein Block hat kein Feld `{ $key }`.
kit-has-no = Die Ausstattung hat kein Feld `{ $key }`.
bar-has-no = Eine Stange hat kein Feld `{ $key }`.
plate-has-no = Eine Scheibe hat kein Feld `{ $key }`.
bell-has-no = Eine Kettlebell hat kein Feld `{ $key }`.
machine-has-no = Ein Gerät hat kein Feld `{ $key }`.
stack-has-no = Ein Gewichtsblock hat kein Feld `{ $key }`.
warm-up-has-no = `warm-up` hat kein Feld `{ $key }`.
easy-has-no = `easy` hat kein Feld `{ $key }`.
movement-has-no = Eine Übung hat kein Feld `{ $key }`.
option-has-no = Eine Variante hat kein Feld `{ $key }`.
stretch-has-no = Eine Dehnung hat kein Feld `{ $key }`.
day-has-no = Ein Trainingstag hat kein Feld `{ $key }`.
piece-has-no = Ein Teil hat kein Feld `{ $key }`.
strength-has-no = Ein Kraftteil hat kein Feld `{ $key }`.
interval-has-no = Ein Intervallteil hat kein Feld `{ $key }`.
hold-has-no = Ein Dehnteil hat kein Feld `{ $key }`.
note-has-no = Eine Notiz hat kein Feld `{ $key }`.
station-has-no = Eine Station hat kein Feld `{ $key }`.
load-has-no = Ein Gewicht hat kein Feld `{ $key }`.
step-has-no = Ein Gewicht mit `rule = "step"` hat kein Feld `{ $key }`.
percent-has-no = Ein Gewicht mit `rule = "percent"` hat kein Feld `{ $key }`.
reserve-has-no = Ein Gewicht mit `rule = "reserve"` hat kein Feld `{ $key }`.
fixed-has-no = Ein Gewicht mit `rule = "fixed"` hat kein Feld `{ $key }`.
free-has-no = Ein Gewicht mit `rule = "free"` hat kein Feld `{ $key }`.

## Ein Feld fehlt. Was zu ergänzen ist, steht in einer Zeile darunter.

plan-needs = Ein Plan braucht `{ $key }`.
block-needs = Ein Block braucht `{ $key }`.
kit-needs = Die Ausstattung braucht `{ $key }`.
bar-needs = Eine Stange braucht `{ $key }`.
plate-needs = Eine Scheibe braucht `{ $key }`.
bell-needs = Eine Kettlebell braucht `{ $key }`.
machine-needs = Ein Gerät braucht `{ $key }`.
stack-needs = Ein Gewichtsblock braucht `{ $key }`.
warm-up-needs = `warm-up` braucht `{ $key }`.
easy-needs = `easy` braucht `{ $key }`.
movement-needs = Eine Übung braucht `{ $key }`.
option-needs = Eine Variante braucht `{ $key }`.
stretch-needs = Eine Dehnung braucht `{ $key }`.
day-needs = Ein Trainingstag braucht `{ $key }`.
piece-needs = Ein Teil braucht `{ $key }`.
strength-needs = Ein Kraftteil braucht `{ $key }`.
interval-needs = Ein Intervallteil braucht `{ $key }`.
hold-needs = Ein Dehnteil braucht `{ $key }`.
note-needs = Eine Notiz braucht `{ $key }`.
station-needs = Eine Station braucht `{ $key }`.
load-needs = Ein Gewicht braucht `{ $key }`.
step-needs = Ein Gewicht mit `rule = "step"` braucht `{ $key }`.
percent-needs = Ein Gewicht mit `rule = "percent"` braucht `{ $key }`.
reserve-needs = Ein Gewicht mit `rule = "reserve"` braucht `{ $key }`.
fixed-needs = Ein Gewicht mit `rule = "fixed"` braucht `{ $key }`.
