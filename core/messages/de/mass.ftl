## Warum ein Text kein Gewicht ist: ein Gewicht oder eine Scheibe, wie jemand es eintippt.

not-a-mass = Schreib ein Gewicht als Zahl mit Einheit, zum Beispiel „92,5 kg“ oder „205 lb“.
# $number steht da, wie es eingetippt wurde.
mass-without-unit = Schreib die Einheit dazu: „{ $number } kg“ oder „{ $number } lb“.
mass-too-fine = Ein Gewicht hat höchstens drei Nachkommastellen.
mass-too-large = Ein Gewicht ist höchstens 2000 kg oder 4000 lb.
