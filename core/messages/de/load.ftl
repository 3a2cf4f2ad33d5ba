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
start = erstes Mal: so beginnt der Plan
start-nearest = erstes Mal: der Plan beginnt mit { $load }; näher geht es hier nicht
say-reserve = Wie viele Wiederholungen wären mit { $load } noch gegangen? Dann bekommt dieser Satz ein Gewicht.
too-heavy = keine Wiederholung mit { $last }: nimm ein leichteres Gewicht, trag es ein und sag, wie viele Wiederholungen noch gegangen wären
# $reserve Wiederholungen waren noch übrig; nach dem nächsten Satz sollen es $leave sein.
found = erstes Mal: { $load } × { $reps }, { $reserve } übrig; damit sollten { $leave } übrig bleiben
found-capped = erstes Mal: { $load } × { $reps }, { $reserve } übrig; höchstens ein Viertel mehr, damit sollten { $leave } oder mehr übrig bleiben
# Beide beginnen eine Zeile, danach steht, woher das 1RM kommt.
percent = { $percent } % von { $max }
reserve = { $reps ->
    [one] 1 Wiederholung, nach der { $leave } übrig sein sollten, bei { $max }
   *[other] { $reps } Wiederholungen, nach denen { $leave } übrig sein sollten, bei { $max }
}
other-reps = neues Satzschema: { $what }
# Dahinter, was mit anderen Wiederholungen gehoben wurde.
other-reps-last = { $what }; letztes Mal { $last } am { $day }
just-made = neues Satzschema: { $load } × { $reps } am { $day }
# $what als „75 % von 86 kg“.
max-estimate = { $what }, dem unteren Ende des geschätzten 1RM
max-tested = { $what }, dem am { $day } getesteten 1RM
max-tested-capped = { $what }: ein Zehntel mehr, das Höchste nach dem am { $day } getesteten 1RM
max-coach = { $what }, dem Trainingsmaximum vom Coach, { $day }
max-again = { $what }, dem Trainingsmaximum
max-up = { $what }, dem Trainingsmaximum; höher, weil alle Wdh. geschafft sind
max-missed = { $what }, dem Trainingsmaximum; gleich, weil ein Satz fehlte
max-missed-lighter = { $what }, dem Trainingsmaximum; niedriger, weil ein leichteres Gewicht nicht ging
max-back-off = { $what }, dem Trainingsmaximum; niedriger, weil es zweimal in Folge nicht ging
max-short = { $what }, dem Trainingsmaximum; gleich, weil weniger Wdh. übrig waren als geplant
max-short-twice = { $what }, dem Trainingsmaximum; niedriger, weil zweimal in Folge viel weniger Wdh. übrig waren als geplant
max-away = { $what }, dem Trainingsmaximum; niedriger nach Wochen Trainingspause
fixed = so im Plan
fixed-nearest = im Plan: { $load }; näher geht es hier nicht
fixed-capped = im Plan: { $load }; höchstens ein Zehntel über { $last }, dem schwersten seit einem halben Jahr
free = deine Wahl

