## Eine Tabelle von Gewichten und wie man sie steckt, eines je Zeile. Kurze Überschriften.

column-load = Gewicht
# Wiederholungen eines Aufwärmsatzes: „5 Wdh.“
column-warm-up = Aufwärmen
column-build = Scheiben
# Was für das nächste Gewicht auf jeder Seite zu tun ist: „5 kg auflegen“.
column-change = je Seite
# Wie viele Scheiben auf einer Seite aufgelegt oder abgenommen werden.
column-moved = bewegt
reps = { $reps ->
    [one] 1 Wdh.
   *[other] { $reps } Wdh.
}
# Das einzige gefragte Gewicht und die Scheiben einer Seite.
only-load = { $load }: { $build }
