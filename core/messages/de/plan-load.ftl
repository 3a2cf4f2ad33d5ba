# Was am Gewicht eines Kraftteils in einer Plandatei falsch sein kann.

## Regeln

# $found ist die Regel in ihren Anführungszeichen, etwa "step".
rule-for-body = `rule` kann bei einer Übung nur mit Körpergewicht nicht { $found } sein.
write-free = Schreib `rule = "free"`.
# $found ist die Regel in ihren Anführungszeichen, etwa "percent".
rule-on-a-body = `rule` kann bei einem Gewicht am Körper nicht { $found } sein: Nahe null sagt ein Prozentwert davon nichts.
write-step-fixed-or-free = Schreib `rule = "step"`, `rule = "fixed"` oder `rule = "free"`.

## Schritte

nothing-to-earn = `earned_by` braucht ein `earned_step`.
# $example ist eine Zeile aus einem Plan mit earned_step.
add-earned-step = Ergänze `{ $example }` oder lass `earned_by` weg.
# $found ist das Gewicht in seinen Anführungszeichen, $unit ist kg oder lb.
second-step = { $found } ist ein zweiter Schritt in { $unit }.
one-step-a-unit = Schreib je Einheit einen Schritt, zum Beispiel `{ $example }`.

## Eins je Satz

not-one-for-each-set = { $entries ->
    [one] { $sets ->
        [one] `{ $key }` hat 1 Eintrag für 1 Satz.
       *[other] `{ $key }` hat 1 Eintrag für { $sets } Sätze.
    }
   *[other] { $sets ->
        [one] `{ $key }` hat { $entries } Einträge für 1 Satz.
       *[other] `{ $key }` hat { $entries } Einträge für { $sets } Sätze.
    }
}
load-for-each-set = Schreib ein Gewicht je Satz oder ein einziges für alle: `loads = "60 kg"`.
percent-for-each-set = Schreib einen Prozentwert je Satz oder einen einzigen für alle: `percents = 75`.
