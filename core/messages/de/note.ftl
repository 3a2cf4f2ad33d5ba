### Notizen von Athlet und Coach zu einer Einheit oder zu etwas, das darin gemacht wurde.

## Wie der Athlet sie liest. $words sind die Worte der Notiz.

for-coach = Für deinen Coach: { $words }
# $place ist „Satz 2“ oder „Fenster 3“.
for-coach-on = Für deinen Coach, { $place }: { $words }
from-coach = Von deinem Coach: { $words }
from-coach-on = Von deinem Coach, { $place }: { $words }
private = Nur für dich: { $words }
private-on = Nur für dich, { $place }: { $words }
# $day ist das Datum einer früheren Einheit, etwa „Di 3. Nov“.
from-coach-of = Von deinem Coach zu { $day }: { $words }
from-coach-about = Von deinem Coach zu { $day }, { $place }: { $words }
set = Satz { $set }
window = Fenster { $window }

## Wie der Coach sie liest.

from-athlete = { $athlete }: { $words }
# $about ist „Kniebeuge Satz 2“ oder ein Teil.
from-athlete-on = { $athlete }, { $about }: { $words }
your-own = Du: { $words }
your-own-on = Du, { $about }: { $words }
# Auf der Übersicht, nach der Art. $day ist ein Datum.
to-coach = { $day }: { $words }
to-coach-on = { $about }, { $day }: { $words }
# Ein Satz oder Fenster eines Teils: „Kniebeuge Satz 2“.
place-in = { $piece } { $place }

## Was ein Tippen gespeichert hat, nach „Gespeichert: “.

noted = Notiz für deinen Coach: { $words }
noted-on = { $piece }, Notiz für deinen Coach: { $words }
noted-privately = Notiz nur für dich: { $words }
noted-privately-on = { $piece }, Notiz nur für dich: { $words }

## Was nicht stimmen kann.

without-words = Eine Notiz braucht Worte, etwa „Griff gerutscht“.
too-long = Eine Notiz hat höchstens { $most } Zeichen; diese hat { $count }.
coach-not-private = Eine private Notiz gibt es nur auf dem Gerät eines Athleten. Was ein Coach schreibt, geht an den Athleten.
no-session = Von { $name } gibt es noch keine Einheit für eine Notiz.
no-session-on = Von { $name } gibt es am { $day } keine Einheit.
nothing-to-take-back = Dort hast du keine solche Notiz zum Zurücknehmen.
