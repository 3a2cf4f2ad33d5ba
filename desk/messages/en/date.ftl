## Weekdays and months, as short as they are written in a table or on an axis.

monday = Mon
tuesday = Tue
wednesday = Wed
thursday = Thu
friday = Fri
saturday = Sat
sunday = Sun
january = Jan
february = Feb
march = Mar
april = Apr
may = May
june = Jun
july = Jul
august = Aug
september = Sep
october = Oct
november = Nov
december = Dec

## Dates from them. $day is the day of the month. A sentence may go on behind a date.

weekday-and-day = { $weekday } { $day } { $month }
weekday-day-and-year = { $weekday } { $day } { $month } { $year }
# On the axis of a chart, and in rows of readings.
day-and-month = { $day } { $month }
