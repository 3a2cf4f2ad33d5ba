# Was ein Coach über einen Plan hört, der veröffentlicht werden kann: Es ist erlaubt und vielleicht nicht gemeint.
# In einer Zeile darunter steht jeweils, was zu tun ist.

## Namen

# $name und $other sehen gleich oder fast gleich aus; $line ist die Zeile von $other.
names-alike = "{ $name }" und "{ $other }" in Zeile { $line } sind zwei Namen.
write-names-alike = Schreib beide gleich oder so, dass man sie leicht unterscheidet.
# $code ist die Nummer eines Zeichens, etwa U+200B.
hidden-character = "{ $name }" enthält ein unsichtbares Zeichen ({ $code }).
type-name-again = Tipp den Namen noch einmal.

## Verläufe: welche Sätze zusammengehören

# Zwei Teile mit derselben Übung, denselben Sätzen und Wiederholungen. $line ist die Zeile von $other.
two-histories = "{ $name }" und "{ $other }" in Zeile { $line } haben dieselbe Übung, dieselben Sätze und Wiederholungen, aber jedes seinen eigenen Verlauf.
track-together = Gib beiden denselben `track`, damit sie einen Verlauf teilen, oder jedem einen eigenen, wenn es zwei sein sollen.
# Zwei Teile mit demselben Namen und derselben Übung, aber anderen Sätzen oder Wiederholungen.
one-history = "{ $name }" hat andere Sätze und Wiederholungen als in Zeile { $line }, aber denselben Verlauf.
track-apart = Gib jedem einen eigenen `track` oder beiden denselben, wenn es einer sein soll.
track-of-two = Der Verlauf "{ $track }" gehört in Zeile { $line } zu einer anderen Übung. Jede Übung hat ihren eigenen.
name-other-track = Gib ihm einen anderen Namen, damit niemand die beiden für einen hält.

## Schritte

# $step ist ein Gewicht; $least ist der kleinste Abstand zweier Gewichte.
step-too-small = Ein Schritt von { $step } führt zu keinem anderen Gewicht: Hier liegen keine zwei näher als { $least } beieinander.
step-too-small-from = Von { $from } führt ein Schritt von { $step } zu keinem anderen Gewicht: Das nächste ist { $next }.
larger-step = Schreib einen Schritt von mindestens { $step } oder ergänze kleinere Gewichte in `[kit]`. Bis dahin steigen nur die Wiederholungen.
# Die Felder sind `step` und `earned_step`. $unit ist kg oder lb.
no-step-in-unit = `{ $key }` hat kein Gewicht in { $unit }, worin hier geladen wird.
no-step-in-unit-of-bar = `{ $key }` hat kein Gewicht in { $unit }, worin die Stange "{ $bar }" beladen wird.
step-in-each-unit = Ergänze eins in { $unit }. Sonst wird das erste auf das abgerundet, was sich laden lässt.
earned-too-small = Der verdiente Schritt von { $earned } ist nicht größer als der Schritt von { $step }.
larger-earned = Schreib einen größeren oder lass `earned_step` weg.

## Gewichte

