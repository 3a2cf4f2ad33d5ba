## Die Demo: was sie erzählt. Namen von Leuten, Tagen und Übungen kommen aus ihrem Plan.

# Steht im Ordner der Demo, damit eine spätere dort wieder spielen darf.
mark = Die Demo darf diesen Ordner überspielen.
# Neben dem Balken, der zeigt, wie weit es ist; $on ist ein Datum in Ziffern.
training = { $name }, { $on }

## Was gespielt wurde

title = Drei Wochen im Bootshauskeller (simulierte Körper, alles andere echt)
published = { $weeks ->
    [one] { $coach } hat einen Plan für 1 Woche veröffentlicht.
   *[other] { $coach } hat einen Plan für { $weeks } Wochen veröffentlicht.
}
carried = { $phones ->
    [one] 1 Gerät hat ihn aus der Ablage geholt, danach trainiert und seine Einträge dort abgelegt.
   *[other] { $phones } Geräte haben ihn aus der Ablage geholt, danach trainiert und ihre Einträge dort abgelegt.
}
files = { $files ->
    [one] In der Ablage liegt jetzt 1 Datei.
   *[other] In der Ablage liegen jetzt { $files } Dateien.
}
# Steht zwischen Namen.
comma = { ", " }

## Was bleibt: Jede Zeile beginnt mit einem Ordner oder einer Datei

left-behind = Das bleibt
devices = { $path }  ein Ordner je Gerät, jeder mit eigener Datenbank
carrier = { $path }  die Dateien, die die Geräte ausgetauscht haben
report = { $path }  der Überblick und die Seiten aller Mitglieder, mit Diagrammen
plan = { $path }  der Plan
# Es folgen Befehle zum Tippen.
to-go-on = So geht es weiter
# Nie zu sehen: Beide Seiten der Demo sind dasselbe Programm.
words-differ = Die Wörter der Demo sind verschieden.
