//! The session load of each week.

use holdfast_core::coach::WeekLine;

use super::frame::{bars, frame};
use super::ink::MAIN;
use super::scale::{Ruler, week_place};
use super::{Figure, Painted};
use crate::print::words::short_day;
use crate::report::words::row;
use crate::say;

const HEIGHT: u32 = 360;

/// Draws the weeks; nothing where no session was rated.
pub(in crate::report) fn weeks(weeks: &[WeekLine]) -> Painted<Option<Figure>> {
    let highest = weeks.iter().map(|week| week.load).max().unwrap_or(0);
    let (Some(first), Some(last)) = (weeks.first(), weeks.last()) else { return Ok(None) };
    if highest == 0 {
        return Ok(None);
    }
    let x = Ruler::weeks(first.week_of, last.week_of);
    let y = Ruler::bars(f64::from(highest), 6, 10, 1.2);
    let place = |line: &WeekLine| week_place(first.week_of, line.week_of) as f64;
    let each: Vec<(f64, f64)> =
        weeks.iter().map(|week| (place(week), f64::from(week.load))).collect();
    let says = weeks.iter().map(|week| say::report::week_point(short_day(week.week_of), week.load));
    let words = (
        say::report::weeks().to_owned(),
        say::report::note_weeks().to_owned(),
        say::report::says_weeks(row(says)),
    );
    Figure::drawn(words, HEIGHT, |sheet| {
        let mut plot = frame(sheet, say::report::axis_weeks(), &x, &y)?;
        bars(&mut plot, &x, &each, |index| weeks[index].load.to_string(), MAIN)
    })
    .map(Some)
}
