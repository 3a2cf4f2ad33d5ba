### Der Überblick des Coachs im Terminal.

## Der Überblick

# Steht in Farbe vor einer Zeile über Dateien, die nicht ankamen oder nicht lesbar sind.
files = Dateien:
nobody = Noch ist nichts angekommen. Veröffentliche einen Plan. Haben die Mitglieder abgeglichen, mach noch einmal einen Abgleich.
next-loads = Nächste Gewichte

## Die Zeile eines Mitglieds, hinter dem Namen: drei Teile

row = { $sessions }; { $last }; { $load }
# Von den Einheiten, die bis heute geplant waren.
trained = { $planned ->
    [0] noch keine Einheit geplant
    [one] { $trained } von 1 Einheit
   *[other] { $trained } von { $planned } Einheiten
}
# Es waren mehr als geplant.
trained-more = { $trained ->
    [one] 1 Einheit, { $planned } geplant
   *[other] { $trained } Einheiten, { $planned } geplant
}
last-trained = zuletzt { $date }
never-trained = noch nie trainiert
week-load = Belastung, letzte 7 Tage: { $load }

## Ein Vorschlag: Gewichte Satz für Satz, bisher und beim nächsten Mal

proposal = { $movement }: { $last } -> { $next }
# Mit der Antwort des Coachs.
proposal-accepted = { $movement } (angenommen): { $last } -> { $next }
proposal-changed = { $movement } (geändert): { $last } -> { $next }
proposal-refused = { $movement } (abgelehnt): { $last } -> { $next }

## Die Wiederholungen eines Satzschemas, etwa „8-6-5“

# Der letzte Satz ist offen: „8-6-5 oder mehr“.
open-scheme = { $reps } oder mehr
no-scheme = nicht geplant
