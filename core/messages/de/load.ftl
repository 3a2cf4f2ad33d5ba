## Gewichte und Scheiben

# Ein Gewicht in der Einheit des Lesers, dahinter das genaue: „203,9 lb (92,5 kg)“. Mit der Klammer beginnt,
# was bei wenig Platz wegfällt: sie bleibt eine Klammer nach einem Leerzeichen.
exact-behind = { $load } ({ $exact })
# $plates als „20 + 5 kg“.
a-side = { $plates } je Seite
empty-bar = leere Stange

## Warum ein Gewicht so ist. Eine Zeile unter einem Satz, und beim Coach hinter einem Vorschlag: daher „du“
## nur, wo die Athletin gefragt wird. Gewichte haben ihre Einheit, $day als „Di 10. Nov.“.

first-time = erstes Mal: nimm ein leichtes Gewicht, trag es ein und sag, wie viele Wiederholungen noch gegangen wären
say-reserve = Wie viele Wiederholungen wären mit { $load } noch gegangen? Dann bekommt dieser Satz ein Gewicht.
# $reserve Wiederholungen waren noch übrig; nach dem nächsten Satz sollen es $leave sein.
found = erstes Mal: { $load } × { $reps }, { $reserve } übrig; damit sollten { $leave } übrig bleiben
found-capped = erstes Mal: { $load } × { $reps }, { $reserve } übrig; höchstens ein Viertel mehr, damit sollten { $leave } oder mehr übrig bleiben
percent = { $percent } % von { $max }, dem unteren Ende des geschätzten 1RM
percent-low = neues Satzschema: { $percent } % von { $max }, dem unteren Ende des geschätzten 1RM
reserve = { $reps ->
    [one] nach 1 Wiederholung sollten { $leave } übrig sein, bei { $max }, dem unteren Ende des geschätzten 1RM
   *[other] nach { $reps } Wiederholungen sollten { $leave } übrig sein, bei { $max }, dem unteren Ende des geschätzten 1RM
}
reserve-low = { $reps ->
    [one] neues Satzschema: nach 1 Wiederholung sollten { $leave } übrig sein, bei { $max }, dem unteren Ende des geschätzten 1RM
   *[other] neues Satzschema: nach { $reps } Wiederholungen sollten { $leave } übrig sein, bei { $max }, dem unteren Ende des geschätzten 1RM
}
# Verbindet eine der Zeilen oben mit einer der beiden unten, oder das Gewicht des Plans mit der zweiten.
and-then = { $first }; { $second }
lighter-after = { $weeks ->
    [one] leichter nach { $weeks } Woche Trainingspause
   *[other] leichter nach { $weeks } Wochen Trainingspause
}
at-most-a-tenth = höchstens ein Zehntel über { $load } vom letzten Mal
fixed = so im Plan
fixed-other = im Plan: { $load }
fixed-nearest = im Plan: { $load }; näher kommt diese Stange nicht
free = deine Wahl

step = { $by } mehr: { $last } am { $day }, alle Wdh. geschafft
step-capped = { $by } mehr, der größte erlaubte Schritt: { $last } am { $day }, alle Wdh. geschafft
# Der offene Satz ging weit genug über sein Ziel hinaus.
earned = { $by } mehr: { $last } am { $day }, { $reps } Wdh. im offenen Satz statt { $asked }
earned-capped = { $by } mehr, der größte erlaubte Schritt: { $last } am { $day }, { $reps } Wdh. im offenen Satz statt { $asked }
missed = noch einmal dasselbe: { $last } am { $day }, in Satz { $set } nur { $reps } von { $asked }
back-off = { $percent } % leichter: { $last } am { $day }, zweimal in Folge nicht geschafft
# Der Raum hat nichts Leichteres.
back-off-lightest = das leichteste Gewicht hier: { $last } am { $day }, zweimal in Folge nicht geschafft
eased-in = { $weeks ->
    [one] { $percent } % leichter nach { $weeks } Woche Trainingspause: { $last } am { $day }
   *[other] { $percent } % leichter nach { $weeks } Wochen Trainingspause: { $last } am { $day }
}
eased-in-lightest = { $weeks ->
    [one] das leichteste Gewicht hier nach { $weeks } Woche Trainingspause: { $last } am { $day }
   *[other] das leichteste Gewicht hier nach { $weeks } Wochen Trainingspause: { $last } am { $day }
}
unfinished = noch einmal dasselbe: { $last } am { $day }, { $done } von { $sets ->
    [one] { $sets } Satz gemacht
   *[other] { $sets } Sätzen gemacht
}
# $flag als „Knie 5/10, gemeldet Di 10. Nov.“.
flagged = nicht schwerer: { $flag }
flagged-from = nicht über { $last }: { $flag }
no-step = bleib bei { $last } und mach in jedem Satz eine Wdh. mehr: das nächste Gewicht hier ist { $above }, erlaubt sind höchstens { $allowed } (letztes Mal { $day })
no-heavier = bleib bei { $last } und mach in jedem Satz eine Wdh. mehr: schwerer geht es in diesem Raum nicht (letztes Mal { $day })
next-lighter = das nächstleichtere Gewicht: { $last } vom { $day } gibt es in diesem Raum nicht

coach-accepted = vom Coach angenommen
coach-changed = vom Coach geändert
coach-refused = Coach bleibt beim letzten Mal
# $what als „vom Coach geändert“.
coach-last-time = { $what }; letztes Mal { $load }
# $what als „vom Coach geändert (letztes Mal 60 kg)“, $words, wie der Coach sie schrieb.
coach-said = { $what }: „{ $words }“

# Warum eine Variante vorgeschlagen wird. $pattern als „Kniebeuge“.
spared = { $sets ->
    [one] { $pattern }: am Tag davor hart trainiert ({ $sets } Satz); diese Variante entlastet
   *[other] { $pattern }: am Tag davor hart trainiert ({ $sets } Sätze); diese Variante entlastet
}
