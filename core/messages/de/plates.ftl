## Was an jeder Seite der Stange zu tun ist. Scheiben als „20 + 5 kg“.

nothing-to-change = nichts zu wechseln
put-on = { $plates } auflegen
take-off = { $plates } abnehmen
take-off-put-on = { $off } abnehmen, { $on } auflegen

## Ein Aufwärmsatz, dessen Gewicht nach Gefühl gewählt wird. Danach stehen „× 5“.

light = leicht
light-bell = leichte Kettlebell

## Gewichte, nach denen jemand fragt

# Der Name der Stange und was sie ohne Scheiben wiegt.
bar = { $bar }, leer { $mass }
bar-with-collars = { $bar }, { $mass } und Verschlüsse { $collars }: leer { $both }
# Ein Gewicht mit den Scheiben einer Seite: „60 kg (20 kg je Seite)“.
build = { $load } ({ $plates })
# Alle gefragten Gewichte zusammen.
handled-least = { $plates ->
    [one] je Seite 1 Scheibe aufgelegt oder abgenommen, bis die Stange wieder leer ist; mit weniger geht es nicht
   *[other] je Seite { $plates } Scheiben aufgelegt oder abgenommen, bis die Stange wieder leer ist; mit weniger geht es nicht
}
# $alone: dasselbe, wenn jedes Gewicht für sich aufgelegt wird, mehr als $plates.
handled-least-together = { $plates ->
    [one] je Seite 1 Scheibe aufgelegt oder abgenommen, bis die Stange wieder leer ist; { $alone }, wenn jedes Gewicht für sich aufgelegt wird
   *[other] je Seite { $plates } Scheiben aufgelegt oder abgenommen, bis die Stange wieder leer ist; { $alone }, wenn jedes Gewicht für sich aufgelegt wird
}
handled-at-least = { $plates ->
    [one] je Seite 1 Scheibe aufgelegt oder abgenommen, bis die Stange wieder leer ist; nicht alles wurde durchprobiert, weniger als { $than } geht aber nicht
   *[other] je Seite { $plates } Scheiben aufgelegt oder abgenommen, bis die Stange wieder leer ist; nicht alles wurde durchprobiert, weniger als { $than } geht aber nicht
}

## Warum sich Gewichte nicht auflegen lassen. Sie stehen nach „Gewicht:“.

# $below und $above als „60 kg (20 kg je Seite)“.
between = { $load } lassen sich damit nicht auflegen ({ $bar }); am nächsten sind { $below } und { $above }
too-light = { $load } sind leichter als die leere Stange ({ $bar }); am leichtesten ist { $above }
too-heavy = { $load } sind mehr, als sich hier auflegen lässt ({ $bar }); am schwersten ist { $below }
bar-full = { $load } sind mehr, als auf die Stange passt ({ $bar }); am schwersten ist { $below }, mit höchstens { $plates } Scheiben je Seite
nothing-to-load = keine Scheiben für „{ $bar }“
too-many = höchstens { $most } Gewichte auf einmal; das sind { $found }
name-one = nenne mindestens eines, etwa 92,5kg
above-zero = „{ $typed }“: ein Gewicht muss über null liegen
# $reason sagt, was am Getippten nicht stimmt.
not-a-load = „{ $typed }“: { $reason }
no-bar = hier gibt es keine Stange
# Steht nach dem Namen der Stange. $bars sind die Namen der Stangen, die es gibt.
no-such-bar = Hier gibt es { $bars }.