# Die Stange steht allein da.
no-plates = Auf die Stange "{ $bar }" passen keine Scheiben dieser Ausstattung, also ändert sich dieses Gewicht nie.
add-plates = Ergänze `plate` in der Einheit der Stange oder nenne eine andere Stange: `bar`.
name-bar = Nenne beim Teil oder bei seiner Übung eine Stange, die es kann: `bar = "{ $bar }"`.
# $percent sagt, wie viel schwerer das nächste Gewicht ist.
gap = Nach { $from } kommt { $to }, { $percent } % mehr. Es wird nach { $reps } Wiederholungen mit { $from } vorgeschlagen.
gap-unprepared = Nach { $from } kommt { $to }, { $percent } % mehr. Auch { $top } Wiederholungen bereiten das nicht vor.
fill-gap = Ergänze in `[kit]` ein Gewicht dazwischen, wenn du kannst.
fill-gap-or-raise-top = Ergänze in `[kit]` ein Gewicht dazwischen, wenn du kannst, oder lass die Wiederholungen weiter steigen: `top = { $reps }`.
# $week ist die Woche des Blocks, in der das leichtere Gewicht steht.
fixed-over-cap = { $load } sind mehr als 10 % über den { $last } aus Woche { $week }.
# $people sind ein Name oder mehrere, $count, wie viele; $from ist das Schwerste, das sie zuletzt geschafft haben.
fixed-over-people = { $count ->
    [one] { $load } ist über 10 % mehr als die { $from }, die { $people } zuletzt geschafft hat.
   *[other] { $load } ist über 10 % mehr als die { $from }, die { $people } zuletzt geschafft haben.
}
capped-there = Vorgeschlagen wird jedes Mal höchstens 10 % mehr, bis es erreicht ist. Schreib weniger, oder lass es, wenn es so gemeint ist.
smaller-jump = Schreib einen kleineren Sprung oder lass es so, wenn du es meinst.

## Wo Leute stehen

# $people sind ein oder mehrere Namen, $count ist ihre Anzahl; $from ist ihr Gewicht, $to das nächste, das der Raum hergibt.
people-at = { $count ->
    [one] { $people } steht bei { $from }, dann kommt { $to }, { $percent } % mehr.
   *[other] { $people } stehen bei { $from }, dann kommt { $to }, { $percent } % mehr.
}
# Dasselbe, wo sie in diesem Plan mit einem Gewicht beginnen.
people-begin = { $count ->
    [one] { $people } beginnt mit { $from }, dann kommt { $to }, { $percent } % mehr.
   *[other] { $people } beginnen mit { $from }, dann kommt { $to }, { $percent } % mehr.
}
# Jemand mit der Variante, die er macht.
with-option = { $name } ({ $option })
# $names sind die ersten.
and-others = { $more ->
    [one] { $names } und 1 weitere Person
   *[other] { $names } und { $more } weitere
}
# Steht hinter Leuten, die mit ihrem Gewicht genannt sind.
same-for-others = { $count ->
    [one] Dasselbe gilt für 1 weitere Person bei einem anderen Gewicht.
   *[other] Dasselbe gilt für { $count } weitere bei anderen Gewichten.
}
# Steht vor den Leuten, um die es geht.
step-too-small-there = Ein Schritt von { $step } reicht nicht bis zum nächsten Gewicht, also steigen erst die Wiederholungen.
larger-step-there = Schreib einen Schritt von mindestens { $step } oder ergänze kleinere Gewichte in `[kit]`.
# Diese stehen hinter Leuten und ihrem nächsten Gewicht.
reached-after = Es wird nach { $reps } Wiederholungen vorgeschlagen.
reached-after-some = Es wird nach { $least } bis { $most } Wiederholungen vorgeschlagen.
not-prepared = Auch { $top } Wiederholungen bereiten das nicht vor.

## Zeiten

starts-far-ahead = Dieser Block beginnt { $year }, in mehr als einem Jahr.
started-long-ago = Dieser Block begann { $year }, vor mehr als einem Jahr.
all-weeks-easy = Jede Woche dieses Blocks ist leicht, also wird in ihm nichts schwerer.
leave-a-week = Lass eine Woche weg, die wie sonst sein soll.
check-the-year = Prüfe das Jahr bei `starts`.
# Eine halbe Sekunde je Wiederholung ist das Schnellste, was geht.
reps-past-window = { $reps } Wiederholungen passen nicht in { $window }.
fewer-reps = { $most ->
    [one] Mit einer halben Sekunde je Wiederholung reicht die Zeit für 1.
   *[other] Mit einer halben Sekunde je Wiederholung reicht die Zeit für { $most }.
}