step = { $by } mehr: { $last } am { $day }, alle Wdh. geschafft
step-capped = { $by } mehr, der größte erlaubte Schritt: { $last } am { $day }, alle Wdh. geschafft
# Der offene Satz ging weit genug über sein Ziel hinaus.
earned = { $by } mehr: { $last } am { $day }, { $reps } Wdh. im offenen Satz statt { $asked }
earned-capped = { $by } mehr, der größte erlaubte Schritt: { $last } am { $day }, { $reps } Wdh. im offenen Satz statt { $asked }
way-back = { $by } mehr, auf dem Weg zurück zu { $best }: { $last } am { $day }, alle Wdh. geschafft
once-more = noch einmal, dann geht es höher: { $last } am { $day }, alle Wdh. geschafft
more-reps = eine Wdh. mehr, { $reps }: { $last } am { $day }, alle Wdh. geschafft; das nächste Gewicht hier ist { $next }
more-reps-heaviest = eine Wdh. mehr, { $reps }: { $last } am { $day }, alle Wdh. geschafft; schwerer geht es hier nicht
next-build = das nächste Gewicht hier für { $reps } Wdh.: { $last } am { $day }, genug Wdh. geschafft
at-top = noch einmal dasselbe: { $last } am { $day }, alle Wdh. geschafft; { $next } wäre zu viel auf einmal
at-top-heaviest = noch einmal dasselbe: { $last } am { $day }, alle Wdh. geschafft; schwerer geht es hier nicht
missed = noch einmal dasselbe: { $last } am { $day }, in Satz { $set } nur { $reps } von { $asked }
# Was nicht ging.
missed-much = weit verfehlt
missed-twice = zweimal in Folge nicht geschafft
missed-thrice = in drei Einheiten in Folge nicht geschafft
# $how als „zweimal in Folge nicht geschafft“.
# Weniger als letztes Mal, auf zwei Arten; die zweite für Unterstützung. Stehen an der Stelle von $less.
lighter = { $percent } % leichter
lighter-by = { $by } leichter
more-assistance = { $by } mehr Unterstützung
back-off = { $less } als { $last }: { $how }, zuletzt am { $day }
# Der Raum hat nichts Leichteres.
back-off-lightest = weniger Wdh., leichter geht es hier nicht: { $last } am { $day }, { $how }
held-back = { $weeks ->
    [one] nicht schwerer nach { $weeks } Woche Trainingspause: { $last } am { $day }
   *[other] nicht schwerer nach { $weeks } Wochen Trainingspause: { $last } am { $day }
}
eased-in = { $weeks ->
    [one] { $less } nach { $weeks } Woche Trainingspause: { $last } am { $day }
   *[other] { $less } nach { $weeks } Wochen Trainingspause: { $last } am { $day }
}
# Der Raum hat darunter nichts in der Nähe.
eased-in-reps = { $weeks ->
    [one] weniger Wdh. nach { $weeks } Woche Trainingspause: { $last } am { $day }, hier gibt es wenig darunter nichts
   *[other] weniger Wdh. nach { $weeks } Wochen Trainingspause: { $last } am { $day }, hier gibt es wenig darunter nichts
}
unfinished = noch einmal dasselbe: { $last } am { $day }, { $done } von { $sets ->
    [one] { $sets } Satz gemacht
   *[other] { $sets } Sätzen gemacht
}
in-doubt = noch einmal dasselbe: { $last } am { $day }, Satz { $set } ist vielleicht ein Versehen
left-out = noch einmal dasselbe: { $last } am { $day }, Satz { $set } vom Coach nicht gezählt
# $flag als „Knie 5/10, gemeldet Di 10. Nov.“.
flagged = nicht schwerer: { $flag }
flagged-from = nicht über { $last }: { $flag }
withdrawn = kein Gewicht, bis das aufgehoben ist: { $flag }
after-pain = { $less }, das erste Mal nach Schmerzen: { $flag }
after-pain-same = nicht über { $last }, das erste Mal nach Schmerzen: { $flag }
easy-week = leichte Woche: { $less } als { $load }
easy-week-same = leichte Woche: { $load } wie sonst
next-lighter = das nächstleichtere Gewicht: { $last } vom { $day } geht mit dem, was benutzt wird, nicht
none-near = in die Nähe von { $last } vom { $day } kommt nichts von dem, was benutzt wird

# Neben einem Gewicht, das wegen Beschwerden oder in einer leichten Woche unter der Antwort des Coachs bleibt; sie gilt.
answered = die Antwort des Coachs, { $load }, gilt und ist zurückgehalten
answered-none = die Antwort des Coachs gilt und ist zurückgehalten
coach-accepted = vom Coach angenommen
coach-changed = vom Coach geändert
coach-refused = Coach bleibt beim letzten Mal
# $what als „vom Coach geändert“.
coach-last-time = { $what }; letztes Mal { $load }
# $what als „vom Coach geändert (letztes Mal 60 kg)“, $words, wie der Coach sie schrieb.
coach-said = { $what }: „{ $words }“

# Was sonst noch für weniger spricht, hinter der Begründung: „dazu: 3 Wochen Trainingspause“.
also = dazu: { $what }
also-away = { $weeks ->
    [one] { $weeks } Woche Trainingspause
   *[other] { $weeks } Wochen Trainingspause
}
also-missed = in Satz { $set } nur { $reps } von { $asked }
also-unfinished = letztes Mal nicht alle Sätze gemacht
also-cap = mehr als ein Zehntel über { $last }
# Wo ein Zehntel nicht das Höchste ist: bei dem, was zum Körpergewicht dazukommt oder davon abgenommen wird, und wo mehr bewegt als vorgeschlagen wurde.
also-most = mehr als { $most }, das Höchste nach { $last }

# Warum eine Variante vorgeschlagen wird. $pattern als „Kniebeuge“.
spared = { $sets ->
    [one] { $pattern }: am Tag davor hart trainiert ({ $sets } Satz); diese Variante entlastet
   *[other] { $pattern }: am Tag davor hart trainiert ({ $sets } Sätze); diese Variante entlastet
}
