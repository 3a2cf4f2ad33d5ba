## Wochentage und Monate, so kurz wie in einer Tabelle oder an einer Achse.

monday = Mo
tuesday = Di
wednesday = Mi
thursday = Do
friday = Fr
saturday = Sa
sunday = So
january = Jan.
february = Feb.
march = März
april = Apr.
may = Mai
june = Juni
july = Juli
august = Aug.
september = Sept.
october = Okt.
november = Nov.
december = Dez.

## Daten daraus. $day ist der Tag des Monats. Hinter einem Datum kann ein Satz weitergehen; es endet
## manchmal mit einem Punkt.

weekday-and-day = { $weekday } { $day }. { $month }
weekday-day-and-year = { $weekday } { $day }. { $month } { $year }
# An der Achse eines Diagramms und in Reihen von Messwerten.
day-and-month = { $day }. { $month }
