//! Time under stretch of each part of the body, week by week.

use chrono::NaiveDate;
use holdfast_core::coach::RegionMinutes;

use super::frame::{bars, frame};
use super::ink::OTHER;
use super::scale::{Ruler, week_place};
use super::{Figure, Painted};
use crate::print::words::short_day;
use crate::report::words::{held, minutes, row};
use crate::say;

const HEIGHT: u32 = 320;

/// Draws a chart a part of the body, all on the same scale so that they can be compared.
pub(in crate::report) fn regions(weeks: &[RegionMinutes]) -> Painted<Vec<Figure>> {
    let weeks: Vec<&RegionMinutes> = weeks.iter().filter(|week| week.seconds > 0).collect();
    let mondays = || weeks.iter().map(|week| week.week_of);
    let (Some(first), Some(last)) = (mondays().min(), mondays().max()) else {
        return Ok(Vec::new());
    };
    let longest = weeks.iter().map(|week| week.seconds).max().unwrap_or(0);
    let x = Ruler::weeks(first, last);
    let y = Ruler::bars(longest as f64 / 60.0, 4, 1, 1.3);
    let mut names: Vec<&str> = weeks.iter().map(|week| week.region.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    let figure = |name: &&str| {
        let of_it = weeks.iter().copied().filter(|week| week.region == *name).collect::<Vec<_>>();
        region(name, &of_it, first, &x, &y)
    };
    names.iter().map(figure).collect()
}

fn region(
    name: &str,
    weeks: &[&RegionMinutes],
    first: NaiveDate,
    x: &Ruler,
    y: &Ruler,
) -> Painted<Figure> {
    let point = |minutes: &&RegionMinutes| {
        (week_place(first, minutes.week_of) as f64, minutes.seconds as f64 / 60.0)
    };
    let each: Vec<(f64, f64)> = weeks.iter().map(point).collect();
    let says = weeks
        .iter()
        .map(|week| say::report::week_point(short_day(week.week_of), held(week.seconds)));
    let words = (
        say::report::region(name),
        say::report::note_region().to_owned(),
        say::report::says_region(row(says)),
    );
    Figure::drawn(words, HEIGHT, |sheet| {
        let mut plot = frame(sheet, "min", x, y)?;
        bars(&mut plot, x, &each, |index| minutes(weeks[index].seconds), OTHER)
    })
}
