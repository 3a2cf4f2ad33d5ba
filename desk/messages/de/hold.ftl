## Eine einzelne Dehnung mit der Uhr: `holdfast hold`.

# Steht einmal da, bevor die Uhr läuft.
caution = Hör auf bei stechendem Schmerz, Taubheit oder Kribbeln. Bleibt der Schmerz, geh zum Arzt oder zur Physiotherapie.
# Steht oben auf dem Bildschirm.
title = { $seconds } s halten
# Die letzte Zeile: wirklich gehaltene Sekunden, ein Teil je Seite.
held = gehalten: { $sides }
held-side = { $side } { $seconds }
# Steht zwischen den Seiten.
comma = { ", " }

## Warum eine Seite kürzer ist. $held ist die Seite mit ihren Sekunden.

skipped = { $held } (übersprungen)
stopped-early = { $held } (vorzeitig abgebrochen)
not-all-seen = { $held } (nicht alles gesehen)

## Was Tasten tun

pause = anhalten
resume = weiter
longer = 15 s mehr
next = nächste
stop = abbrechen
